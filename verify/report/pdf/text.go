package pdf

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/hingeline/verify/report/figure"
)

// Sizes of letters, in millimetres.
const (
	small  = 2.5 // 7 points: the least that a page has
	normal = 2.9
	large  = 3.6
	title  = 5.2
	huge   = 10.5
)

// leading is the height of a line, as a part of the letters' size; ascent is how much of it
// stands above the base line.
const (
	leading = 1.28
	ascent  = 0.98
)

// lettering is how a text is written.
type lettering struct {
	size  float64
	style style
	ink   figure.Ink
}

var (
	body   = lettering{normal, regular, figure.Black}
	strong = lettering{normal, bold, figure.Black}
	note   = lettering{small, regular, figure.Black}
	quiet  = lettering{small, regular, figure.Grey}
	code   = lettering{small, mono, figure.Black}
	badly  = lettering{normal, bold, figure.Bad}
)

// bit is words in one lettering, within a text of several.
type bit struct {
	text string
	as   lettering
}

// token is what a line is made of: letters that are not parted, and the spaces before them.
type token struct {
	text  string
	as    lettering
	space bool // there is a space before it
	width float64
}

// text is words wrapped to a width. A word that is too long for a line goes on in the next.
func (f *fonts) text(width float64, bits ...bit) piece {
	p := piece{width: width}
	var line []token
	used := 0.0
	for _, t := range f.tokens(width, bits) {
		need := t.width
		if t.space && len(line) > 0 {
			need += f.width(" ", t.as.style, t.as.size)
		}
		if len(line) > 0 && used+need > width {
			f.setLine(&p, line)
			line, used, need = nil, 0, t.width
		}
		line = append(line, t)
		used += need
	}
	f.setLine(&p, line)
	return p
}

// setLine adds a line of tokens under a piece; those of one lettering are words together.
func (f *fonts) setLine(p *piece, line []token) {
	size := 0.0
	for _, t := range line {
		size = max(size, t.as.size)
	}
	x := 0.0
	for i := 0; i < len(line); {
		as := line[i].as
		if line[i].space && i > 0 {
			x += f.width(" ", as.style, as.size)
		}
		from := x
		var said strings.Builder
		for k := i; i < len(line) && line[i].as == as; i++ {
			if line[i].space && i > k {
				said.WriteByte(' ')
				x += f.width(" ", as.style, as.size)
			}
			said.WriteString(line[i].text)
			x += line[i].width
		}
		p.marks = append(p.marks, words{from, p.height + ascent*size, as.size, as.style, as.ink, said.String()})
	}
	p.height += leading * size
}

func (f *fonts) tokens(width float64, bits []bit) []token {
	var all []token
	space := false
	for _, b := range bits {
		plain := f.plain(b.text, b.as.style)
		for len(plain) > 0 {
			if trimmed := strings.TrimLeft(plain, " "); trimmed != plain {
				plain, space = trimmed, true
				continue
			}
			end := wordEnd(plain)
			for i, part := range f.parted(plain[:end], width, b.as) {
				all = append(all, token{part, b.as, space && i == 0, f.width(part, b.as.style, b.as.size)})
			}
			plain, space = plain[end:], false
		}
	}
	return all
}

// units are those that stay on the line of their number.
var units = []string{"%", "mm", "µs", "s", "kg"}

// wordEnd is where a line may be parted first: behind a word, with the unit of a number.
func wordEnd(text string) int {
	word, rest, more := strings.Cut(text, " ")
	if digit := strings.TrimLeft(word, "(-+±"); !more || digit == "" || digit[0] < '0' || digit[0] > '9' {
		return len(word)
	}
	unit, _, _ := strings.Cut(rest, " ")
	if slices.Contains(units, strings.TrimRight(unit, ".,:;)")) {
		return len(word) + 1 + len(unit)
	}
	return len(word)
}

// parting are letters after which a word that is too long for a line is best parted.
const parting = "/-_.:,;)]"

// parted is a word in parts that each fit a width: one, unless it is too long.
func (f *fonts) parted(word string, width float64, as lettering) []string {
	var parts []string
	for f.width(word, as.style, as.size) > width {
		used, fit, good := 0.0, 0, 0
		for i, r := range word {
			wide := f.glyph(r, as.style).advance * as.size
			if used+wide > width && i > 0 {
				break
			}
			used += wide
			fit = i + utf8.RuneLen(r)
			if strings.ContainsRune(parting, r) {
				good = fit
			}
		}
		if 2*good > fit {
			fit = good
		}
		parts = append(parts, word[:fit])
		word = word[fit:]
	}
	if word != "" {
		parts = append(parts, word)
	}
	return parts
}

// tabStop is how many spaces a tab in a line of a file is shown as.
const tabStop = "    "

// excerpt is a line of a file as it stands there, with its number.
func (f *fonts) excerpt(width float64, number int, line string) piece {
	line = f.plain(strings.ReplaceAll(strings.TrimRight(line, " \t\r\n"), "\t", tabStop), mono)
	label := f.text(width, bit{strconv.Itoa(number) + " |", code})
	label.width = f.width(strconv.Itoa(number)+" |  ", mono, code.size)
	var lines piece
	for _, part := range f.parted(line, width-label.width, code) {
		lines.add(piece{width: width - label.width, height: leading * code.size,
			marks: []mark{words{0, ascent * code.size, code.size, code.style, code.ink, part}}}, 0, lines.height)
	}
	return beside(0, label, lines)
}

// labelled is a text with a label left of it.
func (f *fonts) labelled(width, label float64, name string, bits ...bit) piece {
	return beside(0, f.text(label, bit{name, lettering{body.size, regular, figure.Grey}}), f.text(width-label, bits...))
}

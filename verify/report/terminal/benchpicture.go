package terminal

import (
	"fmt"
	"math"
	"strings"

	"example.com/hingeline/verify/result"
)

// The picture of a step, in characters that every terminal has. The model is seen from
// behind: port is on the left. A row of letters stands under what it says about.
const (
	pictureLabel = 12 // columns of the words at its left
	pictureHalf  = 31 // columns of half the span
	pictureWidth = pictureLabel + 2*pictureHalf + 1
)

// pictureRows are the rows of a picture, what is furthest from the eye first.
var pictureRows = []struct{ row, label string }{
	{"canard", "CANARD"}, {"brakes", "BRAKES"}, {"wing", "WING"}, {"tail", "TAIL"}, {"fin", "RUDDER"}, {"wheel", "WHEEL"},
}

// picture draws the rows of a step in which something moves, where the page is wide enough.
// Where it would make the page longer than so many rows it is drawn in a row each, or left
// out: it says nothing that the words do not say.
func (p *page) picture(s *result.BenchStep, rows int) {
	if p.width < pictureWidth {
		return
	}
	lines, flat := pictureLines(s)
	left := rows - strings.Count(p.out.String(), "\n") - 1 // below the line that says what it is
	if rows > 0 && len(lines) > left {
		lines = flat
	}
	if len(lines) == 0 || rows > 0 && len(lines) > left {
		return
	}
	p.row(inked{"  from behind: port on the left, numbers as above, ^ v < > which way it goes", p.faint})
	for _, line := range lines {
		p.row(inked{line, plain})
	}
}

// pictureLines are the rows of a picture, and those of a flat one, in which a part says
// itself which way it goes and not what is above or below it.
func pictureLines(s *result.BenchStep) (lines, flat []string) {
	for _, r := range pictureRows {
		var parts []*result.BenchPart
		moves := false
		for i := range s.Parts {
			if s.Parts[i].Spot.Row == r.row {
				parts = append(parts, &s.Parts[i])
				moves = moves || drawsWay(&s.Parts[i])
			}
		}
		if !moves {
			continue
		}
		lines = append(lines, pictureRow(r.label, parts, false)...)
		flat = append(flat, pictureRow(r.label, parts, true)...)
	}
	return lines, flat
}

// drawsWay says whether a part has a way that is drawn.
func drawsWay(part *result.BenchPart) bool {
	switch part.Way {
	case "UP", "DOWN", "LEFT", "RIGHT":
		return part.Sure
	}
	return false
}

// pictureRow is one row of parts with what goes up above it and what goes down below;
// rows in which nothing does are left out. A flat one is a single row.
func pictureRow(label string, parts []*result.BenchPart, flat bool) []string {
	up, line, down := blankRow(), blankRow(), blankRow()
	if label == "WING" {
		for i := range line {
			line[i] = '-'
		}
		copy(line[pictureHalf-1:], []rune("(_)"))
	}
	moves := [2]bool{}
	for _, part := range parts {
		from, to := pictureColumns(part.Spot, len(fmt.Sprint(part.Number))+2)
		body := '='
		switch {
		case part.Way == "LEFT" && part.Sure:
			body = '<'
		case part.Way == "RIGHT" && part.Sure:
			body = '>'
		case part.Way == "UP" && part.Sure && flat:
			body = '^'
		case part.Way == "DOWN" && part.Sure && flat:
			body = 'v'
		}
		fill(line, from, to, body)
		number := []rune(fmt.Sprint(part.Number))
		copy(line[(from+to+1-len(number))/2:], number)
		switch {
		case flat:
		case part.Way == "UP" && part.Sure:
			fill(up, from, to, '^')
			moves[0] = true
		case part.Way == "DOWN" && part.Sure:
			fill(down, from, to, 'v')
			moves[1] = true
		}
	}
	var lines []string
	add := func(label string, row []rune) {
		lines = append(lines, pad(label, pictureLabel)+strings.TrimRight(string(row), " "))
	}
	if moves[0] {
		add(strings.ToLower(label)+" up", up)
	}
	add(label, line)
	if moves[1] {
		add(strings.ToLower(label)+" down", down)
	}
	return lines
}

func blankRow() []rune { return []rune(strings.Repeat(" ", 2*pictureHalf+1)) }

func fill(row []rune, from, to int, with rune) {
	for i := from; i <= to; i++ {
		row[i] = with
	}
}

// pictureColumns are the columns of a part, at least so many.
func pictureColumns(s result.Spot, least int) (from, to int) {
	column := func(x float64) int { return pictureHalf + int(math.Round(x*pictureHalf)) }
	from, to = column(s.From), column(s.To)
	if s.To-s.From > 0.1 && to-from > least+1 { // beside another it does not touch it
		from, to = from+1, to-1
	}
	for to-from+1 < least {
		if from > 0 {
			from--
		}
		if to-from+1 < least && to < 2*pictureHalf {
			to++
		}
	}
	return max(from, 0), min(to, 2*pictureHalf)
}

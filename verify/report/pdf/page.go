package pdf

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// document is a report being laid out, page by page.
type document struct {
	report  *result.Report
	fonts   *fonts
	checks  *said.Checks
	verdict said.Verdict
	title   string

	width, height float64 // of the paper
	leaves        []*leaf
	y             float64 // where the next piece goes
	heads         []head  // what must stand on the same page as the next piece, above it
	repeat        piece   // what a table begins with on every page; its rows stand close
	running       string  // the heading of the section, for the pages that it goes on to
}

// head is a piece that stays with what follows it.
type head struct {
	piece
	outline string // its line of the document's outline; empty for none
}

// leaf is one page.
type leaf struct {
	marks   []mark
	outline []entry
	placed  []placed
}

// entry is a line of the document's outline.
type entry struct {
	title string
	y     float64
}

// placed is a piece that was not to be split, and where it stands.
type placed struct {
	what        string
	top, bottom float64
}

// Margins, in millimetres. The header and the footer stand in them.
const (
	marginSide = 15.0
	marginTop  = 17.0
	marginFoot = 15.0
	headerAt   = 8.0
	footerAt   = 8.0
)

// Gaps between pieces, in millimetres.
const (
	gapSection = 5.0
	gapPiece   = 1.1
)

func newDocument(r *result.Report, o Options) (*document, error) {
	f, err := newFonts(o)
	if err != nil {
		return nil, err
	}
	d := &document{report: r, fonts: f, checks: said.ChecksOf(r), verdict: said.OnPaper(r)}
	d.width, d.height = o.Paper.size()
	return d, nil
}

func (d *document) inner() float64  { return d.width - 2*marginSide }
func (d *document) bottom() float64 { return d.height - marginFoot }

func (d *document) leaf() *leaf {
	if len(d.leaves) == 0 {
		d.turn()
	}
	return d.leaves[len(d.leaves)-1]
}

// turn begins a page.
func (d *document) turn() {
	d.leaves = append(d.leaves, &leaf{})
	d.y = marginTop
}

// section begins a section with a heading, which stays with what follows.
func (d *document) section(heading string) {
	d.repeat, d.running = piece{}, heading
	var p piece
	p.height = gapSection - gapPiece
	p.below(d.fonts.text(d.inner(), bit{heading, lettering{large, bold, figure.Black}}), 0)
	p.below(rule(d.inner(), 0.35, figure.Whole, figure.Black), 0.3)
	p.height += 0.3
	d.heads = append(d.heads, head{p, d.fonts.plain(heading, regular)})
}

// table gives what follows a row of column heads, on every page that it comes to.
func (d *document) table(columns piece) {
	d.repeat = columns
	d.heads = append(d.heads, head{piece: columns})
}

// lead places a piece that stays with what follows it, such as a caution before a table.
func (d *document) lead(p piece) { d.heads = append(d.heads, head{piece: p}) }

// put places a piece whole on this page or, where there is no room, on the next. What is
// too tall for any page is made smaller.
func (d *document) put(what string, p piece) {
	if p.height == 0 {
		return
	}
	need := p.height
	for _, h := range d.heads {
		need += h.height + gapPiece
	}
	if l := d.leaf(); d.y+need > d.bottom() && len(l.placed) > 0 {
		d.turn()
		if !d.opening() && d.running != "" {
			d.stand("heading", d.continued())
		}
		if len(d.heads) == 0 && d.repeat.height > 0 {
			d.stand("table head", d.repeat)
			d.y -= gapPiece
		}
	}
	for _, h := range d.heads {
		if h.outline != "" {
			d.leaf().outline = append(d.leaf().outline, entry{h.outline, d.y})
		}
		d.stand("heading", h.piece)
	}
	if len(d.heads) > 0 && d.repeat.height > 0 {
		d.y -= gapPiece
	}
	d.heads = nil
	if room := d.bottom() - d.y; p.height > room {
		p = p.scaled(room / p.height)
	}
	d.stand(what, p)
	if d.repeat.height > 0 {
		d.y -= gapPiece
	}
}

// opening reports whether a section begins with the next piece.
func (d *document) opening() bool {
	return slices.ContainsFunc(d.heads, func(h head) bool { return h.outline != "" })
}

// continued is what a section is called on the pages that it goes on to.
func (d *document) continued() piece {
	const more = ", continued"
	as := quiet
	name := d.fonts.cut(d.fonts.plain(d.running, as.style), d.inner()-d.fonts.width(more, as.style, as.size), as)
	return d.fonts.text(d.inner()+1, bit{name + more, as})
}

// ended is the end of a table.
func (d *document) ended() {
	d.repeat = piece{}
	d.y += gapPiece
}

// stand puts a piece where the page has come to.
func (d *document) stand(what string, p piece) {
	l := d.leaf()
	p.draw(l, marginSide, d.y, 1)
	l.placed = append(l.placed, placed{what, d.y, d.y + p.height})
	d.y += p.height + gapPiece
}

// finish writes what stands on every page.
func (d *document) finish() {
	for i, l := range d.leaves {
		d.edge(l, headerAt, d.report.Model.Name, d.verdict.OnEachPage())
		d.edge(l, d.height-footerAt,
			"a check on paper"+prefixed(", set-up ", said.ShortPrint(d.report.SetUp))+prefixed(", ", said.When(d.report.Date)),
			fmt.Sprintf("page %d of %d", i+1, len(d.leaves)))
	}
}

// prefixed is words after others, or nothing where there are none.
func prefixed(before, words string) string {
	if words == "" {
		return ""
	}
	return before + words
}

// edge is one line in a margin: words at its left and at its right.
func (d *document) edge(l *leaf, y float64, left, right string) {
	as := lettering{small, regular, figure.Black}
	end := d.fonts.plain(right, bold)
	wide := d.fonts.width(end, bold, small)
	begin := d.fonts.cut(d.fonts.plain(left, regular), d.inner()-wide-4, as)
	l.marks = append(l.marks,
		words{marginSide, y, small, regular, figure.Black, begin},
		words{d.width - marginSide - wide, y, small, bold, figure.Black, end})
	if y < marginTop {
		l.marks = append(l.marks, stroke{marginSide, y + 1.6, d.width - marginSide, y + 1.6, 0.2, figure.Whole, figure.Grey})
	}
}

// cut is words on one line, with dots where they do not fit; the page has them in full
// elsewhere.
func (f *fonts) cut(text string, width float64, as lettering) string {
	if f.width(text, as.style, as.size) <= width {
		return text
	}
	const dots = "…"
	room := width - f.width(dots, as.style, as.size)
	for i, r := range text {
		room -= f.glyph(r, as.style).advance * as.size
		if room < 0 {
			return strings.TrimRight(text[:i], " ") + dots
		}
	}
	return text
}

// grouped is a digest in groups that can be compared by eye.
func grouped(digest string) string {
	const group = 8
	var parts []string
	for len(digest) > group {
		parts = append(parts, digest[:group])
		digest = digest[group:]
	}
	return strings.Join(append(parts, digest), " ")
}

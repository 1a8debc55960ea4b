package pdf

import (
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// column is one column of a table.
type column struct {
	head  string
	width float64 // of the inner width, as a part
}

// grid is a table with lines around its cells.
type grid struct {
	d       *document
	columns []column
	what    string // what a row is called where it is placed
}

// begin gives the table its heads, on every page that it comes to.
func (g grid) begin() {
	cells := make([]piece, len(g.columns))
	for i := range g.columns {
		cells[i] = g.d.fonts.text(g.width(i), bit{g.columns[i].head, lettering{small, bold, figure.Black}})
	}
	g.d.table(g.lined(cells, whole(figure.Pale)))
}

// width is the room for what stands in a column.
func (g grid) width(i int) float64 { return g.columns[i].width*g.d.inner() - 2*cellSides }

// row is one row of cells, each laid out for the width of its column.
func (g grid) row(cells ...piece) { g.d.put(g.what, g.lined(cells, figure.Fill{})) }

func (g grid) lined(cells []piece, fill figure.Fill) piece {
	p := piece{width: g.d.inner()}
	x := 0.0
	for i, c := range cells {
		p.add(c, x+cellSides, cellEnds)
		x += g.columns[i].width * g.d.inner()
	}
	p.height += cellEnds
	p = framed(p, 0.2, fill, figure.Black)
	x = 0
	for i := range cells[:len(cells)-1] {
		x += g.columns[i].width * g.d.inner()
		p.marks = append(p.marks, stroke{x, 0, x, p.height, 0.15, figure.Whole, figure.Grey})
	}
	return p
}

// cell is a text for a column.
func (g grid) cell(i int, bits ...bit) piece { return g.d.fonts.text(g.width(i), bits...) }

// bench is what is measured and looked at on the bench.
func (d *document) bench() {
	if p := d.report.Paper; p != nil {
		d.throws(p.Throws)
		d.travel(p.Travel)
		d.linkages(p.Linkages)
		d.signal(p.Signal)
		d.motors(p.Motors)
	}
	d.balance()
	d.rangeCheck()
	d.day()
}

// throws is the table of throws: what was worked out, and room for what is measured.
func (d *document) throws(all []result.Throw) {
	if len(all) == 0 {
		return
	}
	d.section("Throws, to be measured")
	d.lead(d.fonts.text(d.inner(), bit{
		"Measure and write it down. " + said.ThrowsNote, note}))
	g := grid{d, []column{
		{"part, control, switches", 0.31}, {"way", 0.09}, {"stick", 0.15}, {"set-up gives", 0.26}, {"measured", 0.19},
	}, "throw"}
	g.begin()
	for i := range all {
		t := &all[i]
		about := g.cell(0, bit{t.Part, strong})
		about.below(g.cell(0, bit{t.Control, note}, bit{prefixed(", ", strings.Join(t.When, "; or ")), note}), 0)
		if t.Partner != "" {
			about.below(d.fonts.toned(said.Apart(t), g.width(0), bit{t.Partner, note}), 0)
		}
		if len(t.Ends) == 0 {
			g.row(about, g.cell(1, bit{"does not move", body}), piece{}, piece{}, piece{})
			continue
		}
		var ways, ats, amounts, blanks piece
		for _, e := range t.Ends {
			way, at := g.cell(1, bit{e.Way, strong}), g.cell(2, bit{e.At, note})
			amount := g.cell(3, bit{said.Degrees(&e), strong}, bit{prefixed(", ", said.Millimetres(&e)), strong})
			const (
				room      = 8.5                      // for handwriting
				down      = fillInAt - ascent*normal // to the line that is written on
				downSmall = fillInAt - ascent*small
			)
			tall := max(down+max(way.height, at.height, amount.height)+gapPiece, room)
			blank := d.fonts.fillIn(g.width(4), e.Millimetres > 0)
			for _, c := range []struct {
				in   *piece
				add  piece
				down float64
			}{{&ways, way, down}, {&ats, at, downSmall}, {&amounts, amount, down}, {&blanks, blank, 0}} {
				top := c.in.height
				c.in.add(c.add, 0, top+c.down)
				c.in.height = top + tall
			}
		}
		g.row(about, ways, ats, amounts, blanks)
	}
	d.ended()
}

// fillInAt is where the line of a fillIn is, from its top.
const fillInAt = 5.8

// fillIn is a line to write degrees and, where there are any, millimetres on.
func (f *fonts) fillIn(width float64, mm bool) piece {
	p := piece{width: width, height: fillInAt + 0.7}
	units := []string{"°"}
	if mm {
		units = append(units, "mm")
	}
	each := width / float64(len(units))
	for i, unit := range units {
		w := f.width(unit, regular, small)
		x := float64(i) * each
		p.marks = append(p.marks,
			stroke{x, fillInAt, x + each - w - 1.6, fillInAt, 0.2, figure.Whole, figure.Grey},
			words{x + each - w - 1, fillInAt, small, regular, figure.Grey, unit})
	}
	return p
}

// travel is how much of its travel every channel uses.
func (d *document) travel(all []result.Travel) {
	if len(all) == 0 {
		return
	}
	d.section("Travel of the channels, over every position of the controls")
	g := grid{d, []column{{"channel", 0.26}, {"used (hatched), of what the channel can do", 0.34}, {"spare", 0.4}}, "travel"}
	g.begin()
	for i := range all {
		t := &all[i]
		shown := bar(t, g.width(1))
		shown.below(g.cell(1, bit{said.Used(t), note}), 0.4)
		tone, words := said.Spare(t, d.report.Paper)
		spare := d.fonts.toned(tone, g.width(2), bit{words, strong})
		if len(t.Worst) > 0 {
			spare.below(g.cell(2, bit{"least at " + strings.Join(t.Worst, ", "), note}), 0)
		}
		if !t.Sure {
			spare.below(d.fonts.signed(heed, g.width(2), bit{said.NotSure, note}), 0)
		}
		g.row(g.cell(0, bit{t.Channel, strong}), shown, spare)
	}
	d.ended()
}

// bar is the pulse limits of a channel with the part that it uses hatched.
func bar(t *result.Travel, width float64) piece {
	const tall = 3.6
	p := piece{width: width, height: tall}
	if !(t.Max > t.Min && t.High >= t.Low) {
		return p
	}
	at := func(us float64) float64 { return min(max((us-t.Min)/(t.Max-t.Min), 0), 1) * width }
	low, high := at(t.Low), at(t.High)
	middle := at((t.Min + t.Max) / 2)
	p.marks = []mark{
		box{low, 0.5, high - low, tall - 1, 0.25, figure.Fill{Pattern: figure.Rising, Ink: figure.Black}, figure.Black},
		box{0, 0.5, width, tall - 1, 0.25, figure.Fill{}, figure.Black},
		stroke{middle, 0, middle, tall, 0.35, figure.Whole, figure.Black},
	}
	return p
}

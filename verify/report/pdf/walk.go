package pdf

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// Widths of the columns of the walk-around, in millimetres; what must be seen has the rest.
const (
	walkNumber  = 8.0
	walkPicture = 82.0 // so that the letters in a picture are read at arm's length
	walkSeen    = 34.0
	cellSides   = 1.2
	cellEnds    = 1.2
)

// mostTall is how tall a row of the walk-around gets; what does not fit goes on in another.
const mostTall = 110.0

// walkAround is one row for every stop, with room to tick and to write.
func (d *document) walkAround() {
	stops := d.checks.Walk()
	if len(stops) == 0 {
		return
	}
	d.turn()
	d.section("The walk-around, with the model in hand")
	d.lead(d.fonts.text(d.inner(), bit{
		"Go through the rows in this order. Set the controls as a row says, look at the model from behind, and tick " +
			"what is seen as it stands here. If anything else is seen, write it beside the box, and do not fly before it is explained.", body}))
	if d.report.Paper != nil {
		d.lead(d.drawn(figure.Legend(), d.inner()))
	}
	var last result.Stage
	for n, s := range stops {
		if s.Stage != last {
			if n > 0 {
				d.ended()
			}
			d.stage(s.Stage, stops)
			last = s.Stage
		}
		d.rows(n+1, s)
	}
	d.ended()
}

// stage begins a stage of the walk-around: its name stands above its rows on every page.
func (d *document) stage(s result.Stage, stops []said.Stop) {
	all, failed := 0, 0
	for _, one := range stops {
		if one.Stage == s {
			all += len(one.Checks)
			for _, i := range one.Checks {
				if !d.report.Checks[i].Passed {
					failed++
				}
			}
		}
	}
	heading := strings.ToUpper(string(s)) + ": " + said.Count(all, "check")
	if failed > 0 {
		heading += fmt.Sprintf(", %d FAILED", failed)
	}
	wide := d.inner()
	p := framed(padded(d.fonts.text(wide-2*cellSides, bit{heading, lettering{large, bold, figure.Black}}), cellSides, 0.6),
		0.2, whole(figure.Pale), figure.Black)
	if s == result.MotorAndSignal && len(d.report.Cautions) > 0 {
		p.below(d.fonts.signed(heed, wide, bit{d.report.Cautions[0], strong}), 0.6)
	}
	columns := []float64{walkNumber + d.pictureWidth(), d.mustWidth(), walkSeen}
	x := 0.0
	row := p.height + 0.6
	for i, name := range []string{"set the controls", "what must be seen", "seen so, or what instead"} {
		p.add(d.fonts.text(columns[i]-cellSides, bit{name, quiet}), x+cellSides, row)
		x += columns[i]
	}
	p.height += 0.8
	d.table(p)
}

func (d *document) pictureWidth() float64 { return walkPicture }

// mustWidth is the width of the column of what must be seen.
func (d *document) mustWidth() float64 {
	return d.inner() - walkNumber - d.pictureWidth() - walkSeen
}

// rows is a stop as one row, or as several where there is too much to see for one.
func (d *document) rows(number int, s said.Stop) {
	sights := d.checks.Sights(s.Checks)
	pieces := make([]piece, len(sights))
	from, tall := 0, 0.0
	for k := range sights {
		pieces[k] = d.looked(&sights[k])
		if tall += pieces[k].height + gapPiece; tall > mostTall && k > from {
			d.row(number, s, from > 0, sights[from:k], pieces[from:k])
			from, tall = k, pieces[k].height
		}
	}
	d.row(number, s, from > 0, sights[from:], pieces[from:])
}

// looked is what must be seen with, right of it, room to say whether it is.
func (d *document) looked(s *said.Sight) piece {
	var p piece
	p.add(d.sight(s), 0, 0)
	p.add(d.seen(s), d.mustWidth(), 0)
	return p
}

// row is one row of the walk-around, or one more of the same stop.
func (d *document) row(number int, s said.Stop, continued bool, sights []said.Sight, pieces []piece) {
	set := s.Pose
	if set == "" {
		set = "as the sentence says"
	}
	if continued {
		set += " (the same, continued)"
	}
	left := d.fonts.text(d.pictureWidth()-2*cellSides, bit{set, strong})
	var checks []int
	var middle piece
	for k := range sights {
		checks = append(checks, sights[k].Checks...)
		middle.below(pieces[k], gapPiece)
	}
	left.below(d.behind(checks, d.pictureWidth()-2*cellSides), 0.8)
	cells := []struct {
		width float64
		piece piece
	}{
		{walkNumber, d.fonts.text(walkNumber-cellSides, bit{fmt.Sprint(number), lettering{large, bold, figure.Black}})},
		{d.pictureWidth(), left}, {d.mustWidth() + walkSeen, middle},
	}
	p := piece{width: d.inner()}
	x := 0.0
	for _, c := range cells {
		p.add(c.piece, x+cellSides, cellEnds)
		x += c.width
	}
	p.height += cellEnds
	p = framed(p, 0.2, figure.Fill{}, figure.Black)
	x = walkNumber + d.pictureWidth()
	for range 2 {
		p.marks = append(p.marks, stroke{x, 0, x, p.height, 0.2, figure.Whole, figure.Grey})
		x += d.mustWidth()
	}
	d.put("row", p)
}

// mostBoxes is how many parts have a box each; of more, one box is for all.
const mostBoxes = 4

// seen is a box to tick for every part of a sight, and a line to write on. What failed has
// none: it is not to be seen so.
func (d *document) seen(s *said.Sight) piece {
	wide := walkSeen - 2*cellSides
	const size, gap = 4.0, 1.2
	if !s.Passed {
		return d.fonts.signed(badCross, wide, bit{"do not fly", badly})
	}
	var parts []string
	for _, i := range s.Checks {
		if part := d.report.Checks[i].Subject; !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	var p piece
	box := func(label string) {
		one := tickBox(size)
		name := d.fonts.text(wide-size-gap, bit{label, note})
		one.add(name, size+gap, max((size-name.height)/2, 0))
		p.below(one, 0.4)
	}
	switch n := len(parts); {
	case n == 1:
		p = beside(gap, tickBox(size), d.fonts.blank(wide-size-gap, ""))
		p.height = max(p.height, size)
		return p
	case n > mostBoxes:
		box("all of this seen")
	default:
		for _, part := range parts {
			box(part)
		}
	}
	p.below(d.fonts.blank(wide, ""), 0)
	return p
}

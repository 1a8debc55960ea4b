package pdf

import (
	"slices"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result/said"
)

// cardRow is one position of the controls, of whatever stage, and what is to be seen there.
type cardRow struct {
	set   string
	sees  []see
	fails []string
}

// see is a place and the parts that stand there.
type see struct {
	parts []string
	says  string
}

// cardRows are all positions that a check sets and at which there is something to see, in
// walking order, each once.
func (d *document) cardRows() []cardRow {
	var rows []cardRow
	index := map[string]int{}
	for i := range d.report.Checks {
		c := &d.report.Checks[i]
		if said.Everywhere(c) {
			continue
		}
		set := strings.Join(c.Pose, ", ")
		if set == "" {
			set = "at rest"
		}
		k, known := index[set]
		if !known {
			k = len(rows)
			index[set] = k
			rows = append(rows, cardRow{set: set})
		}
		rows[k].take(d, i)
	}
	return slices.DeleteFunc(rows, func(r cardRow) bool { return len(r.sees)+len(r.fails) == 0 })
}

// trailingEdge is what UP and DOWN mean everywhere on the card; its head says so once.
const trailingEdge = "trailing edge "

// take adds what one check looks at: where its parts stand, or, where no pictures are at
// hand, what it got. What failed is always told.
func (r *cardRow) take(d *document, i int) {
	c := &d.report.Checks[i]
	if !c.Passed {
		r.fails = append(r.fails, strings.TrimSpace(c.Subject+" "+c.Got)+", wanted "+c.Wanted)
		return
	}
	p := d.pictureOf(i)
	if p == nil {
		r.add(c.Subject, c.Got)
		return
	}
	if ofChannel(c) {
		return
	}
	for _, part := range p.Of {
		if part >= 0 && part < len(p.Stands) && part < len(d.report.Paper.Shape.Parts) {
			r.add(d.report.Paper.Shape.Parts[part].Name, strings.TrimPrefix(p.Stands[part].Says, trailingEdge))
		}
	}
}

func (r *cardRow) add(part, says string) {
	for i := range r.sees {
		if s := &r.sees[i]; s.says == says {
			if !slices.Contains(s.parts, part) {
				s.parts = append(s.parts, part)
			}
			return
		}
	}
	r.sees = append(r.sees, see{[]string{part}, says})
}

// cardRow lays out one row.
func (d *document) cardRow(r *cardRow, wide, size float64) piece {
	plain, heavy := lettering{size, regular, figure.Black}, lettering{size, bold, figure.Black}
	mark := tickBox
	bits := []bit{{r.set + ": ", heavy}}
	for k, fail := range r.fails {
		mark = badCross
		if k > 0 {
			fail = "; FAIL " + fail
		} else {
			fail = "FAIL " + fail
		}
		bits = append(bits, bit{fail, lettering{size, bold, figure.Bad}})
	}
	for k, s := range r.sees {
		if k > 0 || len(r.fails) > 0 {
			bits = append(bits, bit{"; ", plain})
		}
		bits = append(bits, bit{strings.TrimSpace(strings.Join(s.parts, ", ") + " " + s.says), plain})
	}
	return d.fonts.signed(mark, wide, bits...)
}

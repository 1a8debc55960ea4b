package pdf

import (
	"math"
	"slices"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// cardRow is one position of the controls, of whatever stage, and what is to be seen there.
type cardRow struct {
	set   string
	pose  []string
	far   float64 // the furthest that a part stands from neutral
	motor bool    // a motor is looked at
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
			rows = append(rows, cardRow{set: set, pose: c.Pose})
		}
		rows[k].motor = rows[k].motor || c.Stage == result.MotorAndSignal
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
	if said.Unseen(c) {
		return
	}
	for _, part := range p.Of {
		if part >= 0 && part < len(p.Stands) && part < len(d.report.Paper.Shape.Parts) {
			if d.report.Paper.Shape.Parts[part].Motion != result.Power {
				r.far = max(r.far, math.Abs(p.Stands[part].At))
			}
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

// mostTelling are rows for a card that has not room for all: what failed, then each control
// by itself to its end, where its throws are widest, the motor
// and the loss of signal; then all others, each lot in walking order.
func mostTelling(rows []cardRow) []cardRow {
	widest := map[string]int{} // for each end of a control, the row that is about it alone
	for i := range rows {
		end, ok := rows[i].oneEnd()
		if !ok {
			continue
		}
		if k, known := widest[end]; !known || rows[i].far > rows[k].far {
			widest[end] = i
		}
	}
	rank := make(map[int]int, len(rows))
	order := make([]int, len(rows))
	for i := range rows {
		order[i], rank[i] = i, 2
		end, _ := rows[i].oneEnd()
		if k, known := widest[end]; known && k == i || rows[i].motor || slices.Contains(rows[i].pose, said.SignalLost) {
			rank[i] = 1
		}
		if len(rows[i].fails) > 0 {
			rank[i] = 0
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return rank[a] - rank[b] })
	sorted := make([]cardRow, len(rows))
	for n, i := range order {
		sorted[n] = rows[i]
	}
	return sorted
}

// oneEnd is the control that alone stands at its end, and where: "roll stick full right".
// At most one thing else is set beside it, such as a rate switch.
func (r *cardRow) oneEnd() (end string, ok bool) {
	for _, phrase := range r.pose {
		if strings.Contains(phrase, " full ") {
			if end != "" {
				return "", false
			}
			end = phrase
		}
	}
	return end, end != "" && !strings.Contains(end, " trim ") && len(r.pose) <= 2
}

// cardRow lays out one row.
func (d *document) cardRow(r *cardRow, wide, size float64) piece {
	plain, heavy := lettering{size, regular, figure.Black}, lettering{size, bold, figure.Black}
	mark := tickBox
	bits := []bit{{r.set + ": ", heavy}}
	more := len(r.fails) + len(r.sees)
	add := func(words string, as lettering) {
		if more--; more > 0 {
			words += ";"
		}
		bits = append(bits, bit{words + " ", as})
	}
	for _, fail := range r.fails {
		mark = badCross
		add("FAIL "+fail, lettering{size, bold, figure.Bad})
	}
	for _, s := range r.sees {
		add(strings.TrimSpace(strings.Join(s.parts, ", ")+" "+s.says), plain)
	}
	return d.fonts.signed(mark, wide, bits...)
}

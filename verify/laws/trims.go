package laws

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/prove"
)

var trims = law{Info{"trims", "Trims",
	"With a trim anywhere, its ends included, full stick still takes each surface of that axis past where it stands with both centred, and by what counts as a movement. Asked of surfaces that the stick alone moves so at every switch and lever position."},
	func(mk *maker) {
		trimmed := false
		for i := range mk.s.Controls {
			if mk.s.Controls[i].Kind == mixcore.TrimControl {
				trimmed = true
				mk.leavesControl(i)
			}
		}
		switch {
		case len(mk.claims) > 0:
		case trimmed:
			mk.none = "no surface is moved by its stick at every switch and lever position"
		default:
			mk.none = "no trims"
		}
	}}

// leavesControl claims of every surface that a trim's sticks move that they still do
// so with the trim at its ends.
func (mk *maker) leavesControl(trim int) {
	for _, stick := range mk.sticksOf(trim) {
		for part := range mk.s.Parts {
			way := mk.follows(part, stick)
			if way == 0 {
				continue
			}
			c := claim{
				sentence: "with the " + mk.s.Controls[trim].Name + " anywhere, full " + mk.s.Controls[stick].Name + " still moves the " + mk.s.Parts[part].Name + " its way",
				spare: func(_ int, margin float64) (spare, bool) {
					p := &mk.s.Parts[part]
					left := margin + mk.still(part)
					return spare{left, unitOf(p), amount(p, left) + " past where it stands with both centred"}, true
				},
				seen: func(v *view) sight { return mk.notPast(v, part) },
			}
			for side, at := range ends {
				to := math.Copysign(float64(way), at*float64(way))
				least, most := mk.moved(part, stick, side, nil)
				if to > 0 && least >= mk.still(part) || to < 0 && most <= -mk.still(part) {
					c.needs = append(c.needs, mk.past(part, stick, trim, at, to))
				}
			}
			if c.needs != nil {
				mk.add(c)
			}
		}
	}
}

// past is that a part goes past where it stands with stick and trim centred, plus or
// minus, with the stick at an end and the trim anywhere.
func (mk *maker) past(part, stick, trim int, at, to float64) prove.Claim {
	now := mk.handsOff()
	now[stick], now[trim] = prove.At(at), prove.Whole(&mk.s.Controls[trim])
	low, high := mk.still(part), float64(beyond)
	if to < 0 {
		low, high = -beyond, -low
	}
	return prove.Claim{Now: now, Other: mk.beside(stick, trim), Want: prove.Change(part, low, high)}
}

// sticksOf are the sticks that a trim belongs to.
func (mk *maker) sticksOf(trim int) []int {
	var list []int
	for _, stick := range mk.sticks() {
		for d := range mk.s.Demands {
			if mk.s.Demands[d].Trim == trim && mk.s.Demands[d].From == stick {
				list = append(list, stick)
				break
			}
		}
	}
	return list
}

// notPast says what a part does with stick and trim.
func (mk *maker) notPast(v *view, part int) sight {
	p := &mk.s.Parts[part]
	return sight{
		got: moves(p, v.before.Output.Parts[part], v.now.Output.Parts[part], mk.m.Still) +
			" against where it stands with both centred",
		shows: []shown{showPart(part, chain.Stuck)},
	}
}

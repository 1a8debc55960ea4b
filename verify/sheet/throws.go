package sheet

import (
	"math"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// throwsOf is how far every stick axis and lever moves every hinged part and wheel, for
// each state of the switches and levers that changes it: those that rates, and lines of
// the mix which the control comes in by, look at. Everything else rests. A throw is the
// furthest that the part goes on the control's whole way, which need not be at its end.
func throwsOf(m *airframes.Model) []result.Throw {
	t := thrower{m: m, s: &m.Setup, probe: poses.New(m.Plan), out: m.Plan.NewOutput(), rest: m.Plan.Rest()}
	t.at = t.rest.Clone()
	var list []result.Throw
	for part := range t.s.Parts {
		if !t.s.Parts[part].Motion.Hinged() {
			continue
		}
		reach := t.probe.PartReach(part)
		for c := range t.s.Controls {
			if kind := t.s.Controls[c].Kind; reach[c] && (kind == mixcore.AxisControl || kind == mixcore.LeverControl) {
				list = append(list, t.rows(part, c)...)
			}
		}
	}
	return list
}

// thrower works out throws.
type thrower struct {
	m     *airframes.Model
	s     *mixcore.Setup
	probe *poses.Probe
	out   *mixcore.Output
	rest  mixcore.Input
	at    mixcore.Input // scratch
}

// reached is how far a part goes one way, and where the control stands there.
type reached struct {
	by mixcore.Degrees // 0 or more
	at float64
}

// throw is both ways: minus is UP or RIGHT, plus DOWN or LEFT.
type throw struct{ minus, plus reached }

// alike is how far apart two throws may be that are one row, in degrees: less than is
// shown.
const alike = 0.01

func (a throw) alike(b throw) bool {
	one := func(a, b reached) bool {
		return math.Abs(float64(a.by-b.by)) <= alike && (a.at == b.at || a.by <= alike)
	}
	return one(a.minus, b.minus) && one(a.plus, b.plus)
}

// rows are the throws of one part by one control.
func (t *thrower) rows(part, control int) []result.Throw {
	b := t.bearing(part, control)
	states, throws := b.states(), []throw(nil)
	for _, state := range states {
		t.pose(&b, state)
		throws = append(throws, t.throw(part, control))
	}
	var rows []result.Throw
	done := make([]bool, len(states))
	for i := range states {
		if done[i] {
			continue
		}
		var group []int
		for k := i; k < len(states); k++ {
			if !done[k] && throws[i].alike(throws[k]) {
				done[k], group = true, append(group, k)
			}
		}
		if ends := t.ends(part, control, throws[i]); len(ends) > 0 {
			partner, differs := t.partner(part, control, &b, states, group, throws)
			rows = append(rows, result.Throw{
				Part: t.s.Parts[part].Name, Control: t.s.Controls[control].Name,
				When: b.when(t.s, states, group), Ends: ends, Partner: partner, Differs: differs,
			})
		}
	}
	return rows
}

// pose puts everything to rest but what a state is about.
func (t *thrower) pose(b *bearing, state []int) {
	copy(t.at.Position, t.rest.Position)
	for i, choice := range state {
		t.at.Position[b.controls[i]] = b.places[i][choice]
	}
}

// throw is how far a control moves a part from where it stands with the sticks centred,
// in the pose that was set.
func (t *thrower) throw(part, control int) throw {
	some := t.m.Plan.Some([]int{part})
	angle := func(x float64) mixcore.Degrees {
		t.at.Position[control] = x
		t.m.Plan.EvalSome(&t.at, &some, t.out)
		return t.out.Parts[part].Angle
	}
	rest := t.rest.Position[control]
	neutral := angle(rest)
	var far throw
	look := func(x float64) {
		by := angle(x) - neutral
		if -by > far.minus.by+same {
			far.minus = reached{-by, x}
		}
		if by > far.plus.by+same {
			far.plus = reached{by, x}
		}
	}
	low, high := t.s.Controls[control].Range()
	look(low)
	look(high)
	if !t.steady(part, control) {
		t.search(control, look, angle)
	}
	t.at.Position[control] = rest
	return far
}

// ends are the two ends of a throw, as far as the part goes there by more than counts as
// still: UP and then DOWN, LEFT and then RIGHT.
func (t *thrower) ends(part, control int, far throw) []result.ThrowEnd {
	p := &t.s.Parts[part]
	var ends []result.ThrowEnd
	add := func(r reached, plus bool) {
		if r.by < t.m.Still {
			return
		}
		off := offOf(p.Kind, r.by)
		end := result.ThrowEnd{
			Way: wording.Direction(p.Motion, plus), At: wording.Setting(t.s, control, r.at), Degrees: neat(float64(r.by)),
			Tolerance: result.Tolerance{Degrees: neat(float64(off))},
		}
		if p.Chord > 0 {
			end.Millimetres = neat(float64(mixcore.ChordTravel(p.Chord, r.by)))
			end.Tolerance.Millimetres = neat(float64(tolerance(p.Chord, r.by, off)))
		}
		ends = append(ends, end)
	}
	add(far.minus, false)
	add(far.plus, true)
	if p.Motion == mixcore.LeftRight {
		slices.Reverse(ends)
	}
	return ends
}

package laws

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

var stops = law{Info{"stops", "Stops",
	"No surface comes to its stop, where the servo stalls and the stick does nothing more. A spoiler or airbrake may rest on its seat."},
	func(mk *maker) {
		for i := range mk.s.Parts {
			p := &mk.s.Parts[i]
			low, high := mk.shortOfStops(i)
			if !p.Motion.Hinged() || isFree(low, high) {
				continue
			}
			mk.add(claim{
				sentence: "the " + p.Name + " never reaches its stop",
				needs:    []prove.Claim{{Now: mk.everywhere(), Want: prove.Place{Part: i, Low: low, High: high}}},
				spare: func(_ int, margin float64) (spare, bool) {
					left := margin + stopReach
					return spare{left, "°", wording.Angle(mixcore.Degrees(left)) + " short of its stop"}, true
				},
				seen: func(v *view) sight { return mk.atStop(v, i) },
			})
		}
		if len(mk.claims) == 0 {
			mk.none = "no surface has stops in the airframe file"
		}
	}}

// shortOfStops is between which angles a part does not count as being at a stop. What
// rests on its seat may do so.
func (mk *maker) shortOfStops(part int) (low, high float64) {
	p := &mk.s.Parts[part]
	low, high = unlessBeyond(stopReach-float64(p.Stops.Minus)), unlessBeyond(float64(p.Stops.Plus)-stopReach)
	if p.Kind != "spoiler" && p.Kind != "airbrake" {
		return low, high
	}
	mk.m.Plan.Eval(&mk.rest, mk.out[0])
	if at := float64(mk.out[0].Parts[part].Angle); at >= high {
		high = beyond
	} else if at <= low {
		low = -beyond
	}
	return low, high
}

// atStop says how a part stands at its stop, and from where on.
func (mk *maker) atStop(v *view, part int) sight {
	p, o := &mk.s.Parts[part], v.now.Output.Parts[part]
	low, high := mk.shortOfStops(part)
	got := "the " + p.Name + " is at its stop, " + wording.Position(p, o)
	b := bite{
		bites: func(out *mixcore.Output) bool {
			at := float64(out.Parts[part].Angle)
			return !(at > low && at < high)
		},
		lost: func(t *mixcore.Trace) float64 { return math.Abs(t.Parts[part].Wanted - float64(t.Parts[part].Angle)) },
		say:  func(lost float64) string { return wording.Angle(mixcore.Degrees(lost)) },
	}
	return sight{got: got + mk.biteWords(b, v), shows: []shown{showPart(part, chain.Amount)}}
}

package smt

import (
	"math"
	"math/big"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
)

// closeOutput is how closely the output is found at which a part reaches a place, in
// percent.
const closeOutput = 1e-9

// beyond says where a part that one four-bar drives is beyond a place, in degrees: more
// than it if above, else less. Neither a four-bar nor a stop turns back, so that this
// is so beyond one output, which is found on the Plan by halving: with the Plan's own
// accuracy taken off and at the near end of the last half, so that no position at which
// the part is beyond the place is left out.
func (v *view) beyond(part int, at float64, above bool) truth {
	p := &v.s.setup.Parts[part]
	if above && at >= float64(p.Stops.Plus) || !above && at <= -float64(p.Stops.Minus) {
		return certain(false)
	}
	if above && at < -float64(p.Stops.Minus) || !above && at > float64(p.Stops.Plus) {
		return certain(true) // a stop holds it beyond the place, whatever the linkage asks
	}
	d := &p.Drives[0]
	low, high := v.s.setup.Channels[d.Channel].Reach()
	accuracy := v.s.plan.DriveAccuracy(part, 0, interval.Range{Low: float64(low), High: float64(high)})
	v.s.off(ratOf(2 * accuracy))
	kept := func(out float64) bool {
		angle := float64(v.s.plan.DriveAngle(part, 0, mixcore.Percent(out)))
		if above {
			return angle <= at-accuracy
		}
		return angle >= at+accuracy
	}
	a, b := float64(low), float64(high)
	switch {
	case kept(a) && kept(b):
		return certain(false)
	case !kept(a) && !kept(b):
		return certain(true)
	}
	good, bad := a, b
	if !kept(a) {
		good, bad = b, a
	}
	for math.Abs(good-bad) > closeOutput {
		if middle := (good + bad) / 2; kept(middle) {
			good = middle
		} else {
			bad = middle
		}
	}
	out := v.output(d.Channel)
	word := "drops below"
	if above {
		word = "rises above"
	}
	remark(&v.s.body, "The angle of %s %s %s degrees beyond an output of %s percent, found by\nhalving to within %s percent.",
		p.Name, word, ratOf(at).FloatString(3), ratOf(good).FloatString(6), ratOf(closeOutput).FloatString(9))
	if good < bad {
		return compare(">", out, exactly(ratOf(good)))
	}
	return compare("<", out, exactly(ratOf(good)))
}

// byOutput says whether a part's place can be moved back to its output.
func (s *script) byOutput(part int) bool {
	p := &s.setup.Parts[part]
	return p.Motion.Hinged() && len(p.Drives) == 1 && p.Drives[0].Linkage != nil
}

// bound is a bound of a claim; nil where it is infinite on its own side.
func bound(x float64, side int) *big.Rat {
	switch {
	case math.IsInf(x, side):
		return nil
	case math.IsNaN(x) || math.IsInf(x, 0):
		refuse("a bound of the claim is %v", x)
	}
	return ratOf(x)
}

package laws

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

// readTo is how finely a throw is read off a gauge or ruler, as a share of the whole
// travel of the surface: so much a measured pair may differ. Common practice, no
// source.
const readTo = 0.02

var symmetry = law{Info{"symmetry", "Left and right",
	"What the sticks do to one side, they do to the other when they are moved the other way, to within what counts as still; where a side was measured, to within 2 % of its whole travel, for a gauge reads no finer. Asked of pairs that are alike in kind, size and place."},
	func(mk *maker) {
		for _, pair := range poses.Pairs(mk.s) {
			if mk.alike(pair) {
				mk.mirrors(pair)
			}
		}
		if len(mk.claims) == 0 {
			mk.none = "no port and starboard parts are alike"
		}
	}}

// alike says whether the two of a pair are each other's mirror image on the airframe.
func (mk *maker) alike(pair poses.Pair) bool {
	a, b := &mk.s.Parts[pair.Port], &mk.s.Parts[pair.Starboard]
	return a.Motion == b.Motion && a.Chord == b.Chord && a.Span == b.Span && a.Place == b.Place
}

// mirrors claims that the starboard part does at the mirrored pose what the port part
// does.
func (mk *maker) mirrors(pair poses.Pair) {
	port, starboard := &mk.s.Parts[pair.Port], &mk.s.Parts[pair.Starboard]
	sign := 1.0
	if port.Motion == mixcore.LeftRight {
		sign = -1 // the mirror image of left is right
	}
	most := mk.mayDiffer(pair)
	other := prove.Beside(mk.s)
	for i := range mk.s.Controls {
		if c := &mk.s.Controls[i]; isAxis(c) && (c.Axis == mixcore.Roll || c.Axis == mixcore.Yaw) {
			other[i].Kind = prove.Mirrored
		}
	}
	mk.add(claim{
		mirror:   true,
		sentence: "the " + port.Name + " and the " + starboard.Name + " mirror each other, to within " + amount(port, most),
		needs: []prove.Claim{{Now: mk.everywhere(), Other: other,
			Want: prove.Differ{A: pair.Port, B: pair.Starboard, Sign: sign, Low: -most, High: most}}},
		spare: func(_ int, margin float64) (spare, bool) {
			return spare{margin, unitOf(port), amount(port, margin) + " to spare"}, true
		},
		seen: func(v *view) sight { return mk.uneven(v, pair, sign) },
	})
}

// mayDiffer is how far the two of a pair may be apart, in degrees or percent.
func (mk *maker) mayDiffer(pair poses.Pair) float64 {
	most, measured := mk.still(pair.Port), false
	low, high := math.Inf(1), math.Inf(-1)
	for _, part := range []int{pair.Port, pair.Starboard} {
		for i := range mk.s.Parts[part].Drives {
			for _, point := range mk.s.Parts[part].Drives[i].Table {
				low, high, measured = min(low, point.Y), max(high, point.Y), true
			}
		}
	}
	if measured {
		most = max(most, readTo*(high-low))
	}
	return most
}

// uneven says where each of a pair stands.
func (mk *maker) uneven(v *view, pair poses.Pair, sign float64) sight {
	port, starboard := &mk.s.Parts[pair.Port], &mk.s.Parts[pair.Starboard]
	here, there := v.now.Output.Parts[pair.Port], v.before.Output.Parts[pair.Starboard]
	apart := math.Abs(here.Place() - sign*there.Place())
	with := "there"
	if !mk.samePose(v) {
		with = "with " + wording.Listed(wording.Pose(mk.s, &v.before.Input))
	}
	return sight{
		got: "the " + port.Name + ": " + wording.Position(port, here) + "; the " + starboard.Name + ": " +
			wording.Position(starboard, there) + " " + with + ": " + amount(port, apart) + " apart",
		shows: []shown{showPart(pair.Port, chain.Amount), {part: pair.Starboard, channel: none, doubt: chain.Amount, mirrored: true}},
	}
}

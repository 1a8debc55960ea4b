package sheet

import (
	"math"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/wording"
)

// partner says how a part's throw differs from that of its partner on the other side as
// the control goes the other way, or for pitch and levers the same way, where it differs
// most among some states, and by how much at most; empty for none.
func (t *thrower) partner(part, control int, b *bearing, states [][]int, group []int, throws []throw) (words string, differs float64) {
	other, ok := poses.Partner(t.s, part)
	if !ok {
		return "", 0
	}
	p := &t.s.Parts[part]
	var most [2]float64 // minus, plus: how much further the part goes
	var varies [2]bool  // it is not the same in all states
	for n, i := range group {
		t.pose(b, states[i])
		theirs := t.throw(other, control)
		if p.Motion == mixcore.LeftRight { // what is LEFT here is RIGHT there
			theirs.minus, theirs.plus = theirs.plus, theirs.minus
		}
		for k, by := range []float64{float64(throws[i].minus.by - theirs.minus.by), float64(throws[i].plus.by - theirs.plus.by)} {
			varies[k] = varies[k] || n > 0 && math.Abs(by-most[k]) > alike
			if math.Abs(by) > math.Abs(most[k]) {
				most[k] = by
			}
		}
	}
	var said []string
	for _, k := range order(p.Motion) {
		if math.Abs(most[k]) < phrase.ClearlyMore {
			continue
		}
		word := " more "
		if most[k] < 0 {
			word = " less "
		}
		differs = max(differs, math.Abs(most[k]))
		amount := wording.Angle(mixcore.Degrees(most[k]))
		if varies[k] {
			amount = "up to " + amount
		}
		said = append(said, amount+word+wording.Direction(p.Motion, k == 1))
	}
	if said == nil {
		return "", 0
	}
	words = strings.Join(said, " and ") + " than the " + t.s.Parts[other].Name
	if p.Motion == mixcore.LeftRight {
		words += " the other way"
	}
	return words, differs
}

// order is UP before DOWN, LEFT before RIGHT, as indices of minus and plus.
func order(m mixcore.Motion) []int {
	if m == mixcore.LeftRight {
		return []int{1, 0}
	}
	return []int{0, 1}
}

package phrase

import (
	"fmt"
	"math"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/wording"
)

// adverseSlack is how much more adverse yaw than with equal throws does not
// count as growing: linkages make equal throws a little unequal. A modelling
// choice, no source.
const adverseSlack = 0.02

// adverseYaw reads "adverse yaw does not grow".
func (r *reader) adverseYaw(o *Outcome) bool {
	start := r.at
	r.words("the")
	if !r.words("adverse", "yaw") {
		r.at = start
		return false
	}
	subject := r.span(start)
	if !r.words("does", "not", "grow") && !r.words("doesn't", "grow") {
		r.fail(across(r.tokens[start], r.last(), CodeUnknownSentence, "what of the adverse yaw?", "write \"adverse yaw does not grow\""))
		return false
	}
	o.Subject, o.Verb = Subject{Model: true, At: subject}, NoMoreAdverse
	return true
}

// adverse judges the adverse yaw of a roll: that of the wing's surfaces against
// equal throws, and that nothing else which moves yaws against the roll.
func (j *judge) adverse(out *mixcore.Output) seen {
	c := j.air.Change(j.before, out)
	ratio, ok := j.air.AdverseYaw(j.before, out)
	if !ok {
		return seen{got: "no surface of the wing rolls the model, so this shows nothing"}
	}
	way, against := "right", effect.Minus
	if c.Roll < 0 {
		way, against = "left", effect.Plus
	}
	yaw := judge{Vocabulary: j.Vocabulary, o: &Outcome{Axis: mixcore.Yaw}}
	if parts := yaw.turning(&c, against); len(parts) > 0 {
		verb := map[bool]string{true: "yaws", false: "yaw"}[len(parts) == 1]
		return seen{got: fmt.Sprintf("rolls %s, and the %s %s it against that", strings.ToUpper(way), j.named(parts), verb),
			explain: explained(parts, chain.Direction)}
	}
	s := seen{passed: ratio <= 1+adverseSlack}
	size := mixcore.Percent(math.Abs(ratio-1) * 100)
	bound := mixcore.Percent(0)
	if ratio > 1 {
		bound = adverseSlack * 100
	}
	switch said := wording.PercentBeside(size, bound); {
	case said == wording.Percent(0):
		s.got = "as much adverse yaw as with equal throws (estimate)"
	case ratio < 0:
		s.got = "no adverse yaw: the drag of the surfaces turns it into the roll (estimate)"
	case ratio < 1:
		s.got = said + " less adverse yaw than with equal throws (estimate)"
	default:
		s.got = said + " more adverse yaw than with equal throws (estimate)"
	}
	if !s.passed {
		s.explain = explained(j.downgoing(out), chain.Amount)
	}
	return s
}

// downgoing are the parts of the wing that went down, the furthest first.
func (j *judge) downgoing(out *mixcore.Output) []int {
	var parts []int
	gone := func(i int) float64 { return float64(out.Parts[i].Angle - j.before.Parts[i].Angle) }
	for i := range j.setup.Parts {
		if j.air.Counted(i) && gone(i) >= j.still(&j.setup.Parts[i]) {
			parts = append(parts, i)
		}
	}
	strongestFirst(parts, gone)
	return parts
}

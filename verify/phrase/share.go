package phrase

import (
	"math"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/wording"
)

// leastHelix is the least pb/2V, in radians, that the other surfaces must give
// for a share of it to mean anything: a tenth of a degree a second for each
// metre a second and metre of span.
const leastHelix = 0.001

// addsToRoll reads "adds at least 25 % to the roll".
func (r *reader) addsToRoll(o *Outcome) bool {
	start := r.at
	if !r.any("adds", "add") {
		return false
	}
	from := r.at
	amount, ok := r.amount()
	switch {
	case r.problem != nil:
	case !ok:
		r.fail(problemAt(r.peek(), CodeBadNumber, "adds how much?", "write it as \"adds at least 25 % to the roll\""))
	case amount.Unit != "%":
		r.fail(across(r.tokens[from], r.last(), CodeBadUnit, "a part of the roll is a percent", "write it as \"adds at least 25 % to the roll\""))
	case min(amount.Value, amount.Low) < 0:
		r.fail(across(r.tokens[from], r.last(), CodeBadNumber, "what is taken from the roll is not added to it", "write the amount without a sign"))
	case !r.words("to", "the", "roll"):
		r.fail(across(r.tokens[start], r.last(), CodeUnknownSentence, "adds to what?", "write it as \"adds at least 25 % to the roll\""))
	default:
		r.words("rate")
		o.Verb, o.Amount = AddsToRoll, amount
		r.rollCounts(o, r.tokens[start])
	}
	return true
}

// rollCounts refuses a share that cannot be worked out.
func (r *reader) rollCounts(o *Outcome, verb token) {
	place := Problem{Column: o.Subject.At.Column, Width: o.Subject.At.Width}
	if len(o.Subject.Channels) > 0 {
		place.Code, place.Message, place.Hint = CodeWrongMotion, "the channel cannot do that", "ask the part that it moves"
		r.fail(&place)
		return
	}
	others := false
	for i := range r.setup.Parts {
		others = others || r.air.Counted(i) && !slices.Contains(o.Subject.Parts, i)
	}
	for _, i := range o.Subject.Parts {
		if !r.air.Counted(i) {
			place.Code, place.Message = CodeWrongMotion, "what the "+r.setup.Parts[i].Name+" adds to the roll is not worked out"
			place.Hint = "name ailerons, flaps, flaperons or elevons to port or starboard"
			r.fail(&place)
			return
		}
	}
	if !others {
		place.Code, place.Message = CodeUnclearName, "no other part of the wing is left that these could add to"
		place.Hint = "name the part that helps, such as the flaps"
		r.fail(&place)
		return
	}
	if _, missing := r.air.Helix(r.model.Plan.NewOutput()); !missing.None() {
		r.fail(across(verb, r.last(), CodeMissingSize, "the roll cannot be worked out: the airframe file lacks measures", "add "+r.lacking(missing)))
	}
}

// lacking lists the keys that the airframe file lacks for the roll.
func (r *reader) lacking(m effect.Missing) string {
	var list []string
	if m.Wing {
		list = append(list, "wing: {span_mm, root_chord_mm, tip_chord_mm}")
	}
	for _, i := range m.Parts {
		list = append(list, keysFor(&r.setup.Parts[i], sizesLacking(&r.setup.Parts[i])))
	}
	return strings.Join(list, "; ")
}

// sizesLacking are the keys of a surface's size that are not given.
func sizesLacking(p *mixcore.Part) []string {
	var keys []string
	if p.Chord <= 0 {
		keys = append(keys, "chord_mm")
	}
	if p.Span[1] <= p.Span[0] {
		keys = append(keys, "span_mm")
	}
	return keys
}

func keysFor(p *mixcore.Part, keys []string) string { return wording.Listed(keys) + " to " + p.Name }

// addsToRoll judges what the parts add to the roll of all others.
func (j *judge) addsToRoll(out *mixcore.Output) seen {
	was, missing := j.air.Helix(j.before)
	is, _ := j.air.Helix(out)
	if !missing.None() {
		return seen{got: "cannot be worked out: the airframe file lacks measures"}
	}
	named, others := 0.0, 0.0
	share := make([]float64, len(is.Parts))
	for i := range is.Parts {
		share[i] = is.Parts[i] - was.Parts[i]
		if slices.Contains(j.o.Subject.Parts, i) {
			named += share[i]
		} else {
			others += share[i]
		}
	}
	if stray := j.uncounted(out); len(stray) > 0 {
		return seen{got: "cannot be worked out: the " + j.named(stray) + " too would roll it, and that is no part of the estimate",
			explain: explained(stray, chain.Astir)}
	}
	if math.Abs(others) < leastHelix {
		return seen{got: "nothing else rolls the model, so there is nothing to add to", explain: j.shareExplained(share, others)}
	}
	percent := named / others * 100
	s := seen{passed: percent >= 0 && j.o.Amount.holds(percent), got: j.shareGot(percent)}
	if !s.passed {
		s.explain = j.shareExplained(share, others)
	}
	return s
}

// shareGot is a share in words.
func (j *judge) shareGot(percent float64) string {
	plural := len(j.o.Subject.Parts) > 1
	verb, rest := map[bool]string{false: "adds ", true: "add "}[plural], " to the roll (estimate)"
	if percent < 0 {
		verb, rest = map[bool]string{false: "takes ", true: "take "}[plural], " from the roll (estimate)"
	}
	size := mixcore.Percent(math.Abs(percent))
	return verb + wording.PercentBeside(size, mixcore.Percent(j.o.Amount.bound(percent))) + rest
}

// uncounted are parts that roll the model and that the estimate leaves out.
func (j *judge) uncounted(out *mixcore.Output) []int {
	c := j.air.Change(j.before, out)
	var parts []int
	for i := range c.Parts {
		if !j.air.Counted(i) && c.PartAnswer(i, mixcore.Roll) != effect.None && math.Abs(c.Parts[i].Roll) >= effect.Significant*math.Abs(c.Roll) {
			parts = append(parts, i)
		}
	}
	return parts
}

// shareExplained are the parts named that help least, or, where they help too
// much, most.
func (j *judge) shareExplained(share []float64, others float64) []Explained {
	list := explained(nil, chain.Unclear)
	parts := slices.Clone(j.o.Subject.Parts)
	most := j.o.Amount.Kind == AtMost || j.o.Amount.Kind == Under
	slices.SortStableFunc(parts, func(a, b int) int {
		x, y := share[a]*others, share[b]*others
		switch {
		case math.Abs(x-y) <= Rounding*max(math.Abs(x), math.Abs(y)):
			return 0
		case (x < y) != most:
			return -1
		}
		return 1
	})
	for _, i := range parts[:min(len(parts), MostExplained)] {
		e := Explained{Part: i, Doubt: chain.Amount}
		switch {
		case math.Abs(share[i]) < leastHelix:
			e.Doubt = chain.Stuck
		case share[i]*others < 0:
			e.Doubt = chain.Direction
		}
		list = append(list, e)
	}
	return list
}

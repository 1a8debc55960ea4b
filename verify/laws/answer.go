package laws

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// proof decides what a claim needs, until something fails, and puts the answer in
// words. It holds if everything that it needs does, or if some does and the rest has
// no position at which it would have to.
func (r *run) proof(mk *maker, c *claim) result.Proof {
	p := result.Proof{Claim: c.sentence, Assumes: c.assumes}
	proved, open, timed := 0, 0, false
	for i := range c.needs {
		if r.ctx.Err() != nil {
			open++
			break
		}
		d := r.prover.Decide(r.ctx, &c.needs[i], r.how(c, i, p.Boxes))
		p.States, p.Forms, p.Boxes = max(p.States, d.States), p.Forms+d.Forms, p.Boxes+d.Boxes
		timed = timed || d.Timed
		switch d.Answer {
		case prove.Proved:
			proved++
			r.least(&p, mk, c, i, &d)
		case prove.Disproved:
			p.Answer, p.Margin = result.Disproved, nil
			p.Counter, p.LookAt = mk.counter(c, mk.view(&c.needs[i], i, d.Pose), r.options.Replay)
			return mk.ended(p, c, timed)
		case prove.Undecided:
			open++
			if r.ctx.Err() == nil {
				p.Limit = r.limit()
			}
		}
	}
	switch {
	case open > 0:
		p.Answer, p.Margin = result.Undecided, nil
	case proved > 0:
		p.Answer = result.Proved
	default:
		p.Answer = result.Empty
	}
	return mk.ended(p, c, timed)
}

// how are the options of one decision: a margin is looked for where it would be said.
func (r *run) how(c *claim, need, before int) prove.Options {
	o := prove.Options{Boxes: r.options.Boxes}
	if c.spare != nil {
		_, o.Margins = c.spare(need, 0)
	}
	if r.options.Progress != nil {
		o.Progress = func(boxes int) { r.options.Progress(r.done, r.all, c.sentence, before+boxes) }
	}
	return o
}

func (r *run) limit() int {
	if r.options.Boxes > 0 {
		return r.options.Boxes
	}
	return prove.UsualBoxes
}

// ended says what an answer covers, and that it is of the model at rest where that
// matters.
func (mk *maker) ended(p result.Proof, c *claim, timed bool) result.Proof {
	p.Over = mk.over(c, p.States)
	if timed {
		p.Assumes = append([]string{wording.OnceAtRest}, p.Assumes...)
	}
	return p
}

// least keeps the smallest margin of a claim's needs, in words.
func (r *run) least(p *result.Proof, mk *maker, c *claim, need int, d *prove.Decision) {
	if c.spare == nil {
		return
	}
	found, ok := c.spare(need, d.Margin)
	if !ok || d.Pose.Now.Position == nil || p.Margin != nil && p.Margin.Value <= found.value {
		return
	}
	atLeast, _ := c.spare(need, d.AtLeast)
	where := r.simplest(mk, &c.needs[need], d)
	p.Margin = &result.Margin{Text: found.text, Value: found.value, AtLeast: atLeast.value, Unit: found.unit,
		Pose: wording.Pose(mk.s, &where)}
}

// over says what a claim covers: everything that is free in one of its needs.
func (mk *maker) over(c *claim, states int) string {
	all := c.needs[0]
	all.Now = slices.Clone(all.Now)
	for k := range c.needs {
		for i, span := range c.needs[k].Now {
			if span.Low < span.High {
				all.Now[i] = span
			}
		}
	}
	return wording.Over(mk.s, &all, states)
}

// simplest is a pose with every control at rest that can do without changing a margin.
func (r *run) simplest(mk *maker, c *prove.Claim, d *prove.Decision) mixcore.Input {
	at := prove.Pose{Now: d.Pose.Now.Clone(), Other: d.Pose.Other.Clone()}
	for i := range mk.s.Controls {
		was, rest := at.Now.Position[i], mk.rest.Position[i]
		if was == rest || !within(&c.Now[i], rest) {
			continue
		}
		var stood float64
		at.Now.Position[i] = rest
		follows := c.Other != nil && c.Other[i].Kind != prove.Apart && at.Other.Position != nil
		if follows {
			stood, at.Other.Position[i] = at.Other.Position[i], rest
		}
		if c.When != nil && !mk.m.Plan.Holds(c.When, &at.Now) || math.Abs(r.prover.Margin(c, at)-d.Margin) > rounding {
			at.Now.Position[i] = was
			if follows {
				at.Other.Position[i] = stood
			}
		}
	}
	return at.Now
}

// within says whether a span holds a place.
func within(s *prove.Span, at float64) bool {
	if s.Places != nil {
		return slices.Contains(s.Places, int(at))
	}
	return at >= s.Low && at <= s.High
}

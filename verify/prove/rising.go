package prove

import (
	"context"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
)

func (w Rising) uses(p *Prover) uses { return usesOf(p, nil, []int{w.Part}) }

// margin: from Other to Now the control has moved in its plus direction.
func (w Rising) margin(p *Prover, now, other *mixcore.Output) float64 {
	back := w.Sign * (now.Parts[w.Part].Place() - other.Parts[w.Part].Place())
	if back >= -Rounding {
		return 0
	}
	return back
}

// bound is of the slope: a box over which no drive of the part can move it back has
// no margin to lose; of another nothing is known but how far it could move back.
func (w Rising) bound(b *box) rangeOf {
	p := b.b.p
	drives := p.setup.Parts[w.Part].Drives
	variable := b.b.now.variable[w.Control]
	back, rounding := 0.0, 0.0
	for i := range drives {
		t := b.b.tail(w.Part, i, b.b.now.lost)
		r := b.form(t.channel, false)
		b.try(formKey{channel: t.channel})
		slope := r.slopeBy(p, b.spans, variable).Scale(t.rises * w.Sign)
		if slope.Low >= 0 {
			continue
		}
		sum := r.over(p, b.spans, b.fine)
		by := -slope.Low * t.slope(sum).Greatest() * b.spans[variable].Width()
		// No further back than the drive moves at all: not at all where it is held.
		back += min(by, t.over(sum).Width()) / float64(len(drives))
		rounding += 2 * t.accuracy
	}
	// So little over so short a way that all boxes together come to no more than half of
	// Rounding; the other half is for the jumps.
	low, high := p.setup.Controls[w.Control].Range()
	if back <= Rounding/2*b.spans[variable].Width()/(high-low) {
		return interval.Point(0)
	}
	return interval.Range{Low: -back - rounding, High: 0}
}

// decideRising decides a claim of Rising: from each stretch of the control to the next
// by a claim of its own, and within every stretch by the slope.
func (p *Prover) decideRising(ctx context.Context, c *Claim, w Rising, o Options) Decision {
	within := *c
	within.Other = nil
	b := p.newBoard(&within)
	d := Decision{Answer: Proved, States: b.states, Timed: b.uses.timed}
	jumps := b.jumps(w.Control)
	for _, jump := range jumps {
		more := p.run(ctx, p.step(c, w, jump, Rounding/2/float64(len(jumps))), Options{Boxes: max(o.Boxes-d.Boxes, 1), Progress: o.Progress})
		d.Boxes, d.Forms = d.Boxes+more.Boxes, d.Forms+more.Forms
		if more.Answer == Disproved {
			if margin := p.Margin(c, more.Pose); margin < 0 {
				d.Answer, d.Pose, d.Margin = Disproved, more.Pose, margin
				return d
			}
			more.Answer, more.Close = Undecided, true // more than its share of Rounding, and less than all of it
		}
		if more.Answer == Undecided {
			d.Answer, d.Close = Undecided, more.Close
		}
	}
	o.Boxes = max(o.Boxes-d.Boxes, 1)
	more := p.runRising(ctx, &within, w, o)
	d.Boxes, d.Forms = d.Boxes+more.Boxes, d.Forms+more.Forms
	if more.Answer == Proved {
		return d // it moves back nowhere: no place is nearer to it than another
	}
	more.Boxes, more.Forms = d.Boxes, d.Forms
	return more
}

// step is the claim that a part does not move back, by more than slack, from one place
// of a control to another.
func (p *Prover) step(c *Claim, w Rising, from [2]float64, slack float64) *Claim {
	step := *c
	step.WhenBoth = true
	step.Now = append([]Span(nil), c.Now...)
	step.Other, step.OtherLost = Beside(p.setup), c.Lost
	step.Now[w.Control] = At(from[1])
	if p.setup.Controls[w.Control].Kind == mixcore.SwitchControl {
		step.Now[w.Control] = Span{Places: []int{int(from[1])}}
	}
	step.Other[w.Control] = Stands(&p.setup.Controls[w.Control], from[0])
	step.Want = Change(w.Part, -slack, math.Inf(1))
	if w.Sign < 0 {
		step.Want = Change(w.Part, math.Inf(-1), slack)
	}
	return &step
}

// jumps are the ends of the stretches of a control, each with the start of the next; of
// every later one, where the claim's condition may leave out those between.
func (b *board) jumps(control int) (list [][2]float64) {
	gaps := false
	b.p.setup.EachTest(b.c.When, func(t *mixcore.Condition) { gaps = gaps || t.Control == control })
	for _, s := range b.settings {
		if s.variable != b.now.variable[control] {
			continue
		}
		for i := range s.stretch {
			for k := i + 1; k < len(s.stretch) && (gaps || k == i+1); k++ {
				list = append(list, [2]float64{s.stretch[i].High, s.stretch[k].Low})
			}
		}
	}
	return list
}

// runRising decides within the stretches.
func (p *Prover) runRising(ctx context.Context, c *Claim, w Rising, o Options) Decision {
	s := p.newSearch(ctx, c, o)
	s.rising = s.b.now.variable[w.Control]
	return s.run()
}

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
	back := w.Sign * (p.placeOf(w.Part, now) - p.placeOf(w.Part, other))
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
	back := 0.0
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
	}
	// So little over so short a way that all boxes together come to no more than
	// Rounding.
	low, high := p.setup.Controls[w.Control].Range()
	if back <= Rounding*b.spans[variable].Width()/(high-low) {
		return interval.Point(0)
	}
	return interval.Range{Low: -back, High: 0}
}

// decideRising decides a claim of Rising: within every stretch of the control by the
// slope, and from each stretch to the next by a claim of its own.
func (p *Prover) decideRising(ctx context.Context, c *Claim, w Rising, o Options) Decision {
	within := *c
	within.Other = nil
	d := p.runRising(ctx, &within, w, o)
	if d.Answer != Proved {
		return d
	}
	d.Pose, d.Margin = Pose{}, 0 // it moves back nowhere: no place is nearer to it than another
	for _, jump := range p.newBoard(&within).steps(w.Control) {
		step := *c
		step.Now = append([]Span(nil), c.Now...)
		step.Other, step.OtherLost = Beside(p.setup), c.Lost
		if p.setup.Controls[w.Control].Kind == mixcore.SwitchControl {
			step.Now[w.Control] = Span{Places: []int{int(jump[1])}}
		} else {
			step.Now[w.Control] = At(jump[1])
		}
		step.Other[w.Control] = Stands(&p.setup.Controls[w.Control], jump[0])
		step.Want = rise(w)
		if d.Boxes >= o.Boxes {
			return Decision{Answer: Undecided, Boxes: d.Boxes, Forms: d.Forms, States: d.States, Timed: d.Timed}
		}
		more := p.run(ctx, &step, Options{Boxes: o.Boxes - d.Boxes, Progress: o.Progress})
		d.Boxes += more.Boxes
		d.Forms += more.Forms
		if more.Answer == Disproved || more.Answer == Undecided {
			// The step's margin is that of another claim.
			more.Boxes, more.Forms, more.States = d.Boxes, d.Forms, d.States
			if more.Answer == Disproved {
				more.Margin = p.Margin(c, more.Pose)
			}
			return more
		}
	}
	return d
}

// rise wants a part not to move back from Other to Now.
func rise(w Rising) Differ {
	if w.Sign > 0 {
		return Change(w.Part, -Rounding, math.Inf(1))
	}
	return Change(w.Part, math.Inf(-1), Rounding)
}

// steps are the ends of the stretches of a control, each with the start of the next.
func (b *board) steps(control int) (list [][2]float64) {
	for _, s := range b.settings {
		if s.variable != b.now.variable[control] {
			continue
		}
		for i := 1; i < len(s.stretch); i++ {
			list = append(list, [2]float64{s.stretch[i-1].High, s.stretch[i].Low})
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

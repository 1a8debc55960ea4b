package prove

import (
	"context"
	"math"
	"slices"
)

// How much is spent on making a counterexample simple.
const (
	fewestBoxes  = 2000 // of one decision with fewer controls free
	fewestClaims = 200  // decisions
)

// simplify replaces a counterexample by one that a person can set: as few controls
// off rest as can be found, each at an end, a detent, a half or a round number.
func (p *Prover) simplify(ctx context.Context, c *Claim, d *Decision) {
	d.Pose = p.settle(c, d.Pose)
	moved := p.moved(c, d.Pose)
	tries := 0
	for size := 0; size < len(moved); size++ {
		found := p.eachChoice(p.movable(c), size, func(free []int) bool {
			tries++
			if tries > fewestClaims || ctx.Err() != nil {
				return true
			}
			return p.failsWith(ctx, c, free, d)
		})
		if found {
			break
		}
	}
	d.Pose = p.settle(c, d.Pose)
	d.Margin = p.Margin(c, d.Pose)
}

// failsWith looks for a counterexample with only some controls off rest.
func (p *Prover) failsWith(ctx context.Context, c *Claim, free []int, d *Decision) bool {
	fewer := *c
	fewer.Now = slices.Clone(c.Now)
	fewer.Other = slices.Clone(c.Other)
	for i := range fewer.Now {
		if slices.Contains(free, i) {
			continue
		}
		fewer.Now[i] = p.homeSpan(i, c.Now[i])
		if fewer.Other != nil && fewer.Other[i].Kind == Apart {
			fewer.Other[i].Span = p.homeSpan(i, c.Other[i].Span)
		}
	}
	found := p.decide(ctx, &fewer, Options{Boxes: fewestBoxes})
	if found.Answer != Disproved {
		return false
	}
	d.Pose, d.Margin = found.Pose, found.Margin
	return true
}

// homeSpan is the one place of a span that is nearest to rest.
func (p *Prover) homeSpan(control int, s Span) Span {
	at := p.home(control, s)
	if s.Places != nil {
		return Span{Places: []int{int(at)}}
	}
	return At(at)
}

func (p *Prover) home(control int, s Span) float64 {
	if s.Places != nil {
		return float64(s.Places[0])
	}
	return min(max(p.setup.Controls[control].Rest(), s.Low), s.High)
}

// movable are the controls that the claim leaves free, in either pose.
func (p *Prover) movable(c *Claim) []int {
	var list []int
	for i := range c.Now {
		if isFree(c.Now[i]) || c.Other != nil && c.Other[i].Kind == Apart && isFree(c.Other[i].Span) {
			list = append(list, i)
		}
	}
	return list
}

func isFree(s Span) bool {
	if s.Places != nil {
		return len(s.Places) > 1
	}
	return s.High > s.Low
}

// moved are the free controls that a pose has away from home.
func (p *Prover) moved(c *Claim, at Pose) []int {
	var list []int
	for _, i := range p.movable(c) {
		if at.Now.Position[i] != p.home(i, c.Now[i]) || p.apart(c, i) && at.Other.Position[i] != p.home(i, c.Other[i].Span) {
			list = append(list, i)
		}
	}
	return list
}

func (p *Prover) apart(c *Claim, control int) bool {
	return c.Other != nil && c.Other[control].Kind == Apart
}

// eachChoice visits every choice of so many of a list, until visit returns true.
func (p *Prover) eachChoice(of []int, size int, visit func([]int) bool) bool {
	chosen := make([]int, 0, size)
	var choose func(from int) bool
	choose = func(from int) bool {
		if len(chosen) == size {
			return visit(chosen)
		}
		for i := from; i <= len(of)-(size-len(chosen)); i++ {
			chosen = append(chosen, of[i])
			if choose(i + 1) {
				return true
			}
			chosen = chosen[:len(chosen)-1]
		}
		return false
	}
	return choose(0)
}

// settle moves the controls of a counterexample home or to plain places, one by one,
// as long as the Plan says that it still fails. Places of Now only are moved where the
// claim compares two places of one control.
func (p *Prover) settle(c *Claim, at Pose) Pose {
	if p.Margin(c, at) >= 0 {
		return at
	}
	for _, i := range p.movable(c) {
		if isFree(c.Now[i]) {
			at = p.settleOne(c, at, i, false)
		}
		if p.apart(c, i) && isFree(c.Other[i].Span) {
			at = p.settleOne(c, at, i, true)
		}
	}
	return at
}

// settleOne moves one control of one pose to the plainest place at which the claim
// still fails.
func (p *Prover) settleOne(c *Claim, at Pose, control int, other bool) Pose {
	span, pose := c.Now[control], &at.Now
	if other {
		span, pose = c.Other[control].Span, &at.Other
	}
	for _, place := range p.plain(control, span, pose.Position[control]) {
		if place == pose.Position[control] {
			return at
		}
		next := Pose{Now: at.Now.Clone(), Other: at.Other.Clone()}
		p.put(c, &next, control, place, other)
		if p.counts(c, &next) && p.Margin(c, next) < 0 {
			return next
		}
	}
	return at
}

// put moves a control to a place in one pose, and in the other where it goes along.
func (p *Prover) put(c *Claim, at *Pose, control int, place float64, other bool) {
	if other {
		at.Other.Position[control] = place
		return
	}
	at.Now.Position[control] = place
	w, rising := c.Want.(Rising)
	switch {
	case at.Other.Position == nil:
	case rising && control == w.Control: // the other place is a place of its own
	case c.Other == nil || c.Other[control].Kind == Same:
		at.Other.Position[control] = place
	case c.Other[control].Kind == Mirrored:
		at.Other.Position[control] = -place
	}
}

// counts says whether the claim speaks of a pose.
func (p *Prover) counts(c *Claim, at *Pose) bool {
	if w, ok := c.Want.(Rising); ok && at.Now.Position[w.Control] <= at.Other.Position[w.Control] {
		return false
	}
	_, rising := c.Want.(Rising)
	both := rising || c.WhenBoth
	return c.When == nil || p.plan.Holds(c.When, &at.Now) && (!both || p.plan.Holds(c.When, &at.Other))
}

// plain are places of a control from the plainest on, those that are nearly where it
// stands last.
func (p *Prover) plain(control int, s Span, stands float64) []float64 {
	list := []float64{p.home(control, s)}
	if s.Places != nil {
		for _, at := range s.Places {
			list = append(list, float64(at))
		}
		return list
	}
	add := func(places ...float64) {
		for _, at := range places {
			if at >= s.Low && at <= s.High && !slices.Contains(list, at) {
				list = append(list, at)
			}
		}
	}
	side := math.Copysign(1, stands)
	add(side*100, -side*100)
	for _, d := range p.setup.Controls[control].Detents {
		add(float64(d.At))
	}
	add(s.Low, s.High, side*50, side*75, side*25)
	for _, step := range []float64{10, 5, 1, 0.1, 0.01, 0.001} {
		up, down := math.Ceil(stands/step)*step, math.Floor(stands/step)*step
		if step < 1 { // a whole number of steps, as a person would write it
			up, down = math.Round(up/step)/math.Round(1/step), math.Round(down/step)/math.Round(1/step)
		}
		add(up, down)
	}
	return list
}

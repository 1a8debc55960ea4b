package provetest

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// Sampler draws poses that a claim speaks of.
type Sampler struct {
	plan    *mixcore.Plan
	setup   *mixcore.Setup
	claim   *prove.Claim
	random  *rand.Rand
	special [][]float64 // by control: places where something changes
	rising  int         // the control of a claim of Rising, or −1
}

// Poses makes a sampler.
func Poses(plan *mixcore.Plan, claim *prove.Claim, random *rand.Rand) *Sampler {
	s := &Sampler{plan: plan, setup: plan.Setup(), claim: claim, random: random, rising: -1}
	if w, ok := claim.Want.(prove.Rising); ok {
		s.rising = w.Control
	}
	s.special = make([][]float64, len(s.setup.Controls))
	for i := range s.setup.Controls {
		c := &s.setup.Controls[i]
		low, high := c.Range()
		s.special[i] = append(s.special[i], low, high, c.Rest(), (low+high)/2)
		for _, d := range c.Detents {
			s.special[i] = append(s.special[i], float64(d.At))
		}
	}
	for _, when := range conditions(s.setup, claim.When) {
		s.setup.EachTest(when, func(t *mixcore.Condition) {
			low, high := t.Bounds()
			for _, x := range []float64{low, high} {
				if !math.IsInf(x, 0) {
					s.special[t.Control] = append(s.special[t.Control], x, math.Nextafter(x, math.Inf(1)), math.Nextafter(x, math.Inf(-1)))
				}
			}
		})
	}
	for i := range s.setup.Demands {
		for r := range s.setup.Demands[i].Rates {
			from := s.setup.Demands[i].From
			s.special[from] = append(s.special[from], plan.ShapedBreaks(i, r)...)
		}
	}
	return s
}

// conditions are all of a set-up, and one more.
func conditions(s *mixcore.Setup, more *mixcore.Condition) (list []*mixcore.Condition) {
	list = append(list, more)
	for i := range s.Demands {
		for r := range s.Demands[i].Rates {
			list = append(list, s.Demands[i].Rates[r].When)
		}
	}
	for i := range s.Channels {
		for l := range s.Channels[i].Mix {
			list = append(list, s.Channels[i].Mix[l].When)
		}
	}
	return list
}

// tries is how often a pose is drawn at which the claim's condition holds.
const tries = 8

// Draw draws a pose; not ok where none was found that the claim speaks of.
func (s *Sampler) Draw() (at prove.Pose, ok bool) {
	for range tries {
		if at = s.any(); s.counts(at) {
			return at, true
		}
	}
	return at, false
}

// Near draws a pose that differs from another in one control of one pose, by much or
// little; not ok where the claim does not speak of it.
func (s *Sampler) Near(at prove.Pose) (prove.Pose, bool) {
	at = prove.Pose{Now: at.Now.Clone(), Other: at.Other.Clone()}
	i := s.random.IntN(len(at.Now.Position))
	if s.claim.Other != nil && s.claim.Other[i].Kind == prove.Apart && s.random.IntN(2) == 0 {
		at.Other.Position[i] = s.nudge(i, &s.claim.Other[i].Span, at.Other.Position[i])
		return at, s.counts(at)
	}
	x := s.nudge(i, &s.claim.Now[i], at.Now.Position[i])
	at.Now.Position[i] = x
	switch {
	case s.rising >= 0 && i != s.rising:
		at.Other.Position[i] = x
	case s.claim.Other != nil:
		at.Other.Position[i] = besideFixed(&s.claim.Other[i], x, at.Other.Position[i])
	}
	return at, s.counts(at)
}

// nudge moves a control to another place, or a little.
func (s *Sampler) nudge(control int, span *prove.Span, from float64) float64 {
	if span.Places != nil || s.random.IntN(2) == 0 {
		return s.place(control, span)
	}
	by := (s.random.Float64() - 0.5) * math.Ldexp(100, -s.random.IntN(50))
	return min(max(from+by, span.Low), span.High)
}

// counts says whether the claim speaks of a pose with every control in its span.
func (s *Sampler) counts(at prove.Pose) bool {
	if s.rising >= 0 && at.Now.Position[s.rising] <= at.Other.Position[s.rising] {
		return false
	}
	when := s.claim.When
	return when == nil || s.plan.Holds(when, &at.Now) && (s.rising < 0 || s.plan.Holds(when, &at.Other))
}

func (s *Sampler) any() prove.Pose {
	n := len(s.setup.Controls)
	at := prove.Pose{Now: mixcore.Input{Position: make([]float64, n), SignalLost: s.claim.Lost}}
	for i := range n {
		at.Now.Position[i] = s.place(i, &s.claim.Now[i])
	}
	switch {
	case s.rising >= 0:
		at.Other = at.Now.Clone()
		a, b := at.Now.Position[s.rising], s.place(s.rising, &s.claim.Now[s.rising])
		at.Now.Position[s.rising], at.Other.Position[s.rising] = max(a, b), min(a, b)
	case s.claim.Other != nil:
		at.Other = mixcore.Input{Position: make([]float64, n), SignalLost: s.claim.OtherLost}
		for i := range n {
			at.Other.Position[i] = s.beside(i, at.Now.Position[i])
		}
	}
	return at
}

func (s *Sampler) beside(control int, now float64) float64 {
	o := &s.claim.Other[control]
	if o.Kind == prove.Apart {
		return s.place(control, &o.Span)
	}
	return besideFixed(o, now, 0)
}

// besideFixed is where a control stands in the other pose, which apart is where it is free.
func besideFixed(o *prove.Other, now, apart float64) float64 {
	switch o.Kind {
	case prove.Mirrored:
		return -now
	case prove.Apart:
		return apart
	}
	return now
}

// place draws a place of a span.
func (s *Sampler) place(control int, span *prove.Span) float64 {
	if span.Places != nil {
		return float64(span.Places[s.random.IntN(len(span.Places))])
	}
	x := span.Low + (span.High-span.Low)*s.random.Float64()
	switch s.random.IntN(4) {
	case 0:
		x = []float64{span.Low, span.High, (span.Low + span.High) / 2}[s.random.IntN(3)]
	case 1, 2:
		x = s.special[control][s.random.IntN(len(s.special[control]))]
		if s.setup.Controls[control].Kind != mixcore.LeverControl && s.random.IntN(2) == 0 {
			x = -x
		}
	}
	return min(max(x, span.Low), span.High)
}

// Covers says why a claim does not speak of a pose, or nil.
func Covers(plan *mixcore.Plan, claim *prove.Claim, at prove.Pose) error {
	if err := plan.CheckInput(&at.Now); err != nil {
		return fmt.Errorf("now: %w", err)
	}
	w, rising := claim.Want.(prove.Rising)
	if two := claim.Other != nil || rising; two != (at.Other.Position != nil) {
		return fmt.Errorf("a second pose: got %v, want %v", !two, two)
	}
	if at.Other.Position != nil {
		if err := plan.CheckInput(&at.Other); err != nil {
			return fmt.Errorf("other: %w", err)
		}
		if want := claim.OtherLost || rising && claim.Lost; at.Other.SignalLost != want {
			return fmt.Errorf("other has the signal lost: got %v, want %v", at.Other.SignalLost, want)
		}
	}
	if at.Now.SignalLost != claim.Lost {
		return fmt.Errorf("now has the signal lost: got %v, want %v", at.Now.SignalLost, claim.Lost)
	}
	for i, x := range at.Now.Position {
		if err := inside(&claim.Now[i], x); err != nil {
			return fmt.Errorf("control %d now: %w", i, err)
		}
		if at.Other.Position == nil {
			continue
		}
		y, want := at.Other.Position[i], x
		switch {
		case rising && i == w.Control:
			if err := inside(&claim.Now[i], y); err != nil {
				return fmt.Errorf("control %d other: %w", i, err)
			}
			if y >= x {
				return fmt.Errorf("control %d rises from %v to %v", i, y, x)
			}
			continue
		case rising:
		case claim.Other[i].Kind == prove.Apart:
			if err := inside(&claim.Other[i].Span, y); err != nil {
				return fmt.Errorf("control %d other: %w", i, err)
			}
			continue
		case claim.Other[i].Kind == prove.Mirrored:
			want = -x
		}
		if y != want {
			return fmt.Errorf("control %d other: got %v, want %v", i, y, want)
		}
	}
	if claim.When != nil && (!plan.Holds(claim.When, &at.Now) || rising && !plan.Holds(claim.When, &at.Other)) {
		return fmt.Errorf("the condition does not hold")
	}
	return nil
}

func inside(s *prove.Span, x float64) error {
	if s.Places != nil && !slices.Contains(s.Places, int(x)) || s.Places == nil && !(x >= s.Low && x <= s.High) {
		return fmt.Errorf("at %v, want in %+v", x, *s)
	}
	return nil
}

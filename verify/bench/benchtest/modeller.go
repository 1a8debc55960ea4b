// Package benchtest is somebody at the bench, for tests: a model in the hand that may have
// a mistake, looked at honestly and answered for line by line.
package benchtest

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/wording"
)

// Modeller is somebody with a model in the hand.
type Modeller struct {
	Walk *bench.Walk                           // what is expected
	Plan *mixcore.Plan                         // what the model in the hand does
	Late func(step *sight.Step, part int) bool // it clearly takes another time there than it should; nil for never

	ByHand bool // at a terminal, where a step with a motor is asked about once more
}

// Begin are the answers before the first step.
func Begin() []string { return []string{"yes", "yes", "yes"} }

// All are all answers of a walk: those to the steps that are asked for behind it to decide,
// and the last yes too.
func (m *Modeller) All() []string {
	g := bench.NewGuide(m.Walk, bench.Nowhere{}, func() string { return "" })
	if m.ByHand {
		g.ByHand()
	}
	return m.Through(g)
}

// Through goes through a walk with a guide that has just begun, and returns what was said.
// It panics where a line is not understood.
func (m *Modeller) Through(g *bench.Guide) (all []string) {
	hand := *m
	hand.Walk = g.Walk()
	say := func(lines ...string) {
		for len(lines) > 0 {
			line := lines[0]
			lines = lines[1:]
			if r, err := g.Take(line); err != nil || !r.Understood {
				panic(fmt.Sprintf("%q: %+v, %v", line, r, err))
			}
			all = append(all, line)
			if g.Present().Again != nil {
				lines = append([]string{"x"}, lines...)
			}
		}
	}
	say(Begin()...)
	for done := 0; !g.Over(); {
		if done == len(hand.Walk.Steps) {
			say("y") // shows a step more, or finishes
			continue
		}
		say(hand.Lines(done)...)
		done++
	}
	return all
}

// Lines are the answers to one step.
func (m *Modeller) Lines(step int) (lines []string) {
	s := &m.Walk.Steps[step]
	setup := &m.Walk.Model.Setup
	from, to := m.Plan.NewOutput(), m.Plan.NewOutput()
	m.Plan.Eval(&s.From, from)
	m.Plan.Eval(&s.To, to)
	for k := range s.Expect {
		e := &s.Expect[k]
		move := sight.MoveOf(setup, e.Part, &s.Step, from, to)
		if said := m.part(s, e, move); said != "" {
			lines = append(lines, fmt.Sprintf("#%d %s", k+1, said))
		} else if m.Late != nil && e.Takes > 0 && m.Late(&s.Step, e.Part) {
			lines = append(lines, fmt.Sprintf("#%d another time", k+1))
		}
		if m.Walk.Look.Ruler {
			for _, said := range m.ruler(s, e, move) {
				lines = append(lines, fmt.Sprintf("#%d %s", k+1, said))
			}
		}
	}
	return append(lines, "y")
}

// part is what is said of one part that does something else than it should; empty where
// nobody would say so.
func (m *Modeller) part(s *bench.Step, e *bench.Expect, move sight.Move) string {
	p := &m.Walk.Model.Setup.Parts[e.Part]
	if p.Motion == mixcore.Power {
		return m.motor(s, e, move)
	}
	look := m.Walk.Look
	if look.Ways(p, e.Move)&look.Ways(p, move) != 0 {
		return ""
	}
	switch way := look.Way(p, move); {
	case way == sight.Still, way == sight.Unclear:
		if s.Stands() && p.Motion == mixcore.OutIn {
			return "in"
		}
		return "still"
	case way == sight.Plus:
		return wording.Direction(p.Motion, true)
	}
	return wording.Direction(p.Motion, false)
}

func (m *Modeller) motor(s *bench.Step, e *bench.Expect, move sight.Move) string {
	p := &m.Walk.Model.Setup.Parts[e.Part]
	stopped := func(power float64) (surely, surelyNot bool) { return sight.Propeller(p, power) }
	should, shouldNot := stopped(e.Move.To)
	does, doesNot := stopped(move.To)
	switch {
	case should && doesNot:
		return "runs"
	case shouldNot && does:
		return "stopped"
	case s.Stands():
		return ""
	}
	shouldBe, shouldNotBe := stopped(e.Move.From)
	was, wasNot := stopped(move.From)
	switch {
	case shouldBe && wasNot:
		return "before runs"
	case shouldNotBe && was:
		return "before stopped"
	case !(shouldNot && shouldNotBe):
		return ""
	}
	look := m.Walk.Look
	if look.Ways(p, e.Move)&look.Ways(p, move) != 0 {
		return ""
	}
	switch look.Way(p, move) {
	case sight.Plus:
		return "faster"
	case sight.Minus:
		return "slower"
	}
	return "did not move"
}

// ruler is where a part was measured: every surface after the movement, and whatever is not
// where it should be.
func (m *Modeller) ruler(s *bench.Step, e *bench.Expect, move sight.Move) (said []string) {
	p := &m.Walk.Model.Setup.Parts[e.Part]
	accuracy := float64(sight.AccuracyAmount)
	if p.Motion.Hinged() {
		accuracy = float64(m.Walk.Look.Accuracy)
	}
	place := func(at float64) string {
		switch {
		case !p.Motion.Hinged():
			return fmt.Sprintf("%.3f %%", at)
		case math.Abs(at) < 0.0005:
			return "0"
		}
		return fmt.Sprintf("%.3f %s sure", math.Abs(at), wording.Direction(p.Motion, at > 0))
	}
	if !s.Stands() && math.Abs(move.From-e.Move.From) >= accuracy {
		said = append(said, "before "+place(move.From))
	}
	if p.Motion.Hinged() || math.Abs(move.To-e.Move.To) >= accuracy {
		said = append(said, place(move.To))
	}
	return said
}

package cause

import (
	"context"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Session asks for one step after another and learns from what is seen. It never reads
// and never prints.
type Session struct {
	c          *inquiry
	candidates []int // mistakes that are left, and table.None
	asked      []int // steps
	said       []answered
	answers    int
}

// answered is what was seen in a step.
type answered struct {
	number, step int
	seen         []Seen
}

// Seen is what somebody saw of one part in a step.
type Seen struct {
	Part int
	Way  sight.Way // Unclear: it cannot be said
	// With a ruler: where it is before the step, if somebody looked, and after it, in
	// degrees with mixcore's sign or percent.
	Before, After *float64
	RanBefore     *bool // of a motor: whether its propeller turns before the step
	Runs          *bool // and after it
	Early         *bool // whether it comes clearly sooner, or later, than it should; nil where nobody looked
}

// NewSession begins with every mistake of a table in question, and with none. Repairs are
// held against the scripts, which may be none.
func NewSession(ctx context.Context, t *table.Table, scripts []script.File, look sight.Look) *Session {
	var trial *script.Trial
	if len(scripts) > 0 {
		trial, _ = script.NewTrial(t.Model, scripts)
	}
	c := &inquiry{ctx: ctx, m: t.Model, trial: trial, o: Options{Look: look}, mistakes: t.Mistakes, made: t}
	return &Session{c: c, candidates: t.InQuestion(look)}
}

// Step is the next step to do; ok is false where no step tells those apart that are left.
func (s *Session) Step() (step int, ok bool) {
	step, _ = s.c.table().Best(s.c.o.Look, s.candidates, s.asked...)
	return step, step >= 0
}

// Say is a step in words, behind those that were answered.
func (s *Session) Say(step int) result.WalkStep {
	t := s.c.table()
	if n := len(s.asked); n > 0 {
		return walk.SayAfter(t, s.c.o.Look, step, &t.Steps[s.asked[n-1]].To)
	}
	return walk.Say(t, s.c.o.Look, step)
}

// Parts are the parts of which it matters in a step what they do: of those that some
// candidates surely move differently.
func (s *Session) Parts(step int) (parts []int) {
	for part := range s.c.m.Setup.Parts {
		if s.tells(step, part) || s.Timed(step, part) {
			parts = append(parts, part)
		}
	}
	return parts
}

func (s *Session) tells(step, part int) bool {
	p := &s.c.m.Setup.Parts[part]
	return s.parts(step, part, func(a, b sight.Move) bool { return s.c.o.Look.Differ(p, a, b) })
}

// Before says whether it matters what a part does before a step: whether a propeller
// turns, or with a ruler where the part is. Of a step in which nothing is moved it never
// does.
func (s *Session) Before(step, part int) bool {
	p := &s.c.m.Setup.Parts[part]
	return s.parts(step, part, func(a, b sight.Move) bool {
		return s.c.o.Look.Differ(p, sight.Move{From: a.From, To: a.From}, sight.Move{From: b.From, To: b.From})
	})
}

// Way says whether it matters in a step which way a part goes; of a motor, whether it
// turns faster or slower than before.
func (s *Session) Way(step, part int) bool {
	p, look := &s.c.m.Setup.Parts[part], s.c.o.Look
	return s.parts(step, part, func(a, b sight.Move) bool { return look.Ways(p, a)&look.Ways(p, b) == 0 })
}

// parts says whether two candidates are apart in what a part does in a step.
func (s *Session) parts(step, part int, apart func(a, b sight.Move) bool) bool {
	var kinds []sight.Move // of which no two are apart
	for _, c := range s.candidates {
		m := s.c.table().Move(c, step, part)
		if slices.ContainsFunc(kinds, func(k sight.Move) bool { return apart(k, m) }) {
			return true
		}
		if !slices.Contains(kinds, m) {
			kinds = append(kinds, m)
		}
	}
	return false
}

// Timed says whether it matters in a step how soon a part comes.
func (s *Session) Timed(step, part int) bool {
	return slices.ContainsFunc(s.candidates, func(c int) bool { return s.c.table().Late(c, step, part) > 0 })
}

// Answer takes what was seen in a step, and keeps the mistakes that it may have been.
func (s *Session) Answer(step int, seen []Seen) { s.AnswerAs(len(s.said)+1, step, seen) }

// AnswerAs is Answer of a step that has a number of its own for whoever did it.
func (s *Session) AnswerAs(number, step int, seen []Seen) {
	s.asked = append(s.asked, step)
	s.said = append(s.said, answered{number, step, slices.Clone(seen)})
	s.answers += len(seen)
	s.candidates = slices.DeleteFunc(s.candidates, func(c int) bool {
		return slices.ContainsFunc(seen, func(one Seen) bool { return !s.fits(c, step, &one) })
	})
}

// fits says whether a part may be seen so with a mistake made.
func (s *Session) fits(candidate, step int, seen *Seen) bool {
	p := &s.c.m.Setup.Parts[seen.Part]
	look := s.c.o.Look
	move := s.c.table().Move(candidate, step, seen.Part)
	if seen.Way != sight.Unclear && look.Ways(p, move)&sight.Of(seen.Way) == 0 {
		return false
	}
	if seen.Runs != nil && runsElse(p, move.To, *seen.Runs) || seen.RanBefore != nil && runsElse(p, move.From, *seen.RanBefore) {
		return false
	}
	visible, accuracy := float64(sight.VisibleAmount), float64(sight.AccuracyAmount)
	if p.Motion.Hinged() {
		visible, accuracy = float64(look.Visible), float64(look.Accuracy)
	}
	if seen.Early != nil && *seen.Early != (s.c.table().Late(candidate, step, seen.Part) >= visible) {
		return false
	}
	near := func(at float64, read *float64) bool { return read == nil || math.Abs(at-*read) < accuracy }
	return near(move.From, seen.Before) && near(move.To, seen.After)
}

// runsElse says whether a motor surely does something else than was seen: one that creeps
// at the edge of stopped may be taken for either.
func runsElse(p *mixcore.Part, power float64, runs bool) bool {
	stands, turns := sight.Propeller(p, power)
	return runs && stands || !runs && turns
}

// Left is how many mistakes are in question, or that the model may be right.
func (s *Session) Left() int { return len(s.candidates) }

// Causes is what is left.
func (s *Session) Causes() *result.Causes {
	s.c.done = s.asked
	r := &result.Causes{Seen: s.answers, Tried: len(s.c.mistakes)}
	if slices.Contains(s.candidates, table.None) {
		for _, c := range s.candidates {
			r.Possible += len(s.c.table().Alike(s.c.o.Look, c))
		}
		r.Verdict = result.AsItShould
		if len(s.candidates) > 1 {
			r.Verdict = result.NotToldApart
		}
		return r
	}
	var all []int
	for _, c := range s.candidates {
		all = append(all, s.c.table().Alike(s.c.o.Look, c)...)
	}
	s.c.report(r, all)
	r.Near = s.near(all)
	return r
}

// Keeps says whether a mistake, by its index in the table, is still in question, itself or
// as one that looks the same; table.None is that nothing is wrong.
func (s *Session) Keeps(mistake int) bool {
	return slices.ContainsFunc(s.candidates, func(c int) bool {
		return c == mistake || slices.Contains(s.c.table().Alike(s.c.o.Look, c), mistake)
	})
}

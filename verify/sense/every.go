package sense

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// everyFights is fights for an outcome about every position, as far as the way of what
// moves is known.
func (l *looker) everyFights(a *phrase.Asked) (result.ScriptFinding, bool) {
	o := &a.Outcome
	at, ok := l.oneMovement(a)
	if !ok || o.Not {
		return result.ScriptFinding{}, false
	}
	plain := *a
	plain.At, plain.Outcome.Every = at, nil
	if o.Verb == phrase.Rising {
		plain.Outcome.Verb = phrase.Move
	}
	switch plain.Outcome.Verb {
	case phrase.Move, phrase.Turn, phrase.Together, phrase.Opposite:
	default:
		return result.ScriptFinding{}, false
	}
	f, ok := l.fights(&plain)
	if ok && o.Verb == phrase.Rising {
		f.Right = l.rightRising(o)
	}
	return f, ok
}

// oneMovement is a movement like those that an outcome speaks of: the scenario's, or
// one of the one control that moves, where it is known which way.
func (l *looker) oneMovement(a *phrase.Asked) (phrase.Situation, bool) {
	o, at := &a.Outcome, a.At
	if o.Verb == phrase.Rising {
		return l.movedBy(&at, o.Control, o.Plus), true
	}
	if at.Moved {
		return at, true
	}
	moving := -1
	for i, r := range o.Roams(l.s, &at) {
		if !r.Moves {
			continue
		}
		if moving >= 0 {
			return at, false
		}
		moving = i
	}
	if moving < 0 {
		return at, false
	}
	plus, known := sideOf(o.Every.When, moving)
	if o.Verb == phrase.Together || o.Verb == phrase.Opposite {
		plus, known = plus || !known, true // either way tells
	}
	return l.movedBy(&at, moving, plus), known
}

// movedBy is a situation in which one control moves to an end.
func (l *looker) movedBy(at *phrase.Situation, control int, plus bool) phrase.Situation {
	pose := func(position float64) phrase.Pose {
		p := phrase.Pose{Position: slices.Clone(at.Now.Position)}
		p.Position[control] = position
		return p
	}
	low, high := l.s.Controls[control].Range()
	from, to := 0.0, high
	if !isStick(&l.s.Controls[control]) {
		from = low
	}
	if !plus {
		if from, to = 0, low; !isStick(&l.s.Controls[control]) {
			from = high
		}
	}
	return phrase.Situation{Before: pose(from), Now: pose(to), Moved: true, Set: at.Set}
}

// sideOf is to which side of its middle, or of where a lever rests, a condition wants a
// control.
func sideOf(when *mixcore.Condition, control int) (plus, known bool) {
	if when == nil {
		return false, false
	}
	if when.Op == mixcore.And {
		for i := range when.Args {
			if plus, known = sideOf(&when.Args[i], control); known {
				return plus, true
			}
		}
		return false, false
	}
	if when.Control != control {
		return false, false
	}
	switch when.Op {
	case mixcore.Above, mixcore.AtLeast, mixcore.Within:
		if when.Low > 0 || when.Op == mixcore.Above && when.Low == 0 {
			return true, true
		}
	}
	switch when.Op {
	case mixcore.Below, mixcore.AtMost, mixcore.Within:
		if when.High < 0 || when.Op == mixcore.Below && when.High == 0 {
			return false, true
		}
	}
	return false, false
}

// rightRising is the sentence of a Rising the right way round.
func (l *looker) rightRising(o *phrase.Outcome) string {
	c := &l.s.Controls[o.Control]
	further := map[phrase.Way]string{
		phrase.Up: "the lower", phrase.Down: "the higher", phrase.Left: "the further right", phrase.Right: "the further left",
		phrase.Faster: "the slower", phrase.Slower: "the faster", phrase.Out: "the further in", phrase.In: "the further out",
	}[o.Way]
	way := "further"
	if isStick(c) {
		way = "more " + wording.AxisSide(c.Axis, o.Plus)
	}
	return "the " + way + " the " + c.Name + ", " + further + " the " + l.s.Parts[o.Subject.Parts[0]].Name
}

// tried are the positions that an outcome looks at, as far as they differ in the
// conditions of a demand: the ends of what is free, and where a condition changes.
func (l *looker) tried(a *phrase.Asked, demand *mixcore.Demand) []mixcore.Input {
	now := a.At.Now.Input()
	list := []mixcore.Input{now}
	if a.Outcome.Every == nil {
		return list
	}
	for i, r := range a.Outcome.Roams(l.s, &a.At) {
		places := l.placesOf(i, &r, demand)
		if len(places) == 0 || len(list)*len(places) > mostTried {
			continue
		}
		var next []mixcore.Input
		for _, in := range list {
			for _, at := range places {
				moved := mixcore.Input{Position: slices.Clone(in.Position), SignalLost: in.SignalLost}
				moved.Position[i] = at
				next = append(next, moved)
			}
		}
		list = next
	}
	if when := a.Outcome.Every.When; when != nil {
		list = slices.DeleteFunc(list, func(in mixcore.Input) bool { return !l.m.Plan.Holds(when, &in) })
	}
	return list
}

// mostTried is how many positions of one sentence are looked at for the rates that are
// in force there.
const mostTried = 512

// placesOf are the places of a free control that differ for a demand's rates.
func (l *looker) placesOf(control int, r *phrase.Roam, demand *mixcore.Demand) (places []float64) {
	if !r.Free {
		return nil
	}
	tests := false
	add := func(at float64) {
		if r.Over.Places == nil && at >= r.Over.Low && at <= r.Over.High && !slices.Contains(places, at) {
			places = append(places, at)
		}
	}
	for k := range demand.Rates {
		l.s.EachTest(demand.Rates[k].When, func(t *mixcore.Condition) {
			if t.Control != control {
				return
			}
			tests = true
			low, high := t.Bounds()
			for _, at := range []float64{low, high, math.Nextafter(low, math.Inf(-1)), math.Nextafter(high, math.Inf(1))} {
				add(at)
			}
		})
	}
	if !tests && control != demand.From {
		return nil
	}
	if r.Over.Places != nil {
		for _, at := range r.Over.Places {
			places = append(places, float64(at))
		}
		return places
	}
	add(r.Over.Low)
	add(r.Over.High)
	return places
}

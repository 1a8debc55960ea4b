package bench

import (
	"fmt"
	"slices"

	"example.com/hingeline/verify/faults/sight"
)

// state is what the events so far have come to.
type state struct {
	confirmed int  // questions, since the beginning or since it was gone on with
	changed   bool // it is asked whether anything was changed since it was broken off
	refused   bool
	paused    bool
	ended     bool
	at        int // index of the step that is asked about; len(steps) behind the last
	steps     []stepState
	last      string  // date of the last event
	repaired  []found // not as expected before something was changed
}

// stepState is what was said in one step.
type stepState struct {
	events  []Event     // about parts, that were not undone
	saw     map[int]Saw // by part
	before  map[int]Saw // of motors: what they did before the movement
	read    map[reading]float64
	closed  bool
	skipped bool
	reason  string
}

// reading is a part that was measured, before the movement or after it. Values are degrees
// with mixcore's sign, or percent.
type reading struct {
	part   int
	before bool
}

func (s *stepState) forget() { *s = stepState{} }

// touched says whether anything was said in a step.
func (s *stepState) touched() bool {
	return s.closed || s.skipped || len(s.saw)+len(s.before)+len(s.read) > 0
}

// apply takes an event. The error is that of one that this package would not have written
// there.
func (w *Walk) apply(s *state, e *Event) error {
	if s.ended {
		return fmt.Errorf("something follows its end")
	}
	if (s.paused || s.refused) && e.Kind != Resumed {
		return fmt.Errorf("something follows where it was broken off, and it was not gone on with")
	}
	asked := s.changed || s.confirmed < len(Questions)
	switch e.Kind {
	case Changed, Unchanged:
		if !s.changed {
			return fmt.Errorf("it says that something is %s since, which was not asked", e.Kind)
		}
	case Confirmed, Refused:
		if s.changed || !asked || e.What != Questions[s.confirmed].Name {
			return fmt.Errorf("it answers the question %q, which was not asked", e.What)
		}
	case Answer, Measured, Skip, Back, Undo, Further, End:
		if asked {
			return fmt.Errorf("something was done before all was confirmed that must be so")
		}
	}
	s.last = e.At
	switch e.Kind {
	case Confirmed:
		s.confirmed++
	case Refused:
		s.refused = true
	case Pause:
		s.paused = true
	case Resumed:
		s.paused, s.refused, s.confirmed = false, false, 0
		s.changed = slices.ContainsFunc(s.steps, func(st stepState) bool { return st.touched() })
	case Changed:
		s.changed, s.at = false, 0
		s.repaired = append(s.repaired, w.found(s.steps)...)
		s.steps, w.Steps = s.steps[:w.chosen], w.Steps[:w.chosen]
		for i := range s.steps {
			s.steps[i].forget()
		}
	case Unchanged:
		s.changed = false
	case End:
		if s.at < len(w.Steps) {
			return fmt.Errorf("it ends at step %d of %d", s.at+1, len(w.Steps))
		}
		s.ended = true
	case Back:
		if e.Step < 1 || e.Step > len(w.Steps) || e.Step-1 > s.at {
			return fmt.Errorf("it goes back to step %d", e.Step)
		}
		s.at = e.Step - 1
		s.steps[s.at].forget()
		left := max(w.chosen, e.Step)
		s.steps, w.Steps = s.steps[:left], w.Steps[:left]
	case Further:
		return w.further(s, e)
	case Answer, Measured, Skip:
		return w.answered(s, e)
	case Undo:
		return w.undo(s, e)
	default:
		return fmt.Errorf("there is no event %q", e.Kind)
	}
	return nil
}

// further takes a step that is to decide.
func (w *Walk) further(s *state, e *Event) error {
	if s.at < len(w.Steps) || e.Step != s.at+1 || e.Pose == nil {
		return fmt.Errorf("it asks for a step to decide before the others are done")
	}
	step, watch, err := e.Pose.read(w.Model)
	if err != nil {
		return fmt.Errorf("its step %w", err)
	}
	w.add([]sight.Step{step}, [][]int{watch})
	s.steps = append(s.steps, stepState{})
	return nil
}

// answered takes an event about a step.
func (w *Walk) answered(s *state, e *Event) error {
	if s.at >= len(w.Steps) || e.Step != s.at+1 {
		return fmt.Errorf("it answers step %d where step %d was asked about", e.Step, s.at+1)
	}
	st := &s.steps[s.at]
	switch {
	case e.Kind == Skip:
		st.skipped, st.reason = true, e.Reason
		s.at++
		return nil
	case e.Kind == Answer && e.Part == "":
		st.closed = true
		s.at++
		return nil
	}
	if err := w.put(&w.Steps[s.at], st, e); err != nil {
		return err
	}
	st.events = append(st.events, *e)
	return nil
}

// undo takes back the last thing that was noted in a step.
func (w *Walk) undo(s *state, e *Event) error {
	if s.at >= len(w.Steps) || e.Step != s.at+1 || len(s.steps[s.at].events) == 0 {
		return fmt.Errorf("it takes back what was noted in step %d, and there nothing is", e.Step)
	}
	left := s.steps[s.at].events
	again := stepState{events: left[:len(left)-1]}
	for i := range again.events {
		if err := w.put(&w.Steps[s.at], &again, &again.events[i]); err != nil {
			return err
		}
	}
	s.steps[s.at] = again
	return nil
}

// put puts what was said of one part in place of what was said of it before. What nobody
// could have said in that step is an error.
func (w *Walk) put(s *Step, st *stepState, e *Event) error {
	part := partCalled(&w.Model.Setup, e.Part)
	if part < 0 {
		return fmt.Errorf("it speaks of %q, and there is no such part", e.Part)
	}
	if e.Before && s.Stands() {
		return fmt.Errorf("it speaks of the %s before a movement, and nothing is moved in step %d", e.Part, e.Step)
	}
	if e.Kind == Measured {
		at, err := w.placeOf(part, e)
		if err != nil {
			return err
		}
		if st.read == nil {
			st.read = map[reading]float64{}
		}
		st.read[reading{part, e.Before}] = at
		return nil
	}
	if !known(e.Saw) {
		return fmt.Errorf("it says that the %s %q", e.Part, e.Saw)
	}
	if problem := w.fitting(s, &s.Expect[w.place(s, part)], e.Saw, e.Before); problem != "" {
		return fmt.Errorf("it says of step %d that the %s %q: %s", e.Step, e.Part, e.Saw, problem)
	}
	into := &st.saw
	if e.Before {
		into = &st.before
	}
	if *into == nil {
		*into = map[int]Saw{}
	}
	(*into)[part] = e.Saw
	return nil
}

func known(saw Saw) bool {
	switch saw {
	case AsExpected, OtherWay, DidNot, TooLittle, TooMuch, WrongTime, Unsure, WentUp, WentDown, WentLeft, WentRight, WentOut, WentIn, Runs, Stopped, Faster, Slower:
		return true
	}
	return false
}

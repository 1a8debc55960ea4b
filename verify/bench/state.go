package bench

import (
	"fmt"

	"example.com/hingeline/verify/faults/sight"
)

// state is what the events so far have come to.
type state struct {
	confirmed int // questions, since the beginning or since it was gone on with
	refused   bool
	paused    bool
	ended     bool
	at        int // index of the step that is asked about; len(steps) behind the last
	steps     []stepState
	last      string // date of the last event
}

// stepState is what was said in one step.
type stepState struct {
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
	asked := s.confirmed < len(Questions)
	switch e.Kind {
	case Confirmed, Refused:
		if !asked || e.What != Questions[s.confirmed].Name {
			return fmt.Errorf("it answers the question %q, which was not asked", e.What)
		}
	case Answer, Measured, Skip, Back, Further, End:
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
	part := partCalled(&w.Model.Setup, e.Part)
	if part < 0 {
		return fmt.Errorf("it speaks of %q, and there is no such part", e.Part)
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

package phrase

import "example.com/hingeline/verify/result"

// Asked is one outcome as a script asks it: of one part or channel, of the
// model, or of several parts together, with where the controls stand. It is
// what a look at the script itself works on.
type Asked struct {
	Outcome  Outcome
	At       Situation
	Feature  string
	Scenario string
	Sentence string       // the whole step
	Place    result.Place // of the step, or of the row of an outline
	Title    string       // as result.Check.Subject
	Check    int          // index of its check in the record, or -1 if it was not selected
}

// MovedControls are the controls that a movement put elsewhere, by index; nil where
// nothing was moved. A signal that was lost or came back is none of them.
func (s *Situation) MovedControls() []int {
	if !s.Moved {
		return nil
	}
	var list []int
	for i := range s.Now.Position {
		if s.Before.Position[i] != s.Now.Position[i] {
			list = append(list, i)
		}
	}
	return list
}

package bench

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
)

// Present is what a walk has come to, for who shows all of it each time.
type Present struct {
	Question *Question         // that must be answered before anything moves; nil for none
	Step     *result.BenchStep // that is asked about, with what was said in it; nil for none
	Last     bool              // every step is done, and only the end is left to be said
	Touched  bool              // something was said in the step
	Again    []string          // what is to be said once more to have been seen in it; nil for nothing
	Refused  bool              // what must be so is not so
	Paused   bool
	Ended    bool
}

// Present is what is asked now.
func (g *Guide) Present() Present {
	p := Present{Refused: g.refused, Paused: g.paused, Ended: g.ended}
	switch {
	case g.Over():
	case g.changed:
		p.Question = &Question{Name: "changed", Text: sinceThen}
	case g.confirmed < len(Questions):
		p.Question = &g.walk.questions()[g.confirmed]
	case g.at == len(g.steps):
		p.Last = true
	default:
		step := g.walk.step(g.at, &g.steps[g.at])
		p.Step, p.Touched = &step, g.steps[g.at].touched()
		if g.asking == askAgain {
			p.Again = g.onceMore()
		}
	}
	return p
}

// saysOf is all that can be said of what a part did, in the order in which it is offered.
var saysOf = []Saw{
	OtherWay, DidNot, TooLittle, TooMuch, WentUp, WentDown, WentLeft, WentRight, WentOut, WentIn,
	Runs, Stopped, Faster, Slower, WrongTime, AsExpected, Unsure,
}

// MayBe is what can be said of a part in the step that is asked about, by its number as
// BenchPart has it: what fits it, and each thing once. A part that must move is said to have
// done so or otherwise; of one that must not, or of a motor, what it did.
func (g *Guide) MayBe(number int) (list []Saw) {
	if g.Over() || g.at >= len(g.steps) || number < 1 || number > len(g.walk.Steps[g.at].Expect) {
		return nil
	}
	s := &g.walk.Steps[g.at]
	e := &s.Expect[number-1]
	p := &g.walk.Model.Setup.Parts[e.Part]
	for _, saw := range saysOf {
		_, goes := ways[saw]
		switch {
		case g.walk.fitting(s, e, saw, false) != "":
		case goes && e.Moves && p.Motion.Hinged(): // the other way says it
		case saw == DidNot && !e.Moves: // as expected says it
		default:
			list = append(list, saw)
		}
	}
	return list
}

// Say takes what a part did, by its number as BenchPart has it, as Take takes a line. The
// error is the journal's.
func (g *Guide) Say(number int, saw Saw) (Reply, error) {
	switch {
	case g.Over() || g.changed || g.confirmed < len(Questions) || g.at >= len(g.steps):
		return Reply{Text: "no step is asked about"}, nil
	case number < 1 || number > len(g.walk.Steps[g.at].Expect):
		return Reply{Text: fmt.Sprintf("there is no part %d", number)}, nil
	case !known(saw):
		return Reply{Text: fmt.Sprintf("%.40q is nothing that a part does", saw)}, nil
	}
	return reply(g.saw(number-1, saw))
}

// Poses are where the controls stand before and after the movement of the step that is
// asked about; alike where nothing is moved. False where none is asked about.
func (g *Guide) Poses() (from, to mixcore.Input, ok bool) {
	if g.at >= len(g.steps) {
		return from, to, false
	}
	s := &g.walk.Steps[g.at]
	return s.From.Clone(), s.To.Clone(), true
}

package bench

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// Kind is what an event is about.
type Kind string

// The kinds.
const (
	Confirmed Kind = "confirmed" // something that must be so before anything moves
	Refused   Kind = "refused"   // it is not so
	Answer    Kind = "answer"    // what one part did; without a part: the rest of the step is as expected, which ends it
	Measured  Kind = "measured"  // where one part was
	Skip      Kind = "skip"
	Back      Kind = "back"    // to a step, whose answers are forgotten, and steps to decide that were asked for behind it
	Undo      Kind = "undo"    // of the last thing that was noted of a part in the step
	Further   Kind = "further" // a step that is to tell apart what would explain the answers so far
	Pause     Kind = "pause"
	Resumed   Kind = "resumed"
	Changed   Kind = "changed"   // behind Resumed: the model or the radio was since; all answers are forgotten
	Unchanged Kind = "unchanged" // behind Resumed: they stand
	End       Kind = "end"
)

// Event is one thing that was said. Steps are numbered from 1.
type Event struct {
	Kind    Kind      `json:"event"`
	Step    int       `json:"step,omitempty"`
	What    string    `json:"what,omitempty"` // of Confirmed and Refused: the question's name
	Part    string    `json:"part,omitempty"`
	Servo   int       `json:"servo,omitempty"`  // of Measured: the servo, from 1, that alone held the part; 0: all that move it
	Before  bool      `json:"before,omitempty"` // it is about where the part was before the movement
	Saw     Saw       `json:"saw,omitempty"`
	Degrees *float64  `json:"degrees,omitempty"` // of Measured: 0 or more
	Percent *float64  `json:"percent,omitempty"` // of Measured motors and extras
	Length  *float64  `json:"mm,omitempty"`      // as it was read, where it was millimetres at the trailing edge
	Way     string    `json:"way,omitempty"`     // of Degrees that are not 0
	Reason  string    `json:"reason,omitempty"`
	Pose    *StepJSON `json:"pose,omitempty"` // of Further
	At      string    `json:"at"`             // RFC 3339, UTC
}

// Saw is what somebody says that a part did.
type Saw string

// What can be said. The first six are against what is expected.
const (
	AsExpected Saw = "as expected"
	OtherWay   Saw = "the other way"
	DidNot     Saw = "did not move"
	TooLittle  Saw = "moved too little"
	TooMuch    Saw = "moved too much"
	WrongTime  Saw = "took another time than it should"
	Unsure     Saw = "cannot say"

	WentUp    Saw = "went UP"
	WentDown  Saw = "went DOWN"
	WentLeft  Saw = "went LEFT"
	WentRight Saw = "went RIGHT"
	WentOut   Saw = "went OUT"
	WentIn    Saw = "went IN"
	Runs      Saw = "RUNS"
	Stopped   Saw = "is STOPPED"
	Faster    Saw = "turns FASTER"
	Slower    Saw = "turns SLOWER"
)

// Question is something that must be so before anything moves.
type Question struct {
	Name string // as events have it
	Text string
}

// Questions are asked before the first step, and again whenever a record is gone on with.
var Questions = []Question{
	{"restrained", "Is the propeller off, or the model restrained so that it cannot move?"},
	{"transmitter first", "Is the transmitter switched on first, and only then the model?"},
	{"area clear", "Is the area clear of people, hands and loose things, also where a propeller would turn?"},
}

// without are the texts of Questions about a model that has no motor.
var without = map[string]string{
	"restrained": "Is the model held so that it cannot move or fall, also when a wheel or a leg is drawn in?",
	"area clear": "Are hands and loose things out of the way of everything that moves?",
}

// questions are those that are asked about the model.
func (w *Walk) questions() []Question {
	for i := range w.Model.Setup.Parts {
		if w.Model.Setup.Parts[i].Motion == mixcore.Power {
			return Questions
		}
	}
	list := slices.Clone(Questions)
	for i := range list {
		if text, ok := without[list[i].Name]; ok {
			list[i].Text = text
		}
	}
	return list
}

// sinceThen is asked where a record with answers is gone on with.
const sinceThen = "Has anything on the model or in the radio been changed since then? A step that was seen before a repair says nothing about the model after it."

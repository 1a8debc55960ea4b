package phrase

import (
	"fmt"
	"math"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// channelTitle is a channel as reports call it: "channel 3 (starboard flap)".
func channelTitle(c *mixcore.Channel) string {
	if c.Name == "" {
		return fmt.Sprintf("channel %d", c.Number)
	}
	return fmt.Sprintf("channel %d (%s)", c.Number, c.Name)
}

var moveWanted = map[Way]string{
	Up: "rises", Down: "drops", Left: "moves LEFT", Right: "moves RIGHT",
	Faster: "speeds up", Slower: "slows down", Out: "moves OUT", In: "moves IN",
}

var standWanted = map[Way]string{
	Up: "trailing edge UP", Down: "trailing edge DOWN", Left: "LEFT", Right: "RIGHT", Out: "OUT", In: "IN",
}

var verbWanted = map[Verb]string{
	Still: "stays still", Neutral: "neutral", Stopped: "stopped", Running: "running", Stops: "stops, having run",
	StaysStopped: "stays stopped", InTravel: "within its travel", ServosAgree: "servos agree to 1°", AtStop: "at its stop", NotAtStop: "short of its stop",
}

var comparisonWanted = map[Verb]string{
	Together: "moves together with", Opposite: "moves opposite to", AsFar: "moves as far as",
	LessThan: "moves less than", MoreThan: "moves more than",
}

// wanted is what the outcome asks, in the words of reports.
func (j *judge) wanted() string {
	words := j.wantedAtAnyTime()
	if j.o.Every != nil {
		return j.wantedEverywhere(words)
	}
	switch j.o.Clock {
	case After:
		return words + " after " + wording.Time(j.o.Time)
	case Within:
		return words + " within " + wording.Time(j.o.Time)
	}
	return words
}

func (j *judge) wantedAtAnyTime() string {
	o := j.o
	switch o.Verb {
	case Move:
		return moveWanted[o.Way] + o.Amount.behind()
	case Stand:
		return standWanted[o.Way] + o.Amount.behind()
	case PowerAt:
		return "power" + o.Amount.behind()
	case PulseAt, OutputAt:
		return o.Amount.words()
	case Turn:
		return turnWords[o.Axis].does + " " + strings.ToUpper(wayWords[o.Way])
	case NoTurn:
		return "does not " + turnWords[o.Axis].do
	case AddsToRoll:
		return "adds" + o.Amount.behind() + " to the roll"
	case NoMoreAdverse:
		return "adverse yaw no more than with equal up and down throws"
	case HoldsAir:
		return "at least " + wording.Times(o.Amount.Value) + " the torque needed at " + wording.Speed(o.Speed)
	}
	if words, ok := comparisonWanted[o.Verb]; ok {
		words += " the " + j.setup.Parts[o.Other].Name
		if o.Verb == AsFar {
			words += " ± " + measure(o.Amount.Slack, o.Amount.Unit)
		}
		return words
	}
	return verbWanted[o.Verb]
}

// behind is the amount as it follows a verb; empty if there is none.
func (a Amount) behind() string {
	if a.Kind == NoAmount {
		return ""
	}
	return " " + a.words()
}

func (a Amount) words() string {
	switch a.Kind {
	case AtLeast:
		return "at least " + measure(a.Value, a.Unit)
	case AtMost:
		return "at most " + measure(a.Value, a.Unit)
	case Between:
		return "between " + measure(a.Low, a.Unit) + " and " + measure(a.High, a.Unit)
	case Over:
		return "more than " + measure(a.Value, a.Unit)
	case Under:
		return "less than " + measure(a.Value, a.Unit)
	}
	return measure(a.Value, a.Unit) + " ± " + measure(a.Slack, a.Unit)
}

// measure is a number of the script with its unit, as written.
func measure(value float64, unit string) string {
	if unit == "°" {
		return wording.SetAngle(mixcore.Degrees(value))
	}
	if unit == "%" {
		return wording.Setpoint(mixcore.Percent(value))
	}
	return fmt.Sprintf("%v %s", value, unit)
}

// bound is the limit of the amount that a value is nearest to, so that a
// value can be said finely enough to be told from it.
func (a Amount) bound(x float64) float64 {
	low, high := a.Value, a.Value
	switch a.Kind {
	case About:
		low, high = a.Value-a.Slack, a.Value+a.Slack
	case Between:
		low, high = a.Low, a.High
	}
	if math.Abs(x-low) < math.Abs(x-high) {
		return low
	}
	return high
}

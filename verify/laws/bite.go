package laws

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// bite is a limit that holds a channel or part back.
type bite struct {
	bites func(out *mixcore.Output) bool
	lost  func(t *mixcore.Trace) float64 // how much it takes away: percent or degrees
	say   func(lost float64) string
}

// halvings is how often the place where a limit begins to bite is narrowed down, and
// worthSaying how much of a stick must be idle to be said, in percent.
const (
	halvings    = 40
	worthSaying = 1
)

// biteWords says from where on the last control of a pose does nothing more, how much
// of it that is, and how much is lost that way and the other: "; from roll stick 72 %
// right on; 28 % of the stick does nothing; 12 % is lost right, nothing left".
func (mk *maker) biteWords(b bite, v *view) string {
	last := mk.lastMoved(v.in.Position)
	if last < 0 {
		return ", with no stick or lever moved"
	}
	c := &mk.s.Controls[last]
	in := v.in.Clone()
	rest, out := mk.rest.Position[last], mk.m.Plan.NewOutput()
	low, end := c.Range()
	if in.Position[last] < rest {
		low, end = end, low
	}
	bitesAt := func(at float64) bool {
		in.Position[last] = at
		mk.m.Plan.Eval(&in, out)
		return b.bites(out)
	}
	if bitesAt(rest) || !bitesAt(end) {
		return ""
	}
	from := mk.begins(bitesAt, rest, end)
	words := ", from " + wording.Setting(mk.s, last, tenth(from)) + " on"
	if idle := math.Abs(end-from) / math.Abs(end-rest) * 100; idle >= worthSaying {
		words += fmt.Sprintf("; %s of the %s does nothing", wording.Percent(mixcore.Percent(idle)), controlWord(c))
	}
	lostAt := func(at float64) string {
		in.Position[last] = at
		if lost := b.lost(mk.m.Plan.Trace(&in)); lost > 0 {
			return b.say(lost)
		}
		return "nothing"
	}
	words += fmt.Sprintf("; %s is lost", lostAt(end))
	if isAxis(c) {
		words += fmt.Sprintf(" %s, %s %s", wording.AxisSide(c.Axis, end > rest), lostAt(low), wording.AxisSide(c.Axis, end < rest))
	}
	return words
}

// begins is where something begins between a place where it does not hold and one
// where it does.
func (mk *maker) begins(holds func(at float64) bool, free, held float64) float64 {
	for range halvings {
		if middle := (free + held) / 2; holds(middle) {
			held = middle
		} else {
			free = middle
		}
	}
	return held
}

// tenth is a position to 0.1 %, for reading.
func tenth(at float64) float64 { return math.Round(at*10) / 10 }

// lastMoved is the stick, or else lever, or else trim that a pilot would move last on
// the way to a pose; −1 if only switches are off rest.
func (mk *maker) lastMoved(position []float64) int {
	for _, kind := range []mixcore.ControlKind{mixcore.AxisControl, mixcore.LeverControl, mixcore.TrimControl} {
		for i, at := range position {
			if mk.s.Controls[i].Kind == kind && at != mk.rest.Position[i] {
				return i
			}
		}
	}
	return -1
}

// controlWord is the trade's word for what kind of control one is.
func controlWord(c *mixcore.Control) string {
	switch c.Kind {
	case mixcore.AxisControl:
		return "stick"
	case mixcore.TrimControl:
		return "trim"
	}
	return "lever"
}

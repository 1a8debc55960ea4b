package wording

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
)

// OnceAtRest is what a proof assumes where fading phases, slowed channels or servos
// of known speed bear on it: see prove.Decision.Timed.
const OnceAtRest = "once everything has come to rest"

// mostNamed is how many controls that run over their travel are named; of more only
// the number is said.
const mostNamed = 2

// Over says what the answer to a claim covers: "216 switch states and every place of 5
// sticks, levers and trims", "every place of the roll stick", "one position". states is
// that of the decision.
func Over(s *mixcore.Setup, c *prove.Claim, states int) string {
	var names []string
	for i := range c.Now {
		if runs(&c.Now[i]) || c.Other != nil && c.Other[i].Kind == prove.Apart && runs(&c.Other[i].Span) {
			names = append(names, "the "+s.Controls[i].Name)
		}
	}
	places := ""
	switch n := len(names); {
	case n > mostNamed:
		places = fmt.Sprintf("every place of %d sticks, levers and trims", n)
	case n > 0:
		places = "every place of " + strings.Join(names, " and ")
	}
	switch {
	case states <= 1 && places == "":
		return "one position"
	case states <= 1:
		return places
	case places == "":
		return States(states)
	}
	return States(states) + " and " + places
}

// States says how many combinations of switch positions there are: "216 switch states".
func States(n int) string {
	switch n {
	case 1:
		return "1 switch state"
	case math.MaxInt:
		return "countless switch states"
	}
	return strconv.Itoa(n) + " switch states"
}

// runs is true for a stretch of a control that is no switch.
func runs(s *prove.Span) bool { return s.Places == nil && s.Low < s.High }

// ToSpare says how much there is to spare of something, in "°", "%", "µs" or without a
// unit: "2.3° to spare". What is too little to be seen is said as nothing.
func ToSpare(margin float64, unit string) string {
	size, least := "", 0.0
	switch unit {
	case "°":
		size, least = AngleBeside(mixcore.Degrees(margin), 0), 0.0005
	case "%":
		size, least = PercentBeside(mixcore.Percent(margin), 0), 0.0005
	case "µs":
		size, least = PulseBeside(mixcore.Microseconds(margin), 0), 0.0005
	default:
		size, least = beside(margin, 0, 1), 0.0005
	}
	if margin < least {
		return "nothing to spare"
	}
	return size + " to spare"
}

// Margin is the smallest margin of a proved claim in words that a renderer shows; text
// may say more than [ToSpare] does.
func Margin(s *mixcore.Setup, d *prove.Decision, text, unit string) *result.Margin {
	return &result.Margin{Text: text, Value: d.Margin, AtLeast: d.AtLeast, Unit: unit, Pose: Pose(s, &d.Pose.Now)}
}

// Counter is a counterexample as a pose that a person can set, but for what is seen
// there (Got) and why.
func Counter(s *mixcore.Setup, p *prove.Pose) *result.Counter {
	c := &result.Counter{Pose: Pose(s, &p.Now), Set: Sets(s, &p.Now)}
	if p.Other.Position != nil {
		c.Before, c.Moved = Moves(s, &p.Other, &p.Now)
	}
	return c
}

// SignalBack is how a movement says that the signal returned.
const SignalBack = "signal back"

// Moves says how the controls stood before a movement, as [Pose] does, and what was
// moved, as it then stands, in the order in which a hand does it.
func Moves(s *mixcore.Setup, from, to *mixcore.Input) (before, moved []string) {
	for _, i := range poses.HandOrder(s, from, to) {
		if from.Position[i] != to.Position[i] {
			moved = append(moved, Setting(s, i, to.Position[i]))
		}
	}
	switch {
	case to.SignalLost && !from.SignalLost:
		moved = append(moved, SignalLost)
	case from.SignalLost && !to.SignalLost:
		moved = append(moved, SignalBack)
	}
	return Pose(s, from), moved
}

// Sets is a pose as settings that "hingeline show --set" understands, CONTROL=PLACE,
// of the controls that do not rest, in the file's order, for all are set at once; a lost
// signal comes last, as a sentence. Places of sticks and trims are exact.
func Sets(s *mixcore.Setup, in *mixcore.Input) []string {
	var list []string
	for i, at := range in.Position {
		c := &s.Controls[i]
		if at != c.Rest() {
			list = append(list, c.Name+"="+place(c, at))
		}
	}
	if in.SignalLost {
		list = append(list, "the signal is lost")
	}
	return list
}

func place(c *mixcore.Control, at float64) string {
	switch c.Kind {
	case mixcore.SwitchControl:
		return Stand(c, at)
	case mixcore.LeverControl:
		for _, d := range c.Detents {
			if float64(d.At) == at {
				return d.Name
			}
		}
	default:
		if size := math.Abs(at); size == 0 || size == rounded(size, settingDecimals) {
			return Stand(c, at)
		}
	}
	return strconv.FormatFloat(at, 'f', -1, 64) + "%"
}

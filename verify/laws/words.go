package laws

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// turnWords are what a model does about an axis.
var turnWords = map[mixcore.Axis]struct{ do, does, plus, minus string }{
	mixcore.Roll:  {"roll", "rolls", "RIGHT", "LEFT"},
	mixcore.Pitch: {"pitch", "pitches", "UP", "DOWN"},
	mixcore.Yaw:   {"yaw", "yaws", "RIGHT", "LEFT"},
}

// verb is what a part does as it goes its plus or minus way.
func verb(m mixcore.Motion, plus bool) string {
	verbs := map[mixcore.Motion][2]string{
		mixcore.UpDown:    {"drops", "rises"},
		mixcore.LeftRight: {"moves left", "moves right"},
		mixcore.Power:     {"gains power", "loses power"},
		mixcore.OutIn:     {"moves out", "moves in"},
	}[m]
	if plus {
		return verbs[0]
	}
	return verbs[1]
}

// moves says how a part moves: "the port flap rises 14.2° (11 mm)", "the motor: power
// from 45 % to stopped".
func moves(p *mixcore.Part, from, to mixcore.PartOutput, still mixcore.Degrees) string {
	mark := " "
	if p.Motion == mixcore.Power {
		mark = ": "
	}
	return "the " + p.Name + mark + wording.Movement(p, from, to, still)
}

// channelName says a channel: "channel 3 (starboard flap)".
func channelName(c *mixcore.Channel) string {
	if c.Name == "" {
		return fmt.Sprintf("channel %d", c.Number)
	}
	return fmt.Sprintf("channel %d (%s)", c.Number, c.Name)
}

// theParts names parts: "the port flap and the starboard flap".
func (mk *maker) theParts(parts []int) string {
	var names []string
	for _, i := range parts {
		names = append(names, "the "+mk.s.Parts[i].Name)
	}
	return wording.Listed(names)
}

// amount says a size of a part's movement: "2.1°" or "3 %".
func amount(p *mixcore.Part, size float64) string {
	if p.Motion.Hinged() {
		return wording.Angle(mixcore.Degrees(size))
	}
	return wording.Percent(mixcore.Percent(size))
}

// unitOf is the unit of a part's movement.
func unitOf(p *mixcore.Part) string {
	if p.Motion.Hinged() {
		return "°"
	}
	return "%"
}

// Words in the names of controls that say what they are for.
var (
	rateWords   = []string{"rate", "rates", "dual", "expo", "throw", "throws"}
	motorWords  = []string{"motor", "motors", "throttle", "arm", "arming", "engine", "engines", "thrust", "power", "propeller", "gas"}
	flapWords   = []string{"flap", "flaps"}
	brakeWords  = []string{"brake", "brakes", "airbrake", "airbrakes", "crow", "butterfly", "spoiler", "spoilers"}
	camberWords = []string{"camber"}
)

// wordsOf are all words by which the file calls a control.
func (mk *maker) wordsOf(control int) []string {
	words := strings.Fields(airframes.FoldName(mk.s.Controls[control].Name))
	if control < len(mk.m.ControlAka) {
		for _, aka := range mk.m.ControlAka[control] {
			words = append(words, strings.Fields(airframes.FoldName(aka))...)
		}
	}
	return words
}

// called is true for a control with one of some words among its names.
func (mk *maker) called(control int, among ...[]string) bool {
	return slices.ContainsFunc(mk.wordsOf(control), func(w string) bool {
		return slices.ContainsFunc(among, func(words []string) bool { return slices.Contains(words, w) })
	})
}

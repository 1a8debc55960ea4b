package draft

import (
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/poses"
)

// purpose is what a lever or switch is for, by its names.
type purpose uint8

const (
	otherPurpose purpose = iota
	power
	flaps
	brakes
	camber
)

// purposes are the words that say what a lever or switch is for, the first that
// is found counts.
var purposes = []struct {
	purpose purpose
	words   []string
}{
	{power, []string{"throttle", "power", "gas"}},
	{brakes, []string{"brake", "brakes", "airbrake", "airbrakes", "crow", "butterfly", "spoiler", "spoilers"}},
	{flaps, []string{"flap", "flaps"}},
	{camber, []string{"camber"}},
}

// namesOf are all words by which the file calls a control.
func (d *drafter) namesOf(control int) []string {
	words := strings.Fields(airframes.FoldName(d.s.Controls[control].Name))
	if control < len(d.m.ControlAka) {
		for _, aka := range d.m.ControlAka[control] {
			words = append(words, strings.Fields(airframes.FoldName(aka))...)
		}
	}
	return words
}

func (d *drafter) purposeOf(control int) purpose {
	words := d.namesOf(control)
	for _, p := range purposes {
		if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(p.words, w) }) {
			return p.purpose
		}
	}
	return otherPurpose
}

// lowered is how far down a name says that the trailing edges of the wing are.
// Common practice, no source.
var lowered = map[string]float64{
	"reflex": -1, "speed": -1,
	"parked": 0, "shut": 0, "closed": 0, "retracted": 0, "stowed": 0, "off": 0, "clean": 0,
	"cruise": 0, "normal": 0, "neutral": 0, "up": 0, "raised": 0, "zero": 0, "none": 0,
	"thermal": 1, "launch": 1, "takeoff": 1, "start": 1,
	"half": 2, "mid": 2, "approach": 2,
	"landing": 3, "full": 3, "open": 3, "out": 3, "extended": 3, "down": 3, "lowered": 3, "on": 3,
}

// cambered are the names of lowered that speak of the whole wing's camber.
var cambered = []string{"reflex", "speed", "cruise", "normal", "neutral", "thermal", "launch"}

// halfOut is neither in nor out on the scale of outward.
const halfOut = 1

// outward is how far out a name says that an extra is. Common practice, no
// source.
var outward = map[string]float64{
	"in": 0, "up": 0, "raised": 0, "retracted": 0, "closed": 0, "shut": 0, "stowed": 0, "off": 0,
	"hold": 0, "locked": 0, "half": halfOut, "mid": halfOut,
	"out": 2, "down": 2, "lowered": 2, "extended": 2, "open": 2, "on": 2, "release": 2, "released": 2, "drop": 2,
}

// placeName is the name of a lever's detent or a switch's position; empty where
// it has none.
func placeName(c *mixcore.Control, at float64) string {
	if c.Kind == mixcore.SwitchControl {
		return airframes.FoldName(c.Positions[int(at)])
	}
	for _, detent := range c.Detents {
		if float64(detent.At) == at {
			return airframes.FoldName(detent.Name)
		}
	}
	return ""
}

// opening says whether a step opens what a lever or switch is for (+1), shuts it
// (−1), or which of the two nobody can tell (0). A lever opens as it goes up,
// unless its detents are named the other way round.
func opening(c *mixcore.Control, st step, scale map[string]float64) float64 {
	from, fromKnown := scale[placeName(c, st.from)]
	to, toKnown := scale[placeName(c, st.to)]
	switch {
	case fromKnown && toKnown && from != to:
		return sign(to - from)
	case c.Kind == mixcore.LeverControl:
		return sign(st.to-st.from) * upward(c, scale)
	}
	return 0
}

// upward is −1 for a lever whose named detents go down the scale as it goes up,
// else 1.
func upward(c *mixcore.Control, scale map[string]float64) float64 {
	var known []float64
	for _, detent := range c.Detents {
		if at, ok := scale[airframes.FoldName(detent.Name)]; ok {
			known = append(known, at)
		}
	}
	if len(known) > 1 && known[0] > known[len(known)-1] {
		return -1
	}
	return 1
}

func sign(x float64) float64 {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

// purposeWay is the way in which a part goes as a lever or switch is moved.
func (d *drafter) purposeWay(part int, st step) phrase.Way {
	c, p := &d.s.Controls[st.control], &d.s.Parts[part]
	purpose := d.purposeOf(st.control)
	opens := opening(c, st, lowered)
	if opens == 0 && p.Motion != mixcore.OutIn {
		return phrase.NoWay
	}
	switch p.Kind {
	case "motor":
		if c.Kind == mixcore.LeverControl {
			return wayOf(p.Motion, st.to > st.from)
		}
	case "spoiler", "airbrake":
		if c.Kind == mixcore.LeverControl || purpose == brakes || purpose == flaps {
			return wayOf(p.Motion, opens < 0)
		}
	case "flap":
		if purpose == flaps || purpose == brakes || d.cambers(st) {
			return wayOf(p.Motion, opens > 0)
		}
	case "flaperon":
		if purpose == flaps || d.cambers(st) {
			return wayOf(p.Motion, opens > 0)
		}
	case "aileron":
		switch {
		case purpose == brakes:
			return wayOf(p.Motion, opens < 0)
		case d.cambers(st):
			return wayOf(p.Motion, opens > 0)
		}
	default:
		if p.Motion == mixcore.OutIn {
			return d.extraWay(part, st)
		}
	}
	return phrase.NoWay
}

// cambers is true for a step of a camber lever, or between two places that are
// named for the camber of the wing: more of it is trailing edges down.
func (d *drafter) cambers(st step) bool {
	c := &d.s.Controls[st.control]
	return d.purposeOf(st.control) == camber ||
		slices.Contains(cambered, placeName(c, st.from)) && slices.Contains(cambered, placeName(c, st.to))
}

// extraWay is the way of a retract, door, hook or brake: by the names of the
// positions, or for brakes by the lever.
func (d *drafter) extraWay(part int, st step) phrase.Way {
	c, p := &d.s.Controls[st.control], &d.s.Parts[part]
	from, fromKnown := outward[placeName(c, st.from)]
	to, toKnown := outward[placeName(c, st.to)]
	switch {
	case fromKnown && toKnown && from != to:
		return wayOf(p.Motion, to > from)
	case d.purposeOf(st.control) == brakes && (p.Kind == "brake" || p.Kind == "drag rudder"):
		if opens := opening(c, st, lowered); opens != 0 {
			return wayOf(p.Motion, opens > 0)
		}
	}
	return phrase.NoWay
}

// served are the parts that a lever or switch is there for.
func (d *drafter) served(control int) []int {
	var kinds [][]mixcore.Kind
	switch d.purposeOf(control) {
	case power:
		kinds = [][]mixcore.Kind{{"motor"}}
	case flaps:
		kinds = [][]mixcore.Kind{{"flap"}, {"flaperon"}}
	case brakes:
		kinds = [][]mixcore.Kind{{"spoiler", "airbrake"}, {"brake"}, {"flap"}}
	}
	for _, choice := range kinds {
		if found := d.ofKinds(choice); len(found) > 0 {
			return found
		}
	}
	return d.extrasCalledAs(control)
}

func (d *drafter) ofKinds(kinds []mixcore.Kind) []int {
	var found []int
	for i := range d.s.Parts {
		if slices.Contains(kinds, d.s.Parts[i].Kind) {
			found = append(found, i)
		}
	}
	return found
}

// otherwise are further words for a kind of extra in a control's name.
var otherwise = map[mixcore.Kind][]string{
	"retract": {"gear", "undercarriage", "wheel", "retracts"},
	"release": {"tow", "drop"},
}

// extrasCalledAs are the extras that share a word with a control's name: the
// gear switch and the retracts, the door switch and the doors.
func (d *drafter) extrasCalledAs(control int) []int {
	words := d.namesOf(control)
	var found []int
	for i := range d.s.Parts {
		p := &d.s.Parts[i]
		named := append(strings.Fields(poses.WithoutSide(p.Name)+" "+string(p.Kind)), otherwise[p.Kind]...)
		if p.Motion == mixcore.OutIn && slices.ContainsFunc(named, func(w string) bool {
			return slices.Contains(words, w) || slices.Contains(words, strings.TrimSuffix(w, "s"))
		}) {
			found = append(found, i)
		}
	}
	return found
}

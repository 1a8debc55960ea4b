package draft

import (
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/purpose"
)

// cambered are the names of places that speak of the whole wing's camber.
var cambered = []string{"reflex", "speed", "cruise", "normal", "neutral", "thermal", "launch"}

// purposeWay is the way in which a part goes as a lever or switch is moved; NoWay
// where the names do not tell.
func (d *drafter) purposeWay(part int, st step) phrase.Way {
	c, p := &d.s.Controls[st.control], &d.s.Parts[part]
	opens := func(scale purpose.Scale) int { return purpose.Opens(c, st.from, st.to, scale) }
	brakes := purpose.ForBrakes(d.words[st.control])
	more := func(way int) phrase.Way { // down, out or faster with more of it
		if way == 0 {
			return phrase.NoWay
		}
		return phrase.WayOf(p.Motion, way > 0)
	}
	is, lever := d.purposes[st.control], c.Kind == mixcore.LeverControl
	switch p.Kind {
	case "motor":
		if is == purpose.Power && lever {
			return more(opens(purpose.Opened))
		}
	case "spoiler", "airbrake": // they rise as they open
		switch {
		case is == purpose.Flaps:
			return more(-opens(purpose.Lowered))
		case is == purpose.Brakes, is == purpose.Other && lever:
			return more(-opens(brakes))
		}
	case "flap", "flaperon", "aileron":
		switch {
		case is == purpose.Flaps && p.Kind != "aileron", d.cambers(st):
			return more(opens(purpose.Lowered))
		case is == purpose.Brakes && p.Kind == "flap":
			return more(opens(brakes))
		case is == purpose.Brakes && p.Kind == "aileron":
			return more(-opens(brakes))
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
	return d.purposes[st.control] == purpose.Camber ||
		slices.Contains(cambered, purpose.PlaceName(c, st.from)) && slices.Contains(cambered, purpose.PlaceName(c, st.to))
}

// extraWay is the way of a retract, door, hook or brake: by the names of the
// positions, or for brakes by the lever.
func (d *drafter) extraWay(part int, st step) phrase.Way {
	c, p := &d.s.Controls[st.control], &d.s.Parts[part]
	way := 0
	if purpose.PlaceName(c, st.from) != "" && purpose.PlaceName(c, st.to) != "" {
		way = purpose.Opens(c, st.from, st.to, purpose.Outward)
	}
	if way == 0 && d.purposes[st.control] == purpose.Brakes && (p.Kind == "brake" || p.Kind == "drag rudder") {
		way = purpose.Opens(c, st.from, st.to, purpose.Braked)
	}
	if way == 0 {
		return phrase.NoWay
	}
	return phrase.WayOf(p.Motion, way > 0)
}

// allServed are the parts that each lever or switch is there for.
func (d *drafter) allServed() [][]int {
	served := make([][]int, len(d.s.Controls))
	for i := range d.s.Controls {
		if c := &d.s.Controls[i]; c.Kind != mixcore.AxisControl && c.Kind != mixcore.TrimControl {
			served[i] = d.servedBy(i)
		}
	}
	return served
}

func (d *drafter) servedBy(control int) []int {
	var kinds [][]mixcore.Kind
	switch d.purposes[control] {
	case purpose.Power:
		kinds = [][]mixcore.Kind{{"motor"}}
	case purpose.Flaps:
		kinds = [][]mixcore.Kind{{"flap"}, {"flaperon"}}
	case purpose.Brakes:
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
	words := d.words[control]
	var found []int
	for i := range d.s.Parts {
		p := &d.s.Parts[i]
		named := append(strings.Fields(d.stems[i]+" "+string(p.Kind)), otherwise[p.Kind]...)
		if p.Motion == mixcore.OutIn && slices.ContainsFunc(named, func(w string) bool {
			return slices.Contains(words, w) || slices.Contains(words, strings.TrimSuffix(w, "s"))
		}) {
			found = append(found, i)
		}
	}
	return found
}

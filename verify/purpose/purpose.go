// Package purpose is what a lever or switch is there for, by the names that the
// builder gave it, and whether a movement of it asks for more or for less of that.
//
// Names are all there is to go by: what the set-up does with a control is what is
// to be judged. So a name that is not among those known says nothing, and then
// nobody can tell: it is never taken for "up is more". Common practice, no source.
//
// It never evaluates a set-up. Start at [Of] and [Opens].
package purpose

import (
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// Purpose is what a lever or switch is for.
type Purpose uint8

// The purposes.
const (
	Other Purpose = iota // none that its names say
	Power
	Flaps
	Brakes // crow, spoilers and airbrakes among them
	Camber
)

// said are the words that say what a control is for; the first purpose that is
// found counts.
var said = []struct {
	purpose Purpose
	words   []string
}{
	{Power, []string{"throttle", "power", "gas"}},
	{Brakes, append([]string{"brake", "brakes", "airbrake", "airbrakes", "crow", "butterfly"}, spoilerWords...)},
	{Flaps, []string{"flap", "flaps", "flaperon", "flaperons"}},
	{Camber, []string{"camber"}},
}

var spoilerWords = []string{"spoiler", "spoilers"}

// Of is what a control is for: by its name and its aka or else, of a lever, by
// the names of its detents.
func Of(m *airframes.Model, control int) Purpose {
	c, words := &m.Setup.Controls[control], Words(m, control)
	p := byWords(words)
	switch {
	case p != Other || c.Kind != mixcore.LeverControl:
		return p
	case hasAny(words, []string{"motor", "motors", "engine", "engines"}):
		return Power // a switch of that name only lets it run
	}
	var places []string
	for _, d := range c.Detents {
		places = append(places, wordsOf(d.Name)...)
	}
	return byWords(places)
}

func byWords(words []string) Purpose {
	for _, p := range said {
		if hasAny(words, p.words) {
			return p.purpose
		}
	}
	return Other
}

// Words are all words by which the file calls a control, as names are compared.
func Words(m *airframes.Model, control int) []string {
	words := wordsOf(m.Setup.Controls[control].Name)
	if control < len(m.ControlAka) {
		for _, aka := range m.ControlAka[control] {
			words = append(words, wordsOf(aka)...)
		}
	}
	return words
}

func wordsOf(name string) []string {
	return strings.Fields(airframes.FoldName(name))
}

func hasAny(words, of []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(of, w) })
}

// PlaceName is the name of a lever's detent or a switch's position, as names are
// compared; empty where it has none.
func PlaceName(c *mixcore.Control, at float64) string {
	if c.Kind == mixcore.SwitchControl {
		return airframes.FoldName(c.Positions[int(at)])
	}
	if i := c.DetentAt(at); i >= 0 {
		return airframes.FoldName(c.Detents[i].Name)
	}
	return ""
}

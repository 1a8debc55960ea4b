// Package where says where the airframe file speaks of a piece of the set-up:
// the field itself if the file gives it, or else the nearest thing around it
// that it does give. Indexes are those of mixcore.Setup. It finds places only
// and never reads a file; a model that was made without one has no places, and
// the answer is the zero Place.
package where

import (
	"fmt"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
)

// first is where the file says the first of these paths that it says at all, or
// else otherwise.
func first(m *airframes.Model, otherwise diag.Place, paths ...string) diag.Place {
	for _, path := range paths {
		if p, ok := m.Places.Fields[path]; ok {
			return p
		}
	}
	return otherwise
}

// under puts a path before each field.
func under(path string, fields []string) []string {
	full := make([]string, len(fields))
	for i, f := range fields {
		full[i] = path + "." + f
	}
	return full
}

// at is one of some places, or nowhere where a model was made without a file.
func at(places []diag.Place, i int) diag.Place {
	if i < len(places) {
		return places[i]
	}
	return diag.Place{}
}

// Control is a control, or the axis whose trim it is.
func Control(m *airframes.Model, i int) diag.Place { return at(m.Places.Controls, i) }

// Demand is the first field of a demand that the file gives, or the demand.
func Demand(m *airframes.Model, i int, fields ...string) diag.Place {
	return first(m, at(m.Places.Demands, i), under("demands."+m.Setup.Demands[i].Name, fields)...)
}

// Rate is a field of one rate of a demand, which the file may say under rates or
// in the demand itself, or else the rate.
func Rate(m *airframes.Model, i, rate int, field string) diag.Place {
	otherwise := at(m.Places.Demands, i)
	if i < len(m.Places.Rates) && rate < len(m.Places.Rates[i]) {
		otherwise = m.Places.Rates[i][rate]
	}
	name := "demands." + m.Setup.Demands[i].Name
	return first(m, otherwise, fmt.Sprintf("%s.rates.%d.%s", name, rate, field), name+"."+field)
}

// Channel is the first field of a channel that the file gives, or the channel.
func Channel(m *airframes.Model, i int, fields ...string) diag.Place {
	path := fmt.Sprintf("channels.%d", m.Setup.Channels[i].Number)
	return first(m, at(m.Places.Channels, i), under(path, fields)...)
}

// SaysOfChannel is true if the file gives that field of a channel.
func SaysOfChannel(m *airframes.Model, i int, field string) bool {
	_, says := m.Places.Fields[fmt.Sprintf("channels.%d.%s", m.Setup.Channels[i].Number, field)]
	return says
}

// Line is one line of a channel's mix.
func Line(m *airframes.Model, channel, line int) diag.Place {
	if channel < len(m.Places.Mix) && line < len(m.Places.Mix[channel]) {
		return m.Places.Mix[channel][line]
	}
	return at(m.Places.Channels, channel)
}

// sections are where the airframe file keeps parts.
var sections = []string{"surfaces", "wheels", "motors", "extras"}

// Part is the first field of a part that the file gives, or the part.
func Part(m *airframes.Model, i int, fields ...string) diag.Place {
	var paths []string
	for _, f := range fields {
		for _, section := range sections {
			paths = append(paths, section+"."+m.Setup.Parts[i].Name+"."+f)
		}
	}
	return first(m, at(m.Places.Parts, i), paths...)
}

// Drive is the first field of one servo of a part that the file gives, under
// servos or in the part itself, or else the part.
func Drive(m *airframes.Model, part, drive int, fields ...string) diag.Place {
	var both []string
	for _, f := range fields {
		both = append(both, fmt.Sprintf("servos.%d.%s", drive, f), f)
	}
	return Part(m, part, both...)
}

// Phase is a phase.
func Phase(m *airframes.Model, i int) diag.Place { return at(m.Places.Phases, i) }

package airframes

import (
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// Model is an airframe file, read: the set-up as arithmetic, with the names,
// places and remarks that people need around it.
type Model struct {
	Name       string
	About      string          // a sentence or two, may be empty
	MassKg     float64         // 0 if not said
	AirspeedMs float64         // metres a second, at which roll rate and servo loads are stated; 0 if not said
	Still      mixcore.Degrees // movements below this count as still: use StillOf
	Scripts    []string        // as written under script:, relative to the airframe file

	Setup mixcore.Setup
	Plan  *mixcore.Plan

	Source *diag.Source
	Places Places

	// Aka are the further names that the file gives, by kind of thing and index.
	ControlAka, PartAka [][]string
}

// Places says where the file speaks of each part of the set-up; the slices run
// parallel to those of mixcore.Setup.
type Places struct {
	Controls, Phases, Demands, Channels, Parts []diag.Place
	Rates                                      [][]diag.Place        // by demand, by rate
	Mix                                        [][]diag.Place        // by channel, by line
	Fields                                     map[string]diag.Place // by path, such as "channels.3.reversed" or "surfaces.port flap.linkage.horn"
}

// Package chain is why a part stands where it stands: the cause chain from the
// pilot's hand to the trailing edge, with every intermediate value in words,
// and the lines of the airframe file that are worth a look when the result is
// not what was wanted.
//
// It explains a mixcore.Trace and computes nothing itself. Steps follow the
// order of the chain (see package mixcore); a step that changes nothing is left
// out: an expo at full stick, a throw of 100 %, a channel that is not reversed, end points of
// 100 %, no sub-trim, and a control at rest whose demand is 0 %.
//
// It never judges and never prints. Start at [Part] for the steps and at
// [LookAtPart] for the lines.
package chain

import (
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
)

// Part explains where one part stands in a trace: the steps from the controls
// to the part. part is an index into Setup.Parts.
func Part(m *airframes.Model, t *mixcore.Trace, part int) []result.Step {
	return ofPart(m, t, part).steps
}

func ofPart(m *airframes.Model, t *mixcore.Trace, part int) *builder {
	b := builder{m: m, s: &m.Setup, t: t}
	b.demandsOf(channelsOf(&m.Setup.Parts[part]))
	b.mixesAndDrives(part)
	b.part(part)
	return &b
}

// Channel explains what one channel puts out, as Part does for a part. channel
// is an index into Setup.Channels.
func Channel(m *airframes.Model, t *mixcore.Trace, channel int) []result.Step {
	b := builder{m: m, s: &m.Setup, t: t}
	b.demandsOf([]int{channel})
	b.mix(channel)
	b.channel(channel, "")
	return b.steps
}

// builder gathers the steps of one chain.
type builder struct {
	m      *airframes.Model
	s      *mixcore.Setup
	t      *mixcore.Trace
	steps  []result.Step
	limits []string // that bit on the way, as Limits has them
}

// found is a place as results keep it.
func found(p diag.Place) result.Place {
	return result.Place{File: p.File, Line: p.Line, Column: p.Column}
}

func (b *builder) add(s result.Step, v value) {
	s.Value, s.Exact = v.words, v.exact
	b.steps = append(b.steps, s)
}

// channelsOf is every channel that drives a part, each once.
func channelsOf(p *mixcore.Part) []int {
	var channels []int
	for i := range p.Drives {
		if c := p.Drives[i].Channel; !slices.Contains(channels, c) {
			channels = append(channels, c)
		}
	}
	return channels
}

// firstLine is the first line of a channel's mix that still counts: a line in
// full force that replaces the sum makes those before it idle.
func firstLine(s *mixcore.Setup, t *mixcore.Trace, channel int) int {
	for i := len(s.Channels[channel].Mix) - 1; i > 0; i-- {
		if s.Channels[channel].Mix[i].Op == mixcore.ReplaceWith && t.Channels[channel].Lines[i].Weight == 1 {
			return i
		}
	}
	return 0
}

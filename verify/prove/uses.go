package prove

import (
	"slices"

	"example.com/hingeline/mixcore"
)

// uses is what bears on a claim.
type uses struct {
	channels []int
	parts    []int
	weights  []int  // of the plan's conditions, ascending
	sources  []bool // by control: a demand that bears on the claim comes from it, or is trimmed by it
	timed    bool   // a phase that fades or a slowed channel bears on it
}

// usesOf gathers what bears on channels and parts.
func usesOf(p *Prover, channels, parts []int) uses {
	u := uses{channels: slices.Clone(channels), parts: parts, sources: make([]bool, len(p.setup.Controls))}
	for _, part := range parts {
		for i := range p.setup.Parts[part].Drives {
			u.channels = append(u.channels, p.setup.Parts[part].Drives[i].Channel)
		}
	}
	slices.Sort(u.channels)
	u.channels = slices.Compact(u.channels)
	weigh := func(index int) {
		if index >= 0 {
			u.weights = append(u.weights, index)
		}
	}
	for _, channel := range u.channels {
		u.timed = u.timed || p.setup.Channels[channel].Slow > 0
		for i := range p.setup.Channels[channel].Mix {
			weigh(p.plan.LineCondition(channel, i))
		}
	}
	u.demands(p, func(demand int) {
		u.sources[p.setup.Demands[demand].From] = true
		if trim := p.setup.Demands[demand].Trim; trim != mixcore.NoTrim {
			u.sources[trim] = true
		}
		for i := range p.setup.Demands[demand].Rates {
			weigh(p.plan.RateCondition(demand, i))
		}
	})
	slices.Sort(u.weights)
	u.weights = slices.Compact(u.weights)
	u.conditions(p, func(when *mixcore.Condition) { u.timed = u.timed || p.setup.Fades(when) })
	return u
}

// demands visits every demand that comes into the channels, some more than once.
func (u *uses) demands(p *Prover, visit func(demand int)) {
	for _, channel := range u.channels {
		for i := range p.setup.Channels[channel].Mix {
			if line := &p.setup.Channels[channel].Mix[i]; line.Op == mixcore.Add || line.Op == mixcore.ScaleBy {
				visit(line.Demand)
			}
		}
	}
}

// conditions visits every condition that decides what the channels do.
func (u *uses) conditions(p *Prover, visit func(*mixcore.Condition)) {
	for _, channel := range u.channels {
		for i := range p.setup.Channels[channel].Mix {
			if when := p.setup.Channels[channel].Mix[i].When; when != nil {
				visit(when)
			}
		}
	}
	u.demands(p, func(demand int) {
		for i := range p.setup.Demands[demand].Rates {
			if when := p.setup.Demands[demand].Rates[i].When; when != nil {
				visit(when)
			}
		}
	})
}

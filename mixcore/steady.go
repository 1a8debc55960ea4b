package mixcore

// Steady says whether a part surely goes nowhere but between the two places where it
// rests, when the controls jump from one position to another: it has one servo, no phase
// that bears on it is fading, and no signal comes back. Slowed channels and slow servos
// then bring it from the one straight to the other, for the chain behind the mix never
// turns back. Where the signal is lost the output is set at once, and the servo follows.
func (p *Plan) Steady(part int, from, to *Input) bool {
	drives := p.parts[part].drives
	switch {
	case len(drives) != 1, from.SignalLost:
		return false
	case to.SignalLost:
		return true
	}
	return !p.fading(from, to) || !p.fadesBearOn(drives[0].Channel)
}

// fading says whether some phase comes or goes slowly.
func (p *Plan) fading(from, to *Input) bool {
	start, end := make([]float64, len(p.phases)), make([]float64, len(p.phases))
	p.phaseWeights(from.Position, start)
	p.phaseWeights(to.Position, end)
	for i := range start {
		if start[i] != end[i] && p.setup.Phases[i].Fade > 0 {
			return true
		}
	}
	return false
}

// fadesBearOn says whether a phase that takes time to come or go bears on a channel.
func (p *Plan) fadesBearOn(channel int) bool {
	for i := range p.setup.Channels[channel].Mix {
		m := &p.setup.Channels[channel].Mix[i]
		if p.setup.Fades(m.When) {
			return true
		}
		if m.Op != Add && m.Op != ScaleBy {
			continue
		}
		for k := range p.setup.Demands[m.Demand].Rates {
			if p.setup.Fades(p.setup.Demands[m.Demand].Rates[k].When) {
				return true
			}
		}
	}
	return false
}

package mixcore

// Steady says whether a part never goes beyond the two places between which it moves:
// it has one servo, and no phase that fades bears on it. Slowed channels and slow servos
// then bring it from the one straight to the other, for the chain behind the mix never
// turns back. With a signal that goes or comes it may still start from somewhere else.
func (p *Plan) Steady(part int) bool {
	drives := p.parts[part].drives
	if len(drives) != 1 {
		return false
	}
	for i := range p.setup.Channels[drives[0].Channel].Mix {
		m := &p.setup.Channels[drives[0].Channel].Mix[i]
		if p.setup.Fades(m.When) {
			return false
		}
		if m.Op != Add && m.Op != ScaleBy {
			continue
		}
		for k := range p.setup.Demands[m.Demand].Rates {
			if p.setup.Fades(p.setup.Demands[m.Demand].Rates[k].When) {
				return false
			}
		}
	}
	return true
}

package poses

import "example.com/hingeline/mixcore"

// Combinations is how many poses of some controls there are to try; at most
// beyond, which is returned where there are more.
func (p *Probe) Combinations(controls []int, beyond int) int {
	n := 1
	for _, c := range controls {
		if n *= len(p.Points[c]); n >= beyond {
			return beyond
		}
	}
	return n
}

// Walk visits poses of some controls, with everything else at rest: first with
// none of them off rest, then with each one, then with each two, and so on. It
// stops after so many visits and says whether it tried every combination. Where
// it cannot, three and more controls are tried at their ends only. digits are
// the indexes into points of the controls.
func (p *Probe) Walk(controls []int, most int, visit func(in *mixcore.Input, digits []int, moved int)) bool {
	all := p.Combinations(controls, most+1) <= most
	in := p.rest.Clone()
	digits := make([]int, len(controls))
	visits := 0
	var choose func(from, more, moved int)
	choose = func(from, more, moved int) {
		if more == 0 {
			visits++
			visit(&in, digits, moved)
			return
		}
		for i := from; i <= len(controls)-more; i++ {
			c := controls[i]
			for d := 1; d < len(p.Points[c]) && visits < most; d++ {
				if !all && moved > 2 && !p.atEnd(c, d) {
					continue
				}
				in.Position[c], digits[i] = p.Points[c][d], d
				choose(i+1, more-1, moved)
			}
			in.Position[c], digits[i] = p.Points[c][0], 0
		}
	}
	for moved := 0; moved <= len(controls) && visits < most; moved++ {
		choose(0, moved, moved)
	}
	return all
}

// atEnd says whether a probe point is an end of a stick or lever, or any
// position of a switch.
func (p *Probe) atEnd(control, point int) bool {
	c := &p.setup.Controls[control]
	low, high := c.Range()
	at := p.Points[control][point]
	return c.Kind == mixcore.SwitchControl || at == low || at == high
}

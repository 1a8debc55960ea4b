package resolved

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
)

// bearings is what bears on what in a set-up.
type bearings struct {
	s        *mixcore.Setup
	controls []poses.Reach // by part
	channels [][]bool      // by part, by channel
	demands  [][]bool      // by part
	phases   [][]bool      // by part
}

func newBearings(s *mixcore.Setup) *bearings {
	b := &bearings{s: s}
	probe := poses.Bearing(s)
	for i := range s.Parts {
		b.controls = append(b.controls, probe.PartReach(i))
		channels, demands, phases := make([]bool, len(s.Channels)), make([]bool, len(s.Demands)), make([]bool, len(s.Phases))
		for _, d := range s.Parts[i].Drives {
			channels[d.Channel] = true
			for k := range s.Channels[d.Channel].Mix {
				m := &s.Channels[d.Channel].Mix[k]
				b.names(m.When, phases)
				if m.Op != mixcore.Add && m.Op != mixcore.ScaleBy {
					continue
				}
				demands[m.Demand] = true
				for r := range s.Demands[m.Demand].Rates {
					b.names(s.Demands[m.Demand].Rates[r].When, phases)
				}
			}
		}
		if motor := s.Parts[i].Motor; motor != nil {
			b.names(motor.StoppedWhen, phases)
		}
		b.channels, b.demands, b.phases = append(b.channels, channels), append(b.demands, demands), append(b.phases, phases)
	}
	return b
}

// names marks the phases that a condition rests on, those of its phases too.
func (b *bearings) names(c *mixcore.Condition, phases []bool) {
	if c == nil {
		return
	}
	for i := range c.Args {
		b.names(&c.Args[i], phases)
	}
	if c.Op == mixcore.InPhase {
		phases[c.Phase] = true
		b.names(&b.s.Phases[c.Phase].When, phases)
	}
}

// parts are the names of those that a test finds.
func (b *bearings) parts(test func(part int) bool) (list []string) {
	for i := range b.s.Parts {
		if test(i) {
			list = append(list, b.s.Parts[i].Name)
		}
	}
	return list
}

func (b *bearings) all() []string { return b.parts(func(int) bool { return true }) }

func (b *bearings) onWing() []string {
	return b.parts(func(p int) bool { info, _ := b.s.Parts[p].Kind.Info(); return info.Wing })
}

func (b *bearings) control(i int) []string {
	return b.parts(func(p int) bool { return b.controls[p][i] })
}
func (b *bearings) phase(i int) []string { return b.parts(func(p int) bool { return b.phases[p][i] }) }
func (b *bearings) demand(i int) []string {
	return b.parts(func(p int) bool { return b.demands[p][i] })
}
func (b *bearings) channel(i int) []string {
	return b.parts(func(p int) bool { return b.channels[p][i] })
}
func (b *bearings) part(i int) []string { return []string{b.s.Parts[i].Name} }

// union is the names in either list, those of the first before the others.
func union(a, b []string) []string {
	all := slices.Clone(a)
	for _, name := range b {
		if !slices.Contains(all, name) {
			all = append(all, name)
		}
	}
	return all
}

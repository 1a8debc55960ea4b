package mixcore

import "slices"

// Clone is a copy whose settings can be changed without changing s: what tests
// and fault finders edit. Conditions and curves are shared; put another in their
// place instead of changing one.
func (s Setup) Clone() Setup {
	s.Controls, s.Phases, s.Demands = slices.Clone(s.Controls), slices.Clone(s.Phases), slices.Clone(s.Demands)
	s.Channels, s.Parts = slices.Clone(s.Channels), slices.Clone(s.Parts)
	for i := range s.Demands {
		s.Demands[i].Rates = slices.Clone(s.Demands[i].Rates)
		s.Demands[i].Values = slices.Clone(s.Demands[i].Values)
	}
	for i := range s.Channels {
		s.Channels[i].Mix = slices.Clone(s.Channels[i].Mix)
	}
	for i := range s.Parts {
		s.Parts[i].Drives = slices.Clone(s.Parts[i].Drives)
		s.Parts[i].Motor = cloned(s.Parts[i].Motor)
		for k := range s.Parts[i].Drives {
			d := &s.Parts[i].Drives[k]
			d.Table = slices.Clone(d.Table)
			d.Linkage = cloned(d.Linkage)
		}
	}
	s.Wing = cloned(s.Wing)
	return s
}

func cloned[T any](p *T) *T {
	if p == nil {
		return nil
	}
	c := *p
	return &c
}

package walk

import (
	"context"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/verifytest"
)

// accidents are faults that people really made, planted in shipped models as they were
// and not as the catalogue has them: some are two mistakes of it at once.
var accidents = []struct {
	report, model, fault string
	plant                func(*mixcore.Setup)
}{
	{"NTSB N2716P, 2020", "bracken-20", "aileron cables opposite", func(s *mixcore.Setup) {
		exchange(s, "port aileron", "starboard aileron")
	}},
	{"ATSB 199504285, 1995", "ousel-trainer", "ailerons reversed", func(s *mixcore.Setup) { reverse(s, "aileron") }},
	{"NTSB N4594J, 2017", "turnstone-canard", "roll control right, left aileron up", func(s *mixcore.Setup) { reverse(s, "aileron") }},
	{"NTSB ERA14LA015", "ousel-trainer", "elevator reversed", func(s *mixcore.Setup) { reverse(s, "elevator") }},
	{"NTSB NYC03MA183, 2003", "bracken-20", "trim reversed, the stick right", func(s *mixcore.Setup) { reverseTrim(s, mixcore.Pitch) }},
	{"AAIB EW/C2018/04/02", "pellin-park", "trim reversed", func(s *mixcore.Setup) { reverseTrim(s, mixcore.Pitch) }},
	{"NTSB N93CL, 2014; TSB A97O0077", "turnstone-canard", "trim reversed", func(s *mixcore.Setup) { reverseTrim(s, mixcore.Pitch) }},
	{"BFU D-AIPW, 2001", "hollin-spoilers", "one of two inputs to an axis reversed", func(s *mixcore.Setup) {
		mix := s.Channels[channelOf(s, "rudder")].Mix
		line := &mix[len(mix)-1] // roll, when the rudder is coupled
		line.Share.Plus, line.Share.Minus = -line.Share.Plus, -line.Share.Minus
	}},
	{"NTSB N962DA, 2015", "bracken-20", "one wing's aileron wrong", func(s *mixcore.Setup) { reverse(s, "port aileron") }},
	{"GPIAAF P4-KCJ, 2018", "bracken-20", "aileron cables wrong in both wings", func(s *mixcore.Setup) {
		reverse(s, "port aileron")
		reverse(s, "starboard aileron")
	}},
	{"AAIB 2/95, 1993", "hollin-spoilers", "right spoilers dead", func(s *mixcore.Setup) {
		rest := s.Channels[channelOf(s, "starboard spoiler")].Mix
		s.Channels[channelOf(s, "starboard spoiler")].Mix = rest[len(rest)-1:]
	}},
	{"model club safety page (495th Squadron)", "bracken-20", "aileron servos unplugged", func(s *mixcore.Setup) {
		for _, name := range []string{"port aileron", "starboard aileron"} {
			s.Channels[channelOf(s, name)].Mix = nil
		}
	}},
}

func partNamed(s *mixcore.Setup, name string) *mixcore.Part {
	i := slices.IndexFunc(s.Parts, func(p mixcore.Part) bool { return p.Name == name })
	return &s.Parts[i]
}

func channelOf(s *mixcore.Setup, part string) int { return partNamed(s, part).Drives[0].Channel }

// reverse turns every channel round that drives a part of this name or kind.
func reverse(s *mixcore.Setup, name string) {
	done := map[int]bool{}
	for i := range s.Parts {
		if s.Parts[i].Name != name && string(s.Parts[i].Kind) != name {
			continue
		}
		for _, d := range s.Parts[i].Drives {
			if !done[d.Channel] {
				done[d.Channel] = true
				s.Channels[d.Channel].Reversed = !s.Channels[d.Channel].Reversed
			}
		}
	}
	if len(done) == 0 {
		panic("nothing is called " + name)
	}
}

func exchange(s *mixcore.Setup, one, other string) {
	a, b := &partNamed(s, one).Drives[0], &partNamed(s, other).Drives[0]
	a.Channel, b.Channel = b.Channel, a.Channel
}

func reverseTrim(s *mixcore.Setup, axis mixcore.Axis) {
	found := false
	for i := range s.Demands {
		d := &s.Demands[i]
		if d.Trim != mixcore.NoTrim && s.Controls[d.From].Axis == axis {
			d.TrimRange, found = -d.TrimRange, true
		}
	}
	if !found {
		panic("there is no trim")
	}
}

// The reports are those of the accident table; what was planted is its second column.
func TestWalkCatchesAccidents(t *testing.T) {
	for _, a := range accidents {
		for _, look := range looks {
			f := shortest(t, a.model, look)
			s := f.Table.Model.Setup.Clone()
			a.plant(&s)
			wrong, faults := mixcore.Compile(s)
			if faults != nil {
				t.Errorf("%s: %+v", a.report, faults)
				continue
			}
			if !slices.ContainsFunc(f.Order, func(step int) bool {
				return sees(look, f.Table.Model.Plan, wrong, &f.Table.Steps[step])
			}) {
				t.Errorf("%s: %s is not seen on the walk of %s, ruler %v", a.report, a.fault, a.model, look.Ruler)
			}
		}
	}
}

// The last row of the accident table: "the wrong model selected on the transmitter".
func TestWalkCatchesTheWrongModel(t *testing.T) {
	m := verifytest.Shipped(t, "ousel-trainer")
	var others []*airframes.Model
	for _, name := range airframes.Shipped() {
		if name != "ousel-trainer" {
			others = append(others, verifytest.Shipped(t, name))
		}
	}
	f := Shortest(context.Background(), m, Options{Look: sight.Eye, Others: others})
	caught := 0
	for k := range f.Table.Mistakes {
		if f.Table.Mistakes[k].Kind.Code != "other-model" || f.Table.Fault(k) != nil {
			continue
		}
		if f.First(k) < 0 {
			t.Errorf("%s is not seen", f.Table.Mistakes[k].Text)
		}
		caught++
	}
	if caught == 0 {
		t.Error("no other model could be loaded")
	}
}

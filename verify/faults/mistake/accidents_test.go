package mistake_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/verifytest"
)

// patterns are the faults of accident reports, planted by hand and not by the catalogue,
// with the mistakes of it that do the same. A pattern of several parts has one for each:
// the catalogue is of single mistakes.
var patterns = []struct {
	report, model string
	kind, text    string // text is in the mistake's own
	plant         func(*mixcore.Setup)
}{
	{"NTSB N2716P, 2020: aileron cables opposite", "bracken-20", "plugs-swapped", "(port aileron) and channel 5 (starboard aileron)",
		func(s *mixcore.Setup) { exchange(drive(s, "port aileron"), drive(s, "starboard aileron")) }},
	{"ATSB 199504285, 1995: ailerons reversed", "ousel-trainer", "channel-reversed", "channel 1",
		func(s *mixcore.Setup) { turnAbout(drive(s, "port aileron")); turnAbout(drive(s, "starboard aileron")) }},
	{"NTSB N4594J, 2017: roll control right, left aileron up", "turnstone-canard", "control-reversed", "for roll", rollBackwards},
	{"NTSB ERA14LA015: elevator reversed", "ousel-trainer", "horn-side", "elevator",
		func(s *mixcore.Setup) { turnAbout(drive(s, "elevator")) }},
	{"NTSB NYC03MA183, 2003: trim reversed, the stick right", "bracken-20", "trim-reversed", "for pitch", trimBackwards},
	{"AAIB EW/C2018/04/02: trim reversed", "pellin-park", "trim-reversed", "for pitch", trimBackwards},
	{"NTSB N93CL, 2014; TSB A97O0077: trim reversed", "turnstone-canard", "trim-reversed", "for pitch", trimBackwards},
	{"BFU D-AIPW, 2001: one of two inputs to an axis reversed", "hollin-spoilers", "share-sign", "roll when rudder switch is coupled on channel 4",
		func(s *mixcore.Setup) {
			mix := s.Channels[drive(s, "rudder").Channel].Mix
			last := &mix[len(mix)-1].Share
			last.Plus, last.Minus = -last.Plus, -last.Minus
		}},
	{"NTSB N962DA, 2015: one wing's aileron wrong", "bracken-20", "channel-reversed", "(port aileron)",
		func(s *mixcore.Setup) {
			c := &s.Channels[drive(s, "port aileron").Channel]
			c.Reversed = !c.Reversed
		}},
	{"GPIAAF P4-KCJ, 2018: aileron cables wrong in both wings", "turnstone-canard", "control-reversed", "for roll", rollBackwards},
	{"AAIB 2/95, 1993: right spoilers dead", "hollin-spoilers", "servo-dead", "starboard spoiler",
		func(s *mixcore.Setup) { silence(s, "starboard spoiler") }},
	{"model club safety page (495th Squadron): aileron servos unplugged", "bracken-20", "servo-dead", "port aileron",
		func(s *mixcore.Setup) { silence(s, "port aileron") }},
	{"model club safety page (495th Squadron): aileron servos unplugged", "bracken-20", "servo-dead", "starboard aileron",
		func(s *mixcore.Setup) { silence(s, "starboard aileron") }},
}

func drive(s *mixcore.Setup, part string) *mixcore.Drive {
	i := slices.IndexFunc(s.Parts, func(p mixcore.Part) bool { return p.Name == part })
	return &s.Parts[i].Drives[0]
}

func exchange(a, b *mixcore.Drive) { a.Channel, b.Channel = b.Channel, a.Channel }

// turnAbout makes a measured servo do at each output what it did at the opposite one.
func turnAbout(d *mixcore.Drive) {
	slices.Reverse(d.Table)
	for i := range d.Table {
		d.Table[i].X = -d.Table[i].X
	}
}

// silence keeps a part's channel at its middle, with and without a signal.
func silence(s *mixcore.Setup, part string) {
	c := &s.Channels[drive(s, part).Channel]
	c.Mix, c.SubTrim, c.Failsafe = nil, 0, mixcore.Failsafe{}
}

func rollBackwards(s *mixcore.Setup) {
	for i := range s.Demands {
		if s.Demands[i].Name == "roll" {
			s.Demands[i].Curve = &mixcore.Curve{Points: []mixcore.Point{{X: -100, Y: 100}, {X: 0}, {X: 100, Y: -100}}}
		}
	}
}

func trimBackwards(s *mixcore.Setup) {
	for i := range s.Demands {
		if d := &s.Demands[i]; s.Controls[d.From].Axis == mixcore.Pitch && d.Trim != mixcore.NoTrim {
			d.TrimRange = -d.TrimRange
		}
	}
}

// near is what two ways of computing one angle or power may differ by.
const near = 1e-9

// sameEverywhere says whether two plans put every part in the same place at many
// positions of the controls.
func sameEverywhere(a, b *mixcore.Plan) bool {
	r := rand.New(rand.NewPCG(3, 4))
	x, y := a.NewOutput(), b.NewOutput()
	for range 200 {
		in := anywhere(r, a)
		a.Eval(&in, x)
		b.Eval(&in, y)
		for i := range x.Parts {
			if p, q := x.Parts[i], y.Parts[i]; max(p.Angle-q.Angle, q.Angle-p.Angle) > near || max(p.Amount-q.Amount, q.Amount-p.Amount) > near {
				return false
			}
		}
	}
	return true
}

// The reports are those of the accident table of check-values.md.
func TestCatalogueHasAccidents(t *testing.T) {
	for _, p := range patterns {
		m := verifytest.Shipped(t, p.model)
		planted, faults := m.Plan.Vary(p.plant)
		if faults != nil {
			t.Fatalf("%s: %v", p.report, faults)
		}
		if sameEverywhere(m.Plan, planted) {
			t.Errorf("%s changes nothing on %s", p.report, p.model)
			continue
		}
		var same []string
		for _, wrong := range mistake.All(m, mistake.Options{Only: []string{p.kind}}) {
			if variant, faults := wrong.Variant(m); faults == nil && sameEverywhere(variant.Plan, planted) {
				same = append(same, wrong.Text)
			}
		}
		if !slices.ContainsFunc(same, func(text string) bool { return strings.Contains(text, p.text) }) {
			t.Errorf("%s: of the kind %s, %q do the same on %s, want one of %q", p.report, p.kind, same, p.model, p.text)
		}
	}
}

// The last pattern of the table: "the wrong model selected on the transmitter".
func TestCatalogueHasTheWrongModel(t *testing.T) {
	m, other := verifytest.Shipped(t, "ousel-trainer"), verifytest.Shipped(t, "pellin-park")
	found := mistake.All(m, mistake.Options{Others: []*airframes.Model{other}, Only: []string{"other-model"}})
	if len(found) != 2 || !strings.Contains(found[1].Text, other.Name) {
		t.Fatalf("%d mistakes: %+v, want a plain model's and %s's settings", len(found), found, other.Name)
	}
	for _, wrong := range found {
		variant, faults := wrong.Variant(m)
		if faults != nil || sameEverywhere(m.Plan, variant.Plan) {
			t.Errorf("%s: %v, or it changes nothing", wrong.Text, faults)
		}
	}
}

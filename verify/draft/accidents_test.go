package draft_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/draft"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// usual is a layout as `hingeline new` writes it.
func usual(t *testing.T, layout string) *airframes.Model {
	t.Helper()
	l, ok := draft.FindLayout(layout)
	if !ok {
		t.Fatalf("no layout is called %s", layout)
	}
	c := l.Usual()
	c.Name, c.Script = "Wren", "wren.feature"
	text, err := l.Airframe(c)
	if err != nil {
		t.Fatal(err)
	}
	return loaded(t, "wren.yaml", text)
}

func partCalled(t *testing.T, s *mixcore.Setup, name string) int {
	t.Helper()
	i := slices.IndexFunc(s.Parts, func(p mixcore.Part) bool { return p.Name == name })
	if i < 0 {
		t.Fatalf("no part is called %s", name)
	}
	return i
}

// The accidents of check-values.md, part 9, on models: what was wrong there is
// wrong here, and both drafts must name a surface that it moves wrongly.
func TestDraftsCatchWhatCausedAccidents(t *testing.T) {
	reversedDemand := func(name string) func(*testing.T, *mixcore.Setup) {
		return func(_ *testing.T, s *mixcore.Setup) {
			for i := range s.Channels {
				for k := range s.Channels[i].Mix {
					if line := &s.Channels[i].Mix[k]; line.Op == mixcore.Add && s.Demands[line.Demand].Name == name {
						line.Share = mixcore.Sides{Plus: -line.Share.Plus, Minus: -line.Share.Minus}
					}
				}
			}
		}
	}
	reversedTrim := func(demand string) func(*testing.T, *mixcore.Setup) {
		return func(_ *testing.T, s *mixcore.Setup) {
			for i := range s.Demands {
				if s.Demands[i].Name == demand {
					s.Demands[i].TrimRange *= -1
				}
			}
		}
	}
	crossed := func(names ...string) func(*testing.T, *mixcore.Setup) { // a cable crossed moves its surface the other way
		return func(t *testing.T, s *mixcore.Setup) {
			for _, name := range names {
				turnedOver(s, partCalled(t, s, name))
			}
		}
	}
	dead := func(names ...string) func(*testing.T, *mixcore.Setup) {
		return func(t *testing.T, s *mixcore.Setup) {
			for _, name := range names {
				unplugged(s, partCalled(t, s, name))
			}
		}
	}
	for _, c := range []struct {
		report string
		model  *airframes.Model
		plant  func(*testing.T, *mixcore.Setup)
		names  []string // each must be accused
	}{
		{"NTSB N2716P, aileron cables opposite", usual(t, "sport"), crossed("port aileron", "starboard aileron"), []string{"port aileron", "starboard aileron"}},
		{"ATSB 199504285, ailerons reversed", shipped(t, "bracken-20"), reversedDemand("roll"), []string{"port aileron", "starboard aileron", "port flap", "starboard flap"}},
		{"NTSB N4594J, roll control right, left aileron up", usual(t, "trainer"), func(_ *testing.T, s *mixcore.Setup) {
			s.Channels[0].Reversed = true
		}, []string{"port aileron", "starboard aileron"}},
		{"NTSB ERA14LA015, elevator reversed", usual(t, "trainer"), func(t *testing.T, s *mixcore.Setup) {
			turnedOver(s, partCalled(t, s, "elevator"))
		}, []string{"elevator"}},
		{"NTSB NYC03MA183, one of two trims reversed", twoSources(t), reversedTrim("second pitch"), []string{"elevator"}},
		{"AAIB EW/C2018/04/02, pitch trim reversed", usual(t, "glider"), reversedTrim("pitch"), []string{"port v-tail", "starboard v-tail"}},
		{"NTSB N93CL, elevator trim reversed", usual(t, "canard"), reversedTrim("pitch"), []string{"canard"}},
		{"TSB A97O0077, trim reversed", usual(t, "delta"), reversedTrim("roll"), []string{"port elevon", "starboard elevon"}},
		{"BFU D-AIPW, the roll control of one pilot reversed", twoSources(t), reversedDemand("second roll"), []string{"port aileron", "starboard aileron"}},
		{"NTSB N962DA, two of four aileron cables wrong", usual(t, "aerobatic"), crossed("port inner aileron", "starboard inner aileron"), []string{"port inner aileron", "starboard inner aileron"}},
		{"AAIB 2/95, four of five starboard spoilers dead", fiveSpoilers(t), dead("starboard first spoiler", "starboard second spoiler", "starboard third spoiler", "starboard fourth spoiler"),
			[]string{"starboard first spoiler", "starboard second spoiler", "starboard third spoiler", "starboard fourth spoiler"}},
		{"model club, aileron servos unplugged", usual(t, "sport"), dead("port aileron", "starboard aileron"), []string{"port aileron", "starboard aileron"}},
	} {
		t.Run(c.report, func(t *testing.T) {
			if r := check(t, c.model, draft.Script(c.model)); r.Verdict != result.Passed {
				t.Fatalf("without the fault: %s", strings.Join(failures(r), "\n"))
			}
			wrong := planted(c.model, func(s *mixcore.Setup) { c.plant(t, s) })
			if wrong == nil {
				t.Fatal("the faulty set-up does not compile")
			}
			for _, name := range c.names {
				caught(t, c.model, wrong, name)
			}
		})
	}
}

// GPIAAF P4-KCJ: the ailerons were wrong, and a warning had been shown. Here the
// warning stands in the report of the check that fails.
func TestReportOfADraftHoldsTheWarningToo(t *testing.T) {
	right := usual(t, "trainer")
	wrong := planted(right, func(s *mixcore.Setup) { turnedOver(s, partCalled(t, s, "starboard aileron")) })
	r := check(t, wrong, draft.Script(wrong))
	if r.Verdict != result.Failed || !slices.ContainsFunc(r.Checks, func(c result.Check) bool { return !c.Passed && c.Subject == "starboard aileron" }) {
		t.Errorf("verdict %s, failing: %q", r.Verdict, failures(r))
	}
	if !slices.ContainsFunc(r.Findings, func(f result.Finding) bool {
		return f.Code == "y-lead-opposite" && strings.Contains(f.Message, "starboard aileron")
	}) {
		t.Errorf("no finding says that the Y-lead moves both ailerons alike: %+v", r.Findings)
	}
}

// Model club: the wrong model selected on the transmitter. A script held against
// another model's set-up fails, or is refused because it speaks of parts that
// are not there.
func TestDraftNeverPassesAnotherModel(t *testing.T) {
	for _, c := range [][2]string{{"ousel-trainer", "bracken-20"}, {"bracken-20", "ousel-trainer"}, {"skein-wing", "quoin-delta"}} {
		d := draft.Script(shipped(t, c[0]))
		r, problems := verify.Check(shipped(t, c[1]), []script.File{{Name: "draft.feature", Text: d.Text}}, script.Selection{})
		switch {
		case r == nil && diag.HasErrors(problems):
		case r != nil && r.Verdict == result.Failed:
		default:
			t.Errorf("the draft of %s passes %s", c[0], c[1])
		}
	}
	// Two models of one club with the same names and the aileron channel the other
	// way round: nothing but direction tells them apart.
	mine := usual(t, "trainer")
	yours := planted(mine, func(s *mixcore.Setup) { s.Channels[0].Reversed = true })
	if r := check(t, yours, draft.Script(mine)); r.Verdict != result.Failed {
		t.Errorf("the other trainer: %s", r.Verdict)
	}
}

// twoSources is a model that two pilots may fly: a second stick for each axis.
func twoSources(t *testing.T) *airframes.Model {
	t.Helper()
	return loaded(t, "shared.yaml", []byte(`hingeline: 1
name: Shared
controls:
  roll stick: {axis: roll, trim: 10%}
  pitch stick: {axis: pitch, trim: 10%}
  second roll stick: {axis: roll, trim: {range: 10%, name: second roll trim}}
  second pitch stick: {axis: pitch, trim: {range: 10%, name: second pitch trim}}
demands:
  roll: {from: roll stick, throw: 90%}
  pitch: {from: pitch stick, throw: 90%}
  second roll: {from: second roll stick, throw: 90%}
  second pitch: {from: second pitch stick, throw: 90%}
channels:
  1: {name: ailerons, mix: [{add: roll, share: 50%}, {add: second roll, share: 50%}]}
  2: {name: elevator, mix: [{add: pitch, share: 50%}, {add: second pitch, share: 50%}]}
surfaces:
  port aileron: {channel: 1, measured: {100%: 40° down}}
  starboard aileron: {channel: 1, measured: {100%: 40° up}}
  elevator: {channel: 2, measured: {100%: 40° up}}
`))
}

// fiveSpoilers is a model that rolls by five spoilers a side.
func fiveSpoilers(t *testing.T) *airframes.Model {
	t.Helper()
	var channels, surfaces strings.Builder
	for i, name := range []string{"first", "second", "third", "fourth", "fifth"} {
		fmt.Fprintf(&channels, "  %d: {mix: [{add: roll, share: {right: 0%%, left: -100%%}}]}\n", 2*i+1)
		fmt.Fprintf(&channels, "  %d: {mix: [{add: roll, share: {right: 100%%, left: 0%%}}]}\n", 2*i+2)
		fmt.Fprintf(&surfaces, "  port %s spoiler: {channel: %d, measured: {100%%: 50° up}}\n", name, 2*i+1)
		fmt.Fprintf(&surfaces, "  starboard %s spoiler: {channel: %d, measured: {100%%: 50° up}}\n", name, 2*i+2)
	}
	return loaded(t, "many.yaml", []byte("hingeline: 1\nname: Many\ncontrols:\n  roll stick: roll\ndemands:\n  roll: roll stick\nchannels:\n"+
		channels.String()+"surfaces:\n"+surfaces.String()))
}

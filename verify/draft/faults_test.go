package draft_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/draft"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/script"
)

// planted is a model with one fault in its set-up; nil where the loader would
// refuse it, so that nobody gets to fly it.
func planted(m *airframes.Model, edit func(*mixcore.Setup)) *airframes.Model {
	wrong, _ := m.With(edit)
	return wrong
}

// turnedOver moves a part the other way for whatever its channel puts out.
func turnedOver(s *mixcore.Setup, part int) {
	p := &s.Parts[part]
	p.PlusIn = !p.PlusIn
	for k := range p.Drives {
		p.Drives[k].Sign *= -1
		for i := range p.Drives[k].Table {
			p.Drives[k].Table[i].Y *= -1
		}
	}
}

// unplugged leaves a part where it stands at rest, whatever its channel does.
func unplugged(s *mixcore.Setup, part int) {
	fixed := mixcore.Channel{Number: mixcore.MaxChannels - part, Limit: 100, EndPoints: mixcore.Both(100), PulseMin: 1000, PulseMax: 2000}
	if p := &s.Parts[part]; p.Motion == mixcore.Power || p.Motion == mixcore.OutIn {
		fixed.Mix = []mixcore.MixLine{{Op: mixcore.Fixed, Value: -100}}
	}
	s.Channels = append(s.Channels, fixed)
	for k := range s.Parts[part].Drives {
		s.Parts[part].Drives[k].Channel = len(s.Channels) - 1
	}
}

// exchanged gives two parts each other's channels.
func exchanged(s *mixcore.Setup, pair poses.Pair) {
	port, starboard := s.Parts[pair.Port].Drives, s.Parts[pair.Starboard].Drives
	for k := range min(len(port), len(starboard)) {
		port[k].Channel, starboard[k].Channel = starboard[k].Channel, port[k].Channel
	}
}

// accusedBy are the parts that the report names when a model is held against a
// draft: the subjects of checks that fail, and the parts that explain them. Only
// the checks of some parts are run if any are named.
func accusedBy(t *testing.T, m *airframes.Model, d draft.Draft, only []string) (list []string) {
	t.Helper()
	record, problems := script.Run(m, []script.File{{Name: "draft.feature", Text: d.Text}}, script.Selection{Only: only})
	if diag.HasErrors(problems) {
		t.Fatalf("%s\n%s", said(problems), d.Text)
	}
	for i := range record.Checks {
		if !record.Checks[i].Passed {
			list = append(list, record.Checks[i].Subject)
			for _, why := range record.Checks[i].Why {
				list = append(list, why.Of)
			}
		}
	}
	return list
}

// notBlessed wants the draft of a faulty set-up to name one of the parts.
func notBlessed(t *testing.T, wrong *airframes.Model, parts ...string) {
	t.Helper()
	if list := accusedBy(t, wrong, draft.Script(wrong), parts); !anyOf(parts, list) {
		t.Errorf("the draft of the faulty set-up accuses %q, want one of %q", list, parts)
	}
}

func anyOf(names, list []string) bool {
	return slices.ContainsFunc(names, func(n string) bool { return slices.Contains(list, n) })
}

// caught wants a fault to be caught by the draft of the right set-up, and by
// that of the faulty set-up itself: the second is what a builder with a reversed
// servo gets, and it must not bless it.
func caught(t *testing.T, right, wrong *airframes.Model, parts ...string) {
	t.Helper()
	if list := accusedBy(t, wrong, draft.Script(right), parts); !anyOf(parts, list) {
		t.Errorf("the draft of the right set-up accuses %q, want one of %q", list, parts)
	}
	notBlessed(t, wrong, parts...)
}

func TestDraftsCatchEveryReversedPart(t *testing.T) {
	for _, name := range airframes.Shipped() {
		right := shipped(t, name)
		for i := range right.Setup.Parts {
			p := &right.Setup.Parts[i]
			if p.Motion == mixcore.Power {
				continue // it has one way only; its channel reversed is the next test
			}
			t.Run(name+"/"+p.Name, func(t *testing.T) {
				if wrong := planted(right, func(s *mixcore.Setup) { turnedOver(s, i) }); wrong != nil {
					caught(t, right, wrong, p.Name)
				} else {
					t.Error("turned over, the set-up does not compile")
				}
			})
		}
	}
}

func TestDraftsCatchEveryReversedChannel(t *testing.T) {
	for _, name := range airframes.Shipped() {
		right := shipped(t, name)
		for i := range right.Setup.Channels {
			t.Run(fmt.Sprintf("%s/%d", name, right.Setup.Channels[i].Number), func(t *testing.T) {
				wrong := planted(right, func(s *mixcore.Setup) { s.Channels[i].Reversed = !s.Channels[i].Reversed })
				if wrong == nil {
					return // the loader refuses it: a table or linkage does not reach as far
				}
				var parts []string
				for _, p := range right.Setup.Parts {
					if slices.ContainsFunc(p.Drives, func(d mixcore.Drive) bool { return d.Channel == i }) {
						parts = append(parts, p.Name)
					}
				}
				notBlessed(t, wrong, parts...)
			})
		}
	}
}

func TestDraftsCatchEveryDeadSurface(t *testing.T) {
	for _, name := range airframes.Shipped() {
		right := shipped(t, name)
		for i := range right.Setup.Parts {
			p := &right.Setup.Parts[i]
			t.Run(name+"/"+p.Name, func(t *testing.T) {
				if wrong := planted(right, func(s *mixcore.Setup) { unplugged(s, i) }); wrong != nil {
					notBlessed(t, wrong, p.Name)
				} else {
					t.Error("unplugged, the set-up does not compile")
				}
			})
		}
	}
}

// undecidable are pairs that differ only in a movement whose direction no sense
// can tell, with the reason.
var undecidable = map[string]string{
	"turnstone-canard/port rudder": "they differ as brakes only, and rudders may brake by opening outward or inward: the draft leaves it to the pilot",
}

func TestDraftsCatchEveryPairExchanged(t *testing.T) {
	exchanges := 0
	for _, name := range airframes.Shipped() {
		right := shipped(t, name)
		for _, pair := range poses.Pairs(&right.Setup) {
			port, starboard := right.Setup.Parts[pair.Port].Name, right.Setup.Parts[pair.Starboard].Name
			wrong := planted(right, func(s *mixcore.Setup) { exchanged(s, pair) })
			if wrong == nil || !differs(right, wrong, pair) {
				t.Logf("%s: %s and %s may be exchanged", name, port, starboard)
				continue
			}
			exchanges++
			if why := undecidable[name+"/"+port]; why != "" {
				t.Logf("%s: %s and %s: %s", name, port, starboard, why)
				continue
			}
			t.Run(name+"/"+port, func(t *testing.T) {
				for _, d := range []draft.Draft{draft.Script(right), draft.Script(wrong)} {
					if list := accusedBy(t, wrong, d, nil); !anyOf([]string{port, starboard}, list) {
						t.Errorf("accused are %q, want one of %s and %s", list, port, starboard)
					}
				}
			})
		}
	}
	if exchanges < 10 {
		t.Errorf("%d pairs were exchanged, want at least 10", exchanges)
	}
}

// differs is true if one of a pair stands elsewhere on one model than on the
// other, at some pose of the controls that bear on it and by what counts as a
// movement: a pair on one channel, or two that are told the same, may be
// exchanged.
func differs(a, b *airframes.Model, pair poses.Pair) bool {
	probe := poses.New(a.Plan)
	reach := probe.PartReach(pair.Port)
	reach.AddAll(probe.PartReach(pair.Starboard))
	differ := false
	left, right := a.Plan.NewOutput(), b.Plan.NewOutput()
	probe.Walk(reach.Controls(), mostPoses, func(in *mixcore.Input, _ []int, _ int) {
		a.Plan.Eval(in, left)
		b.Plan.Eval(in, right)
		for _, part := range []int{pair.Port, pair.Starboard} {
			x, y := left.Parts[part], right.Parts[part]
			differ = differ || math.Abs(float64(x.Angle-y.Angle)) >= float64(a.Still) || math.Abs(float64(x.Amount-y.Amount)) >= 1
		}
	})
	return differ
}

// mostPoses is how many poses differs looks at.
const mostPoses = 20_000

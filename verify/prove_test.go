package verify_test

import (
	"context"
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/verifytest"
	"example.com/hingeline/verify/wording"
)

// TestCounterexamplesCanBeShown plants faults in Bracken 20 and wants every
// counterexample to be a pose that "show" can be asked for, with the lines that it
// points at quoted.
func TestCounterexamplesCanBeShown(t *testing.T) {
	m, faults := verifytest.Shipped(t, "bracken-20").With(func(s *mixcore.Setup) {
		for i := range s.Channels {
			if s.Channels[i].Name == "port flap" {
				s.Channels[i].Mix[1].Share = mixcore.Both(70)
				s.Channels[i].Failsafe = mixcore.Failsafe{Output: 100}
			}
			if s.Channels[i].Name == "motor" {
				s.Channels[i].Failsafe = mixcore.Failsafe{Hold: true}
			}
		}
	})
	if m == nil {
		t.Fatalf("%+v", faults)
	}
	p := verify.Prove(context.Background(), m, laws.Options{Replay: true})
	if p.Verdict != result.SomeDisproved || p.Model.File != "bracken-20.yaml" || p.Tool == "" || len(p.Cautions) == 0 || len(p.Findings) == 0 {
		t.Errorf("the report is not complete: %s, %+v, %d findings", p.Verdict, p.Model, len(p.Findings))
	}
	shown := 0
	for _, l := range p.Laws {
		for _, c := range l.Claims {
			if c.Answer != result.Disproved {
				continue
			}
			shown++
			pose, err := verify.MoveTo(m, phrase.RestPose(&m.Setup), c.Counter.Set)
			if err != nil {
				t.Errorf("%s: %v", c.Claim, err)
				continue
			}
			in := pose.Shown()
			if got := wording.Pose(&m.Setup, &in); !slices.Equal(got, c.Counter.Pose) {
				t.Errorf("%s: shown at %q, want %q", c.Claim, got, c.Counter.Pose)
			}
			for _, at := range c.LookAt {
				if at.Excerpt == "" {
					t.Errorf("%s: line %d is not quoted", c.Claim, at.Line)
				}
			}
			for _, why := range c.Counter.Why {
				for _, step := range why.Chain {
					if step.Place.Line > 0 && step.Place.Excerpt == "" {
						t.Errorf("%s: step %+v is not quoted", c.Claim, step)
					}
				}
			}
		}
	}
	if shown < 4 {
		t.Errorf("%d claims were disproved, want at least 4", shown)
	}
}

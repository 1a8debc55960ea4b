package script

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// Everything is at rest no later than settling says, on any model.
func TestSettlingIsLongEnough(t *testing.T) {
	waited := 0
	rapid.Check(t, func(r *rapid.T) {
		m := load(t, "drawn.yaml", airframestest.Generate(r))
		pose := func(label string) phrase.Pose {
			p := phrase.RestPose(&m.Setup)
			for i := range p.Position {
				control := &m.Setup.Controls[i]
				switch control.Kind {
				case mixcore.SwitchControl:
					p.Position[i] = float64(rapid.IntRange(0, len(control.Positions)-1).Draw(r, label))
				case mixcore.LeverControl:
					p.Position[i] = rapid.Float64Range(0, 100).Draw(r, label)
				default:
					p.Position[i] = rapid.Float64Range(-100, 100).Draw(r, label)
				}
			}
			return p
		}
		at := phrase.Situation{Before: pose("before"), Now: pose("now"), Moved: true}
		if rapid.Bool().Draw(r, "lost") {
			at.Now = at.Before.Take(&m.Setup, &phrase.Group{Signal: phrase.SignalLost})
		}
		before, now := at.Before.Input(), at.Now.Input()
		settled, last := settling(m.Plan, at), mixcore.Seconds(0)
		m.Plan.During(&before, &now, phrase.LongestTime, func(after mixcore.Seconds, _ *mixcore.Output) bool { last = after; return true })
		if last > settled+2*mixcore.TimeStep {
			r.Fatalf("at rest after %v s, want %v s at most", last, settled)
		}
		if last > 0 {
			waited++
		}
	})
	if waited == 0 {
		t.Error("nothing ever took time")
	}
}

// A big model is followed for less time than a small one, for each moment of it is
// more work.
func TestBigModelsAreFollowedForLess(t *testing.T) {
	moved := phrase.Situation{Moved: true}
	still := &phrase.Outcome{Verb: phrase.Still, Clock: phrase.Within, Time: 1, Subject: phrase.Subject{Parts: []int{0}}}
	m := *fennel(t)
	moved.Before, moved.Now = phrase.RestPose(&m.Setup), phrase.RestPose(&m.Setup)
	m.Setup.Channels = append(m.Setup.Channels[:0:0], m.Setup.Channels...)
	m.Setup.Channels[0].Slow = 3
	for i := range m.Setup.Controls {
		moved.Now.Position[i] = 1
	}
	follow := func(lines int) mixcore.Seconds {
		big := m
		big.Setup = m.Setup.Clone()
		for range lines {
			big.Setup.Channels[0].Mix = append(big.Setup.Channels[0].Mix, mixcore.MixLine{Op: mixcore.Fixed})
		}
		plan, faults := mixcore.Compile(big.Setup)
		if faults != nil {
			t.Fatal(faults)
		}
		big.Plan = plan
		c := &compiler{model: &big}
		c.count(still, moved)
		return c.followed
	}
	small, big := follow(0), follow(10*usualSize-size(&m.Setup))
	if small <= 0 || big < 9.99*small || big > 10.01*small {
		t.Errorf("a model ten times the usual size is followed for %v s, a small one for %v s", big, small)
	}
}

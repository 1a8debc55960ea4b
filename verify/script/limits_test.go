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

package mixcore_test

import (
	"testing"

	"example.com/hingeline/mixcore"
	"pgregory.net/rapid"
)

// The chain's end by itself says what the whole chain says.
func TestTailAgreesWithEval(t *testing.T) {
	s := sport()
	s.Channels[0].Limit, s.Channels[1].Limit = 60, 140
	s.Channels[4].PulseMin, s.Channels[4].PulseMax = 1200, 1700
	p := mustCompile(t, s)
	rapid.Check(t, func(t *rapid.T) {
		in := p.Rest()
		for i := range s.Controls {
			low, high := s.Controls[i].Range()
			if s.Controls[i].Kind == mixcore.SwitchControl {
				in.Position[i] = float64(rapid.IntRange(int(low), int(high)).Draw(t, "place"))
			} else {
				in.Position[i] = rapid.Float64Range(low, high).Draw(t, "position")
			}
		}
		in.SignalLost = rapid.Bool().Draw(t, "lost")
		out := p.NewOutput()
		p.Eval(&in, out)
		channels := make([]mixcore.ChannelOutput, len(s.Channels))
		for i := range channels {
			channels[i] = p.ChannelAt(i, out.Channels[i].Sum, in.SignalLost)
			if channels[i] != out.Channels[i] {
				t.Fatalf("channel %d: got %+v, want %+v", i, channels[i], out.Channels[i])
			}
		}
		for i := range s.Parts {
			if got := p.PartAt(i, channels); got != out.Parts[i] {
				t.Fatalf("part %d: got %+v, want %+v", i, got, out.Parts[i])
			}
		}
		for i := range s.Demands {
			d := &s.Demands[i]
			trim := mixcore.Percent(0)
			if d.Trim != mixcore.NoTrim {
				trim = mixcore.Percent(in.Position[d.Trim]/100) * d.TrimRange
			}
			rate := 0
			if weights := p.Weigh(&in, p.NewOutput()); len(d.Rates) > 1 && weights[p.RateCondition(i, 0)] == 0 {
				rate = 1
			}
			if got := p.ShapedAt(i, rate, in.Position[d.From]) + trim; got != out.Demands[i] {
				t.Fatalf("demand %d: got %v, want %v", i, got, out.Demands[i])
			}
		}
	})
}

// Weights are of the conditions by their indices; a line without one has −1.
func TestWeighTellsWhichConditionsHold(t *testing.T) {
	s := sport()
	p := mustCompile(t, s)
	for high := range 2 {
		for live := range 2 {
			weights := p.Weigh(at(p, rateSwitch, float64(high), motorSwitch, float64(live)), p.NewOutput())
			for _, c := range []struct {
				name  string
				index int
				want  float64
			}{
				{"high roll rate", p.RateCondition(0, 0), float64(high)},
				{"high pitch rate", p.RateCondition(1, 0), float64(high)},
				{"flaps join in", p.LineCondition(2, 1), float64(high)},
				{"motor cut", p.LineCondition(6, 1), float64(1 - live)},
			} {
				if c.index < 0 || weights[c.index] != c.want {
					t.Errorf("rates %d, motor %d: %s: index %d of %v, want %v", high, live, c.name, c.index, weights, c.want)
				}
			}
		}
	}
	for _, index := range []int{p.RateCondition(0, 1), p.LineCondition(0, 0), p.LineCondition(6, 0)} {
		if index != -1 {
			t.Errorf("index %d of what has no condition, want -1", index)
		}
	}
}

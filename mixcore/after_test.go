package mixcore_test

import (
	"math"
	"testing"

	"example.com/hingeline/mixcore"
	"pgregory.net/rapid"
)

func outputAfter(t *testing.T, s mixcore.Setup, after mixcore.Seconds, from, to []float64) *mixcore.Output {
	t.Helper()
	p := mustCompile(t, s)
	out := p.NewOutput()
	p.EvalAfter(at(p, from...), at(p, to...), after, out)
	return out
}

// A channel with 2 s for 100 % moves 50 % in a second.
func TestSlowedChannel(t *testing.T) {
	s := oneChannel(func(s *mixcore.Setup) { s.Channels[0].Slow = 2 })
	for _, c := range []struct {
		after mixcore.Seconds
		want  float64
	}{{0, -20}, {0.5, 5}, {1, 30}, {1.999, 79.95}, {2, 80}, {5, 80}} {
		got := outputAfter(t, s, c.after, []float64{0, -20}, []float64{0, 80})
		near(t, "slowed", float64(got.Channels[0].Output), c.want, 1e-9)
	}
	back := outputAfter(t, s, 1, []float64{0, 80}, []float64{0, -80})
	near(t, "and back", float64(back.Channels[0].Output), 30, 1e-9)
}

// 0.15 s for 60° is 400° a second; with 45° for 100 % that is 888.9 % a second.
func TestServoSpeed(t *testing.T) {
	s := oneChannel(func(s *mixcore.Setup) {
		s.Parts[0].Drives[0].Servo = mixcore.Servo{Swing: 45, SecondsPer60Deg: 0.15}
	})
	got := outputAfter(t, s, 0.1, nil, []float64{0, 100})
	near(t, "servo on its way", float64(got.Parts[0].Angle), 400*0.1/45*100, 1e-9)
	near(t, "its channel is there", float64(got.Channels[0].Output), 100, 0)
	got = outputAfter(t, s, 0.2, nil, []float64{0, 100})
	near(t, "servo arrived", float64(got.Parts[0].Angle), 100, 0)
}

func fading() mixcore.Setup {
	return oneChannel(func(s *mixcore.Setup) {
		s.Phases = []mixcore.Phase{{Name: "landing", When: *switchIs(2, 1), Fade: 2}}
		s.Channels[0].Mix = []mixcore.MixLine{add(0, 100),
			{Op: mixcore.Fixed, Value: 40, When: &mixcore.Condition{Op: mixcore.InPhase}}}
	})
}

func TestFadingPhase(t *testing.T) {
	for _, c := range []struct {
		after mixcore.Seconds
		want  float64
	}{{0, 10}, {0.5, 20}, {1, 30}, {2, 50}, {9, 50}} {
		got := outputAfter(t, fading(), c.after, []float64{0, 10}, []float64{0, 10, 2, 1})
		near(t, "fading in", float64(got.Channels[0].Sum), c.want, 1e-9)
		got = outputAfter(t, fading(), c.after, []float64{0, 10, 2, 1}, []float64{0, 10})
		near(t, "fading out", float64(got.Channels[0].Sum), 60-c.want, 1e-9)
	}
}

func TestFadingWeightsScaleReplaceAndRates(t *testing.T) {
	landing := &mixcore.Condition{Op: mixcore.InPhase}
	half := func(mix []mixcore.MixLine, rates []mixcore.Rate) float64 {
		s := fading()
		s.Channels[0].Mix = mix
		if rates != nil {
			s.Demands[0].Rates = rates
		}
		return float64(outputAfter(t, s, 1, []float64{0, 60, 1, 20}, []float64{0, 60, 1, 20, 2, 1}).Channels[0].Sum)
	}
	near(t, "half scaled by 20 %", half([]mixcore.MixLine{add(0, 100), {Op: mixcore.ScaleBy, Demand: 1, When: landing}}, nil), 36, 1e-9)
	near(t, "half replaced", half([]mixcore.MixLine{add(0, 100), {Op: mixcore.ReplaceWith, Value: -20, When: landing}}, nil), 20, 1e-9)
	near(t, "half way between the rates", half([]mixcore.MixLine{add(0, 100)}, []mixcore.Rate{
		{When: landing, Throw: mixcore.Both(100)}, {Throw: mixcore.Both(50)}}), 45, 1e-9)
}

// A slowed channel follows a fading phase no faster than it can.
func TestSlowedChannelFollowsFade(t *testing.T) {
	s := fading()
	s.Channels[0].Slow = 10 // 10 % a second; the fade asks for 20
	got := outputAfter(t, s, 1.5, nil, []float64{2, 1})
	near(t, "held back", float64(got.Channels[0].Output), 15, 1e-9)
	s.Channels[0].Slow = 1
	got = outputAfter(t, s, 1.5, nil, []float64{2, 1})
	near(t, "not held back", float64(got.Channels[0].Output), 30, 1e-9)
}

// Long after the jump nothing is under way: EvalAfter is Eval. At once, only
// what has no speed of its own has moved.
func TestEvalAfterComesToRest(t *testing.T) {
	s := sport()
	s.Channels[2].Slow, s.Channels[3].Slow = 2, 2
	s.Parts[0].Drives[0].Servo.SecondsPer60Deg = 0.2
	p := mustCompile(t, s)
	poses := randomPoses(p, 60)
	late, rest := p.NewOutput(), p.NewOutput()
	for i := 1; i < len(poses); i++ {
		p.EvalAfter(&poses[i-1], &poses[i], 20, late)
		p.Eval(&poses[i], rest)
		for j := range rest.Parts {
			if late.Parts[j] != rest.Parts[j] {
				t.Fatalf("part %d: %+v after 20 s, %+v at rest", j, late.Parts[j], rest.Parts[j])
			}
		}
	}
}

// Trace and Eval are one computation: every value that both give is the same to
// the bit, and each trace adds up.
func TestTraceIsEval(t *testing.T) {
	p := mustCompile(t, sport())
	out := p.NewOutput()
	rapid.Check(t, func(t *rapid.T) {
		in := p.Rest()
		for i := range in.Position {
			c := &p.Setup().Controls[i]
			low, high := c.Range()
			in.Position[i] = rapid.Float64Range(low, high).Draw(t, c.Name)
			if c.Kind == mixcore.SwitchControl {
				in.Position[i] = math.Round(in.Position[i])
			}
		}
		in.SignalLost = rapid.Bool().Draw(t, "lost")
		p.Eval(&in, out)
		trace := p.Trace(&in)
		for i := range out.Parts {
			if trace.Parts[i].PartOutput != out.Parts[i] || trace.Output.Parts[i] != out.Parts[i] {
				t.Fatalf("part %d: trace %+v, eval %+v", i, trace.Parts[i].PartOutput, out.Parts[i])
			}
		}
		for i, c := range trace.Channels {
			if c.Output != out.Channels[i].Output || c.Pulse != out.Channels[i].Pulse || c.Sum != out.Channels[i].Sum {
				t.Fatalf("channel %d: trace %+v, eval %+v", i, c, out.Channels[i])
			}
			if n := len(c.Lines); n > 0 && c.Lines[n-1].Sum != c.Sum {
				t.Fatalf("channel %d: lines end at %v, sum is %v", i, c.Lines[n-1].Sum, c.Sum)
			}
		}
		for i, d := range trace.Demands {
			if got := d.AfterThrow + d.Trim; d.Value != out.Demands[i] || math.Abs(float64(got-d.Value)) > 1e-9 {
				t.Fatalf("demand %d: %+v, eval %v", i, d, out.Demands[i])
			}
		}
	})
}

// During sees what EvalAfter sees, step by step, and ends at rest.
func TestDuringIsEvalAfter(t *testing.T) {
	s := fading()
	s.Channels[0].Slow = 3
	p := mustCompile(t, s)
	from, to := at(p, 0, -20), at(p, 0, 40, 2, 1)
	out, rest := p.NewOutput(), p.NewOutput()
	var last mixcore.Seconds
	var ended mixcore.Percent
	p.During(from, to, 60, func(now mixcore.Seconds, seen *mixcore.Output) bool {
		last, ended = now, seen.Channels[0].Output
		if math.Mod(math.Round(float64(now)*1000), 250) == 0 {
			p.EvalAfter(from, to, now, out)
			near(t, "on the way", float64(seen.Channels[0].Output), float64(out.Channels[0].Output), 1e-6)
		}
		return true
	})
	p.Eval(to, rest)
	if ended != rest.Channels[0].Output || last < 2.9 || last > 3.1 {
		t.Errorf("ended at %v after %v s, want %v after 3 s", ended, last, rest.Channels[0].Output)
	}
	visits := 0
	p.During(from, to, 60, func(mixcore.Seconds, *mixcore.Output) bool { visits++; return visits < 5 })
	if visits != 5 {
		t.Errorf("%d visits after it was told to stop at 5", visits)
	}
	last = 0
	p.During(from, to, 0.5, func(now mixcore.Seconds, _ *mixcore.Output) bool { last = now; return true })
	near(t, "until", float64(last), 0.5, 1e-9)
}

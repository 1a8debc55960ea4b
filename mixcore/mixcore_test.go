package mixcore_test

import (
	"math"
	"sync"
	"testing"

	"example.com/hingeline/mixcore"
)

func mustCompile(t testing.TB, s mixcore.Setup) *mixcore.Plan {
	t.Helper()
	p, faults := mixcore.Compile(s)
	if faults != nil {
		t.Fatalf("faults: %+v", faults)
	}
	return p
}

// at is a pose of the sport model: control, position, control, position …
func at(p *mixcore.Plan, pairs ...float64) *mixcore.Input {
	in := p.Rest()
	for i := 0; i < len(pairs); i += 2 {
		in.Position[int(pairs[i])] = pairs[i+1]
	}
	return &in
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %v, want %v ± %v", what, got, want, tolerance)
	}
}

func TestExpo(t *testing.T) {
	for _, c := range []struct{ x, k, want float64 }{
		{0.5, 0, 0.5}, {0.5, 1, 0.125}, {0.5, 0.5, 0.3125}, {-0.5, 0.5, -0.3125},
		{0.5, -1, 0.875}, {0.5, -0.5, 0.6875}, {-0.5, -0.5, -0.6875},
		{0, 0.7, 0}, {1, 0.7, 1}, {-1, 0.7, -1}, {0, -0.7, 0}, {1, -0.7, 1}, {-1, -0.7, -1},
	} {
		near(t, "expo", mixcore.Expo(c.x, c.k), c.want, 1e-15)
	}
}

// oneChannel is a set-up of one axis, one lever and one channel that drives a
// one-to-one table, for looking at single stages.
func oneChannel(edit func(*mixcore.Setup)) mixcore.Setup {
	s := mixcore.Setup{
		Controls: []mixcore.Control{
			{Name: "stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll},
			{Name: "lever", Kind: mixcore.LeverControl},
			{Name: "switch", Kind: mixcore.SwitchControl, Positions: []string{"a", "b"}},
			{Name: "trim", Kind: mixcore.TrimControl, Axis: mixcore.Roll},
		},
		Demands: []mixcore.Demand{
			{Name: "roll", From: 0, Rates: []mixcore.Rate{{Throw: mixcore.Both(100)}}, Trim: mixcore.NoTrim},
			{Name: "slide", From: 1, Rates: []mixcore.Rate{{Throw: mixcore.Both(100)}}, Trim: mixcore.NoTrim},
		},
		Channels: []mixcore.Channel{plainChannel(1, "one", add(0, 100))},
		Parts: []mixcore.Part{{Name: "surface", Kind: "elevator", Motion: mixcore.UpDown, Stops: free,
			Drives: []mixcore.Drive{{Table: []mixcore.Point{{X: -200, Y: -200}, {X: 200, Y: 200}}}}}},
	}
	if edit != nil {
		edit(&s)
	}
	return s
}

func evalOne(t *testing.T, s mixcore.Setup, pairs ...float64) (*mixcore.Output, mixcore.ChannelOutput) {
	t.Helper()
	p := mustCompile(t, s)
	out := p.NewOutput()
	p.Eval(at(p, pairs...), out)
	return out, out.Channels[0]
}

func TestDemandStages(t *testing.T) {
	rolled := func(edit func(*mixcore.Demand)) func(*mixcore.Setup) {
		return func(s *mixcore.Setup) { edit(&s.Demands[0]) }
	}
	for _, c := range []struct {
		name string
		edit func(*mixcore.Demand)
		at   []float64
		want float64
	}{
		{"plain", func(*mixcore.Demand) {}, []float64{0, 37}, 37},
		{"expo then throw", func(d *mixcore.Demand) {
			d.Rates = []mixcore.Rate{{Throw: mixcore.Both(80), Expo: 50}}
		}, []float64{0, 50}, 25},
		{"throw right", func(d *mixcore.Demand) {
			d.Rates = []mixcore.Rate{{Throw: mixcore.Sides{Plus: 80, Minus: 40}}}
		}, []float64{0, 50}, 40},
		{"throw left", func(d *mixcore.Demand) {
			d.Rates = []mixcore.Rate{{Throw: mixcore.Sides{Plus: 80, Minus: 40}}}
		}, []float64{0, -50}, -20},
		{"first rate", func(d *mixcore.Demand) {
			d.Rates = []mixcore.Rate{{When: switchIs(2, 1), Throw: mixcore.Both(100)}, {Throw: mixcore.Both(50)}}
		}, []float64{0, 100, 2, 1}, 100},
		{"last rate", func(d *mixcore.Demand) {
			d.Rates = []mixcore.Rate{{When: switchIs(2, 1), Throw: mixcore.Both(100)}, {Throw: mixcore.Both(50)}}
		}, []float64{0, 100, 2, 0}, 50},
		{"trim after throw", func(d *mixcore.Demand) {
			d.Rates = []mixcore.Rate{{Throw: mixcore.Both(50)}}
			d.Trim, d.TrimRange = 3, 20
		}, []float64{0, 100, 3, -50}, 40},
		{"trim reversed", func(d *mixcore.Demand) {
			d.Trim, d.TrimRange = 3, -20
		}, []float64{3, 100}, -20},
		{"curve after expo", func(d *mixcore.Demand) {
			d.Rates = []mixcore.Rate{{Throw: mixcore.Both(100), Expo: 100}}
			d.Curve = &mixcore.Curve{Points: []mixcore.Point{{X: -100, Y: -100}, {X: 0, Y: 0}, {X: 25, Y: 100}, {X: 100, Y: 100}}}
		}, []float64{0, 50}, 50},
		{"switch values", func(d *mixcore.Demand) {
			d.From, d.Values = 2, []mixcore.Percent{-30, 70}
		}, []float64{2, 1}, 70},
	} {
		out, _ := evalOne(t, oneChannel(rolled(c.edit)), c.at...)
		near(t, c.name, float64(out.Demands[0]), c.want, 1e-12)
	}
}

func TestMixLines(t *testing.T) {
	whenB := switchIs(2, 1)
	for _, c := range []struct {
		name string
		mix  []mixcore.MixLine
		at   []float64
		want float64
	}{
		{"add", []mixcore.MixLine{add(0, 50), add(1, -20)}, []float64{0, 60, 1, 50}, 20},
		{"differential", []mixcore.MixLine{{Op: mixcore.Add, Share: mixcore.Sides{Plus: 100, Minus: 60}}}, []float64{0, -50}, -30},
		{"fixed", []mixcore.MixLine{add(0, 50), {Op: mixcore.Fixed, Value: 4}}, []float64{0, 60}, 34},
		{"scale by", []mixcore.MixLine{add(0, 50), {Op: mixcore.ScaleBy, Demand: 1}, {Op: mixcore.Fixed, Value: 1}}, []float64{0, 60, 1, 25}, 8.5},
		{"replace with", []mixcore.MixLine{add(0, 50), {Op: mixcore.ReplaceWith, Value: -7}, add(1, 10)}, []float64{0, 60, 1, 50}, -2},
		{"not in force", []mixcore.MixLine{{Op: mixcore.Add, Share: mixcore.Both(100), When: whenB}}, []float64{0, 60}, 0},
		{"in force", []mixcore.MixLine{{Op: mixcore.Add, Share: mixcore.Both(100), When: whenB}}, []float64{0, 60, 2, 1}, 60},
		{"scale not in force", []mixcore.MixLine{add(0, 100), {Op: mixcore.ScaleBy, Demand: 1, When: whenB}}, []float64{0, 60, 1, 10}, 60},
		{"replace not in force", []mixcore.MixLine{add(0, 100), {Op: mixcore.ReplaceWith, Value: 9, When: whenB}}, []float64{0, 60}, 60},
	} {
		_, got := evalOne(t, oneChannel(func(s *mixcore.Setup) { s.Channels[0].Mix = c.mix }), c.at...)
		near(t, c.name, float64(got.Sum), c.want, 1e-12)
	}
}

// Pulses: MAVLink common.xml, RC_CHANNELS: 1000 µs is one end, 2000 µs the
// other; 1500 µs the centre is common practice.
func TestChannelStages(t *testing.T) {
	for _, c := range []struct {
		name   string
		edit   func(*mixcore.Channel)
		stick  float64
		output float64
		pulse  float64
		limits mixcore.Limit
	}{
		{"centre", func(*mixcore.Channel) {}, 0, 0, 1500, 0},
		{"plus end", func(*mixcore.Channel) {}, 100, 100, 2000, 0},
		{"minus end", func(*mixcore.Channel) {}, -100, -100, 1000, 0},
		{"reverse before end points", func(c *mixcore.Channel) {
			c.Reversed, c.EndPoints = true, mixcore.Sides{Plus: 100, Minus: 60}
		}, 50, -30, 1350, 0},
		{"sub-trim after end points", func(c *mixcore.Channel) {
			c.SubTrim, c.EndPoints = 10, mixcore.Both(50)
		}, 50, 35, 1675, 0},
		{"travel limit first", func(c *mixcore.Channel) {
			c.Limit, c.EndPoints = 60, mixcore.Both(50)
		}, 80, 30, 1650, mixcore.TravelLimit},
		{"pulse limit last", func(c *mixcore.Channel) { c.SubTrim = 10 }, 100, 100, 2000, mixcore.PulseLimit},
		{"wider pulses", func(c *mixcore.Channel) { c.SubTrim, c.PulseMax = 10, 2100 }, 100, 110, 2050, 0},
		{"at the limit is not beyond it", func(c *mixcore.Channel) { c.Limit = 80 }, 80, 80, 1900, 0},
	} {
		_, got := evalOne(t, oneChannel(func(s *mixcore.Setup) { c.edit(&s.Channels[0]) }), 0, c.stick)
		near(t, c.name+" output", float64(got.Output), c.output, 1e-12)
		near(t, c.name+" pulse", float64(got.Pulse), c.pulse, 1e-9)
		if got.Limits != c.limits {
			t.Errorf("%s: limits %b, want %b", c.name, got.Limits, c.limits)
		}
	}
}

// 0.1 + 0.2 is not 0.3 in binary; a sum that is 100 in decimals must not count
// as beyond 100.
func TestTravelLimitIgnoresBinaryRounding(t *testing.T) {
	_, got := evalOne(t, oneChannel(func(s *mixcore.Setup) {
		s.Channels[0].Mix = []mixcore.MixLine{{Op: mixcore.Fixed, Value: 99.7}, {Op: mixcore.Fixed, Value: 0.1}, {Op: mixcore.Fixed, Value: 0.2}}
	}))
	if got.Limits != 0 || got.Output > 100 {
		t.Errorf("limits %b, output %v", got.Limits, got.Output)
	}
}

func TestFailsafe(t *testing.T) {
	value := oneChannel(func(s *mixcore.Setup) {
		s.Channels[0].Reversed, s.Channels[0].SubTrim = true, 5
		s.Channels[0].Failsafe = mixcore.Failsafe{Output: -40}
	})
	p := mustCompile(t, value)
	in := at(p, 0, 70)
	in.SignalLost = true
	out := p.NewOutput()
	p.Eval(in, out)
	near(t, "value", float64(out.Channels[0].Output), -40, 1e-12)
	if tr := p.Trace(in); !tr.Channels[0].Failsafe {
		t.Error("the trace does not say that failsafe is in force")
	}

	p = mustCompile(t, oneChannel(nil))
	in = at(p, 0, 70)
	in.SignalLost = true
	p.Eval(in, out)
	near(t, "hold", float64(out.Channels[0].Output), 70, 1e-12)
	p.EvalAfter(at(p, 0, 20), in, 1, out)
	near(t, "hold keeps what it had", float64(out.Channels[0].Output), 20, 1e-12)
}

// Rigging table of a light-sport aeroplane (manual AF 04800001 rev 3, 2008,
// App. II p. AII-1): aileron up 26.5° is 109 mm and down 12.5° is 52 mm, rudder
// 28.5° is 217 mm. 2·c·sin(δ/2) gives one chord for both aileron figures to
// 0.5 %; the chords were computed from the table.
func TestChordTravelRiggingTable(t *testing.T) {
	for _, c := range []struct {
		chord mixcore.Millimetres
		angle mixcore.Degrees
		want  float64
	}{{237.8, 26.5, 109}, {238.8, -12.5, 52}, {440.8, 28.5, 217}} {
		near(t, "travel", float64(mixcore.ChordTravel(c.chord, c.angle)), c.want, 0.05)
	}
	// Its tolerances of ±1.5° are ±6, ±6 and ±11 mm.
	for _, c := range []struct {
		chord mixcore.Millimetres
		angle mixcore.Degrees
		want  float64
	}{{237.8, 26.5, 6.1}, {238.8, 12.5, 6.2}, {440.8, 28.5, 11.2}} {
		wide := mixcore.ChordTravel(c.chord, c.angle+1.5) - mixcore.ChordTravel(c.chord, c.angle-1.5)
		near(t, "tolerance", float64(wide)/2, c.want, 0.05)
	}
}

func TestPartLimits(t *testing.T) {
	out, _ := evalOne(t, oneChannel(func(s *mixcore.Setup) {
		s.Parts[0].Stops = mixcore.Stops{Plus: 30, Minus: 20}
	}), 0, 40)
	if got := out.Parts[0]; got.Angle != 30 || got.Limits != mixcore.AtStop {
		t.Errorf("plus stop: %+v", got)
	}
	out, _ = evalOne(t, oneChannel(func(s *mixcore.Setup) {
		s.Parts[0].Stops = mixcore.Stops{Plus: 30, Minus: 20}
	}), 0, -40)
	if got := out.Parts[0]; got.Angle != -20 || got.Limits != mixcore.AtStop {
		t.Errorf("minus stop: %+v", got)
	}
	out, _ = evalOne(t, oneChannel(func(s *mixcore.Setup) {
		d := s.Parts[0].Drives[0]
		d.Table = []mixcore.Point{{X: -100, Y: -95}, {X: 100, Y: 95}}
		s.Parts[0].Drives = append(s.Parts[0].Drives, d)
	}), 0, 40)
	if got := out.Parts[0]; math.Abs(float64(got.Angle)-39) > 1e-12 || got.Limits != mixcore.ServosFight {
		t.Errorf("two servos 2° apart: %+v", got)
	}
	s := sport()
	s.Parts[0].Drives[0].Servo.Max = 30
	p := mustCompile(t, s)
	whole := p.NewOutput()
	p.Eval(at(p, rollStick, 100, rateSwitch, 1), whole)
	if got := whole.Parts[0].Limits; got != mixcore.ServoMax {
		t.Errorf("servo maximum: limits %b", got)
	}
	s = sport()
	s.Channels[6].SubTrim, s.Channels[6].PulseMax = 10, 2100
	p = mustCompile(t, s)
	p.Eval(at(p, throttle, 100, motorSwitch, 1), whole)
	if got := whole.Parts[6]; got.Amount != 100 || got.Limits != mixcore.PartEnd {
		t.Errorf("motor beyond full: %+v", got)
	}
}

func TestExtraMovesOutAndIn(t *testing.T) {
	for _, plusIn := range []bool{false, true} {
		out, _ := evalOne(t, oneChannel(func(s *mixcore.Setup) {
			s.Parts[0] = mixcore.Part{Name: "hook", Kind: "hook", Motion: mixcore.OutIn, PlusIn: plusIn, Drives: []mixcore.Drive{{}}}
		}), 0, 50)
		want := mixcore.Percent(75)
		if plusIn {
			want = 25
		}
		if got := out.Parts[0].Amount; got != want {
			t.Errorf("plus in %v: %v %% out, want %v", plusIn, got, want)
		}
	}
}

func TestPlaceIsTheAngleOfWhatIsHingedAndTheAmountOfWhatIsNot(t *testing.T) {
	p := mustCompile(t, sport())
	out := p.NewOutput()
	for _, in := range randomPoses(p, 64) {
		p.Eval(&in, out)
		for i := range out.Parts {
			o, want := &out.Parts[i], float64(out.Parts[i].Amount)
			if p.Setup().Parts[i].Motion.Hinged() {
				want = float64(o.Angle)
			}
			if o.Place() != want {
				t.Errorf("%s is at %v, its place %v", p.Setup().Parts[i].Name, want, o.Place())
			}
		}
	}
}

func TestEvalAllocatesNothing(t *testing.T) {
	p := mustCompile(t, sport())
	poses := randomPoses(p, 64)
	out := p.NewOutput()
	i := 0
	if n := testing.AllocsPerRun(200, func() { p.Eval(&poses[i%64], out); i++ }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func TestEvalIsSafeForConcurrentUse(t *testing.T) {
	p := mustCompile(t, sport())
	poses := randomPoses(p, 200)
	want := make([]mixcore.Degrees, len(poses))
	out := p.NewOutput()
	for i := range poses {
		p.Eval(&poses[i], out)
		want[i] = out.Parts[2].Angle
	}
	var group sync.WaitGroup
	for range 4 {
		group.Add(1)
		go func() {
			defer group.Done()
			out := p.NewOutput()
			for i := range poses {
				p.Eval(&poses[i], out)
				if out.Parts[2].Angle != want[i] {
					t.Errorf("pose %d: %v, alone %v", i, out.Parts[2].Angle, want[i])
				}
			}
		}()
	}
	group.Wait()
}

func TestCheckInputRefuses(t *testing.T) {
	p := mustCompile(t, sport())
	for _, c := range []struct {
		name string
		in   *mixcore.Input
	}{
		{"too few", &mixcore.Input{Position: []float64{0}}},
		{"not a number", at(p, rollStick, math.NaN())},
		{"infinite", at(p, rollStick, math.Inf(1))},
		{"beyond full", at(p, rollStick, 100.5)},
		{"lever below zero", at(p, throttle, -1)},
		{"between switch positions", at(p, rateSwitch, 0.5)},
		{"no such switch position", at(p, rateSwitch, 2)},
	} {
		if p.CheckInput(c.in) == nil {
			t.Errorf("%s was taken", c.name)
		}
	}
	for _, in := range randomPoses(p, 50) {
		if err := p.CheckInput(&in); err != nil {
			t.Error(err)
		}
	}
}

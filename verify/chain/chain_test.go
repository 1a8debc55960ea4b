package chain

import (
	"math"
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

func TestPartTellsEveryValueFromStickToSurface(t *testing.T) {
	for _, row := range []struct {
		name   string
		change func(*mixcore.Setup)
		moved  map[int]float64
		part   int
		want   string
	}{
		{
			name:  "two demands, reversed, sub-trim, linkage",
			moved: map[int]float64{rateSwitch: 1, flapLever: 100, rollStick: 100},
			// 45 − 90·0.55 = −4.5; reversed 4.5; + 2 = 6.5; 45°·6.5 % = 2.925°
			want: `
3 control, flap lever: landing -> 100 %
13 demand, flap: throw 45 % -> 45 %
1 control, roll stick: full right -> 100 %
11 demand, roll: throw 90 % (rate switch is high) -> 90 %
21 mix, channel 3: flap 45 % × share 100 % -> 45 %
22 mix, channel 3: roll 90 % × share -55 % = -49.5 % -> -4.5 %
23 channel, channel 3: reversed -> 4.5 %
24 channel, channel 3: sub-trim 2 % -> 6.5 %
20 channel, channel 3: 1500 µs + 6.5 × 5 µs -> 1533 µs
52 servo, starboard flap: 45° × 6.5 %, plus swings aft -> 2.9° aft
51 linkage, starboard flap: arm 10 mm, horn 15 mm below -> UP 1.9°
50 part, starboard flap: chord 48 mm -> trailing edge UP 1.9° (1.6 mm)
`,
		},
		{
			name:  "expo at half stick",
			moved: map[int]float64{rateSwitch: 1, rollStick: 50},
			// 50·0.7 + 100·0.3·0.5³ = 38.75; ·0.9 = 34.875
			part: 1,
			want: `
1 control, roll stick: 50 % right -> 50 %
11 demand, roll: expo 30 % -> 38.8 %
11 demand, roll: throw 90 % (rate switch is high) -> 34.9 %
31 mix, channel 4: roll 34.9 % × share 100 % -> 34.9 %
30 channel, channel 4 (rudders): 1500 µs + 34.9 × 5 µs; Y-lead with starboard rudder -> 1674 µs
60 table, port rudder: measured at 34.9 % -> RIGHT 7°
60 part, port rudder:  -> RIGHT 7°
`,
		},
		{
			name:  "a line that is not in force",
			moved: map[int]float64{rollStick: -100},
			want: `
21 mix, channel 3: flap 0 % × share 100 % -> 0 %
22 mix, channel 3: roll not in force: rate switch is low -> 0 %
24 channel, channel 3: sub-trim 2 % -> 2 %
20 channel, channel 3: 1500 µs + 2 × 5 µs -> 1510 µs
52 servo, starboard flap: 45° × 2 %, plus swings aft -> 0.9° aft
51 linkage, starboard flap: arm 10 mm, horn 15 mm below -> UP 0.6°
50 part, starboard flap: chord 48 mm -> trailing edge UP 0.6° (0.5 mm)
`,
		},
		{
			name: "limits at the channel and at the stop",
			change: func(s *mixcore.Setup) {
				s.Channels[0].Mix[1].Share = mixcore.Both(-180)
				s.Parts[0].Stops.Minus = 12
				s.Channels[0].EndPoints.Plus = 90
			},
			moved: map[int]float64{rateSwitch: 1, rollStick: 100},
			// −162 held to −100; reversed 100; ·0.9 = 90; + 2 = 92
			want: `
1 control, roll stick: full right -> 100 %
11 demand, roll: throw 90 % (rate switch is high) -> 90 %
21 mix, channel 3: flap 0 % × share 100 % -> 0 %
22 mix, channel 3: roll 90 % × share -180 % -> -162 %
25 channel, channel 3: held to ± 100 %, 62 % lost -> -100 % LIMIT beyond the channel's travel limit
23 channel, channel 3: reversed -> 100 %
26 channel, channel 3: plus end point 90 % -> 90 %
24 channel, channel 3: sub-trim 2 % -> 92 %
20 channel, channel 3: 1500 µs + 92 × 5 µs -> 1960 µs
52 servo, starboard flap: 45° × 92 %, plus swings aft -> 41.4° aft
51 linkage, starboard flap: arm 10 mm, horn 15 mm below -> UP 25.8°
53 part, starboard flap: UP 25.8° asked, stop at 12° -> trailing edge UP 12° (10 mm) LIMIT at its stop
`,
		},
		{
			name: "pulse limit and servo maximum",
			change: func(s *mixcore.Setup) {
				s.Channels[0].SubTrim, s.Channels[0].Reversed = 70, false
				s.Parts[0].Drives[0].Servo.Max = 40
			},
			moved: map[int]float64{flapLever: 100},
			want: `
3 control, flap lever: landing -> 100 %
13 demand, flap: throw 45 % -> 45 %
21 mix, channel 3: flap 45 % × share 100 % -> 45 %
22 mix, channel 3: roll not in force: rate switch is low -> 45 %
24 channel, channel 3: sub-trim 70 % -> 115 %
20 channel, channel 3: 2075 µs held to 1000 µs–2000 µs -> 2000 µs LIMIT beyond the pulse limits
52 servo, starboard flap: 45° held to 40° -> 40° aft LIMIT beyond the servo's maximum
51 linkage, starboard flap: arm 10 mm, horn 15 mm below -> UP 25°
50 part, starboard flap: chord 48 mm -> trailing edge UP 25° (21 mm)
`,
		},
		{
			name:  "a rudder on a Y-lead, with trim",
			moved: map[int]float64{rollTrim: 50},
			part:  1,
			want: `
1 control, roll stick: centred -> 0 %
12 demand, roll: throw 50 % (no other rate holds) -> 0 %
2 demand, roll: roll trim 50 % right -> 5 %
31 mix, channel 4: roll 5 % × share 100 % -> 5 %
30 channel, channel 4 (rudders): 1500 µs + 5 × 5 µs; Y-lead with starboard rudder -> 1525 µs
60 table, port rudder: measured at 5 % -> RIGHT 1°
60 part, port rudder:  -> RIGHT 1°
`,
		},
		{
			name:  "two servos that fight",
			moved: map[int]float64{rollStick: 100, rateSwitch: 1},
			part:  2,
			want: `
1 control, roll stick: full right -> 100 %
11 demand, roll: throw 90 % (rate switch is high) -> 90 %
31 mix, channel 4: roll 90 % × share 100 % -> 90 %
30 channel, channel 4 (rudders): 1500 µs + 90 × 5 µs; Y-lead with port rudder -> 1950 µs
70 table, starboard rudder servo 1: measured at 90 % -> RIGHT 18°
70 table, starboard rudder servo 2: measured at 90 % -> RIGHT 21.8°
70 part, starboard rudder: mean of 2 servos, 3.8° apart -> RIGHT 19.9° LIMIT its servos ask for different angles
`,
		},
		{
			name:  "a line that replaces the sum hides what came before",
			moved: map[int]float64{throttleLever: 60},
			part:  3,
			want: `
42 mix, channel 8: replaces 20 % with -100 %: motor switch is safe -> -100 %
40 channel, channel 8: 1500 µs - 100 × 5 µs -> 1000 µs
80 part, motor: 1000 µs is 0 %, 2000 µs is 100 % -> stopped
`,
		},
		{
			name:  "a motor that runs",
			moved: map[int]float64{throttleLever: 60, motorSwitch: 1},
			part:  3,
			want: `
6 control, throttle:  -> 60 %
14 demand, power: curve -> 20 %
41 mix, channel 8: power 20 % × share 100 % -> 20 %
42 mix, channel 8: replacing with -100 % not in force: motor switch is live -> 20 %
40 channel, channel 8: 1500 µs + 20 × 5 µs -> 1600 µs
80 part, motor: 1000 µs is 0 %, 2000 µs is 100 % -> power 60 %
`,
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			m := model(t, row.change)
			in := pose(m, row.moved)
			if got := "\n" + said(Part(m, m.Plan.Trace(&in), row.part)); got != row.want {
				t.Errorf("chain:\n%s\nwant:\n%s", got, row.want)
			}
		})
	}
}

func TestLineNotInForceSaysWhatKeepsItOut(t *testing.T) {
	at := func(control, position int) mixcore.Condition {
		return mixcore.Condition{Op: mixcore.AtPosition, Control: control, Position: position}
	}
	join := func(op mixcore.ConditionOp, args ...mixcore.Condition) mixcore.Condition {
		return mixcore.Condition{Op: op, Args: args}
	}
	for _, row := range []struct {
		when mixcore.Condition
		want string
	}{
		{join(mixcore.And, at(rateSwitch, 1), at(motorSwitch, 1)), "motor switch is safe"},
		{join(mixcore.Or, at(rateSwitch, 0), at(motorSwitch, 1)), "rate switch is high, motor switch is safe"},
		{join(mixcore.Not, at(rateSwitch, 1)), "rate switch is high"},
		{join(mixcore.Not, join(mixcore.Or, at(rateSwitch, 1), at(motorSwitch, 1))), "rate switch is high"},
		{join(mixcore.And, mixcore.Condition{Op: mixcore.InPhase}, at(rateSwitch, 1)), "flap lever is 40 %"},
		{mixcore.Condition{Op: mixcore.Below, Control: rollStick, High: -5}, "roll stick is centred"},
	} {
		m := model(t, func(s *mixcore.Setup) {
			s.Phases = []mixcore.Phase{{Name: "landing", When: mixcore.Condition{Op: mixcore.Above, Control: flapLever, Low: 50}}}
			s.Channels[0].Mix[1].When = &row.when
		})
		in := pose(m, map[int]float64{rateSwitch: 1, flapLever: 40})
		steps := Part(m, m.Plan.Trace(&in), 0)
		if got := said(steps); !strings.Contains(got, "roll not in force: "+row.want+" ->") {
			t.Errorf("want %q in:\n%s", row.want, got)
		}
	}
}

func TestPartAtLossOfSignal(t *testing.T) {
	m := model(t, func(s *mixcore.Setup) { s.Channels[2].Failsafe = mixcore.Failsafe{Output: -100} })
	in := pose(m, map[int]float64{throttleLever: 60, motorSwitch: 1, rollStick: 100})
	in.SignalLost = true
	trace := m.Plan.Trace(&in)
	steps := Part(m, trace, 3)
	want := `43 channel, channel 8: signal lost: failsafe -> -100 %
40 channel, channel 8: 1500 µs - 100 × 5 µs -> 1000 µs
80 part, motor: 1000 µs is 0 %, 2000 µs is 100 % -> stopped
`
	if got := said(steps); got != want {
		t.Errorf("failsafe value:\n%s\nwant:\n%s", got, want)
	}
	steps = Channel(m, trace, 1)
	got := said(steps)
	if !strings.Contains(got, "signal lost: holds what it had -> 50 %") || !strings.Contains(got, "1750 µs") {
		t.Errorf("a channel that holds does not say so:\n%s", got)
	}
}

func TestPartWhileThingsAreUnderWay(t *testing.T) {
	m := model(t, func(s *mixcore.Setup) {
		landing := mixcore.Condition{Op: mixcore.AtPosition, Control: rateSwitch, Position: 1}
		s.Phases = []mixcore.Phase{{Name: "sport", When: landing, Fade: 2}}
		s.Channels[0].Mix[1].When = &mixcore.Condition{Op: mixcore.InPhase}
		s.Channels[0].Slow = 8
	})
	from, to := pose(m, map[int]float64{rollStick: 100}), pose(m, map[int]float64{rollStick: 100, rateSwitch: 1})
	steps := Part(m, m.Plan.TraceAfter(&from, &to, 1), 0)
	got := said(steps)
	for _, want := range []string{"50 % faded in", "slowed, still under way"} {
		if !strings.Contains(got, want) {
			t.Errorf("after 1 s the chain does not say %q:\n%s", want, got)
		}
	}
	steps = Part(m, m.Plan.TraceAfter(&from, &to, 0), 0)
	if got := said(steps); !strings.Contains(got, "roll not in force: sport is still fading in") {
		t.Errorf("at 0 s the chain does not say that the phase is still fading in:\n%s", got)
	}
}

// TestPartEndsWhereThePartStands holds the chain to the evaluation: its last
// value is the part's position, and nothing but a switch is without a value.
func TestPartEndsWhereThePartStands(t *testing.T) {
	m := model(t, nil)
	for _, roll := range []float64{-100, -37.5, 0, 12, 100} {
		for _, high := range []float64{0, 1} {
			in := pose(m, map[int]float64{rollStick: roll, rateSwitch: high, flapLever: 40})
			trace := m.Plan.Trace(&in)
			for i := range m.Setup.Parts {
				steps := Part(m, trace, i)
				last := steps[len(steps)-1]
				for _, s := range steps {
					if s.Exact == nil {
						t.Errorf("%s %s %q has no number", s.Stage, s.Name, s.Value)
					}
				}
				if want := wording.Position(&m.Setup.Parts[i], trace.Output.Parts[i]); last.Value != want || last.Stage != "part" {
					t.Errorf("%s ends at %s %q, want part %q", m.Setup.Parts[i].Name, last.Stage, last.Value, want)
				}
				for doubt := Unclear; doubt <= Astir; doubt++ {
					look := LookAtPart(m, Case{Now: trace, Doubt: doubt}, i)
					if len(look) == 0 || len(look) > MaxLookAt {
						t.Errorf("%s: %d lines to look at", m.Setup.Parts[i].Name, len(look))
					}
				}
			}
		}
	}
}

// TestStepsAreExactForPrograms works the flap's way out by hand as far as the
// servo; the sign of an angle is a word.
func TestStepsAreExactForPrograms(t *testing.T) {
	m := model(t, nil)
	in := pose(m, map[int]float64{rateSwitch: 1, rollStick: 50})
	trace := m.Plan.Trace(&in)
	steps := Part(m, trace, 0)
	at := func(stage string) result.Exact {
		for i := range steps {
			if s := &steps[len(steps)-1-i]; s.Stage == stage {
				return *s.Exact
			}
		}
		t.Fatalf("no step of stage %s", stage)
		return result.Exact{}
	}
	// 50·0.7 + 100·0.3·0.5³ = 38.75; ·0.9 = 34.875; ·−0.55 = −19.18125;
	// reversed, + 2 = 21.18125; 1500 + 5·21.18125; 45°·0.2118125
	for _, want := range []struct {
		stage, unit, way string
		number           float64
	}{
		{"control", "%", "", 50}, {"demand", "%", "", 34.875}, {"mix", "%", "", -19.18125},
		{"channel", "µs", "", 1605.90625}, {"servo", "°", "aft", 9.5315625},
		{"part", "°", "UP", math.Abs(float64(trace.Output.Parts[0].Angle))},
	} {
		got := at(want.stage)
		if got.Unit != want.unit || got.Way != want.way || math.Abs(got.Number-want.number) > 1e-9 {
			t.Errorf("%s is %+v, want %g %s %s", want.stage, got, want.number, want.unit, want.way)
		}
	}
}

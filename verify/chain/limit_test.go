package chain

import (
	"math/bits"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
)

// TestLimitsNameEveryLimitThatBites works every limit of the chain by hand: what
// was asked, and what came out.
func TestLimitsNameEveryLimitThatBites(t *testing.T) {
	full := map[int]float64{rateSwitch: 1, rollStick: 100}
	for _, row := range []struct {
		name   string
		change func(*mixcore.Setup)
		moved  map[int]float64
		lost   bool
		part   int
		want   []string
	}{
		{name: "none", moved: full},
		{
			name:   "travel limit",
			change: func(s *mixcore.Setup) { s.Channels[0].Mix[1].Share, s.Channels[0].SubTrim = mixcore.Both(-180), 0 },
			moved:  full, // 90 % · −180 % = −162 %
			want:   []string{"beyond the channel's travel limit: -162 % asked of channel 3, -100 % came out"},
		},
		{
			name:   "travel limit upwards, by less than is shown",
			change: func(s *mixcore.Setup) { s.Channels[1].Limit = 89.99 },
			moved:  full,
			part:   1,
			want:   []string{"beyond the channel's travel limit: 90 % asked of channel 4, 89.99 % came out"},
		},
		{
			name:   "upper pulse limit",
			change: func(s *mixcore.Setup) { s.Channels[0].SubTrim, s.Channels[0].Reversed = 70, false },
			moved:  map[int]float64{flapLever: 100}, // 45 + 70 = 115 %; 1500 + 5·115 = 2075 µs
			want:   []string{"beyond the pulse limits: 2075 µs asked of channel 3, 2000 µs came out"},
		},
		{
			name:   "lower pulse limit",
			change: func(s *mixcore.Setup) { s.Channels[1].PulseMin = 1200 },
			moved:  map[int]float64{rateSwitch: 1, rollStick: -100}, // 1500 − 5·90 = 1050 µs
			part:   1,
			want:   []string{"beyond the pulse limits: 1050 µs asked of channel 4, 1200 µs came out"},
		},
		{
			name:   "pulse limit of what a channel holds when the signal is lost",
			change: func(s *mixcore.Setup) { s.Channels[1].PulseMin = 1200 },
			moved:  map[int]float64{rateSwitch: 1, rollStick: -100},
			lost:   true,
			part:   1,
			want:   []string{"beyond the pulse limits: 1050 µs asked of channel 4, 1200 µs came out"},
		},
		{
			name: "pulse limit of a failsafe value, which no travel limit holds",
			change: func(s *mixcore.Setup) {
				s.Channels[1].Limit = 50
				s.Channels[1].PulseMax, s.Channels[1].Failsafe = 1800, mixcore.Failsafe{Output: 80}
			},
			moved: full,
			lost:  true,
			part:  1, // 1500 + 5·80 = 1900 µs
			want:  []string{"beyond the pulse limits: 1900 µs asked of channel 4, 1800 µs came out"},
		},
		{
			name:   "servo",
			change: func(s *mixcore.Setup) { s.Parts[0].Drives[0].Servo.Max = 20 },
			moved:  full, // 90·−0.55 = −49.5, reversed, + 2 = 51.5 %; 45°·0.515 = 23.175°
			want:   []string{"beyond the servo's maximum: 23.2° aft asked, 20° aft came out"},
		},
		{
			name: "one servo of two",
			change: func(s *mixcore.Setup) {
				p := &s.Parts[0]
				p.Drives = append(p.Drives, p.Drives[0])
				p.Drives[1].Servo.Max = 23
				p.Drives[1].Servo.PlusAft, p.Drives[1].Sign = false, 1
			},
			moved: full,
			want:  []string{"beyond the servo's maximum: 23.2° fore asked of servo 2, 23° fore came out"},
		},
		{
			name:  "servos that fight",
			moved: full,
			part:  2, // 20 − 40·0.95 and 20 − 44·0.95
			want:  []string{"its servos ask for different angles: RIGHT 18° and RIGHT 21.8° asked, RIGHT 19.9° came out"},
		},
		{
			name:   "stop",
			change: func(s *mixcore.Setup) { s.Parts[1].Stops.Minus = 12 },
			moved:  full,
			part:   1,
			want:   []string{"at its stop: RIGHT 18° asked, RIGHT 12° came out"},
		},
		{
			name: "ends of a motor",
			change: func(s *mixcore.Setup) {
				s.Parts[3].Motor.Idle, s.Parts[3].Motor.Full = 1100, 1900
			},
			moved: map[int]float64{throttleLever: 100, motorSwitch: 1},
			part:  3, // (2000 − 1100)/800
			want:  []string{"beyond its end: 112.5 % asked, 100 % came out"},
		},
		{
			name: "lower end of a motor",
			change: func(s *mixcore.Setup) {
				s.Parts[3].Motor.Idle, s.Parts[3].Motor.Full = 1100, 1900
			},
			part: 3, // (1000 − 1100)/800
			want: []string{"beyond its end: -12.5 % asked, 0 % came out"},
		},
		{
			name: "all on the way of one part, in the order of the chain",
			change: func(s *mixcore.Setup) {
				c := &s.Channels[0]
				c.Mix[1].Share, c.PulseMax = mixcore.Both(-180), 1900
				s.Parts[0].Drives[0].Servo.Max, s.Parts[0].Stops.Minus = 30, 10
			},
			moved: full, // −162 held to −100, reversed, + 2 = 102 %: 2010 µs; 1900 µs is 80 %: 36°; the linkage makes about 30°·10/15 of 30°
			want: []string{
				"beyond the channel's travel limit: -162 % asked of channel 3, -100 % came out",
				"beyond the pulse limits: 2010 µs asked of channel 3, 1900 µs came out",
				"beyond the servo's maximum: 36° aft asked, 30° aft came out",
				"at its stop: UP 19.3° asked, UP 10° came out",
			},
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			m := model(t, row.change)
			in := pose(m, row.moved)
			in.SignalLost = row.lost
			if got := Limits(m, m.Plan.Trace(&in), row.part); !slices.Equal(got, row.want) {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(row.want, "\n"))
			}
		})
	}
}

// TestLimitsAreThoseOfTheTrace holds the limits that are named, and those in the
// steps, to what the evaluation recorded, on random models at random positions,
// at rest and on the way.
func TestLimitsAreThoseOfTheTrace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, problems := airframes.Load("drawn.yaml", airframestest.Generate(t))
		if m == nil {
			t.Fatalf("%v", problems)
		}
		anywhere := func(label string) mixcore.Input {
			in := m.Plan.Rest()
			for i := range in.Position {
				c := &m.Setup.Controls[i]
				low, high := c.Range()
				if in.Position[i] = rapid.Float64Range(low, high).Draw(t, label); c.Kind == mixcore.SwitchControl {
					in.Position[i] = float64(int(in.Position[i]))
				}
			}
			in.SignalLost = rapid.Bool().Draw(t, label+" lost")
			return in
		}
		to := anywhere("to")
		trace := m.Plan.Trace(&to)
		if rapid.Bool().Draw(t, "on the way") {
			from := anywhere("from")
			trace = m.Plan.TraceAfter(&from, &to, mixcore.Seconds(rapid.Float64Range(0, 2).Draw(t, "after")))
		}
		for i := range m.Setup.Parts {
			pt := &trace.Parts[i]
			want := bits.OnesCount8(uint8(pt.Limits &^ mixcore.ServoMax))
			for _, c := range channelsOf(&m.Setup.Parts[i]) {
				want += bits.OnesCount8(uint8(trace.Channels[c].Limits))
			}
			for j := range pt.Drives {
				want += bits.OnesCount8(uint8(pt.Drives[j].Limits))
			}
			limits := Limits(m, trace, i)
			if len(limits) != want {
				t.Fatalf("%s: %d limits bit, named are %q", m.Setup.Parts[i].Name, want, limits)
			}
			var steps []string
			for _, s := range Part(m, trace, i) {
				if s.Limit != "" {
					steps = append(steps, s.Limit)
				}
			}
			var words []string
			for _, l := range limits {
				word, _, _ := strings.Cut(l, ":")
				words = append(words, word)
			}
			if got, want := strings.Join(steps, ", "), strings.Join(words, ", "); got != want {
				t.Fatalf("%s: the steps have %q, the limits are %q", m.Setup.Parts[i].Name, got, want)
			}
		}
	})
}

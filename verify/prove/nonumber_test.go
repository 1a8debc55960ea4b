package prove_test

import (
	"math"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// A set-up with a number in it that is none can come from no file. Nothing is ever proved
// of it, neither a bound that any place keeps nor one that none does.
func TestDecideNeverProvesOfWhatIsNoNumber(t *testing.T) {
	nan := math.NaN()
	for name, edit := range map[string]func(*mixcore.Setup){
		"share":          func(s *mixcore.Setup) { s.Channels[0].Mix[0].Share.Plus = mixcore.Percent(nan) },
		"share, minus":   func(s *mixcore.Setup) { s.Channels[0].Mix[0].Share.Minus = mixcore.Percent(nan) },
		"infinite share": func(s *mixcore.Setup) { s.Channels[0].Mix[0].Share.Plus = mixcore.Percent(inf) },
		"value":          func(s *mixcore.Setup) { s.Channels[0].Mix[1].Value = mixcore.Percent(nan) },
		"throw": func(s *mixcore.Setup) {
			s.Demands[rollDemand].Rates = []mixcore.Rate{{Throw: mixcore.Both(mixcore.Percent(nan))}}
		},
		"expo": func(s *mixcore.Setup) {
			s.Demands[rollDemand].Rates = []mixcore.Rate{{Throw: mixcore.Both(100), Expo: mixcore.Percent(nan)}}
		},
		"curve": func(s *mixcore.Setup) {
			s.Demands[rollDemand].Curve = &mixcore.Curve{Points: []mixcore.Point{{X: -100, Y: -100}, {X: 0, Y: nan}, {X: 100, Y: 100}}}
		},
		"trim range": func(s *mixcore.Setup) {
			s.Demands[rollDemand].Trim, s.Demands[rollDemand].TrimRange = rollTrim, mixcore.Percent(nan)
		},
		"sub-trim":  func(s *mixcore.Setup) { s.Channels[0].SubTrim = mixcore.Percent(nan) },
		"end point": func(s *mixcore.Setup) { s.Channels[0].EndPoints.Plus = mixcore.Percent(nan) },
		"table": func(s *mixcore.Setup) {
			s.Parts[0].Drives[0].Table = []mixcore.Point{{X: -200, Y: -200}, {X: 50, Y: nan}, {X: 200, Y: 200}}
		},
		"stop": func(s *mixcore.Setup) { s.Parts[0].Stops.Plus = mixcore.Degrees(nan) },
	} {
		t.Run(name, func(t *testing.T) {
			s := plain(lines(add(rollDemand, 50), fixed(3), add(pitchDemand, 20)), lines(add(rollDemand, 50)))
			edit(&s)
			plan, faults := mixcore.Compile(s)
			if faults != nil {
				return
			}
			p := prove.New(plan)
			for _, w := range []prove.Want{
				prove.Place{Part: 0, Low: -1000, High: 1000}, prove.Place{Part: 0, Low: -1000, High: 1},
				prove.Change(0, -1000, 1000), prove.Far{A: 0, B: 1, Low: -1000, High: 1000},
			} {
				claim := movement(&s, roll, w)
				d := p.Decide(t.Context(), claim, prove.Options{Boxes: 2000})
				if d.Answer == prove.Proved {
					t.Errorf("%T%+v proved: %+v", w, w, d)
				}
				if d.Answer == prove.Disproved && !(p.Margin(claim, d.Pose) < 0) {
					t.Errorf("%T%+v disproved with a margin of %v", w, w, p.Margin(claim, d.Pose))
				}
			}
		})
	}
}

package prove_test

import (
	"fmt"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// A mix line that works over a tenth of a percent of the roll stick is found, and
// nothing is moved that need not be.
func TestDecideFindsPlantedLine(t *testing.T) {
	s := plain(lines(add(pitchDemand, 50), when(fixed(5), within(roll, 43.2, 43.3))))
	for _, c := range []struct {
		name  string
		claim *prove.Claim
		moved []map[int]float64 // any of these
	}{
		{"beyond a place that the pitch stick reaches by itself", everywhere(&s, prove.Place{Part: 0, Low: -inf, High: 52}),
			[]map[int]float64{{roll: 43.2, pitch: 100}, {roll: 43.3, pitch: 100}}},
		{"a movement of the roll stick alone", movement(&s, roll, prove.Change(0, -0.2, 0.2)),
			[]map[int]float64{{roll: 43.2}, {roll: 43.3}}},
		{"a place with nothing else moved", everywhere(&s, prove.Place{Part: 0, Low: -inf, High: 50.001}),
			[]map[int]float64{{roll: 43.2, pitch: 100}, {roll: 43.3, pitch: 100}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := decide(t, s, c.claim)
			wantAnswer(t, d, prove.Disproved)
			wantMovedOneOf(t, &s, d.Pose.Now, c.moved)
		})
	}
}

func wantMovedOneOf(t *testing.T, s *mixcore.Setup, in mixcore.Input, choices []map[int]float64) {
	t.Helper()
	for _, places := range choices {
		if fmt.Sprint(moved(s, in)) == fmt.Sprint(places) {
			return
		}
	}
	t.Errorf("moved %v, want one of %v", moved(s, in), choices)
}

// moved are the controls off rest, with their places.
func moved(s *mixcore.Setup, in mixcore.Input) map[int]float64 {
	places := map[int]float64{}
	for i, x := range in.Position {
		if x != s.Controls[i].Rest() {
			places[i] = x
		}
	}
	return places
}

// One switch state out of 1024, and two sticks each within a tenth of a percent.
func TestDecideFindsPlantedCorner(t *testing.T) {
	s := plain(nil)
	var switches []int
	for range 4 {
		switches = append(switches, len(s.Controls))
		s.Controls = append(s.Controls, mixcore.Control{Kind: mixcore.SwitchControl, Positions: []string{"a", "b", "c", "d"}})
	}
	fault := all(within(roll, 43.2, 43.3), within(pitch, -71.9, -71.8), stands(mode, 2),
		stands(switches[0], 3), stands(switches[1], 1), stands(switches[2], 2), stands(switches[3], 3))
	s.Channels[0].Mix = lines(add(leverDemand, 10), when(fixed(-5), fault))
	claim := everywhere(&s, prove.Output{Channel: 0, Low: -1, High: 10.5})
	wantProved(t, decide(t, plainWithout(s, 1), claim), 0.5) // the lever's 10 % and no more

	d := decide(t, s, claim)
	wantAnswer(t, d, prove.Disproved)
	if d.States != 1024 {
		t.Errorf("%d switch states, want 4·4·4·4·4", d.States)
	}
	for _, stick := range []struct {
		at   int
		ends [2]float64
	}{{roll, [2]float64{43.2, 43.3}}, {pitch, [2]float64{-71.9, -71.8}}} {
		if x := d.Pose.Now.Position[stick.at]; x != stick.ends[0] && x != stick.ends[1] {
			t.Errorf("control %d at %v, want one of %v", stick.at, x, stick.ends)
		}
	}
	got := moved(&s, d.Pose.Now)
	delete(got, roll)
	delete(got, pitch)
	want := map[int]float64{mode: 2, switches[0]: 3, switches[1]: 1, switches[2]: 2, switches[3]: 3}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("besides the sticks moved %v, want %v", got, want)
	}
}

// plainWithout is a set-up without one line of its first channel.
func plainWithout(s mixcore.Setup, line int) mixcore.Setup {
	s = s.Clone()
	s.Channels[0].Mix = append(s.Channels[0].Mix[:line:line], s.Channels[0].Mix[line+1:]...)
	return s
}

// A fault that no condition makes: curves with a spike a tenth of a percent wide, by
// itself and where two of them meet.
func TestDecideFindsPlantedSpike(t *testing.T) {
	spike := func(from int, at float64, smooth bool) mixcore.Demand {
		low := -100.0
		if from == lever {
			low = 0
		}
		return mixcore.Demand{From: from, Rates: full(), Trim: mixcore.NoTrim, Curve: &mixcore.Curve{Smooth: smooth,
			Points: []mixcore.Point{{X: low, Y: 0}, {X: at - 0.05, Y: 0}, {X: at, Y: 100}, {X: at + 0.05, Y: 0}, {X: 100, Y: 0}}}}
	}
	for _, smooth := range []bool{false, true} {
		s := plain(nil)
		s.Demands = append(s.Demands, spike(roll, 43.25, smooth), spike(lever, 17.35, smooth))
		const rollSpike, leverSpike = 3, 4

		s.Channels[0].Mix = lines(add(rollSpike, 10))
		d := decide(t, s, everywhere(&s, prove.Place{Part: 0, Low: -1, High: 9}))
		wantAnswer(t, d, prove.Disproved)
		if x := d.Pose.Now.Position[roll]; len(moved(&s, d.Pose.Now)) != 1 || x < 43.2 || x > 43.3 {
			t.Errorf("smooth %v: moved %v, want the roll stick from 43.2 to 43.3", smooth, moved(&s, d.Pose.Now))
		}

		s.Channels[0].Mix = lines(add(rollSpike, 10), scaled(leverSpike), add(pitchDemand, 1))
		d = decide(t, s, everywhere(&s, prove.Place{Part: 0, Low: -2, High: 9}))
		wantAnswer(t, d, prove.Disproved)
		x, y := d.Pose.Now.Position[roll], d.Pose.Now.Position[lever]
		if x < 43.2 || x > 43.3 || y < 17.3 || y > 17.4 || len(moved(&s, d.Pose.Now)) != 2 {
			t.Errorf("smooth %v: moved %v, want roll stick and lever each within a tenth of a percent", smooth, moved(&s, d.Pose.Now))
		}
	}
}

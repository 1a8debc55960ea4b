package chain

import (
	"fmt"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
)

func lines(places []result.Place) string {
	var out []string
	for _, p := range places {
		out = append(out, fmt.Sprint(p.Line))
	}
	return strings.Join(out, " ")
}

// TestLookAtPartPutsTheLikeliestCauseFirst names lines of the model's file: 11
// and 12 are the roll rates, 13 the flap demand; 20 is the flap's channel with
// its mix lines 21 (flap) and 22 (roll), 23 reversed, 24 sub-trim, 25 limit, 26
// end points, 27 slow; 50 the flap, 51 its horn, 52 its servo, 53 its stops; 40
// the motor's channel with its mix lines 41 (power) and 42 (safe), 43 its
// failsafe; 80 the motor.
func TestLookAtPartPutsTheLikeliestCauseFirst(t *testing.T) {
	const flap, rudder, twoServos, motor = 0, 1, 2, 3
	high := map[int]float64{rateSwitch: 1}
	roll := map[int]float64{rateSwitch: 1, rollStick: 100}
	landing := map[int]float64{rateSwitch: 1, flapLever: 100}
	both := map[int]float64{rateSwitch: 1, flapLever: 100, rollStick: 100}
	fixedOnLow := func(s *mixcore.Setup) {
		low := mixcore.Condition{Op: mixcore.Not, Args: []mixcore.Condition{*s.Channels[0].Mix[1].When}}
		s.Channels[0].Mix[0] = mixcore.MixLine{Op: mixcore.Fixed, Value: 10, When: &low}
	}
	for _, row := range []struct {
		name      string
		change    func(*mixcore.Setup)
		from, now map[int]float64 // no from: nothing was moved
		part      int
		doubt     Doubt
		want      string
	}{
		{name: "direction: reversed, share, servo, horn", from: high, now: roll, doubt: Direction, want: "23 22 52 51 11 24"},
		{name: "direction of a channel that is not reversed: the channel itself", part: rudder, from: high, now: roll, doubt: Direction, want: "30 31 60 11"},
		{name: "amount: share, throw, sub-trim, lengths", from: high, now: roll, doubt: Amount, want: "22 11 24 50 52 23"},
		{
			name:   "amount: end points where they are set",
			change: func(s *mixcore.Setup) { s.Channels[0].EndPoints.Minus = 90 },
			from:   high, now: roll, doubt: Amount, want: "22 11 26 24 50 52",
		},
		{name: "of a movement the line that moved, not the one that is larger", from: landing, now: both, doubt: Direction, want: "23 22 52 51 11 24"},
		{name: "at a place the largest line", now: both, doubt: Direction, want: "23 22 52 51 21 11"},
		{name: "back to rest: what has gone counts", from: roll, now: high, doubt: Direction, want: "23 22 52 51 11 24"},
		{name: "a line that is not in force though its demand was moved", now: map[int]float64{rollStick: 100}, doubt: Stuck, want: "22 24 50 52 23 51"},
		{name: "a line that is not in force and could not be the cause is not named", now: map[int]float64{flapLever: 100}, doubt: Direction, want: "23 21 52 51 13 24"},
		{
			name:   "amount: a fixed percent of another switch position is a guess behind what gives it",
			change: fixedOnLow,
			from:   high, now: roll, doubt: Amount, want: "22 11 24 50 52 21",
		},
		{
			name:   "stuck: a fixed percent that is not in force is likely to be it",
			change: fixedOnLow,
			from:   high, now: roll, doubt: Stuck, want: "21 22 11 24 50 52",
		},
		{
			name:   "the stop comes first",
			change: func(s *mixcore.Setup) { s.Parts[flap].Stops.Minus, s.Parts[flap].Stops.Plus = 1, 1 },
			from:   high, now: roll, doubt: Direction, want: "53 23 22 52 51 11",
		},
		{
			name:   "a stop that bit only before the movement",
			change: func(s *mixcore.Setup) { s.Parts[flap].Stops.Plus, s.Parts[flap].Stops.Minus = 5, 5 },
			from:   landing, now: high, doubt: Amount, want: "53 21 13 24 50 52",
		},
		{
			name: "the travel limit with the share that ran into it, and the pulse limit with the sub-trim",
			change: func(s *mixcore.Setup) {
				s.Channels[0].Mix[1].Share = mixcore.Both(-180)
			},
			from: high, now: roll, doubt: Direction, want: "25 22 24 23 52 51",
		},
		{name: "two servos on one channel", part: twoServos, from: high, now: roll, doubt: Direction, want: "70 30 31 11"},
		{name: "a motor that should be stopped: the line that replaces, with the same before", part: motor,
			change: func(s *mixcore.Setup) { s.Channels[2].Mix[1].Value = 100 },
			from:   map[int]float64{throttleLever: 100}, now: map[int]float64{throttleLever: 50}, doubt: Astir, want: "42 40 80"},
		{name: "a motor that should be stopped: the line that is not in force", part: motor,
			from: map[int]float64{motorSwitch: 1}, now: map[int]float64{motorSwitch: 1, throttleLever: 50}, doubt: Astir, want: "42 41 14 40 80"},
		{name: "a motor that runs too slow: not the safe line", part: motor,
			from: map[int]float64{motorSwitch: 1}, now: map[int]float64{motorSwitch: 1, throttleLever: 50}, doubt: Amount, want: "41 14 40 80"},
	} {
		t.Run(row.name, func(t *testing.T) {
			m := model(t, row.change)
			now := pose(m, row.now)
			c := Case{Now: m.Plan.Trace(&now), Doubt: row.doubt}
			if row.from != nil {
				from := pose(m, row.from)
				c.Before = m.Plan.Trace(&from)
			}
			if got := lines(LookAtPart(m, c, row.part)); got != row.want {
				t.Errorf("look at lines %s, want %s", got, row.want)
			}
		})
	}
}

// noted is every place as LINE: NOTE.
func noted(places []result.Place) string {
	var out []string
	for _, p := range places {
		out = append(out, fmt.Sprintf("%d: %s", p.Line, p.Note))
	}
	return strings.Join(out, "\n")
}

// What is not in the file cannot be pointed at, so the note says that it is
// missing: a channel without reversed: is the usual cause of a wrong way.
func TestLookAtSaysWhatThereIsAtALine(t *testing.T) {
	m, problems := airframes.Load("fennel.yaml", []byte(placed))
	if m == nil {
		t.Fatalf("the test's own airframe is refused: %+v", problems)
	}
	in := m.Plan.Rest()
	in.Position[0] = -50
	c := Case{Now: m.Plan.Trace(&in), Doubt: Direction}
	for part, want := range map[int]string{
		0: "37: stops: it is driven against one\n28: reversed: of channel 1\n23: share of roll\n" +
			"42: plus_swings: of the servo\n47: horn: its side\n26: fixed percent of channel 1",
		1: "49: servos: that ask for different angles\n34: channel 2 has no reversed: · share of roll\n" +
			"53: plus_swings: of the servo\n51: measured: which way it was seen to go\n54: horn: its side\n14: throw of roll",
	} {
		if got := noted(LookAtPart(m, c, part)); got != want {
			t.Errorf("part %d: look at\n%s\nwant\n%s", part, got, want)
		}
	}
	c.Doubt = Amount
	if got := noted(LookAtPart(m, c, 1)); strings.Contains(got, "has no reversed:") {
		t.Errorf("of an amount: look at\n%s", got)
	}
}

func TestLookAtAtLossOfSignal(t *testing.T) {
	m := model(t, func(s *mixcore.Setup) { s.Channels[2].Failsafe = mixcore.Failsafe{Output: 40} })
	before := pose(m, map[int]float64{throttleLever: 60, motorSwitch: 1})
	now := before.Clone()
	now.SignalLost = true
	c := Case{Now: m.Plan.Trace(&now), Before: m.Plan.Trace(&before), Doubt: Astir}
	if got := lines(LookAtPart(m, c, 3)); got != "43 40 80" {
		t.Errorf("look at lines %s, want 43 40 80", got)
	}
	if got := lines(LookAtChannel(m, c, 2)); got != "43 40" {
		t.Errorf("channel: look at lines %s, want 43 40", got)
	}
}

func TestLookAtWhatIsStillUnderWay(t *testing.T) {
	m := model(t, func(s *mixcore.Setup) { s.Channels[0].Slow = 8 })
	from, to := pose(m, nil), pose(m, map[int]float64{flapLever: 100})
	c := Case{Now: m.Plan.TraceAfter(&from, &to, 1), Before: m.Plan.Trace(&from), Doubt: Amount}
	if got := lines(LookAtPart(m, c, 0)); !strings.HasPrefix(got, "27 21 13 ") {
		t.Errorf("after 1 s of 8 s look at lines %s, want 27 21 13 first", got)
	}
	c.Now = m.Plan.Trace(&to)
	if got := lines(LookAtPart(m, c, 0)); !strings.HasPrefix(got, "21 13 ") {
		t.Errorf("at rest look at lines %s, want 21 13 first", got)
	}
}

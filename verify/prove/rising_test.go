package prove_test

import (
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

func TestDecideRising(t *testing.T) {
	curved := func(points ...mixcore.Point) func(*mixcore.Setup) {
		return func(s *mixcore.Setup) {
			s.Demands[rollDemand].Curve = &mixcore.Curve{Points: points, Smooth: true}
		}
	}
	for _, c := range []struct {
		name    string
		mix     []mixcore.MixLine
		edit    func(*mixcore.Setup)
		control int
		sign    float64
		want    prove.Answer
	}{
		{"half a stick", lines(add(rollDemand, 50)), nil, roll, 1, prove.Proved},
		{"half a stick the other way", lines(add(rollDemand, -50)), nil, roll, 1, prove.Disproved},
		{"half a stick the other way falls", lines(add(rollDemand, -50)), nil, roll, -1, prove.Proved},
		{"not at all", lines(add(pitchDemand, 50)), nil, roll, 1, prove.Proved},
		{"more down than up", lines(mixcore.MixLine{Op: mixcore.Add, Demand: rollDemand, Share: mixcore.Sides{Plus: 50, Minus: 30}}), nil, roll, 1, prove.Proved},
		{"down both ways", lines(mixcore.MixLine{Op: mixcore.Add, Demand: rollDemand, Share: mixcore.Sides{Plus: 50, Minus: -1}}), nil, roll, 1, prove.Disproved},
		{"taken away again by another line", lines(add(rollDemand, 50), add(rollDemand, -50.001)), nil, roll, 1, prove.Disproved},
		{"just not taken away", lines(add(rollDemand, 50), add(rollDemand, -49.999)), nil, roll, 1, prove.Proved},
		{"a jump up", lines(add(rollDemand, 50), when(fixed(10), above(roll, 20))), nil, roll, 1, prove.Proved},
		{"a jump down", lines(add(rollDemand, 50), when(fixed(-10), above(roll, 20))), nil, roll, 1, prove.Disproved},
		{"a jump down where something else stands", lines(add(rollDemand, 50), when(fixed(-10), all(above(roll, 20), stands(mode, 2), within(lever, 17.2, 17.3)))), nil, roll, 1, prove.Disproved},
		{"a curve that rises with flat pieces", lines(add(rollDemand, 50)),
			curved(mixcore.Point{X: -100, Y: -80}, mixcore.Point{X: -10, Y: 0}, mixcore.Point{X: 12, Y: 0}, mixcore.Point{X: 100, Y: 100}), roll, 1, prove.Proved},
		{"a curve that dips by a thousandth", lines(add(rollDemand, 50)),
			curved(mixcore.Point{X: -100, Y: -80}, mixcore.Point{X: -10, Y: 0.001}, mixcore.Point{X: 12, Y: 0}, mixcore.Point{X: 100, Y: 100}), roll, 1, prove.Disproved},
		{"a scale that never turns it about", lines(add(rollDemand, 50), scaled(leverDemand)), nil, roll, 1, prove.Proved},
		{"the lever scales down what is minus", lines(add(rollDemand, 50), scaled(leverDemand)), nil, lever, 1, prove.Disproved},
		{"switch positions in a row", lines(when(fixed(1), stands(mode, 1)), when(fixed(2), stands(mode, 2)), when(fixed(3), stands(mode, 3))), nil, mode, 1, prove.Proved},
		{"switch positions out of order", lines(when(fixed(1), stands(mode, 1)), when(fixed(3), stands(mode, 2)), when(fixed(2), stands(mode, 3))), nil, mode, 1, prove.Disproved},
		{"its own square: roll of the lever times the lever", lines(add(leverDemand, 50), scaled(leverDemand)), nil, lever, 1, prove.Proved},
		{"60·x − 60·x·x turns back at half", lines(fixed(60), add(leverDemand, -60), scaled(leverDemand)), nil, lever, 1, prove.Disproved},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain(c.mix)
			if c.edit != nil {
				c.edit(&s)
			}
			d := decide(t, s, everywhere(&s, prove.Rising{Part: 0, Control: c.control, Sign: c.sign}))
			wantAnswer(t, d, c.want)
			if c.want != prove.Disproved {
				return
			}
			for i := range s.Controls {
				if from, to := d.Pose.Other.Position[i], d.Pose.Now.Position[i]; i == c.control && !(from < to) || i != c.control && from != to {
					t.Errorf("control %d moves from %v to %v", i, from, to)
				}
			}
		})
	}
}

// Where the control passes places that do not count, those on both sides of them are
// compared, and those in between are not.
func TestDecideRisingAcrossAGap(t *testing.T) {
	left, right := mixcore.Condition{Op: mixcore.Below, Control: roll, High: -50}, above(roll, 50)
	both := mixcore.Condition{Op: mixcore.Or, Args: []mixcore.Condition{left, right}}
	for _, c := range []struct {
		between, beyond mixcore.Percent // where the stick is neither; where it is right of 50 %
		want            prove.Answer
	}{{0, 5, prove.Disproved}, {0, 15, prove.Proved}, {20, 15, prove.Proved}, {7, 8, prove.Disproved}} {
		s := plain(lines(when(fixed(10), left), when(fixed(c.between), not(both)), when(fixed(c.beyond), right)))
		claim := everywhere(&s, prove.Rising{Part: 0, Control: roll, Sign: 1})
		wantAnswer(t, decide(t, s, claim), prove.Disproved) // into the middle, or out of it
		claim.When = &both
		wantAnswer(t, decide(t, s, claim), c.want)
	}
}

package prove_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
)

// tied is a set-up that nobody can decide by cutting: two channels that are 100 %, scaled
// by some controls by way of curves that go up and down, and equal to the last bit at
// every place; but the demands of the one are not written as those of the other.
func tied(controls int) mixcore.Setup {
	s := plain(lines(fixed(100)), lines(fixed(100)))
	for i := range 2 {
		s.Controls = append(s.Controls, mixcore.Control{Name: "more", Kind: mixcore.AxisControl, Axis: mixcore.Axis(2 + i)})
	}
	wiggle := []mixcore.Point{{X: -100, Y: 90}, {X: -60, Y: 20}, {X: -25, Y: 75}, {X: 10, Y: 35}, {X: 45, Y: 95}, {X: 70, Y: 15}, {X: 100, Y: 60}}
	for _, from := range []int{roll, pitch, len(s.Controls) - 2, len(s.Controls) - 1}[:controls] {
		for channel := range 2 {
			rate := mixcore.Rate{Throw: mixcore.Sides{Plus: 100, Minus: mixcore.Percent(100 - channel)}} // a curve that is never minus
			s.Channels[channel].Mix = append(s.Channels[channel].Mix, scaled(len(s.Demands)), add(len(s.Demands), 10))
			s.Demands = append(s.Demands, mixcore.Demand{From: from, Rates: []mixcore.Rate{rate}, Trim: mixcore.NoTrim,
				Curve: &mixcore.Curve{Points: wiggle, Smooth: true}})
		}
	}
	return s
}

// equal wants the two channels of tied to be so.
func equal(s *mixcore.Setup) *prove.Claim {
	c := everywhere(s, prove.Differ{A: 0, B: 1, Sign: 1, Low: -1e-4, High: 1e-4})
	c.Other = prove.Beside(s)
	return c
}

// lastBox is what the last box before the limit may cost beyond it: the ranges of its
// forms are searched for too.
const lastBox = 400

func TestDecideUndecidedAtItsLimit(t *testing.T) {
	s := tied(4)
	plan := compile(t, s)
	claim := equal(&s)
	for _, boxes := range []int{1, 2, 20} {
		d := prove.New(plan).Decide(context.Background(), claim, prove.Options{Boxes: boxes})
		wantAnswer(t, d, prove.Undecided)
		if d.Boxes > boxes+lastBox || d.Boxes < boxes/2 {
			t.Errorf("%d boxes looked at, want about %d", d.Boxes, boxes)
		}
		if d.Pose.Now.Position != nil || d.Margin != 0 || d.AtLeast != 0 {
			t.Errorf("an undecided claim has no pose and no margin: %+v", d)
		}
	}
	p := prove.New(plan)
	poses := provetest.Poses(plan, claim, rand.New(rand.NewPCG(1, 1)))
	for range 1000 {
		at, _ := poses.Draw()
		if m := p.Margin(claim, at); m != 1e-4 {
			t.Fatalf("margin %v at %+v: the set-up is not what it is meant to be", m, at)
		}
	}
	// Off by a thousandth the same claim has a counterexample, and it is found at once.
	s.Channels[0].Mix[0].Value = 100.1
	s.Channels[0].Mix[len(s.Channels[0].Mix)-1].Share = mixcore.Both(10.001)
	wantAnswer(t, prove.New(compile(t, s)).Decide(context.Background(), claim, prove.Options{Boxes: 20}), prove.Disproved)
}

// stopping is a context that is done once it has been asked so often.
type stopping struct {
	context.Context
	left, asked int
}

func (c *stopping) Err() error {
	c.asked++
	if c.left--; c.left < 0 {
		return context.Canceled
	}
	return nil
}

func TestDecideStopsWithItsContext(t *testing.T) {
	s := tied(2)
	plan := compile(t, s)
	done, cancel := context.WithCancel(context.Background())
	cancel()
	for _, o := range []prove.Options{{}, {Margins: true}, {Boxes: math.MaxInt}} {
		d := prove.New(plan).Decide(done, equal(&s), o)
		wantAnswer(t, d, prove.Undecided)
		if d.Boxes > 200 {
			t.Errorf("%d boxes looked at after the context was done", d.Boxes)
		}
	}
	many := manyCells()
	ctx := &stopping{Context: context.Background(), left: 10}
	d := prove.New(compile(t, many)).Decide(ctx, everywhere(&many, prove.Place{Part: 0, Low: -2, High: 2}), prove.Options{})
	wantAnswer(t, d, prove.Undecided)
	if d.Boxes < 200 || d.Boxes > 2000 {
		t.Errorf("%d boxes looked at, want some hundreds between ten looks at the context", d.Boxes)
	}
	if ctx.asked > 15 {
		t.Errorf("asked %d times, want an end soon after the 10th", ctx.asked)
	}
}

// manyCells is a set-up of 16·16·16 choices of stretches, in each of which something
// else holds.
func manyCells() mixcore.Setup {
	s := plain(nil)
	for _, control := range []int{roll, pitch, lever} {
		low, _ := s.Controls[control].Range()
		for i := range 15 {
			at := mixcore.Percent(low + (100-low)*float64(i+1)/20)
			s.Channels[0].Mix = append(s.Channels[0].Mix, when(add(control, 0.01), above(control, at)))
		}
	}
	return s
}

// What was decided before the context was done stays.
func TestDecideStoppedWhileSimplifying(t *testing.T) {
	s := plain(lines(add(pitchDemand, 50), add(rollDemand, 20), when(fixed(5), within(roll, 43.2, 43.3))))
	ctx := &stopping{Context: context.Background()}
	claim := everywhere(&s, prove.Place{Part: 0, Low: -inf, High: 52})
	plan := compile(t, s)
	d := prove.New(plan).Decide(ctx, claim, prove.Options{})
	wantAnswer(t, d, prove.Disproved)
	if err := provetest.Covers(plan, claim, d.Pose); err != nil || !(d.Margin < 0) || prove.New(plan).Margin(claim, d.Pose) != d.Margin {
		t.Errorf("%+v: %v", d, err)
	}
}

// Choices of stretches without end are given up, not gone through.
func TestDecideGivesUpOnTooManyCells(t *testing.T) {
	s := plain(nil)
	for range 12 {
		s.Controls = append(s.Controls, mixcore.Control{Kind: mixcore.SwitchControl, Positions: []string{"a", "b", "c", "d", "e", "f"}})
	}
	for i := mode + 2; i < len(s.Controls); i++ {
		for at := range 6 {
			s.Channels[0].Mix = append(s.Channels[0].Mix, when(add(leverDemand, 0.1), stands(i, at)))
		}
	}
	d := prove.New(compile(t, s)).Decide(context.Background(), everywhere(&s, prove.Place{Part: 0, Low: -1, High: 2}), prove.Options{Boxes: 100})
	wantAnswer(t, d, prove.Undecided)
	if d.Boxes > 100 || d.States != 4*2176782336 { // 6^12
		t.Errorf("%d boxes and %d switch states, want at most 100 and 4·6^12", d.Boxes, d.States)
	}
}

// Progress tells how many boxes were looked at, and never goes back.
func TestDecideTellsItsProgress(t *testing.T) {
	s := manyCells()
	last := 0
	d := prove.New(compile(t, s)).Decide(context.Background(), everywhere(&s, prove.Place{Part: 0, Low: -2, High: 2}), prove.Options{Progress: func(boxes int) {
		if boxes <= last {
			t.Errorf("%d boxes after %d", boxes, last)
		}
		last = boxes
	}})
	wantAnswer(t, d, prove.Proved)
	if d.Boxes < 16*16*16 || last < 3*1024 || last > d.Boxes {
		t.Errorf("told of %d boxes of %d, want at least 16·16·16", last, d.Boxes)
	}
}

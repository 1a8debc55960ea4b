package table

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
)

// Where a hand puts a control without measuring, in percent.
const (
	halfWay = 50
	// clearOf is how far from a threshold a control must stand for nobody to doubt
	// which side it is on. A modelling choice, no source.
	clearOf = 5
)

// hand is where a person can put each control of a model, by control: its rest
// first, then from one end to the other.
type hand struct {
	setup *mixcore.Setup
	alone [][]float64 // everything
	main  [][]float64 // for combinations: every position and detent, the ends, and a place in every stretch between thresholds
}

func newHand(probe *poses.Probe, s *mixcore.Setup) *hand {
	thresholds := make([][]float64, len(s.Controls))
	probe.EachTest(func(c *mixcore.Condition) {
		thresholds[c.Control] = append(thresholds[c.Control], poses.Thresholds(c)...)
	})
	h := &hand{s, make([][]float64, len(s.Controls)), make([][]float64, len(s.Controls))}
	for i := range s.Controls {
		c := &s.Controls[i]
		main := firmPlaces(c)
		main = append(main, clearPlaces(c, main, thresholds[i])...)
		alone := slices.Clone(main)
		switch c.Kind {
		case mixcore.AxisControl:
			alone = append(alone, -halfWay, halfWay)
		case mixcore.LeverControl:
			if !slices.ContainsFunc(main, func(at float64) bool { return math.Abs(at-halfWay) < 2*clearOf }) {
				alone = append(alone, halfWay)
			}
		}
		h.main[i], h.alone[i] = restFirst(c, main), restFirst(c, alone)
	}
	return h
}

// firmPlaces are where a control stops by itself.
func firmPlaces(c *mixcore.Control) []float64 {
	low, high := c.Range()
	var places []float64
	switch c.Kind {
	case mixcore.SwitchControl:
		for at := range c.Positions {
			places = append(places, float64(at))
		}
		return places
	case mixcore.LeverControl:
		for _, d := range c.Detents {
			places = append(places, float64(d.At))
		}
	}
	for _, end := range []float64{low, high} {
		if !slices.ContainsFunc(places, func(at float64) bool { return math.Abs(at-end) <= 2*float64(mixcore.DetentReach) }) {
			places = append(places, end)
		}
	}
	return places
}

// clearPlaces are places in those stretches between a control's thresholds in which
// none of its firm places stands clear of both ends.
func clearPlaces(c *mixcore.Control, firm, thresholds []float64) []float64 {
	if c.Kind == mixcore.SwitchControl {
		return nil
	}
	low, high := c.Range()
	edges := append([]float64{low, high}, thresholds...)
	slices.Sort(edges)
	edges = slices.Compact(edges)
	var places []float64
	for i := 1; i < len(edges); i++ {
		a, b := edges[i-1], edges[i]
		if a < low || b > high {
			continue
		}
		clear := func(at float64) bool {
			return (a == low && at == low || at-a >= float64(mixcore.DetentReach)) &&
				(b == high && at == high || b-at >= float64(mixcore.DetentReach))
		}
		if slices.ContainsFunc(firm, clear) {
			continue
		}
		at := math.Round((a + b) / 2)
		switch {
		case b-a < 2*clearOf: // half way between two that are near
		case a != low:
			at = math.Round(a + clearOf)
		case b != high:
			at = math.Round(b - clearOf)
		}
		if clear(at) && c.DetentAt(at) < 0 {
			places = append(places, at)
		}
	}
	return places
}

func restFirst(c *mixcore.Control, places []float64) []float64 {
	slices.Sort(places)
	rest := c.Rest()
	places = slices.DeleteFunc(slices.Compact(places), func(at float64) bool { return at == rest })
	return append([]float64{rest}, places...)
}

// centres says whether a control rests in the middle: sticks and trims.
func centres(c *mixcore.Control) bool {
	return c.Kind == mixcore.AxisControl || c.Kind == mixcore.TrimControl
}

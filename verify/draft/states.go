package draft

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
)

// How many states of the other controls a control is moved in.
const (
	// fullStates is up to how many are all written down.
	fullStates = 12
	// mostStates is how many are looked at; beyond fullStates only those are
	// written down that have one control off rest, or that differ in what is asked.
	mostStates = 600
	// mostAnswers is how many parts are looked at in all states together, each
	// once for each step: on the largest models there are fewer states.
	mostAnswers = 100_000
)

// allPlaces are where a script puts levers and switches.
func (d *drafter) allPlaces() [][]float64 {
	places := make([][]float64, len(d.s.Controls))
	for i := range d.s.Controls {
		c := &d.s.Controls[i]
		switch c.Kind {
		case mixcore.SwitchControl:
			for at := range c.Positions {
				places[i] = append(places[i], float64(at))
			}
		case mixcore.LeverControl:
			places[i] = d.leverPlaces(i)
		}
	}
	return places
}

// leverPlaces are a lever's detents and ends; without detents, its ends, and the
// middle of each stretch between two thresholds of the set-up's conditions. Where
// it rests comes first.
func (d *drafter) leverPlaces(lever int) []float64 {
	c := &d.s.Controls[lever]
	low, high := c.Range()
	between := d.middles(lever, low, high)
	if len(c.Detents) > 0 {
		between = nil
		for _, detent := range c.Detents {
			between = append(between, float64(detent.At))
		}
	}
	for _, end := range []float64{low, high} {
		if !slices.ContainsFunc(between, func(at float64) bool { return math.Abs(at-end) <= 2*float64(mixcore.DetentReach) }) {
			between = append(between, end)
		}
	}
	slices.Sort(between)
	rest := c.Rest()
	return append([]float64{rest}, slices.DeleteFunc(between, func(at float64) bool { return at == rest })...)
}

// middles are the middle of each stretch of a lever between two thresholds.
func (d *drafter) middles(lever int, low, high float64) []float64 {
	turns := []float64{low, high}
	d.probe.EachTest(func(c *mixcore.Condition) {
		if c.Control != lever {
			return
		}
		for _, at := range poses.Thresholds(c) {
			if at > low && at < high {
				turns = append(turns, at)
			}
		}
	})
	slices.Sort(turns)
	turns = slices.Compact(turns)
	var middles []float64
	for i := 1; i < len(turns); i++ {
		middle := math.Round((turns[i-1] + turns[i]) / 2)
		if middle > turns[i-1] && middle < turns[i] {
			middles = append(middles, middle)
		}
	}
	return middles
}

// state is where the levers and switches stand while another control is moved.
type state struct {
	in    mixcore.Input
	moved int // controls off rest
}

// statesFor are the states to move a control in: combinations of the levers and
// switches that bear on what it bears on, those with the fewest off rest first.
func (d *drafter) statesFor(control int) []state {
	others := d.probe.Nothing()
	for i := range d.s.Parts {
		if r := d.reach[i]; r[control] {
			others.AddAll(r)
		}
	}
	others[control] = false
	most := mostAnswers / max(1, len(d.s.Parts)*len(d.steps(control)))
	return d.combined(others.Controls(), min(max(most, fullStates), mostStates))
}

// combined are states of some controls, at most so many; sticks and trims among
// them rest.
func (d *drafter) combined(controls []int, most int) []state {
	controls = slices.DeleteFunc(slices.Clone(controls), func(c int) bool { return d.places[c] == nil })
	in := d.plan.Rest()
	var states []state
	var choose func(from, more, moved int)
	choose = func(from, more, moved int) {
		if more == 0 {
			states = append(states, state{in.Clone(), moved})
			return
		}
		for i := from; i <= len(controls)-more; i++ {
			c := controls[i]
			for _, at := range d.places[c][1:] {
				if len(states) >= most {
					break
				}
				in.Position[c] = at
				choose(i+1, more-1, moved)
			}
			in.Position[c] = d.places[c][0]
		}
	}
	for moved := 0; moved <= len(controls) && len(states) < most; moved++ {
		choose(0, moved, moved)
	}
	return states
}

//go:build recompute

package airframes_test

import (
	"math"
	"math/rand/v2"

	"example.com/hingeline/mixcore"
)

// poseSeed makes every run draw the same poses.
const poseSeed = 20

// pose is one line that the second computation reads.
type pose struct {
	Position   map[string]any `json:"position"`
	SignalLost bool           `json:"signal_lost"`
}

// poseDraw makes random poses that favour the places where something changes.
type poseDraw struct {
	random *rand.Rand
	setup  *mixcore.Setup
	places [][]float64 // by control: detents, thresholds, points of curves
}

func newPoseDraw(setup *mixcore.Setup) *poseDraw {
	d := &poseDraw{
		random: rand.New(rand.NewPCG(poseSeed, uint64(len(setup.Name)))),
		setup:  setup,
		places: make([][]float64, len(setup.Controls)),
	}
	for i, control := range setup.Controls {
		d.places[i] = append(d.places[i], 0)
		for _, detent := range control.Detents {
			d.places[i] = append(d.places[i], float64(detent.At))
		}
	}
	for _, phase := range setup.Phases {
		d.thresholds(&phase.When)
	}
	for _, demand := range setup.Demands {
		for _, rate := range demand.Rates {
			d.thresholds(rate.When)
		}
		if demand.Curve != nil {
			for _, point := range demand.Curve.Points {
				d.places[demand.From] = append(d.places[demand.From], point.X)
			}
		}
	}
	for _, channel := range setup.Channels {
		for _, line := range channel.Mix {
			d.thresholds(line.When)
		}
	}
	return d
}

func (d *poseDraw) thresholds(c *mixcore.Condition) {
	if c == nil {
		return
	}
	switch c.Op {
	case mixcore.Above, mixcore.AtLeast, mixcore.Below, mixcore.AtMost, mixcore.Within:
		d.places[c.Control] = append(d.places[c.Control], float64(c.Low), float64(c.High))
	}
	for i := range c.Args {
		d.thresholds(&c.Args[i])
	}
}

// next is one pose, as the program and as the script read it.
func (d *poseDraw) next() (mixcore.Input, pose) {
	input := mixcore.Input{
		Position:   make([]float64, len(d.setup.Controls)),
		SignalLost: d.random.IntN(6) == 0,
	}
	p := pose{Position: map[string]any{}, SignalLost: input.SignalLost}
	mostAtRest := d.random.IntN(8) == 0
	for i := range d.setup.Controls {
		control := &d.setup.Controls[i]
		if mostAtRest && d.random.IntN(4) != 0 {
			input.Position[i] = control.Rest()
			if d.random.IntN(2) == 0 {
				continue // the script must know where a control rests
			}
		} else {
			input.Position[i] = d.position(i)
		}
		if control.Kind == mixcore.SwitchControl {
			p.Position[control.Name] = control.Positions[int(input.Position[i])]
		} else {
			p.Position[control.Name] = input.Position[i]
		}
	}
	return input, p
}

func (d *poseDraw) position(i int) float64 {
	control := &d.setup.Controls[i]
	if control.Kind == mixcore.SwitchControl {
		return float64(d.random.IntN(len(control.Positions)))
	}
	low, high := control.Range()
	uniform := low + d.random.Float64()*(high-low)
	near := d.places[i][d.random.IntN(len(d.places[i]))]
	var at float64
	switch d.random.IntN(8) {
	case 0, 1, 2:
		at = uniform
	case 3:
		at = thousandths(uniform)
	case 4:
		at = []float64{low, high}[d.random.IntN(2)]
	case 5:
		at = near
	case 6:
		at = thousandths(near + []float64{-0.001, 0.001}[d.random.IntN(2)])
	default: // about the ends of what counts as standing at a detent
		at = thousandths(near + []float64{-1.001, -1, -0.999, 0.999, 1, 1.001}[d.random.IntN(6)])
	}
	return min(max(at, low), high)
}

// thousandths is the nearest number that a file could say.
func thousandths(x float64) float64 { return math.Round(x*1000) / 1000 }

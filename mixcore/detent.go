package mixcore

import (
	"math"
	"slices"
)

// Detent is a named place of a lever.
type Detent struct {
	Name string
	At   Percent // 0…100
}

// DetentReach is how near a lever must be to a detent to count as standing at
// it, in percent either side.
const DetentReach Percent = 1

// Stretch is where a lever counts as standing at the detent: from DetentReach below it
// to DetentReach above, both included, within 0…100. It is in decimals as people write
// them: of a detent at 8.999 % it is 7.999 to 9.999 %, and not what binary fractions
// make of that.
func (d Detent) Stretch() (low, high Percent) {
	const steps = 1e9 // of a percent; finer than any setting
	decimal := func(p Percent) Percent { return Percent(math.Round(float64(p)*steps) / steps) }
	return max(decimal(d.At-DetentReach), 0), min(decimal(d.At+DetentReach), 100)
}

// DetentAt is the index of the detent at which a lever in this position counts as
// standing, or -1.
func (c *Control) DetentAt(position float64) int {
	return slices.IndexFunc(c.Detents, func(d Detent) bool {
		low, high := d.Stretch()
		return float64(low) <= position && position <= float64(high)
	})
}

// DetentOf is the index of the detent at which a test asks the control to stand, or -1
// where it asks for something else.
func (c *Control) DetentOf(test *Condition) int {
	return slices.IndexFunc(c.Detents, func(d Detent) bool {
		low, high := d.Stretch()
		return test.Op == Within && test.Low == low && test.High == high
	})
}

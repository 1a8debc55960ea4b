package mixcore

import (
	"fmt"
	"math"
)

// Rest is where the control stands when nobody touches it: 0, for a lever its
// lowest detent, for a switch its first position.
func (c *Control) Rest() float64 {
	if c.Kind == LeverControl && len(c.Detents) > 0 {
		return float64(c.Detents[0].At)
	}
	return 0
}

// Range is how far the control moves: percent, or the index of a switch
// position.
func (c *Control) Range() (low, high float64) {
	switch c.Kind {
	case LeverControl:
		return 0, 100
	case SwitchControl:
		return 0, float64(len(c.Positions) - 1)
	default:
		return -100, 100
	}
}

// check says what is wrong with a position, or nil.
func (c *Control) check(at float64) error {
	low, high := c.Range()
	if !(at >= low && at <= high) {
		return fmt.Errorf("%s is at %v, want %v to %v", c.Name, at, low, high)
	}
	if c.Kind == SwitchControl && at != math.Trunc(at) {
		return fmt.Errorf("%s is at %v, want the whole number of a position", c.Name, at)
	}
	return nil
}

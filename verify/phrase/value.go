package phrase

import (
	"fmt"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// value reads where a control is put.
func (r *reader) value(control int) (float64, bool) {
	c := &r.setup.Controls[control]
	start := r.at
	var position float64
	var ok bool
	switch c.Kind {
	case mixcore.SwitchControl:
		position, ok = r.named(c)
	case mixcore.LeverControl:
		if position, ok = r.named(c); !ok {
			position, ok = r.leverValue(c)
		}
	default:
		position, ok = r.axisValue(c)
	}
	if !ok || r.problem != nil {
		r.at = start
		return 0, false
	}
	return position, true
}

// named reads a switch position or lever detent by the longest name that fits.
func (r *reader) named(c *mixcore.Control) (float64, bool) {
	var n names
	for i, name := range c.Positions {
		n.add(name, i, true)
	}
	for i, detent := range c.Detents {
		n.add(detent.Name, i, true)
	}
	found, words := n.find(r.tokens[r.at:])
	if words == 0 {
		return 0, false
	}
	r.at += words
	if c.Kind == mixcore.SwitchControl {
		return float64(found.indices[0]), true
	}
	return float64(c.Detents[found.indices[0]].At), true
}

// part reads "full", "half", "quarter" or a percent.
func (r *reader) part() (float64, bool) {
	switch {
	case r.any("full", "fully"):
		return 100, true
	case r.words("half"):
		return 50, true
	case r.words("quarter"), r.words("a", "quarter"):
		return 25, true
	}
	return r.percent()
}

func (r *reader) percent() (float64, bool) {
	if r.peek().kind != numberToken || r.tokens[r.at+1].text != "%" && r.tokens[r.at+1].text != "percent" {
		return 0, false
	}
	value := r.peek().number
	r.at += 2
	return value, true
}

func (r *reader) leverValue(c *mixcore.Control) (float64, bool) {
	start := r.at
	if r.any("closed", "zero") {
		return 0, true
	}
	value, ok := r.part()
	if ok && (value < 0 || value > 100) {
		r.fail(across(r.tokens[start], r.last(), CodeOutOfRange,
			fmt.Sprintf("the %s cannot stand at %v %%", c.Name, value), "a lever goes from 0 % to 100 %"))
	}
	return value, ok
}

// axisSides are the words for the plus and minus side of an axis.
var axisSides = map[mixcore.Axis][2]string{
	mixcore.Roll:  {"right", "left"},
	mixcore.Pitch: {"back", "forward"},
	mixcore.Yaw:   {"right", "left"},
}

// directions are all words that people use for the way of a stick.
var directions = []string{"right", "left", "back", "forward", "up", "down"}

// axisValue reads "full right", "right", "right 30%", "centred".
func (r *reader) axisValue(c *mixcore.Control) (float64, bool) {
	if r.any("centred", "centered", "centre", "center", "neutral") {
		return 0, true
	}
	start := r.at
	sign, sided := r.side(c)
	amount, sized := r.part()
	if !sided && sized {
		sign, sided = r.side(c)
	}
	if !sided && !sized {
		return 0, false
	}
	sides := axisSides[c.Axis]
	if !sided {
		if amount == 0 {
			return 0, true
		}
		if slices.Contains(directions, r.peek().text) {
			return 0, false
		}
		return 0, r.fail(across(r.tokens[start], r.last(), CodeUnknownPosition,
			fmt.Sprintf("%v %% of the %s: which way?", amount, c.Name),
			fmt.Sprintf("write %s or %s behind it", sides[0], sides[1])))
	}
	if !sized {
		amount = 100
	}
	if amount < 0 || amount > 100 {
		return 0, r.fail(across(r.tokens[start], r.last(), CodeOutOfRange,
			fmt.Sprintf("the %s cannot stand at %v %%", c.Name, amount), "a stick or trim goes from 0 % to 100 % either way"))
	}
	return sign * amount, true
}

// side reads a direction of the control's axis.
func (r *reader) side(c *mixcore.Control) (sign float64, ok bool) {
	sides := axisSides[c.Axis]
	switch {
	case r.words(sides[0]):
		return 1, true
	case r.words(sides[1]):
		return -1, true
	}
	return 0, false
}

// placesOf lists where a control can stand, for hints.
func placesOf(c *mixcore.Control) string {
	switch c.Kind {
	case mixcore.SwitchControl:
		return wording.OneOf(c.Positions)
	case mixcore.LeverControl:
		return wording.OneOf(append(detentNames(c), "full", "half", "closed", "a percent such as 30%"))
	}
	sides := axisSides[c.Axis]
	return fmt.Sprintf("full %s, half %s, 30%% %s, centred", sides[0], sides[1], sides[0])
}

func detentNames(c *mixcore.Control) []string {
	list := make([]string, 0, len(c.Detents))
	for _, detent := range c.Detents {
		list = append(list, detent.Name)
	}
	return list
}

// placeNames are the words that a control's position may be said in.
func placeNames(c *mixcore.Control) []string {
	switch c.Kind {
	case mixcore.SwitchControl:
		return c.Positions
	case mixcore.LeverControl:
		return append(detentNames(c), "full", "half", "closed")
	}
	sides := axisSides[c.Axis]
	return []string{"full " + sides[0], "full " + sides[1], "half " + sides[0], "half " + sides[1], sides[0], sides[1], "centred"}
}

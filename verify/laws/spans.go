package laws

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// everywhere is all of every control's travel.
func (mk *maker) everywhere() []prove.Span { return prove.Everywhere(mk.s) }

// handsOff is every switch and lever anywhere, with sticks and trims at rest.
func (mk *maker) handsOff() []prove.Span {
	spans := mk.everywhere()
	for i := range mk.s.Controls {
		if isAxis(&mk.s.Controls[i]) {
			spans[i] = prove.At(mk.rest.Position[i])
		}
	}
	return spans
}

// isAxis is true for sticks and trims.
func isAxis(c *mixcore.Control) bool {
	return c.Kind == mixcore.AxisControl || c.Kind == mixcore.TrimControl
}

// sticks are the stick axes, by index.
func (mk *maker) sticks() []int {
	var list []int
	for i := range mk.s.Controls {
		if mk.s.Controls[i].Kind == mixcore.AxisControl {
			list = append(list, i)
		}
	}
	return list
}

// beside is another pose in which some controls stand at rest, and the others as in
// the one that is judged.
func (mk *maker) beside(rest ...int) []prove.Other {
	other := prove.Beside(mk.s)
	for _, c := range rest {
		other[c] = prove.Stands(&mk.s.Controls[c], mk.rest.Position[c])
	}
	return other
}

// bearsOn says whether a control bears on a part at all.
func (mk *maker) bearsOn(control, part int) bool { return mk.reach[part][control] }

package smt

import (
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// view is the chain at one of the positions that a claim is about. What does not
// depend on where the two differ has one name in both.
type view struct {
	s     *script
	other bool
	lost  bool

	axes     map[int]number // controls that are no switches
	switches map[int][]truth
	phases   map[int]truth
	demands  map[int]number
	sums     map[int]number
	outputs  map[int]number
	places   map[int]number
}

func (s *script) newView(other, lost bool) *view {
	return &view{s: s, other: other, lost: lost, axes: map[int]number{}, switches: map[int][]truth{}, phases: map[int]truth{},
		demands: map[int]number{}, sums: map[int]number{}, outputs: map[int]number{}, places: map[int]number{}}
}

// name marks what belongs to the other position.
func (v *view) name(words string) string {
	if v.other {
		return words + " (other)"
	}
	return words
}

// stands says how a control stands here: where it is the other position, as in the
// first, or apart.
func (v *view) stands(control int) (how prove.OtherKind, span prove.Span) {
	c := v.s.claim
	if w, ok := c.Want.(prove.Rising); ok && v.other {
		if control == w.Control {
			return prove.Apart, c.Now[control]
		}
		return prove.Same, prove.Span{}
	}
	if !v.other {
		return prove.Apart, c.Now[control]
	}
	return c.Other[control].Kind, c.Other[control].Span
}

// axis is where a stick, trim or lever stands, in percent.
func (v *view) axis(control int) number {
	if a, ok := v.axes[control]; ok {
		return a
	}
	c := &v.s.setup.Controls[control]
	var at number
	switch how, span := v.stands(control); how {
	case prove.Same:
		at = v.s.now.axis(control)
	case prove.Mirrored:
		at = negative(v.s.now.axis(control))
	default:
		low, high := setting(span.Low), setting(span.High)
		if low.text == high.text {
			at = low
			remark(&v.s.controls, "%s stands at %s percent.", v.name(c.Name), low.exact.RatString())
			break
		}
		at = number{text: v.s.symbol(v.name(c.Name))}
		remark(&v.s.controls, "%s: %s.", v.name(c.Name), kindWords(c))
		fmt.Fprintf(&v.s.controls, "(declare-const %s Real)\n(assert (<= %s %s %s))\n", at.text, low.text, at.text, high.text)
		v.s.constants = append(v.s.constants, constant{at.text, control, 0, v.other})
	}
	v.axes[control] = at
	return at
}

func kindWords(c *mixcore.Control) string {
	ends := map[mixcore.Axis]string{mixcore.Roll: "-100 left to 100 right", mixcore.Pitch: "-100 forward to 100 back",
		mixcore.Yaw: "-100 left to 100 right"}[c.Axis]
	switch c.Kind {
	case mixcore.TrimControl:
		return "a trim, " + ends
	case mixcore.LeverControl:
		return "a lever, 0 to 100"
	}
	return "a stick, " + ends
}

// positions says for each position of a switch whether it stands there.
func (v *view) positions(control int) []truth {
	if list, ok := v.switches[control]; ok {
		return list
	}
	c := &v.s.setup.Controls[control]
	how, span := v.stands(control)
	switch how {
	case prove.Same:
		return v.s.now.positions(control)
	case prove.Mirrored:
		refuse("the switch %s is mirrored, which only sticks and trims can be", c.Name)
	}
	list := make([]truth, len(c.Positions))
	for i := range list {
		list[i] = certain(false)
	}
	if len(span.Places) == 1 {
		list[span.Places[0]] = certain(true)
		remark(&v.s.controls, "%s stands at %s.", v.name(c.Name), c.Positions[span.Places[0]])
	} else {
		remark(&v.s.controls, "%s: a switch, at exactly one of its positions.", v.name(c.Name))
		var may []truth
		for _, at := range span.Places {
			t := truth{text: v.s.symbol(v.name(c.Name + " is at " + c.Positions[at]))}
			fmt.Fprintf(&v.s.controls, "(declare-const %s Bool)\n", t.text)
			v.s.constants = append(v.s.constants, constant{t.text, control, at, v.other})
			list[at] = t
			may = append(may, t)
		}
		fmt.Fprintf(&v.s.controls, "(assert %s)\n", oneOf(may...).text)
		for i := range may {
			for _, beside := range may[:i] {
				fmt.Fprintf(&v.s.controls, "(assert (not (and %s %s)))\n", beside.text, may[i].text)
			}
		}
	}
	v.switches[control] = list
	return list
}

// holds says whether a condition holds; nil always does.
func (v *view) holds(c *mixcore.Condition) truth {
	if c == nil {
		return certain(true)
	}
	var args []truth
	for i := range c.Args {
		args = append(args, v.holds(&c.Args[i]))
	}
	switch c.Op {
	case mixcore.And:
		return every(args...)
	case mixcore.Or:
		return oneOf(args...)
	case mixcore.Not:
		return not(args[0])
	case mixcore.InPhase:
		return v.phase(c.Phase)
	}
	if v.s.setup.Controls[c.Control].Kind == mixcore.SwitchControl {
		var at []truth
		for i, stands := range v.positions(c.Control) {
			if test(c, whole(int64(i))).holds {
				at = append(at, stands)
			}
		}
		return oneOf(at...)
	}
	return test(c, v.axis(c.Control))
}

// test is a condition's own test of where its control stands.
func test(c *mixcore.Condition, at number) truth {
	low, high := func() number { return setting(c.Low) }, func() number { return setting(c.High) }
	switch c.Op {
	case mixcore.AtPosition:
		here := whole(int64(c.Position))
		return every(compare("<=", here, at), compare("<=", at, here))
	case mixcore.Above:
		return compare(">", at, low())
	case mixcore.AtLeast:
		return compare(">=", at, low())
	case mixcore.Below:
		return compare("<", at, high())
	case mixcore.AtMost:
		return compare("<=", at, high())
	case mixcore.Within:
		return every(compare(">=", at, low()), compare("<=", at, high()))
	}
	refuse("a condition of kind %d is not known", c.Op)
	return truth{}
}

func (v *view) phase(i int) truth {
	if t, ok := v.phases[i]; ok {
		return t
	}
	p := &v.s.setup.Phases[i]
	t := v.s.state(v.name("phase "+p.Name), "Phase "+p.Name+".", v.holds(&p.When))
	v.phases[i] = t
	return t
}

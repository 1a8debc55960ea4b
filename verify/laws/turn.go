package laws

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

// axisOf is the axis about which a stick or trim turns the model. On a model without
// anything that rolls it, the roll stick is there to turn it by the rudder.
func (mk *maker) axisOf(control int) mixcore.Axis {
	axis := mk.s.Controls[control].Axis
	if axis == mixcore.Roll && !mk.air.Rollers() {
		return mixcore.Yaw
	}
	return axis
}

// turnsModel claims that full stick turns the model the right way, both ways, at
// every switch and lever position with the other sticks and all trims at rest.
func (mk *maker) turnsModel(stick int) {
	axis := mk.axisOf(stick)
	if !mk.couldTurn(stick, axis) {
		return
	}
	c := &mk.s.Controls[stick]
	alive := mk.stickAlive(stick, axis)
	weak := axis == mixcore.Pitch && mk.cannotTell(stick)
	sentence := turnSentence(c, axis, weak)
	cl := claim{sentence: sentence, seen: func(v *view) sight { return mk.turned(v, axis) }}
	if alive != nil {
		cl.sentence += ", where no throw of 0 % switches it off"
	}
	if weak {
		cl.assumes = append(cl.assumes, "that what wing parts which go with the "+c.Name+" do to the pitch, which nobody can tell from the ground, does not win")
	}
	for _, plus := range []bool{true, false} {
		now := mk.handsOff()
		now[stick] = prove.At(-100)
		if plus {
			now[stick] = prove.At(100)
		}
		want := prove.Turn{Axis: axis, Plus: plus}
		if weak {
			want = prove.Turn{Axis: axis, Plus: !plus, Not: true, Told: true}
		}
		cl.needs = append(cl.needs, prove.Claim{Now: now, Other: mk.beside(stick), When: alive, Want: want})
	}
	mk.add(cl)
}

// turnSentence is what full stick must do to the model, or where nobody can tell that
// much, must not.
func turnSentence(c *mixcore.Control, axis mixcore.Axis, weak bool) string {
	plus, minus, words := wording.AxisSide(c.Axis, true), wording.AxisSide(c.Axis, false), turnWords[axis]
	right, left := strings.ToLower(words.plus), strings.ToLower(words.minus)
	if weak {
		return fmt.Sprintf("full %s %s never %s the model %s as far as can be told, nor full %s %s", c.Name, plus, words.does, left, minus, right)
	}
	return fmt.Sprintf("full %s %s %s the model %s, and full %s %s it %s", c.Name, plus, words.does, right, minus, words.does, left)
}

// couldTurn says whether a stick bears on anything that turns the flying model about
// an axis.
func (mk *maker) couldTurn(stick int, axis mixcore.Axis) bool {
	for part := range mk.s.Parts {
		if mk.air.Acts(part) && mk.air.Duty(part, axis) != 0 && mk.bearsOn(stick, part) {
			return true
		}
	}
	return false
}

// cannotTell tries whether, at full stick, wing parts that go with it make the pitch
// unsure. What is there for roll or yaw must show about its own axis, whatever else moves.
func (mk *maker) cannotTell(stick int) bool {
	return slices.ContainsFunc(mk.try(stick), func(t tried) bool { return t.unsure })
}

// turned says what the model does instead, and what those parts do that tell why.
func (mk *maker) turned(v *view, axis mixcore.Axis) sight {
	change := mk.air.Change(&v.before.Output, &v.now.Output)
	want, words := v.need.Want.(prove.Turn), turnWords[axis]
	got := "the model does not " + words.do
	switch change.Answer(axis) {
	case effect.Plus:
		got = "the model " + words.does + " " + words.plus
	case effect.Minus:
		got = "the model " + words.does + " " + words.minus
	case effect.Unsure:
		got = "nobody can tell which way the model " + words.does
	}
	wrong := effect.Minus
	if want.Plus == want.Not {
		wrong = effect.Plus
	}
	s := sight{shows: mk.tellTales(&change, axis, wrong)}
	for _, show := range s.shows {
		got += "; " + moves(&mk.s.Parts[show.part], v.before.Output.Parts[show.part], v.now.Output.Parts[show.part], mk.m.Still)
	}
	s.got = got
	return s
}

// mostShown is how many parts explain a counterexample at most.
const mostShown = 2

// tellTales are the parts that tell why a model does not turn the right way: those that
// turn it the wrong way, else those that do nothing, else all that could turn it.
func (mk *maker) tellTales(change *effect.Change, axis mixcore.Axis, wrong effect.Answer) (list []shown) {
	for _, why := range []struct {
		doubt chain.Doubt
		tells func(effect.Answer) bool
	}{
		{chain.Direction, func(a effect.Answer) bool { return a == wrong }},
		{chain.Stuck, func(a effect.Answer) bool { return a == effect.None }},
		{chain.Unclear, func(effect.Answer) bool { return true }},
	} {
		for part := range mk.s.Parts {
			if mk.air.Duty(part, axis) != 0 && mk.air.Acts(part) && why.tells(change.PartAnswer(part, axis)) {
				list = append(list, showPart(part, why.doubt))
			}
		}
		if list != nil {
			break
		}
	}
	return list[:min(len(list), mostShown)]
}

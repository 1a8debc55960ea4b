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

var controlSense = law{Info{"control-sense", "Control sense",
	"Each stick and trim moves what turns the model only the right way, wherever everything else stands; and at full stick, with the other sticks and the trims at rest, the model turns that way."},
	func(mk *maker) {
		for i := range mk.s.Controls {
			switch mk.s.Controls[i].Kind {
			case mixcore.AxisControl:
				mk.turnsModel(i)
				mk.partsFollow(i)
			case mixcore.TrimControl:
				mk.trimFollows(i)
			case mixcore.LeverControl:
				mk.powerFollows(i)
			}
		}
		if len(mk.claims) == 0 {
			mk.none = "no stick bears on anything that turns the model"
		}
	}}

// axisOf is the axis about which a stick or trim turns the model. On a model without
// anything that rolls it, the roll stick is there to turn it by the rudder.
func (mk *maker) axisOf(control int) mixcore.Axis {
	axis := mk.s.Controls[control].Axis
	if axis == mixcore.Roll && !mk.hasDuty(mixcore.Roll) {
		return mixcore.Yaw
	}
	return axis
}

func (mk *maker) hasDuty(axis mixcore.Axis) bool {
	for i := range mk.s.Parts {
		if mk.air.Duty(i, axis) != 0 {
			return true
		}
	}
	return false
}

// follows is which way a part must go as a stick or trim goes its plus way: +1 as
// mixcore counts, −1 the other way, 0 where nothing is asked: the control does not
// bear on it, or it is not there for that axis. A rudder, fin or wheel that goes with
// the roll stick goes into the turn (common practice, no source); motors that do are
// left alone.
func (mk *maker) follows(part, control int) int {
	if !mk.bearsOn(control, part) {
		return 0
	}
	axis := mk.s.Controls[control].Axis
	if way := mk.air.Duty(part, axis); way != 0 {
		return way
	}
	if axis == mixcore.Roll && mk.s.Parts[part].Motion != mixcore.Power {
		return mk.air.Duty(part, mixcore.Yaw)
	}
	return 0
}

// partsFollow claims for each part that answers a stick that it never goes the wrong
// way, wherever anything else stands.
func (mk *maker) partsFollow(stick int) {
	c := &mk.s.Controls[stick]
	for part := range mk.s.Parts {
		way := mk.follows(part, stick)
		if way == 0 {
			continue
		}
		p := &mk.s.Parts[part]
		mk.add(claim{
			sentence: "the " + p.Name + " never " + verb(p.Motion, way < 0) + " as the " + c.Name + " moves " + wording.AxisSide(c.Axis, true),
			needs:    []prove.Claim{mk.rising(part, stick, way)},
			seen:     mk.backwards,
		})
	}
}

func (mk *maker) rising(part, control, way int) prove.Claim {
	return prove.Claim{Now: mk.everywhere(), Want: prove.Rising{Part: part, Control: control, Sign: float64(way)}}
}

// trimFollows claims of all parts that answer a trim at once that none goes the wrong
// way.
func (mk *maker) trimFollows(trim int) {
	c := claim{sentence: "the " + mk.s.Controls[trim].Name + " never moves anything the wrong way", seen: mk.backwards}
	for part := range mk.s.Parts {
		if way := mk.follows(part, trim); way != 0 {
			c.needs = append(c.needs, mk.rising(part, trim, way))
		}
	}
	if c.needs != nil {
		mk.add(c)
	}
}

// powerFollows claims of a lever that gives motors their power that more of it never
// means less.
func (mk *maker) powerFollows(lever int) {
	for part := range mk.s.Parts {
		p := &mk.s.Parts[part]
		if p.Motion == mixcore.Power && mk.givesPower(lever, part) {
			mk.add(claim{
				sentence: "more " + mk.s.Controls[lever].Name + " never means less power of the " + p.Name,
				needs:    []prove.Claim{mk.rising(part, lever, +1)},
				seen:     mk.backwards,
			})
		}
	}
}

// givesPower is true for a lever whose demand a motor's channel adds up, unless its
// name says that it is there for something else: a brake lever may well take power
// off.
func (mk *maker) givesPower(lever, motor int) bool {
	if mk.called(lever, brakeWords, flapWords, camberWords) {
		return false
	}
	for i := range mk.s.Parts[motor].Drives {
		for _, line := range mk.s.Channels[mk.s.Parts[motor].Drives[i].Channel].Mix {
			if line.Op == mixcore.Add && mk.s.Demands[line.Demand].From == lever {
				return true
			}
		}
	}
	return false
}

// backwards says how a part goes the wrong way between two places of a control.
func (mk *maker) backwards(v *view) sight {
	want := v.need.Want.(prove.Rising)
	p := &mk.s.Parts[want.Part]
	from, to := v.before.Output.Parts[want.Part], v.now.Output.Parts[want.Part]
	return sight{
		got:   moves(p, from, to, wording.NeutralBelow) + ", the wrong way",
		shows: []shown{showPart(want.Part, chain.Direction)},
	}
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
	weak := mk.cannotTell(stick)
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
			want = prove.Turn{Axis: axis, Plus: !plus, Not: true}
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

// cannotTell tries whether, at full stick, wing parts that go with it make what the
// model does unsure.
func (mk *maker) cannotTell(stick int) bool {
	return slices.ContainsFunc(mk.try(stick), func(t tried) bool { return t.unsure })
}

// turned says what the model does instead, and which parts do it.
func (mk *maker) turned(v *view, axis mixcore.Axis) sight {
	change := mk.air.Change(&v.before.Output, &v.now.Output)
	words, answer := turnWords[axis], change.Answer(axis)
	got := "the model does not " + words.do
	wrong := effect.Minus
	if v.need.Want.(prove.Turn).Plus == v.need.Want.(prove.Turn).Not {
		wrong = effect.Plus
	}
	switch answer {
	case effect.Plus:
		got = "the model " + words.does + " " + words.plus
	case effect.Minus:
		got = "the model " + words.does + " " + words.minus
	case effect.Unsure:
		got = "nobody can tell which way the model " + words.does
	}
	s := sight{}
	for _, moving := range []bool{true, false} {
		for part := range mk.s.Parts {
			if mk.air.Duty(part, axis) == 0 || len(s.shows) >= mostShown {
				continue
			}
			does := change.PartAnswer(part, axis)
			switch {
			case moving && does == wrong:
				s.shows = append(s.shows, showPart(part, chain.Direction))
			case !moving && does == effect.None && len(s.shows) == 0:
				s.shows = append(s.shows, showPart(part, chain.Stuck))
			}
		}
	}
	for _, show := range s.shows {
		got += "; " + moves(&mk.s.Parts[show.part], v.before.Output.Parts[show.part], v.now.Output.Parts[show.part], mk.m.Still)
	}
	s.got = got
	return s
}

// mostShown is how many parts explain a counterexample at most.
const mostShown = 2

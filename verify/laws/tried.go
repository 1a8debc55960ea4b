package laws

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

// mostTried is how many poses of the switches and levers are tried at most to find out
// what there is to claim of a stick.
const mostTried = 80

// tried is what a stick does at one pose of the switches and levers, with the other
// sticks and all trims at rest.
type tried struct {
	position []float64          // of all controls, the stick at rest
	rest     []float64          // by part: where it stands with the stick at rest
	moves    map[int][2]float64 // by part that the stick bears on: how far it moves to full minus and full plus
	unsure   bool               // nobody can tell which way the model turns
}

// try tries a stick, once for all laws.
func (mk *maker) try(stick int) []tried {
	if list, ok := mk.known[stick]; ok {
		return list
	}
	bears := mk.probe.Nothing()
	var parts []int
	for part := range mk.s.Parts {
		if mk.bearsOn(stick, part) {
			bears.AddAll(mk.reach[part])
			parts = append(parts, part)
		}
	}
	var controls []int
	for _, i := range bears.Controls() {
		if !isAxis(&mk.s.Controls[i]) {
			controls = append(controls, i)
		}
	}
	axis := mk.axisOf(stick)
	var list []tried
	mk.probe.Walk(controls, mostTried, func(in *mixcore.Input, _ []int, _ int) {
		t := tried{moves: map[int][2]float64{}}
		t.position = append(t.position, in.Position...)
		mk.m.Plan.Eval(in, mk.out[0])
		for part := range mk.s.Parts {
			t.rest = append(t.rest, mk.out[0].Parts[part].Place())
		}
		for side, at := range ends {
			in.Position[stick] = at
			mk.m.Plan.Eval(in, mk.out[1])
			for _, part := range parts {
				moved := t.moves[part]
				moved[side] = mk.out[1].Parts[part].Place() - t.rest[part]
				t.moves[part] = moved
			}
			t.unsure = t.unsure || mk.air.Change(mk.out[0], mk.out[1]).Answer(axis) == effect.Unsure
		}
		in.Position[stick] = mk.rest.Position[stick]
		list = append(list, t)
	})
	mk.known[stick] = list
	return list
}

// ends are the ends of a stick: full minus, full plus.
var ends = [2]float64{-100, 100}

// moved is the least and the most that a part moves, at the poses tried, as a stick goes
// from rest to an end: in degrees or percent, plus as mixcore counts. With a switch, only
// poses at which it stands at a position count.
func (mk *maker) moved(part, stick, side int, only *at) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, t := range mk.try(stick) {
		if only == nil || t.position[only.control] == float64(only.position) {
			least, most = min(least, t.moves[part][side]), max(most, t.moves[part][side])
		}
	}
	return least, most
}

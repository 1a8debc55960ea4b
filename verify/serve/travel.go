package serve

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// How a way is looked at.
const (
	wayPieces = 200 // of a control's whole travel, beside the places where something changes
	// mostStates is how many positions of switches are told apart; where there would be
	// more, each switch is moved by itself from where it stands.
	mostStates = 24
	// alike is how far apart two ways may be that are one, in degrees or percent: less
	// than is shown.
	alike = 0.01
)

// way is what one part does as one control goes through its travel, with the switches in
// some positions.
type way struct {
	When string // "rate switch high"; empty where no switch bears on the part
	Now  bool   // the switches stand so
	X    []float64
	Y    []float64 // degrees, plus as mixcore's, or percent
	Dead []stretch

	singly bool // the only way, of all that was looked at: each switch was moved by itself
}

// ways are the ways of a part, those that are the same as one. in has all that does not
// move; it is not changed.
func (s *subject) ways(part, against int, in *mixcore.Input) []way {
	at := in.Clone()
	switches, states, _ := s.states(part, &at)
	if in.SignalLost {
		states = states[:1]
	}
	var list []way
	for k, state := range states {
		for i, position := range state {
			at.Position[switches[i]] = position
		}
		w := s.way(part, against, &at)
		w.Now = k == 0
		w.When = s.stateWords(switches, state)
		same := slices.IndexFunc(list, func(o way) bool {
			return !slices.ContainsFunc(indices(o.Y), func(i int) bool { return math.Abs(o.Y[i]-w.Y[i]) > alike })
		})
		switch {
		case same < 0:
			list = append(list, w)
		default:
			list[same].When += " or " + w.When
		}
	}
	if len(list) == 1 {
		list[0].When = ""
	}
	return list
}

func indices(list []float64) []int {
	all := make([]int, len(list))
	for i := range all {
		all[i] = i
	}
	return all
}

// states are the positions of the switches that bear on a part: as they stand first, then
// every other, or each switch by itself where that would be too many, and whether so.
func (s *subject) states(part int, in *mixcore.Input) (switches []int, states [][]float64, singly bool) {
	number := 1
	for _, c := range s.probe.PartReach(part).Controls() {
		if k := &s.model.Setup.Controls[c]; k.Kind == mixcore.SwitchControl {
			switches = append(switches, c)
			number = min(number*len(k.Positions), mostStates+1)
		}
	}
	now := make([]float64, len(switches))
	for i, c := range switches {
		now[i] = in.Position[c]
	}
	states = [][]float64{now}
	add := func(state []float64) {
		if !slices.Equal(state, now) {
			states = append(states, slices.Clone(state))
		}
	}
	state := slices.Clone(now)
	if number > mostStates {
		for i, c := range switches {
			for position := range s.model.Setup.Controls[c].Positions {
				state[i] = float64(position)
				add(state)
			}
			state[i] = now[i]
		}
		return switches, states, true
	}
	var all func(i int)
	all = func(i int) {
		if i == len(switches) {
			add(state)
			return
		}
		for position := range s.model.Setup.Controls[switches[i]].Positions {
			state[i] = float64(position)
			all(i + 1)
		}
	}
	all(0)
	return switches, states, false
}

func (s *subject) stateWords(switches []int, state []float64) string {
	var words []string
	for i, c := range switches {
		words = append(words, wording.Setting(&s.model.Setup, c, state[i]))
	}
	return wording.Listed(words)
}

// places are where a control is put along its travel: evenly, and where something changes.
func (s *subject) places(control int) []float64 {
	low, high := s.model.Setup.Controls[control].Range()
	list := slices.Concat(s.probe.Points[control], s.told(control))
	for i := range wayPieces + 1 {
		list = append(list, low+(high-low)*float64(i)/wayPieces)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

func (s *subject) way(part, against int, in *mixcore.Input) way {
	look := s.looker(part, against, in)
	w := way{X: s.places(against)}
	for _, x := range w.X {
		y, _ := look(x)
		w.Y = append(w.Y, y)
	}
	w.Dead = deadOf(&w, look)
	if in.SignalLost {
		for i := range w.Dead {
			w.Dead[i].Because = "the signal is lost"
		}
	}
	return w
}

// looker looks at a part while one control moves and everything else stands.
func (s *subject) looker(part, against int, in *mixcore.Input) looker {
	some, out := s.model.Plan.Some([]int{part}), s.model.Plan.NewOutput()
	at, p := in.Clone(), &s.model.Setup.Parts[part]
	return func(x float64) (float64, mixcore.Limit) {
		if !in.SignalLost { // else what the control does now reaches nothing
			at.Position[against] = x
		}
		s.model.Plan.EvalSome(&at, &some, out)
		return out.Parts[part].Place(), bites(p, part, out)
	}
}

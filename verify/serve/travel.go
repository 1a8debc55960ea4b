package serve

import (
	"math"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// How a way is looked at.
const (
	wayPieces = 60 // of a control's whole travel, beside the places where something changes
	// mostStates is how many positions of switches are told apart; where there would be
	// more, each switch is moved by itself from where it stands.
	mostStates = 24
	// alike is how far apart two ways may be that are one, in degrees or percent: less
	// than is shown.
	alike = 0.01
	// unmoved is what counts as not moving from one place to the next: rounding.
	unmoved = 1e-9
	// leastDead is the shortest dead part of a travel that is told, in percent of it.
	leastDead = 0.5
)

// way is what one part does as one control goes through its travel, with the switches in
// some positions.
type way struct {
	When string // "rate switch high"; empty where no switch bears on the part
	Now  bool   // the switches stand so
	X    []float64
	Y    []float64 // degrees, plus as mixcore's, or percent
	Dead []stretch
}

// stretch is a part of a control's travel in which the part stands still.
type stretch struct {
	From, To float64
	Because  string // "at its stop"; empty where no limit bites
}

// ways are the ways of a part, those that are the same as one. in has all that does not
// move; it is not changed.
func (s *subject) ways(part, against int, in *mixcore.Input) []way {
	at := in.Clone()
	switches, states := s.states(part, &at)
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
// every other, or each switch by itself where that would be too many.
func (s *subject) states(part int, in *mixcore.Input) (switches []int, states [][]float64) {
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
		return switches, states
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
	return switches, states
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
	list := slices.Clone(s.probe.Points[control])
	for i := range wayPieces + 1 {
		list = append(list, low+(high-low)*float64(i)/wayPieces)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

func (s *subject) way(part, against int, in *mixcore.Input) way {
	some, out := s.model.Plan.Some([]int{part}), s.model.Plan.NewOutput()
	at := in.Clone()
	w := way{X: s.places(against)}
	var limits []mixcore.Limit
	p := &s.model.Setup.Parts[part]
	for _, x := range w.X {
		at.Position[against] = x
		s.model.Plan.EvalSome(&at, &some, out)
		limits, w.Y = append(limits, bites(p, part, out)), append(w.Y, s.place(part, out.Parts[part]))
	}
	w.Dead = dead(w.X, w.Y, limits)
	for i := range w.Dead {
		w.Dead[i] = s.widened(part, against, in, w.Dead[i])
	}
	return w
}

// place is where a part is: degrees, or percent.
func (s *subject) place(part int, o mixcore.PartOutput) float64 {
	if s.model.Setup.Parts[part].Motion.Hinged() {
		return float64(o.Angle)
	}
	return float64(o.Amount)
}

// dead are the stretches on which a way stands still, with what limits it in their middle.
func dead(x, y []float64, limits []mixcore.Limit) []stretch {
	var list []stretch
	long := (x[len(x)-1] - x[0]) * leastDead / 100
	for i := 0; i < len(x)-1; {
		k := i
		for k < len(x)-1 && math.Abs(y[k+1]-y[i]) <= unmoved {
			k++
		}
		if x[k]-x[i] >= long {
			list = append(list, stretch{x[i], x[k], strings.Join(wording.Limits(limits[(i+k+1)/2]), ", ")})
		}
		i = max(k, i+1)
	}
	return list
}

// narrowings is how often the end of a dead part is halved: to a thousandth of a percent.
const narrowings = 14

// widened is a stretch whose ends are not only places that were looked at.
func (s *subject) widened(part, against int, in *mixcore.Input, d stretch) stretch {
	some, out := s.model.Plan.Some([]int{part}), s.model.Plan.NewOutput()
	at := in.Clone()
	value := func(x float64) float64 {
		at.Position[against] = x
		s.model.Plan.EvalSome(&at, &some, out)
		return s.place(part, out.Parts[part])
	}
	still, low, high := value(d.From), 0.0, 0.0
	low, high = s.model.Setup.Controls[against].Range()
	step := (high - low) / wayPieces
	widen := func(inside, beyond float64) float64 {
		for range narrowings {
			if middle := (inside + beyond) / 2; math.Abs(value(middle)-still) <= unmoved {
				inside = middle
			} else {
				beyond = middle
			}
		}
		return math.Round(inside*100) / 100
	}
	if d.From > low {
		d.From = widen(d.From, max(low, d.From-step))
	}
	if d.To < high {
		d.To = widen(d.To, min(high, d.To+step))
	}
	return d
}

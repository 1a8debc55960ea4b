package sheet

import (
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/wording"
)

// mostStates is how many states of switches and levers one part and control are looked
// at in. Controls that would make more stay at rest, and the rows say so.
const mostStates = 24

// bearing are the switches and levers that change the throw of a part by a control, and
// where they are tried, rest first.
type bearing struct {
	controls []int
	places   [][]float64
	left     []int // that stay at rest, for there would be too many states
}

// bearing finds them, those of rates first.
func (t *thrower) bearing(part, control int) bearing {
	copy(t.at.Position, t.rest.Position)
	rates, lines := t.probe.Nothing(), t.probe.Nothing()
	scaled := map[int][]int{} // by control: the demands of it that scale what the control does
	p := &t.s.Parts[part]
	for _, d := range p.Drives {
		mix := t.s.Channels[d.Channel].Mix
		in := false // the control has come in by a line so far
		for i := range mix {
			line := &mix[i]
			switch {
			case line.Op == mixcore.Add && t.s.Demands[line.Demand].From == control:
				in = true
				t.probe.AddCondition(lines, line.When)
				t.addRates(rates, line.Demand)
			case line.Op == mixcore.ScaleBy && (in || t.s.Demands[line.Demand].From == control):
				t.probe.AddCondition(lines, line.When)
				t.addRates(lines, line.Demand)
				from := t.s.Demands[line.Demand].From
				scaled[from] = append(scaled[from], line.Demand)
			case line.Op == mixcore.ReplaceWith && in:
				t.probe.AddCondition(lines, line.When)
			}
		}
	}
	for by := range scaled {
		lines[by] = true
	}
	var b bearing
	count := 1
	for _, reach := range []poses.Reach{rates, lines} {
		for _, c := range reach.Controls() {
			kind := t.s.Controls[c].Kind
			if c == control || slices.Contains(b.controls, c) || kind != mixcore.SwitchControl && kind != mixcore.LeverControl {
				continue
			}
			places := t.places(c, scaled[c])
			if count*len(places) > mostStates {
				b.left = append(b.left, c)
				continue
			}
			count *= len(places)
			b.controls, b.places = append(b.controls, c), append(b.places, places)
		}
	}
	return b
}

// addRates adds what the rates of a demand look at.
func (t *thrower) addRates(r poses.Reach, demand int) {
	for i := range t.s.Demands[demand].Rates {
		t.probe.AddCondition(r, t.s.Demands[demand].Rates[i].When)
	}
}

// places are where a switch or lever is tried: every position; of a lever one place
// between any two thresholds, a detent where there is one, and, where it scales what the
// control does, its ends and wherever that by which it scales turns back.
func (t *thrower) places(control int, scales []int) []float64 {
	c := &t.s.Controls[control]
	if c.Kind == mixcore.SwitchControl {
		return t.probe.Points[control]
	}
	cuts := []float64{0, 100}
	t.probe.EachTest(func(test *mixcore.Condition) {
		if test.Control == control {
			cuts = append(cuts, poses.Thresholds(test)...)
		}
	})
	slices.Sort(cuts)
	cuts = slices.Compact(cuts)
	places := []float64{c.Rest()}
	for i := 1; i < len(cuts); i++ {
		if inside(places, cuts[i-1], cuts[i]) {
			continue
		}
		places = append(places, t.placeBetween(c, cuts[i-1], cuts[i]))
	}
	if scales != nil {
		most := []float64{0, 100}
		for _, demand := range scales {
			most = append(most, t.turns(control, func(x float64) mixcore.Degrees { return mixcore.Degrees(t.demanded(demand, control, x)) })...)
		}
		for _, x := range most {
			if !slices.Contains(places, x) {
				places = append(places, x)
			}
		}
	}
	slices.Sort(places[1:])
	return places
}

// demanded is a demand with its control somewhere and all others at rest.
func (t *thrower) demanded(demand, control int, x float64) mixcore.Percent {
	t.at.Position[control] = x
	t.m.Plan.Eval(&t.at, t.out)
	t.at.Position[control] = t.rest.Position[control]
	return t.out.Demands[demand]
}

func inside(places []float64, low, high float64) bool {
	return slices.ContainsFunc(places, func(x float64) bool {
		return x > low && x < high || x == low && low == 0 || x == high && high == 100
	})
}

// placeBetween is a place of a lever between two thresholds: an end of its travel, a
// detent, or else the middle.
func (t *thrower) placeBetween(c *mixcore.Control, low, high float64) float64 {
	switch {
	case high == 100:
		return high
	case low == 0:
		return low
	}
	for _, d := range c.Detents {
		if x := float64(d.At); x > low && x < high {
			return x
		}
	}
	return (low + high) / 2
}

// states are all choices of places, the first of every control first.
func (b *bearing) states() [][]int {
	list := [][]int{make([]int, len(b.controls))}
	for i := len(b.controls) - 1; i >= 0; i-- {
		var more [][]int
		for choice := range b.places[i] {
			for _, state := range list {
				next := slices.Clone(state)
				next[i] = choice
				more = append(more, next)
			}
		}
		list = more
	}
	return list
}

// when says in which states a group of them is, as few alternatives as a search from the
// first on finds; none where it is all of them.
func (b *bearing) when(s *mixcore.Setup, states [][]int, group []int) []string {
	in := map[string]bool{}
	key := func(state []int) string {
		var k strings.Builder
		for _, choice := range state {
			k.WriteByte(byte(choice))
		}
		return k.String()
	}
	for _, i := range group {
		in[key(states[i])] = true
	}
	said := map[string]bool{}
	var list []string
	for _, i := range group {
		if said[key(states[i])] {
			continue
		}
		cube := b.cube(states[i], func(state []int) bool { return in[key(state)] })
		eachOf(cube, func(state []int) { said[key(state)] = true })
		if words := b.words(s, cube); words != "" {
			list = append(list, words)
		}
	}
	if rest := b.leftWords(s); rest != "" {
		if len(list) == 0 {
			return []string{rest}
		}
		for i := range list {
			list[i] += " and " + rest
		}
	}
	return list
}

// cube is the largest set found around a state in which each control has some of its
// places, whatever the others have of theirs.
func (b *bearing) cube(state []int, in func(state []int) bool) [][]int {
	cube := make([][]int, len(state))
	for i, choice := range state {
		cube[i] = []int{choice}
	}
	for i := range cube {
		for choice := range b.places[i] {
			if choice == state[i] {
				continue
			}
			kept := cube[i]
			cube[i] = []int{choice}
			fits := true
			eachOf(cube, func(state []int) { fits = fits && in(state) })
			cube[i] = kept
			if fits {
				cube[i] = append(slices.Clone(kept), choice)
			}
		}
		slices.Sort(cube[i])
	}
	return cube
}

// eachOf visits every state of a cube.
func eachOf(cube [][]int, visit func(state []int)) {
	state := make([]int, len(cube))
	var down func(i int)
	down = func(i int) {
		if i == len(cube) {
			visit(state)
			return
		}
		for _, choice := range cube[i] {
			state[i] = choice
			down(i + 1)
		}
	}
	down(0)
}

// words says a cube: "rate switch low or mid and phase switch launch".
func (b *bearing) words(s *mixcore.Setup, cube [][]int) string {
	var said []string
	for i, choices := range cube {
		if len(choices) == len(b.places[i]) {
			continue
		}
		c := &s.Controls[b.controls[i]]
		var places []string
		for _, choice := range choices {
			places = append(places, wording.Stand(c, b.places[i][choice]))
		}
		said = append(said, c.Name+" "+strings.Join(places, " or "))
	}
	return strings.Join(said, " and ")
}

// leftWords says which controls were left at rest, though they change the throw.
func (b *bearing) leftWords(s *mixcore.Setup) string {
	var said []string
	for _, c := range b.left {
		said = append(said, wording.Setting(s, c, s.Controls[c].Rest())+" (its other places are left out)")
	}
	return strings.Join(said, " and ")
}

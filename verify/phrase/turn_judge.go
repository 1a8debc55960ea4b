package phrase

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/chain"
)

// wantedAnswer is what package effect says of the turn that is asked.
func (o *Outcome) wantedAnswer() effect.Answer {
	plus, _ := waysAbout(o.Axis)
	switch {
	case o.Verb == NoTurn:
		return effect.None
	case o.Way == plus:
		return effect.Plus
	}
	return effect.Minus
}

// turns judges which way the model turns. What cannot be told never passes.
func (j *judge) turns(out *mixcore.Output) seen {
	c := j.air.Change(j.before, out)
	answer := c.Answer(j.o.Axis)
	switch {
	case answer == effect.Unsure && j.o.Axis == mixcore.Pitch:
		return seen{got: j.unsure(&c), explain: explained(c.Unplaced, chain.Unclear)}
	case answer == effect.Unsure:
		return seen{got: "cannot be told: it yaws, and by its dihedral and sweep may " + turnWords[j.o.Axis].do + " it either way",
			explain: explained(j.strongest(&c, c.Strongest()), chain.Unclear)}
	case answer == effect.Slight:
		return seen{got: j.slight(&c), explain: explained(j.slightly(&c), chain.Amount)}
	}
	s := seen{passed: answer == j.o.wantedAnswer(), got: j.turnGot(&c, answer)}
	if !s.passed {
		s.explain = j.turnExplained(&c, answer)
	}
	return s
}

// unsure says what nobody can tell from the ground.
func (j *judge) unsure(c *effect.Change) string {
	verb := "moves"
	if len(c.Unplaced) > 1 {
		verb = "move"
	}
	return "cannot be told: the " + j.named(c.Unplaced) + " " + verb + ", and with the downwash at the tail may " + turnWords[j.o.Axis].do + " it either way"
}

// slight says of a turn that it is too little beside another to be one, and too much to
// be none.
func (j *judge) slight(c *effect.Change) string {
	plus, minus := waysAbout(j.o.Axis)
	way := plus
	if c.About(j.o.Axis) < 0 {
		way = minus
	}
	little := turnWords[j.o.Axis].does + " a little " + strings.ToUpper(wayWords[way])
	unsure := effect.Dihedral * math.Abs(c.Yaw)
	if j.o.Axis == mixcore.Pitch {
		unsure = c.PitchUnsure
	}
	if j.o.Axis != mixcore.Yaw && math.Abs(c.About(j.o.Axis)) <= unsure {
		little = "may " + turnWords[j.o.Axis].do + " a little either way"
	}
	return little + ", too little beside the " + turnWords[c.Strongest()].do + " to be said to, and not nothing"
}

// slightly are the parts behind a slight turn.
func (j *judge) slightly(c *effect.Change) []int {
	if parts := j.strongest(c, j.o.Axis); len(parts) > 0 {
		return parts
	}
	return c.Unplaced
}

// strongest are the parts that act about an axis, the strongest first.
func (j *judge) strongest(c *effect.Change, axis mixcore.Axis) []int {
	var parts []int
	for i := range c.Parts {
		if c.Parts[i].About(axis) != 0 {
			parts = append(parts, i)
		}
	}
	strongestFirst(parts, func(i int) float64 { return c.Parts[i].About(axis) })
	return parts
}

// turnGot says what the model does and which parts do it: "rolls LEFT: port
// aileron and starboard aileron roll it left".
func (j *judge) turnGot(c *effect.Change, answer effect.Answer) string {
	verb := turnWords[j.o.Axis]
	got := "does not " + verb.do
	plus, minus := waysAbout(j.o.Axis)
	switch answer {
	case effect.Plus:
		got = verb.does + " " + strings.ToUpper(wayWords[plus])
	case effect.Minus:
		got = verb.does + " " + strings.ToUpper(wayWords[minus])
	}
	mark := ": "
	for _, side := range []struct {
		answer effect.Answer
		way    Way
	}{{effect.Plus, plus}, {effect.Minus, minus}} {
		parts := j.turning(c, side.answer)
		if len(parts) == 0 {
			continue
		}
		word := verb.do
		if len(parts) == 1 {
			word = verb.does
		}
		got += mark + j.named(parts) + " " + word + " it " + wayWords[side.way]
		mark = "; "
	}
	return got
}

// turning are the parts that turn the model one way about the axis asked, by
// their movement alone, the strongest first.
func (j *judge) turning(c *effect.Change, answer effect.Answer) []int {
	var parts []int
	for i := range c.Parts {
		if c.PartAnswer(i, j.o.Axis) == answer {
			parts = append(parts, i)
		}
	}
	strongestFirst(parts, func(i int) float64 { return c.Parts[i].About(j.o.Axis) })
	return parts
}

func strongestFirst(parts []int, strength func(int) float64) {
	slices.SortStableFunc(parts, func(a, b int) int {
		// Two of a pair differ by rounding only: they keep their order.
		x, y := math.Abs(strength(a)), math.Abs(strength(b))
		if math.Abs(x-y) <= Rounding*max(x, y) {
			return 0
		}
		return cmp.Compare(y, x)
	})
}

// turnExplained are the parts that turn the model the wrong way; where none
// does, those that could turn it most and do not.
func (j *judge) turnExplained(c *effect.Change, got effect.Answer) []Explained {
	wanted := j.o.wantedAnswer()
	if wanted == effect.None {
		return explained(j.turning(c, got), chain.Astir)
	}
	wrong := effect.Plus
	if wanted == effect.Plus {
		wrong = effect.Minus
	}
	if parts := j.turning(c, wrong); len(parts) > 0 {
		return explained(parts, chain.Direction)
	}
	return explained(j.idle(c), chain.Stuck)
}

// plainly is a movement, in degrees or percent, that shows what a part is for.
const plainly = 10

// idle are the parts that could turn the model about the axis and do not, the
// strongest first, a degree of a surface held against a percent of a motor or of
// an extra.
func (j *judge) idle(c *effect.Change) []int {
	var parts []int
	alone := map[int]float64{}
	for i := range c.Parts {
		if c.PartAnswer(i, j.o.Axis) != effect.None {
			continue
		}
		if able := j.air.Alone(i, plainly); able.PartAnswer(i, j.o.Axis) != effect.None {
			parts, alone[i] = append(parts, i), able.Parts[i].About(j.o.Axis)
		}
	}
	strongestFirst(parts, func(i int) float64 { return alone[i] })
	return parts
}

// explained are the first parts of a list, with one doubt.
func explained(parts []int, doubt chain.Doubt) []Explained {
	var list []Explained
	for _, i := range parts[:min(len(parts), MostExplained)] {
		list = append(list, Explained{Part: i, Doubt: doubt})
	}
	return list
}

package cause

import (
	"cmp"
	"slices"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/result"
)

// oddsWords say how often people make a mistake.
var oddsWords = map[int]string{1: "seldom", 2: "now and then", 3: "often"}

// mostRepaired is for how many suspects repairs are looked for, and mostAlike for how many
// of those that look the same at every step.
const (
	mostRepaired = 5
	mostAlike    = 3
)

// report writes down what explains what was seen, the likeliest first.
func (c *inquiry) report(r *result.Causes, suspects []int) {
	slices.SortStableFunc(suspects, func(a, b int) int {
		return cmp.Compare(c.mistakes[b].Kind.Odds, c.mistakes[a].Kind.Odds)
	})
	groups := c.alike(suspects)
	var heads []int
	for _, group := range groups {
		r.Suspects = append(r.Suspects, c.suspect(group))
		heads = append(heads, group[0])
	}
	switch len(groups) {
	case 0:
		r.Verdict = result.NoCause
		return
	case 1:
		r.Verdict = result.OneCause
	default:
		r.Verdict = result.SeveralCause
		r.Next = c.next(heads, c.text)
	}
	r.Script = c.asked()
	for _, group := range groups[:min(mostRepaired, len(groups))] {
		for k, i := range group[:min(mostAlike, len(group))] {
			r.Repairs = append(r.Repairs, c.repairs(i, k == 0)...)
			r.Edits = append(r.Edits, c.edit(i))
		}
	}
	r.Repairs = eachOnce(r.Repairs)
}

// suspect is a mistake, the first of those that look the same.
func (c *inquiry) suspect(group []int) result.Suspect {
	wrong := &c.mistakes[group[0]]
	s := result.Suspect{Kind: wrong.Kind.Code, Text: wrong.Text, Place: at(wrong.Place()), Odds: oddsWords[wrong.Kind.Odds]}
	for _, other := range group[1:] {
		s.Alike = append(s.Alike, c.mistakes[other].Text)
	}
	return s
}

// eachOnce puts the changes that leave the file as it is first, and leaves out what stands
// there twice: what takes one mistake back may make up for another.
func eachOnce(all []result.Repair) (list []result.Repair) {
	slices.SortStableFunc(all, func(a, b result.Repair) int {
		switch {
		case a.AsFile == b.AsFile:
			return 0
		case a.AsFile:
			return -1
		}
		return 1
	})
	for _, r := range all {
		if !slices.ContainsFunc(list, func(o result.Repair) bool { return o.Change == r.Change }) {
			list = append(list, r)
		}
	}
	return list
}

// asked is how the script stands on the set-up as written.
func (c *inquiry) asked() (a result.Asked) {
	if c.trial == nil {
		return a
	}
	return result.Asked{Checks: c.trial.Len(), Failing: len(c.failing(c.m))}
}

// edit is what would make the airframe file say what a model with a mistake does.
func (c *inquiry) edit(wrong int) result.FileEdit {
	m := &c.mistakes[wrong]
	e := result.FileEdit{Edit: m.Change, Place: at(m.Place())}
	if c.trial != nil {
		variant, _ := m.Variant(c.m)
		e.Failing = len(c.failing(variant))
	}
	return e
}

func at(p diag.Place) result.Place { return result.Place{File: p.File, Line: p.Line, Column: p.Column} }

// alike puts mistakes together that no step tells apart for sure.
func (c *inquiry) alike(mistakes []int) (groups [][]int) {
	t := c.table()
	for _, i := range mistakes {
		same := slices.IndexFunc(groups, func(group []int) bool {
			return !slices.ContainsFunc(group, func(other int) bool { return c.apart(t, i, other) })
		})
		if same < 0 {
			groups = append(groups, []int{i})
			continue
		}
		groups[same] = append(groups[same], i)
	}
	return groups
}

func (c *inquiry) apart(t *table.Table, a, b int) bool {
	for step := range t.Steps {
		if t.Apart(c.o.Look, a, b, step) {
			return true
		}
	}
	return false
}

// next is the step that tells mistakes apart best, or nil if none does; say is how each is
// called.
func (c *inquiry) next(candidates []int, say func(int) string) *result.NextStep {
	t := c.table()
	step, groups := t.Best(c.o.Look, candidates, c.done...)
	if step < 0 {
		return nil
	}
	n := &result.NextStep{Step: walk.Say(t, c.o.Look, step), Left: c.depth(candidates)}
	for _, group := range groups {
		a := result.NextAnswer{See: c.see(step, group[0], groups)}
		for _, i := range group {
			a.Suspects = append(a.Suspects, say(i))
		}
		n.Answers = append(n.Answers, a)
	}
	return n
}

func (c *inquiry) text(i int) string {
	if i == table.None {
		return "nothing is wrong"
	}
	return c.mistakes[i].Text
}

// see is what is seen of a mistake in a step, of the parts that tell the groups apart.
func (c *inquiry) see(step, of int, groups [][]int) (list []string) {
	t := c.table()
	for part := range c.m.Setup.Parts {
		p := &c.m.Setup.Parts[part]
		mine := t.Move(of, step, part)
		tells := slices.ContainsFunc(groups, func(group []int) bool {
			return c.o.Look.Differ(p, mine, t.Move(group[0], step, part))
		})
		if tells {
			list = append(list, walk.SayMove(t, c.o.Look, step, of, part))
		}
	}
	return list
}

// mostAsked is for how many candidates the number of steps is worked out.
const mostAsked = 200

// depth is how many steps name a mistake among candidates at most; 0 where there are too
// many to say.
func (c *inquiry) depth(candidates []int) int {
	if len(candidates) > mostAsked {
		return 0
	}
	t := c.table()
	known := map[string]int{}
	var below func(list []int) int
	below = func(list []int) int {
		key := keyOf(list)
		if n, ok := known[key]; ok {
			return n
		}
		step, groups := t.Best(c.o.Look, list, c.done...)
		n := 0
		if step >= 0 {
			for _, group := range groups {
				n = max(n, 1+below(group))
			}
		}
		known[key] = n
		return n
	}
	return below(candidates)
}

func keyOf(list []int) string {
	key := make([]byte, 0, 4*len(list))
	for _, i := range list {
		key = append(key, byte(i), byte(i>>8), byte(i>>16), ',')
	}
	return string(key)
}

package table

import (
	"cmp"
	"slices"

	"example.com/hingeline/verify/faults/sight"
)

// mostReports is how many different reports of one step are told apart; beyond them the
// last parts are not looked at.
const mostReports = 512

// set is a set of small numbers.
type set []uint64

func newSet(n int) set       { return make(set, (n+63)/64) }
func (s set) has(i int) bool { return s[i/64]>>(i%64)&1 != 0 }
func (s set) put(i int)      { s[i/64] |= 1 << (i % 64) }

// and is what two sets share, and whether that is nothing, and whether it is all of s.
func (s set) and(o set) (both set, none, all bool) {
	both, none, all = make(set, len(s)), true, true
	for i := range s {
		both[i] = s[i] & o[i]
		none = none && both[i] == 0
		all = all && both[i] == s[i]
	}
	return both, none, all
}

// reports are what a person can say of a step, every part one way or the other, each as
// the set of those of the candidates that may have looked so, by their place in the
// list. Every candidate is in one at least, and no set holds two that are surely apart.
func (t *Table) reports(look sight.Look, of []int, step int) []set {
	whole := newSet(len(of))
	for i := range of {
		whole.put(i)
	}
	groups := []set{whole}
	for part := range t.right {
		columns := make([]*column, len(of))
		touched := false
		for i, c := range of {
			columns[i] = t.find(c, part)
			touched = touched || columns[i] != &t.right[part]
		}
		if !touched {
			continue
		}
		for _, answers := range t.answers(look, part, columns, step) {
			if groups = refined(groups, answers); len(groups) > mostReports {
				return groups
			}
		}
	}
	return groups
}

// answers are the questions that a part answers in a step, each as the sets of columns
// that may have given one answer.
func (t *Table) answers(look sight.Look, part int, columns []*column, step int) [][]set {
	p := &t.Model.Setup.Parts[part]
	moves := make([]sight.Move, len(columns))
	for i, c := range columns {
		moves[i] = c.moveIn(step)
	}
	list := [][]set{either(moves, func(i int) answers { return answers(look.Ways(p, moves[i])) })}
	if p.Motor != nil {
		list = append(list,
			either(moves, func(i int) answers { return turning(p, moves[i].From) }),
			either(moves, func(i int) answers { return turning(p, moves[i].To) }))
	}
	list = append(list, either(moves, func(i int) answers {
		switch {
		case columns[i] == &t.right[part]:
			return inTime
		case columns[i].lateBy(step) >= visible(look, p):
			return late
		}
		return inTime | late // its way there is not known
	}))
	if look.Ruler {
		accuracy := accuracyOf(look, p)
		list = append(list,
			within(moves, accuracy, func(i int) float64 { return moves[i].From }),
			within(moves, accuracy, func(i int) float64 { return moves[i].To }))
	}
	return list
}

// either are the answers to a question that has a few: who might give several is in the
// set of each. Where one answer fits all, the question tells nothing: nil.
func either(moves []sight.Move, may func(int) answers) []set {
	any, all := answers(0), ^answers(0)
	for i := range moves {
		any, all = any|may(i), all&may(i)
	}
	if all != 0 {
		return nil
	}
	var sets []set
	for answer := answers(1); answer != 0; answer <<= 1 {
		if any&answer == 0 {
			continue
		}
		who := newSet(len(moves))
		for i := range moves {
			if may(i)&answer != 0 {
				who.put(i)
			}
		}
		sets = append(sets, who)
	}
	return sets
}

// within are the readings of a ruler, each as all whose places are less than its
// accuracy apart.
func within(moves []sight.Move, accuracy float64, at func(int) float64) []set {
	order := make([]int, len(moves))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(at(a), at(b)) })
	if at(order[len(order)-1])-at(order[0]) < accuracy {
		return nil
	}
	var sets []set
	end := 0
	for start := range order {
		if end == len(order) {
			break
		}
		if at(order[end])-at(order[start]) >= accuracy {
			continue // all from here on were in the last reading
		}
		for end < len(order) && at(order[end])-at(order[start]) < accuracy {
			end++
		}
		reading := newSet(len(moves))
		for _, i := range order[start:end] {
			reading.put(i)
		}
		sets = append(sets, reading)
	}
	return sets
}

// refined parts every group by the answers to one more question.
func refined(groups, answers []set) []set {
	if answers == nil {
		return groups
	}
	var list []set
	for _, g := range groups {
		var parts []set
		whole := false
		for _, a := range answers {
			both, none, all := g.and(a)
			if all {
				whole = true
				break
			}
			if !none {
				parts = append(parts, both)
			}
		}
		if whole {
			list = append(list, g)
			continue
		}
		list = append(list, largest(parts)...)
	}
	return list
}

// largest drops sets that another holds.
func largest(sets []set) []set {
	var list []set
	for i, s := range sets {
		held := slices.ContainsFunc(sets[:i], func(o set) bool { _, _, all := s.and(o); return all }) ||
			slices.ContainsFunc(sets[i+1:], func(o set) bool { _, _, all := s.and(o); return all && !slices.Equal(s, o) })
		if !held {
			list = append(list, s)
		}
	}
	return list
}

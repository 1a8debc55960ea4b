package cause

import (
	"cmp"
	"slices"

	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/result"
)

// How much may speak against a mistake that is still named: modelling choices, no source.
// Somebody who looks at many things errs now and then; a mistake that explains less than
// half of what was odd explains nothing.
const (
	fewAgainst = 2 // answers, if the mistake explains something at all
	mostPart   = 4 // or one in so many of all, if the mistake explains half of what was odd

	aboutAsMany = 10 // less than the best by at most one in so many: what is made more often comes first
)

// near is one mistake with what speaks against it.
type near struct {
	mistake int
	against []result.Against
}

// nearly are the mistakes that explain all but a few answers. odd are those of all that
// speak against the set-up as written. Where a mistake explains everything, only those count
// that are made more often than above says, and explain nearly all.
func (c *inquiry) nearly(list []near, odd []result.Against, all, above int) []near {
	list = slices.DeleteFunc(list, func(n near) bool {
		k := len(n.against)
		some := k <= fewAgainst && above == 0 && explainsAny(odd, n.against)
		most := 2*k <= len(odd) && mostPart*k <= all
		return k == 0 || c.mistakes[n.mistake].Kind.Odds <= above || !some && !most
	})
	// An answer that speaks against a mistake counts for as much as one word of how often
	// people make it.
	weight := func(n near) int { return len(n.against) - c.mistakes[n.mistake].Kind.Odds }
	slices.SortStableFunc(list, func(a, b near) int {
		return cmp.Or(cmp.Compare(weight(a), weight(b)), cmp.Compare(len(a.against), len(b.against)))
	})
	return c.commonestFirst(list, all)
}

// commonestFirst puts those that explain nearly as many answers as the best before the others,
// in the order of how often people make them.
func (c *inquiry) commonestFirst(list []near, all int) []near {
	most := 0
	for _, n := range list {
		most = max(most, all-len(n.against))
	}
	rank := func(n near) int {
		if aboutAsMany*(all-len(n.against)) < (aboutAsMany-1)*most {
			return 0
		}
		return c.mistakes[n.mistake].Kind.Odds
	}
	slices.SortStableFunc(list, func(a, b near) int { return cmp.Compare(rank(b), rank(a)) })
	return list
}

// explainsAny says whether one of the odd answers does not speak against a mistake.
func explainsAny(odd, against []result.Against) bool {
	return slices.ContainsFunc(odd, func(o result.Against) bool {
		return !slices.ContainsFunc(against, func(a result.Against) bool { return a.Step == o.Step && a.Place == o.Place })
	})
}

// commonest is how often people make the likeliest of some mistakes.
func (c *inquiry) commonest(mistakes []int) (odds int) {
	for _, i := range mistakes {
		odds = max(odds, c.mistakes[i].Kind.Odds)
	}
	return odds
}

// sayNear says them; twins are those that look exactly as one does everywhere, itself
// among them.
func (c *inquiry) sayNear(list []near, all int, twins func(int) []int) (said []result.Near) {
	for _, n := range list {
		group := twins(n.mistake)
		slices.SortStableFunc(group, func(a, b int) int {
			return cmp.Compare(c.mistakes[b].Kind.Odds, c.mistakes[a].Kind.Odds)
		})
		m := &c.mistakes[group[0]]
		one := result.Near{Suspect: c.suspect(group), Undo: m.Undo, OnModel: m.OnModel, Explains: all - len(n.against), Of: all, Against: n.against}
		said = append(said, one)
	}
	return said
}

// near are the mistakes that explain all but a few of a session's answers.
func (s *Session) near(exact []int) []result.Near {
	var list []near
	for _, i := range s.c.table().InQuestion(s.c.o.Look) {
		if i != table.None {
			list = append(list, near{s.commonestTwin(i), s.against(i)})
		}
	}
	all := len(s.said)
	list = s.c.nearly(list, s.against(table.None), all, s.c.commonest(exact))
	said := s.c.sayNear(list, all, func(i int) []int { return s.c.table().Alike(s.c.o.Look, i) })
	for i := range said {
		said[i].Lost = s.lost(said[i].Against)
	}
	return said
}

// commonestTwin is of the mistakes that look exactly as one does that which is made most
// often.
func (s *Session) commonestTwin(mistake int) int {
	twins := s.c.table().Alike(s.c.o.Look, mistake)
	return slices.MaxFunc(twins, func(a, b int) int {
		return cmp.Compare(s.c.mistakes[a].Kind.Odds, s.c.mistakes[b].Kind.Odds)
	})
}

// against are the answers that cannot be with a mistake made, or with None.
func (s *Session) against(candidate int) (list []result.Against) {
	for _, a := range s.said {
		one := result.Against{Step: a.number}
		for k := range a.seen {
			if !s.fits(candidate, a.step, &a.seen[k]) {
				one.What = append(one.What, s.c.m.Setup.Parts[a.seen[k].Part].Name)
			}
		}
		if one.What != nil {
			list = append(list, one)
		}
	}
	return list
}

// lost says whether all that speaks against a mistake was seen when the signal was lost.
func (s *Session) lost(all []result.Against) bool {
	return !slices.ContainsFunc(all, func(one result.Against) bool {
		i := slices.IndexFunc(s.said, func(a answered) bool { return a.number == one.Step })
		return !s.c.table().Steps[s.said[i].step].To.SignalLost
	})
}

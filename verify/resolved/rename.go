package resolved

import (
	"fmt"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// rename is a thing that is called otherwise now, and the path under which it is told.
type rename struct {
	under string
	Difference
}

// translator finds what is called otherwise in the newer of two models.
type translator struct {
	old, new *airframes.Model
	s        *mixcore.Setup // the older set-up with the newer names
	found    []rename
}

// translated is the older set-up with the names of the newer one wherever a thing is in
// both, so that one thing with another name is one difference, and not one at each place
// where the name is used. A thing is the same if it has the same name, or else if all that
// it says is the same.
func translated(old, new *airframes.Model) (*mixcore.Setup, []rename) {
	s := old.Setup.Clone()
	for i := range s.Controls {
		s.Controls[i].Detents, s.Controls[i].Positions = slices.Clone(s.Controls[i].Detents), slices.Clone(s.Controls[i].Positions)
	}
	t := &translator{old: old, new: new, s: &s}
	is := newBuilder(new, &new.Setup)
	t.pair(kind{
		sort: "control", before: len(s.Controls), after: len(new.Setup.Controls), fold: airframes.FoldName,
		was: func(i int) *string { return &s.Controls[i].Name }, is: func(i int) string { return new.Setup.Controls[i].Name },
		wasNode: func(i int) *node { return newBuilder(old, &s).control(i) }, isNode: is.control, same: t.positions,
	})
	t.pair(kind{
		sort: "phase", before: len(s.Phases), after: len(new.Setup.Phases), fold: airframes.FoldName,
		was: func(i int) *string { return &s.Phases[i].Name }, is: func(i int) string { return new.Setup.Phases[i].Name },
		wasNode: func(i int) *node { return newBuilder(old, &s).phase(i) }, isNode: is.phase,
	})
	t.pair(kind{
		sort: "demand", before: len(s.Demands), after: len(new.Setup.Demands), fold: airframes.FoldName,
		was: func(i int) *string { return &s.Demands[i].Name }, is: func(i int) string { return new.Setup.Demands[i].Name },
		wasNode: func(i int) *node { return newBuilder(old, &s).demand(i) }, isNode: is.demand,
	})
	t.channels(is)
	t.pair(kind{
		sort: "part", before: len(s.Parts), after: len(new.Setup.Parts), fold: airframes.FoldPart,
		was: func(i int) *string { return &s.Parts[i].Name }, is: func(i int) string { return new.Setup.Parts[i].Name },
		wasNode: func(i int) *node { return newBuilder(old, &s).part(i) }, isNode: is.part,
	})
	return &s, t.found
}

// InWordsOf is a model that does what one model does, with the names of another one
// wherever a thing is in both: what the scripts of the other can be held against.
func InWordsOf(m, other *airframes.Model) *airframes.Model {
	s, _ := translated(m, other)
	renamed, faults := m.With(func(edited *mixcore.Setup) { *edited = *s })
	if faults != nil {
		panic("resolved: another name cannot break a set-up")
	}
	return renamed
}

// kind is one kind of thing in both set-ups.
type kind struct {
	sort          string
	before, after int
	fold          func(string) string
	was           func(int) *string
	is            func(int) string
	wasNode       func(int) *node
	isNode        func(int) *node
	same          func(was, is int) // what to do with two that are one; may be nil
}

// pair gives things of the older set-up the names of the newer one.
func (t *translator) pair(k kind) {
	taken := make([]bool, k.after)
	var open []int
	take := func(was, is int) {
		taken[is] = true
		*k.was(was) = k.is(is)
		if k.same != nil {
			k.same(was, is)
		}
	}
	for i := range k.before {
		at := -1
		for n := range k.after {
			if !taken[n] && k.fold(*k.was(i)) == k.fold(k.is(n)) {
				at = n
				break
			}
		}
		if at < 0 {
			open = append(open, i)
			continue
		}
		take(i, at)
	}
	for _, i := range open {
		for n := range k.after {
			if taken[n] {
				continue
			}
			was, is := k.wasNode(i), k.isNode(n)
			if was.content() != is.content() {
				continue
			}
			t.found = append(t.found, rename{Difference: Difference{
				Text: fmt.Sprintf("%s is called %s now", was.title, k.is(n)), Path: is.key, Was: k.fold(*k.was(i)), Is: k.fold(k.is(n)), Place: is.place,
			}})
			take(i, n)
			break
		}
	}
}

// positions gives the positions of a switch and the detents of a lever, of which nothing
// else has changed, the newer names.
func (t *translator) positions(was, is int) {
	a, b := &t.s.Controls[was], &t.new.Setup.Controls[is]
	place := diag.Place{}
	if is < len(t.new.Places.Controls) {
		place = t.new.Places.Controls[is]
	}
	told := func(before, after string) {
		if airframes.FoldName(before) != airframes.FoldName(after) {
			t.found = append(t.found, rename{under: "controls/" + airframes.FoldName(b.Name) + "/", Difference: Difference{
				Text: fmt.Sprintf("%s: the position %s is called %s now", b.Name, before, after), Path: "controls/" + airframes.FoldName(b.Name) + "/positions",
				Was: airframes.FoldName(before), Is: airframes.FoldName(after), Place: place,
			}})
		}
	}
	has := func(list []string, name string) bool {
		return slices.ContainsFunc(list, func(other string) bool { return airframes.FoldName(other) == airframes.FoldName(name) })
	}
	before := slices.Clone(a.Positions)
	for i := range a.Positions {
		for _, name := range b.Positions {
			if airframes.FoldName(name) == airframes.FoldName(a.Positions[i]) {
				a.Positions[i] = name
			}
		}
		if len(before) == len(b.Positions) && !has(b.Positions, before[i]) && !has(before, b.Positions[i]) {
			told(before[i], b.Positions[i])
			a.Positions[i] = b.Positions[i]
		}
	}
	var names, now []string
	for _, d := range a.Detents {
		names = append(names, d.Name)
	}
	for _, d := range b.Detents {
		now = append(now, d.Name)
	}
	for i := range a.Detents {
		d := &a.Detents[i]
		for _, other := range b.Detents {
			switch {
			case airframes.FoldName(other.Name) == airframes.FoldName(names[i]):
				d.Name = other.Name
			case other.At == d.At && !has(now, names[i]) && !has(names, other.Name):
				told(names[i], other.Name)
				d.Name = other.Name
			}
		}
	}
}

// channels gives channels that are on another output now, and otherwise the same, the
// newer number.
func (t *translator) channels(is *builder) {
	number := func(list []mixcore.Channel, n int) bool {
		return slices.ContainsFunc(list, func(c mixcore.Channel) bool { return c.Number == n })
	}
	taken := map[int]bool{}
	for i := range t.s.Channels {
		c := &t.s.Channels[i]
		if number(t.new.Setup.Channels, c.Number) {
			continue
		}
		was := newBuilder(t.old, t.s).channel(i)
		for n := range t.new.Setup.Channels {
			other := &t.new.Setup.Channels[n]
			if taken[other.Number] || number(t.old.Setup.Channels, other.Number) {
				continue
			}
			now := is.channel(n)
			if was.content() != now.content() {
				continue
			}
			t.found = append(t.found, rename{Difference: Difference{
				Text: fmt.Sprintf("%s is %s now", was.title, now.title), Path: now.key, Was: fmt.Sprint(c.Number), Is: fmt.Sprint(other.Number),
				Place: now.place, Parts: now.bears,
			}})
			taken[other.Number] = true
			c.Number = other.Number
			break
		}
	}
}

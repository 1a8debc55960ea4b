package table

import (
	"math"
	"math/bits"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
)

// Apart says whether two mistakes, or None and a mistake, surely look different in a
// step. Where somebody might see the same of both, it is false.
func (t *Table) Apart(look sight.Look, a, b, step int) bool {
	return t.apart(look, t.view(look), a, b, step)
}

func (t *Table) apart(look sight.Look, v *view, a, b, step int) bool {
	return a != b && t.any(v, a, b, step, surely, surely, func(p *mixcore.Part, one, other sight.Move) bool {
		return look.Differ(p, one, other)
	})
}

// rulesOut says whether somebody who sees a mistake in a step, or None, and leaves out
// what nobody could be sure of, rules out another.
func (t *Table) rulesOut(look sight.Look, v *view, seen, other, step int) bool {
	return seen != other && t.any(v, seen, other, step, asSeen, asOther, func(p *mixcore.Part, one, other sight.Move) bool {
		return rules(look, p, one, other)
	})
}

// telling is what a part tells of a mistake that alone touches it, in a kind of step.
type telling uint8

const (
	surely  telling = 1 << iota // the model as it should be surely looks different
	asSeen                      // who sees the mistake rules out that all is as it should be
	asOther                     // who sees that all is as it should be rules out the mistake
)

// any goes through the parts that either of two touches, both lists ascending, for one
// that tells. Of a part that only one of them touches, the other leaves it as it should
// be.
func (t *Table) any(v *view, a, b, step int, onlyA, onlyB telling, both func(p *mixcore.Part, a, b sight.Move) bool) bool {
	ones, others := t.touchedBy(a), t.touchedBy(b)
	i, k := 0, 0
	for i < len(ones) || k < len(others) {
		switch {
		case k == len(others) || i < len(ones) && ones[i].part < others[k].part:
			if v.tells[a][i][ones[i].classes.step[step]]&onlyA != 0 {
				return true
			}
			i++
		case i == len(ones) || others[k].part < ones[i].part:
			if v.tells[b][k][others[k].classes.step[step]]&onlyB != 0 {
				return true
			}
			k++
		default:
			if both(&t.Model.Setup.Parts[ones[i].part], ones[i].moveIn(step), others[k].moveIn(step)) {
				return true
			}
			i++
			k++
		}
	}
	return false
}

// rules says whether somebody who sees one movement of a part, and says of it only what
// nobody would doubt, rules out another.
func rules(look sight.Look, p *mixcore.Part, seen, other sight.Move) bool {
	said := func(a, b answers) bool { return bits.OnesCount8(uint8(a)) == 1 && a&b == 0 }
	if said(answers(look.Ways(p, seen)), answers(look.Ways(p, other))) {
		return true
	}
	if p.Motor != nil && (said(turning(p, seen.From), turning(p, other.From)) || said(turning(p, seen.To), turning(p, other.To))) {
		return true
	}
	accuracy := accuracyOf(look, p)
	return look.Ruler && (math.Abs(seen.From-other.From) >= accuracy || math.Abs(seen.To-other.To) >= accuracy)
}

// told is what a part tells of a mistake in a kind of step.
func (t *Table) told(look sight.Look, c *column, kind int) (tells telling) {
	p := &t.Model.Setup.Parts[c.part]
	wrong, right := c.move(&c.classes.kinds[kind]), c.wanted[kind]
	if c.late != nil && c.late[kind] >= visible(look, p) {
		return surely | asSeen | asOther
	}
	if t.givesAway(look, c, kind) {
		tells |= surely
	}
	if rules(look, p, wrong, right) {
		tells |= asSeen
	}
	if rules(look, p, right, wrong) {
		tells |= asOther
	}
	return tells
}

func (t *Table) touchedBy(mistake int) []column {
	if mistake == None {
		return nil
	}
	return t.wrong[mistake]
}

// Shows says at which steps each mistake is surely noticed: a row of bits for each
// mistake, step i in bit i%64 of word i/64.
func (t *Table) Shows(look sight.Look) [][]uint64 {
	words := t.moments.words()
	bits := make([]uint64, words*len(t.wrong))
	rows := make([][]uint64, len(t.wrong))
	for m := range t.wrong {
		rows[m] = bits[m*words : (m+1)*words : (m+1)*words]
		for i := range t.wrong[m] {
			t.shows(look, &t.wrong[m][i], rows[m])
		}
	}
	return rows
}

// shows adds the steps at which one part gives a mistake away.
func (t *Table) shows(look sight.Look, c *column, row []uint64) {
	for i := range c.classes.kinds {
		if t.givesAway(look, c, i) {
			for w, word := range c.classes.among[i] {
				row[w] |= word
			}
		}
	}
}

// givesAway says whether one part gives a mistake away in a kind of step.
func (t *Table) givesAway(look sight.Look, c *column, kind int) bool {
	p := &t.Model.Setup.Parts[c.part]
	if move := c.move(&c.classes.kinds[kind]); move != c.wanted[kind] && look.Differ(p, c.wanted[kind], move) {
		return true
	}
	return c.late != nil && c.late[kind] >= visible(look, p)
}

// ShowsAnywhere says whether a mistake is surely noticed at some step.
func (t *Table) ShowsAnywhere(look sight.Look, mistake int) bool {
	row := make([]uint64, t.moments.words())
	for i := range t.wrong[mistake] {
		t.shows(look, &t.wrong[mistake][i], row)
	}
	return slices.ContainsFunc(row, func(word uint64) bool { return word != 0 })
}

// Gives are the parts, ascending, that give some mistake away in a step.
func (t *Table) Gives(look sight.Look, step int) []int {
	gives := make([]bool, len(t.right))
	for m := range t.wrong {
		for i := range t.wrong[m] {
			c := &t.wrong[m][i]
			gives[c.part] = gives[c.part] || t.givesAway(look, c, int(c.classes.step[step]))
		}
	}
	var parts []int
	for p, does := range gives {
		if does {
			parts = append(parts, p)
		}
	}
	return parts
}

// Furthest is the part that a mistake moves furthest away from where it should be, of
// all steps and where everything has come to rest, and how far: degrees or percent; -1
// if it moves nothing elsewhere.
func (t *Table) Furthest(mistake int) (part int, most float64) {
	part = -1
	for i := range t.wrong[mistake] {
		c := &t.wrong[mistake][i]
		right := &t.right[c.part]
		for class, pose := range c.classes.first {
			if away := math.Abs(c.place[class] - right.place[right.classes.pose[pose]]); away > most {
				part, most = c.part, away
			}
		}
	}
	return part, most
}

package table

import (
	"math"
	"slices"

	"example.com/hingeline/verify/faults/sight"
)

// Apart says whether two mistakes, or None and a mistake, surely look different in a
// step. Where somebody might see the same of both, it is false.
func (t *Table) Apart(look sight.Look, a, b, step int) bool {
	return t.apart(look, t.view(look), a, b, step)
}

// apart goes through the parts that either touches, both lists ascending. Of a part that
// only one of them touches, the other leaves it as it should be.
func (t *Table) apart(look sight.Look, v *view, a, b, step int) bool {
	if a == b {
		return false
	}
	ones, others := t.touchedBy(a), t.touchedBy(b)
	i, k := 0, 0
	for i < len(ones) || k < len(others) {
		switch {
		case k == len(others) || i < len(ones) && ones[i].part < others[k].part:
			if v.shown[a][i][ones[i].classes.step[step]] {
				return true
			}
			i++
		case i == len(ones) || others[k].part < ones[i].part:
			if v.shown[b][k][others[k].classes.step[step]] {
				return true
			}
			k++
		default:
			if look.Differ(&t.Model.Setup.Parts[ones[i].part], others[k].moveIn(step), ones[i].moveIn(step)) {
				return true
			}
			i++
			k++
		}
	}
	return false
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
	k := &c.classes.kinds[kind]
	return look.Differ(p, t.right[c.part].moveIn(int(k.step)), c.move(k)) ||
		c.late != nil && c.late[kind] >= visible(look, p)
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

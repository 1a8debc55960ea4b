package table

import "example.com/hingeline/verify/faults/sight"

// InQuestion are None and the mistakes that show at some step; of those that look the
// same at every step the first: see Alike.
func (t *Table) InQuestion(look sight.Look) []int { return t.sorts(t.view(look)) }

// Alike are the mistakes that look exactly as one does at every step, itself among them;
// of None those that look as they should.
func (t *Table) Alike(look sight.Look, mistake int) (list []int) {
	v := t.view(look)
	for m := range t.wrong {
		if t.faults[m] != nil {
			continue
		}
		hidden := t.hidden(v, m)
		if mistake == None && hidden || mistake != None && !hidden && v.twin[m] == v.twin[mistake] {
			list = append(list, m)
		}
	}
	return list
}

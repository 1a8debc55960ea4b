package serve

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
)

// blame is what the checks that fail say of a part that they name.
type blame string

// What they say, the worst first.
const (
	fails        blame = "fails"    // a check of it alone fails
	oneOf        blame = "one of"   // it or another is wrong, and it is not known which
	perhaps      blame = "perhaps"  // another is wrong, and it is not known whether it is too
	comparedWith blame = "compared" // it is held against another that is wrong, and what is asked of it alone passes
)

// mark is what is said of one part.
type mark struct {
	kind blame
	with []int // oneOf: all of them, with the part; perhaps and comparedWith: those that fail
}

// mark says of a part what the checks that fail say of it. Two parts that are compared are
// not both wrong for that: the one that fails by itself is, and where none does it is not
// known which.
func (f *failures) mark(part int) mark {
	if len(f.of[part]) > 0 {
		return mark{kind: fails}
	}
	with := map[blame][]int{}
	for i := range f.asked {
		a := &f.asked[i]
		all := a.named()
		if !slices.Contains(all, part) {
			continue
		}
		guilty, _ := f.apart(all)
		switch {
		case len(guilty) == 0:
			with[oneOf] = append(with[oneOf], all...)
		case a.compares() && f.passed[part]:
			with[comparedWith] = append(with[comparedWith], guilty...)
		default:
			with[perhaps] = append(with[perhaps], guilty...)
		}
	}
	for _, kind := range []blame{oneOf, perhaps, comparedWith} {
		if list := with[kind]; len(list) > 0 {
			slices.Sort(list)
			return mark{kind, slices.Compact(list)}
		}
	}
	return mark{}
}

// apart is some parts, told apart by whether a check of the part alone fails.
func (f *failures) apart(parts []int) (guilty, other []int) {
	for _, part := range parts {
		if len(f.of[part]) > 0 {
			guilty = append(guilty, part)
		} else {
			other = append(other, part)
		}
	}
	return guilty, other
}

// marked are the parts of which one thing is said.
func (f *failures) marked(kind blame) (list []int) {
	for i := range f.of {
		if f.mark(i).kind == kind {
			list = append(list, i)
		}
	}
	return list
}

// markSaid is a part that checks which fail name, as the page shows it.
type markSaid struct {
	Part  int    `json:"part"`
	Fails bool   `json:"fails"` // a check of it alone fails
	Word  string `json:"word"`  // "✗ FAILS", "? ONE OF 1, 7", "? PERHAPS TOO", "↔ COMPARED WITH 1"
	short string // the same in a picture; empty of one that fails
	Says  string `json:"says"` // the same in a sentence
}

// marks are all parts that checks which fail name. Numbers are those on the page, by part.
func (f *failures) marks(m *airframes.Model, number func(part int) int) (list []markSaid) {
	for i := range f.of {
		one := f.mark(i)
		var numbers, others []string
		for _, part := range one.with {
			n := fmt.Sprint(number(part))
			numbers = append(numbers, n)
			if part != i {
				others = append(others, n)
			}
		}
		names := strings.Join(partNames(m, one.with), ", ")
		switch one.kind {
		case fails:
			list = append(list, markSaid{i, true, "✗ FAILS", "", "A check of it fails."})
		case oneOf:
			list = append(list, markSaid{i, false, "? ONE OF " + these(numbers), "? OR " + these(others), "At least one of these is wrong, and the checks do not tell which: " + names + "."})
		case perhaps:
			list = append(list, markSaid{i, false, "? PERHAPS TOO", "? TOO", "A check fails that names it beside what fails by itself: " + names + ". It may be wrong too."})
		case comparedWith:
			list = append(list, markSaid{i, false, "↔ COMPARED WITH " + these(numbers), "↔ WITH " + these(others), "Only compared with what fails: " + names + ". What is asked of it alone passes."})
		}
	}
	return list
}

// these are a few numbers, or that there are more.
func these(numbers []string) string {
	if len(numbers) > mostNamed {
		return "SEVERAL"
	}
	return strings.Join(numbers, ", ")
}

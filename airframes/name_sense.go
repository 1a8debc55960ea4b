package airframes

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// codeAgainstName is of a side or axis that contradicts a name.
const codeAgainstName = "side-against-name"

// alphabets are those whose letters can be taken for one another.
var alphabets = []struct {
	called  string
	letters *unicode.RangeTable
}{{"Latin", unicode.Latin}, {"Greek", unicode.Greek}, {"Cyrillic", unicode.Cyrillic}}

// mixedAlphabets says what is wrong with a name whose letters are of two
// alphabets: it looks like another name and is not the same.
func mixedAlphabets(name string) (message, hint string) {
	first := ""
	for _, r := range name {
		for _, a := range alphabets {
			switch {
			case !unicode.Is(a.letters, r):
			case first == "":
				first = a.called
			case first != a.called:
				return fmt.Sprintf("%s mixes letters of two alphabets: after %s ones comes %q, which is %s", quoted(name), first, r, a.called),
					"type it anew in one alphabet: letters that look alike are not the same"
			}
		}
	}
	return "", ""
}

// placeWords are the words by which sentences say where a stick or lever is, so
// that no position or detent may be called so; the number is where a lever
// stands then, -1 if it is said of sticks only.
var placeWords = map[string]mixcore.Percent{
	"full": 100, "fully": 100, "half": 50, "quarter": 25,
	"left": -1, "right": -1, "back": -1, "forward": -1,
	"centred": -1, "centered": -1, "centre": -1, "center": -1, "neutral": -1,
}

// checkPosition reports a position of a switch whose name sentences need.
func (r *reader) checkPosition(name, what string, at diag.Place) {
	if _, taken := placeWords[FoldName(name)]; taken {
		r.fail(at, codeReserved, "call it by what it does, or mid",
			"a position of %s is called %s, a word by which sentences say where a stick is", what, quoted(name))
	}
}

// checkDetent reports a detent whose name sentences need for another place.
func (r *reader) checkDetent(detent mixcore.Detent, at diag.Place) {
	stands, taken := placeWords[FoldName(detent.Name)]
	switch {
	case !taken || stands == detent.At:
	case stands < 0:
		r.fail(at, codeReserved, "call it by what it does, or mid",
			"a detent is called %s, a word by which sentences say where a stick is", quoted(detent.Name))
	default:
		r.fail(at, codeReserved, "call it by what it does, or put it at "+inPercent.written(float64(stands)),
			"detent %s stands at %s, but sentences take the word for %s", quoted(detent.Name), inPercent.show(float64(detent.At)), inPercent.show(float64(stands)))
	}
}

// checkAxisInName reports a name of a stick or trim that has the word of
// another axis in it, and not that of its own.
func (r *reader) checkAxisInName(name, what string, axis mixcore.Axis, at diag.Place) {
	if axis == mixcore.NoAxis {
		return
	}
	own := axisWords[axis-1]
	said := strings.Fields(FoldName(name))
	if slices.Contains(said, own) {
		return
	}
	for _, word := range said {
		if slices.Contains(axisWords, word) {
			r.fail(at, codeAgainstName, "change the name or the axis", "%s is called %s, but its axis is %s", what, quoted(name), own)
			return
		}
	}
}

// checkTrimName reports a trim that is called like an axis.
func (r *reader) checkTrimName(name, what string, axis mixcore.Axis, at diag.Place) {
	if slices.Contains(axisWords, FoldName(name)) {
		r.fail(at, codeReserved, "call it "+axisWords[axis-1]+" trim", "the trim of %s is called %s, which is the word for an axis", what, quoted(name))
		return
	}
	r.checkAxisInName(name, "the trim of "+what, axis, at)
}

// checkSideInAka reports further names of a part that put it on another side
// than it is on.
func (r *reader) checkSideInAka(what string, index int) {
	side := r.setup.Parts[index].Side
	for i, name := range r.model.PartAka[index] {
		said, both := sideInName(name)
		if both || said == mixcore.Centre || said == side {
			continue
		}
		where := "on the other side"
		if side == mixcore.Centre {
			where = "on neither side"
		}
		r.fail(r.akaAt[index][i], codeAgainstName, "change the name, or say the side", "%s is %s, but it is also known as %s", what, where, quoted(name))
	}
}

package airframes

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/mixcore"
)

// mostMeasuredPoints is the most points of a measured table.
const mostMeasuredPoints = 33

// readMeasured reads what a ruler or gauge said: output percent to angle.
func (r *reader) readMeasured(f *fields, h *hinge, drive *mixcore.Drive) {
	n := f.get("measured")
	if n == nil {
		return
	}
	what := "measured of " + f.what
	if n.Kind == yaml.ScalarNode {
		r.fail(r.place(n), codeWrongKind, wholeTable(n.Value, h), "%s is %s, want points such as {100%%: 20° %s}", what, quoted(n.Value), h.minus)
		return
	}
	entries, ok := r.points(n, f.pathOf("measured"), what, -mostOutput, mostOutput, mostMeasuredPoints,
		func(n *yaml.Node, what string) (float64, bool) { return r.measuredAngle(n, what, h) })
	if !ok {
		return
	}
	points := plainPoints(entries)
	if len(points) == 1 {
		only := points[0]
		if only.X == 0 || only.Y == 0 {
			r.fail(entries[0].at, "measured-too-little", "measure it at 100%, and at -100% too if you can", "%s is one point at neutral, which does not say how it moves", what)
			return
		}
		mirror := mixcore.Point{X: 0 - only.X, Y: 0 - only.Y}
		points = []mixcore.Point{mirror, {}, only}
		if only.X < 0 {
			points = []mixcore.Point{only, {}, mirror}
		}
	}
	drive.Table = points
}

// wholeTable is the hint for an angle that stands where a table should.
func wholeTable(angle string, h *hinge) string {
	words := strings.Fields(angle)
	if len(words) < 2 || leadingDigits(words[0]) == "" || words[len(words)-1] != h.plus && words[len(words)-1] != h.minus {
		return "say at which output, and which way: measured: {100%: 20° " + h.minus + "}"
	}
	return "say at which output: measured: {100%: " + tidy(angle) + "}"
}

// signless is the hint for an angle with a minus: which way a part moves is
// said by a word, not by a sign. It is empty for other text.
func (h *hinge) signless(number string, sign float64) string {
	if !strings.HasPrefix(number, "-") {
		return ""
	}
	value, suffix, wrong := splitNumber(number[1:])
	if wrong != nil || suffix != "" && !slices.Contains(inDegrees.suffixes, suffix) {
		return ""
	}
	angle := inDegrees.show(value)
	if value == 0 {
		return ""
	}
	if sign == 0 {
		return "write " + angle + " " + h.minus + " or " + angle + " " + h.plus + ", whichever it is"
	}
	word, other := h.minus, h.plus
	if sign > 0 {
		word, other = other, word
	}
	return "write " + angle + " " + word + ", or " + angle + " " + other + " if that is meant"
}

// turnedRound is the hint for a direction before its angle, "up 4°".
func (h *hinge) turnedRound(words []string) string {
	if len(words) < 2 || words[0] != h.plus && words[0] != h.minus || leadingDigits(words[1]) == "" {
		return ""
	}
	return "write " + strings.Join(words[1:], " ") + " " + words[0]
}

// measuredAngle reads an angle with its direction, "24° up", as the part's
// signed angle. Only 0° needs no direction.
func (r *reader) measuredAngle(n *yaml.Node, what string, h *hinge) (float64, bool) {
	want := "an angle and a direction, such as 24° " + h.minus
	text, ok := r.text(n, what, want)
	if !ok {
		return 0, false
	}
	words := strings.Fields(text)
	sign := 0.0
	if len(words) > 1 {
		switch FoldName(words[len(words)-1]) {
		case h.plus:
			sign = +1
		case h.minus:
			sign = -1
		}
	}
	if sign != 0 {
		words = words[:len(words)-1]
	}
	number := strings.Join(words, " ")
	if hint := h.signless(number, sign); hint != "" {
		r.fail(r.place(n), codeUnknownWord, hint, "%s is %s, want an angle without a sign and %s or %s behind it", what, quoted(text), h.minus, h.plus)
		return 0, false
	}
	if hint := h.turnedRound(words); hint != "" {
		r.fail(r.place(n), codeBadNumber, hint, "%s is %s, which is no number with a direction behind it", what, quoted(text))
		return 0, false
	}
	if sign == 0 && len(words) > 1 && leadingDigits(words[len(words)-1]) == "" && words[len(words)-1] != "°" && words[len(words)-1] != "deg" {
		last := words[len(words)-1]
		r.fail(r.place(n), codeUnknownWord, r.meant(last, []string{h.plus, h.minus}, ""), "%s is %s, want %s or %s behind the angle", what, quoted(text), h.minus, h.plus)
		return 0, false
	}
	angle, ok := r.numberText(r.place(n), number, what, inDegrees, 0, widestAngle)
	if !ok {
		return 0, false
	}
	if sign == 0 && angle != 0 {
		r.fail(r.place(n), codeUnknownWord, "write "+inDegrees.show(angle)+" "+h.minus+" or "+inDegrees.show(angle)+" "+h.plus, "%s is %s without a direction, want %s or %s behind it", what, quoted(text), h.minus, h.plus)
		return 0, false
	}
	return 0 + sign*angle, true
}

package airframes

import (
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
	if sign == 0 && len(words) > 1 && leadingDigits(words[len(words)-1]) == "" && words[len(words)-1] != "°" && words[len(words)-1] != "deg" {
		last := words[len(words)-1]
		r.fail(r.place(n), codeUnknownWord, r.suggestion(last, []string{h.plus, h.minus}, ""), "%s is %s, want %s or %s behind the angle", what, quoted(text), h.minus, h.plus)
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

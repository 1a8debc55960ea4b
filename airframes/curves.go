package airframes

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// The fewest and most points of a curve.
const (
	fewestCurvePoints = 2
	mostCurvePoints   = 33
)

// pointEntry is a point of a curve or measured table, with where it stands.
type pointEntry struct {
	mixcore.Point
	at diag.Place
}

// points reads a mapping from percent to something, ordered by percent.
func (r *reader) points(n *yaml.Node, path, what string, low, high float64, most int, value func(n *yaml.Node, what string) (float64, bool)) ([]pointEntry, bool) {
	if !readable(n) {
		return nil, false
	}
	if n.Kind != yaml.MappingNode {
		r.wrongKind(n, what, "points such as {0%: …, 100%: …}")
		return nil, false
	}
	good := true
	var all []pointEntry
	seen := map[float64]diag.Place{}
	entries := r.entries(n, path, what, most)
	for _, e := range entries {
		x, ok := r.numberText(e.at, strings.TrimSpace(e.name), "a position of "+what, inPercent, low, high)
		y, yOK := value(e.value, what+" at "+e.name)
		if before, twice := seen[x]; ok && twice {
			r.fail(e.at, codeDuplicateKey, fmt.Sprintf("it is on line %d as well: keep one of them", before.Line), "%s is given twice", quoted(e.name))
			ok = false
		}
		if !ok || !yOK {
			good = false
			continue
		}
		seen[x] = e.at
		all = append(all, pointEntry{mixcore.Point{X: x, Y: y}, e.at})
	}
	slices.SortFunc(all, func(a, b pointEntry) int {
		if a.X < b.X {
			return -1
		}
		return 1
	})
	return all, good && len(all) > 0 && len(all) == len(n.Content)/2
}

func plainPoints(entries []pointEntry) []mixcore.Point {
	points := make([]mixcore.Point, len(entries))
	for i, e := range entries {
		points[i] = e.Point
	}
	return points
}

// readCurve reads a demand's curve and whether it is smooth.
func (r *reader) readCurve(f *fields, what string, control mixcore.Control, index int) {
	smooth := false
	if n := f.get("smooth"); n != nil {
		smooth, _ = r.yes(n, "smooth")
		if !f.given("curve") {
			r.fail(f.placeOf("smooth"), codeMissingKey, "take it away, or add a curve", `%s has "smooth" but no "curve"`, what)
		}
	}
	n := f.get("curve")
	if n == nil {
		return
	}
	low := 0.0
	switch control.Kind {
	case mixcore.SwitchControl:
		r.fail(f.placeOf("curve"), codeNotTogether, "say the value of each position instead", "%s has a curve, which a demand from a switch cannot have", what)
		return
	case mixcore.AxisControl:
		low = -100
	case 0:
		return
	}
	points, ok := r.points(n, f.pathOf("curve"), "curve of "+what, low, 100, mostCurvePoints, func(n *yaml.Node, what string) (float64, bool) {
		return r.number(n, what, inPercent, -100, 100)
	})
	if !ok {
		return
	}
	if len(points) < fewestCurvePoints {
		r.fail(f.placeOf("curve"), codeOutOfRange, "", "curve of %s has 1 point, want %d to %d", what, fewestCurvePoints, mostCurvePoints)
		return
	}
	if points[0].X != low || points[len(points)-1].X != 100 {
		r.fail(f.placeOf("curve"), "curve-ends", "add the missing end", "curve of %s runs from %s to %s, want %s", what,
			inPercent.show(points[0].X), inPercent.show(points[len(points)-1].X), inPercent.between(low, 100))
		return
	}
	r.setup.Demands[index].Curve = &mixcore.Curve{Points: plainPoints(points), Smooth: smooth}
}

// readValues reads the values of a demand that comes from a switch.
func (r *reader) readValues(f *fields, what string, control mixcore.Control, index int) {
	isSwitch := control.Kind == mixcore.SwitchControl
	switch {
	case !f.given("values"):
		if isSwitch {
			f.missing("values", "say one for each position: values: "+exampleValues(control))
		}
		return
	case !isSwitch:
		if control.Kind != 0 {
			r.fail(f.placeOf("values"), codeNotTogether, "use throw, expo or a curve", `%s has "values", but %s is no switch`, what, quoted(control.Name))
		}
		return
	}
	n := f.get("values")
	if n == nil {
		return
	}
	if n.Kind != yaml.MappingNode {
		r.wrongKind(n, "values of "+what, "one for each position, such as "+exampleValues(control))
		return
	}
	values, said := make([]mixcore.Percent, len(control.Positions)), make([]bool, len(control.Positions))
	for _, e := range r.namedEntries(n, f.pathOf("values"), "values of "+what, maxControls) {
		i := slices.IndexFunc(control.Positions, func(p string) bool { return FoldName(p) == FoldName(e.name) })
		switch {
		case i < 0:
			r.fail(e.at, codeUnknownName, r.suggestion(e.name, control.Positions, "it has "+listed(control.Positions, "and")),
				"%s has no position %s", quoted(control.Name), quoted(e.name))
			continue
		case said[i]:
			r.fail(e.at, codeDuplicateKey, "keep one of them", "%s is given twice", quoted(e.name))
			continue
		}
		said[i] = true
		if value, ok := r.number(e.value, "value at "+quoted(e.name), inPercent, -100, 100); ok {
			values[i] = mixcore.Percent(value)
		}
	}
	for i, position := range control.Positions {
		if !said[i] {
			r.fail(f.placeOf("values"), codeMissingKey, "say one for each position of "+control.Name, "values of %s has none for %s", what, quoted(position))
		}
	}
	r.setup.Demands[index].Values = values
}

// exampleValues are values for the positions of a switch, to show.
func exampleValues(control mixcore.Control) string {
	parts := make([]string, len(control.Positions))
	for i, position := range control.Positions {
		parts[i] = fmt.Sprintf("%s: %d%%", position, 100*i/max(len(control.Positions)-1, 1))
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

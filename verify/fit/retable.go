package fit

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// writtenPoint is one point of a measured table as the file has it.
type writtenPoint struct {
	x        float64
	at       diag.Place // of its output
	from, to int        // its angle
}

// table writes new angles in place of those of a measured table, and points that it had
// not beside the ones before them.
func (w *rewriter) table(c *Correction) error {
	points, err := w.points(c)
	if err != nil {
		return err
	}
	flow, err := w.inBrackets(c, "measured")
	if err != nil {
		return err
	}
	was := w.drive(c).Table
	for _, p := range points {
		i := slices.IndexFunc(c.Table, func(is mixcore.Point) bool { return math.Abs(is.X-p.x) < written })
		if i < 0 {
			return fmt.Errorf("line %d: the point at %s %% would be lost; change it by hand", p.at.Line, plainNumber(p.x))
		}
		if !slices.ContainsFunc(was, func(o mixcore.Point) bool { return nearPoint(o, c.Table[i]) }) {
			w.edits = append(w.edits, edit{p.from, p.to, w.angleText(c.Part, c.Table[i].Y)})
		}
	}
	for _, is := range c.Table {
		if !slices.ContainsFunc(points, func(p writtenPoint) bool { return math.Abs(is.X-p.x) < written }) {
			if err := w.another(points, flow, is.X, plainNumber(is.X)+"%: "+w.angleText(c.Part, is.Y)); err != nil {
				return err
			}
		}
	}
	return nil
}

// points are those of a servo's measured table, by their output.
func (w *rewriter) points(c *Correction) (points []writtenPoint, err error) {
	for _, path := range w.paths(c, "measured.") {
		for said, at := range w.m.Places.Fields {
			if !strings.HasPrefix(tidied(said), path) {
				continue
			}
			start, _ := w.m.Source.Offset(at)
			key := w.keyAt(start)
			x, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.Trim(key, "\"' "), "%")), 64)
			if err != nil {
				return nil, w.byHand(at, key)
			}
			from, to, err := w.value(at, strings.Trim(key, "\"'"))
			if err != nil {
				return nil, err
			}
			points = append(points, writtenPoint{x, at, from, to})
		}
	}
	if len(points) == 0 {
		return nil, fmt.Errorf("no measured: was found")
	}
	slices.SortFunc(points, func(a, b writtenPoint) int { return cmp.Compare(a.x, b.x) })
	return points, nil
}

// keyAt is the key that begins somewhere, without the space behind it.
func (w *rewriter) keyAt(start int) string {
	key, _, _ := bytes.Cut(w.text[start:], []byte(":"))
	return strings.TrimRight(string(key), " ")
}

// another writes a point that was not there, behind the one before it.
func (w *rewriter) another(points []writtenPoint, flow bool, x float64, said string) error {
	after := -1
	for i := range points {
		if points[i].x < x {
			after = i
		}
	}
	switch first := points[0]; {
	case flow && after < 0:
		start, _ := w.m.Source.Offset(first.at)
		w.edits = append(w.edits, edit{start, start, said + ", "})
		return nil
	case flow:
		w.edits = append(w.edits, edit{points[after].to, points[after].to, ", " + said})
		return nil
	case after < 0:
		return w.lineBefore(first.at, first.from, said)
	}
	p := points[after]
	_, indent, err := w.setIn(p.at, p.from)
	if err != nil {
		return err
	}
	end := bytes.IndexByte(w.text[p.to:], '\n')
	switch {
	case end < 0:
		end = len(w.text)
	default:
		end += p.to
		if w.text[end-1] == '\r' {
			end--
		}
	}
	w.edits = append(w.edits, edit{end, end, w.ending() + indent + said})
	return nil
}

// angleText is an angle as a file has it, with the way it goes.
func (w *rewriter) angleText(part int, angle float64) string {
	text := plainNumber(math.Abs(angle)) + "°"
	if angle != 0 {
		text += " " + strings.ToLower(wording.Direction(w.m.Setup.Parts[part].Motion, angle > 0))
	}
	return text
}

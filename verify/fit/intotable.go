package fit

import (
	"bytes"
	"fmt"
	"math"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

// mostSampled is how far apart the points of a table in place of a linkage are at most, in
// percent of the channel.
const mostSampled = 25

// TableOf is the measured table that says what a linkage does where its channel puts out
// low to high, in percent, point by point from one end to the other through 0. Between the
// points a table goes straight. The error is that of a linkage that cannot be built, or that
// does not reach so far.
func TableOf(d *mixcore.Drive, low, high mixcore.Percent) ([]mixcore.Point, error) {
	l, err := linkage.New(*d.Linkage)
	if err != nil {
		return nil, err
	}
	p := problem{drive: d}
	var table []mixcore.Point
	add := func(x float64) error {
		y, ok := p.angle(l, mixcore.Percent(x))
		if !ok {
			return fmt.Errorf("as written the linkage does not reach to %s %%", plainNumber(x))
		}
		table = append(table, mixcore.Point{X: x, Y: to(y, angleTo) + 0})
		return nil
	}
	first, last := math.Floor(float64(low)), math.Ceil(float64(high))
	for _, side := range [][2]float64{{first, 0}, {0, last}} {
		n := math.Ceil((side[1] - side[0]) / mostSampled)
		for i := range int(n) {
			if err := add(math.Round(side[0] + (side[1]-side[0])*float64(i)/n)); err != nil {
				return nil, err
			}
		}
	}
	return table, add(last)
}

// intoTable writes a measured table in place of a linkage. Where remarks stand in that they
// would be lost, so it is not done.
func (w *rewriter) intoTable(c *Correction) error {
	at, ok := w.field(c, "linkage")
	if !ok {
		return fmt.Errorf("no linkage: was found")
	}
	flow, err := w.inBrackets(c, "linkage")
	if err != nil {
		return err
	}
	start, ok := w.m.Source.Offset(at)
	if !ok {
		return w.byHand(at, "linkage")
	}
	end := w.blockEnd(start)
	if flow {
		end = start + bytes.IndexByte(w.text[start:], '}') + 1
	}
	if end <= start || bytes.ContainsAny(w.text[start:end], "#&*") {
		return w.byHand(at, "linkage")
	}
	var points []string
	for _, p := range c.Table {
		points = append(points, plainNumber(p.X)+"%: "+w.angleText(c.Part, p.Y))
	}
	w.edits = append(w.edits, edit{start, end, "measured: {" + strings.Join(points, ", ") + "}"})
	return nil
}

// blockEnd is the end of the last line that is further in than the key at start.
func (w *rewriter) blockEnd(start int) int {
	indent := start - bytes.LastIndexByte(w.text[:start], '\n') - 1
	end := w.lineEnd(start)
	for end < len(w.text) {
		next := w.lineEnd(end + 1)
		line := bytes.TrimRight(w.text[end+1:next], "\r")
		if inner := len(line) - len(bytes.TrimLeft(line, " ")); inner == len(line) || inner <= indent {
			break
		}
		end = next
	}
	return len(bytes.TrimRight(w.text[:end], "\r"))
}

// lineEnd is where the line of a byte ends, before its line feed.
func (w *rewriter) lineEnd(at int) int {
	if n := bytes.IndexByte(w.text[at:], '\n'); n >= 0 {
		return at + n
	}
	return len(w.text)
}

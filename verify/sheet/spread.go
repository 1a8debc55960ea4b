package sheet

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
)

// spread moves parts apart whose places were not said and are the same: surfaces lie
// side by side along the span, what is no surface one behind the other.
func (d *drafter) spread(parts []result.Outline) {
	for _, row := range d.rows(parts) {
		d.sideBySide(parts, row)
	}
	for i := range parts {
		if !isSurface(&parts[i]) && !parts[i].PlaceSaid {
			d.stepAside(parts, i)
		}
	}
}

func isSurface(o *result.Outline) bool { return o.Inner != o.Outer }

// rowOf is which hinge line a surface is one of: those of one row would lie over each
// other.
func rowOf(p *mixcore.Part) string {
	switch p.Kind {
	case "aileron", "flap", "flaperon", "elevon":
		return "trailing edge"
	case "spoiler", "airbrake":
		return "brakes"
	case "elevator", "taileron":
		return "tail"
	}
	return string(p.Kind)
}

// rows are the surfaces that share a hinge line on one side, in order from inside out.
func (d *drafter) rows(parts []result.Outline) [][]int {
	type key struct {
		row     string
		side    mixcore.Side
		upright bool
	}
	byKey := map[key][]int{}
	var keys []key
	for i := range d.s.Parts {
		if !isSurface(&parts[i]) {
			continue
		}
		k := key{rowOf(&d.s.Parts[i]), d.s.Parts[i].Side, upright(&parts[i])}
		if byKey[k] == nil {
			keys = append(keys, k)
		}
		byKey[k] = append(byKey[k], i)
	}
	var rows [][]int
	for _, k := range keys {
		if row := byKey[k]; len(row) > 1 {
			slices.SortStableFunc(row, d.insideOut)
			rows = append(rows, row)
		}
	}
	return rows
}

// insideOut orders surfaces by where they usually are, and those of a kind by what their
// names say.
func (d *drafter) insideOut(a, b int) int {
	atA, _ := d.air.Placed(a)
	atB, _ := d.air.Placed(b)
	along := func(i int, out float64) float64 { return outward(d.s.Parts[i].Side) * out }
	return cmp.Or(cmp.Compare(along(a, atA.Out), along(b, atB.Out)), cmp.Compare(nameOrder(d.s.Parts[a].Name), nameOrder(d.s.Parts[b].Name)))
}

// nameOrder is −1 for what its name puts inside or below, 1 for outside or above.
func nameOrder(name string) int {
	words := strings.Fields(strings.ToLower(name))
	switch {
	case has(words, "inner"), has(words, "inboard"), has(words, "lower"):
		return -1
	case has(words, "outer"), has(words, "outboard"), has(words, "upper"):
		return 1
	}
	return 0
}

// stretch is a part of a row, in millimetres along it.
type stretch struct{ from, to float64 }

// gap is what is left between two surfaces of a row, as a part of their room.
const gap = 0.03

// sideBySide lays those of a row that overlap, and whose places along it were not said,
// into the room that is left between those that were.
func (d *drafter) sideBySide(parts []result.Outline, row []int) {
	spans := make([]stretch, len(row))
	for k, i := range row {
		spans[k] = along(&parts[i])
	}
	overlap := false
	for a := range row {
		for b := range a {
			overlap = overlap || d.crosses(parts, row[a], row[b])
		}
	}
	if !overlap {
		return
	}
	room := spans[0]
	for _, s := range spans {
		room = stretch{min(room.from, s.from), max(room.to, s.to)}
	}
	free := []stretch{room}
	var moving []int
	for k, i := range row {
		p := &d.s.Parts[i]
		if p.Span[1] > p.Span[0] || p.Motion == mixcore.LeftRight && p.Place.UpSaid {
			free = without(free, spans[k])
		} else {
			moving = append(moving, i)
		}
	}
	if len(moving) == 0 {
		return // the builder says that they lie over each other
	}
	into := stretch{room.to, room.to + (room.to-room.from)*gap*float64(len(moving))} // outside, if there is no room
	for _, f := range free {
		if f.to-f.from > into.to-into.from {
			into = f
		}
	}
	width := (into.to - into.from) / float64(len(moving))
	for k, i := range moving {
		from := into.from + width*float64(k)
		d.lay(&parts[i], stretch{from + width*gap/2, from + width*(1-gap/2)})
	}
}

// crosses says whether two surfaces of a row lie over each other.
func (d *drafter) crosses(parts []result.Outline, a, b int) bool {
	const slip = 1e-6
	s, o := along(&parts[a]), along(&parts[b])
	inLine := math.Abs(parts[a].Inner.Aft-parts[b].Inner.Aft) < d.semi*near || parts[a].Inner == parts[b].Inner
	return inLine && s.from < o.to-slip && o.from < s.to-slip
}

// along is where a surface is along its row.
func along(o *result.Outline) stretch {
	a, b := alongAt(o, o.Inner), alongAt(o, o.Outer)
	return stretch{min(a, b), max(a, b)}
}

// alongAt is where a place is along a surface's row: up where that is how it runs, else
// out from the centre line, at the centre to starboard.
func alongAt(o *result.Outline, p result.Point) float64 {
	switch {
	case upright(o):
		return p.Up
	case o.Side == sideWords[mixcore.Port]:
		return -p.Out
	}
	return p.Out
}

// upright is true for a surface that runs up more than it runs out.
func upright(o *result.Outline) bool {
	return math.Abs(o.Outer.Up-o.Inner.Up) > math.Abs(o.Outer.Out-o.Inner.Out)
}

// lay puts a surface along its row, keeping to its line.
func (d *drafter) lay(o *result.Outline, s stretch) {
	inner, outer := o.Inner, o.Outer
	from, to := alongAt(o, inner), alongAt(o, outer)
	if from == to {
		return
	}
	if from > to {
		s.from, s.to = s.to, s.from
	}
	at := func(x float64) result.Point {
		t := (x - from) / (to - from)
		return result.Point{
			Out: inner.Out + (outer.Out-inner.Out)*t, Aft: inner.Aft + (outer.Aft-inner.Aft)*t, Up: inner.Up + (outer.Up-inner.Up)*t,
		}
	}
	o.Inner, o.Outer = at(s.from), at(s.to)
}

// without takes a stretch out of others.
func without(free []stretch, s stretch) []stretch {
	var left []stretch
	for _, f := range free {
		if f.from < s.from {
			left = append(left, stretch{f.from, min(f.to, s.from)})
		}
		if f.to > s.to {
			left = append(left, stretch{max(f.from, s.to), f.to})
		}
	}
	return left
}

// aside is how far aft a part is moved out of the way of another, in semispans.
const aside = 0.07

// stepAside moves what is no surface aft until nothing else is where it is.
func (d *drafter) stepAside(parts []result.Outline, i int) {
	for {
		taken := false
		for k := range parts {
			if k != i && !isSurface(&parts[k]) && apart(parts[i].Inner, parts[k].Inner) < near*d.semi && (k < i || parts[k].PlaceSaid) {
				taken = true
			}
		}
		if !taken {
			return
		}
		parts[i].Inner.Aft += aside * d.semi
		parts[i].Outer = parts[i].Inner
	}
}

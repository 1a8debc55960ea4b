package serve

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// What a dead part of a control's travel is: between its ends the part stays within
// unmoved, and it is at least leastDead long. A steady slope is never dead, however
// gentle: of a part that moves little, unmoved is slight against all that it moves.
const (
	// unmoved is within how much a part stays over the whole of a dead part, in degrees, or
	// percent of power or travel: a thousandth, a hundredth of what a servo resolves
	// (common practice, no source) and of what a picture shows.
	unmoved = 0.001
	// unmovedShare is the same as a share of all that the part moves over the control's
	// whole travel; the smaller of both counts, unless all of it is less than unmoved.
	unmovedShare = 0.001
	// leastDead is the shortest dead part that is told, in percent of the control's travel.
	// Two pieces of a way are as long, so that every dead part has a whole piece in it.
	leastDead = 200.0 / wayPieces
	// endsTo is how fine the ends of a dead part are said, in percent of the control: what is
	// said of it holds from so much behind its beginning to so much before its end.
	endsTo = 0.01

	// looksWithin is in how many pieces each piece of a way is looked at for a dead part.
	// What is between those looks is left half of unmoved.
	looksWithin = 4
	// narrowings is how often a piece at the end of a dead part is halved: to less than a
	// thousandth of a percent.
	narrowings = 12
)

// stretch is a dead part of a control's travel.
type stretch struct {
	From, To float64
	Because  string // "at its stop"; empty where no limit bites
}

// looker says where a part is, and what limits it, with a control somewhere.
type looker func(x float64) (float64, mixcore.Limit)

// spread is from where to where something goes.
type spread struct{ low, high float64 }

func (s spread) with(o spread) spread { return spread{min(s.low, o.low), max(s.high, o.high)} }

// broken is the spread of a piece that is in no dead part.
var broken = spread{math.Inf(-1), math.Inf(1)}

// steadiness is the promise of dead parts of a way whose part moves by so much in all.
func steadiness(moves float64) float64 {
	if moves <= unmoved/2 {
		return unmoved
	}
	return min(unmoved, moves*unmovedShare)
}

// deadOf are the dead parts of a way, the longest possible ones, in order.
func deadOf(w *way, look looker) (list []stretch) {
	search := dead{way: w, look: look, within: steadiness(slices.Max(w.Y)-slices.Min(w.Y)) / 2}
	for i := range len(w.X) - 1 {
		search.pieces = append(search.pieces, search.over(w.X[i], w.X[i+1]))
	}
	search.taken = make([]bool, len(search.pieces))
	least := (w.X[len(w.X)-1] - w.X[0]) * leastDead / 100
	for {
		from, to := search.longest()
		if from == to {
			break
		}
		found := search.widened(from, to)
		for i := range search.pieces {
			if i >= from && i < to || w.X[i] < found.To && w.X[i+1] > found.From {
				search.taken[i] = true
			}
		}
		if found.To-found.From < least-endsTo {
			continue
		}
		_, limits := look((found.From + found.To) / 2)
		found.Because = strings.Join(wording.Limits(limits), ", ")
		list = append(list, found)
	}
	slices.SortFunc(list, func(a, b stretch) int { return cmp.Compare(a.From, b.From) })
	return list
}

// dead is the search for the dead parts of a way.
type dead struct {
	way    *way
	look   looker
	within float64
	pieces []spread // of the part, by piece of the way
	taken  []bool   // pieces that are in a dead part that was found
}

// over is where the part goes between two places of the control; broken where that is more
// than a dead part may have.
func (d *dead) over(a, b float64) spread {
	first, _ := d.look(a)
	last, _ := d.look(b)
	s := spread{min(first, last), max(first, last)}
	for k := 1; k < looksWithin && d.fits(s); k++ {
		y, _ := d.look(a + (b-a)*float64(k)/looksWithin)
		s = s.with(spread{y, y})
	}
	if !d.fits(s) {
		return broken
	}
	return s
}

func (d *dead) fits(s spread) bool { return s.high-s.low <= d.within }

// longest are the first and last place of the longest row of pieces that fit together; of
// rows that are as long, that in which the part moves least.
func (d *dead) longest() (from, to int) {
	best, least := 0.0, math.Inf(1)
	for i := range d.pieces {
		s, k := d.pieces[i], i
		for k < len(d.pieces) && !d.taken[k] && d.fits(s.with(d.pieces[k])) {
			s = s.with(d.pieces[k])
			k++
		}
		if k == i {
			continue
		}
		long, moves := d.way.X[k]-d.way.X[i], s.high-s.low
		if long > best || long == best && moves < least {
			from, to, best, least = i, k, long, moves
		}
	}
	return from, to
}

// widened is the dead part that a row of pieces is in: alike both ways as far as that goes,
// so that what is alike on both sides of the stick is told alike, and then each way.
func (d *dead) widened(from, to int) stretch {
	x := d.way.X
	s := d.pieces[from]
	for _, piece := range d.pieces[from:to] {
		s = s.with(piece)
	}
	a, b := x[from], x[to]
	before, after := a, b
	if from > 0 && !d.taken[from-1] {
		before = x[from-1]
	}
	if to < len(d.pieces) && !d.taken[to] {
		after = x[to+1]
	}
	if before < a && after > b {
		by, with := d.narrowed(s, min(a-before, after-b), func(by float64) spread { return d.over(a-by, a).with(d.over(b, b+by)) })
		a, b, s = a-by, b+by, s.with(with)
	}
	by, with := d.narrowed(s, a-before, func(by float64) spread { return d.over(a-by, a) })
	a, s = a-by, s.with(with)
	by, _ = d.narrowed(s, after-b, func(by float64) spread { return d.over(b, b+by) })
	return stretch{From: rounded(a), To: rounded(b + by)}
}

// narrowed is how far one can go, up to most, with a spread that still fits to s.
func (d *dead) narrowed(s spread, most float64, over func(by float64) spread) (by float64, with spread) {
	with = s
	if most <= 0 {
		return 0, with
	}
	for range narrowings {
		if middle := (by + most) / 2; d.fits(s.with(over(middle))) {
			by, with = middle, over(middle)
		} else {
			most = middle
		}
	}
	return by, with
}

// rounded is an end of a dead part as it is said.
func rounded(at float64) float64 { return math.Round(at*(1/endsTo)) / (1 / endsTo) }

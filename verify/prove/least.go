package prove

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore/interval"
)

// How closely the least value of a component is found.
const (
	leastGap   = 1e-8 // percent
	leastBoxes = 1000 // boxes looked at before the bound so far is taken
)

// thin is a stretch that is not cut any more, in percent.
const thin = 1e-9

// corner is a box of a component's variables, with a bound.
type corner struct {
	spans []interval.Range
	at    []float64 // where each is likely best
	low   float64   // nothing in it is less
	steep int       // the variable that matters most, or none
}

// leastSearch looks for the least value of sign times a component.
type leastSearch struct {
	c             *component
	p             *Prover
	sign          float64
	spans, slopes []interval.Range // of all variables of the claim, and of the component's: scratch
	open          []corner
	best          float64   // the least value found
	at            []float64 // where, by the component's variables
	done          float64   // the least bound of boxes that are finished
}

// least is a lower bound of sign times the component over spans of all variables, and
// where it is nearly reached. Variables that are not tied go to an end by themselves. A
// tied one whose slope keeps its sign goes to one end, and one in which the component is
// straight to both; the others are halved, at breaks of their demands where there are
// any.
func (c *component) least(p *Prover, spans []interval.Range, sign float64) (bound float64, at []float64) {
	s := &leastSearch{c: c, p: p, sign: sign, spans: slices.Clone(spans), done: math.Inf(1), best: math.Inf(1),
		slopes: make([]interval.Range, len(c.variables))}
	first := corner{spans: make([]interval.Range, len(c.variables)), at: make([]float64, len(c.variables)), low: math.Inf(-1)}
	for i, v := range c.variables {
		first.spans[i], first.at[i] = spans[v], spans[v].Middle()
	}
	s.look(first)
	for boxes := 1; len(s.open) > 0 && boxes < leastBoxes && p.corners < p.enough; boxes++ {
		next := s.lowest()
		if s.open[next].low >= s.best-leastGap {
			break
		}
		box := s.open[next]
		last := len(s.open) - 1
		s.open[next] = s.open[last]
		s.open = s.open[:last]
		s.split(box)
	}
	bound = s.done
	if len(s.open) > 0 {
		bound = min(bound, s.open[s.lowest()].low)
	}
	return bound, s.at
}

func (s *leastSearch) lowest() int {
	least := 0
	for i := range s.open {
		if s.open[i].low < s.open[least].low {
			least = i
		}
	}
	return least
}

// value encloses sign times the component in a box.
func (s *leastSearch) value(box []interval.Range) interval.Range {
	for i, v := range s.c.variables {
		if s.c.tied[i] {
			s.spans[v] = box[i]
		}
	}
	r := s.c.value(s.p, s.spans)
	if s.sign < 0 {
		return r.Neg()
	}
	return r
}

// slope is that of sign times the component by a variable.
func (s *leastSearch) slope(i int) interval.Range {
	if s.sign < 0 {
		return s.slopes[i].Neg()
	}
	return s.slopes[i]
}

// look bounds a box, and keeps it if it cannot be left out.
func (s *leastSearch) look(box corner) {
	s.p.corners++
	value := s.value(box.spans)
	box.low = max(box.low, value.Low)
	if box.low >= s.best-leastGap || s.settled(box.spans) {
		s.finish(box, value)
		return
	}
	s.c.slopes(s.p, s.slopes, s.c.tied)
	moved := false
	for i, r := range box.spans {
		if !s.c.tied[i] || r.IsPoint() {
			continue
		}
		switch g := s.slope(i); {
		case g.Low >= 0:
			box.spans[i], box.at[i], moved = interval.Point(r.Low), r.Low, true
		case g.High <= 0:
			box.spans[i], box.at[i], moved = interval.Point(r.High), r.High, true
		}
	}
	if moved {
		value = s.value(box.spans)
		box.low = max(box.low, value.Low)
		if s.settled(box.spans) {
			s.finish(box, value)
			return
		}
		s.c.slopes(s.p, s.slopes, s.c.tied)
	}
	s.meanValue(&box)
	s.open = append(s.open, box)
}

// settled says whether a box is not to be cut any more.
func (s *leastSearch) settled(spans []interval.Range) bool {
	for i, r := range spans {
		if s.c.tied[i] && r.Width() > 2*thin {
			return false
		}
	}
	return true
}

// finish takes note of the bound of a box that is done with, and of the place in it.
func (s *leastSearch) finish(box corner, value interval.Range) {
	s.done = min(s.done, box.low)
	if value.Low < s.best && s.settled(box.spans) {
		s.best, s.at = value.Low, box.at
	}
}

// meanValue bounds a box by the value in its middle and the slopes, and finds the
// variable that matters most.
func (s *leastSearch) meanValue(box *corner) {
	middle := slices.Clone(box.spans)
	way := interval.Point(0)
	most := -1.0
	box.steep = none
	for i, r := range box.spans {
		if !s.c.tied[i] || r.IsPoint() {
			continue
		}
		middle[i] = interval.Point(r.Middle())
		by := s.slope(i).Mul(r.Sub(middle[i]))
		way = way.Add(by)
		if by.Greatest() > most && r.Width() > 2*thin {
			box.steep, most = i, by.Greatest()
		}
	}
	value := s.value(middle)
	if value.Low < s.best {
		s.best, s.at = value.Low, slices.Clone(box.at)
		for i := range middle {
			if s.c.tied[i] && !box.spans[i].IsPoint() {
				s.at[i] = middle[i].Low
			}
		}
	}
	box.low = max(box.low, value.Add(way).Low)
}

// split looks at the parts of a box.
func (s *leastSearch) split(box corner) {
	i := box.steep
	if i == none {
		s.done = min(s.done, box.low)
		return
	}
	r := box.spans[i]
	where, broken := s.p.breakIn(s.c, s.c.variables[i], r)
	low, high := interval.Range{Low: r.Low, High: where}, interval.Range{Low: where, High: r.High}
	if !broken && s.straight(i, box.spans) {
		low.High, high.Low = r.Low+thin, r.High-thin
	}
	for k, part := range []interval.Range{low, high} {
		next := corner{spans: slices.Clone(box.spans), at: slices.Clone(box.at), low: box.low}
		next.spans[i], next.at[i] = part, part.Middle()
		if part.Width() <= 2*thin {
			next.at[i] = []float64{r.Low, r.High}[k]
		}
		s.look(next)
	}
}

// straightness is how much a slope may vary, beside its size, where a demand counts as
// straight: it then bends by less than the error that its bounds allow for.
const straightness = 1e-13

// straight says whether the component is a straight line in one variable, whatever the
// others are in the box. Then it is least at an end: within thin of it, so that it does
// not matter on which side of a break that is.
func (s *leastSearch) straight(i int, box []interval.Range) bool {
	r := box[i]
	inner := interval.Range{Low: r.Low + thin, High: r.High - thin}
	if s.c.bent[i] || inner.Width() < thin {
		return false
	}
	s.value(box)
	for k := range s.c.leaves {
		l := &s.c.leaves[k]
		if l.atIndex != i {
			continue
		}
		if l.turned {
			inner = inner.Neg()
		}
		slope := l.k.slope(s.p, inner)
		if l.turned {
			inner = inner.Neg()
		}
		if !(slope.Width() <= straightness*max(slope.Greatest(), 1)) {
			return false
		}
	}
	return s.oneSided(s.c.root, i)
}

// oneSided says whether every demand that a variable bears on keeps to one side, or has
// the same share on both.
func (s *leastSearch) oneSided(n *node, i int) bool {
	for k := range n.terms {
		t := &n.terms[k]
		l := &s.c.leaves[t.leaf]
		if (l.atIndex == i || l.trimAt == i) && !t.even && l.value.Low < 0 && l.value.High > 0 {
			return false
		}
	}
	for k := range n.products {
		if !s.oneSided(n.products[k].inner, i) {
			return false
		}
	}
	return true
}

// breakIn is the break of a component's demands that is nearest to the middle of a
// stretch of a variable; the middle itself where there is none inside.
func (p *Prover) breakIn(c *component, variable int, span interval.Range) (where float64, broken bool) {
	middle := span.Middle()
	where = middle
	c.eachBreak(variable, span, func(x float64) {
		if !broken || abs(x-middle) < abs(where-middle) {
			where, broken = x, true
		}
	})
	return where, broken
}

// eachBreak visits the breaks of the demands of a variable that are inside a stretch of
// it.
func (c *component) eachBreak(variable int, span interval.Range, visit func(x float64)) {
	for k := range c.leaves {
		l := &c.leaves[k]
		if l.at != variable {
			continue
		}
		for _, x := range l.k.breaks {
			if l.turned {
				x = -x
			}
			if x > span.Low && x < span.High {
				visit(x)
			}
		}
	}
}

func abs(x float64) float64 { return max(x, -x) }

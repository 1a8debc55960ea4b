package prove

import (
	"container/heap"
	"math"
	"slices"

	"example.com/hingeline/mixcore/interval"
)

// How closely the least value of a component is found.
const (
	leastGap   = 1e-10 // percent: far below a mixcore.Hair
	leastBoxes = 4000  // boxes looked at before the bound so far is taken
)

// part of the search for the least value: a box and a bound.
type corner struct {
	spans []interval.Range // of the component's variables
	low   float64          // nothing in it is less
}

type corners []corner

func (h corners) Len() int           { return len(h) }
func (h corners) Less(i, j int) bool { return h[i].low < h[j].low }
func (h corners) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *corners) Push(x any)        { *h = append(*h, x.(corner)) }
func (h *corners) Pop() any          { n := len(*h) - 1; x := (*h)[n]; *h = (*h)[:n]; return x }

// least is a lower bound of sign times the component over spans of all variables, and
// a place where it is nearly reached. A variable whose slope keeps its sign goes to
// one end; the others are halved, at corners of their demands where there are any.
func (c *component) least(p *Prover, spans []interval.Range, sign float64) (bound float64, at []float64) {
	s := &leastSearch{c: c, p: p, sign: sign, done: math.Inf(1), spans: slices.Clone(spans), slopes: make([]interval.Range, len(c.variables))}
	first := make([]interval.Range, len(c.variables))
	for i, v := range c.variables {
		first[i] = spans[v]
	}
	s.look(first)
	for boxes := 1; len(s.open) > 0; boxes++ {
		if s.open[0].low >= s.best-leastGap || boxes >= leastBoxes {
			break
		}
		box := heap.Pop(&s.open).(corner)
		i, where := s.cut(box.spans)
		if i < 0 {
			s.bound(box.low)
			continue
		}
		for _, half := range []interval.Range{{Low: box.spans[i].Low, High: where}, {Low: where, High: box.spans[i].High}} {
			next := slices.Clone(box.spans)
			next[i] = half
			s.look(next)
		}
	}
	bound = s.done
	if len(s.open) > 0 {
		bound = min(bound, s.open[0].low)
	}
	return bound, s.at
}

type leastSearch struct {
	c             *component
	p             *Prover
	sign          float64
	spans, slopes []interval.Range
	open          corners
	best          float64 // the least value found
	done          float64 // the least bound of boxes that are finished
	at            []float64
}

// look bounds a box, and keeps it if it cannot be left out.
func (s *leastSearch) look(box []interval.Range) {
	s.put(box)
	value := s.c.value(s.p, s.spans, s.slopes).Scale(s.sign)
	settled := true
	for i := range box {
		if box[i].IsPoint() {
			continue
		}
		switch g := s.slopes[i].Scale(s.sign); {
		case g.Low >= 0:
			box[i] = interval.Point(box[i].Low)
		case g.High <= 0:
			box[i] = interval.Point(box[i].High)
		default:
			settled = false
		}
	}
	if settled {
		s.put(box)
		value = value.Within(s.c.value(s.p, s.spans, nil).Scale(s.sign))
		s.found(value.High, box)
		s.bound(value.Low)
		return
	}
	s.put(box)
	value = value.Within(s.c.value(s.p, s.spans, s.slopes).Scale(s.sign))
	middle := make([]interval.Range, len(box))
	for i := range box {
		middle[i] = interval.Point(box[i].Middle())
	}
	s.put(middle)
	at := s.c.value(s.p, s.spans, nil).Scale(s.sign)
	s.found(at.High, middle)
	for i := range box { // the mean value form
		at = at.Add(s.slopes[i].Scale(s.sign).Mul(box[i].Sub(middle[i])))
	}
	heap.Push(&s.open, corner{box, max(value.Low, at.Low)})
}

func (s *leastSearch) put(box []interval.Range) {
	for i, v := range s.c.variables {
		s.spans[v] = box[i]
	}
}

func (s *leastSearch) bound(low float64) { s.done = min(s.done, low) }

// found takes note of a value that is reached somewhere in a box of points.
func (s *leastSearch) found(value float64, box []interval.Range) {
	if s.at == nil || value < s.best {
		s.best = value
		s.at = s.at[:0]
		for i := range box {
			s.at = append(s.at, box[i].Low)
		}
	}
}

// cut is where to halve a box: the variable whose slope matters most, at a break of
// one of its demands or in the middle; −1 where no variable can be halved.
func (s *leastSearch) cut(box []interval.Range) (variable int, where float64) {
	s.put(box)
	s.c.value(s.p, s.spans, s.slopes)
	variable = -1
	most := -1.0
	for i := range box {
		if middle := box[i].Middle(); middle <= box[i].Low || middle >= box[i].High {
			continue
		}
		if weight := s.slopes[i].Greatest() * box[i].Width(); weight > most {
			variable, most = i, weight
		}
	}
	if variable < 0 {
		return variable, 0
	}
	where = s.p.breakIn(s.c, s.c.variables[variable], box[variable])
	return variable, where
}

// breakIn is the break of a component's demands that is nearest to the middle of a
// stretch of a variable; the middle itself where there is none inside.
func (p *Prover) breakIn(c *component, variable int, span interval.Range) float64 {
	middle := span.Middle()
	best, found := middle, false
	try := func(t *term) {
		if t.at != variable {
			return
		}
		for _, x := range p.kinds[t.shape].breaks {
			if t.turned {
				x = -x
			}
			if x > span.Low && x < span.High && (!found || abs(x-middle) < abs(best-middle)) {
				best, found = x, true
			}
		}
	}
	for i := range c.pieces {
		for k := range c.pieces[i].factors {
			try(&c.pieces[i].factors[k])
		}
		for k := range c.pieces[i].terms {
			try(&c.pieces[i].terms[k])
		}
	}
	return best
}

func abs(x float64) float64 { return max(x, -x) }

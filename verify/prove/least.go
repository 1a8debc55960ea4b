package prove

import (
	"container/heap"
	"math"
	"slices"

	"example.com/hingeline/mixcore/interval"
)

// How closely the least value of a component is found.
const (
	leastGap   = 1e-8 // percent
	leastBoxes = 1000 // boxes looked at before the bound so far is taken
)

// corner is a box of a component's variables, with a bound.
type corner struct {
	spans []interval.Range
	low   float64 // nothing in it is less
}

type corners []corner

func (h corners) Len() int           { return len(h) }
func (h corners) Less(i, j int) bool { return h[i].low < h[j].low }
func (h corners) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *corners) Push(x any)        { *h = append(*h, x.(corner)) }
func (h *corners) Pop() any          { n := len(*h) - 1; x := (*h)[n]; *h = (*h)[:n]; return x }

// leastSearch looks for the least value of sign times a component.
type leastSearch struct {
	c                    *component
	p                    *Prover
	sign                 float64
	spans, loose, slopes []interval.Range // spans of all variables: scratch
	open                 corners
	best                 float64   // the least value found
	at                   []float64 // where, by the component's variables
	done                 float64   // the least bound of boxes that are finished
}

// least is a lower bound of sign times the component over spans of all variables, and
// where it is nearly reached. Variables that occur once go to an end by themselves. A
// tied variable whose slope keeps its sign goes to one end; the others are halved, at
// breaks of their demands where there are any.
func (c *component) least(p *Prover, spans []interval.Range, sign float64) (bound float64, at []float64) {
	s := &leastSearch{c: c, p: p, sign: sign, spans: slices.Clone(spans), done: math.Inf(1),
		loose: c.looseSums(p, spans), slopes: make([]interval.Range, len(c.variables))}
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
			s.done = min(s.done, box.low)
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

func (s *leastSearch) value(slopes []interval.Range) interval.Range {
	return s.c.value(s.p, s.spans, s.loose, slopes, s.sign).Scale(s.sign)
}

// look bounds a box, and keeps it if it cannot be left out.
func (s *leastSearch) look(box []interval.Range) {
	s.put(box)
	value := s.value(s.slopes)
	settled, moved := true, false
	for i := range box {
		if !s.c.tied[i] || box[i].IsPoint() {
			continue
		}
		switch g := s.slopes[i].Scale(s.sign); {
		case g.Low >= 0:
			box[i], moved = interval.Point(box[i].Low), true
		case g.High <= 0:
			box[i], moved = interval.Point(box[i].High), true
		default:
			settled = false
		}
	}
	if moved {
		s.put(box)
		value = value.Within(s.value(s.slopes))
	}
	if settled {
		s.found(value.Low, box)
		s.done = min(s.done, value.Low)
		return
	}
	middle := slices.Clone(box)
	for i := range box {
		if s.c.tied[i] {
			middle[i] = interval.Point(box[i].Middle())
		}
	}
	s.put(middle)
	at := s.value(nil)
	s.found(at.Low, middle)
	for i := range box { // the mean value form
		if s.c.tied[i] {
			at = at.Add(s.slopes[i].Scale(s.sign).Mul(box[i].Sub(middle[i])))
		}
	}
	heap.Push(&s.open, corner{box, max(value.Low, at.Low)})
}

func (s *leastSearch) put(box []interval.Range) {
	for i, v := range s.c.variables {
		s.spans[v] = box[i]
	}
}

// found takes note of a value that is reached where the tied variables are points.
func (s *leastSearch) found(value float64, box []interval.Range) {
	if s.at == nil || value < s.best {
		s.best = value
		s.at = s.at[:0]
		for i := range box {
			s.at = append(s.at, box[i].Low)
		}
	}
}

// cut is where to halve a box: the tied variable whose slope matters most, at a break
// of one of its demands or in the middle; −1 where none can be halved.
func (s *leastSearch) cut(box []interval.Range) (variable int, where float64) {
	s.put(box)
	s.value(s.slopes)
	variable = -1
	most := -1.0
	for i := range box {
		if middle := box[i].Middle(); !s.c.tied[i] || middle <= box[i].Low || middle >= box[i].High {
			continue
		}
		if weight := s.slopes[i].Greatest() * box[i].Width(); weight > most {
			variable, most = i, weight
		}
	}
	if variable < 0 {
		return variable, 0
	}
	return variable, s.p.breakIn(s.c, s.c.variables[variable], box[variable])
}

// breakIn is the break of a component's demands that is nearest to the middle of a
// stretch of a variable; the middle itself where there is none inside.
func (p *Prover) breakIn(c *component, variable int, span interval.Range) float64 {
	middle := span.Middle()
	best, found := middle, false
	c.eachTerm(func(t *term) {
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
	})
	return best
}

// eachTerm visits the factors and terms of all pieces.
func (c *component) eachTerm(visit func(*term)) {
	for i := range c.pieces {
		q := &c.pieces[i]
		for _, terms := range [][]term{q.factors, q.terms, q.loose} {
			for k := range terms {
				visit(&terms[k])
			}
		}
	}
}

func abs(x float64) float64 { return max(x, -x) }

// reach is a place where sign times the component is nearly least over spans of all
// variables: from where the tied variables are best, each of the others goes to its
// best end or break, twice around, as factors and terms depend on one another.
func (c *component) reach(p *Prover, spans []interval.Range, sign float64) []float64 {
	e := c.extent(p, spans)
	at := slices.Clone(e.lowAt)
	if sign < 0 {
		at = slices.Clone(e.highAt)
	}
	there := slices.Clone(spans)
	for i, v := range c.variables {
		there[v] = interval.Point(at[i])
	}
	value := func() float64 {
		return c.value(p, there, c.looseSums(p, there), nil, 0).Middle() * sign
	}
	for range 2 {
		for i, v := range c.variables {
			if c.tied[i] || spans[v].IsPoint() {
				continue
			}
			best := value()
			for _, x := range p.ends(c, v, spans[v]) {
				there[v] = interval.Point(x)
				if got := value(); got < best {
					best, at[i] = got, x
				}
			}
			there[v] = interval.Point(at[i])
		}
	}
	return at
}

// ends are the ends of a span of a variable, and the breaks of its demands inside.
func (p *Prover) ends(c *component, variable int, span interval.Range) []float64 {
	list := []float64{span.Low, span.High}
	c.eachTerm(func(t *term) {
		if t.at != variable {
			return
		}
		for _, x := range p.kinds[t.shape].breaks {
			if t.turned {
				x = -x
			}
			if x > span.Low && x < span.High {
				list = append(list, x)
			}
		}
	})
	return list
}

package prove

import (
	"encoding/binary"
	"math"
	"slices"

	"example.com/hingeline/mixcore/interval"
)

// component is a part of a form that shares no variable with the rest of it, so that
// its range can be found by itself.
type component struct {
	pieces    []piece
	variables []int             // ascending
	known     map[string]extent // by the spans of the variables
}

// piece is a product of factors and of a sum of terms, or one term.
type piece struct {
	factors  []term
	constant int64 // thousandths
	terms    []term
}

// extent is the range of a component over some spans.
type extent struct {
	interval.Range
	lowAt, highAt []float64 // by the component's variables: where it is nearly lowest, highest
}

// split is a form as its constant and its components.
func (p *Prover) split(f *form) (constant int64, list []*component) {
	var pieces []piece
	for _, g := range f.groups {
		if len(g.factors) > 0 {
			pieces = append(pieces, piece(g))
			continue
		}
		constant += g.constant
		for i := range g.terms {
			pieces = append(pieces, piece{terms: g.terms[i : i+1]})
		}
	}
	taken := make([]bool, len(pieces))
	for i := range pieces {
		if taken[i] {
			continue
		}
		taken[i] = true
		joined, variables := []piece{pieces[i]}, pieces[i].variables(nil)
		for grown := true; grown; {
			grown = false
			for j := i + 1; j < len(pieces); j++ {
				if taken[j] || !meets(pieces[j].variables(nil), variables) {
					continue
				}
				taken[j], grown = true, true
				joined = append(joined, pieces[j])
				variables = pieces[j].variables(variables)
			}
		}
		list = append(list, p.component(joined, variables))
	}
	return constant, list
}

func meets(a, b []int) bool {
	return slices.ContainsFunc(a, func(v int) bool { return slices.Contains(b, v) })
}

// variables adds those of the piece to a list.
func (q *piece) variables(list []int) []int {
	for _, terms := range [][]term{q.factors, q.terms} {
		for _, t := range terms {
			if !slices.Contains(list, t.at) {
				list = append(list, t.at)
			}
			if t.trim != none && !slices.Contains(list, t.trim) {
				list = append(list, t.trim)
			}
		}
	}
	return list
}

// component is the one with these pieces; equal ones are one.
func (p *Prover) component(pieces []piece, variables []int) *component {
	var key []byte
	put := func(n int) { key = binary.AppendVarint(key, int64(n)) }
	for _, q := range pieces {
		put(len(q.factors))
		put(int(q.constant))
		for _, terms := range [][]term{q.factors, q.terms} {
			for _, t := range terms {
				put(t.shape)
				put(t.at)
				put(t.trim)
				put(whole(t.turned) + 2*whole(t.trimTurned))
				put(int(t.plus))
				put(int(t.minus))
			}
		}
	}
	if c, ok := p.components[string(key)]; ok {
		return c
	}
	slices.Sort(variables)
	c := &component{variables: variables, known: map[string]extent{}}
	for _, q := range pieces {
		c.pieces = append(c.pieces, piece{slices.Clone(q.factors), q.constant, slices.Clone(q.terms)})
	}
	p.components[string(key)] = c
	return c
}

// extent is the component's range over spans of all variables.
func (c *component) extent(p *Prover, spans []interval.Range) extent {
	var room [128]byte
	key := room[:0]
	for _, v := range c.variables {
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(spans[v].Low))
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(spans[v].High))
	}
	if e, ok := c.known[string(key)]; ok {
		return e
	}
	var e extent
	e.Low, e.lowAt = c.least(p, spans, 1)
	e.High, e.highAt = c.least(p, spans, -1)
	e.High = -e.High
	c.known[string(key)] = e
	return e
}

// value encloses the component over spans, and its slopes by its variables where
// slopes is not nil, in percent for one percent.
func (c *component) value(p *Prover, spans, slopes []interval.Range) interval.Range {
	for i := range slopes {
		slopes[i] = interval.Point(0)
	}
	total := interval.Point(0)
	var room [16]interval.Range
	for i := range c.pieces {
		q := &c.pieces[i]
		if len(q.factors) == 0 {
			total = total.Add(c.term(p, &q.terms[0], spans, slopes, interval.Point(1)))
			continue
		}
		factor := interval.Point(1)
		values := room[:0]
		for k := range q.factors {
			d, _, _ := p.demand(&q.factors[k], spans)
			values = append(values, d.Scale(0.01))
			factor = factor.Mul(values[k])
		}
		inner := interval.Point(float64(q.constant)).Over(interval.Point(unit))
		for k := range q.terms {
			inner = inner.Add(c.term(p, &q.terms[k], spans, slopes, factor))
		}
		total = total.Add(inner.Mul(factor))
		if slopes == nil {
			continue
		}
		for k := range q.factors {
			rest := inner
			for other := range values {
				if other != k {
					rest = rest.Mul(values[other])
				}
			}
			t := &q.factors[k]
			_, by, trim := p.demand(t, spans)
			c.slope(slopes, t.at, by.Mul(rest).Scale(0.01))
			if t.trim != none {
				c.slope(slopes, t.trim, rest.Scale(trim).Scale(0.01))
			}
		}
	}
	return total
}

func (c *component) slope(slopes []interval.Range, variable int, by interval.Range) {
	i, _ := slices.BinarySearch(c.variables, variable)
	slopes[i] = slopes[i].Add(by)
}

// term encloses one term, and adds its slopes, times factor.
func (c *component) term(p *Prover, t *term, spans, slopes []interval.Range, factor interval.Range) interval.Range {
	d, by, trim := p.demand(t, spans)
	plus, minus := share(t.plus), share(t.minus)
	value, steep := d.Mul(plus), plus
	if t.plus != t.minus {
		switch {
		case d.High <= 0:
			value, steep = d.Mul(minus), minus
		case d.Low < 0:
			value = interval.Range{High: d.High}.Mul(plus).Hull(interval.Range{Low: d.Low}.Mul(minus))
			steep = plus.Hull(minus)
		}
	}
	if slopes != nil {
		steep = steep.Mul(factor)
		c.slope(slopes, t.at, by.Mul(steep))
		if t.trim != none {
			c.slope(slopes, t.trim, steep.Scale(trim))
		}
	}
	return value
}

func share(thousandths int64) interval.Range {
	if thousandths == unit*100 {
		return interval.Point(1)
	}
	return interval.Point(float64(thousandths)).Over(interval.Point(unit * 100))
}

// demand encloses a term's demand in percent, its slope by its control, and its slope
// by its trim.
func (p *Prover) demand(t *term, spans []interval.Range) (value, slope interval.Range, trim float64) {
	k := &p.kinds[t.shape]
	x := spans[t.at]
	if t.turned {
		x = x.Neg()
	}
	value, slope = k.shaped(p, x)
	if t.turned {
		slope = slope.Neg()
	}
	if t.trim != none {
		trim = k.trimRange / 100
		if t.trimTurned {
			trim = -trim
		}
		value = value.Add(spans[t.trim].Scale(trim))
	}
	return value, slope, trim
}

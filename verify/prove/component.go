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
	tied      []bool            // by variables: it occurs more than once, so that ranges alone are too wide
	known     map[string]extent // by the spans of the variables

	untied *component       // the same with no loose terms, for slopes; nil until asked for
	loose  []interval.Range // of untied: the constants of its pieces
}

// piece is a product of factors and of a sum of terms, or one term.
type piece struct {
	factors  []term
	constant int64  // thousandths
	terms    []term // with a variable that is tied
	loose    []term // the others: each goes to an end of its own range
}

// extent is the range of a component over some spans, with tied variables where it is
// nearly lowest and highest.
type extent struct {
	interval.Range
	lowAt, highAt []float64 // by the component's variables
}

// split is a form as its constant and its components.
func (p *Prover) split(f *form) (constant int64, list []*component) {
	var pieces []piece
	for _, g := range f.groups {
		if len(g.factors) > 0 {
			pieces = append(pieces, piece{factors: g.factors, constant: g.constant, terms: g.terms})
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
		put(len(q.terms))
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
	c := &component{variables: variables, tied: make([]bool, len(variables)), known: map[string]extent{}}
	times := map[int]int{}
	for _, q := range pieces {
		for _, terms := range [][]term{q.factors, q.terms} {
			for _, t := range terms {
				times[t.at]++
				times[t.trim]++
			}
		}
	}
	for i, v := range variables {
		c.tied[i] = times[v] > 1
	}
	times[none] = 0
	for _, q := range pieces {
		own := piece{factors: slices.Clone(q.factors), constant: q.constant}
		for _, t := range q.terms {
			if times[t.at] > 1 || times[t.trim] > 1 {
				own.terms = append(own.terms, t)
			} else {
				own.loose = append(own.loose, t)
			}
		}
		c.pieces = append(c.pieces, own)
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

// looseSums encloses, for each piece, the sum of its loose terms and its constant.
func (c *component) looseSums(p *Prover, spans []interval.Range) []interval.Range {
	sums := make([]interval.Range, len(c.pieces))
	for i := range c.pieces {
		q := &c.pieces[i]
		sums[i] = interval.Point(float64(q.constant)).Over(interval.Point(unit))
		for k := range q.loose {
			value, _, _ := p.term(&q.loose[k], spans)
			sums[i] = sums[i].Add(value)
		}
	}
	return sums
}

// value encloses the component over spans, where the loose terms and constants of its
// pieces come to loose; and its slopes by its tied variables where slopes is not nil, in
// percent for one percent.
//
// With side +1 only the least value is wanted, with −1 only the greatest: then a piece
// whose factors are not negative has its loose terms at that end of their range.
func (c *component) value(p *Prover, spans, loose, slopes []interval.Range, side float64) interval.Range {
	for i := range slopes {
		slopes[i] = interval.Point(0)
	}
	total := interval.Point(0)
	for i := range c.pieces {
		q := &c.pieces[i]
		var room [8]interval.Range
		factor, values := interval.Point(1), room[:0]
		for k := range q.factors {
			d, _, _ := p.demand(&q.factors[k], spans)
			values = append(values, d.Scale(0.01))
			factor = factor.Mul(values[k])
		}
		inner := loose[i]
		switch {
		case factor.Low < 0:
		case side > 0:
			inner.High = inner.Low
		case side < 0:
			inner.Low = inner.High
		}
		for k := range q.terms {
			t := &q.terms[k]
			value, by, trim := p.term(t, spans)
			inner = inner.Add(value)
			if slopes != nil {
				c.slope(slopes, t.at, by.Mul(factor))
				c.slope(slopes, t.trim, trim.Mul(factor))
			}
		}
		total = total.Add(inner.Mul(factor))
		if slopes == nil {
			continue
		}
		for k := range q.factors {
			rest := inner.Scale(0.01)
			for other := range values {
				if other != k {
					rest = rest.Mul(values[other])
				}
			}
			_, by, trim := p.demand(&q.factors[k], spans)
			c.slope(slopes, q.factors[k].at, by.Mul(rest))
			c.slope(slopes, q.factors[k].trim, rest.Scale(trim))
		}
	}
	return total
}

// slope adds to the slope by a variable, if that is tied.
func (c *component) slope(slopes []interval.Range, variable int, by interval.Range) {
	if i, ok := slices.BinarySearch(c.variables, variable); ok && c.tied[i] {
		slopes[i] = slopes[i].Add(by)
	}
}

// slopesOver encloses the slopes by all variables over spans, tied or not.
func (c *component) slopesOver(p *Prover, spans []interval.Range) []interval.Range {
	if c.untied == nil {
		c.untied = &component{variables: c.variables, tied: slices.Repeat([]bool{true}, len(c.variables))}
		for _, q := range c.pieces {
			c.untied.pieces = append(c.untied.pieces, piece{factors: q.factors, constant: q.constant, terms: slices.Concat(q.terms, q.loose)})
		}
		c.untied.loose = c.untied.looseSums(p, spans)
	}
	slopes := make([]interval.Range, len(c.variables))
	c.untied.value(p, spans, c.untied.loose, slopes, 0)
	return slopes
}

// term encloses one term with its share, and its slopes by its control and its trim.
func (p *Prover) term(t *term, spans []interval.Range) (value, slope, byTrim interval.Range) {
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
	return value, by.Mul(steep), steep.Scale(trim)
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

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
	root      *node
	leaves    []leaf
	variables []int             // ascending
	tied      []bool            // by variables: it comes in by more than one way, so that ranges alone are too wide
	bent      []bool            // by variables: it scales what it is in itself, so that it may bend the sum
	loose     bool              // none is tied
	known     map[string]extent // by the spans of the variables
	roughly   map[string]interval.Range
}

// piece is a product of factors and of a sum of terms, or one term.
type piece struct {
	factors  []term
	constant int64 // thousandths
	terms    []term
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
	c := &component{variables: variables, known: map[string]extent{}, roughly: map[string]interval.Range{}}
	c.root = c.nest(p, pieces)
	c.count()
	p.components[string(key)] = c
	return c
}

// key is the spans of the component's variables, for its memory.
func (c *component) key(spans []interval.Range, key []byte) []byte {
	for _, v := range c.variables {
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(spans[v].Low))
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(spans[v].High))
	}
	return key
}

// rough encloses the component over spans of all variables quickly: where it has tied
// variables not as closely as extent does.
func (c *component) rough(p *Prover, spans []interval.Range) interval.Range {
	var room [128]byte
	key := c.key(spans, room[:0])
	if e, ok := c.known[string(key)]; ok {
		return e.Range
	}
	if r, ok := c.roughly[string(key)]; ok {
		return r
	}
	r := c.value(p, spans)
	c.roughly[string(key)] = r
	return r
}

// extent is the component's range over spans of all variables.
func (c *component) extent(p *Prover, spans []interval.Range) extent {
	var room [128]byte
	key := c.key(spans, room[:0])
	if e, ok := c.known[string(key)]; ok {
		return e
	}
	var e extent
	if c.loose {
		e.Range = c.value(p, spans)
	} else {
		e.Low, e.lowAt = c.least(p, spans, 1)
		e.High, e.highAt = c.least(p, spans, -1)
		e.High = -e.High
	}
	if p.corners < p.enough { // else it was cut short, and the next claim may know better
		c.known[string(key)] = e
	}
	return e
}

func share(thousandths int64) interval.Range {
	if thousandths == unit*100 {
		return interval.Point(1)
	}
	return interval.Point(float64(thousandths)).Over(interval.Point(unit * 100))
}

package prove

import (
	"slices"

	"example.com/hingeline/mixcore/interval"
)

// reach is a place where sign times the component is nearly least over spans of all
// variables: from where the tied variables are best, each of the others goes to its
// best end or break, twice around, as factors and terms depend on one another.
func (c *component) reach(p *Prover, spans []interval.Range, sign float64) []float64 {
	at := make([]float64, len(c.variables))
	e := c.extent(p, spans)
	best := e.lowAt
	if sign < 0 {
		best = e.highAt
	}
	there := slices.Clone(spans)
	for i, v := range c.variables {
		at[i] = spans[v].Middle()
		if c.tied[i] {
			at[i] = best[i]
		}
		there[v] = interval.Point(at[i])
	}
	value := func() float64 { return c.value(p, there).Middle() * sign }
	for range 2 {
		for i, v := range c.variables {
			if c.tied[i] || spans[v].IsPoint() {
				continue
			}
			best := value()
			for _, x := range c.ends(v, spans[v]) {
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
func (c *component) ends(variable int, span interval.Range) []float64 {
	list := []float64{span.Low, span.High}
	c.eachBreak(variable, span, func(x float64) { list = append(list, x) })
	return list
}

package prove

import (
	"slices"

	"example.com/hingeline/mixcore/interval"
)

// node is a sum of a constant, of terms, and of products of a factor and another node:
// a mix as its lines are written, so that a control that scales a sum occurs once and
// not once for each of the sum's terms.
type node struct {
	constant interval.Range // percent
	terms    []shared
	products []scaled
}

// shared is a demand with its share.
type shared struct {
	leaf        int
	plus, minus interval.Range
	even        bool // plus and minus are the same
}

type scaled struct {
	factor int // leaf; its hundredth counts
	inner  *node

	by, value interval.Range // of factor and inner, when last asked
}

// leaf is a demand at its variables, with what was found out about it last.
type leaf struct {
	term
	k                *shape
	atIndex, trimAt  int // into the component's variables; trimAt −1 without a trim
	perTrim          float64
	x, trimSpan      interval.Range // where it was looked at
	value            interval.Range
	slope            interval.Range // by its control
	known, steepness bool           // value, slope are known
}

// nest writes a sum of pieces with what most of them are scaled by outermost.
func (c *component) nest(p *Prover, pieces []piece) *node {
	n := &node{}
	var constant int64
	var plain group
	for len(pieces) > 0 {
		f, ok := commonest(pieces)
		if !ok {
			break
		}
		var inner, rest []piece
		for _, q := range pieces {
			i := slices.IndexFunc(q.factors, f.same)
			if i < 0 {
				rest = append(rest, q)
				continue
			}
			q.factors = slices.Delete(slices.Clone(q.factors), i, i+1)
			inner = append(inner, q)
		}
		n.products = append(n.products, scaled{factor: c.leaf(p, f), inner: c.nest(p, inner)})
		pieces = rest
	}
	for _, q := range pieces {
		constant += q.constant
		for _, t := range q.terms {
			plain.add(t)
		}
	}
	n.constant = interval.Point(float64(constant)).Over(interval.Point(unit))
	for _, t := range plain.terms {
		if t.plus != 0 || t.minus != 0 {
			n.terms = append(n.terms, shared{leaf: c.leaf(p, t), plus: share(t.plus), minus: share(t.minus), even: t.plus == t.minus})
		}
	}
	return n
}

// commonest is the factor that most pieces have; not ok where none has one.
func commonest(pieces []piece) (best term, ok bool) {
	most := 0
	for i := range pieces {
		for _, f := range pieces[i].factors {
			count := 0
			for k := range pieces {
				if slices.ContainsFunc(pieces[k].factors, f.same) {
					count++
				}
			}
			if count > most || count == most && compareTerms(f, best) < 0 {
				best, most = f, count
			}
		}
	}
	return best, most > 0
}

// leaf is the number of a demand at its variables.
func (c *component) leaf(p *Prover, t term) int {
	for i := range c.leaves {
		if c.leaves[i].same(t) {
			return i
		}
	}
	l := leaf{term: t, k: &p.kinds[t.shape], trimAt: none}
	l.atIndex, _ = slices.BinarySearch(c.variables, t.at)
	if t.trim != none {
		l.trimAt, _ = slices.BinarySearch(c.variables, t.trim)
		l.perTrim = l.k.trimRange / 100
		if t.trimTurned {
			l.perTrim = -l.perTrim
		}
	}
	c.leaves = append(c.leaves, l)
	return len(c.leaves) - 1
}

// count finds which variables are tied and which bend. Those that come in once need no
// search: whatever the others are, the range over them is that of the ranges.
func (c *component) count() {
	c.tied, c.bent = make([]bool, len(c.variables)), make([]bool, len(c.variables))
	ways := make([]int, len(c.variables))
	c.eachLeaf(c.root, func(l *leaf) {
		ways[l.atIndex]++
		if l.trimAt != none {
			ways[l.trimAt]++
		}
	})
	c.loose = true
	for i, n := range ways {
		if n > 1 {
			c.tied[i], c.loose = true, false
		}
	}
	c.bends(c.root)
}

// bends finds the variables of factors that are in what they scale as well.
func (c *component) bends(n *node) {
	for i := range n.products {
		q := &n.products[i]
		f := &c.leaves[q.factor]
		c.eachLeaf(q.inner, func(l *leaf) {
			for _, v := range []int{l.atIndex, l.trimAt} {
				if v != none && (v == f.atIndex || v == f.trimAt) {
					c.bent[v] = true
				}
			}
		})
		c.bends(q.inner)
	}
}

// eachLeaf visits the demands in a node, as often as they are in it.
func (c *component) eachLeaf(n *node, visit func(*leaf)) {
	for i := range n.terms {
		visit(&c.leaves[n.terms[i].leaf])
	}
	for i := range n.products {
		visit(&c.leaves[n.products[i].factor])
		c.eachLeaf(n.products[i].inner, visit)
	}
}

// look brings a leaf's value up to date.
func (l *leaf) look(p *Prover, spans []interval.Range) interval.Range {
	x, trim := spans[l.at], interval.Range{}
	if l.trim != none {
		trim = spans[l.trim]
	}
	if l.known && x == l.x && trim == l.trimSpan {
		return l.value
	}
	l.x, l.trimSpan, l.known, l.steepness = x, trim, true, false
	if l.turned {
		x = x.Neg()
	}
	l.value = l.k.value(p, x)
	if l.trim != none {
		l.value = l.value.Add(trim.Scale(l.perTrim))
	}
	return l.value
}

// steep is the slope of a leaf, by its control, where it was looked at last.
func (l *leaf) steep(p *Prover) interval.Range {
	if !l.steepness {
		x := l.x
		if l.turned {
			x = x.Neg()
		}
		l.slope, l.steepness = l.k.slope(p, x), true
		if l.turned {
			l.slope = l.slope.Neg()
		}
	}
	return l.slope
}

// value encloses the component over spans of all variables.
func (c *component) value(p *Prover, spans []interval.Range) interval.Range {
	return c.sum(p, c.root, spans)
}

func (c *component) sum(p *Prover, n *node, spans []interval.Range) interval.Range {
	total := n.constant
	for i := range n.terms {
		t := &n.terms[i]
		total = total.Add(t.over(c.leaves[t.leaf].look(p, spans)))
	}
	for i := range n.products {
		q := &n.products[i]
		q.by = c.leaves[q.factor].look(p, spans).Scale(0.01)
		q.value = c.sum(p, q.inner, spans)
		total = total.Add(q.by.Mul(q.value))
	}
	return total
}

// over encloses the demand's share.
func (t *shared) over(d interval.Range) interval.Range {
	switch {
	case t.even || d.Low >= 0:
		return d.Mul(t.plus)
	case d.High <= 0:
		return d.Mul(t.minus)
	}
	return interval.Range{High: d.High}.Mul(t.plus).Hull(interval.Range{Low: d.Low}.Mul(t.minus))
}

// per is the share that counts, or both.
func (t *shared) per(d interval.Range) interval.Range {
	switch {
	case t.even || d.Low > 0:
		return t.plus
	case d.High < 0:
		return t.minus
	}
	return t.plus.Hull(t.minus)
}

// slopes encloses how much the component changes with each of its variables, where
// value was asked last, in percent for one percent. Only those of wanted count, where
// it is not nil.
func (c *component) slopes(p *Prover, slopes []interval.Range, wanted []bool) {
	clear(slopes)
	c.slope(p, c.root, slopes, wanted, interval.Point(1))
}

func (c *component) slope(p *Prover, n *node, slopes []interval.Range, wanted []bool, by interval.Range) {
	for i := range n.terms {
		t := &n.terms[i]
		l := &c.leaves[t.leaf]
		l.pass(p, slopes, wanted, t.per(l.value).Mul(by))
	}
	for i := range n.products {
		q := &n.products[i]
		c.leaves[q.factor].pass(p, slopes, wanted, q.value.Mul(by).Scale(0.01))
		c.slope(p, q.inner, slopes, wanted, q.by.Mul(by))
	}
}

// pass adds what comes through a leaf to the slopes.
func (l *leaf) pass(p *Prover, slopes []interval.Range, wanted []bool, by interval.Range) {
	if wanted == nil || wanted[l.atIndex] {
		slopes[l.atIndex] = slopes[l.atIndex].Add(l.steep(p).Mul(by))
	}
	if l.trimAt != none && (wanted == nil || wanted[l.trimAt]) {
		slopes[l.trimAt] = slopes[l.trimAt].Add(by.Scale(l.perTrim))
	}
}

// slopesOver encloses the slopes by all variables over spans.
func (c *component) slopesOver(p *Prover, spans []interval.Range) []interval.Range {
	slopes := make([]interval.Range, len(c.variables))
	c.value(p, spans)
	c.slopes(p, slopes, nil)
	return slopes
}

package prove

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
)

// rangeOf is a range of margins.
type rangeOf = interval.Range

// ready is a form made ready for ranges.
type ready struct {
	form     *form
	constant interval.Range
	list     []*component
	slop     float64
}

func (p *Prover) ready(f *form) *ready {
	if c, ok := f.constant(); ok {
		return &ready{form: f, constant: c}
	}
	constant, list := p.split(f)
	return &ready{form: f, constant: interval.Point(float64(constant) / unit).Widen(0), list: list, slop: f.slop}
}

// over encloses the form over spans of all variables, closely or quickly.
func (r *ready) over(p *Prover, spans []interval.Range, fine bool) interval.Range {
	total := r.constant
	for _, c := range r.list {
		if fine {
			total = total.Add(c.extent(p, spans).Range)
		} else {
			total = total.Add(c.rough(p, spans))
		}
	}
	if r.slop > 0 {
		total = total.Widen(r.slop)
	}
	return total
}

// reach writes into values where the form is nearly lowest, or highest.
func (r *ready) reach(p *Prover, spans []interval.Range, sign float64, values []float64) {
	for _, c := range r.list {
		at := c.reach(p, spans, sign)
		for i, v := range c.variables {
			values[v] = at[i]
		}
	}
}

// slopeBy encloses how much the form changes with one variable, in percent for one
// percent.
func (r *ready) slopeBy(p *Prover, spans []interval.Range, variable int) interval.Range {
	for _, c := range r.list {
		if i, ok := slices.BinarySearch(c.variables, variable); ok {
			return c.slopesOver(p, spans)[i]
		}
	}
	return interval.Point(0)
}

// place is one cell of a board with the forms that were looked at in it.
type place struct {
	b     *board
	cell  *cell
	forms []formHere
}

type formHere struct {
	formKey
	*ready
}

// formKey is a channel's form in a view, or with turn the difference between it and
// turn times that of another channel in another view.
type formKey struct {
	channel int
	other   bool
	turn    int64 // 0, +1 or −1
	second  int
	beside  bool // view of the second
}

func (at *place) form(channel int, other bool) *ready {
	return at.ready(formKey{channel: channel, other: other})
}

func (at *place) ready(k formKey) *ready {
	for i := range at.forms {
		if at.forms[i].formKey == k {
			return at.forms[i].ready
		}
	}
	var r *ready
	if k.turn != 0 {
		r = at.b.p.difference(at.form(k.channel, k.other), k.turn, at.form(k.second, k.beside))
	} else if k.other {
		r = at.b.formIn(k.channel, &at.b.other, at.cell.other)
	} else {
		r = at.b.formIn(k.channel, &at.b.now, at.cell.now)
	}
	at.forms = append(at.forms, formHere{k, r})
	return r
}

// box is a part of a cell, being looked at.
type box struct {
	*place
	spans []interval.Range
	depth int       // how often the cell was cut to come to it
	tries []formKey // forms at whose ends the margin is likely least
	fine  bool      // ranges are to be found as closely as they can be, not just quickly

	// target is a margin that there is no need to look beyond: a bound may stop as
	// soon as the margin is known to be that much.
	target float64
}

// atLeast is the range of values with the target to spare to both ends.
func (b *box) atLeast(low, high float64) interval.Range {
	r := interval.Range{Low: low + b.target, High: high - b.target}
	if r.Low > r.High {
		return interval.Point(low)
	}
	return r
}

// home are values inside the spans, as near to rest as can be.
func (b *box) home() []float64 {
	values := make([]float64, len(b.spans))
	for i, s := range b.spans {
		values[i] = min(max(b.b.p.setup.Controls[i%b.b.n].Rest(), s.Low), s.High)
	}
	return values
}

// try takes note of a form at whose ends the margin is likely least.
func (b *box) try(k formKey) {
	if !slices.Contains(b.tries, k) {
		b.tries = append(b.tries, k)
	}
}

// places are values of the variables at which the margin is likely least.
func (b *box) places() [][]float64 {
	list := [][]float64{b.home(), b.middle()}
	for _, k := range b.tries {
		r := b.ready(k)
		if len(r.list) == 0 {
			continue
		}
		for _, sign := range []float64{1, -1} {
			values := b.home()
			r.reach(b.b.p, b.spans, sign, values)
			list = append(list, values)
		}
	}
	return list
}

func (b *box) view(other bool) *view {
	if other {
		return &b.b.other
	}
	return &b.b.now
}

// sum encloses a channel's sum in a view.
func (b *box) sum(channel int, other bool) interval.Range {
	return b.form(channel, other).over(b.b.p, b.spans, b.fine)
}

// place encloses where a part stands in a view, in degrees or percent.
func (b *box) where(part int, other bool) interval.Range {
	p := b.b.p
	drives := p.setup.Parts[part].Drives
	lost := b.view(other).lost
	if len(drives) == 1 {
		t := b.b.tail(part, 0, lost)
		b.try(formKey{channel: t.channel, other: other})
		return t.over(b.sum(t.channel, other))
	}
	total := interval.Point(0)
	for i := range drives {
		t := b.b.tail(part, i, lost)
		b.try(formKey{channel: t.channel, other: other})
		total = total.Add(t.over(b.sum(t.channel, other)))
	}
	return b.stopped(part, total.Over(interval.Point(float64(len(drives)))))
}

// stopped holds a range of angles at the part's stops.
func (b *box) stopped(part int, r interval.Range) interval.Range {
	s := &b.b.p.setup.Parts[part].Stops
	hold := func(x float64) float64 { return min(max(x, -float64(s.Minus)), float64(s.Plus)) }
	return interval.Range{Low: hold(r.Low), High: hold(r.High)}
}

// tail is a part's drive; each is made once for a board.
func (b *board) tail(part, drive int, lost bool) *tail {
	key := [3]int{part, drive, whole(lost)}
	if t, ok := b.p.tails[key]; ok {
		return t
	}
	t := b.p.tail(part, drive, lost)
	b.p.tails[key] = t
	return t
}

// differ encloses place(first) in one view − side·place(second) in another. It need
// not be told more closely than that it is inside want.
func (b *box) differ(first int, firstOther bool, second int, secondOther bool, side float64, want interval.Range) interval.Range {
	p := b.b.p
	one, two := p.setup.Parts[first].Drives, p.setup.Parts[second].Drives
	whole := b.where(first, firstOther).Sub(b.where(second, secondOther).Scale(side))
	if len(one) != len(two) {
		return whole
	}
	n := float64(len(one))
	total := interval.Point(0)
	for i := range one {
		total = total.Add(b.gap(first, i, firstOther, second, secondOther, side, want))
	}
	if len(one) == 1 {
		return total.Within(whole)
	}
	total = total.Over(interval.Point(n)).Widen(outputError) // the Plan rounds each mean
	switch {
	case b.free(first, firstOther) && b.free(second, secondOther):
	case first == second && side == 1: // a stop holds back, but never turns about
		total = total.Hull(interval.Point(0))
	default:
		return whole
	}
	return total.Within(whole)
}

// free says whether a part of several servos never reaches its stops in the box.
func (b *box) free(part int, other bool) bool {
	r := b.where(part, other)
	s := &b.b.p.setup.Parts[part].Stops
	return r.Low > -float64(s.Minus) && r.High < float64(s.Plus)
}

func (b *box) gap(first, drive int, firstOther bool, second int, secondOther bool, side float64, want interval.Range) interval.Range {
	p := b.b.p
	g := gap{a: b.b.tail(first, drive, b.view(firstOther).lost), b: b.b.tail(second, drive, b.view(secondOther).lost), side: side}
	g.turn = turnFor(g.a, g.b, side)
	g.same = g.a.same(g.b, g.turn, side)
	key := formKey{channel: g.a.channel, other: firstOther, turn: int64(g.turn), second: g.b.channel, beside: secondOther}
	b.try(key)
	g.u, g.w = b.sum(g.a.channel, firstOther), b.sum(g.b.channel, secondOther)
	if g.turn < 0 {
		g.w = g.w.Neg()
	}
	g.apart = b.ready(key).over(p, b.spans, b.fine)
	if !b.fine {
		want = interval.Everything
	}
	return p.gapOver(g, want)
}

// allOften is how often a box is cut by the forms of single channels, and not by the
// differences between forms: every so many cuts.
const allOften = 4

// influence is how much each variable bears on what was looked at in the box. Where
// forms are compared, the variables of the differences come first: what two forms share
// does not matter to their difference.
func (b *box) influence() []float64 {
	if w, ok := b.b.c.Want.(Rising); ok {
		return b.risingInfluence(b.b.now.variable[w.Control])
	}
	if b.depth%allOften != allOften-1 {
		weights := b.weigh(func(k formKey) bool { return k.turn != 0 })
		if slices.ContainsFunc(weights, func(w float64) bool { return w > leastGap }) {
			return weights
		}
	}
	return b.weigh(func(formKey) bool { return true })
}

// risingInfluence: which way a part goes as a control moves depends mostly on the other
// controls, and on the control itself only where its demands have breaks or bend.
func (b *box) risingInfluence(control int) []float64 {
	weights := b.weigh(func(formKey) bool { return true })
	if b.depth%ownOften == ownOften-1 || b.broken(control) {
		return weights
	}
	own := weights[control]
	weights[control] = 0
	if !slices.ContainsFunc(weights, func(w float64) bool { return w > leastGap }) {
		weights[control] = own
	}
	return weights
}

// ownOften is how often a box is cut along the control that moves: every so many cuts.
const ownOften = 6

// broken says whether a demand of a variable has a break inside the box.
func (b *box) broken(variable int) bool {
	for _, r := range b.forms {
		for _, c := range r.list {
			if _, broken := b.b.p.breakIn(c, variable, b.spans[variable]); broken {
				return true
			}
		}
	}
	return false
}

func (b *box) weigh(counts func(formKey) bool) []float64 {
	weights := make([]float64, len(b.spans))
	for _, r := range b.forms {
		if !counts(r.formKey) {
			continue
		}
		for _, c := range r.list {
			slopes := c.slopesOver(b.b.p, b.spans)
			for i, v := range c.variables {
				if by := slopes[i].Greatest() * b.spans[v].Width(); !math.IsNaN(by) {
					weights[v] = max(weights[v], by)
				}
			}
		}
	}
	return weights
}

// halves cuts a box in two where that tells most: nil if it is a point.
func (b *box) halves() [][]interval.Range {
	variable, most := -1, 0.0
	for v, weight := range b.influence() {
		s := b.spans[v]
		if b.b.p.setup.Controls[v%b.b.n].Kind == mixcore.SwitchControl || s.Middle() <= s.Low || s.Middle() >= s.High {
			continue
		}
		if weight > most {
			variable, most = v, weight
		}
	}
	if variable < 0 {
		return nil
	}
	where := b.cutAt(variable)
	low, high := slices.Clone(b.spans), slices.Clone(b.spans)
	low[variable].High, high[variable].Low = where, where
	return [][]interval.Range{low, high}
}

// cutAt is where to cut a variable: at a break of a demand, else in the middle.
func (b *box) cutAt(variable int) float64 {
	s := b.spans[variable]
	middle := s.Middle()
	best, found := middle, false
	for _, r := range b.forms {
		for _, c := range r.list {
			if _, ok := slices.BinarySearch(c.variables, variable); !ok {
				continue
			}
			if x, broken := b.b.p.breakIn(c, variable, s); broken && (!found || abs(x-middle) < abs(best-middle) || abs(x-middle) == abs(best-middle) && x < best) {
				best, found = x, true
			}
		}
	}
	return best
}

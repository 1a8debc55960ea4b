package prove

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
)

// form is what a channel's sum comes to in one cell, in percent: the sum of its
// groups. In a group everything is multiplied by the group's factors, which scale_by
// lines brought; terms of the same demand are one term.
type form struct {
	groups []group
	slop   float64 // how far the Plan's rounding can lead away from the real sum
}

type group struct {
	factors  []term // each a demand/100; shares do not count
	constant int64  // thousandths of a percent
	terms    []term
}

// term is one demand with its share: plus·d/100 where d ≥ 0, minus·d/100 where d < 0.
type term struct {
	shape       int  // number of the demand's shape
	at          int  // variable of its control
	turned      bool // its control is mirrored
	trim        int  // variable of its trim, or none
	trimTurned  bool
	plus, minus int64 // thousandths of a percent
}

// none is the trim of a term without one.
const none = -1

// unit is the unit of settings: thousandths.
const unit = 1000

// form builds a channel's form in one view of a cell.
func (b *board) form(channel int, v *view, w weights) *form {
	var f form
	lines := b.p.setup.Channels[channel].Mix
	size, errors := 0.0, 0.0
	constants := 0 // what was put in since the last replace_with; 2 is enough to round
	for i := range lines {
		l := &lines[i]
		if when := b.p.plan.LineCondition(channel, i); when >= 0 && w[when] == 0 {
			continue
		}
		switch l.Op {
		case mixcore.Add:
			t := b.term(l.Demand, v, w)
			var off float64
			t.plus, off = thousandths(float64(l.Share.Plus))
			errors += off * b.p.kinds[t.shape].most / 100
			t.minus, off = thousandths(float64(l.Share.Minus))
			errors += off * b.p.kinds[t.shape].most / 100
			size += max(math.Abs(float64(l.Share.Plus)), math.Abs(float64(l.Share.Minus))) * b.p.kinds[t.shape].most / 100
			switch b.p.kinds[t.shape].never { // a share for a side that never comes does not count
			case -1:
				t.minus = t.plus
			case 1:
				t.plus = t.minus
			}
			f.open().add(b.p.normal(t))
			constants = 2
		case mixcore.Fixed:
			whole, off := thousandths(float64(l.Value))
			size, errors = size+math.Abs(float64(l.Value)), errors+off
			f.open().constant += whole
			constants++
		case mixcore.ScaleBy:
			t := b.term(l.Demand, v, w)
			constants = 2
			for g := range f.groups {
				f.groups[g].factors = append(f.groups[g].factors, t)
			}
		case mixcore.ReplaceWith:
			whole, off := thousandths(float64(l.Value))
			f.groups, size, errors, constants = nil, math.Abs(float64(l.Value)), off, 1
			f.open().constant = whole
		}
	}
	f.tidy()
	f.slop = errors
	if constants > 1 || len(f.groups) > 1 {
		f.slop += float64(len(lines)) * size * roundings
	}
	return &f
}

// roundings bounds the relative error of what one line of a mix does to the sum: four
// roundings of 2⁻⁵³ each, one of which is that of the share to binary, and as much
// again for a scale line.
const roundings = 0x1p-50

// thousandths is a setting as a whole number of thousandths, and how far off that is:
// 0 for the settings that an airframe file can have.
func thousandths(x float64) (whole int64, off float64) {
	n := math.Round(x * unit)
	return int64(n), math.Abs(x - n/unit)
}

// open is the group that lines now add to: the last, if nothing has scaled it yet.
func (f *form) open() *group {
	if n := len(f.groups); n > 0 && len(f.groups[n-1].factors) == 0 {
		return &f.groups[n-1]
	}
	f.groups = append(f.groups, group{})
	return &f.groups[len(f.groups)-1]
}

// term is a demand in a view, with the rate that is in force, without a share.
func (b *board) term(demand int, v *view, w weights) term {
	rate := 0
	for ; ; rate++ {
		if when := b.p.plan.RateCondition(demand, rate); when < 0 || w[when] == 1 {
			break
		}
	}
	t := term{shape: b.p.shapes[demand][rate], trim: none}
	k := &b.p.kinds[t.shape]
	t.at, t.turned = v.variable[k.control], v.mirrored[k.control]
	if k.trim != mixcore.NoTrim && k.trimRange != 0 {
		t.trim, t.trimTurned = v.variable[k.trim], v.mirrored[k.trim]
	}
	return t
}

// normal writes a mirrored term of an odd demand as one that is not mirrored: with
// d(−x) = −d(x), the share of the one side becomes minus that of the other.
func (p *Prover) normal(t term) term {
	if t.turned && p.kinds[t.shape].odd && (t.trim == none || t.trimTurned) {
		t.turned, t.trimTurned = false, false
		t.plus, t.minus = -t.minus, -t.plus
	}
	return t
}

// same says whether two terms are of the same demand at the same variables.
func (t term) same(u term) bool {
	return t.shape == u.shape && t.at == u.at && t.turned == u.turned && t.trim == u.trim && t.trimTurned == u.trimTurned
}

// add adds a term, to one of the same demand where there is one.
func (g *group) add(t term) {
	for i := range g.terms {
		if g.terms[i].same(t) {
			g.terms[i].plus += t.plus
			g.terms[i].minus += t.minus
			return
		}
	}
	g.terms = append(g.terms, t)
}

// tidy puts factors in order, joins groups with the same ones, and drops terms that
// have come to nothing.
func (f *form) tidy() {
	var groups []group
	for _, g := range f.groups {
		slices.SortFunc(g.factors, compareTerms)
		i := slices.IndexFunc(groups, func(h group) bool { return slices.EqualFunc(g.factors, h.factors, term.same) })
		if i < 0 {
			groups = append(groups, group{factors: g.factors})
			i = len(groups) - 1
		}
		groups[i].constant += g.constant
		for _, t := range g.terms {
			groups[i].add(t)
		}
	}
	f.groups = groups[:0]
	for _, g := range groups {
		g.terms = slices.DeleteFunc(g.terms, func(t term) bool { return t.plus == 0 && t.minus == 0 })
		if g.constant != 0 || len(g.terms) > 0 {
			slices.SortFunc(g.terms, compareTerms)
			f.groups = append(f.groups, g)
		}
	}
}

func compareTerms(a, b term) int {
	for _, pair := range [][2]int{{a.at, b.at}, {a.shape, b.shape}, {a.trim, b.trim}, {whole(a.turned), whole(b.turned)}, {whole(a.trimTurned), whole(b.trimTurned)}} {
		if pair[0] != pair[1] {
			return pair[0] - pair[1]
		}
	}
	return 0
}

func whole(b bool) int {
	if b {
		return 1
	}
	return 0
}

// minus is f − sign·g, with what they share gone.
func (f *form) minus(sign int64, g *form) *form {
	d := form{slop: f.slop + g.slop}
	for _, h := range f.groups {
		d.groups = append(d.groups, group{factors: h.factors, constant: h.constant, terms: slices.Clone(h.terms)})
	}
	for _, h := range g.groups {
		turned := group{factors: h.factors, constant: -sign * h.constant}
		for _, t := range h.terms {
			t.plus, t.minus = -sign*t.plus, -sign*t.minus
			turned.terms = append(turned.terms, t)
		}
		d.groups = append(d.groups, turned)
	}
	d.tidy()
	return &d
}

// constant is the value of a form in which nothing moves.
func (f *form) constant() (interval.Range, bool) {
	total := int64(0)
	for _, g := range f.groups {
		if len(g.terms) > 0 || len(g.factors) > 0 {
			return interval.Range{}, false
		}
		total += g.constant
	}
	value := interval.Point(float64(total) / unit)
	if f.slop > 0 {
		value = value.Widen(f.slop)
	}
	return value, true
}

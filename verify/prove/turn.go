package prove

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/mixcore/interval"
)

func (w Turn) uses(p *Prover) uses {
	var parts []int
	for i := range p.setup.Parts {
		if p.air.Acts(i) {
			parts = append(parts, i)
		}
	}
	return usesOf(p, nil, parts)
}

func (w Turn) margin(p *Prover, now, other *mixcore.Output) float64 {
	c := p.air.Change(other, now)
	switch {
	case w.None:
		return strictly(interval.Point(c.Quiet(w.Axis))).Low
	case w.Not && !w.Told:
		return strictly(interval.Point(c.Away(w.Axis, w.Plus))).Low
	case w.Not: // clear at 0 turns it already
		return strictly(interval.Point(-c.Clear(w.Axis, w.Plus))).Low
	}
	return c.Clear(w.Axis, w.Plus)
}

// turning is a movement of the model as ranges.
type turning struct {
	roll, pitch, yaw interval.Range
	unsure           interval.Range // of the pitch
}

func (b *box) turning() turning {
	var t turning
	unplaced := interval.Point(0)
	for _, part := range b.b.uses.parts {
		in := &b.b.p.influence[part]
		by := b.moves(part)
		size := interval.Point(0)
		if in.Size != (effect.Moment{}) {
			size = b.where(part, false).Abs().Sub(b.where(part, true).Abs())
			most := by.Greatest() // | |x| − |y| | ≤ |x − y|
			size = size.Within(interval.Range{Low: -most, High: most})
		}
		add := func(sum *interval.Range, each, perSize float64) {
			*sum = sum.Add(by.Scale(each)).Add(size.Scale(perSize))
		}
		add(&t.roll, in.Each.Roll, in.Size.Roll)
		add(&t.pitch, in.Each.Pitch, in.Size.Pitch)
		add(&t.yaw, in.Each.Yaw, in.Size.Yaw)
		unplaced = unplaced.Add(by.Scale(in.Unplaced))
	}
	t.unsure = unplaced.Abs().Scale(effect.UnplacedArm)
	// What sums of some dozen products may be off by in the Plan's own arithmetic.
	for _, r := range []*interval.Range{&t.roll, &t.pitch, &t.yaw, &t.unsure} {
		*r = r.Widen(momentError)
	}
	t.unsure.Low = max(t.unsure.Low, 0)
	return t
}

const momentError = 1e-9

func (t *turning) about(axis mixcore.Axis) interval.Range {
	switch axis {
	case mixcore.Roll:
		return t.roll
	case mixcore.Pitch:
		return t.pitch
	}
	return t.yaw
}

// bound follows effect.Change.Clear and Quiet. What is enough is the greatest of a
// floor and of a part of each of three moments; the moment asked about is one of them,
// and against its own part it keeps the rest.
func (w Turn) bound(b *box) rangeOf {
	t := b.turning()
	m := t.about(w.Axis)
	if !w.Plus && !w.None {
		m = m.Neg()
	}
	if w.None {
		return strictly(interval.Point(effect.LeastMoment).Sub(m.Abs()).Sub(t.doubt(w.Axis)))
	}
	unsure := t.doubt(w.Axis)
	if w.Not && !w.Told {
		return strictly(interval.Point(effect.LeastMoment).Sub(m).Sub(unsure))
	}
	if w.Axis == mixcore.Roll && b.b.p.air.Rollers() {
		unsure = interval.Point(0)
	}
	enough := interval.Point(effect.LeastMoment)
	for axis := mixcore.Roll; axis <= mixcore.Yaw; axis++ {
		size := t.about(axis).Abs()
		if axis == mixcore.Pitch {
			size = size.Sub(t.unsure)
		}
		if axis != w.Axis {
			enough = enough.Max(size.Scale(effect.Significant))
		}
	}
	if w.Not {
		return strictly(b.clear(m, unsure, enough, w.Axis).Neg())
	}
	return b.clear(m, unsure, enough, w.Axis)
}

// doubt is by how much a moment may be off either way, as effect.Change has it.
func (t *turning) doubt(axis mixcore.Axis) interval.Range {
	switch axis {
	case mixcore.Roll:
		return t.yaw.Abs().Scale(effect.Dihedral)
	case mixcore.Pitch:
		return t.unsure
	}
	return interval.Point(0)
}

// clear encloses m − unsure − max(enough, part of |m|, less the unsure for pitch): the
// smaller of what is clear of the others and of what m is clear of its own part.
func (b *box) clear(m, unsure, enough interval.Range, axis mixcore.Axis) interval.Range {
	own := m.Scale(1 - effect.Significant).Min(m.Scale(1 + effect.Significant)).Sub(unsure)
	if axis == mixcore.Pitch {
		own = own.Add(unsure.Scale(effect.Significant))
	}
	return m.Sub(unsure).Sub(enough).Min(own)
}

package prove

import (
	"encoding/binary"
	"slices"

	"example.com/hingeline/mixcore"
)

// bearing is what decides a channel's form: which conditions hold, and which variables
// its controls are.
type bearing struct {
	conditions []int // of the plan
	controls   []int
}

func (p *Prover) bearsOn(channel int) bearing {
	u := usesOf(p, []int{channel}, nil)
	b := bearing{conditions: u.weights}
	u.demands(p, func(demand int) {
		d := &p.setup.Demands[demand]
		b.controls = append(b.controls, d.From)
		if d.Trim != mixcore.NoTrim {
			b.controls = append(b.controls, d.Trim)
		}
	})
	slices.Sort(b.controls)
	b.controls = slices.Compact(b.controls)
	return b
}

// formIn is a channel's form in one view of a cell. Equal ones are one, in all claims of
// a prover.
func (b *board) formIn(channel int, v *view, w weights) *ready {
	var room [128]byte
	key := binary.AppendUvarint(room[:0], uint64(channel))
	bears := &b.p.bears[channel]
	for _, i := range bears.conditions {
		key = append(key, byte(w[i]))
	}
	for _, i := range bears.controls {
		key = binary.AppendUvarint(key, uint64(2*v.variable[i]+whole(v.mirrored[i])))
	}
	if r, ok := b.p.forms[string(key)]; ok {
		return r
	}
	r := b.p.ready(b.form(channel, v, w))
	b.p.forms[string(key)] = r
	return r
}

// differenceKey is a difference of two forms.
type differenceKey struct {
	first, second *ready
	turn          int64
}

// difference is the form of first − turn·second.
func (p *Prover) difference(first *ready, turn int64, second *ready) *ready {
	k := differenceKey{first, second, turn}
	if r, ok := p.aparts[k]; ok {
		return r
	}
	r := p.ready(first.form.minus(turn, second.form))
	p.aparts[k] = r
	return r
}

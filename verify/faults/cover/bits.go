package cover

import "math/bits"

// Bits is a set of small numbers.
type Bits []uint64

// NewBits is an empty set with room for numbers below n.
func NewBits(n int) Bits { return make(Bits, (n+63)/64) }

// Add puts a number in.
func (b Bits) Add(i int) { b[i/64] |= 1 << (i % 64) }

// Drop takes a number out.
func (b Bits) Drop(i int) { b[i/64] &^= 1 << (i % 64) }

// Has says whether a number is in the set.
func (b Bits) Has(i int) bool { return b[i/64]>>(i%64)&1 == 1 }

// Count is how many numbers are in the set.
func (b Bits) Count() (n int) {
	for _, w := range b {
		n += bits.OnesCount64(w)
	}
	return n
}

// Each visits the numbers of the set, ascending, until visit returns false.
func (b Bits) Each(visit func(i int) bool) {
	for k, w := range b {
		for ; w != 0; w &= w - 1 {
			if !visit(k*64 + bits.TrailingZeros64(w)) {
				return
			}
		}
	}
}

// list are the numbers of the set, ascending.
func (b Bits) list() (list []int) {
	b.Each(func(i int) bool { list = append(list, i); return true })
	return list
}

// within says whether every number of the set is in the other.
func (b Bits) within(o Bits) bool {
	for i, w := range b {
		if w&^o[i] != 0 {
			return false
		}
	}
	return true
}

// common is how many numbers two sets have in common.
func (b Bits) common(o Bits) (n int) {
	for i, w := range b {
		n += bits.OnesCount64(w & o[i])
	}
	return n
}

func (b Bits) clone() Bits { return append(Bits(nil), b...) }

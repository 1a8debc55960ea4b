// Package interval is arithmetic with ranges of real numbers, rounded outward: the
// range of a result holds every result that numbers from the given ranges can have,
// and every result that binary arithmetic can make of them.
//
// A bound that is no number (0·∞, ∞−∞) makes the range [Everything]: nobody can
// conclude anything from it. The package never returns a range that is too narrow and
// never one with a bound that is no number. Start at [Range].
package interval

import "math"

// Range is every real number from Low to High, ends included; Low ≤ High, and either
// may be infinite.
type Range struct{ Low, High float64 }

// Everything is the range that says nothing.
var Everything = Range{math.Inf(-1), math.Inf(1)}

// Point is the range of one number.
func Point(x float64) Range { return Range{x, x} }

// Hull is the least range that holds both.
func (r Range) Hull(s Range) Range { return Range{min(r.Low, s.Low), max(r.High, s.High)} }

// Within is what both ranges hold. Where that is nothing, by rounding, it is the
// number between them.
func (r Range) Within(s Range) Range {
	low, high := max(r.Low, s.Low), min(r.High, s.High)
	if low > high {
		low, high = high, low
	}
	return Range{low, high}
}

// Contains says whether x is in the range.
func (r Range) Contains(x float64) bool { return x >= r.Low && x <= r.High }

// Width is High − Low, rounded up.
func (r Range) Width() float64 { return up(r.High - r.Low) }

// Middle is a number in the range, near its middle; the range must be finite.
func (r Range) Middle() float64 { return min(max(r.Low+(r.High-r.Low)/2, r.Low), r.High) }

// IsPoint says whether it is the range of one number.
func (r Range) IsPoint() bool { return r.Low == r.High }

// Greatest is the largest |x| of the range, Least the smallest.
func (r Range) Greatest() float64 { return max(math.Abs(r.Low), math.Abs(r.High)) }

// Least is the smallest |x| of the range.
func (r Range) Least() float64 {
	if r.Low <= 0 && r.High >= 0 {
		return 0
	}
	return min(math.Abs(r.Low), math.Abs(r.High))
}

// Abs is the range of |x|.
func (r Range) Abs() Range { return Range{r.Least(), r.Greatest()} }

// Neg is the range of −x, exact.
func (r Range) Neg() Range { return Range{-r.High, -r.Low} }

// Add is the range of x + y.
func (r Range) Add(s Range) Range { return outward(r.Low+s.Low, r.High+s.High) }

// Sub is the range of x − y.
func (r Range) Sub(s Range) Range { return outward(r.Low-s.High, r.High-s.Low) }

// Scale is the range of k·x.
func (r Range) Scale(k float64) Range { return r.Mul(Point(k)) }

// Mul is the range of x·y.
func (r Range) Mul(s Range) Range {
	a, b, c, d := r.Low*s.Low, r.Low*s.High, r.High*s.Low, r.High*s.High
	low, high := min(a, b, c, d), max(a, b, c, d)
	if (tiny(low) || tiny(high)) && (vanished(a, r.Low, s.Low) || vanished(b, r.Low, s.High) ||
		vanished(c, r.High, s.Low) || vanished(d, r.High, s.High)) {
		low, high = low-least, high+least
	}
	return outward(low, high)
}

// Over is the range of x / y; Everything where y may be 0.
func (r Range) Over(s Range) Range {
	if s.Low <= 0 && s.High >= 0 {
		return Everything
	}
	a, b, c, d := r.Low/s.Low, r.Low/s.High, r.High/s.Low, r.High/s.High
	low, high := min(a, b, c, d), max(a, b, c, d)
	if tiny(low) || tiny(high) {
		low, high = low-least, high+least
	}
	return outward(low, high)
}

// Min is the range of the smaller of x and y.
func (r Range) Min(s Range) Range { return Range{min(r.Low, s.Low), min(r.High, s.High)} }

// Max is the range of the larger of x and y.
func (r Range) Max(s Range) Range { return Range{max(r.Low, s.Low), max(r.High, s.High)} }

// Widen makes the range larger by at least by ≥ 0 at both ends.
func (r Range) Widen(by float64) Range { return outward(r.Low-by, r.High+by) }

// trigError bounds the error of the standard library's sine and cosine for angles
// of a few turns, which is about one unit in the last place. Value from memory, with
// room for ten of them.
const trigError = 1e-15

// Sin is the range of sin x, x in radians.
func (r Range) Sin() Range {
	return Range{r.Low - math.Pi/2, r.High - math.Pi/2}.Widen(angleError).Cos()
}

// angleError is more than π/2 in binary, and moving an angle of a few turns by it,
// can be wrong by.
const angleError = 1e-14

// Cos is the range of cos x, x in radians.
func (r Range) Cos() Range {
	if !(r.High-r.Low < 2*math.Pi) || r.Greatest() > 1e6 { // also where a bound is infinite
		return Range{-1, 1}
	}
	a, b := math.Cos(r.Low), math.Cos(r.High)
	out := Range{min(a, b), max(a, b)}.Widen(trigError)
	// Turning points are the multiples of π; one that is only nearly inside is
	// counted too.
	first := math.Ceil(r.Low/math.Pi - angleError)
	last := math.Floor(r.High/math.Pi + angleError)
	for k := first; k <= last; k++ {
		if math.Mod(k, 2) == 0 {
			out.High = 1
		} else {
			out.Low = -1
		}
	}
	return Range{max(out.Low, -1), min(out.High, 1)}
}

// outward moves both ends out by at least the rounding error of one operation.
func outward(low, high float64) Range {
	low, high = down(low), up(high)
	if !(low <= high) { // one of them is no number
		return Everything
	}
	return Range{low, high}
}

// Rounding to nearest is wrong by at most half a unit in the last place, which is at
// most |x|·2⁻⁵³. A product or quotient so small that this is not so is moved out by
// least; a sum that small is exact.
const (
	lastPlace = 0x1p-52
	least     = 0x1p-960
)

func down(x float64) float64 {
	switch {
	case math.IsInf(x, 1): // more than the largest number, but no more than that is known
		return math.MaxFloat64
	case math.IsInf(x, -1):
		return x
	}
	return x - float64(math.Abs(x)*lastPlace)
}

func up(x float64) float64 { return -down(-x) }

func tiny(x float64) bool { return math.Abs(x) < least }

// vanished says whether a product of two numbers is so small that it is rounded by
// more than its last place; 0 of 0 is exact.
func vanished(product, x, y float64) bool { return tiny(product) && x != 0 && y != 0 }

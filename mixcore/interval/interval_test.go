package interval_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore/interval"
	"pgregory.net/rapid"
)

// evaluations is how many operations one draw looks at: a million in a hundred draws.
const evaluations = 10_000

// number draws numbers that arithmetic finds hard: 0, whole and decimal numbers, the
// least and the largest there are, and neighbours of all those.
func number(r *rand.Rand) float64 {
	var x float64
	switch r.IntN(8) {
	case 0:
		x = 0
	case 1:
		x = float64(r.IntN(201) - 100)
	case 2:
		x = float64(r.IntN(200001)-100000) / 1000
	case 3:
		x = math.Ldexp(r.Float64()*2-1, r.IntN(1000)-500)
	case 4:
		x = math.Ldexp(r.Float64()*2-1, -1074+r.IntN(200)+r.IntN(2)*1898) // up to the very largest
	default:
		x = r.Float64()*200 - 100
	}
	switch r.IntN(6) {
	case 0:
		x = math.Nextafter(x, math.Inf(1))
	case 1:
		x = math.Nextafter(x, math.Inf(-1))
	}
	return x
}

// holding draws a range, and a number in it.
func holding(r *rand.Rand) (interval.Range, float64) {
	a, b := number(r), number(r)
	switch r.IntN(5) {
	case 0:
		b = a
	case 1:
		b = math.Nextafter(a, math.Inf(1))
	}
	in := interval.Range{Low: min(a, b), High: max(a, b)}
	x := in.Low + (in.High-in.Low)*r.Float64()
	switch r.IntN(3) {
	case 0:
		x = in.Low
	case 1:
		x = in.High
	}
	return in, min(max(x, in.Low), in.High)
}

// holds says whether a range holds a real number, given exactly.
func holds(r interval.Range, exact *big.Rat) bool {
	if math.IsInf(r.Low, 1) || math.IsInf(r.High, -1) {
		return false // no real number is infinite
	}
	low, high := new(big.Rat), new(big.Rat)
	return (math.IsInf(r.Low, -1) || low.SetFloat64(r.Low).Cmp(exact) <= 0) &&
		(math.IsInf(r.High, 1) || high.SetFloat64(r.High).Cmp(exact) >= 0)
}

// The range of a sum, difference, product or quotient holds both the real one of any
// two numbers in the ranges and the binary one.
func TestArithmeticHoldsExactResults(t *testing.T) {
	operations := []struct {
		name   string
		ranges func(a, b interval.Range) interval.Range
		binary func(x, y float64) float64
		exact  func(z, x, y *big.Rat) *big.Rat
	}{
		{"+", interval.Range.Add, func(x, y float64) float64 { return x + y }, (*big.Rat).Add},
		{"-", interval.Range.Sub, func(x, y float64) float64 { return x - y }, (*big.Rat).Sub},
		{"*", interval.Range.Mul, func(x, y float64) float64 { return x * y }, (*big.Rat).Mul},
		{"/", interval.Range.Over, func(x, y float64) float64 { return x / y }, (*big.Rat).Quo},
		{"scale", func(a, b interval.Range) interval.Range { return a.Scale(b.Low) }, func(x, y float64) float64 { return x * y }, (*big.Rat).Mul},
		{"widen", func(a, b interval.Range) interval.Range { return a.Widen(b.Greatest()) }, func(x, y float64) float64 { return x + y }, (*big.Rat).Add},
	}
	rapid.Check(t, func(t *rapid.T) {
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		for range evaluations {
			op := operations[r.IntN(len(operations))]
			a, x := holding(r)
			b, y := holding(r)
			switch op.name {
			case "scale":
				y = b.Low
			case "/":
				if b.Contains(0) {
					if got := a.Over(b); got != interval.Everything {
						t.Fatalf("%v / %v: got %v, want everything", a, b, got)
					}
					continue
				}
			}
			got, z := op.ranges(a, b), op.binary(x, y)
			if !got.Contains(z) {
				t.Fatalf("%v %s %v: got %v, want %v (of %v and %v) in it", a, op.name, b, got, z, x, y)
			}
			if got.Low < z && z < got.High && math.Abs(z) > 0x1p-1000 {
				continue // the real result rounds to z, and lies between its neighbours
			}
			exact := op.exact(new(big.Rat), new(big.Rat).SetFloat64(x), new(big.Rat).SetFloat64(y))
			if !holds(got, exact) {
				t.Fatalf("%v %s %v: got %v, want the real result of %v and %v in it: %s", a, op.name, b, got, x, y, exact.FloatString(40))
			}
		}
	})
}

// What needs no rounding is exact.
func TestArithmeticOfSizesIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		for range evaluations / 10 {
			a, x := holding(r)
			b, y := holding(r)
			for _, c := range []struct {
				name string
				got  interval.Range
				in   float64
			}{
				{"hull", a.Hull(b), x}, {"hull", b.Hull(a), x}, {"neg", a.Neg(), -x}, {"abs", a.Abs(), math.Abs(x)},
				{"min", a.Min(b), min(x, y)}, {"max", a.Max(b), max(x, y)},
			} {
				if !c.got.Contains(c.in) {
					t.Fatalf("%s of %v and %v: got %v, want %v in it", c.name, a, b, c.got, c.in)
				}
				for _, end := range []float64{c.got.Low, c.got.High} {
					if size := math.Abs(end); end != 0 && size != math.Abs(a.Low) && size != math.Abs(a.High) && size != math.Abs(b.Low) && size != math.Abs(b.High) {
						t.Fatalf("%s of %v and %v: got %v, want an end of one of them", c.name, a, b, c.got)
					}
				}
			}
			if within := a.Within(a.Hull(b)); within != a {
				t.Fatalf("%v within its hull with %v: got %v", a, b, within)
			}
			if b.Contains(x) && !a.Within(b).Contains(x) {
				t.Fatalf("%v within %v: got %v, want %v in it", a, b, a.Within(b), x)
			}
			if m := a.Middle(); !a.Contains(m) {
				t.Fatalf("middle of %v: got %v", a, m)
			}
			if w := a.Width(); !holds(interval.Range{Low: math.Inf(-1), High: w}, new(big.Rat).Sub(new(big.Rat).SetFloat64(a.High), new(big.Rat).SetFloat64(a.Low))) {
				t.Fatalf("width of %v: got %v, want no less than the real one", a, w)
			}
			if g, l := a.Greatest(), a.Least(); g < math.Abs(x) || l > math.Abs(x) {
				t.Fatalf("sizes of %v: got %v to %v, want %v between", a, l, g, math.Abs(x))
			}
		}
	})
}

// No operation lets a number that is none out, or a range that ends before it begins.
func TestArithmeticNeverLosesItself(t *testing.T) {
	hard := []float64{math.Inf(-1), -math.MaxFloat64, -1, -math.SmallestNonzeroFloat64, 0, math.SmallestNonzeroFloat64, 1, math.MaxFloat64, math.Inf(1)}
	var ranges []interval.Range
	for i, low := range hard {
		for _, high := range hard[i:] {
			ranges = append(ranges, interval.Range{Low: low, High: high})
		}
	}
	for _, a := range ranges {
		for _, b := range ranges {
			for name, got := range map[string]interval.Range{
				"+": a.Add(b), "-": a.Sub(b), "*": a.Mul(b), "/": a.Over(b), "widen": a.Widen(b.Greatest()), "scale": a.Scale(b.High),
				"sin": a.Sin(), "cos": a.Cos(), "hull": a.Hull(b), "within": a.Within(b), "min": a.Min(b), "max": a.Max(b), "abs": a.Abs(), "neg": a.Neg(),
			} {
				if !(got.Low <= got.High) {
					t.Errorf("%v %s %v: got %v", a, name, b, got)
				}
			}
		}
	}
	nan := math.NaN()
	for name, got := range map[string]interval.Range{
		"0 · ∞": interval.Point(0).Mul(interval.Everything), "∞ − ∞": interval.Point(math.Inf(1)).Sub(interval.Point(math.Inf(1))),
		"NaN +": interval.Point(nan).Add(interval.Point(1)), "NaN *": interval.Point(1).Mul(interval.Point(nan)),
		"NaN /": interval.Point(nan).Over(interval.Point(1)), "NaN widened": interval.Point(nan).Widen(1),
	} {
		if got != interval.Everything {
			t.Errorf("%s: got %v, want everything", name, got)
		}
	}
}

// An end that is infinite stays so, and the other end is still known.
func TestArithmeticKeepsInfiniteEnds(t *testing.T) {
	above := interval.Range{Low: 2, High: math.Inf(1)}
	for _, c := range []struct {
		name string
		got  interval.Range
		low  float64
	}{
		{"2…∞ + 3", above.Add(interval.Point(3)), 5}, {"2…∞ · 2", above.Scale(2), 4}, {"2…∞ less 1", above.Sub(interval.Point(1)), 1},
		{"3 − (−∞)", interval.Point(3).Sub(interval.Point(math.Inf(-1))), math.MaxFloat64},
	} {
		if !(c.got.Low >= c.low*(1-1e-14) && c.got.Low <= c.low) || !math.IsInf(c.got.High, 1) {
			t.Errorf("%s: got %v, want %v to ∞", c.name, c.got, c.low)
		}
	}
}

// Ranges that hold 0 are where signs go wrong: worked by hand.
func TestArithmeticByHand(t *testing.T) {
	type rg = interval.Range
	for _, c := range []struct {
		name      string
		got, want rg
	}{
		{"(−2…3)·(−5…7)", rg{-2, 3}.Mul(rg{-5, 7}), rg{-15, 21}}, // −2·7 = −14, 3·−5 = −15; −2·−5 = 10, 3·7 = 21
		{"(−2…3)·−4", rg{-2, 3}.Scale(-4), rg{-12, 8}},
		{"(−6…3)/(2…3)", rg{-6, 3}.Over(rg{2, 3}), rg{-3, 1.5}},
		{"(1…2)−(5…9)", rg{1, 2}.Sub(rg{5, 9}), rg{-8, -3}},
		{"|−7…2|", rg{-7, 2}.Abs(), rg{0, 7}},
		{"|−7…−2|", rg{-7, -2}.Abs(), rg{2, 7}},
		{"sin −30°…90°", rg{-math.Pi / 6, math.Pi / 2}.Sin(), rg{-0.5, 1}},
		{"cos −60°…120°", rg{-math.Pi / 3, 2 * math.Pi / 3}.Cos(), rg{-0.5, 1}},
		{"cos 150°…210°", rg{5 * math.Pi / 6, 7 * math.Pi / 6}.Cos(), rg{-1, -math.Sqrt(3) / 2}},
		{"cos of more than a turn", rg{0, 7}.Cos(), rg{-1, 1}},
	} {
		if !(math.Abs(c.got.Low-c.want.Low) < 1e-12 && math.Abs(c.got.High-c.want.High) < 1e-12) {
			t.Errorf("%s: got %v, want %v", c.name, c.got, c.want)
		}
	}
}

// realSin is sin x to some sixty places, by its series, for |x| of a few turns.
func realSin(x float64) *big.Float {
	const places = 256
	v := new(big.Float).SetPrec(places).SetFloat64(x)
	squared := new(big.Float).SetPrec(places).Mul(v, v)
	term, sum := new(big.Float).SetPrec(places).Set(v), new(big.Float).SetPrec(places).Set(v)
	for n := int64(2); n < 150; n += 2 {
		term.Mul(term, squared)
		term.Quo(term, new(big.Float).SetPrec(places).SetInt64(-n*(n+1)))
		sum.Add(sum, term)
	}
	return sum
}

func realCos(x float64) *big.Float { // 1 − 2·sin²(x/2), and x/2 is exact
	s := realSin(x / 2)
	s.Mul(s, s)
	s.Mul(s, big.NewFloat(-2))
	return s.Add(s, big.NewFloat(1))
}

// The ranges of sine and cosine hold the real ones, near their turning points too.
func TestSineAndCosineHoldExactResults(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		for k := range evaluations / 10 {
			low := r.Float64()*25 - 12.5
			if r.IntN(3) == 0 {
				low = float64(r.IntN(17)-8) * math.Pi / 2
				low += (r.Float64() - 0.5) * math.Ldexp(1, -r.IntN(60))
			}
			in := interval.Range{Low: low, High: low + math.Ldexp(r.Float64(), 3-r.IntN(50))}
			x := min(in.Low+(in.High-in.Low)*r.Float64(), in.High)
			sin, cos := in.Sin(), in.Cos()
			if !sin.Contains(math.Sin(x)) || !cos.Contains(math.Cos(x)) {
				t.Fatalf("%v at %v: got %v and %v, want %v and %v in them", in, x, sin, cos, math.Sin(x), math.Cos(x))
			}
			if k%50 != 0 {
				continue
			}
			for _, c := range []struct {
				got  interval.Range
				want *big.Float
			}{{sin, realSin(x)}, {cos, realCos(x)}} {
				if exact, _ := c.want.Rat(nil); !holds(c.got, exact) {
					t.Fatalf("%v at %v: got %v, want %v in it", in, x, c.got, c.want)
				}
			}
		}
	})
}

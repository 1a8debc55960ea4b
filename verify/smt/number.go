package smt

import (
	"math/big"
	"strconv"
	"strings"
)

// number is a real number of a script: an expression, and its value where that does
// not depend on the controls.
type number struct {
	text  string
	exact *big.Rat // nil where it depends on the controls
}

// truth is a statement of a script.
type truth struct {
	text  string
	known bool // it does not depend on the controls
	holds bool // whether it holds, if known
}

func certain(holds bool) truth { return truth{strconv.FormatBool(holds), true, holds} }

// ratOf is the decimal number that a setting was written as: the shortest that reads
// back as the same binary number.
func ratOf(x float64) *big.Rat {
	r, ok := new(big.Rat).SetString(strconv.FormatFloat(x, 'g', -1, 64))
	if !ok {
		panic(ErrNotWritten{"a setting is no finite number"})
	}
	return r
}

func setting[T ~float64](x T) number { return exactly(ratOf(float64(x))) }

func whole(n int64) number { return exactly(big.NewRat(n, 1)) }

func exactly(r *big.Rat) number { return number{ratText(r), r} }

// mostPlaces is how many decimals a number may have and still be written as one.
const mostPlaces = 15

// ratText is a rational number as SMT-LIB has it: a decimal where it is one, else a
// quotient.
func ratText(r *big.Rat) string {
	size := new(big.Rat).Abs(r)
	text := ""
	if places, exact := size.FloatPrec(); exact && places <= mostPlaces {
		text = size.FloatString(max(places, 1))
	} else {
		text = "(/ " + size.Num().String() + ".0 " + size.Denom().String() + ".0)"
	}
	if r.Sign() < 0 {
		return "(- " + text + ")"
	}
	return text
}

func (a number) is(n int64) bool { return a.exact != nil && a.exact.Cmp(big.NewRat(n, 1)) == 0 }

// sum adds numbers; what is known is added up.
func sum(list ...number) number {
	known := new(big.Rat)
	var parts []string
	for _, a := range list {
		if a.exact != nil {
			known.Add(known, a.exact)
		} else {
			parts = append(parts, a.text)
		}
	}
	if len(parts) == 0 {
		return exactly(known)
	}
	if known.Sign() != 0 {
		parts = append(parts, ratText(known))
	}
	if len(parts) == 1 {
		return number{text: parts[0]}
	}
	return number{text: "(+ " + strings.Join(parts, " ") + ")"}
}

func negative(a number) number {
	switch {
	case a.exact != nil:
		return exactly(new(big.Rat).Neg(a.exact))
	case strings.HasPrefix(a.text, "(- |") && strings.Count(a.text, "|") == 2:
		return number{text: strings.TrimSuffix(strings.TrimPrefix(a.text, "(- "), ")")}
	}
	return number{text: "(- " + a.text + ")"}
}

func minus(a, b number) number {
	if a.exact == nil && b.exact == nil {
		return number{text: "(- " + a.text + " " + b.text + ")"}
	}
	if a.is(0) {
		return negative(b)
	}
	return sum(a, negative(b))
}

// scaled is a multiplied by a known number.
func scaled(a number, by *big.Rat) number {
	switch {
	case a.exact != nil:
		return exactly(new(big.Rat).Mul(a.exact, by))
	case by.Sign() == 0:
		return whole(0)
	case by.Cmp(big.NewRat(1, 1)) == 0:
		return a
	case by.Cmp(big.NewRat(-1, 1)) == 0:
		return negative(a)
	}
	return number{text: "(* " + ratText(by) + " " + a.text + ")"}
}

func quotient(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

func product(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }

func difference(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }

// hundredth is x/100.
func hundredth(x *big.Rat) *big.Rat { return quotient(x, big.NewRat(100, 1)) }

// choose is a where the statement holds, else b.
func choose(when truth, a, b number) number {
	switch {
	case when.known && when.holds, a.text == b.text:
		return a
	case when.known:
		return b
	}
	return number{text: "(ite " + when.text + " " + a.text + " " + b.text + ")"}
}

// compare is one of the relations <, <=, > and >=.
func compare(relation string, a, b number) truth {
	if a.exact != nil && b.exact != nil {
		order := a.exact.Cmp(b.exact)
		return certain(map[string]bool{"<": order < 0, "<=": order <= 0, ">": order > 0, ">=": order >= 0}[relation])
	}
	return truth{text: "(" + relation + " " + a.text + " " + b.text + ")"}
}

// every is true where all statements hold, oneOf where one does.
func every(list ...truth) truth { return join("and", true, list) }

func oneOf(list ...truth) truth { return join("or", false, list) }

func join(word string, empty bool, list []truth) truth {
	var parts []string
	for _, t := range list {
		switch {
		case !t.known:
			parts = append(parts, t.text)
		case t.holds != empty:
			return t
		}
	}
	switch len(parts) {
	case 0:
		return certain(empty)
	case 1:
		return truth{text: parts[0]}
	}
	return truth{text: "(" + word + " " + strings.Join(parts, " ") + ")"}
}

func not(t truth) truth {
	if t.known {
		return certain(!t.holds)
	}
	return truth{text: "(not " + t.text + ")"}
}

// held is a number held between two ends; nil is no end. The number must be short.
func held(a number, low, high *big.Rat) number {
	out := a
	if low != nil {
		out = choose(compare("<", a, exactly(low)), exactly(low), out)
	}
	if high != nil {
		out = choose(compare(">", a, exactly(high)), exactly(high), out)
	}
	return out
}

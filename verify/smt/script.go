package smt

import (
	"bytes"
	"fmt"
	"math/big"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// script is one claim being written.
type script struct {
	plan  *mixcore.Plan
	setup *mixcore.Setup
	claim *prove.Claim
	// clearance is by how much the claim must fail, in its margin's unit, for the file
	// to count it: 0 in what is given to people.
	clearance *big.Rat

	now, other *view

	controls bytes.Buffer // declarations of the controls that bear on the claim
	body     bytes.Buffer // everything that follows from them
	taken    map[string]bool
	defined  map[string]string // symbol by the text that defines it
	bent     bool              // something is not linear

	constants []constant
	bars      []*fourBar
	pairs     bool     // different drives of one linkage are tied together
	error     *big.Rat // how far the margin that is written can be from the real one
}

// worthSaying is an error that people are told of, in the claim's unit.
const worthSaying = 1e-6

// constant is one of the constants that make up a position.
type constant struct {
	symbol   string
	control  int
	position int // of a switch: which one it stands for
	other    bool
}

// refuse stops the writing of a claim; build turns it into an error.
func refuse(format string, args ...any) { panic(ErrNotWritten{fmt.Sprintf(format, args...)}) }

// symbol is a name of its own, made from words: quoted, of plain characters.
func (s *script) symbol(words string) string {
	words = plain(words)
	name := words
	for n := 2; s.taken[name]; n++ {
		name = fmt.Sprintf("%s, no %d", words, n)
	}
	s.taken[name] = true
	return "|" + name + "|"
}

// plain keeps the characters that every reader of the format takes.
func plain(words string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '|' || r == '\\':
			return '/'
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case r < ' ' || r > '~':
			return '?'
		}
		return r
	}, words)
}

// remark writes a comment, on lines of their own.
func remark(w *bytes.Buffer, format string, args ...any) {
	for _, line := range strings.Split(fmt.Sprintf(format, args...), "\n") {
		w.WriteString(strings.TrimRight("; "+plain(line), " ") + "\n")
	}
}

// define gives a number a name, unless it is known or has one already.
func (s *script) define(name, comment string, a number) number {
	if a.exact != nil || isSymbol(a.text) {
		return a
	}
	return number{text: s.definition(name, comment, "Real", a.text)}
}

// state does the same for a statement.
func (s *script) state(name, comment string, t truth) truth {
	if t.known || isSymbol(t.text) {
		return t
	}
	return truth{text: s.definition(name, comment, "Bool", t.text)}
}

func (s *script) definition(name, comment, sort, text string) string {
	if symbol, ok := s.defined[text]; ok {
		return symbol
	}
	symbol := s.symbol(name)
	if comment != "" {
		remark(&s.body, "%s", comment)
	}
	fmt.Fprintf(&s.body, "(define-fun %s () %s\n  %s)\n", symbol, sort, text)
	s.defined[text] = symbol
	return symbol
}

func isSymbol(text string) bool {
	return text[0] == '|' && strings.IndexByte(text[1:], '|') == len(text)-2
}

// unknown declares a number of which only what is asserted is known.
func (s *script) unknown(name string) number {
	symbol := s.symbol(name)
	fmt.Fprintf(&s.body, "(declare-const %s Real)\n", symbol)
	return number{text: symbol}
}

func (s *script) assert(t truth) { fmt.Fprintf(&s.body, "(assert %s)\n", t.text) }

// times multiplies; of two numbers that are not known the result is not linear.
func (s *script) times(a, b number) number {
	switch {
	case a.exact != nil:
		return scaled(b, a.exact)
	case b.exact != nil:
		return scaled(a, b.exact)
	}
	s.bent = true
	return number{text: "(* " + a.text + " " + b.text + ")"}
}

// size is |a|; a must be short.
func size(a number) number { return choose(compare(">=", a, whole(0)), a, negative(a)) }

func larger(a, b number) number { return choose(compare(">=", a, b), a, b) }

// usesOther is true where two poses are compared.
func (s *script) usesOther() bool {
	_, rising := s.claim.Want.(prove.Rising)
	return rising || s.claim.Other != nil
}

// lines of a script in order.
func (s *script) assemble(title string, failure truth) []byte {
	var w bytes.Buffer
	remark(&w, "claim: %s", title)
	if s.setup.Name != "" {
		remark(&w, "model: %s", s.setup.Name)
	}
	remark(&w, "\nThis file asks for a position of the controls at which the claim FAILS.\n"+
		"  unsat: there is none; the claim holds at every position that it is about.\n"+
		"  sat:   there is one; have the solver print the constants to see it\n"+
		"         (z3 -model FILE; cvc5 --dump-models FILE).")
	if s.error.Cmp(ratOf(worthSaying)) > 0 {
		remark(&w, "Linkages are written with a bound of their error, on the safe side: unsat is\n"+
			"certain; at a position that sat gives, the claim fails or has less than %s to\nspare (in the unit of the claim).", s.error.FloatString(6))
	}
	remark(&w, "\nNumbers are exact. Sticks, trims, demands, sums and outputs are in percent of full\n"+
		"travel, angles in degrees: plus is right, back (nose up), trailing edge down or left.\n"+
		"Everything has come to rest: phases have faded, slow channels have arrived.")
	if s.usesOther() {
		remark(&w, "Two positions are compared; what belongs to the second only says (other).")
	}
	logic := "QF_LRA"
	if s.bent {
		logic = "QF_NRA"
	}
	fmt.Fprintf(&w, "(set-logic %s)\n", logic)
	remark(&w, "\nThe controls that bear on the claim.")
	w.Write(s.controls.Bytes())
	remark(&w, "\nWhat follows from them, in the order of the chain.")
	w.Write(s.body.Bytes())
	remark(&w, "\nThe claim fails.")
	fmt.Fprintf(&w, "(assert\n  %s)\n(check-sat)\n", failure.text)
	return w.Bytes()
}

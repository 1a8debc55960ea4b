package smt

import (
	"fmt"
	"math/big"
	"strings"
)

// A reader of scripts that shares nothing with their writer: it reads the text, checks
// that every name is declared once and before it is used and that sorts fit, and works
// out what a script says at one position.

// expression is a word or a list.
type expression struct {
	word string
	list []expression
}

// parse reads all expressions of a script.
func parse(text string) ([]expression, error) {
	stack := [][]expression{nil}
	for i := 0; i < len(text); {
		top := len(stack) - 1
		switch c := text[i]; {
		case c == ';':
			for i < len(text) && text[i] != '\n' {
				i++
			}
		case c == ' ' || c == '\n':
			i++
		case c == '(':
			stack = append(stack, nil)
			i++
		case c == ')':
			if top == 0 {
				return nil, fmt.Errorf("a bracket too many at byte %d", i)
			}
			stack[top-1] = append(stack[top-1], expression{list: stack[top]})
			stack = stack[:top]
			i++
		default:
			end := i + 1
			if c == '|' {
				end = i + 2 + strings.IndexByte(text[i+1:], '|')
			} else {
				for end < len(text) && !strings.ContainsRune(" \n()", rune(text[end])) {
					end++
				}
			}
			stack[top] = append(stack[top], expression{word: text[i:end]})
			i = end
		}
	}
	if len(stack) != 1 {
		return nil, fmt.Errorf("%d brackets too few", len(stack)-1)
	}
	return stack[0], nil
}

// world is what names stand for at one position.
type world struct {
	numbers   map[string]*big.Rat
	truths    map[string]bool
	functions map[string]function
}

type function struct {
	argument string
	body     expression
}

// reading is what a script says at one position.
type reading struct {
	world
	fails bool // all its assertions hold
	asked bool // it has asked for an answer
}

// read works out a script with its constants where values has them. A number of which
// only bounds are given is where its linkage's pieces have it: guess says so.
func read(script string, values map[string]*big.Rat, truths map[string]bool) (r *reading, err error) {
	defer func() {
		if why := recover(); why != nil {
			err = fmt.Errorf("%v", why)
		}
	}()
	commands, err := parse(script)
	if err != nil {
		return nil, err
	}
	r = &reading{world: world{map[string]*big.Rat{}, map[string]bool{}, map[string]function{}}, fails: true}
	for i, c := range commands {
		if r.asked {
			panic("something after check-sat")
		}
		switch c.list[0].word {
		case "set-logic":
			if logic := c.list[1].word; i != 0 || logic != "QF_LRA" && logic != "QF_NRA" {
				panic("a logic " + logic)
			}
		case "declare-const":
			r.declare(c.list[1].word, c.list[2].word, values, truths, commands[i+1:])
		case "define-fun":
			r.define(c.list)
		case "assert":
			r.fails = r.truth(c.list[1]) && r.fails
		case "check-sat":
			r.asked = true
		default:
			panic("a command " + c.list[0].word)
		}
	}
	return r, nil
}

func (w *world) fresh(name string) {
	_, number := w.numbers[name]
	_, truth := w.truths[name]
	_, called := w.functions[name]
	if number || truth || called || name[0] != '|' {
		panic("the name " + name + " again")
	}
}

func (w *world) declare(name, sort string, values map[string]*big.Rat, truths map[string]bool, rest []expression) {
	w.fresh(name)
	if sort == "Bool" {
		at, ok := truths[name]
		if !ok {
			panic("no value for " + name)
		}
		w.truths[name] = at
		return
	}
	if at, ok := values[name]; ok {
		w.numbers[name] = at
		return
	}
	// (assert (<= (- e) (- horn (linkage arm)) e)): a horn, taken to be at the pieces.
	w.numbers[name] = w.number(rest[0].list[1].list[2].list[2])
}

func (w *world) define(c []expression) {
	name := c[1].word
	w.fresh(name)
	switch {
	case len(c[2].list) == 1:
		w.functions[name] = function{c[2].list[0].list[0].word, c[4]}
	case c[3].word == "Real":
		w.numbers[name] = w.number(c[4])
	case c[3].word == "Bool":
		w.truths[name] = w.truth(c[4])
	default:
		panic("a sort " + c[3].word)
	}
}

func (w *world) number(e expression) *big.Rat {
	if e.list == nil {
		if r, ok := w.numbers[e.word]; ok {
			return r
		}
		r, ok := new(big.Rat).SetString(e.word)
		if !ok || !strings.Contains(e.word, ".") {
			panic("no number: " + e.word)
		}
		return r
	}
	head := e.list[0].word
	if head == "ite" {
		if w.truth(e.list[1]) {
			return w.number(e.list[2])
		}
		return w.number(e.list[3])
	}
	if f, ok := w.functions[head]; ok {
		inner := world{map[string]*big.Rat{f.argument: w.number(e.list[1])}, nil, nil}
		return inner.number(f.body)
	}
	total := new(big.Rat).Set(w.number(e.list[1]))
	if head == "-" && len(e.list) == 2 {
		return total.Neg(total)
	}
	for _, x := range e.list[2:] {
		by := w.number(x)
		switch head {
		case "+":
			total.Add(total, by)
		case "-":
			total.Sub(total, by)
		case "*":
			total.Mul(total, by)
		case "/":
			total.Quo(total, by)
		default:
			panic("no number: " + head)
		}
	}
	return total
}

func (w *world) truth(e expression) bool {
	if e.list == nil {
		if t, ok := w.truths[e.word]; ok {
			return t
		}
		if e.word != "true" && e.word != "false" {
			panic("no statement: " + e.word)
		}
		return e.word == "true"
	}
	switch head := e.list[0].word; head {
	case "not":
		return !w.truth(e.list[1])
	case "and", "or":
		all := head == "and"
		for _, x := range e.list[1:] {
			if w.truth(x) != all {
				return !all
			}
		}
		return all
	case "ite":
		if w.truth(e.list[1]) {
			return w.truth(e.list[2])
		}
		return w.truth(e.list[3])
	case "<", "<=", ">", ">=":
		for i := 2; i < len(e.list); i++ {
			order := w.number(e.list[i-1]).Cmp(w.number(e.list[i]))
			holds := map[string]bool{"<": order < 0, "<=": order <= 0, ">": order > 0, ">=": order >= 0}[head]
			if !holds {
				return false
			}
		}
		return true
	default:
		panic("no statement: " + head)
	}
}

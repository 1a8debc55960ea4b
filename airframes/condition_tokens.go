package airframes

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// token is a word or bracket of a condition.
type token struct {
	text string // words in lower case
	from int    // byte offset in the condition
	to   int
}

// hintCondition shows what a condition looks like.
const hintCondition = "write rate switch is high, flap lever is above 20%, or the name of a phase"

// structure are the words that end a name.
var structure = []string{"and", "or", "not", "is", "are", "in", "(", ")"}

// tokensOf splits a condition at white space and brackets.
func tokensOf(text string) []token {
	var tokens []token
	start := -1
	end := func(at int) {
		if start >= 0 {
			tokens = append(tokens, token{strings.ToLower(text[start:at]), start, at})
			start = -1
		}
	}
	for i, r := range text {
		switch {
		case unicode.IsSpace(r):
			end(i)
		case r == '(' || r == ')':
			end(i)
			tokens = append(tokens, token{string(r), i, i + 1})
		case start < 0:
			start = i
		}
	}
	end(len(text))
	return tokens
}

func (p *conditionParser) fail(from, length int, code, hint, format string, args ...any) {
	p.problems = append(p.problems, conditionProblem{from, length, code, fmt.Sprintf(format, args...), hint})
}

// failAt is fail at a run of words.
func (p *conditionParser) failAt(w words, code, hint, format string, args ...any) {
	p.fail(w.from, w.to-w.from, code, hint, format, args...)
}

// ends reports that the condition ends too early.
func (p *conditionParser) ends(want string) {
	last := p.tokens[max(p.pos-1, 0)]
	p.fail(last.from, last.to-last.from, codeBadCondition, p.example(), "the condition ends after %s, want %s", quoted(p.text[last.from:last.to]), want)
	p.lost = true
}

// peek is the next word; false at the end.
func (p *conditionParser) peek() (token, bool) {
	if p.pos >= len(p.tokens) {
		return token{}, false
	}
	return p.tokens[p.pos], true
}

// take goes past a word if it is the next one.
func (p *conditionParser) take(text string) bool {
	if t, more := p.peek(); more && t.text == text {
		p.pos++
		return true
	}
	return false
}

// takeIs goes past "is" or "are".
func (p *conditionParser) takeIs() bool { return p.take("is") || p.take("are") }

// words is a run of words as the condition has it.
type words struct {
	text     string
	from, to int
}

// name takes the words up to the next one that ends a name; there may be none.
func (p *conditionParser) name() words {
	start := p.pos
	for p.pos < len(p.tokens) && !slices.Contains(structure, p.tokens[p.pos].text) {
		p.pos++
	}
	if start == p.pos {
		at := len(p.text)
		if start < len(p.tokens) {
			at = p.tokens[start].from
		}
		return words{"", at, at}
	}
	from, to := p.tokens[start].from, p.tokens[p.pos-1].to
	return words{tidy(p.text[from:to]), from, to}
}

// number takes a number and the sign of its unit.
func (p *conditionParser) number() (words, bool) {
	t, more := p.peek()
	if !more {
		p.ends("a percent, such as 20%")
		return words{}, false
	}
	p.pos++
	w := words{p.text[t.from:t.to], t.from, t.to}
	if next, more := p.peek(); more && next.text == "%" {
		p.pos++
		w.text, w.to = w.text+"%", next.to
	}
	return w, true
}

// put gives a name to an index without asking whether it may.
func (n *names) put(name string, index int) {
	n.index[n.fold(name)] = index
	n.list = append(n.list, name)
}

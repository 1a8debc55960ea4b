package airframes

import (
	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// A condition is parsed by recursive descent over its words:
//
//	condition = conjunction { "or" conjunction }
//	conjunction = negation { "and" negation }
//	negation = "not" negation | "(" condition ")" | test
//	test = [ "in" ] PHASE | CONTROL "is" [ "not" ] predicate
//	     | CONTROL POSITION { "or" POSITION } | POSITION CONTROL
//
// with the predicates in condition_predicates.go. Names end at a word that no
// name may hold, so that nothing needs quotes.
type conditionParser struct {
	scope    *conditionScope
	text     string
	tokens   []token
	pos      int
	tests    int
	brackets int
	offered  []string // positions of the control looked at last, for suggestions
	problems []conditionProblem
	lost     bool // what follows cannot be read
}

// conditionScope is what a condition may name.
type conditionScope struct {
	controls *names
	phases   *names
	setup    *mixcore.Setup
	before   int // only phases of a smaller index may be named
	closest  func(name string, among []string) (string, bool)
}

// conditionProblem is a problem at a part of the text, in bytes.
type conditionProblem struct {
	from, length int
	code         string
	message      string
	hint         string
}

const codeBadCondition = "bad-condition"

// parseCondition reads a condition; there is none where there are problems.
func parseCondition(text string, scope *conditionScope) (*mixcore.Condition, []conditionProblem) {
	p := &conditionParser{scope: scope, text: text}
	if len(text) > maxCondition {
		p.fail(0, len(text), codeBadCondition, "give parts of it names as phases", "the condition is longer than %d characters", maxCondition)
		return nil, p.problems
	}
	p.tokens = tokensOf(text)
	if len(p.tokens) == 0 {
		p.fail(0, len(text), codeBadCondition, p.example(), "the condition is empty")
		return nil, p.problems
	}
	condition := p.condition()
	if t, more := p.peek(); more && !p.lost {
		p.unexpected(t)
	}
	if len(p.problems) > 0 {
		return nil, p.problems
	}
	return &condition, nil
}

func (p *conditionParser) unexpected(t token) {
	if t.text == ")" {
		p.fail(t.from, len(t.text), codeBadCondition, "take it away", `")" closes no bracket`)
		return
	}
	p.fail(t.from, len(t.text), codeBadCondition, "join conditions by and, or, not and brackets", "%s stands where the condition should end", quoted(t.text))
}

func (p *conditionParser) condition() mixcore.Condition {
	return p.joined("or", mixcore.Or, p.conjunction)
}

func (p *conditionParser) conjunction() mixcore.Condition {
	return p.joined("and", mixcore.And, p.negation)
}

// joined reads one or more of what part reads, with the word between them.
func (p *conditionParser) joined(word string, op mixcore.ConditionOp, part func() mixcore.Condition) mixcore.Condition {
	first := part()
	all := []mixcore.Condition{first}
	for !p.lost && p.take(word) {
		all = append(all, part())
	}
	if len(all) == 1 {
		return first
	}
	return mixcore.Condition{Op: op, Args: all}
}

func (p *conditionParser) negation() mixcore.Condition {
	t, more := p.peek()
	if !more {
		p.ends("a condition")
		return mixcore.Condition{}
	}
	if t.text != "(" && t.text != "not" {
		return p.test()
	}
	if p.brackets++; p.brackets > maxBrackets {
		p.fail(t.from, len(t.text), codeBadCondition, "give parts of it names as phases", "not and brackets nest more than %d deep", maxBrackets)
		p.lost = true
		return mixcore.Condition{}
	}
	defer func() { p.brackets-- }()
	p.pos++
	if t.text == "not" {
		return mixcore.Condition{Op: mixcore.Not, Args: []mixcore.Condition{p.negation()}}
	}
	inner := p.condition()
	if !p.lost && !p.take(")") {
		p.fail(t.from, 1, codeBadCondition, `want a ")"`, "this bracket is never closed")
		p.lost = true
	}
	return inner
}

// condition reads the condition of a node.
func (r *reader) condition(n *yaml.Node, what string, before int) (*mixcore.Condition, bool) {
	if !readable(n) {
		return nil, false
	}
	if n.Kind != yaml.ScalarNode {
		r.wrongKind(n, what, "a condition, such as rate switch is high")
		return nil, false
	}
	condition, problems := parseCondition(n.Value, &conditionScope{&r.controls, &r.phases, r.setup, before, r.closest})
	for _, p := range problems {
		r.fail(r.inside(n, p.from, p.length), p.code, p.hint, "%s", p.message)
	}
	return condition, len(problems) == 0
}

// when reads an optional `when`.
func (r *reader) when(f *fields) *mixcore.Condition {
	condition, _ := r.condition(f.get("when"), "when", len(r.setup.Phases))
	return condition
}

// ParseCondition reads a condition in words about the model, such as "flap
// lever is above 20%". The places of its problems count columns in the text
// and name no file.
func (m *Model) ParseCondition(text string) (mixcore.Condition, []diag.Problem) {
	controls, phases := newNames("control", FoldName), newNames("phase", FoldName)
	for i, c := range m.Setup.Controls {
		controls.put(c.Name, i)
		for _, name := range m.ControlAka[i] {
			controls.put(name, i)
		}
	}
	for i, ph := range m.Setup.Phases {
		phases.put(ph.Name, i)
	}
	condition, found := parseCondition(text, &conditionScope{&controls, &phases, &m.Setup, len(m.Setup.Phases), diag.Closest})
	if len(found) == 0 {
		return *condition, nil
	}
	source := diag.NewSource("", []byte(text))
	problems := make([]diag.Problem, len(found))
	for i, p := range found {
		problems[i] = diag.Problem{Place: source.At(p.from, len([]rune(text[p.from:p.from+p.length]))), Code: p.code, Message: p.message, Hint: p.hint}
	}
	return mixcore.Condition{}, problems
}

package airframes

import (
	"slices"
	"strings"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
)

// test reads one look at a control or phase.
func (p *conditionParser) test() mixcore.Condition {
	if p.tests++; p.tests > maxTests {
		t, _ := p.peek()
		p.fail(t.from, t.to-t.from, codeBadCondition, "give parts of it names as phases", "the condition looks at more than %d things", maxTests)
		p.lost = true
		return mixcore.Condition{}
	}
	inPhase := p.take("in")
	subject := p.name()
	if subject.text == "" {
		t, more := p.peek()
		if !more {
			p.ends("a control or phase")
			return mixcore.Condition{}
		}
		p.fail(t.from, t.to-t.from, codeBadCondition, p.example(), "%s stands where a control or phase should", quoted(t.text))
		p.lost = true
		return mixcore.Condition{}
	}
	if inPhase {
		return p.phase(subject)
	}
	if !p.takeIs() {
		return p.phaseOrPair(subject)
	}
	control, known := p.control(subject)
	negated := p.take("not")
	test := p.predicate(control, known)
	if negated {
		return mixcore.Condition{Op: mixcore.Not, Args: []mixcore.Condition{test}}
	}
	return test
}

// phase is the weight of a phase by name.
func (p *conditionParser) phase(name words) mixcore.Condition {
	i, ok := p.scope.phases.find(name.text)
	switch {
	case ok && i == p.scope.before:
		p.failAt(name, "later-phase", "say what it is with controls", "phase %s names itself", quoted(name.text))
	case ok && i > p.scope.before:
		p.failAt(name, "later-phase", "move that phase above this one", "phase %s comes later in the file, want one above", quoted(name.text))
	case ok:
		return mixcore.Condition{Op: mixcore.InPhase, Phase: i}
	default:
		p.unknownPhase(name)
	}
	return mixcore.Condition{}
}

func (p *conditionParser) unknownPhase(name words) {
	scope := p.scope
	if i, ok := scope.controls.find(name.text); ok {
		p.failAt(name, codeBadCondition, "write "+exampleTest(name.text, scope.setup.Controls[i]), "%s is a control, want where it stands", quoted(name.text))
		return
	}
	if scope.phases.absent {
		return
	}
	if hint := p.wouldRead(name.text); hint != "" {
		p.failAt(name, codeBadCondition, hint, "%s is no phase, and does not say in words where a control stands", quoted(name.text))
		return
	}
	if best, ok := scope.closest(name.text, slices.Concat(p.offered, scope.phases.list, scope.controls.list)); ok {
		p.failAt(name, codeUnknownName, "did you mean \""+best+"\"?", "the condition names %s, which no phase is called", quoted(name.text))
		return
	}
	hint := p.example()
	if len(scope.phases.list) > 0 {
		hint = "there is " + listed(scope.phases.list, "and")
	}
	p.failAt(name, codeUnknownName, hint, "the condition names %s, which no phase is called", quoted(name.text))
}

// exampleTest is a condition about a control, to show.
func exampleTest(name string, c mixcore.Control) string {
	switch {
	case len(c.Positions) > 1:
		return name + " is " + c.Positions[1]
	case len(c.Detents) > 0:
		return name + " is " + c.Detents[len(c.Detents)-1].Name
	}
	return name + " is above 20%"
}

// control finds the control that a condition looks at; known is false if there
// is none, or if the file does not say what it is.
func (p *conditionParser) control(name words) (index int, known bool) {
	scope := p.scope
	if i, ok := scope.controls.find(name.text); ok {
		return i, scope.setup.Controls[i].Kind != 0
	}
	switch _, isPhase := scope.phases.find(name.text); {
	case isPhase:
		p.failAt(name, codeBadCondition, "write the phase alone: "+name.text, "%s is a phase, which is in force or not", quoted(name.text))
	case !scope.controls.absent:
		hint := "there is " + listed(scope.controls.list, "and")
		if best, ok := scope.closest(name.text, scope.controls.list); ok {
			hint = "did you mean \"" + best + "\"?"
		}
		p.failAt(name, codeUnknownName, hint, "the condition looks at %s, which no control is called", quoted(name.text))
	}
	return 0, false
}

// predicate reads what follows CONTROL is.
func (p *conditionParser) predicate(control int, known bool) mixcore.Condition {
	start := p.pos
	t, more := p.peek()
	if !more {
		p.ends("where it stands")
		return mixcore.Condition{}
	}
	p.pos++
	switch t.text {
	case "above":
		return p.compare(mixcore.Above, control, known)
	case "below":
		return p.compare(mixcore.Below, control, known)
	case "between":
		return p.between(control, known)
	case "at":
		switch {
		case p.take("least"):
			return p.compare(mixcore.AtLeast, control, known)
		case p.take("most"):
			return p.compare(mixcore.AtMost, control, known)
		}
	case "right", "left", "back", "forward":
		if p.take("of") {
			return p.direction(words{t.text, t.from, p.tokens[p.pos-1].to}, control, known)
		}
	}
	p.pos = start
	return p.positions(control, known)
}

// compare reads the percent of a comparison.
func (p *conditionParser) compare(op mixcore.ConditionOp, control int, known bool) mixcore.Condition {
	value := p.percent(control, known)
	test := mixcore.Condition{Op: op, Control: control}
	if op == mixcore.Above || op == mixcore.AtLeast {
		test.Low = value
	} else {
		test.High = value
	}
	return test
}

// between reads "20% and 60%".
func (p *conditionParser) between(control int, known bool) mixcore.Condition {
	start := p.pos
	low := p.percent(control, known)
	if p.lost {
		return mixcore.Condition{}
	}
	if !p.take("and") {
		p.ends(`"and" and a second percent`)
		return mixcore.Condition{}
	}
	high := p.percent(control, known)
	if low >= high && len(p.problems) == 0 {
		from, to := p.tokens[start].from, p.tokens[p.pos-1].to
		p.fail(from, to-from, codeBadCondition, "write the smaller percent first", "between wants two different percents, the smaller one first")
	}
	return mixcore.Condition{Op: mixcore.Within, Control: control, Low: low, High: high}
}

// direction reads the percent of "right of 5%".
func (p *conditionParser) direction(word words, control int, known bool) mixcore.Condition {
	if known {
		c := p.scope.setup.Controls[control]
		wanted := sidesOf(c)
		if c.Axis == mixcore.NoAxis || word.text != wanted.plus && word.text != wanted.minus {
			hint := "write is above or is below"
			if c.Axis != mixcore.NoAxis {
				hint = "it goes " + wanted.plus + " and " + wanted.minus
			}
			p.failAt(word, codeBadCondition, hint, "%s is not moved %s", quoted(c.Name), word.text)
			known = false
		}
	}
	w, ok := p.number()
	if !ok {
		return mixcore.Condition{}
	}
	value := p.percentOf(w, 0, 100)
	if word.text == "left" || word.text == "forward" {
		return mixcore.Condition{Op: mixcore.Below, Control: control, High: 0 - value}
	}
	return mixcore.Condition{Op: mixcore.Above, Control: control, Low: value}
}

// percent reads a percent that the control can stand at.
func (p *conditionParser) percent(control int, known bool) mixcore.Percent {
	w, ok := p.number()
	if !ok {
		return 0
	}
	low, high := -100.0, 100.0
	if known {
		switch c := p.scope.setup.Controls[control]; c.Kind {
		case mixcore.SwitchControl:
			p.failAt(w, codeBadCondition, "it is "+listed(c.Positions, "or"), "%s is a switch, which has positions and no percent", quoted(c.Name))
			return 0
		case mixcore.LeverControl:
			low = 0
		}
	}
	return p.percentOf(w, low, high)
}

func (p *conditionParser) percentOf(w words, low, high float64) mixcore.Percent {
	quiet := reader{source: diag.NewSource("", nil)}
	value, ok := quiet.numberText(diag.Place{}, w.text, "the percent", inPercent, low, high)
	if !ok {
		found := quiet.problems[0]
		p.failAt(w, found.Code, found.Hint, "%s", found.Message)
		return 0
	}
	return mixcore.Percent(value)
}

// positions reads the named positions of a switch, or the detent of a lever.
func (p *conditionParser) positions(control int, known bool) mixcore.Condition {
	first := p.name()
	if first.text == "" {
		if t, more := p.peek(); more {
			p.fail(t.from, t.to-t.from, codeBadCondition, p.example(), "%s stands where a position should", quoted(t.text))
			p.lost = true
			return mixcore.Condition{}
		}
		p.ends("where it stands")
		return mixcore.Condition{}
	}
	if !known {
		p.furtherPositions(func(string) bool { return true })
		return mixcore.Condition{}
	}
	c := p.scope.setup.Controls[control]
	find := func(name string) (mixcore.Condition, bool) { return standsAt(c, control, name) }
	p.offered = namesOfPositions(c)
	test, ok := find(first.text)
	if !ok {
		p.unknownPosition(first, c)
	}
	all := []mixcore.Condition{test}
	p.furtherPositions(func(name string) bool {
		test, ok := find(name)
		if ok {
			all = append(all, test)
		}
		return ok
	})
	if len(all) == 1 {
		return test
	}
	return mixcore.Condition{Op: mixcore.Or, Args: all}
}

// furtherPositions takes "or POSITION" as long as accept takes the name and it
// is not the control of another test.
func (p *conditionParser) furtherPositions(accept func(name string) bool) {
	for {
		start := p.pos
		if !p.take("or") {
			return
		}
		name := p.name()
		next, more := p.peek()
		if name.text == "" || more && (next.text == "is" || next.text == "are") || !accept(name.text) {
			p.pos = start
			return
		}
	}
}

// standsAt is the condition that a control stands at a named position.
func standsAt(c mixcore.Control, control int, name string) (mixcore.Condition, bool) {
	fold := FoldName(name)
	for i, position := range c.Positions {
		if FoldName(position) == fold {
			return mixcore.Condition{Op: mixcore.AtPosition, Control: control, Position: i}, true
		}
	}
	for _, detent := range c.Detents {
		if FoldName(detent.Name) == fold {
			low, high := detent.Stretch()
			return mixcore.Condition{Op: mixcore.Within, Control: control, Low: low, High: high}, true
		}
	}
	return mixcore.Condition{}, false
}

// namesOfPositions are the names of a control's positions or detents.
func namesOfPositions(c mixcore.Control) []string {
	there := slices.Clone(c.Positions)
	for _, detent := range c.Detents {
		there = append(there, detent.Name)
	}
	return there
}

// unknownPosition reports a position that a control does not have.
func (p *conditionParser) unknownPosition(name words, c mixcore.Control) {
	there := namesOfPositions(c)
	switch {
	case len(there) == 0 && leadingDigits(strings.TrimLeft(name.text, "+-")) != "":
		p.failAt(name, codeBadCondition, "write is at least, is above, is at most, is below or is between", "a percent alone is hardly ever met, want a range")
	case len(there) == 0:
		p.failAt(name, codeUnknownName, "write "+exampleTest(c.Name, c), "%s has no position %s: it has none with a name", quoted(c.Name), quoted(name.text))
	default:
		hint := "it has " + listed(there, "and")
		if best, ok := p.scope.closest(name.text, there); ok {
			hint = "did you mean \"" + best + "\"?"
		}
		p.failAt(name, codeUnknownName, hint, "%s has no position %s", quoted(c.Name), quoted(name.text))
	}
}

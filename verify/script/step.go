package script

import (
	"strings"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// step compiles one step and says whether it asks something, even if what it
// asks is not understood.
func (c *compiler) step(d *document, s *scenario, scene *scene, st *messages.Step, text stepText, around result.Check, row *messages.TableRow, tags []string) (asks bool) {
	compiled := &step{text: text.text, place: text.place(phrase.Span{Column: 1, Width: phrase.MaxLength})}
	defer func() { s.steps = append(s.steps, *compiled) }()
	role, joins := roleOf(st, scene.role)
	meaning, problem := c.vocabulary.Parse(role, text.text)
	switch {
	case problem != nil && c.unfilled(&text):
		// What is wrong with its brackets has been said.
		compiled.refused, scene.unclear = true, true
		scene.asked()
		return true
	case problem != nil:
		c.refuse(compiled, &text, problem)
		return scene.misunderstood(role, text.text)
	case meaning.Role != phrase.Then:
		c.setting(compiled, scene, &text, &meaning, joins)
		return false
	}
	scene.asked()
	compiled.role = phrase.Then
	at, problem := scene.at(&meaning)
	if problem != nil {
		c.refuse(compiled, &text, problem)
		return true
	}
	around.Sentence = text.text
	around.Step = result.StepNumber{Scenario: len(c.scenarios) + 1, Step: len(s.steps) + 1}
	around.Place = result.Place{File: d.name, Line: int(st.Location.Line), Column: int(st.Location.Column)}
	if row != nil {
		around.Place = result.Place{File: d.name, Line: int(row.Location.Line), Column: int(row.Location.Column)}
	}
	for _, outcome := range meaning.Outcomes {
		switch problem := c.vocabulary.Unfit(&outcome, &at); {
		case problem == nil:
			compiled.checks = append(compiled.checks, c.checks(outcome, at, around, tags)...)
		case scene.unclear:
			compiled.refused = true // the setting that was not understood has been reported
		default:
			c.refuse(compiled, &text, problem)
		}
	}
	return true
}

// refuse reports what is wrong with a step.
func (c *compiler) refuse(compiled *step, text *stepText, problem *phrase.Problem) {
	compiled.refused = true
	c.report(text.problem(problem))
}

// unfilled is true for a text with brackets left in it, about which there is a
// problem already.
func (c *compiler) unfilled(text *stepText) bool {
	if !strings.ContainsAny(text.text, brackets) {
		return false
	}
	for _, p := range text.pieces {
		if c.lines[diag.Place{File: p.place.File, Line: p.place.Line}] {
			return true
		}
	}
	return false
}

// setting takes a step that sets the controls.
func (c *compiler) setting(compiled *step, scene *scene, text *stepText, meaning *phrase.Meaning, joins bool) {
	if meaning.Role == phrase.Given && scene.role == phrase.When && scene.unasked != nil {
		c.unasked(*scene.unasked, "this movement is forgotten: a Given follows before anything is asked")
	}
	scene.unasked = &compiled.place
	compiled.set, compiled.role, compiled.rests = true, meaning.Role, meaning.Settings.Rests
	compiled.begun = !scene.continues(meaning.Role, joins)
	if problem := scene.set(meaning.Role, &meaning.Settings, joins); problem != nil {
		scene.unclear = true
		c.refuse(compiled, text, problem)
	}
}

// misunderstood notes a step that was not understood and says whether it most likely
// asked something.
func (s *scene) misunderstood(role phrase.Role, text string) (asks bool) {
	oneLine := strings.EqualFold(firstWord(text), "with") || strings.EqualFold(firstWord(text), "when")
	switch {
	case role == phrase.Then || oneLine:
		s.asked()
		return true
	case role == phrase.AnyRole:
		s.unclear, s.unasked = true, nil
		return true
	}
	s.role, s.unclear = role, true
	return false
}

// roleOf is the role of a step by its keyword, and whether the keyword joins it
// to the step before.
func roleOf(st *messages.Step, before phrase.Role) (role phrase.Role, joins bool) {
	switch st.KeywordType {
	case messages.StepKeywordType_CONTEXT:
		return phrase.Given, false
	case messages.StepKeywordType_ACTION:
		return phrase.When, false
	case messages.StepKeywordType_OUTCOME:
		return phrase.Then, false
	}
	return before, true
}

// checks are the checks of one outcome, one for each part or channel.
func (c *compiler) checks(o phrase.Outcome, at phrase.Situation, around result.Check, tags []string) (list []*check) {
	for _, single := range o.Apart() {
		ch := &check{outcome: single, at: at, tags: tags, result: around}
		ch.subject = c.vocabulary.Title(&single)
		ch.result.Subject = ch.subject
		ch.result.Stage = c.stage(&single, at, tags)
		c.count(&single, at)
		list = append(list, ch)
	}
	return list
}

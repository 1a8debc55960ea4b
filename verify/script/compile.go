package script

import (
	"fmt"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// scenario is one scenario, or one row of an outline, ready to run.
type scenario struct {
	file  string
	name  string
	steps []step
}

// step is one sentence with what it checks; a setting checks nothing.
type step struct {
	text   string
	checks []*check
}

// check is one part or channel held against one outcome.
type check struct {
	outcome  phrase.Outcome // of one part or channel
	at       phrase.Situation
	subject  string
	tags     []string
	selected bool
	done     bool
	result   result.Check
	verdict  phrase.Verdict
}

type compiler struct {
	model      *airframes.Model
	vocabulary *phrase.Vocabulary
	scenarios  []*scenario
	problems   []diag.Problem
	seen       map[diag.Problem]bool
}

// report adds a problem, once: the rows of an outline repeat theirs.
func (c *compiler) report(p diag.Problem) {
	if c.seen[p] {
		return
	}
	if c.seen == nil {
		c.seen = map[diag.Problem]bool{}
	}
	c.seen[p] = true
	c.problems = append(c.problems, p)
}

// steps is how many steps all scenarios of a file come to.
func (d *document) steps() (total int) {
	for _, e := range d.entries() {
		each := len(e.background) + len(e.scenario.Steps)
		if len(e.scenario.Examples) == 0 {
			total += each
		}
		for _, examples := range e.scenario.Examples {
			total += each * len(examples.TableBody)
		}
	}
	return total
}

// compile makes the scenarios of a file.
func (c *compiler) compile(d *document) {
	for _, e := range d.entries() {
		if len(e.scenario.Examples) == 0 {
			c.scenario(d, e, nil, nil, e.tags)
		}
		for _, examples := range e.scenario.Examples {
			if examples.TableHeader == nil {
				continue
			}
			for _, row := range examples.TableBody {
				c.scenario(d, e, cellValues(examples.TableHeader), row, append(e.tags[:len(e.tags):len(e.tags)], tagNames(e.scenario.Tags, examples.Tags)...))
			}
		}
	}
}

// scenario compiles one scenario or row.
func (c *compiler) scenario(d *document, e entry, columns []string, row *messages.TableRow, tags []string) {
	if row == nil {
		tags = append(tags[:len(tags):len(tags)], tagNames(e.scenario.Tags)...)
	}
	s := &scenario{file: d.name, name: fill(e.scenario.Name, columns, row)}
	around := result.Check{Feature: e.feature, Scenario: s.name}
	scene := newScene(&c.model.Setup)
	for _, st := range e.background {
		c.step(d, s, scene, st, d.writeOut(st, nil, nil), around, nil, tags)
	}
	scene.close()
	scene.unasked = nil
	asked := false
	for _, st := range e.scenario.Steps {
		asked = c.step(d, s, scene, st, d.writeOut(st, columns, row), around, row, tags) || asked
	}
	if !asked && len(e.scenario.Steps) > 0 && !d.broken {
		c.report(diag.Problem{Place: d.at(int(e.scenario.Location.Line)), Code: CodeNothingAsked,
			Message: "the scenario asks nothing: it has no Then", Hint: "write what should happen, such as \"Then the elevator rises\""})
	}
	if asked && scene.unasked != nil && !d.broken {
		c.unasked(*scene.unasked, "nothing is asked after this step")
	}
	c.scenarios = append(c.scenarios, s)
}

// unasked reports a setting that no outcome looks at.
func (c *compiler) unasked(place diag.Place, message string) {
	c.report(diag.Problem{Place: place, Code: CodeNothingAsked, Message: message,
		Hint: "write a Then behind it that says what should happen, or take the step out"})
}

// step compiles one step and says whether it asks something, even if what it
// asks is not understood.
func (c *compiler) step(d *document, s *scenario, scene *scene, st *messages.Step, text stepText, around result.Check, row *messages.TableRow, tags []string) (asks bool) {
	compiled := step{text: text.text}
	defer func() { s.steps = append(s.steps, compiled) }()
	if placeholder.MatchString(text.text) {
		scene.unclear, scene.unasked = true, nil
		return true // an unfilled placeholder has been reported
	}
	role, joins := roleOf(st, scene.role)
	meaning, problem := c.vocabulary.Parse(role, text.text)
	if problem != nil {
		c.report(text.problem(problem))
		if role == phrase.Then || role == phrase.AnyRole {
			scene.asked()
			scene.unasked = nil
			return true
		}
		scene.role, scene.unclear = role, true
		return false
	}
	if meaning.Role != phrase.Then {
		if meaning.Role == phrase.Given && scene.role == phrase.When && scene.unasked != nil {
			c.unasked(*scene.unasked, "this movement is forgotten: a Given follows before anything is asked")
		}
		whole := text.place(phrase.Span{Column: 1, Width: phrase.MaxLength})
		scene.unasked = &whole
		if problem := scene.set(meaning.Role, &meaning.Settings, joins); problem != nil {
			scene.unclear = true
			c.report(text.problem(problem))
		}
		return false
	}
	scene.unasked = nil
	at, problem := scene.at(&meaning)
	if problem != nil {
		c.report(text.problem(problem))
		return true
	}
	if !meaning.OneLine {
		scene.asked()
	}
	around.Sentence = text.text
	around.Place = result.Place{File: d.name, Line: int(st.Location.Line), Column: int(st.Location.Column)}
	if row != nil {
		around.Place = result.Place{File: d.name, Line: int(row.Location.Line), Column: int(row.Location.Column)}
	}
	for _, outcome := range meaning.Outcomes {
		if problem := unmoved(&outcome, at); problem != nil {
			if !scene.unclear {
				c.report(text.problem(problem))
			}
			continue
		}
		compiled.checks = append(compiled.checks, c.checks(outcome, at, around, tags)...)
	}
	return true
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

// unmoved refuses a sentence about movement where nothing moved.
func unmoved(o *phrase.Outcome, at phrase.Situation) *phrase.Problem {
	p := &phrase.Problem{Column: o.At.Column, Width: o.At.Width, Code: phrase.CodeNoMovement}
	switch {
	case !o.NeedsMovement():
		return nil
	case !at.Moved:
		p.Message, p.Hint = "nothing was moved before this", "write a When before it, or \"with right roll, …\" in front of it"
	case at.Before.Same(at.Now):
		p.Message, p.Hint = "the controls stood there already: nothing moves", "set them elsewhere before the When"
	default:
		return nil
	}
	return p
}

// checks are the checks of one outcome, one for each part or channel.
func (c *compiler) checks(o phrase.Outcome, at phrase.Situation, around result.Check, tags []string) (list []*check) {
	for _, single := range o.Apart() {
		ch := &check{outcome: single, at: at, tags: tags, result: around}
		ch.subject = c.vocabulary.Title(&single)
		ch.result.Subject = ch.subject
		ch.result.Stage = c.stage(&single, at, tags)
		list = append(list, ch)
	}
	return list
}

// checkSize says whether the scenarios of all files are few enough to run.
func (c *compiler) checkSize(documents []*document) bool {
	total := 0
	for _, d := range documents {
		total += d.steps()
		if total > MaxSteps {
			c.report(diag.Problem{Place: diag.Place{File: d.name}, Code: CodeTooBig,
				Message: fmt.Sprintf("the scenarios come to more than %d steps, outlines written out", MaxSteps), Hint: "split the script, or run fewer scripts at once"})
			return false
		}
	}
	return true
}

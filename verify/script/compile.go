package script

import (
	"fmt"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

// scenario is one scenario, or one row of an outline, ready to run.
type scenario struct {
	file  string
	name  string
	steps []step
}

// step is one sentence and what became of it: it set the controls, or it checks
// something, or it was refused.
type step struct {
	text    string
	set     bool
	checks  []*check
	refused bool

	role  phrase.Role // as it was understood
	begun bool        // it begins a new group of settings
	rests bool        // of a setting: everything goes to rest first
	place diag.Place
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
	lines      map[diag.Place]bool // lines of which there is a problem
	checked    int                 // checks so far
	proofs     int                 // of them: about every position
	followed   mixcore.Seconds     // time that they follow the model
}

// report adds a problem, once: the rows of an outline repeat theirs.
func (c *compiler) report(p diag.Problem) {
	if c.seen[p] {
		return
	}
	if c.seen == nil {
		c.seen, c.lines = map[diag.Problem]bool{}, map[diag.Place]bool{}
	}
	c.seen[p], c.lines[diag.Place{File: p.File, Line: p.Line}] = true, true
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

// compile makes the scenarios of a file, and says whether that was all of them:
// it ends where they become too many to run.
func (c *compiler) compile(d *document) bool {
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
				if !c.checkWork(d) {
					return false
				}
			}
		}
		if !c.checkWork(d) {
			return false
		}
	}
	return true
}

// account panics unless every step of the files became a setting, a check or a
// problem: none may be lost on the way.
func (c *compiler) account(documents []*document) {
	want, got := 0, 0
	for _, d := range documents {
		want += d.steps()
	}
	for _, s := range c.scenarios {
		for i := range s.steps {
			switch st := &s.steps[i]; {
			case st.refused && diag.HasErrors(c.problems), !st.refused && st.set != (len(st.checks) > 0):
				got++
			default:
				panic(&Bug{fmt.Sprintf("the step %q was lost", st.text)})
			}
		}
	}
	if got != want {
		panic(&Bug{fmt.Sprintf("%d of %d steps were compiled", got, want)})
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
	asked := false
	for _, st := range e.scenario.Steps {
		asked = c.step(d, s, scene, st, d.writeOut(st, columns, row), around, row, tags) || asked
	}
	if !asked && len(e.scenario.Steps) > 0 && !d.broken {
		c.report(diag.Problem{Place: d.at(int(e.scenario.Location.Line)), Code: codeNothingAsked,
			Message: "the scenario asks nothing: it has no Then", Hint: "write what should happen, such as \"Then the elevator rises\""})
	}
	if asked && scene.unasked != nil && !d.broken {
		c.unasked(*scene.unasked, "nothing is asked after this step")
	}
	c.scenarios = append(c.scenarios, s)
}

// unasked reports a setting that no outcome looks at.
func (c *compiler) unasked(place diag.Place, message string) {
	c.report(diag.Problem{Place: place, Code: codeNothingAsked, Message: message,
		Hint: "write a Then behind it that says what should happen, or take the step out"})
}

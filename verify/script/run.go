package script

import (
	"context"
	"errors"
	"fmt"
	"io"
	"regexp"
	"sync"

	"github.com/cucumber/godog"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
)

// Bug is the panic of a run whose record cannot be trusted: Hingeline itself
// is wrong, not the script and not the model.
type Bug struct{ Message string }

func (b *Bug) Error() string { return "the record of the script cannot be trusted: " + b.Message }

// Run checks scripts against a model. It returns every problem of the scripts
// and the selection, sorted by place; with an error among them nothing was run
// and the record is empty.
func Run(m *airframes.Model, files []File, sel Selection) (Record, []diag.Problem) {
	scenarios, vocabulary, problems := prepare(m, files)
	if !diag.HasErrors(problems) {
		problems = append(problems, sel.choose(scenarios)...)
	}
	diag.Sort(problems)
	if diag.HasErrors(problems) {
		return Record{}, problems
	}
	r := &run{model: m, vocabulary: vocabulary, scenarios: scenarios}
	if err := r.godog(files); err != nil {
		panic(&Bug{err.Error()})
	}
	return recordOf(m, scenarios), problems
}

// prepare reads and compiles scripts.
func prepare(m *airframes.Model, files []File) ([]*scenario, *phrase.Vocabulary, []diag.Problem) {
	problems := checkFiles(files)
	if len(problems) > 0 {
		return nil, nil, problems
	}
	c := &compiler{model: m, vocabulary: phrase.NewVocabulary(m)}
	var documents []*document
	for _, f := range files {
		d, found := read(f)
		for _, p := range found {
			c.report(p)
		}
		if d.dialect == nil {
			continue
		}
		for _, p := range d.checkStructure(c) {
			c.report(p)
		}
		documents = append(documents, d)
	}
	if !c.checkSize(documents) {
		return nil, c.vocabulary, c.problems
	}
	for _, d := range documents {
		if !c.compile(d) {
			return nil, c.vocabulary, c.problems
		}
	}
	c.account(documents)
	return c.scenarios, c.vocabulary, c.problems
}

// run is one run of godog over compiled scenarios.
type run struct {
	model      *airframes.Model
	vocabulary *phrase.Vocabulary
	scenarios  []*scenario

	next    int       // index of the next scenario
	current *scenario // nil before the first
	at      int       // index of the current scenario's next step
	failing int       // scenarios with a failed check
	seen    *counter
	err     error // the first sign that the record is wrong
}

// errFailed ends a scenario with a failed check, so that godog's status says
// so too.
var errFailed = errors.New("a check failed")

// everyStep is the one step definition: every text is ours to read.
var everyStep = regexp.MustCompile(`(?s)^(.*)$`)

// godogs serialises runs: godog's registry of formatters is global, and so are
// environment variables that it sets.
var godogs sync.Mutex

// godog runs the scenarios and says what shows that the record is wrong.
func (r *run) godog(files []File) error {
	godogs.Lock()
	defer godogs.Unlock()
	registerCounter()
	r.seen = &counter{}
	counting = r.seen
	contents := make([]godog.Feature, len(files))
	for i, f := range files {
		contents[i] = godog.Feature{Name: f.Name, Contents: newSource(f).text}
	}
	suite := godog.TestSuite{
		Name:                "hingeline",
		ScenarioInitializer: r.initialize,
		Options: &godog.Options{
			Format: counterName, Output: io.Discard, NoColors: true,
			Strict: true, Concurrency: 1, FeatureContents: contents,
		},
	}
	status := suite.Run()
	return r.disagreement(status)
}

func (r *run) initialize(sc *godog.ScenarioContext) {
	sc.Before(func(ctx context.Context, pickle *godog.Scenario) (context.Context, error) {
		return ctx, r.begin(pickle)
	})
	sc.Step(everyStep, r.step)
	sc.After(func(ctx context.Context, _ *godog.Scenario, _ error) (context.Context, error) { return ctx, r.end() })
}

// wrong notes the first sign that the record is wrong.
func (r *run) wrong(format string, values ...any) error {
	err := fmt.Errorf(format, values...)
	if r.err == nil {
		r.err = err
	}
	return err
}

// begin takes the next compiled scenario and holds it against godog's.
func (r *run) begin(pickle *godog.Scenario) error {
	if r.next >= len(r.scenarios) {
		return r.wrong("godog runs %q beyond the last scenario", pickle.Name)
	}
	s := r.scenarios[r.next]
	r.next++
	r.current, r.at = s, 0
	if s.file != pickle.Uri || s.name != pickle.Name || len(s.steps) != len(pickle.Steps) {
		return r.wrong("godog runs %q of %s with %d steps, want %q of %s with %d", pickle.Name, pickle.Uri, len(pickle.Steps), s.name, s.file, len(s.steps))
	}
	for i, st := range pickle.Steps {
		if s.steps[i].text != st.Text {
			return r.wrong("godog runs the step %q, want %q", st.Text, s.steps[i].text)
		}
	}
	return nil
}

// step runs the checks of one step. Failed checks do not end the scenario.
func (r *run) step(text string) error {
	if r.current == nil || r.at >= len(r.current.steps) || r.current.steps[r.at].text != text {
		return r.wrong("godog runs the step %q out of turn", text)
	}
	for _, ch := range r.current.steps[r.at].checks {
		if ch.selected {
			ch.judge(r.model, r.vocabulary)
		}
	}
	r.at++
	return nil
}

// end counts a scenario.
func (r *run) end() error {
	if r.current == nil || r.at != len(r.current.steps) {
		return r.wrong("a scenario ended before its last step")
	}
	for i := range r.current.steps {
		for _, ch := range r.current.steps[i].checks {
			if ch.selected && !ch.result.Passed {
				r.failing++
				return errFailed
			}
		}
	}
	return nil
}

// disagreement holds the record against everything godog says about the run.
func (r *run) disagreement(status int) error {
	steps, unjudged := 0, 0
	for _, s := range r.scenarios {
		steps += len(s.steps)
	}
	each(r.scenarios, func(ch *check) {
		if ch.selected != ch.done {
			unjudged++
		}
	})
	wantStatus := min(r.failing, 1)
	switch {
	case r.err != nil:
		return r.err
	case r.next != len(r.scenarios):
		return r.wrong("%d of %d scenarios ran", r.next, len(r.scenarios))
	case unjudged > 0:
		return r.wrong("%d checks were not judged", unjudged)
	case status != wantStatus:
		return r.wrong("godog's status is %d, want %d", status, wantStatus)
	case r.seen.scenarios != len(r.scenarios) || r.seen.failed != r.failing || r.seen.passed != steps-r.failing || r.seen.other != 0:
		return r.wrong("godog counts %+v, want %d scenarios of %d steps with %d failing", *r.seen, len(r.scenarios), steps, r.failing)
	}
	return nil
}

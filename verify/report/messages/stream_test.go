package messages

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	messages "github.com/cucumber/messages/go/v34"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// schema is the protocol's own schema of one line.
func schema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "formats", "cucumber-messages.schema.json"))
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("https://cucumber.io/schema/Envelope.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("https://cucumber.io/schema/Envelope.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// read is what a reader of the messages makes of them.
type read struct {
	started  int
	pickles  map[string]*messages.Pickle
	lines    map[string]int64 // of syntax nodes, by id
	cases    []*messages.TestCase
	results  map[string]*messages.TestStepResult // by id of the test step
	finished *messages.TestRunFinished
}

// consume reads a stream strictly: each line by the schema, each id once, each reference
// to something before it, everything begun and ended once and in order.
func consume(s *jsonschema.Schema, text []byte) (*read, error) {
	r := &read{pickles: map[string]*messages.Pickle{}, lines: map[string]int64{}, results: map[string]*messages.TestStepResult{}}
	ids := map[string]string{} // what each id is of
	have := func(kind, id string) error {
		if ids[id] != kind {
			return fmt.Errorf("there is no %s %q", kind, id)
		}
		return nil
	}
	give := func(kind, id string) error {
		if ids[id] != "" || id == "" {
			return fmt.Errorf("the id %q of a %s is taken by a %s", id, kind, ids[id])
		}
		ids[id] = kind
		return nil
	}
	running, step := "", ""                   // ids of what has begun and not ended
	caseOf := map[string]*messages.TestCase{} // by the id of its run
	at := 0                                   // step of the running case
	lines := strings.SplitAfter(string(text), "\n")
	if lines[len(lines)-1] != "" {
		return nil, fmt.Errorf("the last line does not end")
	}
	for n, line := range lines[:len(lines)-1] {
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(line))
		if err == nil {
			err = s.Validate(doc)
		}
		var e messages.Envelope
		if err == nil {
			err = json.Unmarshal([]byte(line), &e)
		}
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", n+1, err)
		}
		switch {
		case r.finished != nil:
			err = fmt.Errorf("a message behind the end")
		case (n == 0) != (e.Meta != nil):
			err = fmt.Errorf("meta is not the first")
		case e.GherkinDocument != nil:
			err = r.document(e.GherkinDocument, give)
		case e.Pickle != nil:
			r.pickles[e.Pickle.Id] = e.Pickle
			err = give("pickle", e.Pickle.Id)
			for _, st := range e.Pickle.Steps {
				for _, node := range st.AstNodeIds {
					if r.lines[node] == 0 {
						err = fmt.Errorf("no syntax node %s", node)
					}
				}
				if err == nil {
					err = give("pickle step", st.Id)
				}
			}
		case e.StepDefinition != nil:
			err = give("definition", e.StepDefinition.Id)
		case e.TestRunStarted != nil:
			r.started++
			err = give("run", e.TestRunStarted.Id)
		case e.TestCase != nil:
			c := e.TestCase
			r.cases = append(r.cases, c)
			err = give("case", c.Id)
			if p := r.pickles[c.PickleId]; p == nil || len(p.Steps) != len(c.TestSteps) {
				err = fmt.Errorf("case %s has not the steps of a pickle", c.Id)
			} else {
				for i, st := range c.TestSteps {
					if st.PickleStepId != p.Steps[i].Id || len(st.StepDefinitionIds) != 1 || have("definition", st.StepDefinitionIds[0]) != nil {
						err = fmt.Errorf("test step %s is not of its pickle step", st.Id)
					} else if err == nil {
						err = give("test step", st.Id)
					}
				}
			}
		case e.TestCaseStarted != nil:
			for _, c := range r.cases {
				if c.Id == e.TestCaseStarted.TestCaseId {
					caseOf[e.TestCaseStarted.Id] = c
				}
			}
			if running != "" || caseOf[e.TestCaseStarted.Id] == nil {
				err = fmt.Errorf("a case begins inside another, or is none")
			} else {
				err = give("case run", e.TestCaseStarted.Id)
			}
			running, at = e.TestCaseStarted.Id, 0
		case e.TestStepStarted != nil:
			c := caseOf[running]
			if c == nil || step != "" || e.TestStepStarted.TestCaseStartedId != running || at >= len(c.TestSteps) || c.TestSteps[at].Id != e.TestStepStarted.TestStepId {
				err = fmt.Errorf("a step begins out of turn")
			}
			step = e.TestStepStarted.TestStepId
		case e.TestStepFinished != nil:
			if step == "" || e.TestStepFinished.TestStepId != step || e.TestStepFinished.TestCaseStartedId != running {
				err = fmt.Errorf("a step ends out of turn")
			}
			r.results[step] = e.TestStepFinished.TestStepResult
			step = ""
			at++
		case e.TestCaseFinished != nil:
			if step != "" || e.TestCaseFinished.TestCaseStartedId != running || caseOf[running] == nil || at != len(caseOf[running].TestSteps) {
				err = fmt.Errorf("a case ends out of turn")
			}
			running = ""
		case e.TestRunFinished != nil:
			r.finished = e.TestRunFinished
			err = have("run", r.finished.TestRunStartedId)
		case e.Meta == nil && e.Source == nil:
			err = fmt.Errorf("an empty message")
		}
		if err != nil {
			return nil, fmt.Errorf("line %d: %w: %s", n+1, err, line)
		}
	}
	if r.finished == nil || r.started != 1 || running != "" || len(caseOf) != len(r.cases) {
		return nil, fmt.Errorf("the run did not begin and end once, with all its cases")
	}
	return r, nil
}

// document notes the lines of what pickles refer to.
func (r *read) document(d *messages.GherkinDocument, give func(kind, id string) error) error {
	var first error
	note := func(id string, at *messages.Location) {
		if err := give("node", id); err != nil && first == nil {
			first = err
		}
		r.lines[id] = at.Line
	}
	steps := func(list []*messages.Step) {
		for _, st := range list {
			note(st.Id, st.Location)
		}
	}
	scenario := func(s *messages.Scenario) {
		if s == nil {
			return
		}
		note(s.Id, s.Location)
		steps(s.Steps)
		for _, ex := range s.Examples {
			for _, row := range ex.TableBody {
				note(row.Id, row.Location)
			}
		}
	}
	background := func(b *messages.Background) {
		if b != nil {
			steps(b.Steps)
		}
	}
	for _, c := range d.Feature.Children {
		scenario(c.Scenario)
		background(c.Background)
		if c.Rule != nil {
			for _, c := range c.Rule.Children {
				scenario(c.Scenario)
				background(c.Background)
			}
		}
	}
	return first
}

func mustConsume(t *testing.T, s *jsonschema.Schema, text []byte) *read {
	t.Helper()
	r, err := consume(s, text)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// stepsThat are the steps of all cases that have a status, as "line of the row or step:
// text".
func (r *read) stepsThat(have messages.TestStepResultStatus) (found []string) {
	for _, c := range r.cases {
		p := r.pickles[c.PickleId]
		for i, st := range c.TestSteps {
			if r.results[st.Id].Status == have {
				nodes := p.Steps[i].AstNodeIds
				found = append(found, fmt.Sprintf("%d: %s", r.lines[nodes[len(nodes)-1]], p.Steps[i].Text))
			}
		}
	}
	return found
}

// A planted fault for each rule: the reader that the tests trust refuses it.
func TestConsumeRefusesPlantedFaults(t *testing.T) {
	s := schema(t)
	good := string(rendered(t, failing(t)))
	mustConsume(t, s, []byte(good))
	line := func(with string) string {
		for _, l := range strings.SplitAfter(good, "\n") {
			if strings.Contains(l, with) {
				return l
			}
		}
		t.Fatalf("no line holds %s", with)
		return ""
	}
	finished, run := line(`"testRunFinished"`), line(`"testRunStarted"`)
	for _, c := range []struct{ name, from, to string }{
		{"another status", `"status":"FAILED"`, `"status":"BROKEN"`},
		{"another key", `"uri":`, `"url":`},
		{"no timestamp", line(`"testCaseStarted"`), strings.Replace(line(`"testCaseStarted"`), `"timestamp"`, `"time"`, 1)},
		{"no end", finished, ""},
		{"two ends", finished, finished + finished},
		{"no beginning", run, ""},
		{"a case without its pickle", `"pickleId":"`, `"pickleId":"x`},
		{"a step without its pickle step", `"pickleStepId":"`, `"pickleStepId":"x`},
		{"a step that does not end", line(`"testStepFinished"`), ""},
		{"a case that does not end", line(`"testCaseFinished"`), ""},
		{"an id twice", `"id":"case-2"`, `"id":"case-1"`},
		{"no definition", line(`"stepDefinition"`), ""},
		{"no JSON", `{"meta"`, `{meta`},
	} {
		bad := strings.Replace(good, c.from, c.to, 1)
		if bad == good {
			t.Fatalf("%s: nothing was planted", c.name)
		}
		if _, err := consume(s, []byte(bad)); err == nil {
			t.Errorf("%s: accepted", c.name)
		}
	}
}

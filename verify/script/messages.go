package script

import (
	"bytes"
	"encoding/json"
	"fmt"

	gherkin "github.com/cucumber/gherkin/go/v42"
	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/result"
)

// Messages are scripts as they were read, for programs that read Cucumber messages. It
// runs nothing. The scripts must be ones that Run takes: of others it gives nil.
func Messages(m *airframes.Model, files []File) []result.Source {
	scenarios, _, problems := prepare(m, files)
	if diag.HasErrors(problems) {
		return nil
	}
	ids := &messages.Incrementing{}
	sources := make([]result.Source, len(files))
	for i, f := range files {
		sources[i], scenarios = sourceOf(f, scenarios, ids.NewId)
	}
	if len(scenarios) > 0 {
		panic(&Bug{fmt.Sprintf("the scenario %q has no pickle", scenarios[0].name)})
	}
	return sources
}

// sourceOf is one script, and what is left of the compiled scenarios behind it.
func sourceOf(f File, scenarios []*scenario, newID func() string) (result.Source, []*scenario) {
	d := &document{source: newSource(f)}
	parsed, err := gherkin.ParseGherkinDocument(bytes.NewReader(d.text), newID)
	if err != nil || parsed == nil {
		panic(&Bug{fmt.Sprintf("%s cannot be read a second time: %v", f.Name, err)})
	}
	d.feature, parsed.Uri = parsed.Feature, f.Name
	s := result.Source{
		URI: f.Name, Text: string(d.text), MediaType: string(messages.SourceMediaType_TEXT_X_CUCUMBER_GHERKIN_PLAIN),
		Document: message(parsed), Pattern: everyStep.String(),
	}
	lines := d.linesByID()
	for _, p := range gherkin.Pickles(*parsed, f.Name, newID) {
		if len(scenarios) == 0 {
			panic(&Bug{fmt.Sprintf("the pickle %q was not compiled", p.Name)})
		}
		s.Pickles = append(s.Pickles, pickleOf(p, scenarios[0], lines))
		scenarios = scenarios[1:]
	}
	return s, scenarios
}

// pickleOf is a pickle beside the compiled scenario that it must be.
func pickleOf(p *messages.Pickle, s *scenario, lines map[string]int) result.Pickle {
	if p.Uri != s.file || p.Name != s.name || len(p.Steps) != len(s.steps) {
		panic(&Bug{fmt.Sprintf("the pickle %q of %s is not the scenario %q of %s", p.Name, p.Uri, s.name, s.file)})
	}
	pickle := result.Pickle{ID: p.Id, Message: message(p)}
	for i, st := range p.Steps {
		if st.Text != s.steps[i].text {
			panic(&Bug{fmt.Sprintf("the pickle's step %q is compiled as %q", st.Text, s.steps[i].text)})
		}
		pickle.Steps = append(pickle.Steps, result.PickleStep{
			ID: st.Id, Text: st.Text, Line: lines[st.AstNodeIds[len(st.AstNodeIds)-1]], Checks: len(s.steps[i].checks),
		})
	}
	return pickle
}

// linesByID are the lines of steps and of the rows of outlines.
func (d *document) linesByID() map[string]int {
	lines := map[string]int{}
	d.eachStep(func(st *messages.Step) { lines[st.Id] = int(st.Location.Line) })
	for _, e := range d.entries() {
		for _, examples := range e.scenario.Examples {
			for _, row := range examples.TableBody {
				lines[row.Id] = int(row.Location.Line)
			}
		}
	}
	return lines
}

func message(m any) json.RawMessage {
	var text bytes.Buffer
	e := json.NewEncoder(&text)
	e.SetEscapeHTML(false)
	if err := e.Encode(m); err != nil {
		panic(&Bug{err.Error()})
	}
	return bytes.TrimSpace(text.Bytes())
}

package script

import (
	"fmt"
	"slices"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes/diag"
)

// entry is one scenario of a file with what stands around it.
type entry struct {
	feature    string
	tags       []string
	background []*messages.Step
	scenario   *messages.Scenario
}

// entries are the scenarios of a file, in the order in which they run.
func (d *document) entries() (list []entry) {
	if d.feature == nil {
		return nil
	}
	var background []*messages.Step
	for _, child := range d.feature.Children {
		switch {
		case child.Background != nil:
			background = child.Background.Steps
		case child.Scenario != nil:
			list = append(list, entry{d.feature.Name, tagNames(d.feature.Tags), background, child.Scenario})
		case child.Rule != nil:
			inside := background
			for _, c := range child.Rule.Children {
				switch {
				case c.Background != nil:
					inside = slices.Concat(background, c.Background.Steps)
				case c.Scenario != nil:
					list = append(list, entry{d.feature.Name, tagNames(d.feature.Tags, child.Rule.Tags), inside, c.Scenario})
				}
			}
		}
	}
	return list
}

func tagNames(lists ...[]*messages.Tag) (names []string) {
	for _, list := range lists {
		for _, tag := range list {
			names = append(names, tag.Name)
		}
	}
	return names
}

// checkStructure finds what Gherkin would pass over in silence.
func (d *document) checkStructure(c *compiler) (problems []diag.Problem) {
	add := func(place diag.Place, code, message, hint string) {
		problems = append(problems, diag.Problem{Place: place, Code: code, Message: message, Hint: hint})
	}
	entries := d.entries()
	if len(entries) == 0 && !d.broken {
		add(diag.Place{File: d.name}, codeNoScenarios, "the script has no scenario: nothing would be checked", "write a Feature with a Scenario in it")
	}
	names := map[string]int64{}
	for _, e := range entries {
		s := e.scenario
		heading := d.at(int(s.Location.Line))
		if first, twice := names[s.Name]; twice {
			add(heading, codeSameScenario, fmt.Sprintf("the scenario of line %d has this name too", first), "give each scenario a name of its own")
		} else {
			names[s.Name] = s.Location.Line
		}
		if len(s.Steps) == 0 && !d.broken {
			add(heading, codeEmptyScenario, "the scenario has no steps: nothing would be checked", "write what should happen, such as \"Then the elevator rises\"")
		}
		d.checkExamples(s, add)
	}
	d.eachBackground(func(step *messages.Step) {
		d.checkPlaceholders(int(step.Location.Line), nil, add)
	})
	d.eachStep(func(step *messages.Step) {
		if step.DocString != nil {
			add(d.at(int(step.DocString.Location.Line)), codeStepArgument, "a sentence takes no text block", "write it all in the sentence")
		}
		if step.DataTable != nil {
			add(d.at(int(step.DataTable.Location.Line)), codeStepArgument, "a sentence takes no table", "for one scenario with several values write a Scenario Outline with Examples")
		}
	})
	return append(problems, d.checkDescriptions(c)...)
}

// eachBackground visits every step of the file's backgrounds once.
func (d *document) eachBackground(visit func(*messages.Step)) {
	if d.feature == nil {
		return
	}
	for _, child := range d.feature.Children {
		for _, b := range backgrounds(child) {
			for _, step := range b.Steps {
				visit(step)
			}
		}
	}
}

// backgrounds are those of a feature's child: itself, or those of a rule.
func backgrounds(child *messages.FeatureChild) (list []*messages.Background) {
	if child.Background != nil {
		list = append(list, child.Background)
	}
	if child.Rule != nil {
		for _, c := range child.Rule.Children {
			if c.Background != nil {
				list = append(list, c.Background)
			}
		}
	}
	return list
}

// eachStep visits every step of the file once.
func (d *document) eachStep(visit func(*messages.Step)) {
	d.eachBackground(visit)
	for _, e := range d.entries() {
		for _, step := range e.scenario.Steps {
			visit(step)
		}
	}
}

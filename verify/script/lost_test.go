package script

import (
	"bytes"
	"strings"
	"testing"

	gherkin "github.com/cucumber/gherkin/go/v42"
	messages "github.com/cucumber/messages/go/v34"
	"pgregory.net/rapid"

	"example.com/hingeline/airframes/diag"
)

// The pieces of random scripts: right ones, and all kinds of wrong ones.
var (
	anyKeyword  = rapid.SampledFrom([]string{"Given ", "When ", "Then ", "And ", "But ", "* ", "Given ", "When ", "Then ", "then ", "Whem ", "Dann ", "1. Then ", "- ", ""})
	anySentence = rapid.SampledFrom([]string{
		"rates are high", "right roll", "landing flap", "the signal is lost", "the signal is back", "live motor and full throttle", "everything rests",
		"the port aileron drops", "the flaps drop, at least 5°", "the rudder is at neutral", "the motor stays stopped", "every surface stays still",
		"with right roll, the port aileron drops", "with live motor, when full throttle, the motor runs", "with full throttle and the signal lost, the motor is stopped",
		"the <a> drops", "the <b> is at <a>", "<a>", "<<a>>", "<a><b>", "<a", "a>", "<c>", "with <a> roll, the rudder stays still", "nonsense", "the rudder", "the roll stick is <b> right",
	})
	anyName = rapid.SampledFrom([]string{"plain", "<a>", "<<a>>", "x > y", "of <b>"})
	anyCell = rapid.SampledFrom([]string{"right", "rudder", "port flap", "neutral", "a", "<a", "b>", "<a>", "", "50%", "the rudder is at neutral", "right roll"})
	anyRow  = rapid.SampledFrom([][]string{{"a"}, {"a", "b"}, {"b", "a"}, {"a", "<b"}, {"a", "a"}})
)

// rightSteps are steps of scenarios that pass, rightRows what fills those of an
// outline.
var (
	rightSteps = rapid.SampledFrom([][]string{
		{"Given rates are high", "When right roll", "Then the port aileron drops"},
		{"* with right roll, the port aileron drops", "And the rudder is at neutral"},
		{"Given live motor and full throttle", "When the signal is lost", "Then the motor stops"},
		{"Given the signal is lost", "And full throttle", "Then the motor is stopped", "When the signal is back", "Then the rudder stays still"},
		{"When landing flap", "And full throttle", "Then the flaps drop", "When right roll", "Then every surface is not at its stop"},
	})
	rightRows = []string{"| a | b |", "| rudder | half |", "| elevator | 50% |"}
)

// scriptDraw is a random script under way.
type scriptDraw struct {
	*rapid.T
	lines []string
	meant []int // numbers of the lines that a person meant as steps
}

func (s *scriptDraw) add(line string) { s.lines = append(s.lines, line) }

func (s *scriptDraw) steps(list []string) {
	for _, step := range list {
		s.add("    " + step)
		s.meant = append(s.meant, len(s.lines))
	}
}

func (s *scriptDraw) wild() (list []string) {
	for range rapid.IntRange(0, 3).Draw(s.T, "steps") {
		list = append(list, anyKeyword.Draw(s.T, "keyword")+anySentence.Draw(s.T, "sentence"))
	}
	return list
}

func (s *scriptDraw) wildRows() {
	columns := anyRow.Draw(s.T, "columns")
	s.add("      | " + strings.Join(columns, " | ") + " |")
	for range rapid.IntRange(0, 3).Draw(s.T, "rows") {
		row := ""
		for range columns {
			row += " | " + anyCell.Draw(s.T, "cell")
		}
		s.add("     " + row + " |")
	}
}

// scenario is a right one, an outline or not, unless slip is true.
func (s *scriptDraw) scenario(name string, slip bool) {
	outline := rapid.Bool().Draw(s.T, "outline")
	if slip {
		name += " " + anyName.Draw(s.T, "name")
	}
	if outline {
		s.add("  Scenario Outline: " + name + " of <a>")
		s.steps([]string{"When the roll stick is <b> right", "Then the <a> stays still"})
	} else {
		s.add("  Scenario: " + name)
		s.steps(rightSteps.Draw(s.T, "right steps"))
	}
	if slip {
		s.steps(s.wild())
	}
	if !outline {
		return
	}
	s.add("    Examples:")
	if slip && rapid.Bool().Draw(s.T, "wild rows") {
		s.wildRows()
		return
	}
	for _, row := range rightRows {
		s.add("      " + row)
	}
}

// anyScript draws a script, right in most of its pieces.
func anyScript(t *rapid.T) *scriptDraw {
	s := &scriptDraw{T: t, lines: []string{"Feature: f"}}
	slips := rapid.SampledFrom([]bool{false, true, true}).Draw(t, "slips")
	slip := func() bool { return slips && rapid.Bool().Draw(t, "slip") }
	if rapid.Bool().Draw(t, "background") {
		s.add("  Background:")
		s.steps([]string{"Given the motor switch is live"})
		if slip() {
			s.steps(s.wild())
		}
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "scenarios") {
		name := string(rune('a' + i))
		if rapid.Bool().Draw(t, "rule") {
			s.add("  Rule: " + name)
		}
		s.scenario(name, slip())
	}
	return s
}

// No step may vanish: as many as Gherkin has for all scenarios, counted by
// Gherkin itself, are compiled or reported, and a line that Gherkin does not take
// for a step is reported too.
func TestEveryStepIsCompiledOrReported(t *testing.T) {
	m := fennel(t)
	whole, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		drawn := anyScript(t)
		text := strings.Join(drawn.lines, "\n") + "\n"
		scenarios, _, problems := prepare(m, []File{{"test.feature", []byte(text)}})
		reported := map[int]bool{}
		for _, p := range problems {
			reported[p.Line] = true
		}
		parsed, err := gherkin.ParseGherkinDocument(bytes.NewReader([]byte(text)), (&messages.Incrementing{}).NewId)
		if err != nil && !diag.HasErrors(problems) {
			t.Fatalf("Gherkin refuses what passes: %v\n%s", err, text)
		}
		lines := stepLines(parsed.Feature)
		for _, line := range drawn.meant {
			if !reported[line] && !lines[line] {
				t.Fatalf("line %d is neither a step nor reported:\n%s", line, text)
			}
		}
		pickles := gherkin.Pickles(*parsed, "test.feature", (&messages.Incrementing{}).NewId)
		for i, pickle := range pickles {
			if i >= len(scenarios) || len(scenarios[i].steps) < len(pickle.Steps) {
				t.Fatalf("scenario %d of %d is compiled short:\n%s", i+1, len(pickles), text)
			}
			doubtful := false
			for k := range pickle.Steps {
				st := &scenarios[i].steps[k]
				if !st.refused {
					if !st.set && len(st.checks) == 0 {
						t.Fatalf("the step %q checks nothing:\n%s", st.text, text)
					}
					continue
				}
				line := lineOf(parsed.Feature, pickle.Steps[k].AstNodeIds[0])
				if !reported[line] && !reported[int(pickle.Location.Line)] && !doubtful {
					t.Fatalf("the step %q of line %d is refused without a word: %+v\n%s", st.text, line, problems, text)
				}
				doubtful = true
			}
		}
		if diag.HasErrors(problems) {
			refused++
			return
		}
		whole++
		if record, _ := Run(m, []File{{"test.feature", []byte(text)}}, Selection{}); len(record.Checks) == 0 {
			t.Fatalf("nothing is checked:\n%s", text)
		}
	})
	if whole == 0 || refused == 0 {
		t.Errorf("%d scripts ran and %d were refused, want some of both", whole, refused)
	}
}

// eachOf visits every step of a feature.
func eachOf(f *messages.Feature, visit func(*messages.Step)) {
	d := &document{feature: f}
	d.eachStep(visit)
}

func stepLines(f *messages.Feature) map[int]bool {
	lines := map[int]bool{}
	eachOf(f, func(st *messages.Step) { lines[int(st.Location.Line)] = true })
	return lines
}

func lineOf(f *messages.Feature, id string) (line int) {
	eachOf(f, func(st *messages.Step) {
		if st.Id == id {
			line = int(st.Location.Line)
		}
	})
	return line
}

package messages

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

func failing(t *testing.T) *result.Report { return check(t, sorrel, script.Selection{}, sorrelFile()) }

func TestRenderGolden(t *testing.T) {
	r := failing(t)
	r.Tool, r.Date = "0.1.0", "2026-11-25T20:15:00Z"
	airframestest.Golden(t, filepath.Join("testdata", "sorrel.ndjson"), rendered(t, r), *update)
}

// Exactly the step of the second row fails, and no other that reads the same.
func TestRenderFailsTheStepOfItsRow(t *testing.T) {
	read := mustConsume(t, schema(t), rendered(t, failing(t)))
	got := read.stepsThat(messages.TestStepResultStatus_FAILED)
	if want := []string{"25: the flap is 30° down ± 1°"}; !slices.Equal(got, want) {
		t.Errorf("failed: %q, wanted %q", got, want)
	}
	if read.finished.Success || !strings.Contains(read.finished.Message, "DO NOT FLY") {
		t.Errorf("the run ends with %+v", read.finished)
	}
	if len(read.cases) != 5 || len(read.pickles) != 5 {
		t.Errorf("%d cases of %d pickles, wanted 5 of 5", len(read.cases), len(read.pickles))
	}
	for _, res := range read.results {
		if res.Status == messages.TestStepResultStatus_FAILED && (!strings.Contains(res.Message, "wanted: ") || !strings.Contains(res.Message, "got: ")) {
			t.Errorf("the failed step says %q", res.Message)
		}
	}
	if skipped := read.stepsThat(messages.TestStepResultStatus_SKIPPED); skipped != nil {
		t.Errorf("skipped: %q", skipped)
	}
}

// The same sentence twice in one scenario, after different movements: the second fails.
func TestRenderTellsEqualSentencesApart(t *testing.T) {
	text := `Feature: F
  Scenario Outline: S
    When the flap lever is parked
    Then the flap is at neutral
    When the flap lever is at <to>
    Then the flap is at neutral

    Examples:
      | to      |
      | parked  |
      | landing |
`
	r := check(t, sorrel, script.Selection{}, script.File{Name: "twice.feature", Text: []byte(text)})
	read := mustConsume(t, schema(t), rendered(t, r))
	var failed [][2]int
	for c, one := range read.cases {
		for i, st := range one.TestSteps {
			if read.results[st.Id].Status == messages.TestStepResultStatus_FAILED {
				failed = append(failed, [2]int{c, i})
			}
		}
	}
	if want := [][2]int{{1, 3}}; !slices.Equal(failed, want) {
		t.Errorf("case and step that failed: %v, wanted %v", failed, want)
	}
}

// What --only leaves out is no case, or skipped where a part of its scenario ran; the run
// is no success.
func TestRenderNeverPassesWhatWasLeftOut(t *testing.T) {
	r := check(t, sorrel, script.Selection{Only: []string{"port aileron", "landing"}}, sorrelFile())
	read := mustConsume(t, schema(t), rendered(t, r))
	if len(read.cases) != 3 { // right roll, the row of the landing flap, both ailerons at neutral
		t.Errorf("%d cases, wanted 3", len(read.cases))
	}
	got := read.stepsThat(messages.TestStepResultStatus_SKIPPED)
	want := []string{"7: the flap is at neutral", "12: the starboard aileron rises", "7: the flap is at neutral", "32: the elevator rises", "33: both ailerons are at neutral"}
	if !slices.Equal(got, want) {
		t.Errorf("skipped: %q, wanted %q", got, want)
	}
	if r = check(t, sorrel, script.Selection{Only: []string{"@wing"}}, sorrelFile()); r.Verdict != result.PassedInPart {
		t.Fatalf("the verdict is %q", r.Verdict)
	}
	if mustConsume(t, schema(t), rendered(t, r)).finished.Success {
		t.Error("a pass in part is a success")
	}
}

// A script that fights the aeroplane fails at its sentence, and the run says why.
func TestRenderFailsAWrongScript(t *testing.T) {
	backwards := strings.Replace(sorrel, "add: roll, share: -100%", "add: roll, share: 100%", 1)
	text := "Feature: F\n  Scenario: S\n    When the roll stick is full right\n    Then the port aileron rises\n"
	r := check(t, backwards, script.Selection{}, script.File{Name: "f.feature", Text: []byte(text)})
	if _, failed := r.Counts(); failed != 0 || r.Verdict != result.Failed {
		t.Fatalf("%d failed, verdict %q", failed, r.Verdict)
	}
	read := mustConsume(t, schema(t), rendered(t, r))
	if got, want := read.stepsThat(messages.TestStepResultStatus_FAILED), []string{"4: the port aileron rises"}; !slices.Equal(got, want) {
		t.Errorf("failed: %q, wanted %q", got, want)
	}
	if read.finished.Success || read.finished.Exception == nil || !strings.Contains(read.finished.Exception.Message, "fights the aeroplane") {
		t.Errorf("the run ends with %+v", read.finished)
	}
}

// Warnings under --strict-script are at a line of the airframe file, not at a step: the run
// fails with them.
func TestRenderFailsWhatIsAtNoStep(t *testing.T) {
	r := check(t, sorrel, script.Selection{Only: []string{"@wing"}}, sorrelFile())
	verify.Strict(r)
	if r.Verdict != result.Failed {
		t.Fatalf("the verdict is %q", r.Verdict)
	}
	end := mustConsume(t, schema(t), rendered(t, r)).finished
	if end.Success || end.Exception == nil || !strings.Contains(end.Exception.Message, "trim") {
		t.Errorf("the run ends with %+v", end)
	}
}

// Real models: one that passes, and single mistakes in it.
func TestRenderOfShippedModels(t *testing.T) {
	s := schema(t)
	r := shipped(t, "bracken-20", "", "")
	read := mustConsume(t, s, rendered(t, r))
	if !read.finished.Success || len(read.cases) != len(read.pickles) || read.stepsThat(messages.TestStepResultStatus_FAILED) != nil {
		t.Errorf("bracken-20: success %v, %d cases of %d pickles", read.finished.Success, len(read.cases), len(read.pickles))
	}
	for _, c := range []struct{ from, to string }{
		{"when: rate switch is high}\n    reversed: true\n    sub_trim: 3%", "when: rate switch is high}\n    sub_trim: 3%"},
		{"offset_mm: 22, horn: below", "offset_mm: 22, horn: above"},
		{"replace_with: -100%", "replace_with: 100%"},
	} {
		r := shipped(t, "bracken-20", c.from, c.to)
		read := mustConsume(t, s, rendered(t, r))
		want := map[result.StepNumber]bool{}
		for i := range r.Checks {
			if !r.Checks[i].Passed {
				want[r.Checks[i].Step] = true
			}
		}
		got := read.stepsThat(messages.TestStepResultStatus_FAILED)
		if read.finished.Success || len(want) == 0 || len(got) != len(want) {
			t.Errorf("%s: success %v, %d steps failed, wanted %d", c.to, read.finished.Success, len(got), len(want))
		}
	}
}

// Several scripts are one run, with ids that never meet.
func TestRenderOfSeveralScripts(t *testing.T) {
	other := script.File{Name: "my scripts/#2.feature", Text: []byte("\uFEFF# language: en\r\nFeature: F\r\n  Scenario: ]]> \"b\" \u2067\u05d0\u2069 \\ 🛩\r\n    Then the flap is at neutral\r\n")}
	r := check(t, sorrel, script.Selection{}, sorrelFile(), other)
	read := mustConsume(t, schema(t), rendered(t, r))
	if len(read.cases) != 6 {
		t.Errorf("%d cases, wanted 6", len(read.cases))
	}
}

func TestRenderIsTheSameEveryTime(t *testing.T) {
	if a, b := rendered(t, failing(t)), rendered(t, failing(t)); string(a) != string(b) {
		t.Error("two runs of the same differ")
	}
}

func TestRenderDates(t *testing.T) {
	for date, want := range map[string]messages.Timestamp{
		"": {}, "2026-11-25": {Seconds: 1795564800}, "2026-11-25T21:15:00+01:00": {Seconds: 1795637700},
		"0001-01-01": {Seconds: -62135596800}, "9999-12-31T23:59:59Z": {Seconds: 253402300799},
	} {
		if got := moment(date); *got != want {
			t.Errorf("%q is %+v, wanted %+v", date, *got, want)
		}
	}
}

// A report of another run is refused, not mapped to the nearest step.
func TestRenderRefusesOtherSources(t *testing.T) {
	if err := Render(io.Discard, sample.Failing()); !errors.Is(err, ErrNoSources) {
		t.Errorf("without sources the error is %v", err)
	}
	for name, change := range map[string]func(*result.Report){
		"a check of no step":       func(r *result.Report) { r.Checks[0].Step = result.StepNumber{} },
		"a scenario too many":      func(r *result.Report) { r.Checks[0].Step.Scenario = 99 },
		"a step too many":          func(r *result.Report) { r.Checks[0].Step.Step = 99 },
		"another sentence":         func(r *result.Report) { r.Checks[0].Sentence += "!" },
		"another line":             func(r *result.Report) { r.Checks[0].Place.Line++ },
		"another file":             func(r *result.Report) { r.Checks[0].Place.File = "x" },
		"a check twice":            func(r *result.Report) { r.Checks = append(r.Checks, r.Checks[0]) },
		"a step that asks nothing": func(r *result.Report) { r.Checks[0].Step.Step = 1 },
	} {
		r := failing(t)
		change(r)
		var mismatch *MismatchError
		if err := Render(io.Discard, r); !errors.As(err, &mismatch) {
			t.Errorf("%s: the error is %v", name, err)
		}
	}
}

// The protocol is that of the library that makes the messages, and so is the schema.
func TestProtocolIsTheLibrarysVersion(t *testing.T) {
	for file, want := range map[string]string{
		"go.mod":                     "github.com/cucumber/messages/go/v34 v" + Protocol,
		"testdata/formats/README.md": "Cucumber messages " + Protocol + " ",
	} {
		text, err := os.ReadFile(filepath.Join("..", "..", "..", filepath.FromSlash(file)))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(text), want) {
			t.Errorf("%s does not hold %q", file, want)
		}
	}
}

type failingWriter struct{}

var errFull = errors.New("full")

func (failingWriter) Write([]byte) (int, error) { return 0, errFull }

func TestRenderGivesTheWritersError(t *testing.T) {
	if err := Render(failingWriter{}, failing(t)); !errors.Is(err, errFull) {
		t.Errorf("error is %v", err)
	}
}

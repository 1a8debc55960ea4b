package messages

import (
	"fmt"
	"strconv"
	"strings"

	messages "github.com/cucumber/messages/go/v34"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// MismatchError says that a report holds a check that is at no step of its scripts: it was
// put together of two runs.
type MismatchError struct{ Sentence, At string }

func (e *MismatchError) Error() string {
	return fmt.Sprintf("%s: %q is no step of the scripts that the report holds", e.At, e.Sentence)
}

// testCase is a pickle of which at least one check ran.
type testCase struct {
	id     string
	pickle *result.Pickle
	steps  []testStep
}

// testStep is one step of it and what became of it.
type testStep struct {
	*result.PickleStep
	ran    int      // checks that ran
	failed []string // what failed, in lines
}

// casesOf are the test cases of a report, in the order of the scripts.
func casesOf(r *result.Report) ([]testCase, error) {
	var cases []testCase
	var files []string // of each case: the script that it is of
	for i := range r.Sources {
		for k := range r.Sources[i].Pickles {
			p := &r.Sources[i].Pickles[k]
			c := testCase{id: "case-" + strconv.Itoa(len(cases)+1), pickle: p}
			for n := range p.Steps {
				c.steps = append(c.steps, testStep{PickleStep: &p.Steps[n]})
			}
			cases, files = append(cases, c), append(files, r.Sources[i].URI)
		}
	}
	all := said.ChecksOf(r)
	for i := range r.Checks {
		c := &r.Checks[i]
		st := stepOf(cases, files, c)
		if st == nil {
			return nil, &MismatchError{c.Sentence, said.At(c.Place)}
		}
		st.ran++
		if !c.Passed {
			st.failed = append(st.failed, all.Failure(i)...)
		}
	}
	blame(r, cases, files)
	ran := cases[:0]
	for _, c := range cases {
		if c.ran() {
			ran = append(ran, c)
		}
	}
	return ran, nil
}

// stepOf is the step that a check is of; nil for none.
func stepOf(cases []testCase, files []string, c *result.Check) *testStep {
	scenario, step := c.Step.Scenario-1, c.Step.Step-1
	if scenario < 0 || scenario >= len(cases) || step < 0 || step >= len(cases[scenario].steps) {
		return nil
	}
	st := &cases[scenario].steps[step]
	if files[scenario] != c.Place.File || st.Line != c.Place.Line || st.Text != c.Sentence || st.ran >= st.Checks {
		return nil
	}
	return st
}

// blame fails the steps whose sentences fail the check whatever the set-up does.
func blame(r *result.Report, cases []testCase, files []string) {
	for i := range r.Script {
		f := &r.Script[i]
		if !f.Fails || f.Sentence == "" {
			continue
		}
		for k := range cases {
			for n := range cases[k].steps {
				if st := &cases[k].steps[n]; files[k] == f.Place.File && st.Line == f.Place.Line && st.Text == f.Sentence {
					st.failed = append(st.failed, finding(f)...)
				}
			}
		}
	}
}

func (c *testCase) ran() bool {
	for i := range c.steps {
		if c.steps[i].ran > 0 {
			return true
		}
	}
	return false
}

func (c *testCase) stepID(i int) string { return c.id + "-step-" + strconv.Itoa(i+1) }

// message is the test case before it runs.
func (c *testCase) message() *messages.TestCase {
	m := &messages.TestCase{Id: c.id, PickleId: c.pickle.ID, TestRunStartedId: runID}
	for i := range c.steps {
		m.TestSteps = append(m.TestSteps, &messages.TestStep{
			Id: c.stepID(i), PickleStepId: c.steps[i].ID, StepDefinitionIds: []string{definitionID},
			StepMatchArgumentsLists: []*messages.StepMatchArgumentsList{{
				StepMatchArguments: []*messages.StepMatchArgument{{Group: &messages.Group{Value: c.steps[i].Text}}},
			}},
		})
	}
	return m
}

// run writes what became of a test case.
func (s *stream) run(c *testCase) {
	started := c.id + "-run"
	s.write(&messages.Envelope{TestCaseStarted: &messages.TestCaseStarted{Id: started, TestCaseId: c.id, Timestamp: s.now}})
	for i := range c.steps {
		s.write(&messages.Envelope{TestStepStarted: &messages.TestStepStarted{
			TestCaseStartedId: started, TestStepId: c.stepID(i), Timestamp: s.now,
		}})
		s.write(&messages.Envelope{TestStepFinished: &messages.TestStepFinished{
			TestCaseStartedId: started, TestStepId: c.stepID(i), TestStepResult: c.steps[i].result(), Timestamp: s.now,
		}})
	}
	s.write(&messages.Envelope{TestCaseFinished: &messages.TestCaseFinished{TestCaseStartedId: started, Timestamp: s.now}})
}

// result is what became of a step. One that sets the controls passes: it was done.
func (st *testStep) result() *messages.TestStepResult {
	res := &messages.TestStepResult{Duration: &messages.Duration{}, Status: messages.TestStepResultStatus_PASSED}
	switch {
	case len(st.failed) > 0:
		res.Status, res.Message = messages.TestStepResultStatus_FAILED, strings.Join(st.failed, "\n")
	case st.ran < st.Checks:
		res.Status = messages.TestStepResultStatus_SKIPPED
		res.Message = fmt.Sprintf("%d of %s of this step left out by --only", st.Checks-st.ran, said.Count(st.Checks, "check"))
	}
	return res
}

package script

import (
	"io"
	"sync"

	messages "github.com/cucumber/messages/go/v34"

	"github.com/cucumber/godog"
)

// counter counts what godog says about a run, to be held against our record.
type counter struct {
	scenarios, passed, failed, other int
}

// counterName is what godog's registry knows the counting formatter as.
const counterName = "hingeline"

var (
	// counting is the counter of the run under way; the lock of runs guards it.
	counting *counter

	registerCounter = sync.OnceFunc(func() {
		godog.Format(counterName, "counts steps", func(suite string, out io.Writer) godog.Formatter {
			return &countingFormatter{BaseFmt: godog.NewBaseFmt(suite, out), counter: counting}
		})
	})
)

// countingFormatter feeds a counter and prints nothing.
type countingFormatter struct {
	*godog.BaseFmt
	*counter
}

func (f *countingFormatter) Pickle(*messages.Pickle) { f.scenarios++ }

func (f *countingFormatter) Passed(*messages.Pickle, *messages.PickleStep, *godog.StepDefinition) {
	f.passed++
}

func (f *countingFormatter) Failed(*messages.Pickle, *messages.PickleStep, *godog.StepDefinition, error) {
	f.failed++
}

func (f *countingFormatter) Skipped(*messages.Pickle, *messages.PickleStep, *godog.StepDefinition) {
	f.other++
}

func (f *countingFormatter) Undefined(*messages.Pickle, *messages.PickleStep, *godog.StepDefinition) {
	f.other++
}

func (f *countingFormatter) Pending(*messages.Pickle, *messages.PickleStep, *godog.StepDefinition) {
	f.other++
}

func (f *countingFormatter) Ambiguous(*messages.Pickle, *messages.PickleStep, *godog.StepDefinition, error) {
	f.other++
}

// Summary prints nothing; the base formatter would.
func (f *countingFormatter) Summary() {}

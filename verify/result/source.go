package result

import "encoding/json"

// Source is one script as it was read, for programs that want the script beside what came
// of it.
type Source struct {
	URI       string // the name of the file, as Report.Scripts has it
	Text      string
	MediaType string
	Document  json.RawMessage // its syntax tree: a gherkinDocument of the Cucumber messages
	Pattern   string          // regular expression that takes every step of it
	Pickles   []Pickle        // in the order in which they run
}

// Pickle is one scenario, or one row of an outline, ready to run.
type Pickle struct {
	ID      string
	Message json.RawMessage // a pickle of the Cucumber messages
	Steps   []PickleStep
}

// PickleStep is one step of it.
type PickleStep struct {
	ID     string
	Text   string // with the values of its row filled in
	Line   int    // of the step, or of the row whose values it has: as Place.Line of its checks
	Checks int    // that it asks for, those left out too; 0 of a step that sets the controls
}

// StepNumber says which step it was of all that the scripts hold, in the order in which
// they run. Both numbers are from 1; both are 0 where nobody counted.
type StepNumber struct {
	Scenario int // among the Pickles of all Sources
	Step     int // in its scenario
}

// Package result is what happened in a control check, as plain values. Every
// renderer and every signature reads this and nothing else; it holds words and
// numbers that are ready to be shown, never a Plan or a parser's tree.
package result

// Report is one run of a control check.
type Report struct {
	Tool        string // version of Hingeline
	Model       Model
	Scripts     []string // names of the script files, in the order they ran
	Rest        []string // how every control stands at rest: "throttle 0 %", "rate switch low"
	Checks      []Check  // in walk-around order
	Findings    []Finding
	Script      []ScriptFinding // what is odd about the script itself
	Uncovered   Uncovered
	NotSelected int       // checks left out by --only
	Repairs     *Repairs  // of a failed check: single changes with which it passes; nil where nobody looked
	Prints      []Print   // fingerprints of the airframe file and the scripts, as they were read
	SetUp       string    // digest of the resolved set-up: the same whatever the comments and the order; "sha256:" and 64 digits
	Asked       string    // digest of the resolved scripts
	Date        string    // of the check: "2026-11-25", with or without "T20:15:00Z"; empty where nobody said
	Paper       *Paper    // what a report in the hand has beside; nil where nobody asked
	Standing    *Standing // what signatures there are, and whether they stand; nil where nobody looked
	Sources     []Source  // the scripts as they were read; nil where nobody asked
	Cautions    []string  // what a check on paper cannot see and is left to do, each a sentence, the dangerous part first
	Verdict     Verdict
}

// Counts says how many checks passed and how many failed.
func (r *Report) Counts() (passed, failed int) {
	for i := range r.Checks {
		if r.Checks[i].Passed {
			passed++
		} else {
			failed++
		}
	}
	return passed, failed
}

// Model is what the report is about.
type Model struct {
	Name string
	File string
}

// Verdict is the answer.
type Verdict string

// The verdicts.
const (
	Passed         Verdict = "passed"          // every check passed: the set-up as written does what the script asks
	PassedInPart   Verdict = "passed in part"  // every check that ran passed, but some were left out
	Failed         Verdict = "failed"          // at least one check failed: DO NOT FLY
	NothingChecked Verdict = "nothing checked" // no check ran: says nothing about the model
)

// Stage is a stage of the walk-around.
type Stage string

// The stages, in walking order.
const (
	BeforePower    Stage = "before power"
	PortWing       Stage = "port wing"
	Tail           Stage = "tail"
	StarboardWing  Stage = "starboard wing"
	MotorAndSignal Stage = "motor and loss of signal"
)

// Stages are all of them, in walking order.
var Stages = []Stage{BeforePower, PortWing, Tail, StarboardWing, MotorAndSignal}

// Check is one thing that the script asks and what the set-up does.
type Check struct {
	Stage    Stage
	Feature  string
	Scenario string
	Sentence string // as the script has it
	Place    Place  // of the sentence
	Step     StepNumber
	Pose     []string // how the controls stand, each a phrase: "rate switch high", "roll stick full right"
	Before   []string // of a movement: how they stood before it, as Pose; else empty
	Moved    []string // of a movement: what was moved, as it then stands: "roll stick full right", "flap lever parked"
	Rests    bool     // every control not in Pose rests
	Subject  string   // the part or channel the sentence is about
	Wanted   string   // "trailing edge UP 18° ± 2°"
	Got      string   // "trailing edge DOWN 12.4° (10.4 mm)"
	Miss     string   // of a failed check, in one plain phrase: "WRONG WAY: wanted UP, it goes DOWN"; may be empty
	Passed   bool
	Why      []Reason // of a failed check: the part or channel, or each of two parts that were compared
	Proof    *Proof   // of a sentence about all positions: how it was decided; else nil
}

// Reason is why one part or channel did what it did.
type Reason struct {
	Of     string  // the part or channel
	Chain  []Step  // from the control to it
	LookAt []Place // lines of the airframe file to look at, likeliest cause first
}

// Step is one intermediate value of the cause chain.
type Step struct {
	Stage string // "control", "demand", "mix", "channel", "servo", "linkage", "table", "part"
	Name  string // "roll stick", "channel 3 (starboard flap)"
	Text  string // "55 % × 90 % = 49.5 %"
	Value string // the value after this step, with its unit: "49.5 %", "1747.5 µs", "22.3° aft"
	Exact *Exact // the same for programs; nil where the value is no number
	Limit string // the limit that bit here, in words, else empty
	Place Place
}

// Exact is a value as a number, not rounded.
type Exact struct {
	Number float64 // of an angle never negative: the direction is a word
	Unit   string  // "%", "µs" or "°"
	Way    string  // of an angle that is not 0: "UP", "DOWN", "LEFT", "RIGHT", "aft" or "fore"; else empty
}

// Place is a place in a file.
type Place struct {
	File    string
	Line    int    // from 1; 0 is the file as a whole
	Column  int    // from 1, in characters; 0 is the line as a whole
	Excerpt string // the line of the file, without its end; filled by verify.Check where the file is at hand
	Note    string // of a line to look at: what there is at it, "reversed: of channel 4"; else empty
}

// Finding is something about the set-up that no sentence asked.
type Finding struct {
	Code    string
	Message string
	Hint    string
	Place   Place // with its excerpt
}

// Uncovered is what no check touched.
type Uncovered struct {
	Parts     []string
	Controls  []string // controls that no check moved
	Positions []string // "flap lever takeoff", "rate switch low"
}

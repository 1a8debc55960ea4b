package result

import "fmt"

// Bench is what was seen of a model in the hand, step by step, against what its set-up
// does.
type Bench struct {
	Tool     string
	Model    Model
	Record   string // the file that holds every answer
	Date     string // of the last answer
	Look     string
	Ruler    bool
	SetUp    string // digests of what the model was held against
	Asked    string // empty without a script
	Script   string // "14 checks pass", "2 of 14 checks fail"; empty without a script
	Fails    bool   // the script does not pass on the set-up as written
	Stands   string // what an earlier walk found that was not as expected, and was not looked at again since; empty for nothing
	Walk     string // how the steps were chosen
	Steps    []BenchStep
	Unmoved  []string // controls that stood at rest in every step that was looked at
	Causes   *Causes  // what explains what differs; nil where nothing does
	Sizes    int      // steps in which something moved the right way, too little or too much, and was not measured
	Ratios   []BenchRatio
	Throws   []BenchThrow
	Fits     []BenchFit
	Findings []Finding
	Cautions []string
	Verdict  BenchVerdict
}

// BenchVerdict is the answer.
type BenchVerdict string

// The verdicts.
const (
	SeenAsExpected BenchVerdict = "as expected"  // every step was looked at, and all was as the set-up does
	SeenDiffers    BenchVerdict = "differs"      // something was not
	NotFinished    BenchVerdict = "not finished" // what was seen was as expected, but not all was seen
	NothingSeen    BenchVerdict = "nothing seen"
)

// BenchState is what became of one step.
type BenchState string

// The states.
const (
	StepAsExpected BenchState = "as expected"
	StepByEye      BenchState = "by eye, not measured" // as expected, but how far something went was to be measured and was not
	StepDiffers    BenchState = "differs"
	StepUnsure     BenchState = "not seen" // of a part it could not be said what it did
	StepSkipped    BenchState = "skipped"
	StepOpen       BenchState = "not reached"
)

// BenchStep is one step at the bench: what to do, what must be seen and what was.
type BenchStep struct {
	Number, Of int
	Further    bool     // it came behind those that were chosen, to tell apart what would explain their answers
	Stand      []string // how the controls stand before the movement, those that rest left out
	Move       []string // what is moved, as it then stands; empty: look at the model as it stands
	SignalLost bool     // the movement is that the transmitter is switched off
	SignalBack bool     // it was off in the step before, and is not in this one
	Beware     []string // what to know before it is done
	Parts      []BenchPart
	State      BenchState
	Reason     string // why it was skipped
	Measured   int    // parts of it that were measured
}

// Stands says whether nothing is moved.
func (s *BenchStep) Stands() bool { return len(s.Move) == 0 }

// Part is one part of a step by its name; nil for none.
func (s *BenchStep) Part(name string) *BenchPart {
	for i := range s.Parts {
		if s.Parts[i].Name == name {
			return &s.Parts[i]
		}
	}
	return nil
}

// BenchPart is one part in a step.
type BenchPart struct {
	Number  int // the same in every step, from 1
	Name    string
	Stage   Stage
	Motion  Motion
	Way     string // what it must do, in a word, as WalkPart.Way
	Amount  string // by how much: "15.4° (10 mm)"; empty where it stays
	To      string // where it then is, from neutral: "16.4° UP (11 mm)"; empty where that is how far it moves, or it stays
	Exact   string // where from and where to
	Moves   bool   // it must move, run, or stand off neutral: whoever looks must see something
	Sure    bool   // false: it moves so little that nobody could be sure, so it is not asked
	Takes   string // "about 1.5 s", where it is watched how long it takes; else empty
	Spot    Spot
	Said    string // what was said of it, in words; empty for nothing
	Differs bool   // what was said, or measured, is not what must be
	How     string // in what way, the same words wherever it does the same: "the other way", "short"; else empty
	Reading []BenchReading
}

// BenchReading is one place that was measured.
type BenchReading struct {
	Before bool // before the movement
	Says   string
	Off    string // "2.1° short", "2.1° too far"; empty where the ruler tells no difference
}

// Spot is where a part is on a picture from behind.
type Spot struct {
	Row      string  // "wing", "brakes", "tail", "canard", "fin", "wheel"; empty for what has no place on it
	From, To float64 // from −1, the port tip, to 1, the starboard tip; From ≤ To
}

// BenchRatio is a surface that goes to the same part of what is computed wherever it was
// measured: no mistake of the catalogue, which knows none of such a size.
type BenchRatio struct {
	Part   string
	Ratio  float64  // above 0; 0.8 goes to 0.8 of what is computed
	Places int      // at which it was measured so, those left out that a ruler cannot tell apart
	Ways   []string // to which sides they are
	OneWay bool     // to the other side it goes as far as computed
}

// BenchThrow is the furthest that one part was measured to go one way.
type BenchThrow struct {
	Part     string
	Way      string
	At       []string // how the controls stood
	Measured ThrowSize
	Computed ThrowSize
	Other    string // the way in which it is computed to stand there, where that is the other way; else empty
	Off      string // "1.9° less than computed", "27.5° off" where it is computed to be on the other side; empty where the ruler tells no difference
	Partner  string // how it differs from its partner's, beyond what is computed: "1.8° less than the port aileron, computed alike"; empty for alike or no partner
}

// ThrowSize is how far something goes.
type ThrowSize struct {
	Degrees     float64 // 0 or more
	Millimetres float64 // 0 where the chord is not known
}

// BenchFit is a correction of the airframe file that measurements offer for one part.
type BenchFit struct {
	Part    string
	Servo   int // of several that move the part, the one that alone held it, from 1; else 0
	Place   Place
	Kind    string      // "linkage" or "measured"
	Changes []FitChange // empty: what is written fits as it is
	Points  []FitPoint  // by output, ascending
	Before  float64     // root mean square of what is left over, in degrees, as written
	After   float64     // and as corrected
	Note    string      // what the measurements do not tell, or why nothing is offered
	Offered bool

	Table      string  // a measured table that may be written in place of a linkage, in words; empty for none
	TableAfter float64 // root mean square of what is left over with it, in degrees
}

// Name is the part, and of several servos the one that is meant.
func (f *BenchFit) Name() string {
	if f.Servo == 0 {
		return f.Part
	}
	return fmt.Sprintf("%s, servo %d alone", f.Part, f.Servo)
}

// FitChange is one value of the airframe file.
type FitChange struct{ Key, Was, Is, Within string }

// FitPoint is one measurement: degrees with words for which way.
type FitPoint struct {
	Output   float64 // percent of the channel
	Measured string  // "12.3° UP"
	Before   float64 // by how much it is off as written, in degrees, never negative
	After    float64
}

// Done says whether every step was gone through.
func (r *Bench) Done() bool {
	for i := range r.Steps {
		if s := r.Steps[i].State; s == StepOpen || s == StepSkipped {
			return false
		}
	}
	return len(r.Steps) > 0
}

// SignalWasLost says whether the transmitter was switched off in every step that has it so,
// and there is one.
func (r *Bench) SignalWasLost() bool {
	any := false
	for i := range r.Steps {
		if s := &r.Steps[i]; s.SignalLost {
			if s.State != StepAsExpected && s.State != StepByEye && s.State != StepDiffers {
				return false
			}
			any = true
		}
	}
	return any
}

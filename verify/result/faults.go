package result

// Faults is one run of "faults": which single mistakes a script would catch.
type Faults struct {
	Tool     string
	Model    Model
	Scripts  []string
	Checks   int     // that were run for every mistake
	Faults   []Fault // missed first, worst consequence first; then undecided, invisible, not built, caught
	Spare    []Spare // scenarios that catch nothing that another does not
	Findings []Finding
	Cautions []string
	Pairs    bool   // two mistakes at once were tried as well
	Left     int    // kinds of mistake left out by --only
	Stopped  string // why the run ended early, "stopped by hand"; else empty
	Min      int    // percent that must be caught; 0 if it was not said
	Verdict  FaultsVerdict
}

// FaultsVerdict is the answer to all mistakes together.
type FaultsVerdict string

// The verdicts.
const (
	NoneMissed   FaultsVerdict = "none missed"   // every mistake is caught or proved invisible
	SomeMissed   FaultsVerdict = "some missed"   // a mistake would slip through, or is undecided
	AlreadyWrong FaultsVerdict = "already wrong" // the script fails on the set-up as it stands: nothing can be said
	NoMistakes   FaultsVerdict = "no mistakes"   // nothing was tried
)

// FaultState is what becomes of one mistake.
type FaultState string

// The states.
const (
	Missed    FaultState = "missed"    // the script passes, and the model does something else: Witness shows where
	Open      FaultState = "undecided" // the script passes; whether the model does anything else was not decided
	Invisible FaultState = "invisible" // proved: nothing at all, or nothing that counts as moving, changes anywhere
	NotBuilt  FaultState = "not built" // the set-up cannot be worked out with it: a linkage would lock, say
	Caught    FaultState = "caught"    // a check fails
)

// Fault is one mistake and what becomes of it.
type Fault struct {
	Kind, Title string // the kind's code and title
	Text        string // "channel 4 (port flap) is reversed"
	Place       Place  // where the airframe file speaks about it
	State       FaultState
	By          []CaughtBy // of a caught one: the checks that fail, the first few
	Rank        int        // of a missed one: how bad it is, 1 the worst
	Consequence string     // of a missed one: "the model rolls LEFT instead of RIGHT"
	Witness     *Counter   // of a missed one: where it shows; Got is what is seen, Wanted what should be
	Wanted      string
	Sentence    string // of a missed one: what to add to the script so that it is caught; tried on both set-ups
	Reason      string // of invisible, undecided and not built ones: why
}

// CaughtBy is a check that fails.
type CaughtBy struct {
	Scenario, Sentence, Subject string
	Place                       Place
}

// Spare is a scenario without which every mistake would still be caught.
type Spare struct {
	Scenario string
	Place    Place
}

// Score counts mistakes by what became of them.
type Score struct{ Caught, Missed, Open, Invisible, NotBuilt int }

// Score is how good the script is.
func (r *Faults) Score() (s Score) {
	for i := range r.Faults {
		switch r.Faults[i].State {
		case Caught:
			s.Caught++
		case Missed:
			s.Missed++
		case Open:
			s.Open++
		case Invisible:
			s.Invisible++
		case NotBuilt:
			s.NotBuilt++
		}
	}
	return s
}

// Visible is how many mistakes are not proved invisible and can be built.
func (s Score) Visible() int { return s.Caught + s.Missed + s.Open }

// Percent is caught of visible ones, rounded down, so that 100 means all; 100 where
// there is none. (Mutation score: killed of non-equivalent mutants, Jia and Harman,
// IEEE Transactions on Software Engineering 37(5), 2011.)
func (s Score) Percent() int {
	if s.Visible() == 0 {
		return 100
	}
	return s.Caught * 100 / s.Visible()
}

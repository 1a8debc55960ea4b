package result

// Proofs is one run of "prove": what holds at every position of the switches and
// every place of every stick, lever and trim.
type Proofs struct {
	Tool     string
	Model    Model
	Laws     []Law     // in the order of the walk-around of ideas: sense first
	Findings []Finding // warnings about the airframe file
	Cautions []string
	Left     int    // laws left out by --only
	Stopped  string // why the run ended early, "stopped by hand"; else empty
	Verdict  ProofVerdict
}

// Law is one thing that is expected of every model, and its claims.
type Law struct {
	Code   string // "control-sense": for --only and "explain"
	Title  string // "Control sense"
	Means  string // what it asks, in one sentence
	Claims []Proof
	None   string // where the model gives nothing to prove: why, "no motor"
}

// ProofVerdict is the answer to all laws together.
type ProofVerdict string

// The verdicts.
const (
	AllProved     ProofVerdict = "proved"
	SomeDisproved ProofVerdict = "disproved"      // at least one law does not hold
	SomeUndecided ProofVerdict = "undecided"      // none was disproved, but not all could be decided
	NothingProved ProofVerdict = "nothing proved" // there was nothing to prove
)

// ProofAnswer is the answer to one claim.
type ProofAnswer string

// The answers.
const (
	Proved    ProofAnswer = "proved"
	Disproved ProofAnswer = "disproved"
	Undecided ProofAnswer = "undecided"
	Empty     ProofAnswer = "empty" // there is no position at which it would have to hold
)

// Proof is one claim and what became of it.
type Proof struct {
	Claim   string // "the starboard aileron never drops as the roll stick moves right"
	Answer  ProofAnswer
	Over    string   // what it covers: "12 switch states, every place of 5 sticks, levers and trims"
	States  int      // combinations of switch positions
	Forms   int      // different forms that were decided
	Boxes   int      // boxes that were searched
	Limit   int      // of an undecided claim: the limit of boxes; 0 if it was stopped by hand
	Margin  *Margin  // of a proved claim that has one: the smallest, and where
	Assumes []string // what the proof needs that it could not show: "once everything has come to rest"
	Counter *Counter // of a disproved claim: where it fails
	LookAt  []Place  // of a disproved claim: lines of the airframe file
}

// Margin is how much there is to spare where it is least.
type Margin struct {
	Text    string   // "2.1° short of its stop"
	Value   float64  // in Unit, as found
	AtLeast float64  // proved: nowhere less
	Unit    string   // "°", "%", or empty for a number without a unit
	Pose    []string // where: "rate switch high", "roll stick full right"; empty: everything at rest
}

// Counter is a counterexample: a pose that a person can set, which the Plan has
// confirmed.
type Counter struct {
	Pose   []string // how the controls stand
	Before []string // where a movement is judged: how they stood before; else nil
	Moved  []string // of a movement: what moved
	Got    string   // "starboard flap at its stop from 72 % on; 28 % of the stick does nothing"
	Set    []string // the same for "hingeline show": "rate switch=high"
	Why    []Reason // the cause chain; filled where it was asked for
}

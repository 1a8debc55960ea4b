package result

// Causes is what explains what was seen on the model.
type Causes struct {
	Tool     string
	Model    Model
	Seen     int       // sentences that were taken
	Wrong    []SeenOdd // of them: what the set-up without a mistake would not do
	Suspects []Suspect // likeliest first
	Near     []Near    // that explain all but a few answers: where nothing explains all, or what does is made less often
	Tried    int       // mistakes that were tried
	Possible int       // of them: that would look so too, where the set-up without a mistake does
	Next     *NextStep // what tells the suspects apart best; nil where nothing does
	Script   Asked
	Repairs  []Repair   // of the likeliest suspects, each checked against the whole script and the laws
	Edits    []FileEdit // of the same suspects, for where the model is as it is wanted
	Findings []Finding
	Cautions []string
	Verdict  CauseVerdict
}

// CauseVerdict is what came of the observations.
type CauseVerdict string

// The verdicts.
const (
	AsItShould   CauseVerdict = "as it should"   // everything seen is what the set-up does: there is nothing to explain
	NotToldApart CauseVerdict = "not told apart" // the questions ended before a mistake was found or ruled out
	OneCause     CauseVerdict = "one cause"      // one mistake explains it, or several that nothing tells apart
	SeveralCause CauseVerdict = "several causes"
	NoCause      CauseVerdict = "no cause" // no single mistake of the catalogue explains it
)

// Asked is how the script stands on the set-up as written; both are 0 without one.
type Asked struct{ Checks, Failing int }

// FileEdit is an edit with which an airframe file would say what a model does, for where
// the file is the one that is wrong.
type FileEdit struct {
	Edit    string // "reverse channel 4 (port flap)"
	Place   Place
	Failing int // of Asked.Checks: those that fail with it
}

// SeenOdd is something seen that the set-up as it stands would not do.
type SeenOdd struct {
	Sentence string
	Place    Place
	Got      string // what the set-up does
}

// Suspect is a mistake that explains everything that was seen.
type Suspect struct {
	Kind, Text string
	Place      Place
	Odds       string   // "often", "now and then", "seldom"
	Alike      []string // others that would look the same at every step
}

// Near is a mistake that explains all but a few of the answers. It is never certain.
type Near struct {
	Suspect
	Undo         string // what would make the model as the file says
	OnModel      bool
	Explains, Of int       // answers
	Against      []Against // the others
	Lost         bool      // all of them were seen when the signal was lost: the failsafe may have been stored with the mistake made
}

// Against is an answer that speaks against a mistake.
type Against struct {
	Step  int      // its number; 0 of a sentence
	What  []string // the parts that it is about, or the sentence
	Place Place    // of a sentence
}

// NextStep is the step that tells suspects apart best.
type NextStep struct {
	Step    WalkStep
	Answers []NextAnswer // what can be seen there, and which suspects it leaves
	Left    int          // steps that name the mistake at most, this one included
}

// NextAnswer is one thing that can be seen.
type NextAnswer struct {
	See      []string // "port aileron UP", only where answers differ
	Suspects []string
}

// Repair is one change that makes everything right.
type Repair struct {
	Change  string // "reverse channel 4 (port flap)"
	OnModel bool   // it is made on the model, not in the transmitter
	AsFile  bool   // of a suspect: it takes the mistake back, so that the model is again as the airframe file says
	Place   Place  // of the airframe file
	Checks  int    // of the script that pass with it: all
	Claims  int    // of the built-in laws that hold with it; all that held or that can be decided
}

// Repairs are all single changes that make a failed check pass.
type Repairs struct {
	List  []Repair
	Tried int       // changes that were tried
	Open  int       // changes that were not: it would have taken too long
	Apart *NextStep // where there are several: the step that tells which is right
}

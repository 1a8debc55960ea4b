package result

// Walk is the shortest walk-around: the fewest steps at which somebody who watches
// which way everything goes notices every mistake that can be noticed at all.
type Walk struct {
	Tool     string
	Model    Model
	Look     string // "which way each part goes; less than 2° is not seen"
	Ruler    bool
	Steps    []WalkStep // in the order in which to walk
	Mistakes int        // that can be noticed; each is, at one of the steps at least
	Unseen   []Unseen   // that cannot be noticed with this look, at any step that was tried
	Tried    int        // steps that were tried
	AtLeast  int        // proved: fewer steps of those tried would miss a mistake; equal to len(Steps) where the search ended
	Moves    int        // controls to move by hand, all steps together
	MovesMin int        // proved: these steps cannot be walked with fewer movements of controls
	Further  int        // steps, each the best to do next, that name a mistake and those that look like it, at most
	Groups   int        // kinds of sight, all as it should be among them: mistakes that no step tells apart count as one
	Findings []Finding
	Cautions []string
	Stopped  string
}

// WalkStep is one step of the walk-around.
type WalkStep struct {
	Ready  []string // controls to bring to where they are before the step, of those that stand elsewhere: "flap lever landing"
	Stand  []string // how the controls stand before the movement, those that rest left out
	Move   []string // what is moved, as it then stands: "roll stick full right"; empty: look at the model as it stands
	Beware []string // what to know before it is done: "a motor runs here: propeller off, or the model restrained"
	Parts  []WalkPart
	Shows  int      // mistakes that show here
	First  int      // of them: that no step before shows
	Kinds  []string // what they are, in a few words each, commonest first: "channel 4 (port flap) is reversed"
	Stages []Stage
}

// ALittle is the way of a part of which an eye could not tell which way it goes.
const ALittle = "A LITTLE"

// WalkPart is what one part does in a step.
type WalkPart struct {
	Name  string
	Stage Stage
	Way   string // "UP", "DOWN", "LEFT", "RIGHT", "STAYS", "RUNS", "STOPS", "STOPPED", "FASTER", "SLOWER", "IN", "OUT"; "AT NEUTRAL" of a step in which nothing moves; ALittle where an eye could not tell
	Exact string // "18.4° UP to 12° UP (10.4 mm)": for the ruler
}

// Unseen is a mistake that the walk-around cannot show.
type Unseen struct {
	Kind, Text string
	Place      Place
	Why        string // "moves nothing by 2° or more: use --ruler"
}

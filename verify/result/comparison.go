package result

// Comparison is what differs between two set-ups and their scripts, and what that
// changes at the surfaces.
type Comparison struct {
	Tool                   string
	Old, New               Model
	OldScripts, NewScripts []string
	SetUp                  []Change      // differences of the resolved set-ups
	Asked                  []Change      // differences of the resolved scripts
	Apart                  []string      // controls that were not moved in both alike, and how they stand, each a sentence
	Parts                  []PartChange  // in walking order: those that are not the same everywhere
	Same                   []string      // parts that are: proved, at every position that both set-ups have
	Checks                 []CheckChange // whose verdict is another, those that got worse first; then those that only one script has
	Both                   int           // checks that were run on both set-ups
	Failing                int           // of them: fail on both
	Notes                  []string      // why something was not run or compared, each a sentence
	Findings               []Finding
	Cautions               []string
	Stopped                string // why the comparison ended early, "stopped by hand"; else empty
	Verdict                ComparisonVerdict
}

// ComparisonVerdict is the answer.
type ComparisonVerdict string

// The verdicts.
const (
	NoDifference ComparisonVerdict = "no difference" // the resolved set-ups and scripts are the same
	NoneWorse    ComparisonVerdict = "none worse"    // no check that passed with the older set-up fails with the newer
	SomeWorse    ComparisonVerdict = "some worse"    // at least one does: DO NOT FLY
	NoneCompared ComparisonVerdict = "none compared" // they differ, and no check was run on both
)

// PartChange is by how much one part is elsewhere, at the same position of the controls.
type PartChange struct {
	Name  string
	Stage Stage
	With  *Apart // with the signal; nil where it is proved that nothing changes
	Lost  *Apart // with the signal lost; nil where it is proved that nothing changes, or the same as with the signal
	Note  string // why nothing can be said: "only the newer set-up has it"; else empty
}

// Apart is the largest change of one part, and where it is.
type Apart struct {
	By     float64  // in Unit; 0 where none was found, and not proved that there is none
	Unit   string   // "°" or "%"
	AtMost float64  // proved: nowhere more; +Inf where that was not found out
	Exact  bool     // AtMost is By, to half of the last place that is shown
	Way    string   // from the older to the newer: "UP", "DOWN", "LEFT", "RIGHT", "OUT", "IN", "MORE", "LESS"
	Text   string   // "8.2° further UP"
	Was    string   // where the part stands there with the older set-up: "trailing edge UP 12° (10 mm)"
	Is     string   // and with the newer
	Pose   []string // how the controls stand; empty: everything at rest
	Set    []string // the same for "hingeline show"
}

// CheckChange is a check that does not come out as before.
type CheckChange struct {
	Stage    Stage
	Scenario string
	Sentence string
	Subject  string
	Place    Place // of the sentence
	Pose     []string
	Wanted   string
	Was, Is  string // "passed", "failed", or empty where it was not asked or could not be
	GotWas   string
	GotIs    string
	Script   string // "both", "newer" or "older": which scripts ask it
}

// Worse says whether a check passed with the older set-up and fails with the newer.
func (c *CheckChange) Worse() bool { return c.Was == "passed" && c.Is == "failed" }

// Better says whether a check failed with the older set-up and passes with the newer.
func (c *CheckChange) Better() bool { return c.Was == "failed" && c.Is == "passed" }

// Counts says how many checks got worse, and how many better.
func (c *Comparison) Counts() (worse, better int) {
	for i := range c.Checks {
		switch {
		case c.Checks[i].Worse():
			worse++
		case c.Checks[i].Better():
			better++
		}
	}
	return worse, better
}

package prove

import "example.com/hingeline/mixcore"

// Answer is what was decided.
type Answer uint8

// The answers.
const (
	Undecided Answer = iota // the search reached its limit, or was stopped
	Proved                  // it holds at every position
	Disproved               // it fails at Pose
	Empty                   // there is no position at which it would have to hold
)

// Options say how to decide.
type Options struct {
	Boxes    int             // most boxes to look at; 0 is UsualBoxes
	Margins  bool            // find the smallest margin too, not only whether there is one
	Plain    bool            // leave a counterexample as it was found
	Progress func(boxes int) // called now and then; may be nil
}

// TooClose is how near to failing a claim must be, in degrees or percent, to be left
// undecided instead of searched further: nearer than the Plan's own arithmetic is exact.
const TooClose = 1e-9

// UsualBoxes is the limit of a search that is not given one.
const UsualBoxes = 200_000

// Decision is the answer to a claim, and what it rests on.
type Decision struct {
	Answer Answer
	States int // combinations of switch positions that the answer covers
	Forms  int // different forms that were looked at
	Boxes  int // what it cost, in boxes that were looked at

	// Pose is where the smallest margin was found; of Disproved, where the claim
	// fails: with the fewest controls moved that the search could find. Margin is the
	// margin there, by the Plan. Of Proved, without Options.Margins, Pose is empty.
	Pose   Pose
	Margin float64
	// AtLeast is proved: no margin anywhere is smaller. Of Proved only.
	AtLeast float64
	// Timed is true where phases that fade or slowed channels bear on the claim: it is
	// decided once everything has come to rest. (A servo takes its time too, but on its
	// way it is nowhere but between two places that were looked at.)
	Timed bool
	// Close is true of an undecided claim that stands exactly at its bound: to within
	// TooClose it holds, and nothing was found at which it fails.
	Close bool
}

// Pose is where the controls stand.
type Pose struct {
	Now   mixcore.Input
	Other mixcore.Input // empty where only one pose counts
}

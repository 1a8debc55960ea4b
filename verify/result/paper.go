package result

// Paper is what a report in the hand has beside the checks: what to draw, and the tables
// that are filled in and looked at on the bench. Nothing in it was asked by the script.
type Paper struct {
	MassKg   float64 // 0 if the airframe file does not say
	Shape    Shape
	Pictures []Picture // one for each of Report.Checks
	Linkages []Linkage
	Throws   []Throw
	Travel   []Travel
	Signal   []Signal
	Motors   []Motor
}

// Print is the fingerprint of one file as it was read.
type Print struct {
	File   string
	SHA256 string // in hexadecimal, 64 digits
}

// Shape is the model as it can be drawn. Places are millimetres from the balance point.
type Shape struct {
	Semispan float64    // half the wing's span; more than 0
	Chords   [2]float64 // of the wing at the centre line and at the tip; more than 0
	Measured bool       // false: the airframe file has no wing, and this one is a usual one for the parts
	Parts    []Outline  // in the airframe file's order
}

// Point is a place on the model, in millimetres from the balance point.
type Point struct {
	Out float64 // plus is to starboard
	Aft float64
	Up  float64
}

// Motion is how a part moves.
type Motion string

// The motions.
const (
	UpDown    Motion = "up and down"
	LeftRight Motion = "left and right"
	Power     Motion = "power"
	OutIn     Motion = "out and in"
)

// Outline is one part as it can be drawn.
type Outline struct {
	Name, Kind string
	Number     int    // on the way round the model, from 1; 0 where nobody gave it one
	Side       string // "port", "starboard" or "centre"
	Stage      Stage
	Motion     Motion
	Inner      Point   // of a surface: the ends of its hinge line; of others Inner is where they are
	Outer      Point   // of a surface at the centre Inner is its port end
	Chord      float64 // hinge line to trailing edge; more than 0 for surfaces
	ChordSaid  bool    // false: a usual one, no good for millimetres at the trailing edge
	PlaceSaid  bool    // false: where such a part usually is
	Tilt       float64 // degrees of its span from level, tip up, −90 to 90
	Most       float64 // the largest angle that it reaches either way, in degrees; 0 for those that do not turn
}

// Picture is where every part stands in one check.
type Picture struct {
	Stands []Stand // as Shape.Parts
	Of     []int   // the parts that the check is about, by their index
	Want   *Want   // where Of[0] should be; nil where the sentence says no place or way
	Moves  bool    // the sentence is about a movement, from Stand.From to Stand.At
}

// Stand is where one part stands.
type Stand struct {
	From, At float64 // degrees, plus is DOWN or LEFT; of others percent. From is before the movement, or At where there was none
	Moved    bool    // by more than counts as still
	Says     string  // where it stands: "trailing edge UP 14.2° (11 mm)"
	Way      string  // of the movement, or, where there was none, of the place: "UP", "DOWN", "LEFT", "RIGHT", "OUT", "IN", "MORE", "LESS"; empty for none
}

// Want is the stretch in which a part should be, in the same unit and sense as Stand.At.
// Of a movement it begins at Stand.From. An end that is not said is where the part stops
// in a drawing (Open).
type Want struct {
	Low, High         float64 // Low ≤ High
	LowOpen, HighOpen bool    // no end was asked for: it may go as far as it likes
	Says              string  // "trailing edge UP 18° ± 2°"
}

// Linkage is one servo, pushrod and horn, to be drawn to scale.
type Linkage struct {
	Part    string
	Channel string      // "channel 3 (port flap)"
	Seen    string      // from where: "from the side, nose left", or "from above, nose left"
	Goes    string      // "as far as the channel goes: 1031 to 1589 µs": between which ends it is drawn
	Stands  []LinkageAt // neutral first, then the two ends that its channel comes to, held at the part's stop
	Horn    string      // "horn below"
	Lengths []string    // "arm 11 mm", "horn 15 mm", "pushrod 57.8 mm"
}

// LinkageAt is where its points are: millimetres from the servo's shaft, X aft, Y up
// (seen from above: to port).
type LinkageAt struct {
	Says                                  string // "channel at 2000 µs (100 %): arm 45° aft, trailing edge UP 20.3° (17 mm)"
	Shaft, Arm, Horn, Hinge, TrailingEdge [2]float64
}

// Throw is how far one control moves one part either way, from where the part stands with
// the sticks centred, and with everything that When does not name at rest.
type Throw struct {
	Part    string
	Control string     // "roll stick"
	When    []string   // how switches and levers stand: "rate switch high"; each an alternative set joined by "and"
	Ends    []ThrowEnd // two: UP then DOWN, LEFT then RIGHT; one where it moves only one way
	Partner string     // how it differs from its partner on the other side: "1.2° more UP than the starboard aileron"; empty for the same, or no partner
	Differs float64    // of what Partner says, the most, in degrees; 0 or more
}

// ThrowEnd is one end of a throw.
type ThrowEnd struct {
	Way         string  // "UP", "DOWN", "LEFT" or "RIGHT"
	At          string  // "roll stick full left"
	Degrees     float64 // 0 or more
	Millimetres float64 // at the trailing edge, straight across; 0 where the chord is not known
	Tolerance   Tolerance
}

// Tolerance is by how much a throw may be off when it is measured: at most half of the
// throw, so that it never reaches down to a part that stands still.
type Tolerance struct {
	Degrees     float64
	Millimetres float64 // 0 where the chord is not known
}

// Travel is how much of its travel one channel uses, over every position of every control.
type Travel struct {
	Channel   string   // "channel 3 (port flap)"
	Low, High float64  // microseconds that it can come to
	Min, Max  float64  // microseconds: the pulse limits
	Spare     float64  // percent of travel left before the first limit bites, at the worst position; 0 where one bites
	Worst     []string // the position of the controls at which that is
	Bites     string   // which limit bites there, in words; empty where none does
	Sure      bool     // false: the search ended before every position was decided
}

// Signal is what one channel does when the signal is lost.
type Signal struct {
	Channel string
	Does    string   // "holds what it put out", "goes to 1000 µs (−100 %)"
	Parts   []string // what that does to its parts: "motor: stopped, at once, from wherever it was", "port flap: stays where it was, wherever that is"
	Motor   bool     // it drives a motor
	Runs    bool     // of a motor: it may go on running
}

// Motor is what the set-up says about stopping one motor.
type Motor struct {
	Name        string
	Channel     string
	StoppedWhen string   // the promise: "motor switch is safe"; empty if none was given
	Breaks      []string // a position at which it runs all the same; empty where it is kept, or none was given
	NotSure     bool     // the search ended before that was decided
	Rest        string   // with every control at rest: "stopped", "power 40 %"
	Full        []string // the position that gives full power
}

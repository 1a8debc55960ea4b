package mixcore

import "example.com/hingeline/mixcore/linkage"

// Setup is one model as its builder described it, with every name resolved to
// an index and every default filled in. It is plain data: package airframes
// makes it from a file, tests and fault finders edit copies of it, and Compile
// turns it into a Plan.
type Setup struct {
	Name     string
	Controls []Control
	Phases   []Phase
	Demands  []Demand
	Channels []Channel // at most MaxChannels, ascending by Number
	Parts    []Part
	Wing     *Wing // nil if the builder has not measured it
}

// Wing is a straight-tapered wing, measured flat.
type Wing struct {
	Span                Millimetres // tip to tip; more than 0
	RootChord, TipChord Millimetres // more than 0
}

// MaxChannels is the most channels that a set-up may have.
const MaxChannels = 32

// ControlKind says how a control moves and rests.
type ControlKind uint8

// The kinds of control.
const (
	AxisControl   ControlKind = iota + 1 // a stick axis, −100…+100 %, rests at 0
	TrimControl                          // the trim of an axis, −100…+100 % of its own travel, rests at 0
	LeverControl                         // 0…100 %, stays where it is left
	SwitchControl                        // named positions, by index
)

// Axis is what a stick axis or trim is for.
type Axis uint8

// The axes. Plus is right, back (nose up) and right.
const (
	NoAxis Axis = iota
	Roll
	Pitch
	Yaw
)

// Control is one thing that the pilot's hand moves.
type Control struct {
	Name      string
	Kind      ControlKind
	Axis      Axis     // of an axis control or its trim, else NoAxis
	Detents   []Detent // of a lever, ascending by At; may be empty
	Positions []string // of a switch, two to six names
}

// Phase is a condition with a name, such as launch, thermal or landing. Its
// condition may name only phases before it in Setup.Phases.
type Phase struct {
	Name string
	When Condition
	Fade Seconds // time to come fully in or go fully out; 0 is at once
}

// Demand is what the pilot asks for: one control, shaped.
type Demand struct {
	Name      string
	From      int       // index of the control it comes from
	Values    []Percent // from a switch: one for each position; else nil
	Rates     []Rate    // one or more; the first whose When holds counts, the last has none
	Curve     *Curve    // nil is straight through
	Trim      int       // index of the trim control, or NoTrim
	TrimRange Percent   // what full trim adds; negative for a reversed trim
}

// NoTrim is Demand.Trim of a demand that has no trim.
const NoTrim = -1

// Rate is a throw with its expo.
type Rate struct {
	When  *Condition // nil holds always
	Throw Sides      // 0…100 %
	Expo  Percent    // −100…+100; plus softens the centre
}

// Curve goes through Points in order of X, by straight lines or, if Smooth, by
// the monotone cubic of NewCurve.
type Curve struct {
	Points []Point // 2…33, X strictly ascending from the control's one end to its other
	Smooth bool
}

// Point is one point of a curve or of a measured table.
type Point struct{ X, Y float64 }

// MixOp says what a line of a mix does to the channel's sum.
type MixOp uint8

// The kinds of mix line.
const (
	Add         MixOp = iota + 1 // add Share of Demand
	Fixed                        // add Value
	ScaleBy                      // multiply by Demand, which stays within 0…100 %
	ReplaceWith                  // forget the sum so far and take Value
)

// MixLine is one line of a channel's mix.
type MixLine struct {
	Op     MixOp
	Demand int     // of Add and ScaleBy: index of the demand
	Share  Sides   // of Add: −200…+200 %; which side counts follows the demand's sign
	Value  Percent // of Fixed and ReplaceWith: −200…+200 %
	When   *Condition
}

// Channel is one servo output of the receiver.
type Channel struct {
	Number    int // 1…MaxChannels
	Name      string
	Mix       []MixLine
	Limit     Percent // the sum is limited to ± this; 1…150, usually 100
	Reversed  bool
	EndPoints Sides        // 0…150 %, usually 100
	SubTrim   Percent      // −100…+100 %
	PulseMin  Microseconds // 500…2500, usually 1000
	PulseMax  Microseconds // 500…2500, usually 2000
	Slow      Seconds      // time to move through 100 % of travel; 0 is at once
	Failsafe  Failsafe
}

// Failsafe is what a channel puts out when the signal is lost.
type Failsafe struct {
	Hold   bool    // keep the output it had
	Output Percent // otherwise this leaves the channel
}

// Motion says in which words a part moves.
type Motion uint8

// The motions.
const (
	UpDown    Motion = iota + 1 // hinged, trailing edge up and down; plus is down
	LeftRight                   // hinged upright, or a wheel; plus is left
	Power                       // a motor, 0…100 %
	OutIn                       // a retract, hook or door, 0 % in and 100 % out
)

// Hinged says whether what moves so turns about a hinge: its place is an angle, and that of
// all others an amount in percent.
func (m Motion) Hinged() bool { return m == UpDown || m == LeftRight }

// Side is the side of the model that a part is on.
type Side uint8

// The sides. The zero value is the centre.
const (
	Centre Side = iota
	Port
	Starboard
)

// Kind is the trade's name for a part, such as "aileron"; the list is Kinds.
type Kind string

// Part is one thing on the model that moves: a surface, a wheel, a motor, a
// retract.
type Part struct {
	Name   string
	Kind   Kind
	Side   Side
	Motion Motion
	Drives []Drive // one or more; several servos may move one part
	Stops  Stops   // of UpDown and LeftRight
	Chord  Millimetres
	Span   [2]Millimetres // from and to, out from the centre line; 0, 0 if not said
	Motor  *Motor         // of Power
	PlusIn bool           // of OutIn: plus moves it in, not out
	Place  Placement
}

// Placement is where a part acts on the air, as far as the builder has said; the
// rest follows from its kind and side.
type Placement struct {
	Out      Millimetres // of a motor: out from the centre line
	Aft      Millimetres // behind the balance point; negative is ahead of it
	Up       Millimetres // above the balance point; negative is below it
	Tilt     Degrees     // of a surface's span from level, tip up: 0 flat, 90 upright, −90…90
	OutSaid  bool
	AftSaid  bool
	UpSaid   bool
	TiltSaid bool
}

// Stops are the mechanical ends of a part's movement, as angles of 0 or more
// either way; +Inf where there is none.
type Stops struct {
	Plus  Degrees // down, or left
	Minus Degrees // up, or right
}

// Motor is how a motor's controller reads its channel.
type Motor struct {
	Idle, Full   Microseconds // 0 % and 100 %; Idle < Full
	StoppedBelow Percent      // at this power and less the propeller does not turn
	StoppedWhen  *Condition   // the builder's promise; nil if none was given
}

// Drive is one servo and what joins it to the part.
type Drive struct {
	Channel int // index of the channel
	Servo   Servo
	Linkage *linkage.Geometry // nil where Table is used, and for motors and extras
	Sign    float64           // with Linkage: +1 if the horn tip swinging aft moves the part plus, else −1
	Table   []Point           // measured: X output percent strictly ascending, Y angle in degrees, plus as the part's
}

// Servo turns a channel's output into arm swing.
type Servo struct {
	Swing           Degrees // for 100 % of output; more than 0
	Max             Degrees // the arm goes no further either way; +Inf if not said
	PlusAft         bool    // plus output swings the arm's tip aft
	SecondsPer60Deg Seconds // 0 if not said: then it moves at once
	TorqueNcm       float64 // newton centimetres; 0 if not said
}

package phrase

import "example.com/hingeline/mixcore"

// Role is what a step is for, by its keyword.
type Role uint8

// The roles.
const (
	AnyRole Role = iota // a * with nothing before it: settings are Given, outcomes Then
	Given
	When
	Then
)

// Span is where something stands in a sentence, in characters from 1.
type Span struct{ Column, Width int }

// Meaning is the meaning of one step.
type Meaning struct {
	Role     Role      // Given or When: Settings holds; Then: Outcomes holds
	Settings Group     // of Given and When
	Outcomes []Outcome // of Then
	OneLine  bool      // of Then: With and Move hold too
	With     Group     // of the one-line form: state before the movement
	Move     Group     // of the one-line form: the movement; empty if there is none
}

// Signal is a change of the radio link.
type Signal uint8

// The changes of the signal.
const (
	SignalKept Signal = iota
	SignalLost
	SignalBack
)

// Group is settings that are made together.
type Group struct {
	Rests    bool // first everything goes to rest
	Settings []Setting
	Signal   Signal
	SignalAt Span
}

// Empty is true if the group changes nothing.
func (g *Group) Empty() bool {
	return !g.Rests && len(g.Settings) == 0 && g.Signal == SignalKept
}

// Setting is where one control is put: percent, or the index of a switch
// position.
type Setting struct {
	Control  int
	Position float64
	At       Span
}

// Clock says at which time after the movement an outcome is judged.
type Clock uint8

// The clocks.
const (
	AtRest Clock = iota // once everything has come to rest
	After               // at the time
	Within              // at the time, and it stays so to rest
)

// Subject is what an outcome is about: parts, or channels, judged one by one,
// or the model as a whole.
type Subject struct {
	Parts    []int
	Channels []int
	Model    bool
	Servos   bool // the servos of Parts, not the parts themselves
	At       Span
}

// Outcome is one thing that a sentence asks.
type Outcome struct {
	Subject Subject
	Verb    Verb
	Way     Way          // of Move and Stand; of Turn: Right, Left, Up or Down
	Axis    mixcore.Axis // of Turn and NoTurn
	Amount  Amount       // of Move, Stand, AsFar, AddsToRoll and HoldsAir
	Other   int          // of the comparisons: index of the other part
	Speed   float64      // of HoldsAir: metres a second
	Clock   Clock
	Time    mixcore.Seconds // of After and Within

	// Every is over which positions it must hold; nil of a plain outcome, which is judged
	// where the controls stand.
	Every   *Every
	Not     bool  // of Move, Stand, Turn, PowerAt, PulseAt and OutputAt under Every: never
	Control int   // of Rising: the control that moves
	Plus    bool  // of Rising: it moves right, back, or up its travel
	On      []int // of DependsOn: the controls

	// OnPurpose is the pilot's word that an outcome which seems to fight the
	// aeroplane is meant. Judging takes no notice of it.
	OnPurpose bool

	At Span
}

// Verb is what is asked of a subject.
type Verb uint8

// The verbs.
const (
	Move          Verb = iota + 1 // moves Way, perhaps by Amount
	Still                         // does not move
	Neutral                       // stands at neutral
	Stand                         // stands Way of neutral, perhaps by Amount
	PowerAt                       // a motor gives Amount
	Stopped                       // a motor is stopped
	Running                       // a motor runs
	Stops                         // a motor ran and stops
	StaysStopped                  // a motor is stopped before and after
	PulseAt                       // a channel's pulse is Amount
	OutputAt                      // a channel's output is Amount
	InTravel                      // a channel reaches no limit
	AtStop                        // a part is at its stop
	NotAtStop                     // a part is short of its stop
	Together                      // moves the same way as Other
	Opposite                      // moves the opposite way
	AsFar                         // moves as far as Other, either way
	LessThan                      // moves, but less far than Other
	MoreThan                      // moves further than Other, which moves too
	Turn                          // the model turns about Axis, Way
	NoTurn                        // the model does not turn about Axis
	AddsToRoll                    // the parts together add Amount to the roll of the others
	NoMoreAdverse                 // adverse yaw is no more than with equal throws
	HoldsAir                      // a part's servos have Amount times the torque they need at Speed
	ServosAgree                   // a part's servos ask for the same angle
	Rising                        // a part never moves against Way as Control moves; only under Every
	DependsOn                     // a part stands where the controls On put it; only under Every
)

// NeedsMovement is true for a verb that compares before and after.
func (v Verb) NeedsMovement() bool {
	switch v {
	case Move, Still, Stops, StaysStopped, Together, Opposite, AsFar, LessThan, MoreThan,
		Turn, NoTurn, AddsToRoll, NoMoreAdverse:
		return true
	}
	return false
}

// OnlyLimits is true for a verb that only asks whether a limit is reached: it says
// nothing of what the controls do.
func (v Verb) OnlyLimits() bool { return v == InTravel || v == NotAtStop }

// NeedsMovement is true for an outcome that only means something after a
// control was moved.
func (o *Outcome) NeedsMovement() bool { return o.Clock != AtRest || o.Verb.NeedsMovement() }

// Way is a direction in words. Which there are depends on the part's motion.
type Way uint8

// The ways; the first of each pair is plus in mixcore.
const (
	NoWay Way = iota
	Down
	Up
	Left
	Right
	Faster
	Slower
	Out
	In
)

// WayOf is the plus or minus way of a motion.
func WayOf(m mixcore.Motion, plus bool) Way {
	ways := map[mixcore.Motion][2]Way{
		mixcore.UpDown:    {Down, Up},
		mixcore.LeftRight: {Left, Right},
		mixcore.Power:     {Faster, Slower},
		mixcore.OutIn:     {Out, In},
	}[m]
	if plus {
		return ways[0]
	}
	return ways[1]
}

// sign is how the way counts in mixcore's numbers.
func (w Way) sign() float64 {
	switch w {
	case Up, Right, Slower, In:
		return -1
	}
	return 1
}

// motion is the motion that the way belongs to.
func (w Way) motion() mixcore.Motion {
	switch w {
	case Down, Up:
		return mixcore.UpDown
	case Left, Right:
		return mixcore.LeftRight
	case Faster, Slower:
		return mixcore.Power
	}
	return mixcore.OutIn
}

// Amount is how much: a number with a tolerance, or a limit either side.
type Amount struct {
	Kind  AmountKind
	Value float64 // of all but Between
	Slack float64 // of About: the tolerance either side
	Low   float64 // of Between
	High  float64 // of Between
	Unit  string  // "°", "mm", "%", "µs" or, of HoldsAir, "times"
}

// AmountKind is how an amount is said.
type AmountKind uint8

// The kinds of amount.
const (
	NoAmount AmountKind = iota
	About
	AtLeast
	AtMost
	Between
	Over
	Under
)

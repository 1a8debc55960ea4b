package prove

import "example.com/hingeline/mixcore"

// Claim says what must hold, and over which positions of the controls.
//
// Now is the pose that is judged. Where something is compared (a movement, two sides
// of a model), Other is the pose it is compared with: each control stands there as in
// Now, mirrored, or at a place of its own. A movement of the roll stick has Other
// equal to Now but for the roll stick, which stands at rest.
type Claim struct {
	Now       []Span             // for each control
	Other     []Other            // for each control; nil where only one pose counts
	Lost      bool               // the signal is lost in Now
	OtherLost bool               // the signal is lost in Other
	When      *mixcore.Condition // only poses Now at which it holds count; nil: all
	WhenBoth  bool               // only poses at which When holds in Other too
	Want      Want
}

// Span is where one control may stand: a stretch of an axis, trim or lever, ends
// included, or some positions of a switch.
type Span struct {
	Low, High float64 // percent, of anything but a switch
	Places    []int   // of a switch: one or more positions, ascending
}

// Other is how one control stands in the pose that Now is compared with.
type Other struct {
	Kind OtherKind
	Span Span // of Apart
}

// OtherKind is how a control stands in the other pose.
type OtherKind uint8

// The kinds.
const (
	Same     OtherKind = iota // as in Now
	Mirrored                  // at minus its place in Now: of axes and trims only
	Apart                     // anywhere in Span, whatever it does in Now
)

// Want is what must hold: one of the types of this package. Its margin is how much
// there is to spare, in degrees or percent, negative where it does not hold.
type Want interface {
	// margin is what there is to spare with the model at two poses; other counts only
	// where something is compared.
	margin(p *Prover, now, other *mixcore.Output) float64
	// bound encloses the margin over a box.
	bound(b *box) rangeOf
	// uses is what bears on the margin.
	uses(p *Prover) uses
}

// Place wants a part between two places, ends included: degrees with mixcore's sign,
// or percent of a motor or extra. An end may be infinite.
type Place struct {
	Part      int
	Low, High float64
}

// Output wants a channel's output between two values in percent, ends included.
type Output struct {
	Channel   int
	Low, High float64
}

// Travel wants a channel within its travel: neither its travel limit nor its pulse
// limits hold it back. The margin is in percent.
type Travel struct{ Channel int }

// Differ wants place(A) in Now − Sign × place(B) in Other between two values, ends
// included. With A = B and Sign = 1 it is a movement.
type Differ struct {
	A, B      int
	Sign      float64 // +1 or −1
	Low, High float64
}

// Change is how far a part moves from Other to Now.
func Change(part int, low, high float64) Differ {
	return Differ{A: part, B: part, Sign: 1, Low: low, High: high}
}

// Pair wants two parts to move the same way, or opposite ways, from Other to Now
// wherever one of them moves: by Still or more, in degrees or percent.
type Pair struct {
	A, B           int
	Opposite       bool
	StillA, StillB float64
}

// Far wants |movement of A| − |movement of B| from Other to Now between two values,
// ends included. With Idle, poses at which neither moves by its Still count as kept.
type Far struct {
	A, B           int
	Low, High      float64
	Idle           bool
	StillA, StillB float64
}

// Rising wants a part never to move against Sign (plus or minus, as mixcore counts) as
// one control moves in its plus direction, from one place at which the claim's condition
// holds to another, and nothing else moves. The margin is in
// degrees or percent of the part's movement, 0 where it never moves back.
type Rising struct {
	Part    int
	Control int
	Sign    float64 // +1 or −1
}

// Turn wants the movement from Other to Now to turn the model about an axis as
// effect.Change.Answer would say: rolls right with Plus. Never turns right is Plus and
// Not. The margin is in the moment's own unit.
type Turn struct {
	Axis mixcore.Axis
	Plus bool // rolls right, pitches up, yaws right; else the other way
	Not  bool // it must not turn that way, not even a little or perhaps
	Told bool // with Not: it must not be sure that it turns that way; what nobody can tell is let pass
	None bool // it must not turn either way; Plus and Not do not count
}

// At is a span of one place of an axis, trim or lever.
func At(position float64) Span { return Span{Low: position, High: position} }

// AtPose holds every control where an input has it.
func AtPose(s *mixcore.Setup, in *mixcore.Input) []Span {
	spans := make([]Span, len(s.Controls))
	for i := range s.Controls {
		if s.Controls[i].Kind == mixcore.SwitchControl {
			spans[i] = Span{Places: []int{int(in.Position[i])}}
		} else {
			spans[i] = At(in.Position[i])
		}
	}
	return spans
}

// Whole is all of a control's travel.
func Whole(c *mixcore.Control) Span {
	low, high := c.Range()
	if c.Kind != mixcore.SwitchControl {
		return Span{Low: low, High: high}
	}
	places := make([]int, len(c.Positions))
	for i := range places {
		places[i] = i
	}
	return Span{Places: places}
}

// Everywhere is all of every control's travel.
func Everywhere(s *mixcore.Setup) []Span {
	spans := make([]Span, len(s.Controls))
	for i := range s.Controls {
		spans[i] = Whole(&s.Controls[i])
	}
	return spans
}

// Beside is an Other in which every control stands as in Now.
func Beside(s *mixcore.Setup) []Other { return make([]Other, len(s.Controls)) }

// Stands is an Other of one control, at one place or switch position.
func Stands(c *mixcore.Control, position float64) Other {
	if c.Kind == mixcore.SwitchControl {
		return Other{Kind: Apart, Span: Span{Places: []int{int(position)}}}
	}
	return Other{Kind: Apart, Span: At(position)}
}

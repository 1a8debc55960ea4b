// Package linkage solves one servo arm, pushrod and control horn exactly, as a
// four-bar in the plane it moves in.
//
// The plane: x runs aft from the servo's shaft, y towards the side of the
// surface that the horn stands on. Angles of arm and horn are degrees from
// straight aft; swings are degrees from neutral, plus where the tip goes aft.
// A horn tip that swings aft on top of a surface pushes its trailing edge down;
// which way a given surface goes is the caller's to know.
//
// The hinge angle is found by intersecting the circle of the horn tip about the
// hinge with that of the pushrod about the arm tip, in a form that needs no
// division, so that a rhombus is no special case. The branch is the one that
// neutral is on. New finds in closed form how far the arm can swing before the
// linkage locks, runs over centre or turns its horn further than a surface goes;
// inside that range Swing never fails, never jumps and never turns back.
//
// Start at [New].
package linkage

import (
	"errors"
	"fmt"
	"math"
)

// Geometry is one servo arm, pushrod and horn. Lengths are millimetres.
type Geometry struct {
	Arm, Horn float64 // shaft to pushrod hole, hinge line to pushrod hole; more than 0
	Pivots    float64 // shaft to hinge line, along the model; more than 0
	Offset    float64 // how far the hinge line lies from the shaft towards the horn's side
	Pushrod   float64 // 0 is as long as the angles at neutral need
	ArmDeg    float64 // of the arm at neutral, from straight aft; between 0 and 180
	HornDeg   float64 // of the horn at neutral, from straight aft; between 0 and 180
	Crossed   bool    // the arm points to the other side than the horn
}

// EndKind says why a linkage can go no further.
type EndKind uint8

// The ends.
const (
	Free        EndKind = iota // nothing stops it within half a turn
	Locks                      // pushrod and horn come into one line: the horn can be driven no further
	OverCentre                 // arm and pushrod come into one line: beyond it the horn comes back
	TurnsTooFar                // the horn is MostTurn from its neutral angle
)

// MostTurn is how far a horn may turn from its neutral angle, in degrees: no surface
// goes so far, and beyond half a turn its angle would begin again from the other side.
const MostTurn = 170

// Does says in words what a linkage does at such an end: "it locks".
func (k EndKind) Does() string {
	switch k {
	case Locks:
		return "locks"
	case OverCentre:
		return "runs over centre"
	case TurnsTooFar:
		return fmt.Sprintf("has turned its horn by %d°", MostTurn)
	default:
		return "ends"
	}
}

// End is where a linkage ends on one side of neutral.
type End struct {
	Swing float64 // degrees of arm swing, plus aft; ±180 where Kind is Free
	Kind  EndKind
}

// ErrCannotMeet is returned by New for a linkage that cannot be put together:
// at neutral the pushrod is too long or too short to reach from arm to horn.
var ErrCannotMeet = errors.New("arm, pushrod and horn cannot be joined at neutral")

// ErrStuck is returned by New for a linkage that stands locked or over centre
// at neutral already.
var ErrStuck = errors.New("arm or horn is in one line with the pushrod at neutral")

// ErrTurned is returned by New for a linkage whose pushrod holds the horn MostTurn or
// more from its neutral angle with the arm at neutral.
var ErrTurned = fmt.Errorf("the pushrod holds the horn %d° or more from the angle it has at neutral", MostTurn)

// Linkage is a solved geometry. It is immutable.
type Linkage struct {
	geometry     Geometry
	pushrod      float64
	hingeX       float64
	hingeY       float64
	side         float64 // +1, or −1 for a crossed arm
	branch       float64 // on which side of the line from hinge to arm tip the horn stands
	armNeutral   float64 // radians, before side is applied
	hornNeutral  float64 // radians
	fore, aft    End
	hornSquared  float64
	rodSquared   float64
	neutralSwing float64
}

const (
	radian = math.Pi / 180
	// near is how close to one line, as the sine of the angle between the two,
	// counts as in one line at neutral.
	near = 1e-6
)

// New solves a geometry. Its errors are ErrCannotMeet, ErrStuck, ErrTurned, or one that
// names a length or angle outside its range.
func New(g Geometry) (*Linkage, error) {
	if err := g.check(); err != nil {
		return nil, err
	}
	l := &Linkage{
		geometry: g, hingeX: g.Pivots, hingeY: g.Offset, side: 1,
		armNeutral: g.ArmDeg * radian, hornNeutral: g.HornDeg * radian,
		hornSquared: g.Horn * g.Horn,
	}
	if g.Crossed {
		l.side = -1
	}
	ax, ay := l.fromHinge(0)
	hx, hy := g.Horn*math.Cos(l.hornNeutral), g.Horn*math.Sin(l.hornNeutral)
	l.pushrod = g.Pushrod
	if l.pushrod == 0 {
		l.pushrod = math.Hypot(hx-ax, hy-ay)
	}
	l.rodSquared = l.pushrod * l.pushrod
	if err := l.chooseBranch(ax, ay, hx, hy); err != nil {
		return nil, err
	}
	l.neutralSwing = l.Swing(0)
	if math.Abs(l.neutralSwing) >= MostTurn {
		return nil, ErrTurned
	}
	l.findEnds()
	return l, nil
}

func (g Geometry) check() error {
	for _, v := range []struct {
		name  string
		value float64
		most  float64
	}{
		{"arm", g.Arm, 1000}, {"horn", g.Horn, 1000}, {"distance between the pivots", g.Pivots, 10000},
	} {
		if !(v.value > 0 && v.value <= v.most) {
			return fmt.Errorf("the %s is %v mm, want more than 0 and at most %v mm", v.name, v.value, v.most)
		}
	}
	if !(g.Pushrod >= 0 && g.Pushrod <= 10000) {
		return fmt.Errorf("the pushrod is %v mm, want at most 10000 mm", g.Pushrod)
	}
	if !(math.Abs(g.Offset) <= 10000) {
		return fmt.Errorf("the offset is %v mm, want at most 10000 mm", g.Offset)
	}
	for _, v := range []struct {
		name  string
		value float64
	}{{"arm", g.ArmDeg}, {"horn", g.HornDeg}} {
		if !(v.value > 0 && v.value < 180) {
			return fmt.Errorf("the %s stands at %v° at neutral, want between 0° and 180°", v.name, v.value)
		}
	}
	return nil
}

// chooseBranch settles on which of the two meeting points of horn and pushrod
// the linkage was built: the one nearest to the horn's neutral angle.
func (l *Linkage) chooseBranch(ax, ay, hx, hy float64) error {
	d := math.Hypot(ax, ay)
	if d > l.pushrod+l.geometry.Horn || d < math.Abs(l.pushrod-l.geometry.Horn) {
		return ErrCannotMeet
	}
	l.branch = 1
	if cross(ax, ay, hx, hy) < 0 {
		l.branch = -1
	}
	hx, hy = l.hornTip(0)
	rx, ry := hx-ax, hy-ay // the pushrod, from arm tip to horn tip
	armX, armY := ax+l.hingeX, ay+l.hingeY
	if math.Abs(cross(hx, hy, rx, ry)) < near*l.geometry.Horn*l.pushrod ||
		math.Abs(cross(armX, armY, rx, ry)) < near*l.geometry.Arm*l.pushrod {
		return ErrStuck
	}
	return nil
}

// Swing is the horn's swing in degrees for an arm swing in degrees, both from
// neutral and plus aft. The arm swing must be inside Range; beyond a lock the
// horn stays where it locked.
func (l *Linkage) Swing(arm float64) float64 {
	ax, ay := l.fromHinge(arm)
	s := (l.hornNeutral - l.hornAngle(ax, ay)) / radian
	switch {
	case s > 180:
		s -= 360
	case s <= -180:
		s += 360
	}
	return s
}

// Tips are where the pushrod's two ends are with the arm swung so far, in millimetres
// from the shaft: x aft, y towards the horn's side. The arm swing must be inside Range.
func (l *Linkage) Tips(swing float64) (arm, horn [2]float64) {
	ax, ay := l.fromHinge(swing)
	hx, hy := l.hornTip(swing)
	return [2]float64{ax + l.hingeX, ay + l.hingeY}, [2]float64{hx + l.hingeX, hy + l.hingeY}
}

// Pushrod is the length of the pushrod in millimetres, as given or as the
// neutral angles need.
func (l *Linkage) Pushrod() float64 { return l.pushrod }

// NeutralSwing is where the horn stands with the arm at neutral, in degrees:
// 0 unless a pushrod was given that holds it elsewhere.
func (l *Linkage) NeutralSwing() float64 { return l.neutralSwing }

// Range is how far the arm can swing fore and aft from neutral.
func (l *Linkage) Range() (fore, aft End) { return l.fore, l.aft }

// fromHinge is the place of the arm's tip as seen from the hinge.
func (l *Linkage) fromHinge(arm float64) (x, y float64) {
	sin, cos := math.Sincos(l.armNeutral - arm*radian)
	return l.geometry.Arm*cos - l.hingeX, l.side*l.geometry.Arm*sin - l.hingeY
}

// hornAngle is the horn's angle from straight aft, in radians, with the arm's
// tip at ax, ay from the hinge. By the cosine law the angle between horn and
// the line to the arm's tip has cosine k/(2·d·r) with k = d² + r² − p²; its
// sine is √(4d²r² − k²)/(2·d·r), so that atan2 needs neither division nor a
// clipped arc cosine.
func (l *Linkage) hornAngle(ax, ay float64) float64 {
	d2 := float64(ax*ax) + float64(ay*ay)
	k := d2 + l.hornSquared - l.rodSquared
	s2 := float64(4*d2*l.hornSquared) - float64(k*k)
	if s2 < 0 {
		s2 = 0
	}
	s := l.branch * math.Sqrt(s2)
	// angle of (ax, ay) plus angle of (k, s), as one complex product.
	return math.Atan2(float64(ay*k)+float64(ax*s), float64(ax*k)-float64(ay*s))
}

func (l *Linkage) hornTip(arm float64) (x, y float64) {
	ax, ay := l.fromHinge(arm)
	sin, cos := math.Sincos(l.hornAngle(ax, ay))
	return l.geometry.Horn * cos, l.geometry.Horn * sin
}

func cross(ax, ay, bx, by float64) float64 { return ax*by - ay*bx }

package linkage

import "math"

// findEnds finds the first place on either side of neutral where pushrod and
// horn come into one line (it locks), arm and pushrod do (it runs over centre), or
// the horn has turned by MostTurn. All such places have a closed form, by the cosine
// law in a triangle with a corner on the shaft.
func (l *Linkage) findEnds() {
	l.fore = End{Swing: -180}
	l.aft = End{Swing: 180}
	arm, horn, rod := l.geometry.Arm, l.geometry.Horn, l.pushrod
	ground, toHinge := math.Hypot(l.hingeX, l.hingeY), math.Atan2(l.hingeY, l.hingeX)
	for _, reach := range []float64{rod + horn, math.Abs(rod - horn)} {
		// The arm's tip is at this distance from the hinge.
		for _, swing := range l.swings(toHinge, arm, ground, reach) {
			l.tryEnd(End{swing, Locks})
		}
	}
	for _, reach := range []float64{arm + rod, arm - rod} {
		if reach == 0 {
			continue
		}
		// The horn's tip is at this distance from the shaft, on the arm's line.
		for _, swing := range l.swings(toHinge, reach, ground, horn) {
			if l.inOneLine(swing) {
				l.tryEnd(End{swing, OverCentre})
			}
		}
	}
	for _, turn := range []float64{-MostTurn, MostTurn} {
		// The horn's tip is there; the arm's is a pushrod from it.
		sin, cos := math.Sincos(l.hornNeutral - turn*radian)
		x, y := l.hingeX+horn*cos, l.hingeY+horn*sin
		for _, swing := range l.swings(math.Atan2(y, x), arm, math.Hypot(x, y), rod) {
			if math.Abs(l.Swing(swing)-turn) < sameTurn {
				l.tryEnd(End{swing, TurnsTooFar})
			}
		}
	}
}

// swings are the two arm swings, in degrees, at which the arm's line stands off a
// direction, in radians, by the angle between the sides reach and ground of a triangle
// whose third side is across; none where there is no such triangle. A triangle that
// rounding alone has opened, all three corners in one line, is one: a parallelogram
// comes into one line so, and beyond it nothing says which way its horn goes.
func (l *Linkage) swings(direction, reach, ground, across float64) []float64 {
	squares, twice := reach*reach+ground*ground, 2*reach*ground
	cosine := (squares - across*across) / twice
	if slack := inLine * (squares + across*across) / math.Abs(twice); !(math.Abs(cosine) <= 1+slack) {
		return nil
	}
	off := math.Acos(max(-1, min(1, cosine)))
	swings := make([]float64, 0, 2)
	for _, angle := range []float64{direction + off, direction - off} {
		swings = append(swings, math.Remainder(l.armNeutral-l.side*angle, 2*math.Pi)/radian)
	}
	return swings
}

// tryEnd keeps a place where it is nearer to neutral than what was found so far.
func (l *Linkage) tryEnd(end End) {
	switch {
	case end.Swing > 0 && end.Swing < l.aft.Swing:
		l.aft = end
	case end.Swing < 0 && end.Swing > l.fore.Swing:
		l.fore = end
	}
}

const (
	// inLine is how far, as a part of the sides' squares, the corners of a triangle may
	// miss one line and still be in it: some thousand roundings.
	inLine = 1e-12
	// sameLine is the sine below which arm and pushrod count as in one line when a
	// closed-form place is checked against the branch in use; the other branch has
	// them far from one line there.
	sameLine = 1e-6
	// sameTurn, in degrees, tells the branch in use from the other one in the same way.
	sameTurn = 1e-3
)

func (l *Linkage) inOneLine(arm float64) bool {
	hx, hy := l.hornTip(arm)
	ax, ay := l.fromHinge(arm)
	rx, ry := hx-ax, hy-ay
	return math.Abs(cross(ax+l.hingeX, ay+l.hingeY, rx, ry)) < sameLine*l.geometry.Arm*l.pushrod
}

package linkage

import "math"

// findEnds finds the first place on either side of neutral where pushrod and
// horn come into one line (it locks) or arm and pushrod do (it runs over
// centre). All such places have a closed form, by the cosine law in the
// triangle of shaft, hinge and the point where the line meets.
func (l *Linkage) findEnds() {
	l.fore = End{Swing: -180}
	l.aft = End{Swing: 180}
	arm, horn, rod := l.geometry.Arm, l.geometry.Horn, l.pushrod
	ground := math.Hypot(l.hingeX, l.hingeY)
	for _, reach := range []float64{rod + horn, math.Abs(rod - horn)} {
		// The arm's tip is at this distance from the hinge.
		l.tryAngle((arm*arm+ground*ground-reach*reach)/(2*arm*ground), Locks)
	}
	for _, reach := range []float64{arm + rod, arm - rod} {
		// The horn's tip is at this distance from the shaft, on the arm's line.
		if reach != 0 {
			l.tryAngle((reach*reach+ground*ground-horn*horn)/(2*reach*ground), OverCentre)
		}
	}
}

// tryAngle takes the cosine of an arm's angle from the line shaft–hinge and
// keeps the two arm angles that have it, where they are nearer than what was
// found so far and on the branch in use.
func (l *Linkage) tryAngle(cosine float64, kind EndKind) {
	if !(math.Abs(cosine) <= 1) {
		return
	}
	base := math.Atan2(l.hingeY, l.hingeX)
	for _, angle := range []float64{base + math.Acos(cosine), base - math.Acos(cosine)} {
		swing := math.Remainder(l.armNeutral-l.side*angle, 2*math.Pi) / radian
		if kind == OverCentre && !l.inOneLine(swing) {
			continue
		}
		switch {
		case swing > 0 && swing < l.aft.Swing:
			l.aft = End{swing, kind}
		case swing < 0 && swing > l.fore.Swing:
			l.fore = End{swing, kind}
		}
	}
}

// sameLine is the sine below which arm and pushrod count as in one line when a
// closed-form place is checked against the branch in use; the other branch has
// them far from one line there.
const sameLine = 1e-6

func (l *Linkage) inOneLine(arm float64) bool {
	hx, hy := l.hornTip(arm)
	ax, ay := l.fromHinge(arm)
	rx, ry := hx-ax, hy-ay
	return math.Abs(cross(ax+l.hingeX, ay+l.hingeY, rx, ry)) < sameLine*l.geometry.Arm*l.pushrod
}

package linkage

import (
	"math"

	"example.com/hingeline/mixcore/interval"
)

// Slope encloses how many degrees the horn swings for a degree of the arm, over a
// stretch of arm swings inside Range.
//
// The pushrod keeps its length, so that the tips of arm and horn move equally fast
// along it: with a and h the velocities of the tips for a degree of their own and r
// the pushrod, slope = (r·a)/(r·h). Between the linkage's ends neither is ever 0, as
// arm and pushrod, or horn and pushrod, would be in one line there; so the slope
// keeps its sign, and the horn never turns back.
func (l *Linkage) Slope(arm interval.Range) interval.Range {
	angle := interval.Point(l.armNeutral).Sub(arm.Scale(radian)) // as fromHinge has it
	sin, cos := angle.Sin(), angle.Cos()
	ax := cos.Scale(l.geometry.Arm).Sub(interval.Point(l.hingeX))
	ay := sin.Scale(l.side * l.geometry.Arm).Sub(interval.Point(l.hingeY))
	// The horn never turns back, so its two ends bound it.
	swing := interval.Point(l.Swing(arm.Low)).Hull(interval.Point(l.Swing(arm.High))).Widen(l.Accuracy(arm))
	horn := interval.Point(l.hornNeutral).Sub(swing.Scale(radian))
	hornSin, hornCos := horn.Sin(), horn.Cos()
	rx := hornCos.Scale(l.geometry.Horn).Sub(ax)
	ry := hornSin.Scale(l.geometry.Horn).Sub(ay)
	armSpeed := rx.Mul(sin.Scale(l.geometry.Arm)).Sub(ry.Mul(cos.Scale(l.side * l.geometry.Arm)))
	hornSpeed := rx.Mul(hornSin.Scale(l.geometry.Horn)).Sub(ry.Mul(hornCos.Scale(l.geometry.Horn)))
	return armSpeed.Over(hornSpeed)
}

// Accuracy bounds what Swing may be wrong by, in degrees, over a stretch of arm swings
// inside Range. A few roundings of relative size 2⁻⁵³ are divided by the sine q of the
// angle between horn and the line to the arm's tip, which goes to 0 where the linkage
// locks; there the bound is the root of the rounding.
func (l *Linkage) Accuracy(arm interval.Range) float64 {
	angle := interval.Point(l.armNeutral).Sub(arm.Scale(radian))
	ax := angle.Cos().Scale(l.geometry.Arm).Sub(interval.Point(l.hingeX))
	ay := angle.Sin().Scale(l.side * l.geometry.Arm).Sub(interval.Point(l.hingeY))
	squared := ax.Mul(ax).Add(ay.Mul(ay))
	// cosine(d) = (d² + h² − p²)/(2dh) turns only from falling to rising, so that its
	// largest size is at an end.
	least := 1.0
	for _, d2 := range []float64{max(squared.Low, 0), squared.High} {
		cosine := (d2 + l.hornSquared - l.rodSquared) / (2 * math.Sqrt(d2) * l.geometry.Horn)
		least = min(least, 1-cosine*cosine)
	}
	if !(least > 0) {
		return worstAccuracy
	}
	return min(bestAccuracy/math.Sqrt(least), worstAccuracy)
}

const (
	bestAccuracy  = 1e-11 // degrees: some hundred units in the last place of a turn
	worstAccuracy = 1e-5  // degrees, where horn and pushrod are in one line
)

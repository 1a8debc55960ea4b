package mixcore

import (
	"math"

	"example.com/hingeline/mixcore/interval"
)

// DriveSlope encloses how many degrees one servo of a part adds to its angle for one
// percent of output, over a stretch of outputs; 0 where the servo is at its maximum.
// The part must be hinged or a wheel.
func (p *Plan) DriveSlope(part, index int, output interval.Range) interval.Range {
	d := &p.parts[part].drives[index]
	if d.linkage == nil {
		return tableSlope(d.Table, output)
	}
	arm := output.Scale(d.swing)
	held := arm.Low < -d.most || arm.High > d.most
	low, high := min(max(arm.Low, -d.most), d.most), min(max(arm.High, -d.most), d.most)
	slope := d.linkage.Slope(interval.Range{Low: low, High: high}).Scale(d.Sign * d.swing)
	if held {
		slope = slope.Hull(interval.Point(0))
	}
	return slope
}

// tableSlope encloses the slope of a measured table over a stretch.
func tableSlope(p []Point, x interval.Range) interval.Range {
	slope := interval.Range{Low: math.Inf(1), High: math.Inf(-1)}
	for i := 1; i < len(p); i++ {
		a, b := p[i-1], p[i]
		if i > 1 && a.X > x.High || i < len(p)-1 && b.X < x.Low {
			continue
		}
		rise := interval.Point(b.Y).Sub(interval.Point(a.Y)).Over(interval.Point(b.X).Sub(interval.Point(a.X)))
		slope = slope.Hull(rise)
	}
	if x.Low < p[0].X || x.High > p[len(p)-1].X {
		slope = slope.Hull(interval.Point(0))
	}
	return slope
}

// DriveAccuracy bounds what DriveAngle may be wrong by, in degrees, over a stretch of
// outputs.
func (p *Plan) DriveAccuracy(part, index int, output interval.Range) float64 {
	d := &p.parts[part].drives[index]
	if d.linkage == nil {
		return tableAccuracy
	}
	arm := output.Scale(d.swing)
	return d.linkage.Accuracy(interval.Range{Low: min(max(arm.Low, -d.most), d.most), High: min(max(arm.High, -d.most), d.most)})
}

// tableAccuracy is a handful of roundings of angles of less than a turn.
const tableAccuracy = 1e-12

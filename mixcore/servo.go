package mixcore

import (
	"math"

	"example.com/hingeline/mixcore/linkage"
)

// drive is a compiled Drive.
type drive struct {
	*Drive
	linkage *linkage.Linkage
	swing   float64 // degrees of swing, plus aft, for 1 % of output
	most    float64 // degrees
	speed   float64 // percent of output a second; +Inf moves at once
}

func compileDrive(d *Drive) (drive, error) {
	out := drive{Drive: d, swing: float64(d.Servo.Swing) / 100, most: float64(d.Servo.Max), speed: math.Inf(1)}
	if !d.Servo.PlusAft {
		out.swing = -out.swing
	}
	if d.Servo.SecondsPer60Deg > 0 && d.Servo.Swing > 0 {
		out.speed = 60 / float64(d.Servo.SecondsPer60Deg) / float64(d.Servo.Swing) * 100
	}
	if d.Linkage == nil {
		return out, nil
	}
	var err error
	out.linkage, err = linkage.New(*d.Linkage)
	return out, err
}

// angle is what the servo asks of its part when output reaches it. trace may be
// nil.
func (d *drive) angle(output float64, trace *DriveTrace) (float64, Limit) {
	if d.linkage == nil {
		a := tableAt(d.Table, output)
		if trace != nil {
			*trace = DriveTrace{Output: Percent(output), Angle: Degrees(a)}
		}
		return a, 0
	}
	wanted := output * d.swing
	var limits Limit
	arm, bit := clamp(wanted, -d.most, d.most)
	if bit {
		limits = ServoMax
	}
	a := d.Sign * d.linkage.Swing(arm)
	if trace != nil {
		*trace = DriveTrace{Output: Percent(output), Wanted: Degrees(wanted), Swing: Degrees(arm),
			Angle: Degrees(a), Limits: limits}
	}
	return a, limits
}

// tableAt is the straight line between the two points of a measured table that
// x lies between; Compile has seen to it that the table reaches far enough.
func tableAt(p []Point, x float64) float64 {
	i := 1
	for i < len(p)-1 && x >= p[i].X {
		i++
	}
	return between(lineAt(p[i-1], p[i], x), p[i-1].Y, p[i].Y)
}

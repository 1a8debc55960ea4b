package effect

import (
	"math"

	"example.com/hingeline/mixcore"
)

// airDensity is that of the standard atmosphere at sea level, kg/m³.
const airDensity = 1.225

// Band is a number known only within bounds.
type Band struct{ Low, High float64 }

// HingeMoment is what the air asks of a surface's hinge, in newton metres
// without sign: chord in metres from hinge to trailing edge, span in metres,
// part of the whole chord 0…1, speed in metres a second, turned from where it
// floats by an angle. Low is a flat plate met by the air at that angle with its
// force at half chord, High thin-aerofoil theory.
func HingeMoment(chord, span, part, speed float64, angle mixcore.Degrees) Band {
	turn := math.Abs(float64(angle)) * math.Pi / 180
	whole := airDensity / 2 * speed * speed * chord * chord * span
	a, b := whole*math.Sin(turn)/2, whole*-ThinFlap(part).HingeFlap*turn
	return Band{math.Min(a, b), math.Max(a, b)}
}

// QuotedRule is a servo torque rule for large models as quoted from AMA 520-A,
// in newton centimetres: 1.5 ounces for each square inch of surface at an arm of
// one inch, times the gearing. Chord and span are metres.
func QuotedRule(chord, span, gear float64) float64 {
	const (
		inch                = 0.0254
		ounceInchInNcm      = 0.70615518
		ouncesPerSquareInch = 1.5
	)
	return ouncesPerSquareInch * chord / inch * span / inch * gear * ounceInchInNcm
}

// Load is what one servo must hold against the air.
type Load struct {
	Part, Drive int
	Needed      Band    // newton centimetres at the servo
	Rule        float64 // newton centimetres by QuotedRule
	Has         float64 // newton centimetres; 0 if the builder has not said
}

// Margin is how many times over the servo has the torque it needs, at worst and
// at best; +Inf where nothing is needed.
func (l Load) Margin() Band {
	return Band{l.Has / l.Needed.High, l.Has / l.Needed.Low}
}

// leastTurn is the step of output over which the gearing of a linkage is taken,
// in percent.
const leastTurn = 0.01

// Loads is what every servo must hold with the surfaces at a trace's angles and
// the air at a speed in metres a second, and which parts lack span or chord.
// Servos of one part share its load. The span of a surface in the centre that
// moves up and down is that of one half: it counts twice. An unsaid whole chord
// is taken as four times the surface's.
func (a *Airframe) Loads(p *mixcore.Plan, t *mixcore.Trace, speed float64) ([]Load, []int) {
	var loads []Load
	var missing []int
	for i := range a.setup.Parts {
		part := &a.setup.Parts[i]
		if !part.Motion.Hinged() || !a.acts[i] {
			continue
		}
		if part.Chord <= 0 || part.Span[1] <= part.Span[0] {
			missing = append(missing, i)
			continue
		}
		ratio := 0.25
		if a.wing != nil && onWing(part.Kind) {
			ratio = math.Min(float64(part.Chord)/a.wing.ChordAt(float64(part.Span[0]+part.Span[1])/2), 1)
		}
		chord, span := float64(part.Chord)/1000, float64(part.Span[1]-part.Span[0])/1000
		if part.Side == mixcore.Centre && part.Motion == mixcore.UpDown {
			span *= 2
		}
		moment := HingeMoment(chord, span, ratio, speed, t.Parts[i].Angle)
		for j := range part.Drives {
			gear := a.gear(p, i, j, t.Parts[i].Drives[j].Output)
			servos := float64(len(part.Drives))
			share := gear * 100 / servos // newton metres to newton centimetres
			loads = append(loads, Load{Part: i, Drive: j,
				Needed: Band{moment.Low * share, moment.High * share},
				Rule:   QuotedRule(chord, span, gear) / servos, Has: part.Drives[j].Servo.TorqueNcm})
		}
	}
	return loads, missing
}

// gear is degrees of surface for a degree of arm, without sign: by the balance
// of work, also the servo's torque for one of hinge moment. At the corner of a
// measured table it is the steeper side's, which asks more of the servo; at the
// end of the arm's swing it is that just inside. A table knows no such end: it is
// all there is to know, whatever the servo's maximum.
func (a *Airframe) gear(p *mixcore.Plan, part, drive int, output mixcore.Percent) float64 {
	d := &a.setup.Parts[part].Drives[drive]
	at := output
	if d.Table == nil {
		most := mixcore.Percent(d.Servo.Max / d.Servo.Swing * 100)
		at = max(-most, min(output, most))
	}
	here := p.DriveAngle(part, drive, at)
	before, behind := here-p.DriveAngle(part, drive, at-leastTurn), p.DriveAngle(part, drive, at+leastTurn)-here
	turn := math.Max(math.Abs(float64(before)), math.Abs(float64(behind)))
	return turn / (float64(d.Servo.Swing) * leastTurn / 100)
}

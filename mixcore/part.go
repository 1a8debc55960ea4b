package mixcore

import "math"

// FightSpread is how far apart the angles may be that the servos of one part
// ask for, in degrees, before they count as fighting each other. Common
// practice, no source.
const FightSpread Degrees = 1

// part is a compiled Part.
type part struct {
	*Part
	drives []drive
}

// finish carries channel outputs to the part. output gives what reaches each
// drive; trace may be nil, else its Drives has room for every drive.
func (p *part) finish(channels []ChannelOutput, late []float64, out *PartOutput, trace *PartTrace) {
	*out = PartOutput{}
	switch p.Motion {
	case Power:
		pulse := float64(channels[p.drives[0].Channel].Pulse)
		idle, full := float64(p.Motor.Idle), float64(p.Motor.Full)
		p.amount((pulse-idle)/(full-idle)*100, out, trace)
	case OutIn:
		v := float64(channels[p.drives[0].Channel].Output)
		if p.PlusIn {
			v = -v
		}
		p.amount((v+100)/2, out, trace)
	default:
		p.angle(channels, late, out, trace)
	}
	if trace != nil {
		trace.PartOutput = *out
	}
}

// amount is the end of the chain for a motor or an extra.
func (p *part) amount(wanted float64, out *PartOutput, trace *PartTrace) {
	v, bit := clamp(wanted, 0, 100)
	if bit {
		out.Limits |= PartEnd
	}
	out.Amount = Percent(v)
	if trace != nil {
		trace.Wanted = wanted
	}
}

// angle is the end of the chain for a hinged part or a wheel. late holds, for
// each drive, the output as a servo of limited speed has reached it; nil where
// everything has come to rest.
func (p *part) angle(channels []ChannelOutput, late []float64, out *PartOutput, trace *PartTrace) {
	total, least, most := 0.0, math.Inf(1), math.Inf(-1)
	for i := range p.drives {
		d := &p.drives[i]
		v := float64(channels[d.Channel].Output)
		if late != nil {
			v = late[i]
		}
		var dt *DriveTrace
		if trace != nil {
			dt = &trace.Drives[i]
		}
		a, limits := d.angle(v, dt)
		out.Limits |= limits
		total += a
		least, most = min(least, a), max(most, a)
	}
	spread := Degrees(most - least)
	if spread > FightSpread {
		out.Limits |= ServosFight
	}
	wanted := total
	if n := len(p.drives); n > 1 {
		wanted /= float64(n)
	}
	a, bit := clamp(wanted, -float64(p.Stops.Minus), float64(p.Stops.Plus))
	if bit {
		out.Limits |= AtStop
	}
	out.Angle = Degrees(a)
	if p.Chord > 0 {
		out.Travel = ChordTravel(p.Chord, out.Angle)
	}
	if trace != nil {
		trace.Wanted, trace.Spread = wanted, spread
	}
}

// ChordTravel is how far the trailing edge moves in a straight line when a
// surface of this chord, from hinge to trailing edge, turns by an angle:
// 2·c·sin(|δ|/2), never negative.
func ChordTravel(chord Millimetres, turn Degrees) Millimetres {
	return 2 * chord * Millimetres(math.Sin(math.Abs(float64(turn))*math.Pi/360))
}

// Stopped says whether a motor at this power stands still.
func (m *Motor) Stopped(power Percent) bool { return power <= m.StoppedBelow }

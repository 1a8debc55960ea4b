package phrase

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// movesWords says what a part did since before the movement.
func (j *judge) movesWords(p *mixcore.Part, from, to mixcore.PartOutput, out *mixcore.Output) string {
	moved, fromTo := wording.Moved(p, from, to, j.model.Still), wording.FromTo(p, from, to, j.model.Still)
	switch j.o.Verb {
	case Move:
		return j.exactly(p, moved, (to.Place()-from.Place())*j.o.Way.sign()) + fromTo
	case Stops:
		if p.Motor.Stopped(from.Amount) {
			return moved + "; it was not running before, so this shows nothing"
		}
		return moved
	case Still, StaysStopped:
		return moved + fromTo
	}
	other := &j.setup.Parts[j.o.Other]
	return moved + fromTo + "; the " + other.Name + " " +
		wording.Movement(other, j.before.Parts[j.o.Other], out.Parts[j.o.Other], j.model.Still)
}

// standsWords says where a part stands, finely enough for the amount.
func (j *judge) standsWords(p *mixcore.Part, o mixcore.PartOutput) string {
	words := wording.Position(p, o)
	if j.o.Verb == AtStop || j.o.Verb == NotAtStop {
		if o.Limits&mixcore.AtStop != 0 {
			return words + ", driven against its stop"
		}
		return words
	}
	distance := o.Place()
	if p.Motion.Hinged() {
		distance = math.Abs(distance)
	}
	return j.exactly(p, words, distance)
}

// exactly adds the value with more decimals where the rounded one reads like
// the bound it is held against.
func (j *judge) exactly(p *mixcore.Part, words string, distance float64) string {
	a := j.o.Amount
	if a.Kind == NoAmount || distance < 0 {
		return words
	}
	x := inUnit(p, distance, a.Unit)
	var short, long string
	switch bound := a.bound(x); a.Unit {
	case "°":
		short, long = wording.Angle(mixcore.Degrees(x)), wording.AngleBeside(mixcore.Degrees(x), mixcore.Degrees(bound))
	case "mm":
		short, long = wording.Length(mixcore.Millimetres(x)), wording.LengthBeside(mixcore.Millimetres(x), mixcore.Millimetres(bound))
	case "%":
		short, long = wording.Percent(mixcore.Percent(x)), wording.PercentBeside(mixcore.Percent(x), mixcore.Percent(bound))
	}
	if short == long {
		return words
	}
	return words + ", exactly " + long
}

package wording

import (
	"math"

	"example.com/hingeline/mixcore"
)

// Direction is the word for the way of a movement or angle of the sign given,
// in the sense of mixcore's sign convention: UP or DOWN, LEFT or RIGHT, OUT or
// IN. A power has no way: MORE or LESS.
func Direction(m mixcore.Motion, plus bool) string {
	if plus {
		return directions[m].plus
	}
	return directions[m].minus
}

var directions = map[mixcore.Motion]struct{ plus, minus string }{
	mixcore.UpDown:    {"DOWN", "UP"},
	mixcore.LeftRight: {"LEFT", "RIGHT"},
	mixcore.OutIn:     {"OUT", "IN"},
	mixcore.Power:     {"MORE", "LESS"},
}

// stopped reports whether a motor's propeller stands at this output: its power
// is at or below the power up to which it does not turn.
func stopped(p *mixcore.Part, o mixcore.PartOutput) bool {
	return p.Motion == mixcore.Power && p.Motor.Stopped(o.Amount)
}

// Position says where a part stands, measured from neutral: "trailing edge UP
// 14.2° (11 mm)", "RIGHT 18°", "neutral", "stopped", "power 45 %", "OUT 100 %",
// "IN".
func Position(p *mixcore.Part, o mixcore.PartOutput) string {
	switch p.Motion {
	case mixcore.Power:
		if stopped(p, o) {
			return "stopped"
		}
		return "power " + PercentBeside(o.Amount, p.Motor.StoppedBelow)
	case mixcore.OutIn:
		if rounded(float64(o.Amount), 1) == 0 {
			return "IN"
		}
		return "OUT " + Percent(o.Amount)
	}
	turn := Turn(p.Motion, o.Angle)
	switch {
	case turn == neutral:
		return turn
	case p.Motion == mixcore.UpDown:
		turn = "trailing edge " + turn
	}
	return turn + inBrackets(o.Travel)
}

const neutral = "neutral"

// Turn says an angle of a hinged part by itself: "UP 14.2°", "RIGHT 18°",
// "neutral".
func Turn(m mixcore.Motion, angle mixcore.Degrees) string {
	if math.Abs(float64(angle)) < float64(NeutralBelow) {
		return neutral
	}
	return Direction(m, angle > 0) + " " + Angle(angle)
}

// Movement says how a part moved, and where from where that is not neutral:
// "rises 14.2° (11 mm)", "rises 13.5°: from DOWN 25° to DOWN 11.5°", "stays
// still", "power from 45 % to stopped".
func Movement(p *mixcore.Part, from, to mixcore.PartOutput, still mixcore.Degrees) string {
	return Moved(p, from, to, still) + FromTo(p, from, to, still)
}

// FromTo is what follows the movement of a hinged part that did not begin at
// neutral: ": from DOWN 25° to DOWN 11.5°". It is empty for any other, and where
// it moved less than still.
func FromTo(p *mixcore.Part, from, to mixcore.PartOutput, still mixcore.Degrees) string {
	if p.Motion == mixcore.Power || p.Motion == mixcore.OutIn {
		return ""
	}
	was := Turn(p.Motion, from.Angle)
	if was == neutral || math.Abs(float64(to.Angle-from.Angle)) < float64(max(still, NeutralBelow)) {
		return ""
	}
	return ": from " + was + " to " + Turn(p.Motion, to.Angle)
}

// Moved is how a part moved, without where from: "rises 14.2° (11 mm)", "drops
// 8°", "moves RIGHT 18°", "stays still", "power from 45 % to stopped". A hinged
// part that moved less than still stays still; the little it moved is said in
// brackets.
func Moved(p *mixcore.Part, from, to mixcore.PartOutput, still mixcore.Degrees) string {
	switch p.Motion {
	case mixcore.Power:
		return powerChange(p, from, to)
	case mixcore.OutIn:
		if rounded(float64(to.Amount-from.Amount), 1) == 0 {
			return "stays still"
		}
		return "moves " + Direction(p.Motion, to.Amount > from.Amount) +
			", from " + Percent(from.Amount) + " to " + Percent(to.Amount)
	}
	moved := to.Angle - from.Angle
	size := mixcore.Degrees(math.Abs(float64(moved)))
	verb := map[string]string{"UP": "rises", "DOWN": "drops"}[Direction(p.Motion, moved > 0)]
	if verb == "" {
		verb = "moves " + Direction(p.Motion, moved > 0)
	}
	switch {
	case size < NeutralBelow:
		return "stays still"
	case size < still:
		return "stays still (" + verb + " only " + AngleBeside(size, still) + ")"
	}
	return verb + " " + Angle(size) + inBrackets(mixcore.ChordTravel(p.Chord, size))
}

func powerChange(p *mixcore.Part, from, to mixcore.PartOutput) string {
	was, is := powerWord(p, from), powerWord(p, to)
	switch {
	case was == is && is == "stopped":
		return "stays stopped"
	case was == is:
		return "power stays at " + is
	}
	return "power from " + was + " to " + is
}

func powerWord(p *mixcore.Part, o mixcore.PartOutput) string {
	if stopped(p, o) {
		return "stopped"
	}
	return PercentBeside(o.Amount, p.Motor.StoppedBelow)
}

func inBrackets(l mixcore.Millimetres) string {
	if l == 0 {
		return ""
	}
	return " (" + Length(l) + ")"
}

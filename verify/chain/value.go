package chain

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// value is what a step comes to, in words and, where it is a number, exact.
type value struct {
	words string
	exact *result.Exact
}

func percent(v mixcore.Percent) value {
	return value{wording.Percent(v), &result.Exact{Number: number(float64(v)), Unit: "%"}}
}

func pulse(v mixcore.Microseconds) value {
	return value{wording.Pulse(v), &result.Exact{Number: number(float64(v)), Unit: "µs"}}
}

// turn is the angle of a hinged part.
func turn(m mixcore.Motion, v mixcore.Degrees) value {
	return value{wording.Turn(m, v), angle(v, wording.Direction(m, v > 0))}
}

// swing is the angle of a servo arm, plus aft.
func swing(v mixcore.Degrees) value {
	way := foreOrAft(v > 0)
	words := wording.Angle(v)
	if words != wording.Angle(0) {
		words += " " + way
	}
	return value{words, angle(v, way)}
}

// foreOrAft is the way that a servo arm swings.
func foreOrAft(aft bool) string {
	if aft {
		return "aft"
	}
	return "fore"
}

// position is where a part stands.
func position(p *mixcore.Part, o mixcore.PartOutput) value {
	v := value{words: wording.Position(p, o)}
	if p.Motion.Hinged() {
		v.exact = turn(p.Motion, o.Angle).exact
	} else {
		v.exact = percent(o.Amount).exact
	}
	return v
}

func angle(v mixcore.Degrees, way string) *result.Exact {
	if v == 0 {
		way = ""
	}
	return &result.Exact{Number: math.Abs(float64(v)), Unit: "°", Way: way}
}

// number is v, but never minus zero.
func number(v float64) float64 { return v + 0 }

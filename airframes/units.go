package airframes

import (
	"fmt"
	"math"
	"strings"
)

// otherUnits are units that people write where the format has another one, by
// what that one is shown as: how many of it make one of theirs.
var otherUnits = map[string]map[string]float64{
	inPercent.shown: {"percent": 1, "per cent": 1, "pct": 1},
	inDegrees.shown: {"degree": 1, "degrees": 1, "rad": 180 / math.Pi},
	inSeconds.shown: {"ms": 0.001, "sec": 1, "second": 1, "seconds": 1, "min": 60},
	inPulse.shown:   {"ms": 1000},
	inLength.shown: {
		"cm": 10, "m": 1000, "millimetres": 1, "in": 25.4, "inch": 25.4, "inches": 25.4, `"`: 25.4, "″": 25.4, "ft": 304.8,
	},
	inKilos.shown:  {"kg": 1, "g": 0.001, "lb": 0.45359237, "lbs": 0.45359237, "oz": 0.028349523125},
	inTorque.shown: {"n·cm": 1, "ncm": 1, "n cm": 1, "nm": 100, "kg·cm": 9.80665, "kgcm": 9.80665, "kg cm": 9.80665},
	inSpeed.shown:  {"km/h": 1 / 3.6, "kmh": 1 / 3.6, "kph": 1 / 3.6, "mph": 0.44704},
}

// converted is the hint for a number in one of the other units; there is none
// if the unit is unknown or the number would be out of range.
func (u unit) converted(value float64, suffix string, low, high float64) string {
	factor, known := otherUnits[u.shown][strings.ToLower(suffix)]
	value = Thousandths(value * factor)
	if !known || value < low || value > high {
		return ""
	}
	return "write " + u.written(value)
}

// Thousandths is a number rounded to as many places as those of a file need: what is finer
// nobody can measure or set. It is never a negative zero.
func Thousandths(value float64) float64 { return math.Round(value*1000)/1000 + 0 }

// written is a number as a file has it.
func (u unit) written(value float64) string {
	switch {
	case len(u.suffixes) == 0:
		return plainNumber(value)
	case u.suffixes[0] == "%" || u.suffixes[0] == "°":
		return plainNumber(value) + u.suffixes[0]
	}
	return plainNumber(value) + " " + u.suffixes[0]
}

// tooBare is the hint for a number without its unit that is so small that
// somebody may have counted in ones instead of hundredths: 0.65 for 65 %. It is
// empty if the number may stand.
func (u unit) tooBare(value float64, suffix string, low, high float64) string {
	if suffix != "" || value == 0 || math.Abs(value) >= u.bare {
		return ""
	}
	large := Thousandths(100 * value)
	meant := large >= low && large <= high
	inRange := value >= low && value <= high
	itself := fmt.Sprintf("write %s if you mean it", u.written(value))
	switch {
	case meant && inRange:
		return fmt.Sprintf("did you mean %s? %s", u.written(large), itself)
	case meant:
		return fmt.Sprintf("did you mean %s?", u.written(large))
	case inRange:
		return itself
	}
	return ""
}

package bench

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// widest is the largest angle in degrees that a reading may have.
const widest = 120

// told is a Measured event as somebody says it. Sure: it is meant, however unlikely.
type told struct {
	Event
	Sure bool
}

// surely are the words behind a measurement by which somebody says that it is meant.
var surely = []string{"sure", "really", "from neutral"}

// measureOf reads an amount: "12 up", "12° up", "9 mm down", "0", "85 %". ok is false
// where it is none; problem says what is wrong with one.
func (w *Walk) measureOf(part int, words []string) (m told, ok bool, problem string) {
	text := strings.Join(words, " ")
	for _, word := range surely {
		if bare, ok := strings.CutSuffix(text, " "+word); ok {
			text, m.Sure = bare, true
		}
	}
	m.Event, ok, problem = w.amountOf(part, text)
	return m, ok, problem
}

func (w *Walk) amountOf(part int, text string) (e Event, ok bool, problem string) {
	text = strings.NewReplacer("°", " deg ", "%", " % ", "mm", " mm ").Replace(text)
	fields := strings.Fields(text)
	if len(fields) == 0 {
		return e, false, ""
	}
	size, err := strconv.ParseFloat(strings.ReplaceAll(fields[0], ",", "."), 64)
	if err != nil {
		return e, false, ""
	}
	p := &w.Model.Setup.Parts[part]
	rest := fields[1:]
	if math.IsNaN(size) || math.IsInf(size, 0) || size < 0 || strings.HasPrefix(fields[0], "-") {
		return e, true, "write a size without a sign, and which way: 12 " + strings.ToLower(wording.Direction(p.Motion, false))
	}
	unit := ""
	if len(rest) > 0 && (rest[0] == "deg" || rest[0] == "degrees" || rest[0] == "mm" || rest[0] == "%" || rest[0] == "percent") {
		unit, rest = rest[0], rest[1:]
	}
	e = Event{Kind: Measured, Part: p.Name}
	if !p.Motion.Hinged() {
		if size > 100 || len(rest) > 0 || unit != "" && unit != "%" && unit != "percent" {
			return e, true, fmt.Sprintf("the %s has no angle: write percent of its travel or power, such as 85 %%", p.Name)
		}
		e.Percent = &size
		return e, true, ""
	}
	if unit == "%" || unit == "percent" {
		return e, true, fmt.Sprintf("the %s is measured in degrees, or mm at its trailing edge", p.Name)
	}
	switch {
	case size == 0 && len(rest) == 0:
	case len(rest) == 1 && (strings.EqualFold(rest[0], wording.Direction(p.Motion, true)) || strings.EqualFold(rest[0], wording.Direction(p.Motion, false))):
		e.Way = strings.ToUpper(rest[0])
	default:
		return e, true, fmt.Sprintf("say which way the %s is: %s %s or %s %s", p.Name, fields[0], strings.ToLower(wording.Direction(p.Motion, false)), fields[0], strings.ToLower(wording.Direction(p.Motion, true)))
	}
	if unit == "mm" {
		degrees, err := degreesOf(p, size)
		if err != nil {
			return e, true, err.Error()
		}
		length := size
		e.Length, size = &length, degrees
	}
	if size > widest {
		return e, true, fmt.Sprintf("%s is more than any surface turns", wording.Angle(mixcore.Degrees(size)))
	}
	size = airframes.Thousandths(size)
	e.Degrees = &size
	return e, true, ""
}

// degreesOf is the angle at which a trailing edge is so far from neutral, straight across:
// the inverse of mixcore.ChordTravel.
func degreesOf(p *mixcore.Part, mm float64) (float64, error) {
	if p.Chord <= 0 {
		return 0, fmt.Errorf("the airframe file does not say the chord of the %s (chord_mm): measure degrees", p.Name)
	}
	half := mm / (2 * float64(p.Chord))
	if half > 1 {
		return 0, fmt.Errorf("a trailing edge with a chord of %s cannot go %s away", wording.Length(p.Chord), wording.Length(mixcore.Millimetres(mm)))
	}
	return 2 * math.Asin(half) * 180 / math.Pi, nil
}

// placeOf is where a Measured event says that a part is.
func (w *Walk) placeOf(part int, e *Event) (float64, error) {
	p := &w.Model.Setup.Parts[part]
	if !p.Motion.Hinged() {
		if e.Percent == nil || !(*e.Percent >= 0 && *e.Percent <= 100) {
			return 0, fmt.Errorf("it measures the %s, and gives no percent", e.Part)
		}
		return *e.Percent, nil
	}
	if e.Degrees == nil || !(*e.Degrees >= 0 && *e.Degrees <= widest) {
		return 0, fmt.Errorf("it measures the %s, and gives no angle", e.Part)
	}
	switch {
	case *e.Degrees == 0:
		return 0, nil
	case e.Way == wording.Direction(p.Motion, true):
		return *e.Degrees, nil
	case e.Way == wording.Direction(p.Motion, false):
		return -*e.Degrees, nil
	}
	return 0, errors.New("it gives an angle without a way")
}

// Of a surface whose stops are not known, a reading is asked about again from so much beyond
// the furthest of the walk on. A modelling choice, no source.
const (
	beyondTimes                 = 1.5
	beyond      mixcore.Degrees = 10
)

// reach is the furthest that a surface can be one way, in degrees, as far as is known; stop
// is whether that is its stop.
func (w *Walk) reach(part int, plus bool) (furthest float64, stop bool) {
	stops := w.Model.Setup.Parts[part].Stops
	at, sign := stops.Minus, -1.0
	if plus {
		at, sign = stops.Plus, 1
	}
	if !math.IsInf(float64(at), 0) {
		return float64(at), true
	}
	for i := range w.Steps {
		for k := range w.Steps[i].Expect {
			if e := &w.Steps[i].Expect[k]; e.Part == part {
				furthest = max(furthest, math.Abs(e.Move.From), math.Abs(e.Move.To), sign*e.Move.To)
			}
		}
	}
	return furthest*beyondTimes + float64(beyond), false
}

// doubted asks about a reading again: one that is beyond what the surface can do, or that is
// how far it moves and not where it is. Empty where there is nothing to ask.
func (w *Walk) doubted(s *Step, e *Expect, m *told) string {
	p := &w.Model.Setup.Parts[e.Part]
	at, err := w.placeOf(e.Part, &m.Event)
	if err != nil || m.Sure || !p.Motion.Hinged() {
		return ""
	}
	accuracy := accuracyOf(w.Look, p)
	here := w.placeWords(e.Part, at)
	switch furthest, stop := w.reach(e.Part, at > 0); {
	case math.Abs(at) >= furthest+accuracy && stop:
		return fmt.Sprintf("%s is beyond the stop of the %s, %s as the airframe file says; if it is so, write \"sure\" behind it", here, p.Name, wording.Angle(mixcore.Degrees(furthest)))
	case math.Abs(at) >= furthest+accuracy:
		return fmt.Sprintf("%s is far beyond what the %s does in this walk; if it is so, write \"sure\" behind it", here, p.Name)
	}
	by := e.Move.By()
	if !m.Before && m.Servo == 0 && e.Moves && !s.Stands() && math.Abs(e.Move.From) >= accuracy && math.Abs(at-by) < accuracy && math.Abs(at-e.Move.To) >= accuracy {
		return fmt.Sprintf("that is by how much the %s should move; measured is where it is then, from neutral. If it is %s there, write \"from neutral\" behind it", p.Name, here)
	}
	return ""
}

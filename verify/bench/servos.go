package bench

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/fit"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// together is what was measured of a surface that several servos move with all of them on,
// beside what is computed there; nil where it was measured nowhere. The surface stands where the servos
// agree on, so that which of them is off is not told: the mean of any two sets of linkages
// may be the same. Where all are written alike it says what the same change of all would be,
// and nothing is offered before each was measured alone.
func (w *Walk) together(steps []stepState, part int, outputs func() [][2]mixcore.Percent) *result.BenchFit {
	points := w.measurements(steps, part, 0)
	if len(points) == 0 {
		return nil
	}
	p := &w.Model.Setup.Parts[part]
	f := &result.BenchFit{Part: p.Name, Kind: "measured", Place: placeOf(where.Drive(w.Model, part, 0, "measured"))}
	if p.Drives[0].Linkage != nil {
		f.Kind, f.Place = "linkage", placeOf(where.Drive(w.Model, part, 0, "linkage"))
	}
	off := residuals(points)
	for i, m := range points {
		by := off[i]
		f.Points = append(f.Points, result.FitPoint{
			Output: shownOutput(m.Output), Measured: w.placeWords(part, float64(m.Angle)),
			Before: round(math.Abs(by)), After: round(math.Abs(by)),
		})
	}
	f.Before = round(fit.RMS(off))
	f.After = f.Before
	left := w.notAlone(steps, part)
	switch {
	case f.Before < worthFrom && len(left) == 0:
		f.Note = "what is written fits as well as can be told."
	case f.Before < worthFrom:
		f.Note = "what is written fits as well as can be told. Whether its servos pull against each other is told by each of them alone only."
	case len(left) == 0:
		f.Note = "it says nothing that each servo alone does not: see there."
	default:
		f.Note = fmt.Sprintf("nothing is offered: %d servos move it, and where it stands does not tell which of them is off.%s "+
			"Take the pushrods off but one, see that the others do not pull against it, and measure it so: \"%s servo %d 12 up\" is where servo %d alone holds it. Not yet measured alone: %s.",
			len(p.Drives), w.alikeNote(part, points, outputs), p.Name, left[0], left[0], numbered(left))
	}
	return f
}

// against says that servos of a part, each measured alone, pull against each other; else it
// is empty.
func (w *Walk) against(steps []stepState, part int) string {
	apart, two, ok := w.apart(steps, part)
	if !ok || apart <= float64(mixcore.FightSpread) {
		return ""
	}
	return fmt.Sprintf("Servos %d and %d, each alone, hold it up to %s apart: together they pull against each other.", two[0], two[1], wording.Angle(mixcore.Degrees(apart)))
}

// notAlone are the numbers of a part's servos with which alone it was measured nowhere.
func (w *Walk) notAlone(steps []stepState, part int) (list []int) {
	for servo := 1; servo <= w.servos(part); servo++ {
		if len(w.measurements(steps, part, servo)) == 0 {
			list = append(list, servo)
		}
	}
	return list
}

func numbered(servos []int) string {
	var list []string
	for _, n := range servos {
		list = append(list, fmt.Sprintf("servo %d", n))
	}
	return strings.Join(list, ", ")
}

// alikeNote is what the same change of all servos would be, where they are written alike and
// one fits better than what is written; else it is empty.
func (w *Walk) alikeNote(part int, points []measurement, outputs func() [][2]mixcore.Percent) string {
	if !w.alike(part) {
		return ""
	}
	f, _ := w.fit(servo{part, 0, 0}, points, outputs)
	if f == nil || !f.Offered {
		return ""
	}
	var list []string
	for _, c := range f.Changes {
		list = append(list, fmt.Sprintf("%s: %s instead of %s", c.Key, c.Is, c.Was))
	}
	return fmt.Sprintf(" If all of them are, and alike, then %s would be off by %s° only.", strings.Join(list, ", "), trimmed(f.After))
}

// sameAngle is how far the servos of one surface may ask for different angles, in degrees,
// and still do the same.
const sameAngle = 0.1

// alike says whether all servos of a part are written with the same linkage, or the same
// measured table, and ask for the same angle at every step of the walk.
func (w *Walk) alike(part int) bool {
	drives := w.Model.Setup.Parts[part].Drives
	for i := range drives {
		if a, b := &drives[0], &drives[i]; !sameDrive(a, b) {
			return false
		}
	}
	for i := range w.Steps {
		for _, in := range []*mixcore.Input{&w.Steps[i].From, &w.Steps[i].To} {
			first := w.byOne(part, 0, in)
			for d := range drives {
				if math.Abs(w.byOne(part, d, in)-first) > sameAngle {
					return false
				}
			}
		}
	}
	return true
}

// sameDrive says whether two servos do the same, as far as it is written, whichever way plus
// swings them.
func sameDrive(a, b *mixcore.Drive) bool {
	if a.Linkage == nil || b.Linkage == nil {
		return a.Linkage == nil && b.Linkage == nil && slices.Equal(a.Table, b.Table)
	}
	return *a.Linkage == *b.Linkage && a.Sign == b.Sign && a.Servo.Swing == b.Servo.Swing && a.Servo.Max == b.Servo.Max
}

// measurement is one place that was measured of a surface, with what is computed there.
type measurement struct {
	fit.Point
	computed mixcore.Degrees
}

func pointsOf(list []measurement) (points []fit.Point) {
	for _, m := range list {
		points = append(points, m.Point)
	}
	return points
}

// residuals are by how much measurements are off what is computed.
func residuals(list []measurement) (off []float64) {
	for _, m := range list {
		off = append(off, float64(m.computed)-float64(m.Angle))
	}
	return off
}

// shownOutput is an output as it is shown, to 0.1 %.
func shownOutput(x mixcore.Percent) float64 { return math.Round(float64(x)*10)/10 + 0 }

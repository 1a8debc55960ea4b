package bench

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/fit"
	"example.com/hingeline/verify/result"
)

// severalServos is what was measured of a surface that several servos move, beside what is
// computed there. Where it stands does not tell which of them is off, so nothing is offered.
func (w *Walk) severalServos(part int, points []measurement) result.BenchFit {
	p := &w.Model.Setup.Parts[part]
	f := result.BenchFit{Part: p.Name, Kind: "measured", Place: placeOf(where.Drive(w.Model, part, 0, "measured"))}
	if p.Drives[0].Linkage != nil {
		f.Kind, f.Place = "linkage", placeOf(where.Drive(w.Model, part, 0, "linkage"))
	}
	off := offOf(points)
	for i, m := range points {
		by := off[i]
		f.Points = append(f.Points, result.FitPoint{
			Output: shownOutput(m.Output), Measured: w.placeWords(part, float64(m.Angle)),
			Before: round(math.Abs(by)), After: round(math.Abs(by)),
		})
	}
	f.Before = round(fit.RMS(off))
	f.After = f.Before
	f.Note = "what is written fits as well as can be told."
	if f.Before >= worthFrom {
		f.Note = fmt.Sprintf("nothing is offered: %d servos move it, and where it stands does not tell which of them is off. "+
			"Take the pushrods off but one, see that the others do not pull against it, and compare one servo after the other.", len(p.Drives))
	}
	return f
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

// offOf is by how much each place is off as written: computed less measured.
func offOf(list []measurement) (off []float64) {
	for _, m := range list {
		off = append(off, float64(m.computed)-float64(m.Angle))
	}
	return off
}

// shownOutput is an output as it is shown, to 0.1 %.
func shownOutput(x mixcore.Percent) float64 { return math.Round(float64(x)*10)/10 + 0 }

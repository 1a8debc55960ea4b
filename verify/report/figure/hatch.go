package figure

import (
	"math"
	"slices"
)

// Distance between the lines of a hatching and how thick they are, in millimetres.
const (
	HatchSpacing = 0.9
	HatchWidth   = 0.22
)

// Hatch is the lines of a hatched pattern inside a closed path, so that every renderer
// hatches alike. It is nil for the other patterns.
func Hatch(points []Point, pattern Pattern) [][2]Point {
	// Turned by 45° the lines run along u, at every multiple of the spacing of v.
	var turn float64
	switch pattern {
	case Rising:
		turn = math.Sqrt2 / 2
	case Falling:
		turn = -math.Sqrt2 / 2
	default:
		return nil
	}
	turned := make([]Point, len(points))
	low, high := math.Inf(1), math.Inf(-1)
	for i, p := range points {
		turned[i] = Point{(p.X)*math.Sqrt2/2 - p.Y*turn, p.X*turn + p.Y*math.Sqrt2/2}
		low, high = min(low, turned[i].Y), max(high, turned[i].Y)
	}
	if !(high-low < mostHatched) {
		return nil
	}
	var lines [][2]Point
	for n := math.Ceil(low / HatchSpacing); n*HatchSpacing < high; n++ {
		v := n * HatchSpacing
		var cuts []float64
		for i, a := range turned {
			b := turned[(i+1)%len(turned)]
			if (a.Y <= v) != (b.Y <= v) {
				cuts = append(cuts, a.X+(b.X-a.X)*(v-a.Y)/(b.Y-a.Y))
			}
		}
		slices.Sort(cuts)
		for i := 0; i+1 < len(cuts); i += 2 {
			from, to := back(cuts[i], v, turn), back(cuts[i+1], v, turn)
			lines = append(lines, [2]Point{from, to})
		}
	}
	return lines
}

// mostHatched is how far, in millimetres, a hatched shape may reach: more than any sheet.
const mostHatched = 5000

// back turns a place of the hatching's own axes to those of the paper.
func back(u, v, turn float64) Point {
	return Point{u*math.Sqrt2/2 + v*turn, -u*turn + v*math.Sqrt2/2}
}

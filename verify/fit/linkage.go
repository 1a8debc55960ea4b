package fit

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

// Point is one measurement of a surface.
type Point struct {
	Output mixcore.Percent // of its channel
	Angle  mixcore.Degrees // with mixcore's sign
}

// leastPoints is how many different outputs must have been measured.
const leastPoints = 3

// sameOutput is how close two outputs are that count as one, in percent.
const sameOutput = 0.5

// How closely values are written into a file: what a ruler tells.
const (
	lengthTo = 0.01 // mm
	angleTo  = 0.1  // degrees
)

// Why nothing was fitted.
var (
	ErrFewPoints = errors.New("fewer than three different outputs of the channel were measured")
	ErrOtherWay  = errors.New("it goes the other way than written, which is a mistake and not a size")
	ErrStill     = errors.New("it hardly moves where it should, which is a mistake and not a size")
	ErrNoFit     = errors.New("no arm, lean and pushrod near those that are written move it so, short of where it locks")
	ErrTooClose  = errors.New("what was measured lies too close together to tell how far it goes in all: measure nearer to full travel, both ways")
)

// ScatteredError is that readings do not lie on what any linkage or table does: one of them
// is misread, or something gives.
type ScatteredError struct {
	Named  bool            // one of them stands out
	Output mixcore.Percent // where that was read
	Off    float64         // from the others, degrees
}

func (e *ScatteredError) Error() string {
	which := "measure again"
	if e.Named {
		which = fmt.Sprintf("the one at %.4g %% of the channel is %.1f° off the others: measure that again", math.Round(float64(e.Output)*10)/10+0, e.Off)
	}
	return "the readings do not go together to half a degree: " + which + ", and see that nothing gives"
}

// Fitted is a linkage that fits measurements.
type Fitted struct {
	Geometry linkage.Geometry // values as they are written into a file
	Exact    linkage.Geometry // the minimum itself
	Pushrod  bool             // its length was fitted too, for the surface does not rest where it should
	Sum      float64          // of squares of what is left at the minimum, all readings, degrees²
	Before   []float64        // computed less measured as written, by point of Merged, degrees
	After    []float64        // and with Geometry
	Ratio    float64          // arm to horn

	// How well it is told: in 19 of 20 fits from readings that are up to half a degree off
	// the value lies within twice this. Never NaN.
	RatioOff   float64
	ArmOff     float64 // of the arm's angle, degrees
	PushrodOff float64 // of its length, mm; 0 where it was not fitted
	TravelOff  float64 // of where the surface is anywhere in its travel, degrees
	Horn       Horn
}

// Root mean square of what is left over.
func RMS(list []float64) float64 {
	sum := 0.0
	for _, x := range list {
		sum += x * x
	}
	return math.Sqrt(sum / float64(max(len(list), 1)))
}

// When a surface counts as one that does not move: from one end of what was measured to
// the other it goes less than the first, and should go more than the second, in degrees.
const (
	hardlyMoves = 1.0
	surelyMoves = 3.0
)

// surelyLess is by how many variances of a reading the sum of squares must fall for one more
// value to be fitted: noise alone does so once in a thousand fits.
const surelyLess = 10.8

// restsLeast is how far off neutral a surface must rest, in degrees, for the pushrod to be
// taken into a fit of a linkage that is written without one.
const restsLeast = 0.5

// How well it must be told where the surface is in its travel, in degrees, and the ratio of
// arm to horn, as a part: told less well, what is written may be better where nothing was
// measured.
const (
	mostTravelOff = 1.5
	mostRatioOff  = 0.1
)

// Linkage fits the arm, its lean, where the surface rests elsewhere than written the
// pushrod, and where readings tell it the horn's lean, of one servo that alone moves a
// surface. Points at which the surface stands at
// its stop are to be left out before. The error says in words why there is no fit; one
// that is no variable of this package is a *ScatteredError or a *HornOrSwingError.
//
// The channel puts out low to high, in percent: where the surface is must be told all the way.
func Linkage(d *mixcore.Drive, points []Point, low, high mixcore.Percent) (*Fitted, error) {
	merged := Merged(points)
	if len(merged) < leastPoints {
		return nil, ErrFewPoints
	}
	p := problem{drive: d, points: inOrder(points)}
	if err := p.mistaken(merged); err != nil {
		return nil, err
	}
	best, err := p.chosen(func(rod bool) (minimal, error) { return p.freeing(rod, false).minimum() })
	if err != nil {
		return nil, err
	}
	first, last := merged[0].Output, merged[len(merged)-1].Output
	low, high = min(low, first), max(high, last)
	horn := best.hornOf(low, high)
	switch {
	case horn.err != nil:
		return nil, horn.err
	case horn.fitted != nil:
		best = *horn.fitted
	}
	told, err := best.tells(low, high)
	if err != nil {
		return nil, err
	}
	f := &Fitted{
		Geometry: best.geometry, Exact: best.geometry, Pushrod: best.of.rod, Sum: best.sum, Ratio: best.geometry.Arm / best.geometry.Horn,
		RatioOff: told.ratio / 2, ArmOff: told.lean / 2, PushrodOff: told.rod / 2, TravelOff: told.travel / 2, Horn: horn.Horn,
	}
	g := &f.Geometry
	g.Arm, g.ArmDeg = to(g.Arm, lengthTo), to(g.ArmDeg, angleTo)
	if best.of.horn {
		g.HornDeg = to(g.HornDeg, angleTo)
	}
	if best.of.rod {
		g.Pushrod = to(g.Pushrod, lengthTo)
	}
	each := problem{drive: d, points: merged}
	var before, after bool
	f.Before, before = each.residuals(*d.Linkage)
	f.After, after = each.residuals(*g)
	if !before || !after {
		return nil, ErrNoFit
	}
	return f, nil
}

// tells is how well a minimum is told, where that is well enough.
func (m *minimal) tells(low, high mixcore.Percent) (told, error) {
	t, err := m.told(low, high)
	if err == nil && (t.travel > mostTravelOff || t.ratio > mostRatioOff*m.geometry.Arm/m.geometry.Horn) {
		err = ErrTooClose
	}
	return t, err
}

// chosen is the minimum with the pushrod, where that is written or clearly another, or
// without; search finds each.
func (p *problem) chosen(search func(rod bool) (minimal, error)) (minimal, error) {
	with, withErr := search(true)
	if p.drive.Linkage.Pushrod > 0 {
		return with, withErr
	}
	without, err := search(false)
	if withErr == nil && restsOff(with.geometry) && (err != nil || without.sum-with.sum >= surelyLess*readingVariance) {
		return with, nil
	}
	return without, err
}

func restsOff(g linkage.Geometry) bool {
	l, err := linkage.New(g)
	return err == nil && math.Abs(l.NeutralSwing()) >= restsLeast
}

// mistaken says whether the surface goes against what is written, or stays, from one end
// of what was measured to the other.
func (p *problem) mistaken(merged []Point) error {
	l, err := linkage.New(*p.drive.Linkage)
	if err != nil {
		return ErrNoFit
	}
	first, last := merged[0], merged[len(merged)-1]
	a, _ := p.angle(l, first.Output)
	b, _ := p.angle(l, last.Output)
	return mistaken(b-a, float64(last.Angle-first.Angle))
}

// mistaken says whether a surface that should go so far goes the other way or stays.
func mistaken(should, does float64) error {
	switch {
	case math.Abs(does) < hardlyMoves && math.Abs(should) > surelyMoves:
		return ErrStill
	case should*does < 0 && math.Abs(does) >= hardlyMoves:
		return ErrOtherWay
	}
	return nil
}

func inOrder(points []Point) []Point {
	sorted := slices.Clone(points)
	slices.SortStableFunc(sorted, func(a, b Point) int { return cmp.Compare(a.Output, b.Output) })
	return sorted
}

// Merged takes the mean of what was measured at one output, in order of outputs.
func Merged(points []Point) (list []Point) {
	sorted := inOrder(points)
	for len(sorted) > 0 {
		n, at, sum := 0, 0.0, 0.0
		for n < len(sorted) && sorted[n].Output-sorted[0].Output < sameOutput {
			at += float64(sorted[n].Output)
			sum += float64(sorted[n].Angle)
			n++
		}
		list = append(list, Point{mixcore.Percent(at / float64(n)), mixcore.Degrees(sum / float64(n))})
		sorted = sorted[n:]
	}
	return list
}

func to(x, step float64) float64 { return math.Round(x/step) * step }

package mixcore_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
	"example.com/hingeline/mixcore/linkage"
	"pgregory.net/rapid"
)

// driven is a set-up of one part with one drive, drawn: by a table or by a linkage, which
// may be held by the servo's maximum.
func driven(t *rapid.T) *mixcore.Plan {
	d := rapid.Custom(drive).Filter(func(d mixcore.Drive) bool { return compileDriven(d) != nil }).Draw(t, "drive")
	return compileDriven(d)
}

// compileDriven is nil for a drive that cannot take all that its channel puts out.
func compileDriven(d mixcore.Drive) *mixcore.Plan {
	p, _ := mixcore.Compile(oneChannel(func(s *mixcore.Setup) { s.Parts[0].Drives = []mixcore.Drive{d} }))
	return p
}

func drive(t *rapid.T) mixcore.Drive {
	d := mixcore.Drive{Channel: 0}
	if rapid.Bool().Draw(t, "table") {
		y := setting(t, -60, 0, "y")
		sign := rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign")
		pieces := rapid.IntRange(1, 5).Draw(t, "pieces")
		for i := range pieces + 1 {
			d.Table = append(d.Table, mixcore.Point{X: -100 + 200*float64(i)/float64(pieces), Y: sign * y})
			y += setting(t, 0, 30, "rise")
		}
	} else {
		d.Linkage = &linkage.Geometry{Arm: setting(t, 5, 15, "arm"), Horn: setting(t, 8, 30, "horn"), Pivots: setting(t, 30, 120, "pivots"),
			ArmDeg: setting(t, 60, 120, "arm angle"), HornDeg: setting(t, 60, 120, "horn angle"), Offset: setting(t, -9, 9, "offset"),
			Crossed: rapid.Bool().Draw(t, "crossed")}
		d.Sign = rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign")
		d.Servo = mixcore.Servo{Swing: mixcore.Degrees(setting(t, 10, 60, "swing")), Max: mixcore.Degrees(math.Inf(1)), PlusAft: rapid.Bool().Draw(t, "aft")}
		if rapid.Bool().Draw(t, "held") {
			d.Servo.Max = mixcore.Degrees(setting(t, 5, 50, "most"))
		}
	}
	return d
}

// How much a drive turns its part, over any stretch of output.
func TestDriveSlopeHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := driven(t)
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		for range 60 {
			at := stretch(random, -100, 100)
			slope, accuracy := p.DriveSlope(0, 0, at), p.DriveAccuracy(0, 0, at)
			if !(slope.Low <= slope.High && accuracy > 0 && accuracy <= 1e-5) {
				t.Fatalf("over %v: slope %v, accuracy %v", at, slope, accuracy)
			}
			for range 10 {
				x, y := inside(random, at), inside(random, at)
				rise := float64(p.DriveAngle(0, 0, mixcore.Percent(y)) - p.DriveAngle(0, 0, mixcore.Percent(x)))
				if want := slope.Mul(interval.Point(y).Sub(interval.Point(x))).Widen(2 * accuracy); !want.Contains(rise) {
					t.Fatalf("from %v to %v in %v: turns by %v, want within %v by a slope of %v", x, y, at, rise, want, slope)
				}
			}
		}
	})
}

func TestDriveSlopeByHand(t *testing.T) {
	table := mixcore.Drive{Table: []mixcore.Point{{X: -100, Y: -30}, {X: -10, Y: 0}, {X: 10, Y: 0}, {X: 100, Y: 45}}}
	// A parallelogram carries the arm's swing over as it is: 45° for 100 %.
	parallel := mixcore.Drive{Sign: -1, Linkage: &linkage.Geometry{Arm: 12, Horn: 12, Pivots: 60, ArmDeg: 90, HornDeg: 90},
		Servo: mixcore.Servo{Swing: 45, Max: 30, PlusAft: true}}
	for _, c := range []struct {
		name      string
		drive     mixcore.Drive
		at        interval.Range
		low, high float64
	}{
		{"on one piece", table, interval.Range{Low: 20, High: 90}, 0.5, 0.5},
		{"on the flat piece", table, interval.Range{Low: -5, High: 5}, 0, 0},
		{"over two pieces", table, interval.Range{Low: -50, High: 0}, 0, 1.0 / 3},
		{"over all", table, interval.Range{Low: -100, High: 100}, 0, 0.5},
		{"a parallelogram, turned about", parallel, interval.Range{Low: 3, High: 4}, -0.45, -0.45},
		{"beyond the servo's maximum", parallel, interval.Range{Low: 66.6, High: 66.7}, -0.45, 0},
	} {
		p := mustCompile(t, oneChannel(func(s *mixcore.Setup) { s.Parts[0].Drives = []mixcore.Drive{c.drive} }))
		got := p.DriveSlope(0, 0, c.at)
		near(t, c.name+", least", got.Low, c.low, 0.01)
		near(t, c.name+", greatest", got.High, c.high, 0.01)
		if got.Low > c.low || got.High < c.high {
			t.Errorf("%s: got %v, want %v to %v in it", c.name, got, c.low, c.high)
		}
	}
}

package figure_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// lines are the two-point lines with an ink and a dash, in the order they were drawn.
func lines(d figure.Drawing, ink figure.Ink, dash figure.Dash) [][]figure.Point {
	var list [][]figure.Point
	for _, item := range d.Items {
		if p, ok := item.(figure.Path); ok && !p.Closed && len(p.Points) == 2 && p.Stroke.Ink == ink && p.Stroke.Dash == dash {
			list = append(list, p.Points)
		}
	}
	return list
}

func bearing(l []figure.Point) float64 {
	return math.Atan2(l[1].Y-l[0].Y, l[1].X-l[0].X) * 180 / math.Pi
}

func TestWantedStretchHasItsEndsAtTrueAngles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-80, 80).Draw(t, "low")
		w := &result.Want{Low: low, High: low + rapid.Float64Range(0, 60).Draw(t, "wide")}
		w.LowOpen, w.HighOpen = rapid.Bool().Draw(t, "low open"), rapid.Bool().Draw(t, "high open")
		o := result.Outline{Name: "flap", Kind: "flap", Motion: result.UpDown, Chord: 40, Most: 90}
		var want []float64
		if !w.LowOpen {
			want = append(want, w.Low)
		}
		if !w.HighOpen {
			want = append(want, w.High)
		}
		got := lines(figure.Section(&o, &result.Stand{}, w, ""), figure.Good, figure.Dotted)
		if len(got) != len(want) {
			t.Fatalf("%d ends are drawn, want %d", len(got), len(want))
		}
		for i := range got {
			if a := bearing(got[i]); math.Abs(math.Remainder(a-want[i], 360)) > angleTolerance {
				t.Fatalf("an end of %g° is drawn at %g°", want[i], a)
			}
		}
	})
}

// texts are the words of a drawing.
func texts(d figure.Drawing) []string {
	var list []string
	for _, item := range d.Items {
		if text, ok := item.(figure.Text); ok {
			list = append(list, text.Words)
		}
	}
	return list
}

func TestWantedGotIsAtOneScaleWithItsMark(t *testing.T) {
	paper := sample.Paper()
	p := &paper.Pictures[2]
	d := figure.WantedGot(&paper.Shape.Parts[4], &p.Stands[4], p.Want, "")
	words := texts(d)
	for _, want := range []string{"wanted", "got", "UP 14° ± 1°", "DOWN 14.2° (10 mm)"} {
		if !slices.Contains(words, want) {
			t.Errorf("%q is not among %q", want, words)
		}
	}
	neutral := lines(d, figure.Grey, figure.Dashed)
	if len(neutral) != 2 {
		t.Fatalf("%d neutral lines, want 2", len(neutral))
	}
	left, right := neutral[0], neutral[1]
	if a, b := left[1].X-left[0].X, right[1].X-right[0].X; math.Abs(a-b) > slack || math.Abs(left[0].Y-right[0].Y) > slack {
		t.Errorf("the neutral lines are %v and %v: not at one scale and height", left, right)
	}
	if cross := lines(d, figure.Bad, figure.Whole); len(cross) != 2 || cross[0][0].X < d.Width/2 {
		t.Errorf("no cross at what was got: %v", cross)
	}
	if one := figure.WantedGot(&paper.Shape.Parts[4], &p.Stands[4], nil, ""); slices.Contains(texts(one), "wanted") {
		t.Error("where no place is wanted, one is drawn")
	}
}

func TestLinkageIsToScale(t *testing.T) {
	paper := sample.Paper()
	for _, seen := range []struct {
		from string
		down float64 // how Y of the model runs on paper
	}{{"from the side, nose left", -1}, {"from above, nose left", 1}} {
		l := paper.Linkages[0]
		l.Seen = seen.from
		d := figure.Linkage(&l, "")
		// Of each end of the travel: arm, horn, pushrod, in whole black lines.
		rods := lines(d, figure.Black, figure.Whole)
		if len(rods) != 6 {
			t.Fatalf("%d rods, want 6", len(rods))
		}
		scale := 0.0
		for i, end := range l.Stands[1:] {
			for j, want := range [][2][2]float64{{end.Shaft, end.Arm}, {end.Hinge, end.Horn}, {end.Arm, end.Horn}} {
				got := rods[3*i+j]
				x, y := want[1][0]-want[0][0], (want[1][1]-want[0][1])*seen.down
				if scale == 0 {
					scale = math.Hypot(got[1].X-got[0].X, got[1].Y-got[0].Y) / math.Hypot(x, y)
				}
				if math.Abs(got[1].X-got[0].X-x*scale) > slack || math.Abs(got[1].Y-got[0].Y-y*scale) > slack {
					t.Errorf("%s: end %d, rod %d goes from %v to %v, want %g and %g on", seen.from, i, j, got[0], got[1], x*scale, y*scale)
				}
			}
		}
		for _, end := range l.Stands {
			if !strings.Contains(strings.ToLower(d.Description), strings.ToLower(end.Says)) {
				t.Errorf("%q is not described", end.Says)
			}
		}
	}
}

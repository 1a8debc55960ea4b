package figure_test

import (
	"math"
	"strings"
	"testing"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// Every number of a model is made no number once; then it is said that there is no
// picture, and of what, and none is drawn.
func TestWhatIsNoNumberIsNotDrawn(t *testing.T) {
	spoil := map[string]func(s *result.Shape, p *result.Picture, bad float64){
		"semispan":  func(s *result.Shape, _ *result.Picture, bad float64) { s.Semispan = bad },
		"root":      func(s *result.Shape, _ *result.Picture, bad float64) { s.Chords[0] = bad },
		"tip":       func(s *result.Shape, _ *result.Picture, bad float64) { s.Chords[1] = bad },
		"inner out": func(s *result.Shape, _ *result.Picture, bad float64) { s.Parts[1].Inner.Out = bad },
		"inner aft": func(s *result.Shape, _ *result.Picture, bad float64) { s.Parts[1].Inner.Aft = bad },
		"inner up":  func(s *result.Shape, _ *result.Picture, bad float64) { s.Parts[1].Inner.Up = bad },
		"outer out": func(s *result.Shape, _ *result.Picture, bad float64) { s.Parts[1].Outer.Out = bad },
		"outer aft": func(s *result.Shape, _ *result.Picture, bad float64) { s.Parts[1].Outer.Aft = bad },
		"outer up":  func(s *result.Shape, _ *result.Picture, bad float64) { s.Parts[1].Outer.Up = bad },
		"chord":     func(s *result.Shape, _ *result.Picture, bad float64) { s.Parts[1].Chord = bad },
		"tilt":      func(s *result.Shape, _ *result.Picture, bad float64) { s.Parts[1].Tilt = bad },
		"most":      func(s *result.Shape, _ *result.Picture, bad float64) { s.Parts[1].Most = bad },
		"from":      func(_ *result.Shape, p *result.Picture, bad float64) { p.Stands[1].From = bad },
		"at":        func(_ *result.Shape, p *result.Picture, bad float64) { p.Stands[1].At = bad },
		"low":       func(_ *result.Shape, p *result.Picture, bad float64) { p.Want.Low = bad },
		"high":      func(_ *result.Shape, p *result.Picture, bad float64) { p.Want.High, p.Want.HighOpen = bad, false },
	}
	ofSurface := []string{"inner", "outer", "chord", "tilt", "most", "from", "at", "low", "high"}
	for name, change := range spoil {
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e9} {
			paper := sample.Paper()
			s, p := &paper.Shape, &paper.Pictures[1]
			change(s, p, bad)
			var drawn []figure.Drawing
			if name != "low" && name != "high" {
				drawn = append(drawn, figure.Behind(s, p, ""), figure.Plan(s, p, ""))
			}
			for _, word := range ofSurface {
				if strings.HasPrefix(name, word) {
					drawn = append(drawn, figure.Section(&s.Parts[1], &p.Stands[1], p.Want, ""), figure.WantedGot(&s.Parts[1], &p.Stands[1], p.Want, ""))
				}
			}
			for _, d := range drawn {
				if !strings.HasPrefix(d.Description, "Cannot be drawn: ") {
					t.Errorf("%s of %g is drawn: %s", name, bad, d.Description)
				}
				written(t, &d, "a")
			}
		}
	}
}

func TestPictureOfAnotherModelIsNotDrawn(t *testing.T) {
	paper := sample.Paper()
	short := paper.Pictures[1]
	short.Stands = short.Stands[1:]
	wild := paper.Pictures[1]
	wild.Of = []int{len(wild.Stands)}
	for _, p := range []result.Picture{short, wild} {
		if d := figure.Behind(&paper.Shape, &p, ""); !strings.HasPrefix(d.Description, "Cannot be drawn: ") {
			t.Errorf("drawn: %s", d.Description)
		}
	}
}

func TestLinkageOfNoNumberIsNotDrawn(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(-1)} {
		paper := sample.Paper()
		l := paper.Linkages[0]
		l.Stands[1].Horn[1] = bad
		if d := figure.Linkage(&l, ""); !strings.HasPrefix(d.Description, "Cannot be drawn: ") {
			t.Errorf("drawn: %s", d.Description)
		}
	}
	if d := figure.Linkage(&result.Linkage{Part: "elevator"}, ""); !strings.HasPrefix(d.Description, "Cannot be drawn: ") {
		t.Errorf("drawn: %s", d.Description)
	}
}

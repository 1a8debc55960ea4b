package figure_test

import (
	"strings"
	"testing"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

// Every way has its symbol and its hatching in the legend.
func TestLegendHasEverySign(t *testing.T) {
	d := figure.Legend()
	words := strings.Join(texts(d), "; ")
	for _, want := range []string{"UP", "DOWN", "LEFT", "RIGHT", "OUT", "IN", "MORE power", "LESS power", "does not move", "where it was", "the check is about it"} {
		if !strings.Contains(words, want) || !strings.Contains(d.Description, want) {
			t.Errorf("%q is not in %q, or not in %q", want, words, d.Description)
		}
	}
	patterns := map[figure.Pattern]bool{}
	for _, item := range d.Items {
		if p, ok := item.(figure.Path); ok && p.Closed {
			patterns[p.Fill.Pattern] = true
		}
	}
	if !patterns[figure.Rising] || !patterns[figure.Falling] {
		t.Errorf("patterns %v", patterns)
	}
}

// A part at neutral that hardly was anywhere else has no arrow, no hatching, and no words
// but those of what the check is about.
func TestNeutralHasNoArrow(t *testing.T) {
	s, p := oneSurface("port", -300, 50, -0.03)
	p.Moves, p.Stands[0] = true, result.Stand{From: 0.1, At: -0.03, Moved: true, Way: "UP", Says: "neutral"}
	for name, d := range map[string]figure.Drawing{
		"behind": figure.Behind(s, p, ""), "plan": figure.Plan(s, p, ""),
		"section": figure.Section(&s.Parts[0], &p.Stands[0], nil, ""), "two": figure.WantedGot(&s.Parts[0], &p.Stands[0], nil, ""),
	} {
		if !strings.Contains(strings.Join(texts(d), "; "), "neutral") {
			t.Errorf("%s: %q", name, texts(d))
		}
		for _, item := range d.Items {
			path, ok := item.(figure.Path)
			if ok && (path.Fill.Pattern == figure.Rising || path.Closed && len(path.Points) == 3 && path.Fill.Ink == figure.Black && path.Fill.Pattern == figure.Solid) {
				t.Errorf("%s: an arrow or a hatching: %+v", name, path)
			}
		}
	}
	p.Of = nil
	if d := figure.Behind(s, p, ""); strings.Contains(strings.Join(texts(d), "; "), "flap") {
		t.Errorf("it is marked: %q", texts(d))
	}
}

// A picture with angles says from where they count.
func TestAnglesSayFromWhere(t *testing.T) {
	paper := sample.Paper()
	for name, d := range map[string]figure.Drawing{
		"behind": figure.Behind(&paper.Shape, &paper.Pictures[1], ""), "plan": figure.Plan(&paper.Shape, &paper.Pictures[1], ""),
		"section": figure.Section(&paper.Shape.Parts[1], &paper.Pictures[1].Stands[1], nil, ""),
	} {
		if !strings.Contains(strings.Join(texts(d), " "), "degrees and mm from neutral") {
			t.Errorf("%s: %q", name, texts(d))
		}
	}
}

// No line to words runs through other words, nor through their numbers.
func TestLeaderLinesKeepOffWords(t *testing.T) {
	r := sample.Crowded()
	drawn := drawings()
	for i := range r.Paper.Pictures {
		p := &r.Paper.Pictures[i]
		drawn["behind"+r.Checks[i].Sentence] = figure.Behind(&r.Paper.Shape, p, "")
		drawn["plan"+r.Checks[i].Sentence] = figure.Plan(&r.Paper.Shape, p, "")
	}
	leaders := 0
	for name, d := range drawn {
		for _, item := range d.Items {
			l, ok := item.(figure.Path)
			if !ok || l.Closed || len(l.Points) != 2 || l.Stroke.Width != figure.LeaderWidth {
				continue
			}
			leaders++
			for _, other := range d.Items {
				text, ok := other.(figure.Text)
				if !ok {
					continue
				}
				// It may touch the words that it leads to.
				if b := text.Box(); figure.Through(l.Points[0], l.Points[1], b, 0.05) {
					t.Errorf("%s: a line from %v to %v runs through %q", name, l.Points[0], l.Points[1], text.Words)
				}
			}
		}
	}
	if leaders < 10 {
		t.Errorf("only %d lines were looked at", leaders)
	}
}

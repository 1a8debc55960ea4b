package figure_test

import (
	"bytes"
	"flag"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

var update = flag.Bool("update", false, "write the golden files anew")

// drawings are those of the samples that are kept as golden files.
func drawings() map[string]figure.Drawing {
	drawn := map[string]figure.Drawing{}
	failing, passing := sample.Failing(), sample.Passing()
	paper, passed := sample.Paper(), sample.PassingPaper()
	crowded := sample.Crowded()
	drawn["behind_roll"] = figure.Behind(&paper.Shape, &paper.Pictures[1], failing.Checks[1].Sentence)
	drawn["behind_elevator"] = figure.Behind(&paper.Shape, &paper.Pictures[2], failing.Checks[2].Sentence)
	drawn["behind_still"] = figure.Behind(&passed.Shape, &passed.Pictures[0], passing.Checks[0].Sentence)
	drawn["behind_crowded"] = figure.Behind(&crowded.Paper.Shape, &crowded.Paper.Pictures[1], crowded.Checks[1].Sentence)
	drawn["plan_roll"] = figure.Plan(&paper.Shape, &paper.Pictures[1], failing.Checks[1].Sentence)
	drawn["plan_elevator"] = figure.Plan(&paper.Shape, &paper.Pictures[2], failing.Checks[2].Sentence)
	drawn["plan_crowded"] = figure.Plan(&crowded.Paper.Shape, &crowded.Paper.Pictures[1], crowded.Checks[1].Sentence)
	flap, elevator, motor := &paper.Shape.Parts[1], &paper.Shape.Parts[4], &paper.Shape.Parts[7]
	drop, dive := &paper.Pictures[1], &paper.Pictures[2]
	drawn["section_flap"] = figure.Section(flap, &drop.Stands[1], drop.Want, failing.Checks[1].Sentence)
	drawn["section_elevator"] = figure.Section(elevator, &dive.Stands[4], dive.Want, failing.Checks[2].Sentence)
	drawn["section_rudder"] = figure.Section(&paper.Shape.Parts[5], &result.Stand{From: 0, At: 22, Moved: true, Says: "trailing edge LEFT 22.0°", Way: "LEFT"}, nil, "the rudder goes left")
	drawn["section_wheel"] = figure.Section(&paper.Shape.Parts[6], &result.Stand{From: 0, At: -15, Moved: true, Says: "RIGHT 15.0°", Way: "RIGHT"}, nil, "the nose wheel turns right")
	drawn["section_motor"] = figure.Section(motor, &result.Stand{At: 40, Says: "power 40 %", Way: "MORE"}, &result.Want{Says: "stopped"}, "the motor is stopped")
	drawn["wanted_got"] = figure.WantedGot(elevator, &dive.Stands[4], dive.Want, failing.Checks[2].Sentence)
	drawn["legend"] = figure.Legend()
	drawn["linkage"] = figure.Linkage(&paper.Linkages[0], "the linkage of the elevator")
	return drawn
}

func TestFigureGolden(t *testing.T) {
	for name, d := range drawings() {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			if err := figure.SVG(&b, &d, figure.SVGOptions{ID: name}); err != nil {
				t.Fatal(err)
			}
			airframestest.Golden(t, filepath.Join("testdata", name+".svg"), b.Bytes(), *update)
		})
	}
}

func TestSamplesHaveAPictureForEveryCheck(t *testing.T) {
	crowded := sample.Crowded()
	for name, pair := range map[string]struct {
		report *result.Report
		paper  *result.Paper
	}{"failing": {sample.Failing(), sample.Paper()}, "passing": {sample.Passing(), sample.PassingPaper()}, "crowded": {crowded, crowded.Paper}} {
		if got, want := len(pair.paper.Pictures), len(pair.report.Checks); got != want {
			t.Errorf("%s: %d pictures, want %d, one for each check", name, got, want)
		}
		for i, p := range pair.paper.Pictures {
			if d := figure.Behind(&pair.paper.Shape, &p, ""); strings.HasPrefix(d.Description, "Cannot") {
				t.Errorf("%s: picture %d: %s", name, i, d.Description)
			}
		}
	}
}

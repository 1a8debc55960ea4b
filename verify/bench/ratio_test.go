package bench_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/verifytest"
)

// measuredWalk answers a walk with a ruler of one part, which is at where, of what is
// computed; the rest is as expected.
func measuredWalk(w *bench.Walk, part int, where func(computed float64) float64) []string {
	p := &w.Model.Setup.Parts[part]
	words := map[mixcore.Motion][2]string{mixcore.UpDown: {"up", "down"}, mixcore.LeftRight: {"right", "left"}}[p.Motion]
	lines := benchtest.Begin()
	for i := range w.Steps {
		for k, e := range w.Steps[i].Expect {
			if e.Part != part {
				continue
			}
			at, way := where(e.Move.To), words[0]
			if at > 0 {
				way = words[1]
			}
			lines = append(lines, fmt.Sprintf("#%d %.1f %s", k+1, math.Abs(at), way))
		}
		lines = append(lines, "y")
	}
	return append(lines, "y")
}

func partOf(m *airframes.Model, name string) int {
	return slices.IndexFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Name == name })
}

// A flap that goes a fifth short everywhere is named as that, not as going the other way,
// and nobody is accused of two mistakes.
func TestFlapThatIsShortEverywhere(t *testing.T) {
	m := load(t, "bracken-20")
	w := bench.NewWalk(m, bench.Shortest(context.Background(), m, sight.Measured, nil), sight.Measured)
	part := partOf(m, "port flap")
	g := walked(t, w, measuredWalk(w, part, func(computed float64) float64 { return 0.8 * computed }))
	r := g.Report(context.Background(), nil)
	if r.Verdict != result.SeenDiffers || r.Causes.Verdict == result.NoCause {
		t.Fatalf("%s, %s", r.Verdict, r.Causes.Verdict)
	}
	if len(r.Ratios) != 1 || r.Ratios[0].Part != "port flap" || r.Ratios[0].Ratio != 0.8 || r.Ratios[0].Places < 2 || r.Ratios[0].OneWay {
		t.Errorf("%+v", r.Ratios)
	}
	short := 0
	for _, s := range r.Steps {
		for _, p := range s.Parts {
			for _, one := range p.Reading {
				if strings.Contains(one.Off, "further") || strings.Contains(one.Off, "other") || one.Off != "" && !strings.HasSuffix(one.Off, "short") {
					t.Errorf("step %d: %q", s.Number, one.Off)
				}
				if one.Off != "" {
					short++
				}
			}
		}
	}
	if short < 2 {
		t.Errorf("%d readings are short", short)
	}
}

// A flap on a longer horn than the file says is measured where it goes as far as it can;
// a corrected file is offered that has it so.
func TestFlapOnALongerHornIsFitted(t *testing.T) {
	m := load(t, "bracken-20")
	source, _ := airframes.ReadShipped("bracken-20")
	const horn = "arm_mm: 12, horn_mm: 13, pivots_mm: 58, arm_deg: 75, horn: below"
	inTheHand := verifytest.Model(t, "hand.yaml", strings.Replace(string(source), horn, strings.Replace(horn, "13", "16", 1), 1))
	w := bench.NewWalk(m, bench.Shortest(context.Background(), m, sight.Measured, nil), sight.Measured)
	same := bench.Chosen{Steps: stepsOf(w), Watch: make([][]int, len(w.Steps))}
	part := partOf(m, "port flap")
	truly := bench.NewWalk(inTheHand, same, sight.Measured)
	where := map[float64]float64{}
	for i := range w.Steps {
		for k, e := range w.Steps[i].Expect {
			if e.Part == part {
				where[e.Move.To] = truly.Steps[i].Expect[k].Move.To
			}
		}
	}
	g := walked(t, w, measuredWalk(w, part, func(computed float64) float64 { return where[computed] }))
	r := g.Report(context.Background(), nil)
	if r.Verdict != result.SeenDiffers || len(r.Fits) != 1 || !r.Fits[0].Offered {
		t.Fatalf("%s: %+v", r.Verdict, r.Fits)
	}
	text, problem := g.Corrected()
	if problem != "" {
		t.Fatal(problem)
	}
	again := bench.NewWalk(verifytest.Model(t, "new.yaml", text), same, sight.Measured)
	for i := range w.Steps {
		for k, e := range w.Steps[i].Expect {
			want := truly.Steps[i].Expect[k].Move.To
			if got := again.Steps[i].Expect[k].Move.To; e.Part == part && math.Abs(got-want) > 0.3 {
				t.Errorf("step %d: the new file has it at %v, the model at %v", i+1, got, want)
			}
		}
	}
}

func stepsOf(w *bench.Walk) (list []sight.Step) {
	for i := range w.Steps {
		list = append(list, w.Steps[i].Step)
	}
	return list
}

// Whatever the part, to half a degree: a surface that was measured at different places is
// named with it, and never where it is as computed, or off by the same angle everywhere.
func TestPartOfWhatIsComputedIsNamed(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Measured, set(0, -100), set(0, -50), set(0, 50), set(0, 100))
	part := partOf(m, "port aileron")
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(0.3, 1.6).Draw(t, "part")
		noise := rapid.Float64Range(-0.4, 0.4)
		lines := measuredWalk(w, part, func(computed float64) float64 { return k*computed + noise.Draw(t, "misread") })
		g := bench.NewGuide(w, &memory{}, at)
		for _, line := range lines {
			if _, err := g.Take(line); err != nil {
				t.Fatal(err)
			}
		}
		got := g.Report(context.Background(), nil).Ratios
		off := math.Abs(k-1) * 22
		switch {
		case off > 2 && (len(got) != 1 || got[0].Part != "port aileron" || math.Abs(got[0].Ratio-k) > 0.05 || got[0].Places < 3 || got[0].OneWay):
			t.Fatalf("%v of what is computed: %+v", k, got)
		case off < 0.5 && len(got) > 0:
			t.Fatalf("%v of what is computed, which no ruler tells: %+v", k, got)
		}
	})
	lines := measuredWalk(w, part, func(computed float64) float64 { return computed + 6 })
	if r := walked(t, w, lines).Report(context.Background(), nil); len(r.Ratios) > 0 {
		t.Errorf("6° off everywhere is no part of what is computed: %+v", r.Ratios)
	}
}

// Short to one side only is told so.
func TestShortToOneSideOnly(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Measured, set(0, -100), set(0, -50), set(0, 50), set(0, 100))
	lines := measuredWalk(w, partOf(m, "port aileron"), func(computed float64) float64 { return math.Min(computed, 0.7*computed) })
	r := walked(t, w, lines).Report(context.Background(), nil)
	if len(r.Ratios) != 1 || !r.Ratios[0].OneWay || !slices.Equal(r.Ratios[0].Ways, []string{"DOWN"}) || r.Ratios[0].Ratio != 0.7 {
		t.Errorf("%+v", r.Ratios)
	}
}

// A place before a movement that is not as computed, and Enter: the way that was expected
// is not taken for seen, so that what was planted is named.
func TestPlaceBeforeAndEnter(t *testing.T) {
	m := sorrelModel(t)
	for _, look := range []sight.Look{sight.Eye, sight.Measured} {
		c := bench.Chosen{How: "by hand", Steps: []sight.Step{{From: m.Plan.Rest(), To: m.Plan.Rest()}, {From: m.Plan.Rest(), To: m.Plan.Rest()}}, Watch: make([][]int, 2)}
		c.Steps[1].From.Position[1] = 100 // pitch back, and let go
		w := bench.NewWalk(m, c, look)
		r := walked(t, w, append(benchtest.Begin(), "y", "elevator before 20 "+oppositeOf(w.Steps[1].Expect, partOf(m, "elevator")), "y", "y")).Report(context.Background(), nil)
		if r.Verdict != result.SeenDiffers || !slices.ContainsFunc(r.Causes.Suspects, func(s result.Suspect) bool {
			const planted = "channel 2 (elevator) is reversed"
			return s.Text == planted || slices.Contains(s.Alike, planted)
		}) {
			t.Errorf("ruler %v: %s, %s, %+v", look.Ruler, r.Verdict, r.Causes.Verdict, r.Causes.Suspects)
		}
	}
}

func oppositeOf(all []bench.Expect, part int) string {
	for _, e := range all {
		if e.Part == part && e.Move.From > 0 {
			return "up"
		}
	}
	return "down"
}

// A motor that ran before a movement, and Enter: the place that was expected is not taken
// for measured, so that the missing motor cut is named with a ruler as without.
func TestMotorThatRanBefore(t *testing.T) {
	m := sorrelModel(t)
	for _, look := range []sight.Look{sight.Eye, sight.Measured} {
		c := bench.Chosen{How: "by hand", Steps: []sight.Step{{From: m.Plan.Rest(), To: m.Plan.Rest()}, {From: m.Plan.Rest(), To: m.Plan.Rest()}}, Watch: make([][]int, 2)}
		c.Steps[1].From.Position[2] = 100 // throttle open with the motor switch safe, and closed
		w := bench.NewWalk(m, c, look)
		r := walked(t, w, append(benchtest.Begin(), "y", "motor before runs", "y", "y")).Report(context.Background(), nil)
		if r.Verdict != result.SeenDiffers || r.Causes.Verdict == result.NoCause || len(r.Causes.Suspects) == 0 {
			t.Errorf("ruler %v: %s, %+v", look.Ruler, r.Verdict, r.Causes)
		}
	}
}

// Where nothing is fitted, what readings are off is that of what is computed.
func TestWhatIsNotFittedIsOff(t *testing.T) {
	m := load(t, "bracken-20")
	few := bench.Usual(context.Background(), m, sight.Eye, nil)
	few.Steps, few.Watch = few.Steps[:2], few.Watch[:2] // each stick alone: not as far as flaps and rates take it
	w := bench.NewWalk(m, few, sight.Measured)
	lines := measuredWalk(w, partOf(m, "port aileron"), func(computed float64) float64 { return 0.8 * computed })
	r := walked(t, w, lines).Report(context.Background(), nil)
	if len(r.Fits) != 1 || r.Fits[0].Offered || r.Fits[0].Before < 0.4 || !strings.Contains(r.Fits[0].Note, "nothing is offered: ") {
		t.Errorf("%+v", r.Fits)
	}
}

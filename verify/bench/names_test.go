package bench_test

import (
	"context"
	"flag"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/result"
)

// oneIn makes the slow test plant one mistake in so many, looked at by eye or with a ruler,
// model by model; .ci/run plants every one and looks both ways.
var oneIn = flag.Int("one-in", 47, "plant one mistake in `N`")

func load(t testing.TB, name string) *airframes.Model {
	t.Helper()
	text, _ := airframes.ReadShipped(name)
	m, problems := airframes.Load(name+".yaml", text)
	if m == nil {
		t.Fatalf("%+v", problems)
	}
	return m
}

// memory is a record in memory.
type memory struct{ lines [][]byte }

func (m *memory) Append(line []byte) error {
	m.lines = append(m.lines, slices.Clone(line))
	return nil
}

func (m *memory) text() []byte { return slices.Concat(m.lines...) }

const noon = "2026-11-25T12:00:00Z"

func at() string { return noon }

// walked goes through a walk with the answers of somebody.
func walked(t testing.TB, w *bench.Walk, lines []string) *bench.Guide {
	t.Helper()
	g := bench.NewGuide(w, &memory{}, at)
	for _, line := range lines {
		if _, err := g.Take(line); err != nil {
			t.Fatal(err)
		}
	}
	if err := g.Stop(); err != nil {
		t.Fatal(err)
	}
	return g
}

// Every mistake of every shipped model, made on the model in the hand and answered for
// honestly, is named by the report, itself or among those that look the same; steps to
// decide are asked for until none tells more; the model as it should be is seen so.
func TestBenchNamesEveryMistake(t *testing.T) {
	for i, name := range airframes.Shipped() {
		looks := []sight.Look{sight.Eye, sight.Measured}
		if *oneIn > 1 {
			looks = looks[i%2:][:1]
		}
		for _, look := range looks {
			t.Run(map[bool]string{false: "eye ", true: "ruler "}[look.Ruler]+name, func(t *testing.T) {
				m, chosen := usual(t, name, look)
				t.Parallel()
				w := bench.NewWalk(m, chosen, look)
				fitsTheTerminal(t, w)
				all := mistake.All(m, mistake.Options{})
				steps := table.New(m, all, append(slices.Clone(chosen.Steps), table.Steps(m)...))
				find := func(step *sight.Step) int {
					return slices.IndexFunc(steps.Steps, func(o sight.Step) bool { return o.From.Key() == step.From.Key() && o.To.Key() == step.To.Key() })
				}
				through := func(plan *mixcore.Plan, late func(*sight.Step, int) bool) *result.Bench {
					hand := benchtest.Modeller{Walk: w, Plan: plan, Late: late}
					g := bench.NewGuide(w, &memory{}, at)
					hand.Through(g)
					return g.Report(context.Background(), nil)
				}
				if r := through(m.Plan, nil); r.Verdict != result.SeenAsExpected || r.Causes != nil {
					t.Errorf("the model as it should be: %s", r.Verdict)
				}
				planted, seen, further, most := 0, 0, 0, 0
				for i := range all {
					if i%*oneIn != 0 || steps.Fault(i) != nil {
						continue
					}
					variant, _ := all[i].Variant(m)
					r := through(variant.Plan, func(step *sight.Step, part int) bool { return steps.Late(i, find(step), part) >= float64(look.Visible) })
					planted++
					more := len(r.Steps) - len(chosen.Steps)
					further, most = further+more, max(most, more)
					shows := slices.ContainsFunc(chosen.Steps, func(s sight.Step) bool { return steps.Apart(look, i, table.None, find(&s)) })
					if !shows {
						continue
					}
					seen++
					if r.Verdict != result.SeenDiffers || r.Causes == nil {
						t.Errorf("%s: the verdict is %q", all[i].Text, r.Verdict)
						continue
					}
					if r.Causes.Next != nil {
						t.Errorf("%s: after %d steps more, another one would tell more", all[i].Text, more)
					}
					if !slices.ContainsFunc(r.Causes.Suspects, func(s result.Suspect) bool {
						return s.Text == all[i].Text || slices.Contains(s.Alike, all[i].Text)
					}) {
						t.Errorf("%s: %s, and the truth is not among %d suspects", all[i].Text, r.Causes.Verdict, len(r.Causes.Suspects))
					}
				}
				t.Logf("%d steps, %d planted, %d show, %d further steps in all, %d at most", len(w.Steps), planted, seen, further, most)
			})
		}
	}
}

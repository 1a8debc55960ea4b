package mistake_test

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/verifytest"
)

// unevenEnds is a model of which one channel has two different end points.
func unevenEnds(t testing.TB) *airframes.Model {
	m, faults := verifytest.EveryShipped(t)[0].With(func(s *mixcore.Setup) { s.Channels[1].EndPoints.Plus = 80 })
	if m == nil {
		t.Fatal(faults)
	}
	return m
}

// anywhere is a position of the controls, with or without a signal.
func anywhere(r *rand.Rand, plan *mixcore.Plan) mixcore.Input {
	in := plan.Rest()
	for i := range in.Position {
		c := &plan.Setup().Controls[i]
		low, high := c.Range()
		switch {
		case c.Kind == mixcore.SwitchControl:
			in.Position[i] = float64(r.IntN(len(c.Positions)))
		case r.IntN(3) > 0:
			in.Position[i] = []float64{low, high}[r.IntN(2)]
		default:
			in.Position[i] = low + r.Float64()*(high-low)
		}
	}
	in.SignalLost = r.IntN(4) == 0
	return in
}

// Every mistake leaves the set-up as it should: another one that does what compiling it
// anew would do, in which untouched parts do what they did, and which parts of it can be
// evaluated alone.
func TestVariantsDoWhatTheirSetUpSays(t *testing.T) {
	var built, not int
	kinds := map[string]int{}
	for _, m := range append(verifytest.EveryShipped(t), verifytest.Twelve(t), unevenEnds(t)) {
		r := rand.New(rand.NewPCG(1, 2))
		others := verifytest.EveryShipped(t)[:2]
		texts := map[string]bool{}
		for _, wrong := range mistake.All(m, mistake.Options{Others: others}) {
			kinds[wrong.Kind.Code]++
			if texts[wrong.Text] {
				t.Errorf("%s: two mistakes are called %q", m.Name, wrong.Text)
			}
			texts[wrong.Text] = true
			if wrong.Place().Line == 0 || wrong.Change == "" || wrong.Undo == "" {
				t.Errorf("%s: %q is at %+v, change %q, undo %q", m.Name, wrong.Text, wrong.Place(), wrong.Change, wrong.Undo)
			}
			setup := m.Setup.Clone()
			wrong.Edit(&setup)
			if reflect.DeepEqual(setup, m.Setup) {
				t.Errorf("%s: %q changes nothing in the set-up", m.Name, wrong.Text)
			}
			fresh, freshFaults := mixcore.Compile(setup)
			variant, faults := wrong.Variant(m)
			if !reflect.DeepEqual(faults, freshFaults) {
				t.Fatalf("%s: %q: %v, compiled anew %v", m.Name, wrong.Text, faults, freshFaults)
			}
			if faults != nil {
				not++
				continue
			}
			built++
			parts := mistake.Touched(m.Plan, variant.Plan)
			some, out := variant.Plan.Some(parts), variant.Plan.NewOutput()
			was, a, b := m.Plan.NewOutput(), variant.Plan.NewOutput(), fresh.NewOutput()
			for range 12 {
				in := anywhere(r, m.Plan)
				m.Plan.Eval(&in, was)
				variant.Plan.Eval(&in, a)
				fresh.Eval(&in, b)
				variant.Plan.EvalSome(&in, &some, out)
				if !slices.Equal(a.Parts, b.Parts) || !slices.Equal(a.Channels, b.Channels) {
					t.Fatalf("%s: %q does something else than compiled anew, at %v", m.Name, wrong.Text, in)
				}
				for i := range a.Parts {
					if slices.Contains(parts, i) {
						if a.Parts[i] != out.Parts[i] {
							t.Fatalf("%s: %q: the %s alone is at %v, want %v", m.Name, wrong.Text, m.Setup.Parts[i].Name, out.Parts[i], a.Parts[i])
						}
					} else if a.Parts[i] != was.Parts[i] {
						t.Fatalf("%s: %q: the %s is not touched, but at %v instead of %v", m.Name, wrong.Text, m.Setup.Parts[i].Name, a.Parts[i], was.Parts[i])
					}
				}
			}
		}
	}
	t.Logf("%d mistakes can be built, %d can not", built, not)
	for _, k := range mistake.Kinds() {
		if kinds[k.Code] == 0 {
			t.Errorf("no model has a mistake of the kind %s", k.Code)
		}
	}
	t.Log(kinds)
}

package table_test

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/verifytest"
)

func tableOf(m *airframes.Model) *table.Table {
	return table.New(m, mistake.All(m, mistake.Options{}), table.Steps(m))
}

var looks = []sight.Look{sight.Eye, sight.Measured}

func TestStepsCanBeDoneByHandAndAreEachOnce(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		steps, cut := table.Candidates(m)
		if cut || len(steps) > table.MostSteps {
			t.Errorf("%s: %d steps, cut: %v", name, len(steps), cut)
		}
		if !steps[0].Stands() || !slices.Equal(steps[0].To.Position, m.Plan.Rest().Position) {
			t.Errorf("%s: the first step is not the model at rest", name)
		}
		for i := range steps {
			st := &steps[i]
			for _, in := range []*mixcore.Input{&st.From, &st.To} {
				if err := m.Plan.CheckInput(in); err != nil {
					t.Errorf("%s: step %d: %v", name, i, err)
				}
			}
			if want := before(m, &st.To); !same(&want, &st.From) {
				t.Errorf("%s: step %d begins at %v, want %v", name, i, st.From, want)
			}
			if slices.ContainsFunc(steps[:i], func(o sight.Step) bool { return same(&o.To, &st.To) }) {
				t.Errorf("%s: step %d is there twice", name, i)
			}
		}
	}
}

// before is where a step begins that ends with the controls at to.
func before(m *airframes.Model, to *mixcore.Input) mixcore.Input {
	from := to.Clone()
	from.SignalLost = false
	if to.SignalLost {
		return from
	}
	rest := m.Plan.Rest()
	moved := false
	for i := range from.Position {
		kind := m.Setup.Controls[i].Kind
		if centred := kind == mixcore.AxisControl || kind == mixcore.TrimControl; centred && from.Position[i] != 0 {
			from.Position[i], moved = 0, true
		}
	}
	if !moved {
		return rest
	}
	return from
}

func same(a, b *mixcore.Input) bool {
	return a.SignalLost == b.SignalLost && slices.Equal(a.Position, b.Position)
}

func TestStepsHaveEveryControlAtEveryPlaceAlone(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	steps := table.Steps(m)
	for name, places := range map[string][]float64{
		"roll stick":  {-100, -50, 50, 100},
		"pitch trim":  {-100, 100},
		"throttle":    {0, 50, 100},
		"flap lever":  {0, 40, 100}, // its detents
		"rate switch": {0, 1},
	} {
		control := slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Name == name })
		for _, at := range places {
			want := m.Plan.Rest()
			want.Position[control] = at
			if !slices.ContainsFunc(steps, func(s sight.Step) bool { return same(&s.To, &want) }) {
				t.Errorf("%s is never alone at %v", name, at)
			}
		}
	}
}

func TestStepsLoseTheSignalWithMotorsRunning(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		out := m.Plan.NewOutput()
		motors, running := 0, 0
		for i := range m.Setup.Parts {
			if m.Setup.Parts[i].Motor != nil {
				motors++
			}
		}
		for _, s := range table.Steps(m) {
			if !s.To.SignalLost {
				continue
			}
			m.Plan.Eval(&s.From, out)
			now := 0
			for i := range m.Setup.Parts {
				if motor := m.Setup.Parts[i].Motor; motor != nil && !motor.Stopped(out.Parts[i].Amount) {
					now++
				}
			}
			running = max(running, now)
		}
		if running != motors {
			t.Errorf("%s: the signal is lost with %d of %d motors running at most", name, running, motors)
		}
	}
}

// Every move of the table is what the set-up with the edit, compiled afresh, does.
func TestMovesAreWhatPlainEvaluationGives(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		tab := tableOf(m)
		random := rand.New(rand.NewPCG(1, 2))
		for k := table.None; k < len(tab.Mistakes); k++ {
			if k != table.None && random.IntN(3) > 0 {
				continue
			}
			s := m.Setup.Clone()
			if k != table.None {
				tab.Mistakes[k].Edit(&s)
			}
			plan, faults := mixcore.Compile(s)
			if (faults != nil) != (k != table.None && tab.Fault(k) != nil) {
				t.Errorf("%s: %s: faults %v", name, tab.Mistakes[k].Text, faults)
			}
			if faults != nil {
				continue
			}
			from, to := plan.NewOutput(), plan.NewOutput()
			for range 12 {
				step := random.IntN(len(tab.Steps))
				st := &tab.Steps[step]
				plan.Eval(&st.From, from)
				plan.Eval(&st.To, to)
				for part := range m.Setup.Parts {
					if got, want := tab.Move(k, step, part), sight.MoveOf(&s, part, st, from, to); got != want {
						t.Errorf("%s: mistake %d, step %d, %s: got %v, want %v", name, k, step, m.Setup.Parts[part].Name, got, want)
					}
				}
			}
		}
	}
}

func TestShowsIsWhereSomePartDiffers(t *testing.T) {
	m := verifytest.Shipped(t, "tarn-measured")
	tab := tableOf(m)
	for _, look := range looks {
		rows := tab.Shows(look)
		for k := range tab.Mistakes {
			for step := range tab.Steps {
				want := false
				for part := range m.Setup.Parts {
					want = want || look.Differ(&m.Setup.Parts[part], tab.Move(table.None, step, part), tab.Move(k, step, part))
				}
				if tab.Mistakes[k].Kind.Timed {
					continue
				}
				if got := rows[k][step/64]>>(step%64)&1 == 1; got != want {
					t.Fatalf("%s at step %d: shows %v, want %v", tab.Mistakes[k].Text, step, got, want)
				}
				if got := tab.Apart(look, table.None, k, step); got != want {
					t.Fatalf("%s at step %d: apart from none %v, want %v", tab.Mistakes[k].Text, step, got, want)
				}
			}
		}
	}
}

func TestApartIsWhereSomePartOfEitherDiffers(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	tab := tableOf(m)
	random := rand.New(rand.NewPCG(3, 4))
	for _, look := range looks {
		yes := 0
		for range 20_000 {
			a, b, step := random.IntN(len(tab.Mistakes)), random.IntN(len(tab.Mistakes)), random.IntN(len(tab.Steps))
			if a == b || tab.Mistakes[a].Kind.Timed || tab.Mistakes[b].Kind.Timed {
				continue
			}
			want := false
			for part := range m.Setup.Parts {
				want = want || look.Differ(&m.Setup.Parts[part], tab.Move(a, step, part), tab.Move(b, step, part))
			}
			if want {
				yes++
			}
			if got, back := tab.Apart(look, a, b, step), tab.Apart(look, b, a, step); got != want || back != want {
				t.Fatalf("%q and %q at step %d: %v and %v, want %v", tab.Mistakes[a].Text, tab.Mistakes[b].Text, step, got, back, want)
			}
		}
		if yes == 0 {
			t.Errorf("ruler %v: no two mistakes are apart anywhere", look.Ruler)
		}
	}
}

// A channel that should be slow and is not ends where it should: only the way there
// shows it.
func TestMistakesInTimeShowOnTheWay(t *testing.T) {
	m := verifytest.Shipped(t, "garrow-twin")
	tab := tableOf(m)
	found := 0
	for k := range tab.Mistakes {
		if !tab.Mistakes[k].Kind.Timed {
			continue
		}
		row := tab.Shows(sight.Eye)[k]
		for step := range tab.Steps {
			if row[step/64]>>(step%64)&1 == 0 {
				continue
			}
			found++
			late := 0.0
			for part := range m.Setup.Parts {
				if tab.Move(k, step, part) != tab.Move(table.None, step, part) {
					t.Errorf("%s ends elsewhere at step %d", tab.Mistakes[k].Text, step)
				}
				late = max(late, tab.Late(k, step, part))
				if when, ok := tab.Moment(sight.Eye, step, part); ok && !differsAfter(t, m, &tab.Mistakes[k], &tab.Steps[step], part, when) {
					t.Errorf("%s: nothing differs after %v s at step %d", tab.Mistakes[k].Text, when, step)
				}
			}
			if late < float64(sight.VisibleAmount) {
				t.Errorf("%s shows at step %d, late by %v", tab.Mistakes[k].Text, step, late)
			}
		}
	}
	if found == 0 {
		t.Error("no mistake in time shows at any step")
	}
}

func differsAfter(t *testing.T, m *airframes.Model, made *mistake.Mistake, st *sight.Step, part int, when mixcore.Seconds) bool {
	v, faults := made.Variant(m)
	if faults != nil {
		t.Fatal(faults)
	}
	right, wrong := m.Plan.NewOutput(), v.Plan.NewOutput()
	m.Plan.EvalAfter(&st.From, &st.To, when, right)
	v.Plan.EvalAfter(&st.From, &st.To, when, wrong)
	a, b := right.Parts[part].Place(), wrong.Parts[part].Place()
	return max(a-b, b-a) >= float64(sight.VisibleAmount)
}

// plainTried is on how many steps the plain way is measured.
const plainTried = 50_000

// BenchmarkTable is all mistakes of the twelve-channel model at all steps; plain is the
// part of the time that working out every pose of every one in full would take, tried on
// some of them.
func BenchmarkTable(b *testing.B) {
	m := verifytest.Twelve(b)
	mistakes, steps := mistake.All(m, mistake.Options{}), table.Steps(m)
	for b.Loop() {
		table.New(m, mistakes, steps)
	}
	each := b.Elapsed().Seconds() / float64(b.N)
	out := m.Plan.NewOutput()
	began := time.Now()
	for i := range plainTried {
		st := &steps[i%len(steps)]
		m.Plan.Eval(&st.From, out)
		m.Plan.Eval(&st.To, out)
	}
	whole := time.Since(began).Seconds() / plainTried * float64(len(mistakes)*len(steps))
	b.ReportMetric(each/whole, "plain")
	b.ReportMetric(float64(len(mistakes)), "mistakes")
	b.ReportMetric(float64(len(steps)), "steps")
}

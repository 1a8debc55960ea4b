package walk

import (
	"context"
	"flag"
	"math/bits"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

var update = flag.Bool("update", false, "write the golden files")

var looks = []sight.Look{sight.Eye, sight.Measured}

type lookAt struct {
	name string
	look sight.Look
}

var (
	walksMutex sync.Mutex
	walks      = map[lookAt]*Found{}
)

// shortest is the walk-around of a shipped model, worked out once for all tests.
func shortest(t testing.TB, name string, look sight.Look) *Found {
	t.Helper()
	walksMutex.Lock()
	defer walksMutex.Unlock()
	key := lookAt{name, look}
	if walks[key] == nil {
		walks[key] = Shortest(context.Background(), verifytest.Shipped(t, name), Options{Look: look})
	}
	return walks[key]
}

// sees says whether somebody notices at a step that a set-up is not the model, worked
// out with nothing but Compile and Eval.
func sees(look sight.Look, right, wrong *mixcore.Plan, st *sight.Step) bool {
	s := right.Setup()
	a, b, c, d := right.NewOutput(), right.NewOutput(), wrong.NewOutput(), wrong.NewOutput()
	right.Eval(&st.From, a)
	right.Eval(&st.To, b)
	wrong.Eval(&st.From, c)
	wrong.Eval(&st.To, d)
	for i := range s.Parts {
		if look.Differ(&s.Parts[i], sight.MoveOf(s, i, st, a, b), sight.MoveOf(s, i, st, c, d)) {
			return true
		}
	}
	return false
}

func TestEveryVisibleMistakeShowsOnTheWalk(t *testing.T) {
	for _, name := range airframes.Shipped() {
		for _, look := range looks {
			f := shortest(t, name, look)
			m := f.Table.Model
			if f.Stopped || f.Cut || f.AtLeast != len(f.Order) {
				t.Errorf("%s: %d steps, at least %d", name, len(f.Order), f.AtLeast)
			}
			right, _ := mixcore.Compile(m.Setup.Clone())
			only := make([]int, len(f.Order)) // mistakes that one step alone shows
			for k := range f.Table.Mistakes {
				made := &f.Table.Mistakes[k]
				s := m.Setup.Clone()
				made.Edit(&s)
				wrong, faults := mixcore.Compile(s)
				if faults != nil {
					continue
				}
				var at []int
				for i, step := range f.Order {
					if sees(look, right, wrong, &f.Table.Steps[step]) || made.Kind.Timed && f.First(k) == i {
						at = append(at, i)
					}
				}
				anywhere := len(at) > 0 || slices.ContainsFunc(f.Table.Steps, func(st sight.Step) bool { return sees(look, right, wrong, &st) })
				switch {
				case anywhere != f.Visible(k):
					t.Errorf("%s: %s: seen %v, visible %v", name, made.Text, anywhere, f.Visible(k))
				case anywhere && len(at) == 0:
					t.Errorf("%s: %s is not seen on the walk", name, made.Text)
				case len(at) == 1:
					only[at[0]]++
				}
			}
			for i, n := range only {
				if n == 0 {
					t.Errorf("%s, ruler %v: without step %d every mistake is still seen", name, look.Ruler, i+1)
				}
			}
		}
	}
}

// That no walk has fewer steps, by trying all.
func TestNoSmallerWalkShowsEverything(t *testing.T) {
	for _, look := range looks {
		f := shortest(t, "pellin-park", look)
		if len(f.Table.Steps) > 64 {
			t.Fatalf("%d steps do not fit a word", len(f.Table.Steps))
		}
		var rows []uint64
		for _, row := range f.Table.Shows(look) {
			if row[0] != 0 && !slices.Contains(rows, row[0]) {
				rows = append(rows, row[0])
			}
		}
		slices.SortFunc(rows, func(a, b uint64) int { return bits.OnesCount64(a) - bits.OnesCount64(b) })
		tried := 0
		var choose func(from, more int, chosen uint64)
		choose = func(from, more int, chosen uint64) {
			if more == 0 {
				tried++
				if !slices.ContainsFunc(rows, func(row uint64) bool { return row&chosen == 0 }) {
					t.Fatalf("%d steps are enough: %b", len(f.Order)-1, chosen)
				}
				return
			}
			for i := from; i <= len(f.Table.Steps)-more; i++ {
				choose(i+1, more-1, chosen|1<<i)
			}
		}
		choose(0, len(f.Order)-1, 0)
		if tried == 0 {
			t.Error("nothing was tried")
		}
	}
}

// A model of one surface, whose walk can be found by hand. To the eye a sub-trim shows
// only without a movement or where the signal is lost from rest; a channel that holds
// without a signal only where it is lost with the stick over; and a wrong sign on one
// side only with the stick on that side: three steps, for none does all of two of these.
// To a ruler a sub-trim shows nearly everywhere, but twice the share only half way, and
// holding only where the signal is lost: two steps.
func TestWalkOfOneSurface(t *testing.T) {
	m := verifytest.Model(t, "one.yaml", []byte(`hingeline: 1
name: One
controls:
  pitch stick: pitch
demands:
  pitch: pitch stick
channels:
  1: {name: elevator, mix: pitch, failsafe: 0%}
surfaces:
  elevator: {channel: 1, measured: {-100%: 20° down, 0%: 0°, 100%: 20° up}}
`))
	for want, look := range map[int]sight.Look{3: sight.Eye, 2: sight.Measured} {
		f := Shortest(context.Background(), m, Options{Look: look})
		if len(f.Order) != want || f.AtLeast != want {
			t.Errorf("ruler %v: %d steps, at least %d, want %d", look.Ruler, len(f.Order), f.AtLeast, want)
		}
	}
}

// mostHeld is of how many mistakes a script is held against every one; of more, against
// every second or third.
const mostHeld = 150

func TestScriptPassesAndFailsWithEveryVisibleMistake(t *testing.T) {
	for _, name := range airframes.Shipped() {
		for _, look := range looks {
			f := shortest(t, name, look)
			m := f.Table.Model
			text := f.Script()
			trial, problems := script.NewTrial(m, []script.File{{Name: "walk.feature", Text: text}})
			if len(problems) > 0 {
				var b strings.Builder
				diag.Write(&b, problems, diag.NewSource("walk.feature", text))
				t.Fatalf("%s: %s\n%s", name, b.String(), text)
			}
			if failing := trial.Failing(m, 10); len(failing) > 0 {
				t.Errorf("%s, ruler %v: fails on the model itself: %q", name, look.Ruler, failing)
			}
			if scenarios := strings.Count(string(text), "Scenario:"); scenarios != len(f.Order) {
				t.Errorf("%s: %d scenarios, %d steps", name, scenarios, len(f.Order))
			}
			for k := 0; k < len(f.Table.Mistakes); k += 1 + len(f.Table.Mistakes)/mostHeld {
				if !f.Visible(k) {
					continue
				}
				variant, _ := f.Table.Mistakes[k].Variant(m)
				if len(trial.Failing(variant, 1)) == 0 {
					t.Errorf("%s, ruler %v: %s slips through, seen at step %d", name, look.Ruler, f.Table.Mistakes[k].Text, f.First(k)+1)
				}
			}
		}
	}
}

func TestScriptGolden(t *testing.T) {
	for file, look := range map[string]sight.Look{"testdata/pellin-eye.feature": sight.Eye, "testdata/pellin-ruler.feature": sight.Measured} {
		airframestest.Golden(t, file, shortest(t, "pellin-park", look).Script(), *update)
	}
}

func TestResultCountsAndOrders(t *testing.T) {
	for _, name := range []string{"bracken-20", "ousel-trainer", "hollin-spoilers", "garrow-twin"} {
		for _, look := range looks {
			f := shortest(t, name, look)
			r := f.Result()
			first, visible := 0, 0
			for k := range f.Table.Mistakes {
				if f.Visible(k) {
					visible++
				}
			}
			for i := range r.Steps {
				s := &r.Steps[i]
				first += s.First
				if s.First > s.Shows || s.First != len(s.Kinds) || len(s.Parts) != len(f.Table.Model.Setup.Parts) || len(s.Stages) == 0 {
					t.Errorf("%s: step %d: %+v", name, i, s)
				}
			}
			if first != visible || r.Mistakes != visible || len(r.Unseen) != len(f.Table.Mistakes)-visible {
				t.Errorf("%s: %d shown first, %d mistakes, %d visible, %d unseen", name, first, r.Mistakes, visible, len(r.Unseen))
			}
			if r.Moves < r.MovesMin || r.AtLeast != len(r.Steps) || r.Further < 1 || r.Groups < 2 || r.Tried != len(f.Table.Steps) {
				t.Errorf("%s: %+v", name, r)
			}
			for _, u := range r.Unseen {
				if u.Why == "" || u.Text == "" || u.Place.Line == 0 {
					t.Errorf("%s: %+v", name, u)
				}
			}
		}
	}
}

func TestStoppedSearchSaysSo(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	f := Shortest(ctx, verifytest.Shipped(t, "bracken-20"), Options{})
	if !f.Stopped || f.Result().Stopped == "" {
		t.Error("it does not say that it was stopped")
	}
	for k := range f.Table.Mistakes {
		if f.Visible(k) && f.First(k) < 0 {
			t.Errorf("%s is not seen on the walk", f.Table.Mistakes[k].Text)
		}
	}
}

// BenchmarkWalk is the search alone, once the table stands.
func BenchmarkWalk(b *testing.B) {
	for _, m := range []*airframes.Model{verifytest.Shipped(b, "bracken-20"), verifytest.Shipped(b, "skerry"), verifytest.Twelve(b)} {
		b.Run(strings.ReplaceAll(m.Name, " ", "-"), func(b *testing.B) {
			t := table.New(m, mistake.All(m, mistake.Options{}), table.Steps(m))
			b.ResetTimer()
			for b.Loop() {
				After(context.Background(), t, sight.Eye, nil)
			}
		})
	}
}

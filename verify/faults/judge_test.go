package faults_test

import (
	"context"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/faults"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

func judged(t testing.TB, m *airframes.Model, files []script.File, o faults.Options) *result.Faults {
	t.Helper()
	r, problems := faults.Judge(context.Background(), m, files, o)
	if r == nil || diag.HasErrors(problems) {
		t.Fatalf("%+v", problems)
	}
	return r
}

// Every shipped script catches every single mistake that can be seen, and none is left
// open.
func TestShippedScriptsMissNothing(t *testing.T) {
	for _, name := range features.Names() {
		t.Run(name, func(t *testing.T) {
			r := judged(t, verifytest.Shipped(t, name), verifytest.Scripts(t, name), faults.Options{})
			t.Logf("%+v, %d spare", r.Score(), len(r.Spare))
			for _, f := range r.Faults {
				if f.State == result.Missed || f.State == result.Open {
					t.Errorf("%s: %s (%s %s); add %q", f.State, f.Text, f.Consequence, f.Reason, f.Sentence)
				}
			}
			if r.Verdict != result.NoneMissed || r.Score().Percent() != 100 || r.Score().Caught < 50 {
				t.Errorf("%s, %+v", r.Verdict, r.Score())
			}
		})
	}
}

// Without any one scenario that is not spare something is missed, and without one that is
// nothing is.
func TestSpareScenariosAreThoseThatNothingNeeds(t *testing.T) {
	for _, name := range []string{"pellin-park", "ousel-trainer", "hollin-spoilers"} {
		t.Run(name, func(t *testing.T) {
			m, files := verifytest.Shipped(t, name), verifytest.Scripts(t, name)
			r := judged(t, m, files, faults.Options{})
			spare := map[int]bool{}
			for _, s := range r.Spare {
				spare[s.Place.Line] = true
			}
			removed := 0
			for _, line := range checkLines(t, m, files) {
				less, ok := without(string(files[0].Text), line)
				if !ok {
					continue
				}
				removed++
				r := judged(t, m, []script.File{{Name: files[0].Name, Text: []byte(less)}}, faults.Options{})
				if missed := r.Score().Missed + r.Score().Open; (missed == 0) != spare[line] {
					t.Errorf("without the scenario of line %d %d are missed; spare: %v", line, missed, spare[line])
				}
			}
			if removed < 4 || len(spare) == 0 {
				t.Errorf("%d scenarios were taken out, %d are spare", removed, len(spare))
			}
		})
	}
}

// checkLines is the line of the first check of every scenario, or of its row.
func checkLines(t *testing.T, m *airframes.Model, files []script.File) (lines []int) {
	trial, problems := script.NewTrial(m, files)
	if trial == nil {
		t.Fatal(problems)
	}
	last := -1
	for i := range trial.Len() {
		if about, scenario := trial.Check(i); scenario != last {
			last = scenario
			lines = append(lines, about.Place.Line)
		}
	}
	return lines
}

// without takes out the scenario of a line, or the row of an outline; ok is false where
// it is the only row.
func without(text string, line int) (less string, ok bool) {
	lines := strings.Split(text, "\n")
	at := line - 1
	word := func(i int) string { return strings.TrimSpace(lines[i]) }
	if strings.HasPrefix(word(at), "|") {
		above, below := strings.HasPrefix(word(at-1), "|") && !strings.HasPrefix(word(at-2), "Examples"), at+1 < len(lines) && strings.HasPrefix(word(at+1), "|")
		return strings.Join(slices.Delete(slices.Clone(lines), at, at+1), "\n"), above || below
	}
	first, end := at, at+1
	for !strings.HasPrefix(word(first), "Scenario") {
		first--
	}
	for end < len(lines) && !strings.HasPrefix(word(end), "Scenario") && !strings.HasPrefix(word(end), "@") && !strings.HasPrefix(word(end), "Rule:") {
		end++
	}
	for first > 0 && strings.HasPrefix(word(first-1), "@") {
		first--
	}
	rest := slices.Delete(slices.Clone(lines), first, end)
	return strings.Join(rest, "\n"), strings.Contains(strings.Join(rest, "\n"), "Scenario")
}

// A script that asks nothing but that the motor is stopped misses all else, the worst
// first, and each with a sentence that catches it.
func TestWhatIsMissedIsToldWorstFirst(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	files := []script.File{{Name: "thin.feature", Text: []byte("Feature: Thin\n\n  Scenario: Little\n    * the rudder is at neutral\n")}}
	r := judged(t, m, files, faults.Options{})
	var words []string
	rank := 0
	for _, f := range r.Faults {
		if f.State != result.Missed {
			continue
		}
		if f.Rank < rank {
			t.Errorf("rank %d behind %d: %s", f.Rank, rank, f.Text)
		}
		rank = f.Rank
		words = append(words, f.Consequence)
		if f.Sentence == "" || f.Witness == nil || f.Witness.Got == "" || f.Wanted == "" {
			t.Errorf("%s: sentence %q, witness %+v, wanted %q", f.Text, f.Sentence, f.Witness, f.Wanted)
		}
	}
	said := strings.Join(words, "\n")
	for _, want := range []string{"the motor RUNS", "rolls LEFT where it should roll RIGHT", "pitches DOWN where it should pitch UP", "yaws ",
		"where it should not", "does not roll", "stands where it should run", "without a signal", "times as strongly", " instead of "} {
		if !strings.Contains(said, want) {
			t.Errorf("no consequence says %q", want)
		}
	}
	if !strings.Contains(words[0], "the motor RUNS") || r.Verdict != result.SomeMissed {
		t.Errorf("the worst is %q, verdict %s", words[0], r.Verdict)
	}
	// With what is proposed nothing is missed any more.
	whole := string(files[0].Text) + faults.Additions(r, script.BehindOf(files[0]), func(string) bool { return false })
	again := judged(t, m, []script.File{{Name: "thin.feature", Text: []byte(whole)}}, faults.Options{})
	if again.Verdict != result.NoneMissed {
		for _, f := range again.Faults {
			if f.State == result.Missed || f.State == result.Open {
				t.Errorf("still %s: %s", f.State, f.Text)
			}
		}
	}
}

// A script that fails on the model as it is says nothing about mistakes, and a mistake of
// a kind that a model has no room for is none.
func TestNothingIsSaidWhereNothingCanBe(t *testing.T) {
	m := verifytest.Shipped(t, "pellin-park")
	wrong := []script.File{{Name: "w.feature", Text: []byte("Feature: W\n\n  Scenario: W\n    * with the turn stick full right, the rudder moves left\n")}}
	if r := judged(t, m, wrong, faults.Options{}); r.Verdict != result.AlreadyWrong || len(r.Faults) > 0 {
		t.Errorf("%s with %d mistakes", r.Verdict, len(r.Faults))
	}
	if r := judged(t, m, verifytest.Scripts(t, "pellin-park"), faults.Options{Options: mistake.Options{Only: []string{"fade-missing"}}}); r.Verdict != result.NoMistakes {
		t.Errorf("%s", r.Verdict)
	}
}

// What was stopped, or could not be decided, is not caught.
func TestStoppedAndUndecidedAreNotCaught(t *testing.T) {
	m := verifytest.Shipped(t, "tarn-measured")
	ctx, stop := context.WithCancel(context.Background())
	tried := 0
	r, _ := faults.Judge(ctx, m, verifytest.Scripts(t, "tarn-measured"), faults.Options{Progress: func(done, all int) {
		if tried++; tried == 20 {
			stop()
		}
	}})
	if s := r.Score(); r.Stopped == "" || r.Verdict != result.SomeMissed || s.Caught > 20 || s.Open < 300 {
		t.Errorf("stopped %q, %s, %+v", r.Stopped, r.Verdict, s)
	}
	thin := []script.File{{Name: "thin.feature", Text: []byte("Feature: Thin\n\n  Scenario: Little\n    * the rudder is at neutral\n")}}
	plain := judged(t, verifytest.Shipped(t, "skerry"), []script.File{{Name: "t.feature", Text: []byte(strings.ReplaceAll(string(thin[0].Text), "rudder", "port aileron"))}},
		faults.Options{Boxes: 1, Options: mistake.Options{Only: []string{"fade-missing", "limit-low", "expo-wrong"}}})
	for _, f := range plain.Faults {
		if f.State == result.Invisible && f.Reason == "" || f.State == result.Open && f.Reason == "" {
			t.Errorf("%s: %s without a reason", f.State, f.Text)
		}
	}
}

// slowTwins are two flaps of which only one is slowed, and a channel that drives nothing.
const slowTwins = `hingeline: 1
name: Slow twins
controls:
  pitch stick: pitch
  flap lever: {lever: {up: 0, landing: 100}}
demands:
  flap: flap lever
  pitch: pitch stick
channels:
  1: {name: port flap, mix: [{add: flap, share: 80%}], slow: 3 s}
  2: {name: starboard flap, mix: [{add: flap, share: 80%}]}
  3: pitch
  4: {name: gain, mix: [30%]}
surfaces:
  port flap: {channel: 1, measured: {-100%: 40° up, 0%: 0°, 100%: 40° down}}
  starboard flap: {channel: 2, measured: {-100%: 40° up, 0%: 0°, 100%: 40° down}}
  elevator: {channel: 3, measured: {100%: 20° up}}
`

// Two plugs swapped, of which one channel is slowed, end where they should and are seen on
// the way: that is not invisible. A channel that drives nothing is caught by a check of it,
// and else said to drive nothing.
func TestWhatShowsOnTheWayOnlyIsNotInvisible(t *testing.T) {
	m := verifytest.Model(t, "twins.yaml", slowTwins)
	of := func(sentence, text string) result.Fault {
		t.Helper()
		files := []script.File{{Name: "t.feature", Text: []byte("Feature: T\n\n  Scenario: T\n    * " + sentence + "\n")}}
		r := judged(t, m, files, faults.Options{})
		i := slices.IndexFunc(r.Faults, func(f result.Fault) bool { return f.Text == text })
		if i < 0 {
			t.Fatalf("there is no %q", text)
		}
		return r.Faults[i]
	}
	const swapped = "the plugs of channel 1 (port flap) and channel 2 (starboard flap) are swapped"
	if f := of("with landing flap, both flaps drop 32° ± 1°", swapped); f.State != result.Missed || !strings.Contains(f.Sentence, "after") || f.Witness == nil {
		t.Errorf("%s: %s %s, add %q", swapped, f.State, f.Reason, f.Sentence)
	}
	if f := of("with landing flap, after 1 s, the port flap is at most 15° down", swapped); f.State != result.Caught {
		t.Errorf("%s: %s %s", swapped, f.State, f.Reason)
	}
	const gain = "channel 4 (gain) is reversed"
	if f := of("channel 4 is at 30% ± 1%", gain); f.State != result.Caught {
		t.Errorf("%s: %s %s", gain, f.State, f.Reason)
	}
	if f := of("the elevator is at neutral", gain); f.State != result.Invisible || !strings.Contains(f.Reason, "drives") {
		t.Errorf("%s: %s %s", gain, f.State, f.Reason)
	}
}

// A phase that fades shows on the way only if its switch is what moves, and not the lever
// that it lets through: the sentence says so.
func TestSentenceSaysWhatMovesLast(t *testing.T) {
	m, problems := airframes.Load("phase.yaml", []byte(`hingeline: 1
name: Phase
controls:
  camber lever: lever
  task switch: [plain, climb]
phases:
  climb: {when: task switch is climb, fade: 2 s}
demands:
  camber: camber lever
channels:
  1: {mix: [{add: camber, share: 80%, when: climb}]}
surfaces:
  flap: {channel: 1, measured: {-100%: 40° up, 0%: 0°, 100%: 40° down}}
`))
	if m == nil {
		t.Fatal(problems)
	}
	files := []script.File{{Name: "t.feature", Text: []byte("Feature: T\n\n  Scenario: T\n    * the flap is at neutral\n")}}
	r := judged(t, m, files, faults.Options{Options: mistake.Options{Only: []string{"fade-missing"}}})
	if len(r.Faults) != 1 || r.Faults[0].State != result.Missed || !strings.Contains(r.Faults[0].Sentence, ", when the task switch climb, the flap is ") {
		t.Errorf("%+v", r.Faults)
	}
}

// What only shows with two switches set is not invisible; what never moves with a signal
// is.
func TestLateIsInvisibleOnlyWhereNothingEverMoves(t *testing.T) {
	const head = `hingeline: 1
name: Late
controls:
  camber lever: lever
  a switch: [off, on]
  b switch: [off, on]
demands:
  camber: camber lever
channels:
  1: {mix: [%s], slow: 3 s, failsafe: 80%%}
surfaces:
  flap: {channel: 1, measured: {-100%%: 40° up, 0%%: 0°, 100%%: 40° down}}
`
	for mix, want := range map[string]result.FaultState{
		"{add: camber, share: 80%, when: a switch is on and b switch is on}":  result.Missed,
		"{add: camber, share: 80%, when: a switch is on and a switch is off}": result.Invisible,
	} {
		m, problems := airframes.Load("late.yaml", fmt.Appendf(nil, head, mix))
		if m == nil {
			t.Fatal(problems)
		}
		files := []script.File{{Name: "t.feature", Text: []byte("Feature: T\n\n  Scenario: T\n    * the flap is at neutral\n")}}
		r := judged(t, m, files, faults.Options{Options: mistake.Options{Only: []string{"slow-missing"}}})
		if len(r.Faults) != 1 || r.Faults[0].State != want || want == result.Missed && r.Faults[0].Sentence == "" {
			t.Errorf("%s: %+v, wanted %s", mix, r.Faults, want)
		}
	}
}

// The same script always gets the same report.
func TestJudgeAlwaysSaysTheSame(t *testing.T) {
	m := verifytest.Shipped(t, "ousel-trainer")
	thin := []script.File{{Name: "thin.feature", Text: []byte("Feature: Thin\n\n  Scenario: Little\n    * the rudder is at neutral\n")}}
	a, b := judged(t, m, thin, faults.Options{}), judged(t, m, thin, faults.Options{})
	if !reflect.DeepEqual(a, b) {
		t.Error("two runs differ")
	}
}

// Pairs of mistakes that hide each other are made where they are asked for.
func TestPairsAreMadeWhereAsked(t *testing.T) {
	m := verifytest.Shipped(t, "pellin-park")
	r := judged(t, m, verifytest.Scripts(t, "pellin-park"), faults.Options{Options: mistake.Options{Pairs: true}})
	pairs := 0
	for _, f := range r.Faults {
		if f.Kind == "pair" {
			pairs++
		}
	}
	if pairs < 10 {
		t.Errorf("%d pairs", pairs)
	}
}

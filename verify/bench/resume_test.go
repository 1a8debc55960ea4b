package bench_test

import (
	"bytes"
	"context"
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// answers is a walk with every sort of event, an answer a line; what follows a question is
// asked for in a line of its own.
var answers = []string{
	"yes", "yes", "yes",
	"y", "rudder other way", "y", "b", "elevator 12 up", "elevator still", "y",
	"e", "elevator", "down", "y", "s", "no reason at all", "o", "1", "y", "y",
}

// played is what a walk comes to: its record, and after which answer how much of it was
// written.
type played struct {
	record  []byte
	written []int // by answer: bytes of the record behind it
	report  *result.Bench
}

func play(t *testing.T, w *bench.Walk, h *bench.Header, lines []string) played {
	t.Helper()
	j := &memory{}
	if err := h.Begin(j); err != nil {
		t.Fatal(err)
	}
	g := bench.NewGuide(w, j, at)
	var p played
	p.take(t, g, j, lines)
	p.record, p.report = j.text(), g.Report(context.Background(), nil)
	return p
}

// take gives a guide answers to the last.
func (p *played) take(t *testing.T, g *bench.Guide, j *memory, lines []string) {
	t.Helper()
	for _, line := range lines {
		if g.Over() {
			t.Fatalf("over before %q", line)
		}
		if r, err := g.Take(line); err != nil || !r.Understood {
			t.Fatalf("%q: %+v, %v", line, r, err)
		}
		p.written = append(p.written, len(j.text()))
	}
	if err := g.Stop(); err != nil {
		t.Fatal(err)
	}
}

// goOn goes on with what is left of a record, with the answers that are still to be given.
func goOn(t *testing.T, left []byte, rest []string) ([]byte, *result.Bench) {
	t.Helper()
	r, err := bench.Read(left)
	if err != nil {
		t.Fatal(err)
	}
	w, err := r.Header.Walk()
	if err != nil {
		t.Fatal(err)
	}
	j := &memory{lines: [][]byte{left[:r.Whole]}}
	g := bench.NewGuide(w, j, at)
	if err := g.Replay(r.Events); err != nil {
		t.Fatal(err)
	}
	if !g.Ended() {
		if err := g.Resume(); err != nil {
			t.Fatal(err)
		}
		lines := append([]string{"y", "y", "y"}, rest...)
		if strings.Contains(g.Ask().Said, "been changed since") {
			lines = append([]string{"no"}, lines...)
		}
		for _, line := range lines {
			if got, err := g.Take(line); err != nil || !got.Understood {
				t.Fatalf("%q: %+v, %v", line, got, err)
			}
		}
		if err := g.Stop(); err != nil {
			t.Fatal(err)
		}
	}
	return j.text(), g.Report(context.Background(), nil)
}

// content is what a record holds apart from how often it was gone on with, for which the
// same is asked again.
func content(t *testing.T, text []byte) (list []bench.Event) {
	t.Helper()
	r, err := bench.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range r.Events {
		if e.Kind != bench.Resumed && e.Kind != bench.Unchanged && e.Kind != bench.Confirmed && e.Kind != bench.Pause {
			list = append(list, e)
		}
	}
	return list
}

// Killed at any byte and gone on with, a record holds the same, and the report says the
// same.
func TestRecordKilledAnywhereIsTheSame(t *testing.T) {
	m := load(t, "pellin-park")
	chosen := bench.Shortest(context.Background(), m, sight.Eye, nil)
	w := bench.NewWalk(m, chosen, sight.Eye)
	h := bench.NewHeader("test", noon, w, nil, chosen.How)
	whole := play(t, w, h, answers)
	if whole.report.Verdict != result.SeenDiffers {
		t.Fatalf("%s", whole.report.Verdict)
	}
	want := content(t, whole.record)
	kinds := map[bench.Kind]bool{}
	for _, e := range want {
		kinds[e.Kind] = true
	}
	for _, k := range []bench.Kind{bench.Answer, bench.Measured, bench.Skip, bench.Back, bench.End} {
		if !kinds[k] {
			t.Fatalf("the walk has no %s", k)
		}
	}
	first := bytes.IndexByte(whole.record, '\n') + 1
	tried := map[int]*result.Bench{} // by whole bytes: what is cut within a line comes to the same
	for cut := first; cut <= len(whole.record); cut++ {
		r, err := bench.Read(whole.record[:cut])
		if err != nil {
			t.Fatalf("cut at %d: %v", cut, err)
		}
		if tried[r.Whole] != nil {
			continue
		}
		given := whole.given(r.Whole)
		rest := answers[max(given, 3):]
		text, report := goOn(t, whole.record[:cut], rest)
		tried[r.Whole] = report
		if got := content(t, text); !reflect.DeepEqual(got, want) {
			t.Fatalf("cut at %d, %d answers given: got\n%+v\nwanted\n%+v", cut, given, got, want)
		}
		if !reflect.DeepEqual(report.Steps, whole.report.Steps) || report.Verdict != whole.report.Verdict || !reflect.DeepEqual(report.Causes, whole.report.Causes) {
			t.Fatalf("cut at %d: the report differs", cut)
		}
	}
	if len(tried) != bytes.Count(whole.record, []byte("\n")) {
		t.Errorf("%d places tried, the record has %d lines", len(tried), bytes.Count(whole.record, []byte("\n")))
	}
}

// given is how many answers so many bytes of the record hold.
func (p *played) given(bytes int) int {
	given := 0
	for given < len(p.written) && p.written[given] <= bytes {
		given++
	}
	for given > 1 && p.written[given-1] == p.written[given-2] { // it only led to a question, which is asked again
		given--
	}
	return given
}

// The walk of every shipped model, with a channel reversed in the hand: killed behind each line
// of its record and gone on with, it holds the same.
func TestEveryShippedWalkKilledAtEveryStepIsTheSame(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m, chosen := usual(t, name, sight.Eye)
		w := bench.NewWalk(m, chosen, sight.Eye)
		variant, faults := mistake.All(m, mistake.Options{})[0].Variant(m)
		if faults != nil {
			t.Fatal(name, faults)
		}
		lines := (&benchtest.Modeller{Walk: w, Plan: variant.Plan, ByHand: true}).All()
		j := &memory{}
		if err := bench.NewHeader("test", noon, w, nil, chosen.How).Begin(j); err != nil {
			t.Fatal(err)
		}
		whole := played{}
		whole.take(t, handed(w, j), j, lines)
		whole.record = j.text()
		want := content(t, whole.record)
		if len(want) < len(chosen.Steps) || want[len(want)-1].Kind != bench.End {
			t.Fatalf("%s: %d events", name, len(want))
		}
		for n := 1; n < len(j.lines); n++ {
			left := bytes.Join(j.lines[:n], nil)
			r, err := bench.Read(left)
			if err != nil {
				t.Fatal(err)
			}
			on := &memory{lines: [][]byte{left}}
			g := handed(w, on) // the walk is the one that the record holds, as is seen below
			if err := errors.Join(g.Replay(r.Events), g.Resume()); err != nil {
				t.Fatalf("%s: killed behind line %d: %v", name, n, err)
			}
			rest := append(benchtest.Begin(), lines[max(whole.given(len(left)), 3):]...)
			if strings.Contains(g.Ask().Said, "been changed since") {
				rest = append([]string{"no"}, rest...)
			}
			(&played{}).take(t, g, on, rest)
			if got := content(t, on.text()); !reflect.DeepEqual(got, want) {
				t.Errorf("%s: killed behind line %d: got\n%+v\nwanted\n%+v", name, n, got, want)
			}
		}
		r, err := bench.Read(whole.record)
		if err != nil {
			t.Fatal(err)
		}
		if again, err := r.Header.Walk(); err != nil || !reflect.DeepEqual(again.Steps, w.Steps) {
			t.Errorf("%s: the record does not hold its walk: %v", name, err)
		}
	}
}

// handed is a guide for somebody at a terminal.
func handed(w *bench.Walk, to bench.Journal) *bench.Guide {
	g := bench.NewGuide(w, to, at)
	g.ByHand()
	return g
}

// Cut in its header there is no record; a line that is not one is named.
func TestReadRefuses(t *testing.T) {
	m := load(t, "pellin-park")
	chosen := bench.Shortest(context.Background(), m, sight.Eye, nil)
	w := bench.NewWalk(m, chosen, sight.Eye)
	whole := play(t, w, bench.NewHeader("test", noon, w, nil, chosen.How), answers)
	first := bytes.IndexByte(whole.record, '\n')
	for _, cut := range []int{0, 1, first / 2, first} {
		if _, err := bench.Read(whole.record[:cut]); err == nil {
			t.Errorf("cut at %d it is read", cut)
		}
	}
	for wrong, text := range map[string][]byte{
		"line 3":    bytes.Replace(whole.record, []byte(`{"event":"confirmed","what":"transmitter first"`), []byte(`{"event":"confirmed",what":"transmitter first"`), 1),
		"format 9":  bytes.Replace(whole.record, []byte(`{"hingeline_bench":1`), []byte(`{"hingeline_bench":9`), 1),
		"no record": []byte("{\"event\":\"end\"}\n"),
	} {
		if _, err := bench.Read(text); err == nil || !strings.Contains(err.Error(), wrong) {
			t.Errorf("wanted %q, got %v", wrong, err)
		}
	}
	for wrong, events := range map[string][]bench.Event{
		"there is no such part":     {{Kind: bench.Answer, Step: 1, Part: "tailplane", Saw: bench.WentUp}},
		"answers step 2":            {{Kind: bench.Answer, Step: 2}},
		"goes back to step 4":       {{Kind: bench.Back, Step: 4}},
		"ends at step 1":            {{Kind: bench.End}},
		"no event":                  {{Kind: "nonsense"}},
		"gives no angle":            {{Kind: bench.Measured, Step: 1, Part: "elevator"}},
		"says that":                 {{Kind: bench.Answer, Step: 1, Part: "elevator", Saw: "danced"}},
		`elevator "went LEFT": say`: {{Kind: bench.Answer, Step: 1, Part: "elevator", Saw: bench.WentLeft}},
		`elevator "RUNS": say`:      {{Kind: bench.Answer, Step: 1, Part: "elevator", Saw: bench.Runs}},
		"nobody watches":            {{Kind: bench.Answer, Step: 1, Part: "elevator", Saw: bench.WrongTime}},
		"not gone on with":          {{Kind: bench.Pause}, {Kind: bench.Answer, Step: 1}},
		"was not asked":             {{Kind: bench.Confirmed, What: "area clear"}},
		"before all was confirmed":  {{Kind: bench.Resumed}, {Kind: bench.Answer, Step: 1}},
	} {
		if err := bench.NewGuide(w, nil, at).Replay(append(confirmed(), events...)); err == nil || !strings.Contains(err.Error(), wrong) {
			t.Errorf("wanted %q, got %v", wrong, err)
		}
	}
	edited := slices.Clone(whole.record)
	edited = bytes.Replace(edited, []byte("channels:"), []byte("channels: "), 1)
	if r, err := bench.Read(edited); err == nil {
		if _, err = r.Header.Walk(); err != nil {
			t.Errorf("a space more changes no set-up: %v", err)
		}
	}
}

// confirmed are the events of all that must be so before anything moves.
func confirmed() (list []bench.Event) {
	for _, q := range bench.Questions {
		list = append(list, bench.Event{Kind: bench.Confirmed, What: q.Name})
	}
	return list
}

// Where the model or the radio was changed meanwhile, what was seen before counts no more,
// and stays in the record; where nothing was seen nobody is asked.
func TestResumeAfterARepair(t *testing.T) {
	m := load(t, "pellin-park")
	chosen := bench.Shortest(context.Background(), m, sight.Eye, nil)
	w := bench.NewWalk(m, chosen, sight.Eye)
	h := bench.NewHeader("test", noon, w, nil, chosen.How)
	resumed := func(said ...string) (*bench.Guide, *memory) {
		t.Helper()
		left := play(t, w, h, said).record
		r, err := bench.Read(left)
		if err != nil {
			t.Fatal(err)
		}
		j := &memory{lines: [][]byte{left}}
		g := bench.NewGuide(w, j, at)
		if err := g.Replay(r.Events); err != nil {
			t.Fatal(err)
		}
		if err := g.Resume(); err != nil {
			t.Fatal(err)
		}
		return g, j
	}
	if g, _ := resumed("y", "y"); strings.Contains(g.Ask().Said, "changed") {
		t.Error("asked, and nothing was seen")
	}
	begun := []string{"y", "y", "y", "y", "rudder other way", "y", "p"}
	g, j := resumed(begun...)
	for _, line := range []string{"perhaps", ""} {
		if r, _ := g.Take(line); r.Understood || !strings.Contains(r.Text, "if you do not know: yes") {
			t.Errorf("%q: %+v", line, r)
		}
	}
	if r, err := g.Take("yes"); err != nil || !strings.Contains(r.Text, "every step is to be done again") {
		t.Errorf("%+v, %v", r, err)
	}
	for _, line := range benchtest.Begin() {
		g.Take(line)
	}
	if ask := g.Ask(); ask.Step == nil || ask.Step.Number != 1 {
		t.Errorf("it goes on with %+v", ask)
	}
	if r := g.Report(context.Background(), nil); r.Verdict != result.NothingSeen {
		t.Errorf("what was seen before the repair counts: %s", r.Verdict)
	}
	if text := string(j.text()); !strings.Contains(text, `"saw":"the other way"`) || !strings.Contains(text, `"event":"changed"`) {
		t.Errorf("the record is %s", text)
	}
	g, _ = resumed(begun...)
	g.Take("no")
	if r := g.Report(context.Background(), nil); r.Verdict != result.SeenDiffers {
		t.Errorf("nothing was changed, and it does not count: %s", r.Verdict)
	}
	for wrong, events := range map[string][]bench.Event{
		"which was not asked": {{Kind: bench.Changed}},
		"before all was confirmed": append(confirmed(), bench.Event{Kind: bench.Answer, Step: 1}, bench.Event{Kind: bench.Resumed},
			bench.Event{Kind: bench.Answer, Step: 2}),
		"question \"restrained\"": append(append(confirmed(), bench.Event{Kind: bench.Answer, Step: 1}, bench.Event{Kind: bench.Resumed}), confirmed()...),
		"there nothing is":        append(confirmed(), bench.Event{Kind: bench.Undo, Step: 1}),
	} {
		if err := bench.NewGuide(w, nil, at).Replay(events); err == nil || !strings.Contains(err.Error(), wrong) {
			t.Errorf("wanted %q, got %v", wrong, err)
		}
	}
}

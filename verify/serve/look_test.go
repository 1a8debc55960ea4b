package serve

import (
	"strings"
	"testing"
	"time"

	"example.com/hingeline/verify/result"

	"example.com/hingeline/verify/bench"
)

// TestTapThatComesTooSoonIsNoAnswer taps as a finger does that does not look: nothing passes,
// however long it goes on.
func TestTapThatComesTooSoonIsNoAnswer(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	h := r.openBench(t)
	h.begins()
	r.s.bench.mu.Lock()
	at := time.Time{}.AddDate(1, 0, 0)
	r.s.bench.clock = func() time.Time {
		at = at.Add(bench.ShortestLook / 4)
		return at
	}
	r.s.bench.mu.Unlock()
	if v := h.does("back", 0, ""); v.Said == tooSoon {
		t.Error("going back was too soon")
	}
	kept, first := len(k.record().Events), h.v.Number
	for range 12 {
		if v := h.does("all", 0, ""); !v.Amiss || v.Said != tooSoon || v.Number != first || v.Phase != "step" {
			t.Fatalf("after a quarter of the time: %q at %s %d, wanted %q at step %d", v.Said, v.Phase, v.Number, tooSoon, first)
		}
	}
	for _, what := range []string{"say", "measure", "skip"} {
		if v := h.does(what, 1, "12 up"); v.Said != tooSoon {
			t.Errorf("%s: %q, wanted %q", what, v.Said, tooSoon)
		}
	}
	if n := len(k.record().Events); n != kept {
		t.Errorf("%d events kept, wanted %d", n, kept)
	}
	r.s.bench.mu.Lock()
	at = at.Add(bench.ShortestLook)
	r.s.bench.mu.Unlock()
	if v := h.expected(); v.Phase == "step" && v.Number != first+1 {
		t.Errorf("after the time: %q at %s %d", v.Said, v.Phase, v.Number)
	}
}

// TestMotorAndLostSignalAreSaidTwice walks all of a model: every step in which a motor must
// run, or the transmitter is off, wants to hear it once more, and passes by nothing else.
func TestMotorAndLostSignalAreSaidTwice(t *testing.T) {
	r, _ := atBench(t, "tarn-measured")
	h := r.openBench(t)
	h.begins()
	twice := 0
	for h.v.Phase == "step" {
		s, n := h.v.Step, h.v.Number
		must := s.Lost
		for _, p := range s.Parts {
			must = must || p.Moves && strings.HasPrefix(p.Must, "RUNS")
		}
		v := h.does("all", 0, "")
		if must && v.Phase != "again" {
			t.Fatalf("step %d passed at once: %+v", n, s)
		}
		if v.Phase != "again" {
			continue
		}
		twice++
		if len(v.Seen) == 0 || v.Number != n {
			t.Errorf("step %d: asked once more %q at %d", n, v.Seen, v.Number)
		}
		if twice == 1 {
			if v := h.does("all", 0, ""); v.Phase != "again" || v.Number != n {
				t.Errorf("step %d: passed by saying the same again: %s %d", n, v.Phase, v.Number)
			}
			if v := h.does("back", 0, ""); v.Phase != "step" || v.Number != n {
				t.Errorf("step %d: back leads to %s %d", n, v.Phase, v.Number)
			}
			if v := h.does("seen", 0, ""); v.Phase != "step" || v.Number != n {
				t.Errorf("step %d: seen, where nothing was said: %s %d", n, v.Phase, v.Number)
			}
			h.does("all", 0, "")
		}
		h.does("seen", 0, "")
	}
	if twice == 0 || h.v.Phase != "last" {
		t.Errorf("%d steps were said twice, and it came to %s", twice, h.v.Phase)
	}
}

func TestBenchSaysThatTheScriptFailsBeforeTheFirstStep(t *testing.T) {
	r, _ := atBench(t, "pellin-park")
	h := r.openBench(t)
	if h.v.Tone != "good" || h.v.Fails != "" || h.v.Short == "" {
		t.Errorf("a script that passes: %q %q %q", h.v.Tone, h.v.Short, h.v.Fails)
	}
	shown := shipping(t, "pellin-park")
	shown.Report.Verdict, shown.Report.Checks[0].Passed = result.Failed, false
	r.s.Show(shown)
	for h.v.Fails == "" {
		h.v = until(t, h.c, "bench").bench
	}
	if h.v.Phase != "start" || h.v.Tone != "bad" || !strings.HasPrefix(h.v.Short, "DO NOT FLY") {
		t.Errorf("a script that fails: %+v", h.v)
	}
}

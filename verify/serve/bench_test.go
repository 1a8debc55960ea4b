package serve

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/verifytest"
)

func TestBenchPageKeepsTheRecordThatTheTerminalKeeps(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	h := r.openBench(t)
	h.begins()
	wrong := 0
	lines := []string{"yes", "yes", "yes"}
	for h.v.Phase == "step" {
		s := h.v.Step
		if s.Picture == "" || len(s.Parts) == 0 {
			t.Fatalf("step %d: %+v", h.v.Number, s)
		}
		for _, p := range s.Parts {
			if p.Moves && slices.Contains(p.MayBe, "the other way") && wrong < 2 {
				wrong++
				n := h.v.Number
				if v := h.does("say", p.Number, "the other way"); v.Number != n || !v.Step.Touched || !v.Step.Parts[p.Number-1].Differs {
					t.Errorf("after the other way: %+v", v.Step)
				}
				lines = append(lines, fmt.Sprintf("#%d other way", p.Number))
				break
			}
		}
		h.expected()
		lines = append(lines, "y")
	}
	if h.v.Phase != "last" {
		t.Fatalf("%+v, wanted the last question", h.v)
	}
	h.does("finish", 0, "")
	for h.v.Phase == "working" {
		h.v = until(t, h.c, "bench").bench
	}
	if h.v.Phase != "over" || !strings.HasPrefix(h.v.Report, "differs") || h.v.Outcome.Word != "DO NOT FLY" || !strings.HasPrefix(h.v.Short, "DO NOT FLY") {
		t.Errorf("over: %+v", h.v)
	}
	if h.does("back", 0, ""); h.v.Phase != "over" || h.v.Amiss || !strings.HasPrefix(h.v.Report, "differs") {
		t.Errorf("over, and then back: %+v", h.v)
	}
	typed := &memory{m: k.m}
	w, err := typed.Begin(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range append(lines, "y") {
		if reply, err := w.Guide.Take(line); err != nil || !reply.Understood {
			t.Fatalf("%q: %+v, %v", line, reply, err)
		}
	}
	if got, want := events(k.record()), events(typed.record()); !slices.Equal(got, want) {
		t.Errorf("the page kept\n%s\nwanted\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if v := h.does("leave", 0, ""); v.Phase != "start" || v.Unfinished != 0 {
		t.Errorf("after it was left: %+v", v)
	}
}

// TestEveryWordThatIsOfferedIsTaken says all that is offered of every part in every step.
func TestEveryWordThatIsOfferedIsTaken(t *testing.T) {
	offered := map[bench.Saw]int{}
	for _, name := range []string{"bracken-20", "quoin-delta"} {
		k := &memory{m: verifytest.Shipped(t, name)}
		w, err := k.Begin(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		for range bench.Questions {
			w.Guide.Take("yes")
		}
		for !w.Guide.Present().Last {
			for _, p := range w.Guide.Present().Step.Parts {
				may := w.Guide.MayBe(p.Number)
				if len(may) < 3 {
					t.Errorf("%s: of the %s can be said only %q", name, p.Name, may)
				}
				for _, saw := range may {
					offered[saw]++
					if reply, err := w.Guide.Say(p.Number, saw); err != nil || !reply.Understood {
						t.Errorf("%s: %s %s: %+v, %v", name, p.Name, saw, reply, err)
					}
				}
			}
			w.Guide.Take("y")
		}
	}
	for _, saw := range []bench.Saw{bench.OtherWay, bench.DidNot, bench.TooLittle, bench.TooMuch, bench.WentUp, bench.WentLeft, bench.Runs, bench.Unsure} {
		if offered[saw] == 0 {
			t.Errorf("%q is never offered", saw)
		}
	}
}

func TestBenchPageGoesBackSkipsPausesAndGoesOn(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	h := r.openBench(t)
	h.begins()
	first := h.v.Step.Stand
	if v := h.expected(); v.Number != 2 {
		t.Fatalf("step %d, wanted 2", v.Number)
	}
	if v := h.does("back", 0, ""); v.Number != 1 || !slices.Equal(v.Step.Stand, first) {
		t.Errorf("back: step %d", v.Number)
	}
	if v := h.does("skip", 0, " "); v.Number != 1 || !v.Amiss {
		t.Errorf("skipped without a reason: %+v", v)
	}
	if v := h.does("skip", 0, "the lead is\ntoo short"); v.Number != 2 {
		t.Errorf("not skipped: %+v", v)
	}
	part := h.v.Step.Parts[slices.IndexFunc(h.v.Step.Parts, func(p partView) bool { return len(p.Ways) == 2 })]
	if v := h.does("measure", part.Number, "12 sideways"); !v.Amiss {
		t.Errorf("a measurement without a way: %+v", v)
	}
	if v := h.does("measure", part.Number, "1.5 "+part.Ways[0]); v.Amiss || len(v.Step.Parts[part.Number-1].Said) != 1 {
		t.Errorf("measured: %q, %+v", v.Said, v.Step.Parts[part.Number-1])
	}
	if v := h.does("pause", 0, ""); v.Phase != "start" || v.Unfinished != 1 {
		t.Errorf("paused: %+v", v)
	}
	if v := h.does("resume", 0, ""); v.Phase != "question" || v.Of != 0 || !strings.Contains(v.Question, "changed since") {
		t.Errorf("gone on: %+v", v)
	}
	h.does("no", 0, "")
	for range bench.Questions {
		h.does("yes", 0, "")
	}
	if h.v.Number != 2 || !h.v.Step.Touched {
		t.Errorf("gone on at step %d", h.v.Number)
	}
	if !slices.ContainsFunc(k.record().Events, func(e bench.Event) bool { return e.Reason == "the lead is too short" }) {
		t.Errorf("the reason is not kept: %+v", k.record().Events)
	}
	if v := h.does("no", 0, ""); v.Phase != "step" || v.Number != 2 {
		t.Errorf("no is no answer to a step: %+v", v)
	}
}

func TestBenchTakesEachAnswerOnce(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	one := r.openBench(t)
	one.begins()
	two := r.openBench(t)
	if two.v.Number != 1 || two.v.Turn != one.v.Turn {
		t.Fatalf("the second page is at %+v", two.v)
	}
	said := fmt.Sprintf(`{"turn":%d,"do":"all","part":0,"text":""}`, one.v.Turn)
	for range 1000 { // a finger that lies on the button, on both
		send(t, one.c, said)
		send(t, two.c, said)
	}
	one.does("back", 0, "") // an answer to a question that is gone is none
	for one.v.Number != 2 {
		one.v = until(t, one.c, "bench").bench
	}
	if v := one.does("back", 0, ""); v.Number != 1 {
		t.Errorf("step %d, wanted back at 1", v.Number)
	}
	all := 0
	for _, e := range k.record().Events {
		if e.Kind == bench.Answer {
			all++
		}
	}
	if all != 1 {
		t.Errorf("%d answers kept, wanted 1", all)
	}
}

func TestBenchOfAChangedSetUpIsNotGoneOnWith(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	h := r.openBench(t)
	h.begins()
	kept := len(k.record().Events)
	r.s.Show(shipping(t, "ousel-trainer"))
	for !h.v.Changed {
		h.v = until(t, h.c, "bench").bench
	}
	if v := h.does("all", 0, ""); !v.Amiss || len(k.record().Events) != kept {
		t.Errorf("an answer about another set-up was taken: %+v", v)
	}
	if v := h.does("leave", 0, ""); v.Phase != "start" {
		t.Errorf("%+v", v)
	}
}

func TestAnswerThatCannotBeKeptIsSaid(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	h := r.openBench(t)
	h.begins()
	k.mu.Lock()
	k.full = true
	k.mu.Unlock()
	if v := h.does("all", 0, ""); !v.Amiss || !strings.Contains(v.Said, "NOT KEPT: no room on this disk") || v.Phase != "start" {
		t.Errorf("%+v", v)
	}
	r.logged("the last answer was not kept")
}

func TestNonsenseAtTheBenchIsRefusedAndLogged(t *testing.T) {
	r, k := atBench(t, "pellin-park")
	for _, c := range []struct{ message, logged string }{
		{`{"turn":0,"do":"begin","file":"/etc/passwd"}`, "unknown field"},
		{`{"turn":0,"do":"delete","part":0,"text":""}`, "is nothing to do at the bench"},
		{`{"turn":0,"do":"say","part":-1,"text":""}`, "about part -1"},
		{`{"turn":0,"do":"skip","part":0,"text":"` + strings.Repeat("x", longestSpoken+1) + `"}`, "about part 0"},
		{handOf(1, 1, positions(k.m, nil), ""), "unknown field"},
		{`{"turn":"0"}`, "cannot unmarshal string"},
	} {
		h := r.openBench(t)
		send(t, h.c, c.message)
		r.logged(c.logged)
		h.c.CloseNow()
	}
	if k.text != nil {
		t.Errorf("something was kept: %q", k.text)
	}
	h := r.openBench(t)
	h.begins()
	for _, c := range []struct {
		part int
		text string
	}{{99, "the other way"}, {0, "the other way"}, {1, "safe"}, {1, ""}} {
		if v := h.does("say", c.part, c.text); !v.Amiss {
			t.Errorf("part %d %q: %+v", c.part, c.text, v)
		}
	}
}

func TestWithoutABenchThereIsNoSocketOfOne(t *testing.T) {
	r := run(t, shipping(t, "pellin-park"))
	if _, err := r.socket(benchSocketPath+r.s.token, map[string]string{"Origin": "http://" + r.host}); err == nil {
		t.Error("let in")
	}
	r.logged("a bench where there is none")
}

package bench_test

import (
	"context"
	"reflect"
	"strings"
	"testing"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// asked goes through a walk of two steps of the sorrel in which one aileron goes the other
// way with the stick: that its channel is reversed, or the sign of its mix, may be why.
func asked(t *testing.T) (*bench.Walk, *bench.Header, []string) {
	t.Helper()
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Eye, set(0, -100))
	return w, bench.NewHeader("test", noon, w, nil, "by hand"), append(benchtest.Begin(), "y", "1 o", "y")
}

// Behind the last step those are asked for that tell apart what would explain the answers,
// until none tells more; the record holds them.
func TestStepsThatDecide(t *testing.T) {
	w, h, lines := asked(t)
	j := &memory{}
	if err := h.Begin(j); err != nil {
		t.Fatal(err)
	}
	g := bench.NewGuide(w, j, at)
	for _, line := range lines {
		if r, err := g.Take(line); err != nil || !r.Understood {
			t.Fatalf("%q: %+v, %v", line, r, err)
		}
	}
	before := len(g.Report(context.Background(), nil).Causes.Suspects)
	more := 0
	for !g.Over() {
		ask := g.Ask()
		if strings.HasPrefix(ask.Prompt, "Enter: show it; f: finish without") {
			if more == 0 && !strings.Contains(ask.Said, "DO NOT FLY") {
				t.Errorf("%q", ask.Said)
			}
			more++
			if r, _ := g.Take("gibberish"); r.Understood || !strings.Contains(r.Text, "f finishes without it") {
				t.Errorf("%+v", r)
			}
		}
		if ask.Step != nil && (!ask.Step.Further || ask.Step.Number != 2+more || ask.Step.Of != 2) {
			t.Errorf("%+v", ask.Step)
		}
		if r, err := g.Take("y"); err != nil || !r.Understood {
			t.Fatalf("%+v, %v", r, err)
		}
	}
	r := g.Report(context.Background(), nil)
	if more == 0 || len(r.Steps) != 2+more || r.Causes.Next != nil || r.Verdict != result.SeenDiffers {
		t.Fatalf("%d steps more, %d in all, %s, next %+v", more, len(r.Steps), r.Verdict, r.Causes.Next)
	}
	if after := len(r.Causes.Suspects); after >= before && before > 0 {
		t.Errorf("%d suspects before, %d after", before, after)
	}
	if len(w.Steps) != 2 {
		t.Errorf("the walk that was handed in has %d steps now", len(w.Steps))
	}

	// Read again it comes to the same, and so does a record that was cut off anywhere.
	read, err := bench.Read(j.text())
	if err != nil {
		t.Fatal(err)
	}
	for cut := range read.Events {
		text, report := goOn(t, j.text()[:ends(j, cut+1)], rest(read.Events[cut:]))
		if got := content(t, text); !reflect.DeepEqual(got, content(t, j.text())) {
			t.Errorf("cut after %d events: %+v", cut, got)
		}
		if !reflect.DeepEqual(report.Steps, r.Steps) || !reflect.DeepEqual(report.Causes, r.Causes) {
			t.Errorf("cut after %d events the report differs", cut)
		}
	}
	if seal, err := bench.SealOf(j.text()); err != nil || seal.Steps.All != len(r.Steps) || !seal.Ended {
		t.Errorf("%+v, %v", seal, err)
	}
}

// ends is how many bytes the first lines of a record are.
func ends(j *memory, lines int) (n int) {
	for _, line := range j.lines[:lines] {
		n += len(line)
	}
	return n
}

// rest are the lines that make the events, without what is asked again.
func rest(events []bench.Event) (lines []string) {
	for _, e := range events {
		switch {
		case e.Kind == bench.Confirmed:
		case e.Kind == bench.Answer && e.Part != "":
			lines = append(lines, e.Part+" "+string(e.Saw))
		default:
			lines = append(lines, "y")
		}
	}
	return lines
}

// Somebody finishes without them, or goes back behind them: then they are forgotten.
func TestStepsThatDecideAreLeftOut(t *testing.T) {
	w, h, lines := asked(t)
	if p := play(t, w, h, append(lines, "f")); len(p.report.Steps) != 2 || p.report.Causes.Next == nil {
		t.Errorf("%d steps, next %+v", len(p.report.Steps), p.report.Causes.Next)
	}
	// At the end of what is said it is finished too, and not left open.
	if s, err := bench.SealOf(play(t, w, h, lines).record); err != nil || !s.Ended {
		t.Errorf("%+v, %v", s, err)
	}
	p := play(t, w, h, append(lines, "y", "b", "b", "y", "y"))
	if len(p.report.Steps) != 2 || p.report.Verdict != result.SeenAsExpected {
		t.Errorf("%d steps, %s", len(p.report.Steps), p.report.Verdict)
	}
}

// Where nothing differs, or only sizes do, none is asked for.
func TestNothingToDecide(t *testing.T) {
	w, h, _ := asked(t)
	for _, lines := range [][]string{{"y", "y", "y"}, {"y", "1 l", "y", "y"}, {"y", "s wind", "y"}} {
		if p := play(t, w, h, append(benchtest.Begin(), lines...)); len(p.report.Steps) != 2 {
			t.Errorf("%q: %d steps", lines, len(p.report.Steps))
		}
	}
}

// A step to decide that nobody may have asked for is refused, and one that this version
// does not know explains nothing and breaks nothing.
func TestStepsThatDecideOfARecord(t *testing.T) {
	w, h, lines := asked(t)
	whole := play(t, w, h, append(lines, "y", "y"))
	r, err := bench.Read(whole.record)
	if err != nil {
		t.Fatal(err)
	}
	at := -1
	for i, e := range r.Events {
		if e.Kind == bench.Further && at < 0 {
			at = i
		}
	}
	if at < 0 {
		t.Fatal("no step to decide in it")
	}
	replay := func(change func(e *bench.Event)) error {
		events := append([]bench.Event{}, r.Events[:at+1]...)
		pose := *events[at].Pose
		pose.After = append([]float64{}, pose.After...)
		events[at].Pose = &pose
		change(&events[at])
		g := bench.NewGuide(w, nil, nil)
		err := g.Replay(events)
		if err == nil {
			g.Report(context.Background(), nil)
		}
		return err
	}
	for wrong, change := range map[string]func(e *bench.Event){
		"before the others are done": func(e *bench.Event) { e.Pose = nil },
		"asks for a step":            func(e *bench.Event) { e.Step = 1 },
		"cannot be set":              func(e *bench.Event) { e.Pose.After[0] = 200 },
		"there is no such part":      func(e *bench.Event) { e.Pose.Watch = []string{"kite"} },
	} {
		if err := replay(change); err == nil || !strings.Contains(err.Error(), wrong) {
			t.Errorf("wanted %q, got %v", wrong, err)
		}
	}
	if err := replay(func(e *bench.Event) { e.Pose.After[0], e.Pose.After[1] = 33, -41 }); err != nil {
		t.Error(err)
	}
	if len(mistake.All(w.Model, mistake.Options{})) == 0 {
		t.Error("there is no mistake to tell apart")
	}
}

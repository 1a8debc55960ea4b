package bench_test

import (
	"bytes"
	"context"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/bench/benchtest"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

const sorrel = `hingeline: 1
name: Sorrel
controls: {roll stick: roll, pitch stick: pitch, throttle: lever, gear switch: [lowered, raised], motor switch: [safe, live]}
demands:
  roll: roll stick
  pitch: pitch stick
  throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}
  gear: {from: gear switch, values: {lowered: 100%, raised: -100%}}
channels:
  1: {name: port aileron, mix: roll}
  2: {name: elevator, mix: pitch}
  3: {name: starboard aileron, mix: [{add: roll, share: -100%}]}
  4: {name: motor, mix: [throttle, {replace_with: -100%, when: motor switch is safe}], failsafe: -100%}
  5: {name: gear, mix: gear, slow: 3 s}
surfaces:
  port aileron: {channel: 1, chord_mm: 40, measured: {100%: 22° down}}
  elevator: {channel: 2, aka: tailplane, measured: {100%: 20° up}}
  starboard aileron: {channel: 3, chord_mm: 40, measured: {100%: 22° down}}
motors: {motor: {channel: 4, stopped_when: motor switch is safe}}
extras: {retracts: {kind: retract, channel: 5}}
`

func sorrelModel(t testing.TB) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load("sorrel.yaml", []byte(sorrel))
	if m == nil {
		t.Fatalf("%+v", problems)
	}
	return m
}

// poses are steps of a model by what they move.
func walkOf(t testing.TB, m *airframes.Model, look sight.Look, moves ...func(*mixcore.Input)) *bench.Walk {
	t.Helper()
	c := bench.Chosen{How: "by hand", Steps: []sight.Step{{From: m.Plan.Rest(), To: m.Plan.Rest()}}, Watch: make([][]int, len(moves)+1)}
	for _, move := range moves {
		s := sight.Step{From: m.Plan.Rest(), To: m.Plan.Rest()}
		move(&s.To)
		c.Steps = append(c.Steps, s)
	}
	return bench.NewWalk(m, c, look)
}

func set(control int, at float64) func(*mixcore.Input) {
	return func(in *mixcore.Input) { in.Position[control] = at }
}

// What a line comes to: the reply, or the event that it made.
func TestLinesAreUnderstood(t *testing.T) {
	m := sorrelModel(t)
	up := func(step int, part string, saw bench.Saw) bench.Event {
		return bench.Event{Kind: bench.Answer, Step: step, Part: part, Saw: saw, At: noon}
	}
	measured := func(part string, degrees float64, way string) bench.Event {
		return bench.Event{Kind: bench.Measured, Step: 2, Part: part, Degrees: &degrees, Way: way, At: noon}
	}
	fifteen, half := 15.0, 50.0
	mm := measured("port aileron", 21.614, "UP")
	mm.Length = &fifteen
	for _, c := range []struct {
		step  int // 1 stands, 2 rolls left, 3 pitches
		lines []string
		want  bench.Event
		says  string // where nothing comes of it
	}{
		{2, []string{""}, bench.Event{Kind: bench.Answer, Step: 2, At: noon}, ""},
		{2, []string{"Y"}, bench.Event{Kind: bench.Answer, Step: 2, At: noon}, ""},
		{2, []string{"1 up"}, up(2, "port aileron", bench.WentUp), ""},
		{2, []string{"port aileron other way"}, up(2, "port aileron", bench.OtherWay), ""},
		{2, []string{"Port-Aileron  went UP"}, up(2, "port aileron", bench.WentUp), ""},
		{2, []string{"left aileron o"}, up(2, "port aileron", bench.OtherWay), ""},
		{2, []string{"n 4"}, up(2, "starboard aileron", bench.DidNot), ""},
		{2, []string{"tailplane down"}, up(2, "elevator", bench.WentDown), ""},
		{2, []string{"star m"}, up(2, "starboard aileron", bench.TooMuch), ""},
		{2, []string{"l", "1"}, up(2, "port aileron", bench.TooLittle), ""},
		{2, []string{"l", "prot aileron", "port aileron"}, up(2, "port aileron", bench.TooLittle), ""},
		{2, []string{"e", "elevator", "up"}, up(2, "elevator", bench.WentUp), ""},
		{2, []string{"e elevator up"}, up(2, "elevator", bench.WentUp), ""},
		{2, []string{"elevator", "down"}, up(2, "elevator", bench.WentDown), ""},
		{2, []string{"motor runs"}, up(2, "motor", bench.Runs), ""},
		{2, []string{"motor before runs"}, bench.Event{Kind: bench.Answer, Step: 2, Part: "motor", Saw: bench.Runs, Before: true, At: noon}, ""},
		{2, []string{"1 cannot say"}, up(2, "port aileron", bench.Unsure), ""},
		{2, []string{"1 12 up"}, measured("port aileron", 12, "UP"), ""},
		{2, []string{"port aileron 12,5° down"}, measured("port aileron", 12.5, "DOWN"), ""},
		{2, []string{"port aileron 0"}, measured("port aileron", 0, ""), ""},
		{2, []string{"1 15 mm up"}, mm, ""},
		{2, []string{"retracts 50 %"}, bench.Event{Kind: bench.Measured, Step: 2, Part: "retracts", Percent: &half, At: noon}, ""},
		{3, []string{"o"}, up(3, "elevator", bench.OtherWay), ""},
		{3, []string{"12 deg down"}, bench.Event{Kind: bench.Measured, Step: 3, Part: "elevator", Degrees: ptr(12.0), Way: "DOWN", At: noon}, ""},
		{3, []string{"12 up"}, bench.Event{Kind: bench.Measured, Step: 3, Part: "elevator", Degrees: ptr(12.0), Way: "UP", At: noon}, ""},
		{3, []string{"#3 down"}, up(3, "elevator", bench.WentDown), ""},
		{2, []string{"s no time at all"}, bench.Event{Kind: bench.Skip, Step: 2, Reason: "no time at all", At: noon}, ""},
		{2, []string{"skip", "Rudder OFF"}, bench.Event{Kind: bench.Skip, Step: 2, Reason: "Rudder OFF", At: noon}, ""},
		{2, []string{"b"}, bench.Event{Kind: bench.Back, Step: 1, At: noon}, ""},
		{2, []string{"p"}, bench.Event{Kind: bench.Pause, At: noon}, ""},

		{3, []string{"3 down"}, bench.Event{}, "is that part 3, or 3 degrees?"},
		{2, []string{"prot aileron up"}, bench.Event{}, `did you mean "port aileron"?`},
		{2, []string{"9 up"}, bench.Event{}, "there is no part 9; they are 1 to 5"},
		{2, []string{"1 left"}, bench.Event{}, "port aileron goes up, down, still"},
		{2, []string{"1 12"}, bench.Event{}, "say which way"},
		{2, []string{"1 -12 up"}, bench.Event{}, "without a sign"},
		{2, []string{"1 400 up"}, bench.Event{}, "more than any surface turns"},
		{2, []string{"1 200 mm up"}, bench.Event{}, "cannot go"},
		{2, []string{"elevator 9 mm up"}, bench.Event{}, "does not say the chord"},
		{2, []string{"motor other way"}, bench.Event{}, "motor goes runs, stopped"},
		{2, []string{"elevator m"}, bench.Event{}, "should not move here"},
		{2, []string{"1 time"}, bench.Event{}, "nobody watches here"},
		{2, []string{"motor 120 %"}, bench.Event{}, "write percent"},
		{2, []string{"1 before up"}, bench.Event{}, "before a movement a surface is measured"},
		{1, []string{"1 before 2 up"}, bench.Event{}, "nothing is moved in this step"},
		{2, []string{"gibberish"}, bench.Event{}, "not understood"},
		{2, []string{"s", ""}, bench.Event{}, "a step is skipped for a reason"},
		{1, []string{"b"}, bench.Event{}, "this is the first step"},
	} {
		w := walkOf(t, m, sight.Eye, set(0, -100), set(1, 100))
		j := &memory{}
		g := bench.NewGuide(w, j, at)
		for range 2 + c.step {
			if _, err := g.Take("y"); err != nil {
				t.Fatal(err)
			}
		}
		before := len(j.lines)
		var reply bench.Reply
		for _, line := range c.lines {
			g.Ask()
			reply, _ = g.Take(line)
		}
		events, err := bench.Read(append([]byte("{\"hingeline_bench\":1}\n"), bytes.Join(j.lines[before:], nil)...))
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case c.says != "":
			if reply.Understood || !strings.Contains(reply.Text+"; "+reply.Hint, c.says) || len(events.Events) > 0 {
				t.Errorf("%q: got %+v and %+v, wanted %q", c.lines, reply, events.Events, c.says)
			}
		case len(events.Events) != 1 || !reflect.DeepEqual(events.Events[0], c.want):
			t.Errorf("%q: got %s (%+v), wanted %+v", c.lines, bytes.Join(j.lines[before:], nil), reply, c.want)
		}
	}
}

func ptr(x float64) *float64 { return &x }

// Whatever is typed, nothing breaks, and what was written down comes to the same again.
func TestAnythingMayBeTyped(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Measured, set(0, -100), set(2, 100), set(1, 50))
	words := []string{"y", "o", "n", "l", "m", "e", "u", "t", "b", "s", "p", "h", "r", "1", "2", "5", "#3", "port aileron", "motor", "retracts", "up", "down", "in", "runs", "before", "12", "0", "9 mm", "50 %", "-1", "NaN", "1e999", "\xff", "", "faster"}
	rapid.Check(t, func(t *rapid.T) {
		j := &memory{}
		g := bench.NewGuide(w, j, at)
		for range rapid.IntRange(0, 40).Draw(t, "lines") {
			if g.Over() {
				break
			}
			g.Ask()
			line := strings.Join(rapid.SliceOfN(rapid.SampledFrom(words), 0, 4).Draw(t, "line"), " ")
			if rapid.IntRange(0, 2).Draw(t, "plain") == 0 {
				line = "y"
			}
			before := len(j.lines)
			reply, err := g.Take(line)
			if err != nil {
				t.Fatalf("%q: %v", line, err)
			}
			if wrote := len(j.lines) - before; wrote > 1 || wrote > 0 && !reply.Understood {
				t.Fatalf("%q: %+v, and %d events", line, reply, wrote)
			}
		}
		r, err := bench.Read(append([]byte("{\"hingeline_bench\":1}\n"), j.text()...))
		if err != nil {
			t.Fatal(err)
		}
		again := bench.NewGuide(w, nil, at)
		if err := again.Replay(r.Events); err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(g.Steps(), again.Steps()) {
			t.Fatalf("%+v, and again %+v", g.Steps(), again.Steps())
		}
	})
}

// The poses of every shipped script, walked with the model as it should be, and with a
// mistake that shows there.
func TestScriptsOwnPoses(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := load(t, name)
		text, _ := features.Read(name)
		files := []script.File{{Name: name + ".feature", Text: text}}
		chosen, problems := bench.OfScript(m, files, sight.Eye)
		if len(chosen.Steps) < 3 {
			t.Fatalf("%s: %d steps, %+v", name, len(chosen.Steps), problems)
		}
		w := bench.NewWalk(m, chosen, sight.Eye)
		right := benchtest.Modeller{Walk: w, Plan: m.Plan}
		if r := walked(t, w, right.All()).Report(context.Background(), nil); r.Verdict != result.SeenAsExpected {
			t.Errorf("%s: %s", name, r.Verdict)
		}
		all := mistake.All(m, mistake.Options{})
		variant, faults := all[0].Variant(m) // a reversed channel
		if faults != nil {
			continue
		}
		wrong := benchtest.Modeller{Walk: w, Plan: variant.Plan}
		if r := walked(t, w, wrong.All()).Report(context.Background(), nil); r.Verdict != result.SeenDiffers || len(r.Causes.Suspects) == 0 {
			t.Errorf("%s: with %s: %s", name, all[0].Text, r.Verdict)
		}
	}
	if _, problems := bench.OfScript(sorrelModel(t), []script.File{{Name: "x.feature", Text: []byte("nonsense")}}, sight.Eye); problems == nil {
		t.Error("a script of nonsense has poses")
	}
}

// What a signature binds: the bytes, and one line.
func TestSealOfARecord(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Eye, set(0, -100), set(1, 100))
	h := bench.NewHeader("test", noon, w, nil, "by hand")
	begin := benchtest.Begin()
	for _, c := range []struct {
		lines []string
		says  string
		right bool
	}{
		{append(begin, "y", "y", "y", "y"), "seen on the model: 3 of 3 steps as expected, 2026-11-25", true},
		{append(begin, "y", "1 o", "y", "y", "f"), "seen on the model: 2 of 3 steps as expected, 1 NOT AS EXPECTED, 2026-11-25", false},
		{append(begin, "y", "s wind", "y", "y"), "seen on the model: 2 of 3 steps as expected, 1 skipped, 2026-11-25", false},
		{append(begin, "y", "u 1", "y", "y", "y"), "seen on the model: 2 of 3 steps as expected, 1 not seen, 2026-11-25", false},
		{append(begin, "y", "y", "y"), "seen on the model: 3 of 3 steps as expected, 2026-11-25", true}, // the end of what is said ends it
		{append(begin, "y"), "seen on the model: 1 of 3 steps as expected, 2 not seen, not finished, 2026-11-25", false},
	} {
		p := play(t, w, h, c.lines)
		s, err := bench.SealOf(p.record)
		if err != nil {
			t.Fatal(err)
		}
		if s.Summary != c.says || s.AsExpected != c.right || s.SetUp != h.SetUp || s.Model != "Sorrel" || !strings.HasPrefix(s.Digest, "sha256:") {
			t.Errorf("%q: %+v", c.lines, s)
		}
		for cut := len(p.record) - 1; cut > len(p.record)-20; cut-- {
			if _, err := bench.SealOf(p.record[:cut]); err == nil {
				t.Errorf("cut off at %d it is sealed", cut)
			}
		}
		edited := bytes.Replace(p.record, []byte("22° down"), []byte("25° down"), 1)
		if _, err := bench.SealOf(edited); err == nil {
			t.Error("with another airframe file in it, it is sealed")
		}
	}
}

// Too little or too much without a measurement is no cause, and no yes.
func TestSizesAreNoYes(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Eye, set(0, -100), set(1, 100))
	r := walked(t, w, append(benchtest.Begin(), "y", "1 l", "y", "m", "y", "y")).Report(context.Background(), nil)
	if r.Verdict != result.SeenDiffers || r.Sizes != 2 || len(r.Causes.Suspects) > 0 {
		t.Errorf("%s, %d sizes, %+v", r.Verdict, r.Sizes, r.Causes)
	}
}

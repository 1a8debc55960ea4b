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
		{2, []string{""}, bench.Event{}, `Enter alone says nothing: y is "all is as expected"`},
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
		{2, []string{"The left aileron went down."}, up(2, "port aileron", bench.WentDown), ""},
		{2, []string{"right aileron wrong way"}, up(2, "starboard aileron", bench.OtherWay), ""},
		{2, []string{"port aileron goes the wrong way"}, up(2, "port aileron", bench.OtherWay), ""},
		{2, []string{"port aileron didn\u2019t move at all"}, up(2, "port aileron", bench.DidNot), ""},
		{2, []string{"port aileron doesn't move"}, up(2, "port aileron", bench.DidNot), ""},
		{2, []string{"1up"}, up(2, "port aileron", bench.WentUp), ""},
		{2, []string{"port down"}, up(2, "port aileron", bench.WentDown), ""},
		{2, []string{"aileron down", "4"}, up(2, "starboard aileron", bench.WentDown), ""},
		{2, []string{"o aileron", "port"}, up(2, "port aileron", bench.OtherWay), ""},
		{3, []string{"didn't move"}, up(3, "elevator", bench.DidNot), ""},
		{3, []string{"nothing moved"}, up(3, "elevator", bench.DidNot), ""},
		{3, []string{"went down"}, up(3, "elevator", bench.WentDown), ""},
		{1, []string{"1 at neutral"}, up(1, "port aileron", bench.DidNot), ""},
		{2, []string{"#1 5 up"}, measured("port aileron", 5, "UP"), ""},
		{2, []string{"1 5deg up"}, measured("port aileron", 5, "UP"), ""},
		{2, []string{"1 5.0 up"}, measured("port aileron", 5, "UP"), ""},
		{2, []string{"port aileron 5 up"}, measured("port aileron", 5, "UP"), ""},
		{2, []string{"1 99 up sure"}, measured("port aileron", 99, "UP"), ""},
		{2, []string{"exit"}, bench.Event{Kind: bench.Pause, At: noon}, ""},
		{2, []string{"s no time at all"}, bench.Event{Kind: bench.Skip, Step: 2, Reason: "no time at all", At: noon}, ""},
		{2, []string{"skip", "Rudder OFF"}, bench.Event{Kind: bench.Skip, Step: 2, Reason: "Rudder OFF", At: noon}, ""},
		{2, []string{"b"}, bench.Event{Kind: bench.Back, Step: 1, At: noon}, ""},
		{2, []string{"p"}, bench.Event{Kind: bench.Pause, At: noon}, ""},

		{2, []string{"1 5 down"}, bench.Event{}, `is that 5° of part 1, or parts 1 and 5? write "1 5° down" or "1, 5 down"`},
		{2, []string{"1 3 4 down"}, bench.Event{}, `several parts are written with commas: "1, 3, 4 down"`},
		{2, []string{"1,4 down"}, bench.Event{}, "is that parts 1 and 4, or 1.4?"},
		{2, []string{"1, 4"}, bench.Event{}, "say what the port aileron did"},
		{2, []string{"1 down, 1 up"}, bench.Event{}, "is told twice"},
		{2, []string{"1 down and gibberish"}, bench.Event{}, `not understood: "gibberish"`},
		{2, []string{"1, 4 left"}, bench.Event{}, "say what the port aileron did: up, down or still"},
		{2, []string{"1, aileron up"}, bench.Event{}, "which of them: 1 port aileron, 4 starboard aileron"},
		{2, []string{"no"}, bench.Event{}, "then say which part, and what it did"},
		{2, []string{"aileron 12 up"}, bench.Event{}, "which of them: 1 port aileron, 4 starboard aileron"},
		{2, []string{"1 99 up"}, bench.Event{}, `99° UP (61 mm) is far beyond what the port aileron does in this walk; if it is so, write "sure" behind it`},
		{2, []string{"undo"}, bench.Event{}, "nothing is noted in this step"},
		{1, []string{"1 o"}, bench.Event{}, "the port aileron should be at neutral here; say where the port aileron stands: up, down or at neutral"},
		{1, []string{"nothing moved"}, bench.Event{}, "nothing must move here"},
		{3, []string{"3 down"}, up(3, "elevator", bench.WentDown), ""},
		{3, []string{"4 down"}, bench.Event{}, "is that part 4, or 4 degrees?"},
		{2, []string{"prot aileron up"}, bench.Event{}, `did you mean "port aileron"?`},
		{2, []string{"9 up"}, bench.Event{}, "there is no part 9; they are 1 to 5"},
		{2, []string{"1 left"}, bench.Event{}, "say what the port aileron did: up, down or still"},
		{2, []string{"1 12"}, bench.Event{}, "say which way"},
		{2, []string{"1 -12 up"}, bench.Event{}, "without a sign"},
		{2, []string{"1 400 up"}, bench.Event{}, "more than any surface turns"},
		{2, []string{"1 200 mm up"}, bench.Event{}, "cannot go"},
		{2, []string{"elevator 9 mm up"}, bench.Event{}, "does not say the chord"},
		{2, []string{"motor other way"}, bench.Event{}, "say what the motor does: runs, stopped, faster or slower"},
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
		events, err := bench.Read(append([]byte("{\"hingeline_bench\":1,\"date\":\""+noon+"\"}\n"), bytes.Join(j.lines[before:], nil)...))
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

// Whatever is typed or said on the page, nothing breaks, and what was written down comes to the same again.
func TestAnythingMayBeTyped(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Measured, set(0, -100), set(2, 100), set(1, 50))
	words := []string{"y", "o", "n", "l", "m", "e", "u", "t", "b", "s", "p", "h", "r", "1", "2", "5", "#3", "port aileron", "motor", "retracts", "up", "down", "in", "runs", "before", "12", "0", "9 mm", "50 %", "-1", "NaN", "1e999", "\xff", "", "faster", ",", "and", "4, 5", "nothing", "undo", "the", "didn't move", "4,5", "sure", "aileron"}
	saws := []bench.Saw{bench.AsExpected, bench.OtherWay, bench.DidNot, bench.TooMuch, bench.WrongTime, bench.Unsure, bench.WentUp, bench.WentLeft, bench.WentIn, bench.Runs, bench.Stopped, bench.Slower, "flew away", ""}
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
			reply, err := bench.Reply{}, error(nil)
			if saw := rapid.SampledFrom(saws).Draw(t, "saw"); rapid.IntRange(0, 2).Draw(t, "pointed") == 0 { // as the page does
				line = string(saw)
				reply, err = g.Say(rapid.IntRange(-1, 7).Draw(t, "number"), saw)
			} else {
				reply, err = g.Take(line)
			}
			if err != nil {
				t.Fatalf("%q: %v", line, err)
			}
			several := strings.ContainsAny(line, ",") || strings.Contains(line, " and ") || strings.Contains(line, "nothing")
			if wrote := len(j.lines) - before; wrote > 1 && !several || wrote > 0 && !reply.Understood {
				t.Fatalf("%q: %+v, and %d events", line, reply, wrote)
			}
		}
		r, err := bench.Read(append([]byte("{\"hingeline_bench\":1,\"date\":\""+noon+"\"}\n"), j.text()...))
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

// A model without a motor is asked whether it is held, and not about a propeller.
func TestQuestionsFitTheModel(t *testing.T) {
	asked := func(m *airframes.Model) (all string) {
		g := bench.NewGuide(walkOf(t, m, sight.Eye, set(0, -100)), &memory{}, at)
		for range 3 {
			all += g.Ask().Said + "\n"
			g.Take("yes")
		}
		if ask := g.Ask(); ask.Step == nil {
			t.Errorf("more than three questions: %+v", ask)
		}
		return all
	}
	if all := asked(sorrelModel(t)); !strings.Contains(all, "propeller off") {
		t.Errorf("with a motor: %s", all)
	}
	if all := asked(load(t, "skerry")); strings.Contains(all, "propeller") || !strings.Contains(all, "held") || !strings.Contains(all, "transmitter switched on first") {
		t.Errorf("without a motor: %s", all)
	}
}

// What is offered fits the step: nobody is told of a time that nobody watches, or of ways of
// what only stands.
func TestHelpFitsTheStep(t *testing.T) {
	m := sorrelModel(t)
	w := walkOf(t, m, sight.Eye, set(0, -100), set(1, 100))
	g := bench.NewGuide(w, &memory{}, at)
	for _, line := range benchtest.Begin() {
		g.Take(line)
	}
	for _, c := range []struct{ keys, help, not string }{
		{`All as expected: y. Else a part and where it stands, such as "2 out". h: help.`, "u cannot say", "did not move"},
		{`All as expected: y. Else a part and what it did, such as "1 up". h: help.`, "o the other way", "another time"},
		{"All as expected: y. Else o other way, n did not move", "First the part", "another time"},
	} {
		all := strings.Join(g.Help(), "\n")
		if keys := g.Ask().Said; !strings.HasPrefix(keys, c.keys) || !strings.Contains(all, c.help) || strings.Contains(all, c.not) || !strings.Contains(all, "from neutral") {
			t.Errorf("%q and\n%s", keys, all)
		}
		g.Take("y")
	}
	glider, _ := airframes.Load("stops.yaml", []byte(stops))
	still := bench.NewGuide(walkOf(t, glider, sight.Measured, set(0, 100)), &memory{}, at)
	for _, line := range benchtest.Begin() {
		still.Take(line)
	}
	if keys := still.Ask().Said; keys != `All as expected by eye: y. Measured: "1 12.5 up". Else as "1 up". h: help.` {
		t.Errorf("%q", keys)
	}
	if r, _ := still.Take("n"); !strings.Contains(r.Text, "nothing is moved in this step: say which part does not stand as it should") {
		t.Errorf("%+v", r)
	}
	timed := bench.NewWalk(m, bench.Chosen{Steps: []sight.Step{w.Steps[1].Step}, Watch: [][]int{{0}}}, sight.Eye)
	if all := strings.Join(bench.NewGuide(timed, nil, at).Help(), "\n"); !strings.Contains(all, "another time") == (timed.Steps[0].Expect[0].Takes > 0) {
		t.Errorf("takes %v: %s", timed.Steps[0].Expect[0].Takes, all)
	}
}

package sense

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/verifytest"
)

// fennel has two sticks for pitch, trims, two rates, a motor and a door.
const fennel = `hingeline: 1
name: Fennel
controls:
  roll stick: {axis: roll, trim: 10%}
  pitch stick: {axis: pitch, trim: 10%}
  pitch knob: pitch
  throttle: lever
  rate switch: {switch: [low, high], aka: rates}
  door switch: [shut, open]
demands:
  roll:
    from: roll stick
    rates:
      - {when: rate switch is high, throw: 90%}
      - {throw: 50%}
  pitch: pitch stick
  more pitch: pitch knob
  power: {from: throttle, curve: {0%: -100%, 100%: 100%}}
  door: {from: door switch, values: {shut: -100%, open: 100%}}
channels:
  1: {name: port aileron, mix: [{add: roll, share: -100%}]}
  2: {name: starboard aileron, mix: roll}
  3: {name: elevator, mix: [{add: pitch, share: 50%}, {add: more pitch, share: 20%}]}
  4: {name: motor, mix: power}
  5: {name: door, mix: door, slow: 2 s}
surfaces:
  port aileron: {channel: 1, chord_mm: 40, stops: {up: 25°, down: 25°}, measured: {-100%: 20° down, 0%: 0°, 100%: 20° up}}
  starboard aileron: {channel: 2, chord_mm: 40, measured: {-100%: 20° down, 0%: 0°, 100%: 20° up}}
  elevator: {channel: 3, measured: {-100%: 20° down, 0%: 0°, 100%: 20° up}}
motors:
  motor: {channel: 4}
extras:
  door: {channel: 5, plus_moves: out}
`

func TestContradictionsAreFoundAndNothingElse(t *testing.T) {
	m := verifytest.Model(t, "fennel.yaml", fennel)
	for _, c := range []struct {
		name  string
		steps []string
		want  int
	}{
		{"up and down", []string{"When right roll", "Then the starboard aileron rises", "And the starboard aileron drops"}, 1},
		{"up and still", []string{"When right roll", "Then the starboard aileron rises", "And the starboard aileron stays still"}, 1},
		{"amounts apart", []string{"When right roll", "Then the starboard aileron rises 10° ± 1°", "And the starboard aileron rises, at least 12°"}, 1},
		{"amounts that meet", []string{"When right roll", "Then the starboard aileron rises 10° ± 1°", "And the starboard aileron rises, at least 11°"}, 0},
		{"mm against degrees", []string{"When right roll", "Then the starboard aileron rises 10° ± 1°", "And the starboard aileron rises, at least 9 mm"}, 1},
		{"mm with degrees", []string{"When right roll", "Then the starboard aileron rises 10° ± 1°", "And the starboard aileron rises 7 mm ± 0.5 mm"}, 0},
		{"another movement", []string{"When right roll", "Then the starboard aileron rises", "When left roll", "Then the starboard aileron drops"}, 0},
		{"the same end, another beginning", []string{"* with right roll, the starboard aileron rises 10°", "When left roll", "When right roll", "Then the starboard aileron rises 20°"}, 0},
		{"another rate", []string{"* with low rates and right roll, the starboard aileron rises 10° ± 1°", "* with high rates and right roll, the starboard aileron rises 18° ± 1°"}, 0},
		{"two one-line sentences", []string{"* with right roll, the starboard aileron rises 10° ± 1°", "* with right roll, the starboard aileron rises 18° ± 1°"}, 1},
		{"places, from wherever", []string{"* with right roll, the port aileron is 10° down", "When left roll", "Then the port aileron is up", "When right roll", "Then the port aileron is up"}, 1},
		{"place and neutral", []string{"Given right roll", "Then the port aileron is 10° down", "And the port aileron is at neutral"}, 1},
		{"place and movement say different things", []string{"Given right roll", "When left roll", "Then the port aileron rises", "And the port aileron is 10° up"}, 0},
		{"stop", []string{"Given right roll", "Then the port aileron is at its stop", "And the port aileron is not at its stop"}, 1},
		{"together and opposite", []string{"When right roll", "Then the port aileron moves together with the starboard aileron", "And the starboard aileron moves opposite to the port aileron"}, 1},
		{"more and more", []string{"When right roll", "Then the port aileron moves more than the starboard aileron", "And the starboard aileron moves more than the port aileron"}, 1},
		{"more and less the other way round", []string{"When right roll", "Then the port aileron moves more than the starboard aileron", "And the starboard aileron moves less than the port aileron"}, 0},
		{"as far and more", []string{"When right roll", "Then the port aileron moves as far as the starboard aileron ± 0.05°", "And the port aileron moves more than the starboard aileron"}, 1},
		{"comparison of one that is still", []string{"When right roll", "Then the port aileron moves opposite to the starboard aileron", "And the starboard aileron stays still"}, 1},
		{"model", []string{"When right roll", "Then the model rolls right", "And the model does not roll", "And the model does not pitch"}, 1},
		{"pulse", []string{"Given right roll", "Then channel 1 is at 1250 µs ± 5 µs", "And channel 1 is at 1260 µs ± 4 µs"}, 1},
		{"output", []string{"Given right roll", "Then channel 1 is at 50% ± 5%", "And channel 1 is at -50% ± 5%"}, 1},
		{"motor", []string{"Given half throttle", "Then the motor runs", "And the motor is stopped"}, 1},
		{"power", []string{"Given half throttle", "Then the motor is at 50%", "And the motor is at 60%"}, 1},
		{"stops and speeds up", []string{"Given half throttle", "When the throttle is closed", "Then the motor stops", "And the motor speeds up"}, 1},
		{"door", []string{"When the door switch is open", "Then the door is out", "And the door is in"}, 1},
		{"door in time", []string{"When the door switch is open", "Then the door is out", "And the door is 50% out after 2 s", "And the door is in after 0.1 s"}, 0},
		{"door at one time", []string{"When the door switch is open", "Then the door is 50% out after 2 s", "And the door is in after 2 s"}, 1},
		{"within holds at rest too", []string{"When the door switch is open", "Then the door is out within 5 s", "And the door is in"}, 1},
		{"signal", []string{"* with right roll, the port aileron is 10° down", "Given right roll", "When the signal is lost", "Then the port aileron is at neutral"}, 0},
		{"said twice", []string{"When right roll", "Then the port aileron drops", "And the port aileron drops"}, 0},
		{"each once", []string{"When right roll", "Then the port aileron drops", "And the port aileron rises", "And the port aileron rises", "And the port aileron stays still"}, 3},
	} {
		if got := found(lookAt(t, m, c.steps...), codeContradiction); len(got) != c.want {
			t.Errorf("%s: found %+v, want %d", c.name, got, c.want)
		}
	}
}

// Sentences that the set-up passes can all hold, so they do not contradict each
// other, wherever the controls stand.
func TestWhatHoldsNeverContradicts(t *testing.T) {
	m := verifytest.Model(t, "fennel.yaml", fennel)
	v := phrase.NewVocabulary(m)
	sentences := []string{
		"the port aileron rises", "the port aileron drops", "the port aileron stays still", "the port aileron is at neutral",
		"the port aileron is up", "the port aileron is down, at least 5°", "the port aileron drops, at most 4 mm", "the port aileron rises between 3° and 9°",
		"the port aileron moves together with the starboard aileron", "the port aileron moves opposite to the starboard aileron",
		"the port aileron moves as far as the starboard aileron ± 0.3°", "the starboard aileron moves more than the port aileron",
		"the port aileron moves less than the starboard aileron", "the elevator rises, more than 2°", "the model rolls right", "the model does not roll",
		"the model pitches up", "the motor runs", "the motor is stopped", "the motor stops", "the motor speeds up", "the motor stays stopped",
		"the motor is at 50% ± 20%", "the door is out", "the door is in", "the door is 50% ± 10% out after 2 s", "the door is out within 4 s",
		"channel 1 is at 1500 µs ± 100 µs", "channel 1 is at 20% ± 30%", "the port aileron is at its stop", "the port aileron is not at its stop",
	}
	pose := rapid.Custom(func(t *rapid.T) phrase.Pose {
		p := phrase.RestPose(&m.Setup)
		for i := range p.Position {
			low, high := m.Setup.Controls[i].Range()
			p.Position[i] = rapid.SampledFrom([]float64{low, m.Setup.Controls[i].Rest(), high}).Draw(t, "position")
		}
		return p
	})
	rapid.Check(t, func(t *rapid.T) {
		at := phrase.Situation{Before: pose.Draw(t, "before"), Now: pose.Draw(t, "now"), Moved: true}
		var holds []phrase.Asked
		for _, text := range sentences {
			meaning, problem := v.Parse(phrase.Then, text)
			if problem != nil {
				t.Fatalf("%s: %+v", text, problem)
			}
			o := meaning.Outcomes[0]
			if v.Judge(&o, at)[0].Passed {
				holds = append(holds, phrase.Asked{Outcome: o, At: at, Sentence: text})
			}
		}
		if got := found(Look(m, holds), codeContradiction); len(got) > 0 {
			t.Fatalf("all hold, and yet: %+v", got)
		}
	})
}

func TestToothlessSentences(t *testing.T) {
	for _, c := range []struct {
		model, sentence string
		want            int
	}{
		{fennel, "with right roll, the model does not yaw", 1},
		{fennel, "with right roll, the model does not pitch", 0},
		{fennel, "with pitch stick full back, the model does not roll", 0},
		{mini, "with pitch stick full back, the model does not roll", 1},
		{mini, "with pitch stick full back, the model does not yaw", 1},
		{"bracken-20", "with right roll, the model does not yaw", 0},
	} {
		if got := found(lookAt(t, model(t, c.model), "* "+c.sentence), codeToothless); len(got) != c.want {
			t.Errorf("%q: found %+v, want %d", c.sentence, got, c.want)
		}
	}
}

// What is called toothless holds wherever the controls go, in set-ups that differ
// in the sign of every channel: nothing could fail it.
func TestToothlessSentencesHoldEverywhere(t *testing.T) {
	m := verifytest.Model(t, "fennel.yaml", fennel)
	rapid.Check(t, func(t *rapid.T) {
		other := *m
		other.Setup.Channels = slices.Clone(m.Setup.Channels)
		for i := range other.Setup.Channels {
			other.Setup.Channels[i].Reversed = rapid.Bool().Draw(t, "reversed")
		}
		plan, faults := mixcore.Compile(other.Setup)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		other.Plan = plan
		v := phrase.NewVocabulary(&other)
		meaning, problem := v.Parse(phrase.Then, "the model does not yaw")
		if problem != nil {
			t.Fatal(problem)
		}
		at := phrase.Situation{Before: phrase.RestPose(&m.Setup), Now: phrase.RestPose(&m.Setup), Moved: true}
		for i := range at.Now.Position {
			_, high := m.Setup.Controls[i].Range()
			at.Now.Position[i] = rapid.SampledFrom([]float64{m.Setup.Controls[i].Rest(), high}).Draw(t, "position")
		}
		if !v.Judge(&meaning.Outcomes[0], at)[0].Passed {
			t.Fatalf("it fails at %v", at.Now.Position)
		}
	})
}

// whole is a script with nothing left out.
var whole = []string{
	"* with low rates and right roll, the starboard aileron rises and the port aileron drops",
	"* with high rates and right roll, the starboard aileron rises and the port aileron drops",
	"* with roll trim full right, the starboard aileron rises",
	"* with pitch stick full back, the elevator rises",
	"* with pitch knob full back, the elevator rises",
	"* with pitch trim full back, the model pitches up",
	"* with full throttle, the motor speeds up",
	"* with door switch open, the door extends",
}

func TestNothingIsMissingInAWholeScript(t *testing.T) {
	if got := lookAt(t, verifytest.Model(t, "fennel.yaml", fennel), whole...); len(got) > 0 {
		t.Errorf("found %+v, want nothing", got)
	}
}

// Each sentence taken out of a whole script leaves what it alone was for.
func TestWhatIsLeftOutIsFound(t *testing.T) {
	m := verifytest.Model(t, "fennel.yaml", fennel)
	for _, c := range []struct {
		out     int
		instead string
		code    string
		says    string
		line    int
	}{
		{0, "", codeRate, "no sentence moves the roll stick while the last rate is in force, which holds where no other does (rate 2 of 2 of demand roll)", 15},
		{1, "* with high rates and full throttle, the motor speeds up", codeRate, "no sentence moves the roll stick while rate switch is high (rate 1 of 2 of demand roll)", 14},
		{1, "* with high rates and right roll, the elevator stays still", codeRate, "no sentence moves the roll stick while rate switch is high (rate 1 of 2 of demand roll)", 14},
		{2, "", codeTrim, "no sentence says which way the model answers the roll trim", 4},
		{2, "* with roll trim full right, the elevator stays still", codeTrim, "no sentence says which way the model answers the roll trim", 4},
		{2, "* with roll trim full right and roll stick full right, the starboard aileron rises", codeTrim, "no sentence says which way the model answers the roll trim", 4},
		{3, "", codeSecond, "no sentence moves the pitch stick by itself, one of several controls for pitch", 5},
		{4, "", codeSecond, "no sentence moves the pitch knob by itself, one of several controls for pitch", 6},
		{4, "* with pitch stick full back and pitch knob full back, the elevator rises", codeSecond, "no sentence moves the pitch knob by itself, one of several controls for pitch", 6},
		{6, "* the motor is stopped", codeControl, "no sentence moves the throttle", 7},
		{7, "* the door is in", codeControl, "no sentence moves the door switch", 9},
		{6, "* with full throttle, the door stays still", codePart, "no sentence says what the motor does", 31},
		{7, "* with door switch open, the motor stays stopped", codePart, "no sentence says what the door does", 33},
	} {
		steps := slices.Clone(whole)
		steps[c.out] = c.instead
		got := lookAt(t, m, slices.DeleteFunc(steps, func(s string) bool { return s == "" })...)
		if len(got) != 1 || got[0].Code != c.code || got[0].Message != c.says || got[0].Fails || got[0].Place.File != "fennel.yaml" || got[0].Place.Line != c.line {
			t.Errorf("%q in place of %q: found %+v, want only [%s] %s, line %d", c.instead, whole[c.out], got, c.code, c.says, c.line)
		}
	}
}

// The sentence that a finding proposes is one that Hingeline reads, and writing it
// puts the finding right.
func TestProposedSentencesHelp(t *testing.T) {
	m := verifytest.Model(t, "fennel.yaml", fennel)
	steps := []string{"* the port aileron is at neutral"}
	proposed := 0
	for range 20 {
		i := slices.IndexFunc(lookAt(t, m, steps...), func(f result.ScriptFinding) bool { return f.Right != "" })
		if i < 0 {
			break
		}
		steps = append(steps, "* "+lookAt(t, m, steps...)[i].Right)
		proposed++
	}
	got := lookAt(t, m, steps...)
	if proposed < 5 || slices.ContainsFunc(got, func(f result.ScriptFinding) bool {
		return f.Code == codeTrim || f.Code == codeSecond || f.Code == codeSuspicious
	}) {
		t.Errorf("after %q still %+v", steps, got)
	}
}

func TestMillimetresAreTurnedIntoDegrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := mixcore.Part{Chord: mixcore.Millimetres(rapid.Float64Range(10, 200).Draw(t, "chord"))}
		angle := rapid.Float64Range(0, 170).Draw(t, "angle")
		mm := float64(mixcore.ChordTravel(p.Chord, mixcore.Degrees(angle)))
		if got := inDegrees(&p, &phrase.Amount{Kind: phrase.AtLeast, Value: mm, Unit: "mm"}).low; math.Abs(got-angle) > 1e-6 {
			t.Fatalf("%v mm are %v°, want %v°", mm, got, angle)
		}
	})
}

func TestCodesAreInTheOrderOfTheReport(t *testing.T) {
	m := verifytest.Model(t, "fennel.yaml", fennel)
	got := lookAt(t, m, "When right roll", "Then the port aileron rises", "And the port aileron drops",
		"And the model does not yaw")
	last := 0
	for _, f := range got {
		at := slices.Index(Codes, f.Code)
		if at < last {
			t.Errorf("%s comes too late", f.Code)
		}
		last = at
	}
	if seen := strings.Join(Codes[:3], " "); len(got) < 5 || got[0].Code+" "+got[1].Code+" "+got[2].Code != seen {
		t.Errorf("found %+v, want %s first", got, seen)
	}
}

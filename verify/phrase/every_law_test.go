package phrase

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/prove"
)

// plainSentences are outcomes that can be asked of one position and of every one.
var plainSentences = []string{
	"the port flap rises", "the port flap drops", "the port flap stays still", "the starboard aileron rises 10° ± 2°", "the starboard aileron drops, at least 6°",
	"the port aileron rises, more than 4°", "the port aileron drops at most 9°", "the port flap drops between 8° and 30°", "the port aileron rises, less than 6 mm",
	"the starboard aileron rises 7 mm ± 3 mm", "the port flap drops at least 12 mm", "the rudder moves left", "the nose wheel moves right at least 8°",
	"the motor speeds up", "the motor slows down at least 20%", "the retracts extend", "the retracts retract", "the retracts stay still",
	"the port flap is at neutral", "the port flap is down", "the elevator is 10° ± 6° up", "the port flap is down at least 9 mm", "the rudder is left, at most 11°",
	"the motor is stopped", "the motor runs", "the motor is at 40% ± 10%", "the motor is at most 60%", "the retracts are out", "the retracts are in", "the retracts are 30% ± 25% out",
	"channel 4 is at 1500 µs ± 120 µs", "channel 5 is at least 1490 µs", "channel 2 is at -20% ± 30%", "channel 2 is within its travel", "channel 6 is within its travel",
	"the elevator is not at its stop", "the model rolls right", "the model rolls left", "the model yaws right", "the model does not roll", "the model does not yaw", "the model pitches up",
}

// neverSentences are outcomes with what they deny.
var neverSentences = map[string]string{
	"the port flap never drops":                 "the port flap drops",
	"the port flap never drops more than 10°":   "the port flap drops more than 10°",
	"the port flap never drops at least 9 mm":   "the port flap drops at least 9 mm",
	"the rudder never moves left":               "the rudder moves left",
	"the elevator is never up":                  "the elevator is up",
	"the elevator is never more than 8° up":     "the elevator is more than 8° up",
	"the motor never runs":                      "the motor runs",
	"the motor is never stopped":                "the motor is stopped",
	"the motor is never at more than 60%":       "the motor is at more than 60%",
	"the motor is never at less than 30%":       "the motor is at less than 30%",
	"channel 4 is never at more than 1550 µs":   "channel 4 is at more than 1550 µs",
	"channel 2 is never at less than -20%":      "channel 2 is at less than -20%",
	"the retracts are never out":                "the retracts are out",
	"the retracts are never in":                 "the retracts are in",
	"the retracts are never at least 40% out":   "the retracts are at least 40% out",
	"the model never rolls left":                "the model rolls left",
	"the motor never speeds up more than 45%":   "the motor speeds up more than 45%",
	"the port aileron never rises more than 2°": "the port aileron rises more than 2°",
}

// hereAtRest judges a plain outcome once everything has come to rest.
func hereAtRest(v *Vocabulary, o *Outcome, at Situation) bool {
	j := v.judgeHere(o, at)
	out := j.instants[len(j.instants)-1].out
	switch {
	case o.Subject.Model:
		return j.turns(out).passed
	case len(o.Subject.Channels) > 0:
		passed, _ := j.channel(&out.Channels[o.Subject.Channels[0]])
		return passed
	}
	passed, _ := j.part(o.Subject.Parts[0], out)
	return passed
}

func outcomeOf(t interface{ Fatalf(string, ...any) }, v *Vocabulary, text string) Outcome {
	meaning, problem := v.Parse(Then, text)
	if problem != nil {
		t.Fatalf("%q: %s (%s)", text, problem.Message, problem.Hint)
	}
	return meaning.Outcomes[0]
}

// The claim of an outcome about every position is true at a position just where the
// plain outcome is.
func TestClaimsMeanWhatPlainOutcomesMean(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	prover := prove.New(m.Plan)
	agree := func(t *rapid.T, every, plain string, denied bool, now, before Pose) {
		o, p := outcomeOf(t, v, every), outcomeOf(t, v, plain)
		at := Situation{Before: before, Now: now, Moved: true}
		need := v.needs(&o, &Situation{Now: RestPose(&m.Setup)})[0]
		margin := prover.Margin(&need.claim, prove.Pose{Now: now.Input(), Other: before.Input()})
		if math.IsNaN(margin) {
			t.Fatalf("%q has no margin", every)
		}
		holds := hereAtRest(v, &p, at)
		if denied && o.Subject.Model && margin < 0 && !holds {
			return // it may turn that way, or does so a little: no plain sentence says that
		}
		if (margin >= 0) != (holds != denied) && math.Abs(margin) > 1e-9 {
			t.Fatalf("%q: margin %v, but %q is %v at %v from %v", every, margin, plain, holds, now.Position, before.Position)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		now, before := drawPose(t, &m.Setup, "now"), drawPose(t, &m.Setup, "before")
		for _, plain := range plainSentences {
			agree(t, "whatever else moves, "+plain, plain, false, now, before)
		}
		for every, plain := range neverSentences {
			agree(t, every, plain, true, now, before)
		}
	})
}

// Of a comparison that is true at one position the claim is true there too.
func TestComparisonsHoldWherePlainOnesDo(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	prover := prove.New(m.Plan)
	rapid.Check(t, func(t *rapid.T) {
		now, before := drawPose(t, &m.Setup, "now"), drawPose(t, &m.Setup, "before")
		for _, verb := range []string{"together with", "opposite to", "as far as", "less than", "more than"} {
			for _, pair := range [][2]string{{"port flap", "starboard flap"}, {"port aileron", "starboard aileron"}, {"port aileron", "port flap"}} {
				plain := "the " + pair[0] + " moves " + verb + " the " + pair[1]
				o, p := outcomeOf(t, v, "whatever else moves, "+plain), outcomeOf(t, v, plain)
				need := v.needs(&o, &Situation{Now: RestPose(&m.Setup)})[0]
				margin := prover.Margin(&need.claim, prove.Pose{Now: now.Input(), Other: before.Input()})
				if hereAtRest(v, &p, Situation{Before: before, Now: now, Moved: true}) && margin < 0 {
					t.Fatalf("%q holds, but its margin is %v", plain, margin)
				}
			}
		}
	})
}

// A proof is contradicted by no position, and a counterexample is one: on set-ups with
// a fault planted, under prefixes of every kind.
func TestProofsHoldAndCounterexamplesFail(t *testing.T) {
	faults := []func(*mixcore.Setup){nil, reverse(portFlapChannel), weak(starboardAileronChannel), dead(portFlapChannel), noSafety, subTrim(motorChannel, 5),
		also(elevatorChannel, rollDemand, 20), also(portFlapChannel, pitchDemand, -15), hooked}
	prefixes := []string{"whatever else moves, ", "whatever the roll stick and the flap lever do, ", "at every switch position, whatever the roll stick does, ",
		"with the flap lever anywhere between parked and takeoff, whatever the sticks do, ", "whenever the roll stick is right of 20 % and rates are high, ",
		"whenever the flap lever is above 30 %, ", "at every position of the flap lever, whenever the pitch stick is back of 10 %, "}
	answers, outer := map[bool]int{}, t
	rapid.Check(t, func(t *rapid.T) {
		m := exampleModel(outer, rapid.SampledFrom(faults).Draw(t, "fault"))
		v := NewVocabulary(m)
		plain := rapid.SampledFrom(plainSentences).Draw(t, "outcome")
		prefix := rapid.SampledFrom(prefixes).Draw(t, "prefix")
		o, p := outcomeOf(t, v, prefix+plain), outcomeOf(t, v, plain)
		scenario := Situation{Now: RestPose(&m.Setup), Set: make([]bool, len(m.Setup.Controls))}
		if rapid.Bool().Draw(t, "live") {
			scenario.Now.Position[motorSwitch], scenario.Set[motorSwitch] = 1, true
		}
		verdict := v.Judge(&o, scenario)[0]
		answers[verdict.Passed]++
		if verdict.Passed != (v.Tell(&o, scenario, nil, nil) == Holds) {
			t.Fatalf("%q is %v, said quickly %v", prefix+plain, verdict.Passed, !verdict.Passed)
		}
		if !verdict.Passed {
			if verdict.Found == nil {
				t.Fatalf("%q: %s", prefix+plain, verdict.Got)
			}
			if hereAtRest(v, &p, *verdict.Found) {
				t.Fatalf("%q holds where it is said to fail: %+v", prefix+plain, *verdict.Found)
			}
			inScope(t, v, &o, &scenario, verdict.Found)
			return
		}
		for range 100 {
			at, ok := drawWithin(t, m.Plan, v, &o, &scenario)
			if ok && !hereAtRest(v, &p, at) {
				t.Fatalf("%q is proved, and fails at %v from %v", prefix+plain, at.Now.Position, at.Before.Position)
			}
		}
	})
	if answers[true] == 0 || answers[false] == 0 {
		t.Errorf("answers %v: this looks at one side only", answers)
	}
}

// inScope holds a counterexample to what is free.
func inScope(t *rapid.T, v *Vocabulary, o *Outcome, scenario, found *Situation) {
	for i, r := range o.Roams(v.setup, scenario) {
		at, stood := found.Now.Position[i], scenario.Now.Position[i]
		switch {
		case !r.Free && at != stood:
			t.Fatalf("the %s is moved to %v", v.setup.Controls[i].Name, at)
		case r.Free && r.Over.Places == nil && (at < r.Over.Low || at > r.Over.High), r.Free && r.Over.Places != nil && !slices.Contains(r.Over.Places, int(at)):
			t.Fatalf("the %s is moved to %v, out of %+v", v.setup.Controls[i].Name, at, r.Over)
		case found.Moved && r.Free && !r.Moves && found.Before.Position[i] != at, found.Moved && r.Moves && found.Before.Position[i] != stood:
			t.Fatalf("the %s moves from %v to %v", v.setup.Controls[i].Name, found.Before.Position[i], at)
		}
	}
	if now := found.Now.Input(); o.Every.When != nil && !v.model.Plan.Holds(o.Every.When, &now) {
		t.Fatalf("the condition does not hold at %v", now.Position)
	}
}

// drawWithin draws a position of those that an outcome speaks of; false if its condition
// does not hold there.
func drawWithin(t *rapid.T, plan *mixcore.Plan, v *Vocabulary, o *Outcome, scenario *Situation) (Situation, bool) {
	at := Situation{Before: Pose{Position: slices.Clone(scenario.Now.Position)}, Now: Pose{Position: slices.Clone(scenario.Now.Position)}, Moved: true}
	for i, r := range o.Roams(v.setup, scenario) {
		if !r.Free {
			continue
		}
		if r.Over.Places != nil {
			at.Now.Position[i] = float64(rapid.SampledFrom(r.Over.Places).Draw(t, "place"))
		} else {
			at.Now.Position[i] = rapid.OneOf(rapid.Float64Range(r.Over.Low, r.Over.High), rapid.SampledFrom([]float64{r.Over.Low, r.Over.High})).Draw(t, "place")
		}
		if !r.Moves {
			at.Before.Position[i] = at.Now.Position[i]
		}
	}
	now := at.Now.Input()
	return at, o.Every.When == nil || plan.Holds(o.Every.When, &now)
}

// Saying it with other words for the same positions changes no answer.
func TestPrefixesThatMeanTheSameAnswerTheSame(t *testing.T) {
	m := exampleModel(t, also(elevatorChannel, rollDemand, 20))
	v := NewVocabulary(m)
	scenario := Situation{Now: RestPose(&m.Setup)}
	for _, plain := range plainSentences {
		first := ""
		for _, text := range []string{"whatever else moves, " + plain, "whatever happens, " + plain, "always, " + plain,
			"whatever the sticks and the trims and the levers and the switches do, " + plain} {
			o := outcomeOf(t, v, text)
			verdict := v.Judge(&o, scenario)[0]
			if first == "" {
				first = verdict.Got
			}
			if verdict.Got != first {
				t.Errorf("%q: got %q, want %q", text, verdict.Got, first)
			}
		}
		if strings.Contains(first, "undecided") {
			t.Errorf("%q: %s", plain, first)
		}
	}
}

package phrase

import (
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
)

func TestJudgeSaysWhatAProofCoversAndWhereItFails(t *testing.T) {
	for _, c := range []struct {
		fault func(*mixcore.Setup)
		scene
		text        string
		answer      result.ProofAnswer
		wanted, got string
	}{
		{nil, scene{}, "whatever the roll stick does, the elevator stays still", result.Proved, "at every position: stays still",
			"proved over every place of the roll stick; it does not move at all"},
		{nil, scene{"rates high", ""}, "whatever the roll stick and the yaw stick do, the port flap never drops more than 11°", result.Proved, "never drops more than 11°",
			"proved over every place of the roll stick and the yaw stick; at the least 1° to spare, with roll stick full right, rate switch high"},
		{also(portFlapChannel, yawDemand, 0.5), scene{}, "whatever the yaw stick does, the port flap stays still", result.Proved, "at every position: stays still",
			"proved over every place of the yaw stick; it moves 0.3° at most, with yaw stick full left"},
		{nil, scene{"motor safe", ""}, "whatever else moves, the motor is stopped", result.Proved, "at every position: stopped",
			"proved over 4 switch states and every place of 6 sticks, levers and trims; at the least 2 % to spare, with everything at rest"},
		{nil, scene{}, "at every switch position, the motor is at most 0.5%", result.Proved, "at every position: power at most 0.5 %",
			"proved over 8 switch states; at the least 0.5 % to spare, with motor switch live"},
		{nil, scene{"motor live", ""}, "the motor never runs", result.Disproved, "at every position: stopped", "power 100 %"},
		{nil, scene{}, "channel 4 is never at more than 1950 µs", result.Disproved, "never more than 1950 µs", "2000 µs"},
		{nil, scene{}, "no channel runs out of travel", result.Disproved, "at every position: within its travel", ""},
		{nil, scene{}, "the more right the roll stick, the higher the port aileron", result.Disproved, "never drops as the roll stick moves right",
			"drops 10° (7 mm): from UP 10° to neutral as the roll stick moves from full left to centred"},
		{nil, scene{}, "the more left the roll stick, the lower the port aileron", result.Disproved, "never rises as the roll stick moves left", ""},
		{nil, scene{}, "the more right the roll stick, the higher the starboard flap", result.Disproved, "never drops as the roll stick moves right", "does not answer the roll stick at all"},
		{nil, scene{}, "whatever the roll stick does, the port flap moves together with the starboard flap", result.Disproved, "at every position: moves together with the starboard flap", "moves nowhere: nothing to compare"},
		{nil, scene{}, "whatever the pitch stick does, the port flap moves less than the starboard flap", result.Disproved, "at every position: moves less than the starboard flap", "the starboard flap moves nowhere: nothing to compare"},
		{nil, scene{}, "whenever the flap lever is above 50 % and the flap lever is below 40 %, the motor is stopped", result.Empty, "at every position: stopped", "the condition never holds"},
		{also(elevatorChannel, flapDemand, -8), scene{}, "the elevator depends on nothing but the pitch stick", result.Disproved, "depends on nothing but the pitch stick", "drops 2°, though the pitch stick stays where it is"},
		{nil, scene{}, "whatever the roll stick does, the model never rolls left whenever the roll stick is right of 10 %", result.Proved, "never rolls LEFT", "proved over every place of the roll stick"},
		{reverse(portAileronChannel, starboardAileronChannel), scene{}, "whenever the roll stick is right of 10 %, the model rolls right", result.Disproved, "at every position: rolls RIGHT",
			"rolls LEFT: starboard aileron and port aileron roll it left"},
	} {
		list := verdicts(t, exampleModel(t, c.fault), c.scene, c.text)
		v := list[0]
		for _, other := range list {
			if !other.Passed {
				v = other
				break
			}
		}
		if v.Proof == nil || v.Proof.Answer != c.answer || v.Passed != (c.answer == result.Proved) || v.Wanted != c.wanted || c.got != "" && v.Got != c.got {
			t.Errorf("%q: got %+v, wanted %q, got %q; want %s, %q, %q", c.text, v.Proof, v.Wanted, v.Got, c.answer, c.wanted, c.got)
			continue
		}
		if p := v.Proof; p.Over == "" || p.States < 1 || p.Claim == "" {
			t.Errorf("%q: the proof does not say what it covers: %+v", c.text, p)
		}
		if nowhere := strings.Contains(v.Got, "nothing to compare") || strings.Contains(v.Got, "at all") && !v.Passed; (v.Proof.Counter != nil) != (c.answer == result.Disproved && !nowhere) || (v.Found != nil) != (v.Proof.Counter != nil) {
			t.Errorf("%q: counterexample %+v, found %+v", c.text, v.Proof.Counter, v.Found)
		}
	}
}

// A margin is at least what was proved, and where it is said to be least.
func TestProofsGiveTheirMargin(t *testing.T) {
	for _, c := range []struct {
		text  string
		value float64
		unit  string
		pose  string
	}{
		{"whatever the flap lever does, channel 4 is at most 1950 µs", 50, "µs", "flap lever landing"},
		{"whatever the pitch stick does, the elevator is at most 24° down", 0, "", ""}, // it is not down at all
		{"the elevator never drops more than 27°", 2, "°", "pitch stick full forward"},
		{"at every lever position, channel 5 is within its travel", 20, "%", "flap lever landing"},
	} {
		v := verdicts(t, exampleModel(t, nil), scene{}, c.text)[0]
		if c.unit == "" {
			if v.Passed {
				t.Errorf("%q passes", c.text)
			}
			continue
		}
		m := v.Proof.Margin
		if m == nil || m.Unit != c.unit || m.AtLeast > m.Value || m.Value-c.value > 0.01 || c.value-m.AtLeast > 0.01*c.value {
			t.Errorf("%q: %s: margin %+v, want %v %s", c.text, v.Got, m, c.value, c.unit)
		} else if !strings.Contains(strings.Join(m.Pose, ", "), c.pose) {
			t.Errorf("%q: least at %q, want %q", c.text, m.Pose, c.pose)
		}
	}
}

func TestProofsAssumeRest(t *testing.T) {
	m := exampleModel(t, nil)
	if v := verdicts(t, m, scene{}, "the port flap never rises more than 13°")[0]; !v.Passed || len(v.Proof.Assumes) != 1 || v.Proof.Assumes[0] != "once everything has come to rest" {
		t.Errorf("got %+v", v.Proof)
	}
	if v := verdicts(t, m, scene{}, "whatever the roll stick does, the elevator stays still")[0]; !v.Passed || v.Proof.Assumes != nil {
		t.Errorf("got %+v", v.Proof)
	}
}

// What fails is said as the sentence means it, not as a plain one would.
func TestMissSpeaksOfEveryPosition(t *testing.T) {
	for _, c := range []struct {
		fault      func(*mixcore.Setup)
		text, miss string
	}{
		{reverse(starboardAileronChannel), "the more right the roll stick, the higher the starboard aileron", "WRONG WAY as the roll stick moves right"},
		{nil, "the port flap never drops", "IT DOES, never was wanted"},
		{also(elevatorChannel, flapDemand, -8), "the elevator depends on nothing but the pitch stick", "MOVES, and none of the controls named does"},
		{reverse(starboardAileronChannel), "whenever the roll stick is right of 10 %, the starboard aileron rises", "WRONG WAY: wanted UP, it goes DOWN"},
	} {
		m := exampleModel(t, c.fault)
		v := NewVocabulary(m)
		o := outcomeOf(t, v, c.text)
		verdict := v.Judge(&o, Situation{Now: RestPose(&m.Setup)})[0]
		if verdict.Found == nil {
			t.Errorf("%q: %+v", c.text, verdict)
			continue
		}
		before, now := verdict.Found.Before.Input(), verdict.Found.Now.Input()
		if got := v.Miss(&o, &verdict, &m.Plan.Trace(&before).Output, &m.Plan.Trace(&now).Output); got != c.miss {
			t.Errorf("%q: got %q, want %q", c.text, got, c.miss)
		}
	}
}

func TestUnfitOutcomesAreRefused(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	for _, c := range []struct {
		scene
		text, code, says string
	}{
		{scene{}, "whatever the roll stick does, the port flap rises", CodeNoMovement, "never hold"},
		{scene{}, "always, the model rolls right", CodeNoMovement, "never hold"},
		{scene{}, "whenever the rate switch is low, the port flap rises", CodeNoMovement, "never hold"},
		{scene{}, "at every switch position, the port flap stays still", CodeNoMovement, "nothing moves here"},
		{scene{"landing flap", ""}, "at every position of the flap lever, the motor is stopped", CodeConflict, "put somewhere"},
		{scene{"landing flap", ""}, "with the flap lever anywhere above 20 %, the motor is stopped", CodeConflict, "put somewhere"},
		{scene{"landing flap", ""}, "whatever the flap lever does, the motor is stopped", "", ""},
		{scene{"landing flap", ""}, "at every lever position, the motor is stopped", "", ""},
		{scene{"", fullRight}, "whatever the roll stick does, the motor is stopped", CodeConflict, "put somewhere"},
		{scene{"", fullRight}, "the more right the roll stick, the higher the port flap", CodeConflict, "put somewhere"},
		{scene{"rates high", ""}, "whenever the rate switch is low and the roll stick is right of 10 %, the port aileron drops", CodeConflict, "put somewhere"},
		{scene{"", "the signal is lost"}, "whatever else moves, the motor is stopped", "", ""},
		{scene{"the signal is lost", ""}, "whatever else moves, the motor is stopped", "", ""},
		{scene{"the signal is lost", ""}, "whatever else moves, the elevator stays still", CodeNoMovement, "signal is lost"},
		{scene{"the signal is lost", fullRight}, "whatever else moves, the motor is stopped", CodeNoMovement, "signal is lost"},
		{scene{"", "the roll stick is 0.5% right"}, "whatever else moves, the elevator stays still", CodeNoMovement, "1 %"},
		{scene{"", fullRight}, "at every switch position, the port aileron drops", "", ""},
		{scene{"", "everything rests"}, "at every switch position, the port aileron drops", CodeNoMovement, "stood there already"},
	} {
		at := Situation{Now: RestPose(&m.Setup), Set: make([]bool, len(m.Setup.Controls))}
		for _, step := range []struct {
			role Role
			text string
		}{{Given, c.given}, {When, c.when}} {
			if step.text == "" {
				continue
			}
			meaning, problem := v.Parse(step.role, step.text)
			if problem != nil {
				t.Fatal(problem.Message)
			}
			for _, s := range meaning.Settings.Settings {
				at.Set[s.Control] = true
			}
			if step.role == Given {
				at.Now = at.Now.Stand(&m.Setup, &meaning.Settings)
			} else {
				at = Situation{Before: at.Now, Now: at.Now.Take(&m.Setup, &meaning.Settings), Moved: true, Set: at.Set}
			}
		}
		o := outcomeOf(t, v, c.text)
		problem := v.Unfit(&o, &at)
		if c.code == "" && problem != nil || c.code != "" && (problem == nil || problem.Code != c.code || !strings.Contains(problem.Message, c.says) || problem.Hint == "") {
			t.Errorf("%+v %q: %+v, want %s with %q", c.scene, c.text, problem, c.code, c.says)
		}
	}
}

// With the signal lost, a channel that holds keeps what it had wherever the controls
// stood, and one with a failsafe value goes there.
func TestLossOfSignalAtEveryPosition(t *testing.T) {
	v := "whatever else moves, when the signal is lost, "
	for _, c := range []struct {
		fault  func(*mixcore.Setup)
		scene  scene
		text   string
		passes bool
	}{
		{nil, scene{}, v + "the motor is stopped", true},
		{noSafety, scene{}, v + "the motor is stopped", false},
		{nil, scene{}, v + "the elevator stays still", true},
		{nil, scene{"the signal is lost", ""}, "whatever else moves, the motor is stopped", true},
		{noSafety, scene{"the signal is lost", ""}, "whatever else moves, the motor is stopped", false},
		{nil, scene{}, "whatever the pitch stick does, when the signal is lost, the elevator is at neutral", false},
		{func(s *mixcore.Setup) { s.Channels[elevatorChannel].Failsafe = mixcore.Failsafe{} }, scene{}, "whatever the pitch stick does, when the signal is lost, the elevator is at neutral", true},
	} {
		if got := passes(verdicts(t, exampleModel(t, c.fault), c.scene, c.text)); got != c.passes {
			t.Errorf("%q: passes is %v", c.text, got)
		}
	}
}

package phrase

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/mixcore"
)

// freedoms says what an outcome sets free with everything at rest: of each control that
// is free its name, a star if it moves, and where it is not all its travel.
func freedoms(s *mixcore.Setup, o *Outcome) string {
	var list []string
	for i, r := range o.Roams(s, &Situation{}) {
		if !r.Free {
			continue
		}
		c := &s.Controls[i]
		name := strings.ReplaceAll(c.Name, " ", "-")
		if r.Moves {
			name += "*"
		}
		if low, high := c.Range(); r.Over.Places == nil && (r.Over.Low != low || r.Over.High != high) {
			name += fmt.Sprintf("[%.4g,%.4g]", r.Over.Low, r.Over.High)
		}
		list = append(list, name)
	}
	return strings.Join(list, " ")
}

const everyControlMoves = "roll-stick* pitch-stick* yaw-stick* throttle* flap-lever* rate-switch* motor-switch* gear-switch* roll-trim*"

func TestParseSentencesAboutEveryPosition(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	all := strings.ReplaceAll(everyControlMoves, "*", "")
	for _, c := range []struct {
		text string
		free string
		verb Verb // of the first outcome
		list int  // outcomes
	}{
		{"whatever the roll stick does, the port flap stays still", "roll-stick*", Still, 1},
		{"whatever roll does the port flap stays still", "roll-stick*", Still, 1},
		{"Whatever the roll stick and the yaw stick do, the port flap stays still and the elevator is at neutral.", "roll-stick* yaw-stick*", Still, 2},
		{"whatever the roll stick, the yaw stick and the throttle do, the elevator stays still", "roll-stick* yaw-stick* throttle*", Still, 1},
		{"whatever the sticks and the flap lever do, the motor is stopped", "roll-stick* pitch-stick* yaw-stick* flap-lever*", Stopped, 1},
		{"whatever else moves, the motor stays stopped", everyControlMoves, StaysStopped, 1},
		{"whatever else is moved, the motor is stopped", everyControlMoves, Stopped, 1},
		{"whatever happens, the motor is stopped", everyControlMoves, Stopped, 1},
		{"always, the motor is stopped", everyControlMoves, Stopped, 1},
		{"at every switch position, the motor is stopped", "rate-switch motor-switch gear-switch", Stopped, 1},
		{"at any switch position and every stick position, no channel runs out of travel", "roll-stick pitch-stick yaw-stick rate-switch motor-switch gear-switch", InTravel, 1},
		{"at every stick and lever position, no channel runs out of travel", "roll-stick pitch-stick yaw-stick throttle flap-lever", InTravel, 1},
		{"at every switch, stick position, no channel runs out of travel", "", 0, 0},
		{"at every trim position, every lever position, no surface reaches its stop", "throttle flap-lever roll-trim", NotAtStop, 1},
		{"at every position, the elevator is not at its stop", all, NotAtStop, 1},
		{"at every position of the flap lever and the rate switch, the elevator is at neutral", "flap-lever rate-switch", Neutral, 1},
		{"at every rate switch position, the elevator is at neutral", "rate-switch", Neutral, 1},
		{"at each flap lever position and every switch position, the elevator is at neutral", "flap-lever rate-switch motor-switch gear-switch", Neutral, 1},
		{"with the flap lever anywhere, the elevator is at neutral", "flap-lever", Neutral, 1},
		{"with the flap lever anywhere between parked and takeoff, the elevator is at neutral", "flap-lever[0,40]", Neutral, 1},
		{"with the flap lever anywhere between takeoff and parked, the elevator is at neutral", "flap-lever[0,40]", Neutral, 1},
		{"with the flap lever anywhere from 10% to 40%, the elevator is at neutral", "flap-lever[10,40]", Neutral, 1},
		{"with the flap lever anywhere above 20 %, the elevator is at neutral", "flap-lever[20,100]", Neutral, 1},
		{"with the flap lever anywhere at most takeoff and the throttle anywhere below 50%, the elevator is at neutral", "throttle[0,50] flap-lever[0,40]", Neutral, 1},
		{"with the roll stick anywhere between half left and half right, the elevator is at neutral", "roll-stick[-50,50]", Neutral, 1},
		{"with the flap lever anywhere, whatever the roll stick does, the elevator stays still", "roll-stick* flap-lever", Still, 1},
		{"at every switch position and whatever the roll stick does, the elevator stays still", "roll-stick* rate-switch motor-switch gear-switch", Still, 1},
		{"whenever the roll stick is right of 5 %, the starboard aileron rises", "roll-stick*", Move, 1},
		{"the starboard aileron rises and the port aileron drops whenever the roll stick is right of 5%", "roll-stick*", Move, 2},
		{"whenever roll is right of 5 % and rates are high, the starboard aileron rises", "roll-stick* rate-switch", Move, 1},
		{"whenever the flap lever is landing and the rate switch is high, the port flap drops", "flap-lever* rate-switch", Move, 1},
		{"whenever rates are high, the retracts stay still", "rate-switch*", Still, 1},
		{"with the flap lever anywhere between parked and takeoff, whenever the flap lever is above 20%, the port flap drops", "flap-lever[0,40]", Move, 1},
		{"the motor is always stopped", everyControlMoves, Stopped, 1},
		{"the port flap always stays still", everyControlMoves, Still, 1},
		{"the motor never runs", everyControlMoves, Stopped, 1},
		{"the motor is never running", everyControlMoves, Stopped, 1},
		{"no motor ever runs", everyControlMoves, Stopped, 1},
		{"no motor runs", everyControlMoves, Stopped, 1},
		{"at every switch position, no motor runs", "roll-stick* pitch-stick* yaw-stick* throttle* flap-lever* rate-switch motor-switch gear-switch roll-trim*", Stopped, 1},
		{"at every switch position, no motor ever runs", strings.NewReplacer("switch*", "switch").Replace(everyControlMoves), Stopped, 1},
		{"whatever the throttle does, the motor never runs", "throttle*", Stopped, 1},
		{"at every position of the throttle, the motor never runs", strings.Replace(everyControlMoves, "throttle*", "throttle", 1), Stopped, 1},
		{"the port flap never drops", everyControlMoves, Move, 1},
		{"the motor never runs whenever the motor switch is safe", everyControlMoves, Stopped, 1},
		{"whenever the flap lever is above 20 %, the motor is always stopped", everyControlMoves, Stopped, 1},
		{"whatever the throttle does, the motor never runs whenever the motor switch is safe", "throttle* motor-switch*", Stopped, 1},
		{"the port flap never drops more than 10°", everyControlMoves, Move, 1},
		{"the port flap never moves", everyControlMoves, Still, 1},
		{"the model never rolls left", everyControlMoves, Turn, 1},
		{"the model never rolls", everyControlMoves, NoTurn, 1},
		{"the elevator never reaches its stop", everyControlMoves, NotAtStop, 1},
		{"the elevator is never at its stop", everyControlMoves, NotAtStop, 1},
		{"channel 3 never runs out of travel", everyControlMoves, InTravel, 1},
		{"nothing runs out of travel", everyControlMoves, InTravel, 1},
		{"nothing moves", everyControlMoves, Still, 1},
		{"whatever the roll trim does, nothing but the ailerons and the flaps moves", "roll-trim*", Still, 1},
		{"the more right the roll stick, the higher the starboard aileron", "roll-stick*", Rising, 1},
		{"the more right the roll stick is, the higher the starboard aileron is", "roll-stick*", Rising, 1},
		{"the further right the roll stick, the higher the starboard aileron and the lower the port aileron", "roll-stick*", Rising, 2},
		{"the further the flap lever, the lower both flaps", "flap-lever*", Rising, 1},
		{"at every switch position, the more throttle, the faster the motor", "throttle* rate-switch motor-switch gear-switch", Rising, 1},
		{"the more back the pitch stick, the higher the elevator", "pitch-stick*", Rising, 1},
		{"the more left the yaw stick, the further left the rudder", "yaw-stick*", Rising, 1},
		{"the elevator depends on nothing but the pitch stick", all, DependsOn, 1},
		{"the port flap depends on nothing but the flap lever, the roll stick or the rate switch", all, DependsOn, 1},
		{"the elevator depends only on the pitch stick, and the motor is stopped", all, DependsOn, 2},
		{"whatever else moves, when the signal is lost, the motor is stopped", everyControlMoves, Stopped, 1},
		{"with rates high, whatever the roll stick does, the elevator stays still", "roll-stick*", Still, 1},
		{"with the flap lever anywhere and rates high, whatever the roll stick does, the elevator stays still", "roll-stick* flap-lever", Still, 1},
		{"whatever the throttle does, the motor is at most 50%", "throttle*", PowerAt, 1},
		{"whatever the flap lever does, both flaps stay still on purpose", "flap-lever*", Still, 1},
		{"whatever the roll stick does, the port flap moves opposite to the starboard flap", "roll-stick*", Opposite, 1},
	} {
		meaning, problem := v.Parse(Then, c.text)
		if c.list == 0 {
			if problem == nil {
				t.Errorf("%q is understood", c.text)
			}
			continue
		}
		if problem != nil {
			t.Errorf("%q: at %d: %s (%s)", c.text, problem.Column, problem.Message, problem.Hint)
			continue
		}
		o := &meaning.Outcomes[0]
		if o.Every == nil {
			t.Errorf("%q is about one position", c.text)
			continue
		}
		if got := freedoms(&m.Setup, o); got != c.free || o.Verb != c.verb || len(meaning.Outcomes) != c.list {
			t.Errorf("%q: %d outcomes, verb %d, free %q; want %d, %d, %q", c.text, len(meaning.Outcomes), o.Verb, got, c.list, c.verb, c.free)
		}
	}
}

func TestOneLineSettingsBesideAMovementOfTheSentenceAreState(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for text, moves := range map[string]bool{
		"with rates high, whatever the roll stick does, the elevator stays still":         false,
		"with right roll, whatever the pitch stick does, the port flap stays still":       false,
		"with landing flap, the more right the roll stick, the higher the starboard flap": false,
		"at every switch position, with right roll, the starboard aileron rises":          true,
		"whatever else moves, when the signal is lost, the motor is stopped":              true,
		"with right roll, the motor never runs":                                           false,
		"with right roll, the motor is stopped":                                           true,
	} {
		meaning, problem := v.Parse(Then, text)
		if problem != nil {
			t.Errorf("%q: %s", text, problem.Message)
		} else if meaning.Move.Empty() == moves {
			t.Errorf("%q: moves %+v", text, meaning.Move)
		}
	}
}

func TestParseRefusesWhatCannotBeAskedOfEveryPosition(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	for _, c := range []struct{ text, code, under, says string }{
		{"whatever the rol stick does, the port flap stays still", CodeUnknownName, "rol stick", `"roll stick"`},
		{"whatever the roll stick and the yaw lever do, the port flap stays still", CodeUnknownName, "yaw lever", `no control is called "yaw lever"`},
		{"whatever the roll stick, the port flap stays still", CodeUnknownSentence, ",", "whatever the … does"},
		{"whatever does, the port flap stays still", CodeUnknownSentence, "does", "missing"},
		{"whatever else, the port flap stays still", CodeUnknownSentence, ",", "whatever else moves"},
		{"whatever the roll stick does", CodeUnknownSentence, "", "too early"},
		{"whatever the roll stick does, whatever roll does, the elevator stays still", CodeConflict, "roll", "twice"},
		{"whatever the roll stick does, the port flpa stays still", CodeUnknownName, "port flpa", `"port flap"`},
		{"at every mode switch position, the elevator stays still", CodeUnknownName, "mode switch", "no control"},
		{"with the flap lever anywhere between parked, the elevator stays still", CodeUnknownPosition, ",", "which other"},
		{"with the flap lever anywhere above landing, the elevator is at neutral", CodeOutOfRange, "the flap lever anywhere above landing", "nowhere"},
		{"with the flap lever anywhere between parked and lnding, the elevator is at neutral", CodeUnknownPosition, "lnding", `"landing"`},
		{"with the rate switch anywhere above low, the elevator is at neutral", CodeUnknownPosition, "above", "whenever the rate switch is low or high"},
		{"whenever, the elevator is at neutral", CodeUnknownSentence, ",", "whenever what"},
		{"whenever the roll stick is right of 5 %", CodeUnknownSentence, "", "what should happen"},
		{"whenever the roll stick is up, the elevator is at neutral", CodeUnknownName, "up", "roll stick"},
		{"whenever the rol stick is right of 5%, the elevator is at neutral", CodeUnknownName, "rol stick", `"roll stick"`},
		{"whenever rates are hihg, the elevator is at neutral", CodeUnknownName, "hihg", `"high"`},
		{"whenever the signal is lost, the motor is stopped", CodeUnknownSentence, "the signal is lost", "when the signal is lost"},
		{"whatever the flap lever does, after 2 s, the port flap stays still", CodeNotAlways, "the port flap stays still", "once everything has come to rest"},
		{"whatever the flap lever does, the port flap stays still within 2 s", CodeNotAlways, "the port flap stays still within 2 s", "once everything has come to rest"},
		{"always, the flaps add at least 25% to the roll", CodeNotAlways, "the flaps add at least 25% to the roll", "estimate"},
		{"whatever the roll stick does, adverse yaw does not grow", CodeNotAlways, "adverse yaw does not grow", "estimate"},
		{"whatever else moves, the port flap servo has twice the torque it needs at 30 m/s", CodeNotAlways, "the port flap servo has twice the torque it needs at 30 m/s", "estimate"},
		{"whatever else moves, the servos of the elevator agree", CodeNotAlways, "the servos of the elevator agree", "one position"},
		{"whatever else moves, the motor stops", CodeNotAlways, "the motor stops", "stays stopped"},
		{"the elevator is always at its stop", CodeNotAlways, "the elevator is always at its stop", "cannot be decided"},
		{"the port flap never drops 10° ± 1°", CodeNotAlways, "the port flap never drops 10° ± 1°", "more than 11°"},
		{"the port flap never drops at most 10°", CodeNotAlways, "the port flap never drops at most 10°", "more than 10°"},
		{"the port flap never stays still", CodeNotAlways, "the port flap never stays still", "wrong way"},
		{"the motor never stays stopped", CodeNotAlways, "the motor never stays stopped", "runs"},
		{"the motor is never at more than 100%", CodeBadNumber, "the motor is never at more than 100%", "nothing could fail"},
		{"the motor is never at less than 0%", CodeBadNumber, "the motor is never at less than 0%", "nothing could fail"},
		{"channel 3 is never at less than 900 µs", CodeBadNumber, "channel 3 is never at less than 900 µs", "nothing could fail"},
		{"channel 3 runs out of travel", CodeUnknownSentence, "runs out of travel", "never runs out of travel"},
		{"no flap rises in the sky", CodeUnknownSentence, "in the sky", "left over"},
		{"no surfcae reaches its stop", CodeUnknownName, "surfcae", ""},
		{"no motor drops", CodeWrongMotion, "drops", "speeds up"},
		{"nothing but the roll stick moves", CodeUnknownName, "roll stick", "control"},
		{"nothing works", CodeUnknownSentence, "nothing works", "nothing moves"},
		{"the more right the flap lever, the lower the port flap", CodeUnknownPosition, "right", "the further the flap lever"},
		{"the more up the roll stick, the lower the port flap", CodeUnknownPosition, "up", "right and left"},
		{"the more the roll stick, the lower the port flap", CodeUnknownSentence, "the", "the more right the roll stick"},
		{"the more right the roll stick, the better the port flap", CodeUnknownSentence, "the better the port flap", "the higher"},
		{"the more right the roll stick, the further left the port flap", CodeWrongMotion, "the further left the port flap", "rises"},
		{"the more right the roll stick, the higher the model", CodeWrongMotion, "the higher the model", "the model rolls right"},
		{"the more right the roll stick, the higher the port flpa", CodeUnknownName, "port flpa", `"port flap"`},
		{"the more the gear switch, the further out the retracts", CodeNotAlways, "the gear switch", "more and less"},
		{"the elevator depends on the pitch stick", CodeUnknownSentence, "depends on", "nothing but"},
		{"the elevator depends on nothing but the pitch trim and the roll stick", CodeUnknownName, "pitch trim", `no control is called "pitch trim"`},
		{"the elevator depends on nothing but the pich stick", CodeUnknownName, "pich stick", `"pitch stick"`},
	} {
		_, problem := v.parse(Then, c.text)
		if problem == nil {
			t.Errorf("%q: no problem, want %s", c.text, c.code)
			continue
		}
		runes := []rune(c.text)
		from := min(problem.Column-1, len(runes))
		under := string(runes[from:min(from+problem.Width, len(runes))])
		if problem.Code != c.code || under != c.under || !strings.Contains(problem.Message+" "+problem.Hint, c.says) {
			t.Errorf("%q: got %s under %q: %s (%s); want %s under %q with %q", c.text, problem.Code, under, problem.Message, problem.Hint, c.code, c.under, c.says)
		}
	}
	for _, role := range []Role{Given, When} {
		if _, problem := v.Parse(role, "whatever the roll stick does, the elevator stays still"); problem == nil || problem.Code != CodeWrongPlace {
			t.Errorf("under %d: %+v", role, problem)
		}
	}
}

func TestAdviceLeadsToSentencesAboutEveryPosition(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	for text, want := range map[string]string{
		"if the roll stick is right of 5 %, the starboard aileron rises": "whenever the roll stick is right of 5 %, the starboard aileron rises",
		"no matter what the roll stick does, the elevator stays still":   "whatever the roll stick does, the elevator stays still",
		"regardless of the roll stick, the elevator stays still":         "whatever the roll stick does, the elevator stays still",
		"wherever the flap lever stands, the elevator is at neutral":     "at every position of the flap lever, the elevator is at neutral",
		"for all switch positions, the motor is stopped":                 "at every switch position, the motor is stopped",
		"in any case the motor is stopped":                               "whatever else moves, the motor is stopped",
		"the motor must never run":                                       "the motor never run",
		"the elevator does not depend on the roll stick":                 "whatever the roll stick does, the elevator stays still",
		"the elevator only follows the pitch stick":                      "the elevator depends on nothing but the pitch stick",
		"no surface hits its end stop":                                   "no surface reaches its stop",
		"no channel clips":                                               "no channel runs out of travel",
	} {
		_, problem := v.Parse(Then, text)
		if problem == nil || problem.Hint != `write "`+want+`"` {
			t.Errorf("%q: %+v, want %q", text, problem, want)
		}
	}
}

// What a prefix says may stand in any order.
func TestPrefixesMayStandInAnyOrder(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	parts := []string{"whatever the roll stick does", "at every switch position", "with the flap lever anywhere above 20 %", "whenever the pitch stick is back of 10 %"}
	want := ""
	rapid.Check(t, func(t *rapid.T) {
		order := rapid.Permutation(parts).Draw(t, "order")
		o := outcomeOf(t, v, strings.Join(order, ", ")+", the elevator rises")
		got := strings.Fields(freedoms(&m.Setup, &o))
		slices.Sort(got)
		said := strings.Join(got, " ")
		if want == "" {
			want = said
		}
		if said != want || o.Every.When == nil {
			t.Fatalf("got %q, want %q", said, want)
		}
	})
}

func TestDegreesAreTheInverseOfChordTravel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		chord := mixcore.Millimetres(rapid.Float64Range(5, 400).Draw(t, "chord"))
		angle := rapid.Float64Range(0, 179).Draw(t, "angle")
		if back := inDegrees(chord, float64(mixcore.ChordTravel(chord, mixcore.Degrees(angle)))); math.Abs(back-angle) > 1e-6 {
			t.Fatalf("%v° comes back as %v°", angle, back)
		}
	})
	for _, c := range []struct{ mm, want float64 }{{200.1, math.Inf(1)}, {math.Inf(1), math.Inf(1)}, {math.Inf(-1), math.Inf(-1)}, {0, 0}} {
		if got := inDegrees(100, c.mm); got != c.want {
			t.Errorf("%v mm: got %v, want %v", c.mm, got, c.want)
		}
	}
}

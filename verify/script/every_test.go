package script

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

func bracken(t testing.TB) *airframes.Model {
	t.Helper()
	text, ok := airframes.ReadShipped("bracken-20")
	if !ok {
		t.Fatal("bracken-20 is not there")
	}
	return load(t, "bracken-20.yaml", text)
}

// Channels of bracken-20.
const (
	motorChannel = iota
	portAileronChannel
	portFlapChannel
	starboardFlapChannel
	starboardAileronChannel
	elevatorChannel
	steeringChannel
)

func reversed(channel int) func(*mixcore.Setup) {
	return func(s *mixcore.Setup) { s.Channels[channel].Reversed = !s.Channels[channel].Reversed }
}

// share changes a line of a channel's mix.
func share(channel, line int, plus, minus mixcore.Percent) func(*mixcore.Setup) {
	return func(s *mixcore.Setup) { s.Channels[channel].Mix[line].Share = mixcore.Sides{Plus: plus, Minus: minus} }
}

// bleeds adds a little of a channel's first demand to another channel, where a
// condition holds.
func bleeds(from, to int, by mixcore.Percent, when *mixcore.Condition) func(*mixcore.Setup) {
	return func(s *mixcore.Setup) {
		line := s.Channels[from].Mix[0]
		line.Share, line.When = mixcore.Both(by), when
		s.Channels[to].Mix = append(s.Channels[to].Mix, line)
	}
}

// Every form holds on bracken-20, and fails with a mistake planted that no single
// position which somebody would try need show.
func TestSentencesAboutEveryPositionCatchPlantedMistakes(t *testing.T) {
	m := bracken(t)
	control := func(name string) int {
		return slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Name == name })
	}
	high := mixcore.Condition{Op: mixcore.AtPosition, Control: control("rate switch"), Position: 1}
	nearly := mixcore.Condition{Op: mixcore.Within, Control: control("flap lever"), Low: 61, High: 62}
	hidden := &mixcore.Condition{Op: mixcore.And, Args: []mixcore.Condition{high, nearly}}
	for _, c := range []struct {
		steps  string // joined by /
		faults []func(*mixcore.Setup)
	}{
		{"Given rates are low / Then whatever the roll stick does, both flaps stay still", []func(*mixcore.Setup){func(s *mixcore.Setup) { s.Channels[portFlapChannel].Mix[1].When = nil }}},
		{"Then at every position, no channel runs out of travel", []func(*mixcore.Setup){share(portFlapChannel, 1, 40, 20), func(s *mixcore.Setup) { s.Channels[elevatorChannel].Limit = 94 }, bleeds(portFlapChannel, elevatorChannel, 30, hidden)}},
		{"Then no surface reaches its stop", []func(*mixcore.Setup){func(s *mixcore.Setup) { s.Parts[1].Stops.Plus = 47 }, func(s *mixcore.Setup) { s.Parts[5].Stops.Plus = 28 }}},
		{"Given the motor switch is safe / Then whatever else moves, the motor stays stopped", []func(*mixcore.Setup){func(s *mixcore.Setup) { s.Channels[motorChannel].Mix[1].When = &high }, reversed(motorChannel), bleeds(portFlapChannel, motorChannel, 10, hidden)}},
		{"Then whatever else moves, when the signal is lost, the motor is stopped", []func(*mixcore.Setup){func(s *mixcore.Setup) { s.Channels[motorChannel].Failsafe = mixcore.Failsafe{Hold: true} }}},
		{"Then at every position, the more right the roll stick, the higher the starboard aileron and the lower the port aileron", []func(*mixcore.Setup){reversed(portAileronChannel), reversed(starboardAileronChannel), share(starboardAileronChannel, 0, 100, -5), share(portAileronChannel, 0, -1, 100)}},
		{"Given rates are high / Then at every position, the more right the roll stick, the lower the port flap and the higher the starboard flap", []func(*mixcore.Setup){reversed(portFlapChannel), reversed(starboardFlapChannel), share(starboardFlapChannel, 1, -20, 2), share(portFlapChannel, 1, 0, 0)}},
		{"Then at every switch position, whenever the roll stick is right of 10 %, the model rolls right", []func(*mixcore.Setup){func(s *mixcore.Setup) {
			reversed(portAileronChannel)(s)
			reversed(starboardAileronChannel)(s)
		}, share(starboardAileronChannel, 0, -60, 65)}},
		{"Given rates are high / Then the starboard flap rises whenever the roll stick is right of 30 %", []func(*mixcore.Setup){reversed(starboardFlapChannel), share(starboardFlapChannel, 1, 0, -14)}},
		{"Then at every position of the rate switch, the elevator depends on nothing but the pitch stick, the pitch trim, the rate switch and the flap lever", []func(*mixcore.Setup){bleeds(portAileronChannel, elevatorChannel, 3, hidden), bleeds(steeringChannel, elevatorChannel, -3, nil)}},
		{"Then whatever the yaw stick and the yaw trim do, nothing but the rudder and the nose wheel moves", []func(*mixcore.Setup){bleeds(steeringChannel, starboardAileronChannel, 3, nil), bleeds(steeringChannel, motorChannel, 5, nil)}},
		{"Then at every switch position, whatever the flap lever does, the port flap moves together with the starboard flap", []func(*mixcore.Setup){reversed(portFlapChannel), share(portFlapChannel, 0, 0, 0)}},
		{"Then at every switch position, whatever the flap lever does, the port flap moves as far as the starboard flap ± 0.5°", []func(*mixcore.Setup){share(portFlapChannel, 0, 97, 97), bleeds(portFlapChannel, portFlapChannel, 4, hidden)}},
		{"Then at every switch position, whatever the roll stick does, the port flap moves less than the port aileron", []func(*mixcore.Setup){share(portFlapChannel, 1, 14, 90), share(portAileronChannel, 0, 0, 0)}},
		{"Given rates are high / Then at every position of the flap lever, whatever the roll stick does, the port flap moves opposite to the starboard flap", []func(*mixcore.Setup){reversed(portFlapChannel), share(starboardFlapChannel, 1, -20, 14)}},
		{"Then the port flap never drops more than 48°", []func(*mixcore.Setup){share(portFlapChannel, 1, 22, 20), bleeds(portAileronChannel, portFlapChannel, 30, hidden)}},
		{"Given rates are high / Then with the flap lever anywhere between parked and takeoff, whatever the sticks do, the elevator is never more than 22° down", []func(*mixcore.Setup){share(elevatorChannel, 1, -16, -16)}},
		{"Given the motor switch is live / Then whatever else moves, the motor never runs whenever the throttle is at most 1 %", []func(*mixcore.Setup){func(s *mixcore.Setup) { s.Channels[motorChannel].SubTrim = 3 }, bleeds(portFlapChannel, motorChannel, 10, hidden)}},
		{"When the roll stick is full right / Then whatever else moves, the starboard aileron rises at least 10°", []func(*mixcore.Setup){reversed(starboardAileronChannel), share(starboardAileronChannel, 0, 60, 65)}},
	} {
		text := "Feature: Test\n  Scenario: Test\n    " + strings.ReplaceAll(c.steps, " / ", "\n    ") + "\n"
		for _, check := range ran(t, m, text).Checks {
			if !check.Passed || check.Proof == nil || check.Proof.Answer != result.Proved {
				t.Errorf("%s: %s: %s, %+v", c.steps, check.Subject, check.Got, check.Proof)
			}
		}
		for i, fault := range c.faults {
			variant, faults := m.With(fault)
			if variant == nil {
				t.Fatalf("%s: fault %d: %+v", c.steps, i, faults)
			}
			failed := 0
			for _, check := range ran(t, variant, text).Checks {
				if check.Passed {
					continue
				}
				failed++
				if check.Proof == nil || check.Proof.Answer != result.Disproved || check.Got == "" {
					t.Errorf("%s: fault %d: %s: %+v", c.steps, i, check.Subject, check)
				}
				if check.Proof.Counter != nil && (len(check.Why) == 0 || !slices.Equal(check.Proof.Counter.Pose, check.Pose) || !slices.Equal(check.Proof.Counter.Moved, check.Moved)) {
					t.Errorf("%s: fault %d: pose %q, counterexample %+v, %d reasons", c.steps, i, check.Pose, check.Proof.Counter, len(check.Why))
				}
			}
			if failed == 0 {
				t.Errorf("%s: passes in spite of fault %d", c.steps, i)
			}
		}
	}
}

func TestScenesSayWhichControlsTheyHaveSet(t *testing.T) {
	m := bracken(t)
	for _, c := range []struct {
		steps string
		over  string // of the check
	}{
		{"Then whatever else moves, the elevator is not at its stop", "4 switch states and every place of 8 sticks, levers and trims"},
		{"Given rates are high / Then whatever else moves, the elevator is not at its stop", "2 switch states and every place of 8 sticks, levers and trims"},
		{"Given rates are high / And everything rests / Then whatever else moves, the elevator is not at its stop", "2 switch states and every place of 8 sticks, levers and trims"},
		{"Given everything rests / Then whatever else moves, the elevator is not at its stop", "4 switch states and every place of 8 sticks, levers and trims"},
		{"Given rates are high / And full throttle / When the roll stick is full right / Then whatever else moves, the elevator is not at its stop", "2 switch states and every place of 6 sticks, levers and trims"},
		{"When the roll stick is full right / Then the starboard aileron rises / Given rates are high / Then whatever else moves, the elevator is not at its stop", "2 switch states and every place of 8 sticks, levers and trims"},
		{"When the roll stick is full right / Then the starboard aileron rises / When the pitch stick is full back / Then whatever else moves, the elevator is not at its stop", "4 switch states and every place of 6 sticks, levers and trims"},
		{"Then whatever else moves, with rates high, the elevator is not at its stop", "2 switch states and every place of 8 sticks, levers and trims"},
		{"Given the motor switch is live / Then at every switch position, the elevator is not at its stop", "2 switch states"},
	} {
		text := "Feature: Test\n  Scenario: Test\n    " + strings.ReplaceAll(c.steps, " / ", "\n    ") + "\n"
		checks := ran(t, m, text).Checks
		found := slices.IndexFunc(checks, func(c result.Check) bool { return c.Proof != nil })
		if found < 0 {
			t.Errorf("%s: no proof", c.steps)
		} else if got := checks[found].Proof.Over; got != c.over {
			t.Errorf("%s: over %q, want %q", c.steps, got, c.over)
		}
	}
}

func TestBackgroundsCountAsSet(t *testing.T) {
	text := "Feature: f\n  Background:\n    Given the motor switch is safe\n  Scenario: s\n    Then the motor never runs\n"
	if c := ran(t, bracken(t), text).Checks[0]; !c.Passed || !strings.HasPrefix(c.Proof.Over, "2 switch states") {
		t.Errorf("got %s over %q", c.Got, c.Proof.Over)
	}
}

// Proofs of a part stand where that part is met on the walk, not before power.
func TestProofsStandWhereTheirPartIs(t *testing.T) {
	record := ran(t, bracken(t), "Feature: f\n  Scenario: s\n    Then whatever the roll stick does, the elevator stays still\n    And the starboard flap never drops more than 60°\n    And no channel runs out of travel\n")
	for _, c := range record.Checks {
		want := map[string]result.Stage{"elevator": result.Tail, "starboard flap": result.StarboardWing, "channel 3 (port flap)": result.PortWing}[c.Subject]
		if want != "" && c.Stage != want {
			t.Errorf("%s at %s, want %s", c.Subject, c.Stage, want)
		}
	}
}

func TestFreeControlsAreCovered(t *testing.T) {
	m := bracken(t)
	for _, c := range []struct {
		step    string
		missing []string // positions
		unmoved []string
	}{
		{"Then whatever else moves, nothing but the motor moves on purpose", nil, nil},
		{"Then whatever else moves, no channel runs out of travel", nil, []string{"roll stick", "roll trim", "pitch stick", "pitch trim", "yaw stick", "yaw trim", "throttle", "flap lever", "rate switch", "motor switch"}},
		{"Then with the flap lever anywhere below 90 %, the elevator is at neutral", []string{"flap lever landing"}, []string{"roll stick", "roll trim", "pitch stick", "pitch trim", "yaw stick", "yaw trim", "throttle", "rate switch", "motor switch"}},
		{"Then at every switch position, whatever the roll stick does, the elevator stays still", nil, []string{"roll trim", "pitch stick", "pitch trim", "yaw stick", "yaw trim", "throttle", "flap lever"}},
	} {
		u := ran(t, m, "Feature: f\n  Scenario: s\n    "+c.step+"\n").Uncovered
		if !slices.Equal(u.Positions, c.missing) || !slices.Equal(u.Controls, c.unmoved) {
			t.Errorf("%s: missing %q and %q, want %q and %q", c.step, u.Positions, u.Controls, c.missing, c.unmoved)
		}
	}
}

func TestTooManyProofsAreRefused(t *testing.T) {
	var text strings.Builder
	text.WriteString("Feature: f\n")
	for i := range maxProofs/7 + 1 {
		fmt.Fprintf(&text, "  Scenario: s%d\n    Then no channel runs out of travel\n", i)
	}
	if codes := codesOf(bracken(t), text.String()); !slices.Contains(codes, "0:0 "+codeTooBig) {
		t.Errorf("got %v", codes)
	}
}

// A trial judges sentences about every position as a run does.
func TestTrialsProve(t *testing.T) {
	m := bracken(t)
	files := []File{{"test.feature", []byte("Feature: f\n  Scenario: s\n    Then whatever the roll stick does, the starboard aileron never drops whenever the roll stick is right of 20 %\n    And the motor never runs whenever the motor switch is safe\n")}}
	trial, problems := NewTrial(m, files)
	if trial == nil {
		t.Fatalf("%+v", problems)
	}
	for i, c := range []struct {
		fault func(*mixcore.Setup)
		want  []string
	}{
		{func(*mixcore.Setup) {}, nil},
		{reversed(starboardAileronChannel), []string{"starboard aileron"}},
		{func(s *mixcore.Setup) { s.Channels[motorChannel].Mix = s.Channels[motorChannel].Mix[:1] }, []string{"motor"}},
	} {
		variant, _ := m.With(c.fault)
		if got := trial.Failing(variant, math.MaxInt); !slices.Equal(got, c.want) {
			record, _ := Run(variant, files, Selection{})
			t.Errorf("%d: got %v, want %v: %+v", i, got, c.want, record.Checks)
		}
	}
}

// With the condition fulfilled nowhere, or nothing that moves, a check fails.
func TestWhatShowsNothingFails(t *testing.T) {
	for _, step := range []string{
		"whenever the flap lever is above 60 % and the flap lever is below 40 %, the motor is stopped",
		"Then whatever the throttle does, the port flap moves together with the starboard flap",
		"Then the more right the roll stick, the higher the elevator",
	} {
		step = "Then " + strings.TrimPrefix(step, "Then ")
		if c := ran(t, bracken(t), "Feature: f\n  Scenario: s\n    "+step+"\n").Checks[0]; c.Passed || c.Why != nil || c.Got == "" {
			t.Errorf("%s: %+v", step, c)
		}
	}
	if c := codesOf(bracken(t), "Feature: f\n  Scenario: s\n    When the roll stick is full right\n    Then whatever the roll stick does, the elevator stays still\n"); !slices.Equal(c, []string{"4:19 " + phrase.CodeConflict}) {
		t.Errorf("got %v", c)
	}
}

package draft_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/hingeline/verify/draft"
)

// one is a model with one control, one demand and one part or pair, whose
// channels do the given.
func one(t *testing.T, control, demand, parts string) string {
	t.Helper()
	m := loaded(t, "one.yaml", []byte(fmt.Sprintf(`hingeline: 1
name: One
controls:
  %s
demands:
  asked: %s
channels:
  1: asked
  2: {mix: asked, reversed: true}
%s
`, control, demand, parts)))
	return string(draft.Script(m).Text)
}

const (
	flapsUp   = "surfaces:\n  port flap: {channel: 1, measured: {100%: 30° up}}\n  starboard flap: {channel: 1, measured: {100%: 30° up}}"
	flapsDown = "surfaces:\n  port flap: {channel: 1, measured: {100%: 30° down}}\n  starboard flap: {channel: 1, measured: {100%: 30° down}}"
	retract   = "extras:\n  nose retract: {channel: 1}"
)

const spoilersDown = "surfaces:\n  port spoiler: {channel: 1, measured: {100%: 50° down}}\n  starboard spoiler: {channel: 1, measured: {100%: 50° down}}"

// What is asked is what is right, whichever way the set-up goes: names are common
// practice, no source.
func TestDraftSaysWhatIsRight(t *testing.T) {
	for name, c := range map[string]struct {
		control, demand, parts string
		want                   []string
		never                  string
	}{
		"flap lever, set-up raises them": {"flap lever: {lever: {parked: 0, landing: 100}}", "flap lever", flapsUp,
			[]string{"* when the flap lever is at landing, both flaps drop", "with the flap lever at landing, when the flap lever is at parked, both flaps rise"}, "you decide"},
		"flap lever that rests at landing": {"flap lever: {lever: {landing: 0, parked: 100}}", "flap lever", flapsUp,
			[]string{"* when the flap lever is at parked, both flaps rise"}, "you decide"},
		"flap switch": {"flap switch: [up, mid, down]", "{from: flap switch, values: {up: 0%, mid: -40%, down: -80%}}", flapsDown,
			[]string{"* when the flap switch is mid, both flaps drop", "when the flap switch is down, both flaps drop"}, "you decide"},
		"camber lever": {"camber lever: lever", "camber lever", flapsUp,
			[]string{"* when the camber lever is at 50%, both flaps drop"}, "you decide"},
		"crow": {"crow lever: {lever: {shut: 0, open: 100}}", "crow lever",
			"surfaces:\n  port aileron: {channel: 1, measured: {100%: 20° down}}\n  starboard aileron: {channel: 1, measured: {100%: 20° down}}",
			[]string{"* when the crow lever is at open, both ailerons rise"}, "you decide"},
		"spoilers on any lever": {"left slider: lever", "left slider",
			spoilersDown,
			[]string{"* when the left slider is at 50%, both spoilers rise"}, "you decide"},
		"spoilers on a lever named up": {"spoiler lever: {lever: {down: 0, up: 100}}", "spoiler lever", spoilersDown,
			[]string{"* when the spoiler lever is at up, both spoilers rise"}, "you decide"},
		"spoilers on a switch named up": {"spoiler switch: [down, up]", "{from: spoiler switch, values: {down: 0%, up: 100%}}", spoilersDown,
			[]string{"* when the spoiler switch is up, both spoilers rise"}, "you decide"},
		"spoilers with the flaps' names": {"flap lever: {lever: {up: 0, landing: 100}}", "flap lever", spoilersDown,
			[]string{"* when the flap lever is at landing, both spoilers rise"}, "you decide"},
		"brakes that may go either way": {"brake lever: {lever: {down: 0, up: 100}}", "brake lever", spoilersDown,
			[]string{"# you decide: * when the brake lever is at up, both spoilers drop"}, "\n    * when the brake lever is at up"},
		"spoilers at unknown places": {"left slider: {lever: {first: 0, second: 100}}", "left slider", spoilersDown,
			[]string{"# you decide: * when the left slider is at second, both spoilers drop"}, "\n    * when the left slider is at second"},
		"crow below normal": {"flap lever: {lever: {crow: 0, normal: 100}}", "{from: flap lever, curve: {0%: 100%, 100%: 0%}}", flapsDown,
			[]string{"* when the flap lever is at normal, both flaps rise", "when the flap lever is at crow, both flaps drop"}, "# you decide: * when the flap lever"},
		"flaps at unknown places": {"flap lever: {lever: {first: 0, second: 100}}", "flap lever", flapsDown,
			[]string{"# you decide: * when the flap lever is at second, both flaps drop"}, "\n    * when the flap lever is at second"},
		"flaps up by more words": {"flap lever: {lever: {landing flap: 0, flaps up: 100}}", "flap lever", flapsDown,
			[]string{"* when the flap lever is at flaps up, both flaps rise"}, "you decide"},
		"a brake lever on a motor": {"brake lever: lever", "{from: brake lever, curve: {0%: 0%, 100%: -60%}}", "motors:\n  motor: {channel: 1}",
			[]string{"# you decide: * when the brake lever is at 50%, the motor slows down"}, "\n    * when the brake lever is at 50%, the motor speeds up"},
		"a throttle that goes the other way": {"throttle: {lever: {idle: 95, high: 20}}", "{from: throttle, curve: {0%: 100%, 100%: -100%}}", "motors:\n  motor: {channel: 1}",
			[]string{"* with the throttle at 0%, when the throttle is at idle, the motor slows down"}, "you decide"},
		"a lever that says nothing": {"left slider: lever", "left slider", flapsDown,
			[]string{"# you decide: * when the left slider is at 50%, both flaps drop"}, "\n    * when the left slider is at 50%"},
		"phases": {"flight switch: [cruise, thermal, speed]", "{from: flight switch, values: {cruise: 0%, thermal: -20%, speed: 20%}}", flapsDown,
			[]string{"* when the flight switch is thermal, both flaps drop", "when the flight switch is speed, both flaps rise"}, "you decide"},
		"phases that say nothing": {"mode switch: [one, two]", "{from: mode switch, values: {one: 0%, two: 30%}}", flapsDown,
			[]string{"# you decide: * when the mode switch is two, both flaps drop"}, "* when the mode switch is two, both flaps rise"},
		"gear that comes out when raised": {"gear switch: [lowered, raised]", "{from: gear switch, values: {lowered: -100%, raised: 100%}}", retract,
			[]string{"the nose retract is out", "* when the gear switch is raised, the nose retract retracts"}, "you decide"},
		"gear on a dead channel": {"gear switch: [up, down]", "{from: gear switch, values: {up: 0%, down: 0%}}", retract,
			[]string{"the nose retract is in", "* when the gear switch is down, the nose retract extends"}, "you decide"},
		"throttle reversed": {"throttle: lever", "{from: throttle, curve: {0%: 100%, 100%: -100%}}", "motors:\n  motor: {channel: 1}",
			[]string{"the motor is stopped", "* when the throttle is at 50%, the motor speeds up", "when the throttle is at 0%, the motor slows down"}, "you decide"},
		"rudder on the roll stick": {"roll stick: roll", "roll stick", "surfaces:\n  rudder: {channel: 1, measured: {100%: 20° left}}",
			[]string{"When the roll stick is full right\n    Then the rudder moves right", "And the model yaws right"}, "you decide"},
		"flaps that follow the elevator": {"pitch stick: pitch", "pitch stick", flapsDown,
			[]string{"# you decide: * with the pitch stick full back, both flaps drop"}, "Then both flaps drop"},
		"elevator that is dead": {"pitch stick: pitch", "{from: pitch stick, throw: 0%}", "surfaces:\n  elevator: {channel: 1, measured: {100%: 20° up}}",
			[]string{"When the pitch stick is full back\n    Then the elevator rises\n    And the model pitches up"}, "you decide"},
		"wheel that turns the wrong way": {"yaw stick: yaw", "yaw stick", "wheels:\n  tail wheel: {channel: 1, measured: {100%: 20° left}}",
			[]string{"When the yaw stick is full right\n    Then the tail wheel moves right"}, "the model yaws"},
	} {
		t.Run(name, func(t *testing.T) {
			text := one(t, c.control, c.demand, c.parts)
			_, body, _ := strings.Cut(text, "write what is.")
			body, _, _ = strings.Cut(body, "Loss of signal")
			for _, want := range c.want {
				if !strings.Contains(body, want) {
					t.Errorf("the draft does not say %q:\n%s", want, text)
				}
			}
			if strings.Contains(body, c.never) {
				t.Errorf("the draft says %q:\n%s", c.never, text)
			}
		})
	}
}

// thrust is a motor on a throttle, with a part of another control.
const thrust = `hingeline: 1
name: Thrust
controls: {throttle: lever, %[1]s}
demands: {throttle: {from: throttle, curve: {0%%: -100%%, 100%%: 100%%}}, other: %[2]s}
channels: {1: {mix: [throttle, {add: other, share: 30%%}], failsafe: -100%%}}
motors: {port motor: {channel: 1}}
`

// A draft never asks of a stick, or of a lever that is for something else, to start
// a motor whose throttle rests.
func TestDraftLetsNoStickStartAMotor(t *testing.T) {
	for name, c := range map[string]struct{ control, from, resting, running string }{
		"yaw":   {"yaw stick: yaw", "yaw stick", "When the yaw stick is full right\n    Then the port motor stays stopped", "When the yaw stick is full right\n    Then the port motor speeds up"},
		"pitch": {"pitch stick: pitch", "pitch stick", "When the pitch stick is full back\n    Then the port motor stays stopped", ""},
		"flaps": {"flap lever: lever", "flap lever", "* when the flap lever is at 50%, the port motor stays stopped", ""},
	} {
		m := loaded(t, "thrust.yaml", []byte(fmt.Sprintf(thrust, c.control, c.from)))
		text := string(draft.Script(m).Text)
		if !strings.Contains(text, c.resting) || !strings.Contains(text, c.running) {
			t.Errorf("%s: the draft does not say %q and %q:\n%s", name, c.resting, c.running, text)
		}
		if r := check(t, m, draft.Script(m)); len(failures(r)) == 0 {
			t.Errorf("%s: a model whose motor starts by the %s passes:\n%s", name, c.from, text)
		}
	}
}

package findings

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/verifytest"
)

// found are the codes that an airframe gives, each once, and what is printed.
func found(t *testing.T, text string) (codes []string, said string) {
	t.Helper()
	m := verifytest.Model(t, "model.yaml", []byte("hingeline: 1\nname: Fennel\n"+text))
	list := Find(m)
	for _, p := range list {
		if !slices.Contains(codes, p.Code) {
			codes = append(codes, p.Code)
		}
	}
	slices.Sort(codes)
	var out bytes.Buffer
	diag.Write(&out, list, m.Source)
	return codes, out.String()
}

func TestFindTellsSoundFromUnsound(t *testing.T) {
	const wing = `
controls: {roll stick: roll, pitch stick: pitch, yaw stick: yaw, flap lever: lever, rate switch: [low, high]}
demands: {roll: roll stick, pitch: pitch stick, yaw: yaw stick, flap: {from: flap lever, throw: 50%}}
`
	// used keeps the controls of wing busy that a row is not about.
	const used = `
  11: {name: elevator, mix: [pitch, {fixed: 3%, when: rate switch is high}], limit: 150%, pulse_us: {min: 900, max: 2100}}
  12: {name: rudder, mix: [yaw, {add: flap, share: 1%}, {add: roll, share: 1%}], limit: 150%, pulse_us: {min: 900, max: 2100}}
surfaces:
  elevator: {channel: 11, measured: {120%: 20° up}}
  rudder: {channel: 12, measured: {120%: 20° right}}
`
	for _, row := range []struct {
		name, text string
		want       []string
		say        string // must be among what is printed
	}{
		{name: "ailerons on a Y-lead, built in as mirror images",
			text: wing + "channels:\n  1: roll" + used + "  port aileron: {channel: 1, measured: {100%: 20° down}}\n  starboard aileron: {channel: 1, measured: {100%: 20° up}}\n"},
		{name: "flaps on a Y-lead that moves them the same way",
			text: wing + "channels:\n  1: flap" + used + "  port flap: {channel: 1, measured: {100%: 40° down}}\n  starboard flap: {channel: 1, measured: {100%: 40° down}}\n"},
		{name: "ailerons on a Y-lead with a flap share of 0 %",
			text: wing + "channels:\n  1: {mix: [roll, {add: flap, share: 0%}]}" + used + "  port aileron: {channel: 1, measured: {100%: 20° down}}\n  starboard aileron: {channel: 1, measured: {100%: 20° up}}\n"},
		{name: "ailerons on a Y-lead asked to droop",
			text: wing + "channels:\n  1: {mix: [roll, {add: flap, share: 20%}], limit: 150%, pulse_us: {min: 900, max: 2100}}" + used + "  port aileron: {channel: 1, measured: {120%: 20° down}}\n  starboard aileron: {channel: 1, measured: {120%: 20° up}}\n",
			want: []string{codeYLead}, say: "move opposite ways, but flap needs them to move the same way"},
		{name: "a V-tail on a Y-lead",
			text: wing + "channels:\n  1: {mix: [{add: pitch, share: 50%}, {add: yaw, share: 50%}]}" + used + "  port v-tail: {channel: 1, measured: {100%: 20° up}}\n  starboard v-tail: {channel: 1, measured: {100%: 20° up}}\n",
			want: []string{codeYLead}, say: "yaw needs them to move opposite ways"},
		{name: "differential and a V-tail on channels of their own",
			text: wing + `channels:
  1: {mix: [{add: roll, share: {right: 60%, left: 100%}}]}
  2: {mix: [{add: roll, share: {right: 100%, left: 60%}}]}
  3: {mix: [{add: pitch, share: 50%}, {add: yaw, share: 50%}]}
  4: {mix: [{add: pitch, share: 50%}, {add: yaw, share: -50%}]}
` + used + `  port aileron: {channel: 1, measured: {100%: 20° down}}
  starboard aileron: {channel: 2, measured: {100%: 20° up}}
  port v-tail: {channel: 3, measured: {100%: 20° up}}
  starboard v-tail: {channel: 4, measured: {100%: 20° up}}
`},
		{name: "differential the wrong way round on one side",
			text: wing + `channels:
  1: {mix: [{add: roll, share: {right: 60%, left: 100%}}]}
  2: {mix: [{add: roll, share: {right: 60%, left: 100%}}]}
` + used + "  port aileron: {channel: 1, measured: {100%: 20° down}}\n  starboard aileron: {channel: 2, measured: {100%: 20° up}}\n",
			want: []string{codeUneven}, say: "port aileron rises 20° and starboard aileron drops 20°; the other way starboard aileron rises 12° and port aileron drops 12°"},
		{name: "one flap reversed",
			text: wing + "channels:\n  1: flap\n  2: {mix: flap, reversed: true}" + used + "  port flap: {channel: 1, measured: {100%: 40° down}}\n  starboard flap: {channel: 2, measured: {100%: 40° down}}\n",
			want: []string{codeUneven}, say: "with flap lever 100 % port flap drops 20° and starboard flap rises 20°"},
		{name: "twin rudders that toe out more than in",
			text: wing + "channels:\n  1: {mix: [{add: yaw, share: {right: 60%, left: 100%}}]}\n  2: {mix: [{add: yaw, share: {right: 100%, left: 60%}}]}" + used +
				"  port rudder: {channel: 1, measured: {100%: 25° right}}\n  starboard rudder: {channel: 2, measured: {100%: 25° right}}\n"},
		{name: "throws 0.9° apart, and 1.4° of 40°",
			text: wing + "channels:\n  1: roll\n  2: roll\n  3: {mix: [{add: flap, share: 200%}]}\n  4: {mix: [{add: flap, share: 200%}]}" + used +
				"  port aileron: {channel: 1, measured: {100%: 10° down}}\n  starboard aileron: {channel: 2, measured: {100%: 10.9° up}}\n" +
				"  port flap: {channel: 3, measured: {100%: 40° down}}\n  starboard flap: {channel: 4, measured: {100%: 41.4° down}}\n"},
		{name: "flaps uneven only on high rates and with roll",
			text: wing + `channels:
  1: {mix: [flap, {add: roll, share: -20%, when: rate switch is high}]}
  2: {mix: [flap, {add: roll, share: 10%, when: rate switch is high}]}
` + used + "  port flap: {channel: 1, measured: {100%: 40° up}}\n  starboard flap: {channel: 2, measured: {100%: 40° up}}\n",
			want: []string{codeUneven}, say: "with roll stick full left and rate switch high port flap rises 8° and starboard flap drops 4°"},
		{name: "spoilers that rest on their seat",
			text: wing + "channels:\n  1: {mix: [{add: flap, share: 200%}, {fixed: -100%}, {add: flap, share: 200%}]}" + used + "  spoiler: {channel: 1, measured: {-100%: 0°, 100%: 50° up}}\n"},
		{name: "a flap that rests against its stop",
			text: wing + "channels:\n  1: flap" + used + "  flap: {channel: 1, stops: {up: 0.5°}, measured: {100%: 40° down}}\n",
			want: []string{codeParkedAtEnd}, say: "stands at neutral, with 0.5° left going UP and 40° going DOWN, so it cannot rise"},
		{name: "a flap that rests 1.2° from its stop",
			text: wing + "channels:\n  1: flap" + used + "  flap: {channel: 1, stops: {up: 1.2°}, measured: {100%: 40° down}}\n"},
		{name: "a flap parked as far down as it goes by sub-trim",
			text: wing + "channels:\n  1: {mix: [{add: flap, share: -100%}], sub_trim: 99%}" + used + "  flap: {channel: 1, measured: {100%: 40° down}}\n",
			want: []string{codeParkedAtEnd}, say: "so it cannot drop"},
		{name: "two servos that agree within a degree",
			text: wing + "channels:\n  1: pitch" + used + "  canard: {servos: [{channel: 1, measured: {100%: 20° down}}, {channel: 1, measured: {100%: 20.9° down}}]}\n"},
		{name: "a switch that changes only the expo",
			text: `
controls: {pitch stick: pitch, rate switch: [low, high]}
demands: {pitch: {from: pitch stick, rates: [{when: rate switch is high, throw: 100%, expo: 40%}, {throw: 100%}]}}
channels: {1: pitch}
surfaces: {elevator: {channel: 1, measured: {100%: 20° up}}}
`},
		{name: "a switch that changes only the expo of a lever",
			text: `
controls: {flap lever: lever, rate switch: [low, high]}
demands: {flap: {from: flap lever, rates: [{when: rate switch is high, throw: 100%, expo: 40%}, {throw: 100%}]}}
channels: {1: flap}
surfaces: {flap: {channel: 1, measured: {100%: 40° down}}}
`},
		{name: "a lever that counts only beyond a threshold, with the switch over",
			text: `
controls: {pitch stick: pitch, flap lever: lever, flight switch: [cruise, land]}
demands: {pitch: {from: pitch stick, throw: 80%}}
channels: {1: {mix: [pitch, {fixed: 5%, when: flap lever is between 40% and 41% and flight switch is land}]}}
surfaces: {elevator: {channel: 1, measured: {100%: 20° up}}}
`},
		{name: "travel that runs out only between two thresholds",
			text: `
controls: {pitch stick: pitch, flap lever: lever}
demands: {pitch: {from: pitch stick, throw: 80%}}
channels: {1: {mix: [pitch, {fixed: 30%, when: flap lever is above 40% and flap lever is below 41%}]}}
surfaces: {elevator: {channel: 1, measured: {100%: 20° up}}}
`,
			want: []string{codeTravel}, say: "with pitch stick full back and flap lever 40.001 %: its mix comes to 110 %"},
		{name: "a switch that only stopped_when names",
			text: `
controls: {throttle: lever, motor switch: [safe, live]}
demands: {throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}}
channels: {1: {mix: throttle, failsafe: -100%}}
motors: {motor: {channel: 1, stopped_when: motor switch is safe}}
`,
			want: []string{codeIdleControl, codeMotorSafe}, say: "motor runs although motor switch is safe: with throttle 100 % it stands at power 100 %"},
		{name: "a switch that does not rest at the position that is to stop the motor",
			text: `
controls: {throttle: lever, motor switch: [live, safe]}
demands: {throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}}
channels: {1: {mix: [throttle, {fixed: 1%, when: motor switch is live and throttle is above 50%}], failsafe: -100%, pulse_us: {min: 1000, max: 2100}}}
motors: {motor: {channel: 1, stopped_when: motor switch is safe and throttle is below 30%}}
`,
			want: []string{codeMotorSafe, codeTravel},
			say:  "motor runs although motor switch is safe and throttle is below 30 %: with motor switch safe and throttle 29.999 % it stands at power 30 %"},
		{name: "a switch of its own that is to stop the motor and does not",
			text: `
controls: {throttle: lever, motor switch: [live, safe]}
demands: {throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}}
channels: {1: {mix: throttle, failsafe: -100%}}
motors: {motor: {channel: 1, stopped_when: motor switch is safe}}
`,
			want: []string{codeIdleControl, codeMotorSafe}, say: "with motor switch safe and throttle 100 % it stands at power 100 %"},
		{name: "a reversed motor channel",
			text: `
controls: {throttle: lever, motor switch: [safe, live]}
demands: {throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}}
channels: {1: {mix: [throttle, {replace_with: -100%, when: motor switch is safe}], reversed: true, failsafe: 1000 µs}}
motors: {motor: {channel: 1, stopped_when: motor switch is safe}}
`,
			want: []string{codeMotorSafe}, say: "with everything at rest it stands at power 100 %"},
		{name: "a motor that is stopped in every way",
			text: `
controls: {throttle: lever, motor switch: [safe, live]}
demands: {throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}}
channels: {1: {mix: [throttle, {replace_with: -100%, when: motor switch is safe}], failsafe: 1000 µs}}
motors: {motor: {channel: 1, stopped_when: motor switch is safe}}
`},
		{name: "an axis and its trim that move nothing are one cause",
			text: `
controls: {pitch stick: pitch, yaw stick: {axis: yaw, trim: 10%}}
demands: {pitch: pitch stick}
channels: {1: pitch}
surfaces: {elevator: {channel: 1, measured: {100%: 20° up}}}
`,
			want: []string{codeIdleControl}, say: "yaw stick moves nothing"},
		{name: "a trim that no demand takes",
			text: `
controls: {pitch stick: {axis: pitch, trim: 10%}}
demands: {pitch: {from: pitch stick, trim: no}}
channels: {1: pitch}
surfaces: {elevator: {channel: 1, measured: {100%: 20° up}}}
`,
			want: []string{codeIdleControl}, say: "pitch trim moves nothing"},
		{name: "a lever that only an unused phase names",
			text: `
controls: {pitch stick: pitch, flap lever: lever}
phases: {landing: flap lever is above 50%}
demands: {pitch: pitch stick}
channels: {1: pitch}
surfaces: {elevator: {channel: 1, measured: {100%: 20° up}}}
`,
			want: []string{codeIdlePhase}, say: "the phase landing changes nothing"},
		{name: "a condition that can never hold",
			text: `
controls: {pitch stick: pitch, flap lever: lever}
demands: {pitch: pitch stick, flap: {from: flap lever, throw: 50%}}
channels: {1: pitch, 2: {mix: [{add: flap, share: 100%, when: flap lever is below 20% and flap lever is above 30%}]}}
surfaces: {elevator: {channel: 1, measured: {100%: 20° up}}, flap: {channel: 2, measured: {100%: 40° down}}}
`,
			want: []string{codeIdleControl, codeNothingMoves}, say: "nothing moves flap: whatever the controls do, it stays at neutral"},
	} {
		t.Run(row.name, func(t *testing.T) {
			codes, said := found(t, row.text)
			if !slices.Equal(codes, row.want) {
				t.Errorf("found %q, want %q:\n%s", codes, row.want, said)
			}
			if !strings.Contains(said, row.say) {
				t.Errorf("not said: %s\n%s", row.say, said)
			}
		})
	}
}

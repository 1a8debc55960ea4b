package findings

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// Arming a motor whose lever is closed must not start it: common practice, no source.
func TestNoSwitchStartsAMotorWithAThrottle(t *testing.T) {
	const model = `
controls: {throttle: lever, flap lever: lever, motor switch: [safe, live], start switch: [off, soft]}
demands: {throttle: %s, flap: flap lever}
channels: {1: {mix: [%s, {replace_with: -100%%, when: motor switch is safe}], failsafe: -100%%}}
motors: {motor: {channel: 1%s}}
`
	const curve, promised = "{from: throttle, curve: {0%: -100%, 100%: 100%}}", ", stopped_when: motor switch is safe"
	for _, c := range []struct {
		name, throttle, mix, motor string
		want                       string // what is printed; empty for nothing
	}{
		{"a curve from end to end", curve, "throttle", promised, ""},
		{"no curve", "throttle", "throttle", promised,
			"motor runs with its throttle closed: with motor switch live and throttle 0 % it stands at power 50 %"},
		{"no curve and no promise", "throttle", "throttle", "",
			"with motor switch live and throttle 0 % it stands at power 50 %"},
		{"a curve upside down", "{from: throttle, curve: {0%: 100%, 100%: -100%}}", "throttle", promised, "it stands at power 100 %"},
		{"a share with the wrong sign", curve, "{add: throttle, share: -100%}", promised, "it stands at power 100 %"},
		{"a controller that idles in the middle", "throttle", "throttle", promised + ", idle_us: 1500", ""},
		{"a switch that runs it, and a lever that stops it", curve, "{fixed: 40%}, {replace_with: -100%, when: flap lever is above 50%}", promised, ""},
		{"a switch that runs it, and flaps that want a little more", curve, "{fixed: 40%}, {add: flap, share: 10%}", promised, ""},
		{"a soft start by a switch that leaves the lever out", curve, "throttle, {replace_with: -60%, when: start switch is soft}", promised, ""},
	} {
		codes, said := found(t, fmt.Sprintf(model, c.throttle, c.mix, c.motor))
		if got := slices.Contains(codes, codeMotorClosed); got != (c.want != "") || !strings.Contains(said, c.want) {
			t.Errorf("%s: found %v, want %q:\n%s", c.name, codes, c.want, said)
		}
	}
	codes, said := found(t, `
controls: {throttle: lever}
demands: {throttle: throttle}
channels: {1: {mix: throttle, failsafe: -100%}}
motors: {motor: {channel: 1}}
`)
	if slices.Contains(codes, codeMotorClosed) || !slices.Contains(codes, codeMotorAtRest) {
		t.Errorf("with everything at rest it is told once: %s", said)
	}
}

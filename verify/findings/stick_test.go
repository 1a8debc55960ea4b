package findings

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// A stick alone must not start a motor whose throttle rests: common practice, no
// source.
func TestNoStickStartsAMotor(t *testing.T) {
	const model = `
controls: {throttle: lever, yaw stick: {axis: yaw, trim: 50%%}, motor switch: [safe, live]}
demands: {throttle: {from: throttle, curve: {0%%: -100%%, 100%%: 60%%}}, yaw: %s}
channels: {1: {mix: [%s], failsafe: -100%%}, 2: {mix: yaw}}
surfaces: {rudder: {channel: 2, measured: {150%%: 20° right}}}
motors: {motor: {channel: 1, stopped_when: motor switch is safe}}
`
	for _, c := range []struct {
		name, yaw, mix string
		want           string // what is printed; empty for nothing
	}{
		{"a share of the yaw stick", "{from: yaw stick, trim: no}", "throttle, {add: yaw, share: 30%}, {replace_with: -100%, when: motor switch is safe}",
			"motor starts by yaw stick alone: with yaw stick full right and motor switch live it stands at power 15 %"},
		{"to the left", "{from: yaw stick, trim: no}", "throttle, {add: yaw, share: -30%}, {replace_with: -100%, when: motor switch is safe}",
			"motor starts by yaw stick alone: with yaw stick full left and motor switch live it stands at power 15 %"},
		{"the trim", "{from: yaw stick, throw: 0%}", "throttle, {add: yaw, share: 30%}, {replace_with: -100%, when: motor switch is safe}",
			"motor starts by yaw trim alone"},
		{"less than it takes", "{from: yaw stick, trim: no}", "throttle, {add: yaw, share: 3%}, {replace_with: -100%, when: motor switch is safe}", ""},
		{"stopped while the throttle is closed", "{from: yaw stick, trim: no}", "throttle, {add: yaw, share: 30%}, {replace_with: -100%, when: motor switch is safe or throttle is below 3%}", ""},
		{"made safe last", "{from: yaw stick, trim: no}", "{fixed: -100%}, {add: yaw, share: 30%, when: motor switch is safe}, {replace_with: -100%, when: motor switch is safe}", ""},
		{"run by a switch", "{from: yaw stick, trim: no}", "{fixed: -100%}, {fixed: 150%, when: motor switch is live}, {add: yaw, share: 30%}, {replace_with: -100%, when: motor switch is safe}", ""},
	} {
		codes, said := found(t, fmt.Sprintf(model, c.yaw, c.mix))
		if got := slices.Contains(codes, codeMotorByStick); got != (c.want != "") || !strings.Contains(said, c.want) {
			t.Errorf("%s: found %v, want %q:\n%s", c.name, got, c.want, said)
		}
	}
	codes, said := found(t, `
controls: {yaw stick: yaw}
demands: {yaw: yaw stick}
channels: {1: {mix: [yaw], failsafe: -100%}}
motors: {motor: {channel: 1, idle_us: 1500}}
`)
	if slices.Contains(codes, codeMotorByStick) {
		t.Errorf("a stick that is all that runs a motor: %s", said)
	}
}

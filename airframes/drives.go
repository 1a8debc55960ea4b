package airframes

import (
	"fmt"
	"math"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/mixcore"
)

// usualSwing is a servo's arm swing for 100 % of output, in degrees, where the
// file does not say.
const usualSwing = 45

// plainServo is a servo that the file says nothing about.
func plainServo() mixcore.Servo {
	return mixcore.Servo{Swing: usualSwing, Max: mixcore.Degrees(math.Inf(1)), PlusAft: true}
}

// readDrives reads what moves a hinged part: one servo, or a list of them.
func (r *reader) readDrives(f *fields, h *hinge, index int) {
	if !f.given("servos") {
		if !f.given("channel") {
			f.missing("channel", "say which channel moves it, such as channel: 3; with several servos, list them under servos")
		}
		r.addDrive(f, h, index)
		return
	}
	for _, key := range []string{"channel", "servo", "linkage", "measured"} {
		if f.given(key) {
			r.fail(f.placeOf(key), codeNotTogether, "put it into the list", "%s has both %q and %q, want one of them", f.what, "servos", key)
		}
	}
	for i, item := range r.items(f.get("servos"), "servos of "+f.what, "a list such as [{channel: 5, …}, {channel: 6, …}]", maxServos) {
		path := fmt.Sprintf("%s.%d", f.pathOf("servos"), i)
		r.record(path, item)
		g, ok := r.fields(item, r.place(item), path, fmt.Sprintf("servo %d of %s", i+1, f.what), "channel", "servo", "linkage", "measured")
		if !ok {
			continue
		}
		if !g.given("channel") {
			g.missing("channel", "say which channel moves it, such as channel: 3")
		}
		r.addDrive(&g, h, index)
	}
}

// addDrive reads one servo and what joins it to the part.
func (r *reader) addDrive(f *fields, h *hinge, index int) {
	drive := mixcore.Drive{Channel: unresolved, Servo: plainServo(), Sign: 1}
	if f.given("channel") {
		drive.Channel = r.channelOf(f)
	}
	linked := f.given("linkage")
	r.readServo(f, linked, &drive.Servo)
	switch f.apart("linkage", "measured") {
	case "linkage":
		r.readLinkage(f, h, &drive)
	case "measured":
		r.readMeasured(f, h, &drive)
	default:
		r.fail(f.at, codeMissingKey, "measure it: measured: {100%: …}; or say the linkage and the servo", `%s has no "linkage" or "measured"`, f.what)
	}
	part := &r.setup.Parts[index]
	part.Drives = append(part.Drives, drive)
	r.drivePaths[index] = append(r.drivePaths[index], f.path)
}

// readServo reads a servo: the way plus swings it, or settings.
func (r *reader) readServo(of *fields, linked bool, servo *mixcore.Servo) {
	const hint = "say which way plus swings the tip of the arm: aft or fore"
	if !of.given("servo") {
		if linked {
			of.missing("servo", hint)
		}
		return
	}
	n := of.get("servo")
	if n == nil {
		return
	}
	if n.Kind == yaml.ScalarNode {
		r.readSwingWay(n, "servo of "+of.what, servo)
		return
	}
	f, ok := r.fields(n, of.placeOf("servo"), of.pathOf("servo"), "servo of "+of.what,
		"plus_swings", "swing_deg", "max_deg", "seconds_per_60deg", "torque_ncm")
	if !ok {
		return
	}
	switch {
	case f.given("plus_swings"):
		r.readSwingWay(f.get("plus_swings"), "plus_swings of "+of.what, servo)
	case linked:
		f.missing("plus_swings", hint)
	}
	if swing, ok := r.number(f.get("swing_deg"), "swing_deg of "+of.what, inDegrees, 1, 90); ok {
		servo.Swing = mixcore.Degrees(swing)
	}
	if most, ok := r.number(f.get("max_deg"), "max_deg of "+of.what, inDegrees, 1, 180); ok {
		servo.Max = mixcore.Degrees(most)
	}
	if speed, ok := r.number(f.get("seconds_per_60deg"), "seconds_per_60deg of "+of.what, inSeconds, 0, 5); ok {
		servo.SecondsPer60Deg = mixcore.Seconds(speed)
	}
	if torque, ok := r.number(f.get("torque_ncm"), "torque_ncm of "+of.what, inTorque, 0, 10000); ok {
		servo.TorqueNcm = torque
	}
}

func (r *reader) readSwingWay(n *yaml.Node, what string, servo *mixcore.Servo) {
	if way, ok := r.word(n, what, "aft", "fore"); ok {
		servo.PlusAft = way == "aft"
	}
}

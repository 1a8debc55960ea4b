package airframes

import "example.com/hingeline/mixcore"

// usualStoppedBelow is up to which power, in percent, a propeller does not turn
// where the file does not say.
const usualStoppedBelow = 2

// mostStoppedBelow is the largest power, in percent, at which a propeller may
// count as stopped.
const mostStoppedBelow = 10

func (r *reader) readMotor(e entry, index int) {
	part := &r.setup.Parts[index]
	r.setKind(index, "motor")
	part.Motor = &mixcore.Motor{Idle: 1000, Full: 2000, StoppedBelow: usualStoppedBelow}
	f, ok := r.partFields(e, index, "motor", "channel", "side", "idle_us", "full_us", "stopped_below", "stopped_when",
		"out_mm", "aft_mm", "up_mm", "aka")
	if !ok {
		return
	}
	r.plainDrive(&f, index)
	r.readPlacement(&f, part, r.readSide(&f, e, index))
	if idle, ok := r.number(f.get("idle_us"), "idle_us of "+f.what, inPulse, lowestPulse, highestPulse); ok {
		part.Motor.Idle = mixcore.Microseconds(idle)
	}
	if full, ok := r.number(f.get("full_us"), "full_us of "+f.what, inPulse, lowestPulse, highestPulse); ok {
		part.Motor.Full = mixcore.Microseconds(full)
	}
	if part.Motor.Idle >= part.Motor.Full {
		at := f.placeOf("idle_us")
		if !f.given("idle_us") {
			at = f.placeOf("full_us")
		}
		r.fail(at, codeOutOfRange, "a motor that runs backwards is reversed at its channel", "%s idles at %s and is full at %s, want idle below full", f.what,
			inPulse.show(float64(part.Motor.Idle)), inPulse.show(float64(part.Motor.Full)))
	}
	if below, ok := r.number(f.get("stopped_below"), "stopped_below of "+f.what, inPercent, 0, mostStoppedBelow); ok {
		part.Motor.StoppedBelow = mixcore.Percent(below)
	}
	part.Motor.StoppedWhen, _ = r.condition(f.get("stopped_when"), "stopped_when of "+f.what, len(r.setup.Phases))
}

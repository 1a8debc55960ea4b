package airframes

import "example.com/hingeline/mixcore"

// The furthest that a part may be from the model's centre line or balance
// point, in millimetres, and the steepest tilt, in degrees.
const (
	furthestOut  = 10000
	furthestAway = 10000
	steepestTilt = 90
)

// readPlacement reads where a part acts on the air, as far as its keys allow
// and the file says; sided says whether its side is known.
func (r *reader) readPlacement(f *fields, part *mixcore.Part, sided bool) {
	at := &part.Place
	if out, ok := r.number(f.get("out_mm"), "out_mm of "+f.what, inLength, 0, furthestOut); ok {
		at.Out, at.OutSaid = mixcore.Millimetres(out), true
		if out > 0 && sided && part.Side == mixcore.Centre {
			r.fail(f.placeOf("out_mm"), codeNotTogether, "say side: port or starboard, or put the side into the name",
				"%s is %s out from the centre line, but on neither side", f.what, inLength.show(out))
		}
	}
	if aft, ok := r.number(f.get("aft_mm"), "aft_mm of "+f.what, inLength, -furthestAway, furthestAway); ok {
		at.Aft, at.AftSaid = mixcore.Millimetres(aft), true
	}
	if up, ok := r.number(f.get("up_mm"), "up_mm of "+f.what, inLength, -furthestAway, furthestAway); ok {
		at.Up, at.UpSaid = mixcore.Millimetres(up), true
	}
	if tilt, ok := r.number(f.get("tilt_deg"), "tilt_deg of "+f.what, inDegrees, -steepestTilt, steepestTilt); ok {
		at.Tilt, at.TiltSaid = mixcore.Degrees(tilt), true
	}
}

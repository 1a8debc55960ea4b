package airframes

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

// The sizes of a linkage, in millimetres, and its angles at neutral, in
// degrees.
const (
	shortestArm    = 0.5
	longestArm     = 500
	shortestRod    = 0.5
	longestRod     = 5000
	farthestOffset = 1000
	leastLean      = 10
	mostLean       = 170
	upright        = 90
)

const hintLinkage = "a linkage needs arm_mm, horn_mm, pivots_mm and horn"

// readLinkage reads arm, pushrod and horn.
func (r *reader) readLinkage(of *fields, h *hinge, drive *mixcore.Drive) {
	n := of.get("linkage")
	if n == nil {
		return
	}
	f, ok := r.fields(n, of.placeOf("linkage"), of.pathOf("linkage"), "linkage of "+of.what,
		"arm_mm", "horn_mm", "pivots_mm", "offset_mm", "horn", "arm", "arm_deg", "horn_deg", "pushrod_mm")
	if !ok {
		return
	}
	g := &linkage.Geometry{ArmDeg: upright, HornDeg: upright}
	g.Arm, _ = r.number(f.require("arm_mm", hintLinkage), "arm_mm", inLength, shortestArm, longestArm)
	g.Horn, _ = r.number(f.require("horn_mm", hintLinkage), "horn_mm", inLength, shortestArm, longestArm)
	g.Pivots, _ = r.number(f.require("pivots_mm", hintLinkage), "pivots_mm", inLength, shortestRod, longestRod)
	g.Pushrod, _ = r.number(f.get("pushrod_mm"), "pushrod_mm", inLength, shortestRod, longestRod)
	g.Offset, _ = r.number(f.get("offset_mm"), "offset_mm", inLength, -farthestOffset, farthestOffset)
	if lean, ok := r.number(f.get("arm_deg"), "arm_deg", inDegrees, leastLean, mostLean); ok {
		g.ArmDeg = lean
	}
	if lean, ok := r.number(f.get("horn_deg"), "horn_deg", inDegrees, leastLean, mostLean); ok {
		g.HornDeg = lean
	}
	side, ok := r.hornSide(&f, "horn", h)
	if !f.given("horn") {
		f.missing("horn", "say which side the horn stands on: "+h.horn+" or "+h.hornOff)
	}
	arm, armSaid := r.hornSide(&f, "arm", h)
	if !ok {
		return
	}
	drive.Sign = h.sign
	if side != h.horn {
		drive.Sign, g.Offset = -h.sign, 0-g.Offset
	}
	g.Crossed = armSaid && arm != side
	drive.Linkage = g
}

// hornSide reads the side that a horn or arm is on, left and right understood
// for port and starboard.
func (r *reader) hornSide(f *fields, key string, h *hinge) (string, bool) {
	among := []string{h.horn, h.hornOff}
	if h.horn == "starboard" {
		among = append(among, "right", "left")
	}
	side, ok := r.word(f.get(key), key+" of the "+f.what, among...)
	switch side {
	case "left":
		side = "port"
	case "right":
		side = "starboard"
	}
	return side, ok
}

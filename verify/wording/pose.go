package wording

import (
	"math"
	"strconv"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
)

// SignalLost is how a pose says that the signal is lost.
const SignalLost = "signal lost"

// Setting says where one control stands: "rate switch high", "roll stick full
// right", "roll stick 30 % right", "flap lever landing", "flap lever 35 %",
// "throttle 100 %", "roll trim 50 % left". A lever that counts as standing at a
// detent without being quite there is said with both: "flap lever 99.5 %
// (landing)".
func Setting(s *mixcore.Setup, control int, position float64) string {
	c := &s.Controls[control]
	return c.Name + " " + Stand(c, position)
}

// Stand is Setting without the control's name: "high", "full right", "35 %".
func Stand(c *mixcore.Control, position float64) string {
	switch c.Kind {
	case mixcore.SwitchControl:
		if i := int(position); i >= 0 && i < len(c.Positions) {
			return c.Positions[i]
		}
		return "position " + strconv.Itoa(int(position)+1)
	case mixcore.LeverControl:
		return leverPlace(c, mixcore.Percent(position))
	}
	size := rounded(math.Abs(position), settingDecimals)
	switch {
	case size == 0:
		return "centred"
	case size == 100:
		return "full " + AxisSide(c.Axis, position > 0)
	}
	return Setpoint(mixcore.Percent(size)) + " " + AxisSide(c.Axis, position > 0)
}

// AxisSide is the word for one side of an axis: right or left, and back or
// forward for pitch.
func AxisSide(a mixcore.Axis, plus bool) string {
	switch {
	case a == mixcore.Pitch && plus:
		return "back"
	case a == mixcore.Pitch:
		return "forward"
	case plus:
		return "right"
	}
	return "left"
}

func leverPlace(c *mixcore.Control, at mixcore.Percent) string {
	near := c.DetentAt(float64(at))
	switch {
	case near < 0:
		return Setpoint(at)
	case rounded(float64(at-c.Detents[near].At), settingDecimals) == 0:
		return c.Detents[near].Name
	}
	return Setpoint(at) + " (" + c.Detents[near].Name + ")"
}

// Pose says how the controls stand: only those that do not rest, in the order in which a
// hand sets them from rest (what starts a motor last, see [poses.HandOrder]), and last
// "signal lost" if it is. It is empty with everything at rest.
func Pose(s *mixcore.Setup, in *mixcore.Input) []string {
	var said []string
	for _, i := range poses.FromRest(s, in) {
		if at := in.Position[i]; at != s.Controls[i].Rest() {
			said = append(said, Setting(s, i, at))
		}
	}
	if in.SignalLost {
		said = append(said, SignalLost)
	}
	return said
}

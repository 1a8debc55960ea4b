package sense

import "example.com/hingeline/mixcore"

// axisOf is the axis about which a stick or trim turns the model; NoAxis for
// other controls. On a model of which the roll stick moves nothing that rolls it,
// it is there to turn the model by the rudder.
func (l *looker) axisOf(control int) mixcore.Axis {
	axis := l.s.Controls[control].Axis
	if axis == mixcore.Roll && !l.air.Rollers() {
		return mixcore.Yaw
	}
	return axis
}

package wording

// Torque says a torque in newton centimetres, to 0.1 N·cm.
func Torque(ncm float64) string { return number(ncm, 1) + " N·cm" }

// TorqueBand says a torque that is known only within bounds.
func TorqueBand(low, high float64) string {
	return number(low, 1) + " to " + number(high, 1) + " N·cm"
}

// Times says how many times over something is there: "2 times".
func Times(x float64) string { return number(x, settingDecimals) + " times" }

// TimesBeside is Times to 0.1, in the manner of AngleBeside.
func TimesBeside(x, bound float64) string { return beside(x, bound, 1) + " times" }

// Speed says an airspeed in metres a second.
func Speed(metresPerSecond float64) string {
	return number(metresPerSecond, settingDecimals) + " m/s"
}

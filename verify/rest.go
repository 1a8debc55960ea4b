package verify

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/wording"
)

// rest is how every control stands at rest, in words. Sticks and trims, which
// all rest centred, are one.
func rest(s *mixcore.Setup) []string {
	var said []string
	sticks, trims := false, false
	for i := range s.Controls {
		switch c := &s.Controls[i]; c.Kind {
		case mixcore.AxisControl:
			sticks = true
		case mixcore.TrimControl:
			trims = true
		default:
			said = append(said, wording.Setting(s, i, c.Rest()))
		}
	}
	centred := map[[2]bool]string{
		{true, false}: "sticks centred", {true, true}: "sticks and trims centred", {false, true}: "trims centred",
	}[[2]bool{sticks, trims}]
	if centred != "" {
		said = append([]string{centred}, said...)
	}
	return said
}

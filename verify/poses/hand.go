package poses

import (
	"cmp"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
)

// Starter is how a control has a hand in whether a motor runs.
type Starter int

const (
	NoStarter     Starter = iota
	SwitchesMotor         // a switch that makes a motor live, or safe
	OpensThrottle         // a throttle, by lever
)

// Starters are the controls that start motors, by control. Sticks and trims are none, nor is
// a lever that only conditions look at: brakes that stop a motor must be out before its switch.
func Starters(s *mixcore.Setup) []Starter {
	list, probe := make([]Starter, len(s.Controls)), Bearing(s)
	for i := range s.Parts {
		if s.Parts[i].Motion != mixcore.Power {
			continue
		}
		for k, bears := range probe.PartReach(i) {
			switch kind := s.Controls[k].Kind; {
			case !bears || kind == mixcore.AxisControl || kind == mixcore.TrimControl:
			case kind == mixcore.SwitchControl:
				list[k] = SwitchesMotor
			case asks(s, i, k):
				list[k] = OpensThrottle
			}
		}
	}
	return list
}

// asks says whether a demand that is mixed into a part's channels comes from a control.
func asks(s *mixcore.Setup, part, control int) bool {
	for i := range s.Parts[part].Drives {
		for _, line := range s.Channels[s.Parts[part].Drives[i].Channel].Mix {
			if (line.Op == mixcore.Add || line.Op == mixcore.ScaleBy) && s.Demands[line.Demand].From == control {
				return true
			}
		}
	}
	return false
}

// NearerRest says whether a control is brought nearer to its rest.
func NearerRest(c *mixcore.Control, was, is float64) bool {
	return math.Abs(is-c.Rest()) < math.Abs(was-c.Rest())
}

// HandOrder are the controls in the order in which a hand sets them from one pose to
// another: a throttle that is closed first of all, then what makes its motor safe; last what
// makes a motor live, and then its throttle. So no motor starts at the flick of a switch with
// the throttle open. All others stay as they are in the file.
func HandOrder(s *mixcore.Setup, was, is *mixcore.Input) []int {
	rank, order := make([]int, len(s.Controls)), make([]int, len(s.Controls))
	for i, starts := range Starters(s) {
		if rank[i] = int(starts); NearerRest(&s.Controls[i], was.Position[i], is.Position[i]) {
			rank[i] = -rank[i]
		}
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(rank[a], rank[b]) })
	return order
}

// FromRest is HandOrder with everything at rest before. An input without positions has no
// controls to set.
func FromRest(s *mixcore.Setup, is *mixcore.Input) []int {
	if is.Position == nil {
		return nil
	}
	rest := mixcore.Input{Position: make([]float64, len(s.Controls))}
	for i := range s.Controls {
		rest.Position[i] = s.Controls[i].Rest()
	}
	return HandOrder(s, &rest, is)
}

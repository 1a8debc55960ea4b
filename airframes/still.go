package airframes

import "example.com/hingeline/mixcore"

// DefaultStill is Model.Still where the file does not say still_deg.
const DefaultStill mixcore.Degrees = 0.5

// stillPercent is the least movement of a motor or extra that does not count as still,
// in percent of its travel. Common practice, no source.
const stillPercent = 1.0

// StillOf is the least change that counts as a movement of a part of the model: in
// degrees where it is hinged or a wheel, else in percent.
func (m *Model) StillOf(p *mixcore.Part) float64 {
	if p.Motion.Hinged() {
		return float64(m.Still)
	}
	return stillPercent
}

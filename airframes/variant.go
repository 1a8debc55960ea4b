package airframes

import "example.com/hingeline/mixcore"

// With is the model with its set-up edited: the same names and places around
// another arithmetic. The model itself does not change. It returns the faults
// that the edit makes; the variant is nil if there is one.
func (m *Model) With(edit func(*mixcore.Setup)) (*Model, []mixcore.Fault) {
	variant := *m
	plan, faults := m.Plan.Vary(edit)
	if faults != nil {
		return nil, faults
	}
	variant.Setup, variant.Plan = *plan.Setup(), plan
	return &variant, nil
}

package airframes

import (
	"testing"

	"example.com/hingeline/mixcore"
)

func TestStillIsInDegreesWhereAPartTurns(t *testing.T) {
	m := Model{Still: 0.25}
	for motion, want := range map[mixcore.Motion]float64{
		mixcore.UpDown: 0.25, mixcore.LeftRight: 0.25, mixcore.OutIn: 1, mixcore.Power: 1,
	} {
		if got := m.StillOf(&mixcore.Part{Motion: motion}); got != want {
			t.Errorf("motion %v: %v, want %v", motion, got, want)
		}
	}
}

package sheet

import (
	"math"
	"testing"

	"example.com/hingeline/mixcore"
	"pgregory.net/rapid"
)

// A light-sport aeroplane's rigging table: aileron up 26.5 ± 1.5° = 109 ± 6 mm, down
// 12.5 ± 1.5° = 52 ± 6 mm; rudder 28.5 ± 1.5° = 217 ± 11 mm. Source: manual
// AF 04800001 rev 3, 2008, App. II p. AII-1. The chords are what its own lengths say, by
// chord = length/(2·sin(δ/2)); computed.
func TestToleranceReproducesARiggingTable(t *testing.T) {
	for _, row := range []struct {
		name       string
		angle, off mixcore.Degrees
		mm         float64 // of the table
		offMM      float64
		chord      mixcore.Millimetres
		tolerance  float64
	}{
		{"aileron up", 26.5, 1.5, 109, 6, 237.8, 6.1},
		{"aileron down", 12.5, 1.5, 52, 6, 238.8, 6.2},
		{"rudder", 28.5, 1.5, 217, 11, 440.8, 11.2},
	} {
		travel, off := float64(mixcore.ChordTravel(row.chord, row.angle)), float64(tolerance(row.chord, row.angle, row.off))
		if math.Round(travel) != row.mm || math.Round(off) != row.offMM {
			t.Errorf("%s: %.2f ± %.2f mm, want %v ± %v mm", row.name, travel, off, row.mm, row.offMM)
		}
		if math.Abs(off-row.tolerance) > 0.05 {
			t.Errorf("%s: tolerance %.3f mm, want %v mm", row.name, off, row.tolerance)
		}
		exact := row.mm / float64(mixcore.ChordTravel(1, row.angle))
		if math.Abs(exact-float64(row.chord)) > 0.05 {
			t.Errorf("%s: the table's length needs a chord of %.2f mm, want %v mm", row.name, exact, row.chord)
		}
	}
}

// The tolerance is how much the straight way changes with the angle: to within a
// hundredth of it where it is small.
func TestToleranceIsTheSlopeOfTheChordsTravel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		chord := mixcore.Millimetres(rapid.Float64Range(5, 500).Draw(t, "chord"))
		angle := mixcore.Degrees(rapid.Float64Range(2, 100).Draw(t, "angle"))
		const off = 0.1
		slope := float64(mixcore.ChordTravel(chord, angle+off)-mixcore.ChordTravel(chord, angle-off)) / 2
		for _, way := range []mixcore.Degrees{angle, -angle} {
			if got := float64(tolerance(chord, way, off)); math.Abs(got-slope) > slope/100 {
				t.Fatalf("%v mm at %v°: got %v, want %v", chord, way, got, slope)
			}
		}
	})
}

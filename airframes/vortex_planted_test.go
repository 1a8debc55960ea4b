//go:build vortex

package airframes_test

import (
	"maps"
	"math"
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
)

// A part on the wrong side, or moving the wrong way, must be complained of.
func TestVortexReportsPlantedFaults(t *testing.T) {
	models := latticeModels(t)
	for _, name := range slices.Sorted(maps.Keys(models)) {
		t.Run(name, func(t *testing.T) {
			setup := models[name]
			movements := movementsOf(setup)
			mirrored, turned := shapeOf(t, setup), shapeOf(t, setup)
			mirrored.Movements, turned.Movements = movements, turnOne(turned, movements)
			if complaints, _ := compareSigns(setup, movements, runVortex(t, turned)); len(complaints) == 0 {
				t.Error("a trailing edge that moves the other way is not complained of")
			}
			if !mirrorOne(mirrored) {
				for _, p := range setup.Parts {
					if p.Side != mixcore.Centre {
						t.Errorf("%s could not be put on the other side", p.Name)
					}
				}
				return
			}
			if complaints, _ := compareSigns(setup, movements, runVortex(t, mirrored)); len(complaints) == 0 {
				t.Error("a part on the other side is not complained of")
			}
		})
	}
}

// mirrorOne exchanges a part with its counterpart of the other side, or puts a
// pushing point on the other side; false if all parts are on the centre line.
func mirrorOne(shape *vortexShape) bool {
	for i := range shape.Halves {
		for k := i + 1; k < len(shape.Halves); k++ {
			a, b := &shape.Halves[i], &shape.Halves[k]
			if a.Group == b.Group && (exchange(a.Controls, b.Controls) || exchange(a.Spoilers, b.Spoilers)) {
				return true
			}
		}
	}
	for i := range shape.Points {
		if shape.Points[i].Out != 0 {
			shape.Points[i].Out = -shape.Points[i].Out
			return true
		}
	}
	return false
}

// exchange swaps the parts of the first two stretches that mirror each other.
func exchange(a, b []vortexStretch) bool {
	for i := range a {
		for k := range b {
			if math.Abs(a[i].From-b[k].From)+math.Abs(a[i].To-b[k].To) < 1e-9 && a[i].Part != b[k].Part {
				a[i].Part, b[k].Part = b[k].Part, a[i].Part
				return true
			}
		}
	}
	return false
}

// turnOne is the movements with the last half's hinged surface going the other
// way.
func turnOne(shape *vortexShape, movements []amounts) []amounts {
	part := ""
	for _, half := range shape.Halves {
		if len(half.Controls) > 0 {
			part = half.Controls[0].Part
		}
	}
	turned := slices.Clone(movements)
	for k, moved := range movements {
		if by, ok := moved[part]; ok {
			turned[k] = maps.Clone(moved)
			turned[k][part] = -by
		}
	}
	return turned
}

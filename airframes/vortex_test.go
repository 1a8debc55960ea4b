//go:build vortex

package airframes_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

// The second opinion: a vortex lattice that shares nothing with package effect
// but where the parts are.
const (
	vortexScript = "../testdata/vortex/vortex.py"
	vortexPython = "/usr/bin/python3"
)

// How parts are moved for the comparison. Small, for the lattice is linear; a
// spoiler only rises.
const (
	hingedMovement  = 5.0  // degrees either way
	spoilerMovement = 30.0 // degrees up
	pushMovement    = 50.0 // percent
)

// leastCoefficient is the smallest moment (over dynamic pressure, area and span)
// that the lattice's answer may rest on: far above its rounding, and a thousandth
// of what an aileron does.
const leastCoefficient = 1e-5

// How far strips may be from the lattice in pb/2V. For ailerons far out, and for
// all surfaces of a wing together, strips are within 5 to 10 % of lifting line,
// and lifting line is up to 10 % below the lattice at aspect ratios about 6,
// where a lifting surface is damped less (see the lattice's own tests). For one
// surface near the root strips are too low: its lift spreads outward along the
// wing, where it has more leverage, and lifting line already says 12 to 26 % more.
// Deltas are no lines at all.
const (
	helixTolerance    = 0.15 // either way, all surfaces together
	helixSlender      = 0.25 // the same at aspect ratios below slenderAspect
	slenderAspect     = 4.0
	helixAloneTooLow  = 0.35 // one surface
	helixAloneTooMuch = 0.15
)

// leastHelixModels is how many shipped models' pb/2V must have been compared.
const leastHelixModels = 2

// littleBeside is the most that the lattice may find about an axis where package
// effect finds nothing worth a word, beside the strongest of the three. A flap
// near the root comes closest: a V-tail stands in the sidewash of its end. Where
// the strongest is below leastStrongest, nothing moves the model worth a word.
const (
	littleBeside   = 0.5
	leastStrongest = 50 * leastCoefficient
)

type vortexResult struct {
	Damping float64        `json:"damping"`
	Changes []vortexChange `json:"changes"`
}

type vortexChange struct {
	Roll  float64 `json:"roll"`
	Pitch float64 `json:"pitch"`
	Yaw   float64 `json:"yaw"`
	Helix float64 `json:"helix"`
}

func (c vortexChange) about(axis mixcore.Axis) float64 {
	return map[mixcore.Axis]float64{mixcore.Roll: c.Roll, mixcore.Pitch: c.Pitch, mixcore.Yaw: c.Yaw}[axis]
}

func runVortex(t *testing.T, shape *vortexShape) vortexResult {
	t.Helper()
	input, err := json.Marshal(shape)
	if err != nil {
		t.Fatal(err)
	}
	command := exec.Command(vortexPython, "-B", vortexScript)
	var output, complaint bytes.Buffer
	command.Stdin, command.Stdout, command.Stderr = bytes.NewReader(input), &output, &complaint
	if err := command.Run(); err != nil {
		t.Fatalf("the lattice did not run (it needs python3 and its numpy module): %v\n%s", err, complaint.String())
	}
	var result vortexResult
	decoder := json.NewDecoder(&output)
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&result); err != nil {
		t.Fatal(err)
	}
	if len(result.Changes) != len(shape.Movements) {
		t.Fatalf("got %d changes for %d movements", len(result.Changes), len(shape.Movements))
	}
	return result
}

const shippedPrefix = "shipped "

// latticeModels are the shipped models and the layouts of this test.
func latticeModels(t *testing.T) map[string]*mixcore.Setup {
	t.Helper()
	models := latticeLayouts()
	for _, name := range airframes.Shipped() {
		models[shippedPrefix+name] = &mustLoad(t, name).Setup
	}
	return models
}

// movementsOf are each part alone both ways, and the two sides of a kind
// together and opposed.
func movementsOf(setup *mixcore.Setup) []amounts {
	air := effect.New(setup)
	var all []amounts
	bySide := map[mixcore.Kind]map[mixcore.Side][]string{}
	unit := map[mixcore.Kind][]float64{} // the ways that a kind moves
	for i := range setup.Parts {
		p := &setup.Parts[i]
		if !air.Acts(i) {
			continue
		}
		switch {
		case spoils(p.Kind):
			unit[p.Kind] = []float64{-spoilerMovement}
		case p.Motion == mixcore.UpDown || p.Motion == mixcore.LeftRight:
			unit[p.Kind] = []float64{hingedMovement, -hingedMovement}
		default:
			unit[p.Kind] = []float64{pushMovement}
		}
		for _, by := range unit[p.Kind] {
			all = append(all, amounts{p.Name: by})
		}
		if bySide[p.Kind] == nil {
			bySide[p.Kind] = map[mixcore.Side][]string{}
		}
		bySide[p.Kind][p.Side] = append(bySide[p.Kind][p.Side], p.Name)
	}
	for _, kind := range slices.Sorted(maps.Keys(bySide)) {
		port, starboard := bySide[kind][mixcore.Port], bySide[kind][mixcore.Starboard]
		if len(port) == 0 || len(starboard) == 0 {
			continue
		}
		for _, by := range unit[kind] {
			together, opposed := amounts{}, amounts{}
			for _, name := range port {
				together[name], opposed[name] = by, by
			}
			for _, name := range starboard {
				together[name], opposed[name] = by, -by
			}
			all = append(all, together)
			if len(unit[kind]) == 2 {
				all = append(all, opposed)
			}
		}
	}
	return all
}

func (a amounts) String() string {
	var words []string
	for _, name := range slices.Sorted(maps.Keys(a)) {
		words = append(words, fmt.Sprintf("%s %+g", name, a[name]))
	}
	return strings.Join(words, ", ")
}

func outputOf(setup *mixcore.Setup, moved amounts) *mixcore.Output {
	o := &mixcore.Output{Parts: make([]mixcore.PartOutput, len(setup.Parts))}
	for i := range setup.Parts {
		by := moved[setup.Parts[i].Name]
		switch setup.Parts[i].Motion {
		case mixcore.UpDown, mixcore.LeftRight:
			o.Parts[i].Angle = mixcore.Degrees(by)
		default:
			o.Parts[i].Amount = mixcore.Percent(by)
		}
	}
	return o
}

var axisNames = map[mixcore.Axis]string{mixcore.Roll: "roll", mixcore.Pitch: "pitch", mixcore.Yaw: "yaw"}

// compareSigns holds every Plus and Minus of package effect against the lattice.
func compareSigns(setup *mixcore.Setup, movements []amounts, result vortexResult) (complaints []string, compared int) {
	air := effect.New(setup)
	still := outputOf(setup, nil)
	for i, moved := range movements {
		change := air.Change(still, outputOf(setup, moved))
		for _, axis := range []mixcore.Axis{mixcore.Roll, mixcore.Pitch, mixcore.Yaw} {
			sign := 0.0
			switch change.Answer(axis) {
			case effect.Plus:
				sign = 1
			case effect.Minus:
				sign = -1
			default:
				continue
			}
			compared++
			if got := result.Changes[i].about(axis); !(sign*got >= leastCoefficient) {
				complaints = append(complaints, fmt.Sprintf("%s: effect says %s %+.4g, the lattice %+.6f (of roll %+.6f, pitch %+.6f, yaw %+.6f)",
					moved, axisNames[axis], change.About(axis), got,
					result.Changes[i].Roll, result.Changes[i].Pitch, result.Changes[i].Yaw))
			}
		}
	}
	return complaints, compared
}

// compareNones holds every None of package effect against the lattice.
func compareNones(setup *mixcore.Setup, movements []amounts, result vortexResult) (complaints []string, compared int) {
	air := effect.New(setup)
	still := outputOf(setup, nil)
	for i, moved := range movements {
		change, got := air.Change(still, outputOf(setup, moved)), result.Changes[i]
		strongest := max(math.Abs(got.Roll), math.Abs(got.Pitch), math.Abs(got.Yaw))
		for axis, name := range axisNames {
			if change.Answer(axis) != effect.None || strongest < leastStrongest || guessed(setup, moved, axis) {
				continue
			}
			compared++
			if math.Abs(got.about(axis)) > littleBeside*strongest {
				complaints = append(complaints, fmt.Sprintf("%s: effect says no %s, the lattice roll %+.6f, pitch %+.6f, yaw %+.6f",
					moved, name, got.Roll, got.Pitch, got.Yaw))
			}
		}
	}
	return complaints, compared
}

// guessed is true for a yaw that the lattice cannot answer for either: of
// spoilers, whose drag and lost lift are guesses on both sides; and of tail
// planes or canards that move apart, in whose swirl a fin may stand, of which
// package effect knows nothing.
func guessed(setup *mixcore.Setup, moved amounts, axis mixcore.Axis) bool {
	if axis != mixcore.Yaw {
		return false
	}
	apart := len(moved) == 2
	for _, p := range setup.Parts {
		if _, moves := moved[p.Name]; !moves {
			continue
		}
		if spoils(p.Kind) {
			return true
		}
		if info, _ := p.Kind.Info(); info.Wing || p.Motion != mixcore.UpDown {
			apart = false
		}
	}
	return apart
}

func TestVortexAgreesOnEverySign(t *testing.T) {
	models := latticeModels(t)
	for _, name := range slices.Sorted(maps.Keys(models)) {
		t.Run(name, func(t *testing.T) {
			setup := models[name]
			shape := shapeOf(t, setup)
			shape.Movements = movementsOf(setup)
			result := runVortex(t, shape)
			signs, compared := compareSigns(setup, shape.Movements, result)
			nones, alsoCompared := compareNones(setup, shape.Movements, result)
			for _, complaint := range slices.Concat(signs, nones) {
				t.Error(complaint)
			}
			if compared == 0 {
				t.Error("no sign was compared")
			}
			t.Logf("%d movements, %d signs and %d times nothing compared", len(shape.Movements), compared, alsoCompared)
		})
	}
}

// helixMovements are each wing surface alone and all of them to roll right; nil
// where the model is not measured.
func helixMovements(setup *mixcore.Setup) []amounts {
	air := effect.New(setup)
	if _, missing := air.Helix(outputOf(setup, nil)); !missing.None() {
		return nil
	}
	var movements []amounts
	all := amounts{}
	for i := range setup.Parts {
		if p := &setup.Parts[i]; air.Counted(i) {
			movements = append(movements, amounts{p.Name: hingedMovement})
			all[p.Name] = map[mixcore.Side]float64{mixcore.Port: hingedMovement, mixcore.Starboard: -hingedMovement}[p.Side]
		}
	}
	if len(movements) == 0 {
		return nil
	}
	return append(movements, all)
}

// compareHelix holds the pb/2V of package effect against the lattice.
func compareHelix(setup *mixcore.Setup, movements []amounts, result vortexResult) (complaints, notes []string) {
	air := effect.New(setup)
	for i, moved := range movements {
		strips, _ := air.Helix(outputOf(setup, moved))
		got := result.Changes[i].Helix
		note := fmt.Sprintf("%s: pb/2V %+.4f by strips, %+.4f by the lattice (%+.1f %%)",
			moved, strips.Total, got, 100*(strips.Total/got-1))
		notes = append(notes, note)
		low, high := 1-helixTolerance, 1+helixTolerance
		if w := setup.Wing; float64(w.Span)/float64(w.RootChord+w.TipChord)*2 < slenderAspect {
			low, high = 1-helixSlender, 1+helixSlender
		}
		if len(moved) == 1 {
			low, high = 1-helixAloneTooLow, 1+helixAloneTooMuch
		}
		if ratio := strips.Total / got; !(ratio >= low && ratio <= high) {
			complaints = append(complaints, fmt.Sprintf("%s, want %.2f to %.2f times the lattice's", note, low, high))
		}
	}
	return complaints, notes
}

func TestVortexAgreesOnTheHelixAngle(t *testing.T) {
	models := latticeModels(t)
	compared := 0
	for _, name := range slices.Sorted(maps.Keys(models)) {
		setup := models[name]
		movements := helixMovements(setup)
		if movements == nil {
			continue
		}
		if strings.HasPrefix(name, shippedPrefix) {
			compared++
		}
		t.Run(name, func(t *testing.T) {
			shape := shapeOf(t, setup)
			shape.Movements = movements
			complaints, notes := compareHelix(setup, movements, runVortex(t, shape))
			for _, note := range notes {
				t.Log(note)
			}
			for _, complaint := range complaints {
				t.Error(complaint)
			}
			// A planted fault: hinges so far forward that the surfaces do too much.
			for i := range shape.Halves {
				for k := range shape.Halves[i].Controls {
					shape.Halves[i].Controls[k].Chord *= 2.5
				}
			}
			if complaints, _ := compareHelix(setup, movements, runVortex(t, shape)); len(complaints) == 0 {
				t.Error("surfaces of two and a half times the chord are not complained of")
			}
		})
	}
	if compared < leastHelixModels {
		t.Errorf("pb/2V of %d shipped models was compared, want at least %d", compared, leastHelixModels)
	}
}

func TestVortexSelftest(t *testing.T) {
	said, err := exec.Command(vortexPython, "-B", vortexScript, "--selftest").CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	if !bytes.Contains(said, []byte("0 failed")) || bytes.Contains(said, []byte("BAD")) {
		t.Errorf("the self-test did not say that it passed:\n%s", said)
	}
}

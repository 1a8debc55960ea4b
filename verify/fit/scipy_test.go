//go:build scipy

package fit

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"path/filepath"
	"testing"

	"example.com/hingeline/mixcore/linkage"
)

type scipyCase struct {
	Linkage struct {
		Arm     float64 `json:"arm"`
		Horn    float64 `json:"horn"`
		Pivots  float64 `json:"pivots"`
		Offset  float64 `json:"offset"`
		Pushrod float64 `json:"pushrod"`
		ArmDeg  float64 `json:"arm_deg"`
		HornDeg float64 `json:"horn_deg"`
		Crossed bool    `json:"crossed"`
	} `json:"linkage"`
	Sign     float64   `json:"sign"`
	Swings   []float64 `json:"swings"`
	Angles   []float64 `json:"angles"`
	RodFree  bool      `json:"rod_free"`
	HornFree bool      `json:"horn_free"`
}

type scipyAnswer struct {
	Sum     float64 `json:"sum"`
	Arm     float64 `json:"arm"`
	ArmDeg  float64 `json:"arm_deg"`
	Pushrod float64 `json:"pushrod"`
	HornDeg float64 `json:"horn_deg"`

	// Standard deviations, for readings whose own is 1°.
	ArmOff     float64 `json:"arm_off"`
	ArmDegOff  float64 `json:"arm_deg_off"`
	HornDegOff float64 `json:"horn_deg_off"`
}

// How close two minima are: the sum of squares by itself and as a part, and the values
// where it is flat at the bottom.
const (
	sameSum   = 1e-7
	sameArm   = 1e-4 // as a part
	sameAngle = 1e-2 // degrees
	sameOff   = 1e-2 // as a part, of how well values are told
)

// SciPy's least_squares, over a four-bar that is solved another way, finds the same minimum
// of the same readings: 120 linkages with readings half a degree off, of which some were read
// more than once.
func TestSciPyFindsTheSameMinimum(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	var cases []scipyCase
	var ours []minimal
	for len(cases) < 120 {
		horn := between(10, 25)
		written := linkage.Geometry{Horn: horn, Arm: horn * between(0.5, 0.8), Pivots: between(45, 500), Offset: between(-15, 15),
			ArmDeg: between(75, 105), HornDeg: between(80, 100), Crossed: random.IntN(2) == 0}
		hand := written
		hand.Arm *= between(0.8, 1.2)
		hand.ArmDeg += between(-8, 8)
		l, err := linkage.New(hand)
		if err != nil {
			continue
		}
		rod := random.IntN(2) == 0
		if rod {
			hand.Pushrod = l.Pushrod() + hand.Arm*between(0.05, 0.2)
			if _, err := linkage.New(hand); err != nil {
				continue
			}
		}
		sign := []float64{1, -1}[random.IntN(2)]
		outputs := evenly(5+random.IntN(9), 100)
		outputs = append(outputs, outputs[random.IntN(len(outputs))], 0, 0) // some were read again
		points := reads(t, driveOf(hand, 45, true, sign), outputs, func() float64 { return noise * (2*random.Float64() - 1) })
		d := driveOf(written, 45, true, sign)
		if _, err := linkage.New(written); err != nil || points == nil || reads(t, d, outputs, exactly) == nil {
			continue
		}
		p := problem{drive: d, points: inOrder(points), rod: rod}
		m, err := p.minimum()
		if err != nil {
			t.Fatalf("%+v: %v", written, err)
		}
		cases, ours = append(cases, caseOf(&m)), append(ours, m)
	}
	compared(t, cases, ours)
}

// Where the horn's lean is told, SciPy finds the same minimum with it, and by the singular
// values of its Jacobian the same of how well each value is told.
func TestSciPyFindsTheSameLeanOfTheHorn(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	var cases []scipyCase
	var ours []minimal
	for len(cases) < 40 {
		c := telling[random.IntN(len(telling))]
		hand := c.written
		hand.ArmDeg, hand.HornDeg = c.leans+between(-3, 3), c.horn+between(-2, 2)
		rod := random.IntN(2) == 0
		if l, err := linkage.New(hand); rod && err == nil {
			hand.Pushrod = l.Pushrod() + hand.Arm*between(0.02, 0.05)
		}
		if _, err := linkage.New(hand); err != nil {
			continue
		}
		points := reads(t, driveOf(hand, c.swing, true, -1), evenly(15+random.IntN(10), 100), func() float64 { return noise * (2*random.Float64() - 1) })
		if points == nil || reads(t, driveOf(hand, c.swing, true, -1), []float64{-105, 105}, exactly) == nil {
			continue // it locks, or nearly: there SciPy's rods are cut off where they no longer meet
		}
		p := problem{drive: driveOf(c.written, c.swing, true, -1), points: inOrder(points), rod: rod, horn: true}
		m, err := p.minimum()
		if err != nil {
			t.Fatalf("%+v: %v", hand, err)
		}
		cases, ours = append(cases, caseOf(&m)), append(ours, m)
	}
	compared(t, cases, ours)
}

// caseOf is what SciPy is asked.
func caseOf(m *minimal) (c scipyCase) {
	g, p := m.of.drive.Linkage, m.of
	c.Linkage.Arm, c.Linkage.Horn, c.Linkage.Pivots, c.Linkage.Offset = g.Arm, g.Horn, g.Pivots, g.Offset
	c.Linkage.ArmDeg, c.Linkage.HornDeg, c.Linkage.Crossed = g.ArmDeg, g.HornDeg, g.Crossed
	c.Sign, c.RodFree, c.HornFree = p.drive.Sign, p.rod, p.horn
	for _, at := range p.points {
		c.Swings, c.Angles = append(c.Swings, float64(at.Output)/100*float64(p.drive.Servo.Swing)), append(c.Angles, float64(at.Angle))
	}
	return c
}

// compared asks SciPy, and compares.
func compared(t *testing.T, cases []scipyCase, ours []minimal) {
	t.Helper()
	text, err := json.Marshal(cases)
	if err != nil {
		t.Fatal(err)
	}
	command := exec.Command("/usr/bin/python3", "-B", filepath.Join("..", "..", "testdata", "fit", "fit.py"))
	command.Stdin = bytes.NewReader(text)
	var complaint bytes.Buffer
	command.Stderr = &complaint
	out, err := command.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, complaint.String())
	}
	var answers []scipyAnswer
	if err := json.Unmarshal(out, &answers); err != nil || len(answers) != len(cases) {
		t.Fatalf("%d answers to %d cases: %v", len(answers), len(cases), err)
	}
	better := 0
	for i, a := range answers {
		g := ours[i].geometry
		switch {
		case ours[i].sum > a.Sum*(1+sameSum)+sameSum:
			t.Errorf("%+v: the sum of squares is %.9g, SciPy's %.9g", cases[i], ours[i].sum, a.Sum)
		case a.Sum > ours[i].sum*(1+1e-3)+sameSum:
			better++ // SciPy ended in another minimum
		case math.Abs(g.Arm/a.Arm-1) > sameArm || math.Abs(g.ArmDeg-a.ArmDeg) > sameAngle || cases[i].RodFree && math.Abs(g.Pushrod-a.Pushrod) > sameArm*a.Pushrod || math.Abs(g.HornDeg-a.HornDeg) > sameAngle:
			t.Errorf("%+v: %.6g mm at %.5g°, pushrod %.6g, horn at %.5g°; SciPy's %.6g mm at %.5g°, pushrod %.6g, horn at %.5g°", cases[i], g.Arm, g.ArmDeg, g.Pushrod, g.HornDeg, a.Arm, a.ArmDeg, a.Pushrod, a.HornDeg)
		default:
			sameTold(t, &ours[i], &a)
		}
	}
	if better > len(answers)/20 {
		t.Errorf("SciPy ended elsewhere %d times: the two do not search the same", better)
	}
	t.Logf("%d minima, of which SciPy missed %d", len(answers), better)
}

// sameTold compares how well values are told.
func sameTold(t *testing.T, m *minimal, a *scipyAnswer) {
	t.Helper()
	inverse, ok := inverseOf(m.of.jacobian(m.x, len(m.of.points)))
	if !ok {
		t.Fatalf("%+v is not told", m)
	}
	off := func(at int) float64 { return math.Sqrt(inverse.At(at, at)) }
	got, want := []float64{off(0) * m.geometry.Arm, off(1) * leanUnit}, []float64{a.ArmOff, a.ArmDegOff}
	if m.of.horn {
		got, want = append(got, off(m.of.hornAt())*leanUnit), append(want, a.HornDegOff)
	}
	for i := range got {
		if math.Abs(got[i]/want[i]-1) > sameOff {
			t.Errorf("%+v: told to %v, SciPy's %v", m.geometry, got, want)
		}
	}
}

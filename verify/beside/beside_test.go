package beside_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/beside"
)

func shipped(t testing.TB, name string) *airframes.Model {
	t.Helper()
	text, _ := airframes.ReadShipped(name)
	m, problems := airframes.Load(name, text)
	if m == nil {
		t.Fatalf("%+v", problems)
	}
	return m
}

// Side by side a part does what it does in its own set-up, at every position that both
// have, whatever controls the two have.
func TestPartsDoAsInTheirOwnSetups(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	names := airframes.Shipped()
	for i, name := range names {
		was, is := shipped(t, name), shipped(t, names[(i+1)%len(names)])
		h := beside.Halves{Was: &was.Setup, Is: &is.Setup, Controls: beside.Match(&was.Setup, &is.Setup)}
		spans := h.Controls.Everywhere()
		tried := 0
		for a := range was.Setup.Parts {
			for b := range is.Setup.Parts {
				if was.Setup.Parts[a].Motion != is.Setup.Parts[b].Motion || r.IntN(4) > 0 {
					continue
				}
				both, _ := h.Parts(a, b)
				plan, faults := mixcore.Compile(both)
				if faults != nil {
					t.Fatalf("%s beside %s: %+v", name, names[(i+1)%len(names)], faults)
				}
				one, two, joint := was.Plan.NewOutput(), is.Plan.NewOutput(), plan.NewOutput()
				for range 40 {
					in := mixcore.Input{SignalLost: r.IntN(3) == 0}
					for k := range both.Controls {
						at := spans[k].Low + r.Float64()*(spans[k].High-spans[k].Low)
						if places := spans[k].Places; places != nil {
							at = float64(places[r.IntN(len(places))])
						}
						in.Position = append(in.Position, at)
					}
					before, now := h.Controls.Was(&in), h.Controls.Is(&in)
					was.Plan.Eval(&before, one)
					is.Plan.Eval(&now, two)
					plan.Eval(&in, joint)
					tried++
					for side, p := range []mixcore.PartOutput{one.Parts[a], two.Parts[b]} {
						got := joint.Parts[side]
						if d := math.Max(math.Abs(float64(got.Angle-p.Angle)), math.Abs(float64(got.Amount-p.Amount))); d > 1e-9 {
							t.Fatalf("%s beside %s at %v: %+v, alone %+v", was.Setup.Parts[a].Name, is.Setup.Parts[b].Name, in, got, p)
						}
					}
				}
			}
		}
		if tried == 0 {
			t.Errorf("%s: nothing was tried", name)
		}
	}
}

func control(name string, positions ...string) mixcore.Control {
	return mixcore.Control{Name: name, Kind: mixcore.SwitchControl, Positions: positions}
}

func TestControlsAreMatched(t *testing.T) {
	lever := mixcore.Control{Name: "Flap-Lever", Kind: mixcore.LeverControl, Detents: []mixcore.Detent{{Name: "up", At: 5}}}
	was := &mixcore.Setup{Controls: []mixcore.Control{
		control("rates", "low", "high"), {Name: "flap lever", Kind: mixcore.LeverControl},
		{Name: "stick", Kind: mixcore.AxisControl, Axis: mixcore.Roll}, control("tow", "in", "out"),
	}}
	is := &mixcore.Setup{Controls: []mixcore.Control{
		lever, control("Rates", "mid", "HIGH", "low"), {Name: "stick", Kind: mixcore.AxisControl, Axis: mixcore.Pitch}, control("tow", "a", "b"),
	}}
	c := beside.Match(was, is)
	if got := len(c.Both); got != 6 {
		t.Fatalf("%d controls", got)
	}
	if got := [2][]int{c.OnlyWas(), c.OnlyIs()}; !slices.Equal(got[0], []int{2, 3}) || !slices.Equal(got[1], []int{2, 3}) {
		t.Errorf("only in one: %v", got)
	}
	if !c.One(0, 1) || !c.One(1, 0) || c.One(2, 2) || c.One(3, 3) {
		t.Error("the wrong ones are one")
	}
	if got := c.LeftOut(0); !slices.Equal(got, []string{"mid"}) {
		t.Errorf("left out: %q", got)
	}
	if spans := c.Everywhere(); !slices.Equal(spans[0].Places, []int{0, 1}) || spans[1].High != 100 || spans[2].High != 0 {
		t.Errorf("%+v", spans)
	}
	in := mixcore.Input{Position: []float64{1, 40, 0, 0, 0, 0}}
	if got := c.Is(&in).Position; !slices.Equal(got, []float64{40, 1, 0, 0}) {
		t.Errorf("newer: %v", got)
	}
	in.Position[0] = 0
	if got := c.Is(&in).Position[1]; got != 2 {
		t.Errorf("low is number %v of the newer switch", got)
	}
	if got := c.Was(&in).Position; !slices.Equal(got, []float64{0, 40, 0, 0}) {
		t.Errorf("older: %v", got)
	}
	if got := []float64{c.Rest(0), c.Rest(1)}; !slices.Equal(got, []float64{0, 5}) { // mid is not shared
		t.Errorf("rest: %v", got)
	}
}

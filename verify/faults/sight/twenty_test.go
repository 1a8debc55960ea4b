package sight_test

import (
	"fmt"
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/poses"
)

// fiveOutputs is four sticks and five outputs, each on a channel of its own: port and
// starboard aileron, elevator, rudder and throttle. So that the throttle has two sides
// like the others, it is an arm that a stick moves about its middle. All but the port
// aileron go plus for plus.
func fiveOutputs(t *testing.T) *mixcore.Plan {
	t.Helper()
	s := mixcore.Setup{Name: "five outputs"}
	for _, name := range []string{"roll stick", "pitch stick", "yaw stick", "throttle stick"} {
		s.Controls = append(s.Controls, mixcore.Control{Name: name, Kind: mixcore.AxisControl, Axis: mixcore.Pitch})
		s.Demands = append(s.Demands, mixcore.Demand{Name: name, From: len(s.Demands), Trim: mixcore.NoTrim, Rates: []mixcore.Rate{{Throw: mixcore.Both(100)}}})
	}
	for i, out := range []struct {
		name   string
		demand int
		share  mixcore.Percent
	}{{"port aileron", 0, -100}, {"starboard aileron", 0, 100}, {"elevator", 1, 100}, {"rudder", 2, 100}, {"throttle", 3, 100}} {
		s.Channels = append(s.Channels, mixcore.Channel{
			Number: i + 1, Limit: 100, EndPoints: mixcore.Both(100), PulseMin: 1000, PulseMax: 2000,
			Mix: []mixcore.MixLine{{Op: mixcore.Add, Demand: out.demand, Share: mixcore.Both(out.share)}},
		})
		s.Parts = append(s.Parts, mixcore.Part{
			Name: out.name, Kind: "flap", Motion: mixcore.UpDown, Stops: mixcore.Stops{Plus: 90, Minus: 90},
			Drives: []mixcore.Drive{{Channel: i, Table: []mixcore.Point{{X: -200, Y: -50}, {X: 200, Y: 50}}}},
		})
	}
	plan, faults := mixcore.Compile(s)
	if faults != nil {
		t.Fatal(faults)
	}
	return plan
}

// twenty are 5 reversals, 5 dead outputs and 10 swaps.
func twenty(t *testing.T, plan *mixcore.Plan) map[string]*mixcore.Plan {
	t.Helper()
	faults := map[string]*mixcore.Plan{}
	plant := func(name string, edit func(*mixcore.Setup)) {
		p, wrong := plan.Vary(edit)
		if wrong != nil {
			t.Fatal(wrong)
		}
		faults[name] = p
	}
	parts := plan.Setup().Parts
	for i := range parts {
		plant(parts[i].Name+" reversed", func(s *mixcore.Setup) { s.Channels[i].Reversed = true })
		plant(parts[i].Name+" dead", func(s *mixcore.Setup) { s.Channels[i].Mix = nil })
		for k := range i {
			plant(fmt.Sprintf("%s and %s swapped", parts[k].Name, parts[i].Name), func(s *mixcore.Setup) {
				s.Parts[i].Drives[0].Channel, s.Parts[k].Drives[0].Channel = k, i
			})
		}
	}
	return faults
}

// missedBy are the faults that no step shows. Where only movement counts, an eye does not
// see which way.
func missedBy(plan *mixcore.Plan, faults map[string]*mixcore.Plan, steps [][]float64, onlyMovement bool) (missed []string) {
	setup := plan.Setup()
	for name, wrong := range faults {
		seen := false
		for _, at := range steps {
			step := sight.StepTo(setup, mixcore.Input{Position: at})
			moves := func(p *mixcore.Plan, part int) sight.Move {
				from, to := p.NewOutput(), p.NewOutput()
				p.Eval(&step.From, from)
				p.Eval(&step.To, to)
				return sight.MoveOf(setup, part, &step, from, to)
			}
			for part := range setup.Parts {
				right, is := moves(plan, part), moves(wrong, part)
				p := &setup.Parts[part]
				if onlyMovement {
					still := func(m sight.Move) bool { return sight.Eye.Way(p, m) == sight.Still }
					seen = seen || still(right) != still(is)
				} else {
					seen = seen || sight.Eye.Differ(p, right, is)
				}
			}
		}
		if !seen {
			missed = append(missed, name)
		}
	}
	slices.Sort(missed)
	return missed
}

// How good five ways of checking are: "does anything move" catches 5 of 20, all sticks to
// one corner with directions read 14, both opposite corners 14, one axis at a time 20, the
// five rows of a pairwise array 20. (Computed by exact matching for the design; this test
// computes it again from set-ups.)
func TestTwentySingleFaults(t *testing.T) {
	plan := fiveOutputs(t)
	faults := twenty(t, plan)
	if len(faults) != 20 {
		t.Fatalf("%d faults", len(faults))
	}
	corner, opposite := []float64{100, 100, 100, 100}, []float64{-100, -100, -100, -100}
	var one, pairwise [][]float64
	for i := range 4 {
		at := make([]float64, 4)
		at[i] = 100
		one = append(one, at)
	}
	for _, row := range poses.Pairwise(4) {
		at := make([]float64, 4)
		for i, plus := range row {
			at[i] = map[bool]float64{true: 100, false: -100}[plus]
		}
		pairwise = append(pairwise, at)
	}
	sameSign := []string{
		"elevator and rudder swapped", "elevator and throttle swapped", "rudder and throttle swapped",
		"starboard aileron and elevator swapped", "starboard aileron and rudder swapped", "starboard aileron and throttle swapped",
	}
	for _, c := range []struct {
		name         string
		steps        [][]float64
		onlyMovement bool
		caught       int
		missed       []string
	}{
		{"does anything move", [][]float64{corner}, true, 5, nil},
		{"one corner", [][]float64{corner}, false, 14, sameSign},
		{"both opposite corners", [][]float64{corner, opposite}, false, 14, sameSign},
		{"one axis at a time", one, false, 20, nil},
		{"a pairwise array", pairwise, false, 20, nil},
	} {
		missed := missedBy(plan, faults, c.steps, c.onlyMovement)
		if got := 20 - len(missed); got != c.caught {
			t.Errorf("%s: %d are caught, want %d; missed %q", c.name, got, c.caught, missed)
		}
		if c.missed != nil && !slices.Equal(missed, c.missed) {
			t.Errorf("%s misses %q, want %q", c.name, missed, c.missed)
		}
	}
	if len(pairwise) != 5 {
		t.Errorf("the pairwise array has %d rows, want 5", len(pairwise))
	}
}

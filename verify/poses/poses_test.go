package poses_test

import (
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/verifytest"
)

func names(m *airframes.Model, controls []int) (list []string) {
	for _, c := range controls {
		list = append(list, m.Setup.Controls[c].Name)
	}
	return list
}

func TestPartReachIsEveryControlThatBearsOnIt(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	p := poses.New(m.Plan)
	for part, want := range map[string][]string{
		"port flap": {"flap lever", "rate switch", "roll stick", "roll trim"},
		"rudder":    {"yaw stick", "yaw trim"},
		"motor":     {"motor switch", "throttle"},
	} {
		i := slices.IndexFunc(m.Setup.Parts, func(q mixcore.Part) bool { return q.Name == part })
		if got := names(m, p.PartReach(i).Controls()); !slices.Equal(slices.Sorted(slices.Values(got)), want) {
			t.Errorf("%s: got %q, want %q", part, got, want)
		}
	}
}

func TestPointsBeginAtRestAndHoldEveryDetent(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	p := poses.New(m.Plan)
	for i := range m.Setup.Controls {
		c := &m.Setup.Controls[i]
		if p.Points[i][0] != c.Rest() {
			t.Errorf("%s begins at %v, want %v", c.Name, p.Points[i][0], c.Rest())
		}
		for _, d := range c.Detents {
			if !slices.Contains(p.Points[i], float64(d.At)) {
				t.Errorf("%s is not tried at %s", c.Name, d.Name)
			}
		}
	}
}

func TestWalkVisitsEveryCombinationOnce(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	p := poses.New(m.Plan)
	controls := []int{4, 5, 6}
	all := p.Combinations(controls, 1000)
	seen := map[[3]float64]int{}
	last := 0
	complete := p.Walk(controls, all, func(in *mixcore.Input, _ []int, moved int) {
		if moved < last {
			t.Errorf("%d controls off rest after %d", moved, last)
		}
		last = moved
		seen[[3]float64{in.Position[4], in.Position[5], in.Position[6]}]++
	})
	if !complete || len(seen) != all {
		t.Errorf("visited %d of %d, complete: %v", len(seen), all, complete)
	}
	for at, times := range seen {
		if times != 1 {
			t.Errorf("%v was visited %d times", at, times)
		}
	}
	if p.Walk(controls, all-1, func(*mixcore.Input, []int, int) {}) {
		t.Error("a walk that was cut short says that it was complete")
	}
}

func TestPairsAreOfOneNameButForTheSide(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	var got []string
	for _, p := range poses.Pairs(&m.Setup) {
		got = append(got, m.Setup.Parts[p.Port].Name+" and "+m.Setup.Parts[p.Starboard].Name)
	}
	if want := []string{"port aileron and starboard aileron", "port flap and starboard flap"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	paired := 0
	for i := range m.Setup.Parts {
		other, ok := poses.Partner(&m.Setup, i)
		if !ok {
			continue
		}
		paired++
		if back, ok := poses.Partner(&m.Setup, other); !ok || back != i {
			t.Errorf("the partner of the %s is the %s, and not the other way round", m.Setup.Parts[i].Name, m.Setup.Parts[other].Name)
		}
	}
	if paired != 2*len(got) {
		t.Errorf("%d parts have a partner, in %d pairs", paired, len(got))
	}
}

func TestPartnersAreOfOneKindAndOnTheOtherSide(t *testing.T) {
	part := func(name string, kind mixcore.Kind, side mixcore.Side) mixcore.Part {
		return mixcore.Part{Name: name, Kind: kind, Side: side}
	}
	s := mixcore.Setup{Parts: []mixcore.Part{
		part("Port-Flap", "flap", mixcore.Port), part("right flap", "flap", mixcore.Starboard),
		part("port brake", "spoiler", mixcore.Port), part("starboard brake", "flap", mixcore.Starboard),
		part("left flap inner", "flap", mixcore.Port), part("flap", "flap", mixcore.Centre),
	}}
	for i, want := range []int{1, 0, -1, -1, -1, -1} {
		if got, ok := poses.Partner(&s, i); ok != (want >= 0) || ok && got != want {
			t.Errorf("%s: partner %d, %v; want %d", s.Parts[i].Name, got, ok, want)
		}
	}
}

package sheet

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
	"pgregory.net/rapid"
)

func load(t testing.TB, name string) *airframes.Model {
	t.Helper()
	text, ok := airframes.ReadShipped(name)
	if !ok {
		t.Fatalf("no model %s", name)
	}
	return read(t, string(text))
}

func read(t testing.TB, text string) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load("model.yaml", []byte(text))
	if m == nil {
		t.Fatalf("%+v", problems)
	}
	return m
}

// usedOf is as if every channel used a part of what it can put out.
func usedOf(m *airframes.Model, part float64) []result.Travel {
	used := make([]result.Travel, len(m.Setup.Channels))
	for i := range used {
		low, high := m.Setup.Channels[i].Reach()
		middle, half := (low+high)/2, (high-low)/2*mixcore.Percent(part)
		used[i] = result.Travel{Low: float64(mixcore.PulseOf(middle - half)), High: float64(mixcore.PulseOf(middle + half)), Sure: true}
	}
	return used
}

// Arm, horn and pushrod keep their lengths wherever the servo stands, and the trailing
// edge is turned by what the plan says, but never beyond the part's stop.
func holdTogether(t fatal, m *airframes.Model, used []result.Travel) {
	t.Helper()
	list := linkages(m, used)
	next := 0
	for i := range m.Setup.Parts {
		p := &m.Setup.Parts[i]
		for k := range p.Drives {
			g := p.Drives[k].Linkage
			if g == nil {
				continue
			}
			l := &list[next]
			next++
			goes := used[p.Drives[k].Channel]
			low, high := mixcore.OutputOf(mixcore.Microseconds(goes.Low)), mixcore.OutputOf(mixcore.Microseconds(goes.High))
			if l.Part != p.Name || len(l.Stands) != 3 {
				t.Fatalf("%s: got the linkage of %s with %d stands", p.Name, l.Part, len(l.Stands))
			}
			rod := gapBetween(l.Stands[0].Arm, l.Stands[0].Horn)
			if g.Pushrod > 0 && math.Abs(rod-g.Pushrod) > 1e-6 {
				t.Fatalf("%s: pushrod of %v mm, want %v mm", p.Name, rod, g.Pushrod)
			}
			for s, output := range []mixcore.Percent{0, low, high} {
				at := &l.Stands[s]
				if got := gapBetween(at.Arm, at.Horn); math.Abs(got-rod) > 1e-6 {
					t.Fatalf("%s: the pushrod is %v mm at neutral and %v mm at %v %%", p.Name, rod, got, output)
				}
				if got := gapBetween(at.Hinge, at.Horn); math.Abs(got-g.Horn) > 1e-6 {
					t.Fatalf("%s: horn of %v mm at %v %%, want %v mm", p.Name, got, output, g.Horn)
				}
				if got := gapBetween(at.Shaft, at.Arm); math.Abs(got-g.Arm) > 1e-6 {
					t.Fatalf("%s: arm of %v mm at %v %%, want %v mm", p.Name, got, output, g.Arm)
				}
				stopped := func(angle float64) float64 { return min(max(angle, -float64(p.Stops.Minus)), float64(p.Stops.Plus)) }
				asked, rests := float64(m.Plan.DriveAngle(i, k, output)), float64(m.Plan.DriveAngle(i, k, 0))
				want := stopped(asked)
				if fits := math.Abs(rests-stopped(rests)) < 1e-9; !fits && want != asked {
					want = rests // it pushes at its stop already at neutral
				}
				if got := drawnAngle(p, at); math.Abs(got-want) > 1e-6 {
					t.Fatalf("%s at %v %%: drawn at %v°, want %v°", p.Name, output, got, want)
				} else if held := strings.Contains(at.Says, "held at its stop"); held != (math.Abs(asked-want) > 1e-6) && math.Abs(asked-want) > 1e-6 {
					t.Fatalf("%s at %v %%: %q, and would be at %v°", p.Name, output, at.Says, asked)
				}
			}
		}
	}
	if next != len(list) {
		t.Fatalf("%d linkages, want %d", len(list), next)
	}
}

func gapBetween(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

// drawnAngle is the angle of a part by where its trailing edge is drawn, plus DOWN or
// LEFT; a nose wheel's rear end goes right where it turns the model left.
func drawnAngle(p *mixcore.Part, at *result.LinkageAt) float64 {
	turned := math.Atan2(at.TrailingEdge[1]-at.Hinge[1], at.TrailingEdge[0]-at.Hinge[0]) * 180 / math.Pi
	if p.Motion == mixcore.UpDown || p.Kind == "nose wheel" {
		return -turned
	}
	return turned
}

func TestLinkagesHoldTogether(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := load(t, name)
		holdTogether(t, m, travelOf(context.Background(), m))
		holdTogether(t, m, usedOf(m, 1))
	}
	rapid.Check(t, func(t *rapid.T) {
		m, problems := airframes.Load("drawn.yaml", airframestest.Generate(t))
		if m == nil {
			t.Fatalf("%+v", problems)
		}
		holdTogether(t, m, usedOf(m, rapid.Float64Range(0, 1).Draw(t, "used")))
	})
}

// linked is an elevator with its horn below and a rudder with its horn to starboard. The
// plain cases can be seen without arithmetic.
const linked = `hingeline: 1
name: Linked
controls: {pitch stick: pitch, yaw stick: yaw}
demands: {pitch: pitch stick, yaw: yaw stick}
channels:
  1: {name: elevator, mix: pitch}
  2: {name: rudder, mix: yaw}
surfaces:
  elevator:
    channel: 1
    chord_mm: 40
    stops: {up: 60°, down: 20°}
    servo: {swing_deg: 45, plus_swings: aft}
    linkage: {arm_mm: 15, horn_mm: 15, pivots_mm: 60, offset_mm: 0, horn: below}
  rudder:
    channel: 2
    servo: {swing_deg: 30, plus_swings: fore}
    linkage: {arm_mm: 10, horn_mm: 20, pivots_mm: 80, offset_mm: -5, horn: starboard, arm_deg: 80}
`

// With arm and horn alike the linkage is a parallelogram, and the surface turns just as
// far as the arm: 45° of it is 15·sin 45° = 10.607 mm along and across.
func TestLinkagesAreDrawnAsTheyAre(t *testing.T) {
	m := read(t, linked)
	list := linkages(m, travelOf(context.Background(), m))
	elevator, rudder := &list[0], &list[1]
	if elevator.Seen != "from the side, nose left" || elevator.Horn != "horn below" || rudder.Seen != "from above, nose left" || rudder.Horn != "horn to starboard" {
		t.Errorf("%q %q, %q %q", elevator.Seen, elevator.Horn, rudder.Seen, rudder.Horn)
	}
	const leg = 10.606601718
	down := elevator.Stands[1] // 45° there, but for its stop at 20°
	if want := "channel at 1000 µs (-100 %): arm 20° fore, trailing edge DOWN 20° (14 mm), held at its stop: the servo pushes on"; down.Says != want {
		t.Errorf("got %q, want %q", down.Says, want)
	}
	if want := "as far as the channel goes: 1000 to 2000 µs"; elevator.Goes != want {
		t.Errorf("got %q, want %q", elevator.Goes, want)
	}
	up := elevator.Stands[2]
	want := result.LinkageAt{
		Says: "channel at 2000 µs (100 %): arm 45° aft, trailing edge UP 45° (31 mm)",
		Arm:  [2]float64{leg, -leg}, Horn: [2]float64{60 + leg, -leg}, Hinge: [2]float64{60, 0},
		TrailingEdge: [2]float64{60 + 28.284271247, 28.284271247},
	}
	if up.Says != want.Says || gapBetween(up.Arm, want.Arm) > 1e-6 || gapBetween(up.Horn, want.Horn) > 1e-6 || gapBetween(up.Hinge, want.Hinge) > 1e-6 || gapBetween(up.TrailingEdge, want.TrailingEdge) > 1e-6 {
		t.Errorf("got  %+v\nwant %+v", up, want)
	}
	if want := []string{"arm 15 mm", "horn 15 mm", "pushrod 60 mm", "pivots 60 mm"}; !slices.Equal(elevator.Lengths, want) {
		t.Errorf("got %q, want %q", elevator.Lengths, want)
	}
	// Seen from above Y is to port: a horn to starboard is at minus, and a hinge line to
	// port of the shaft at plus.
	neutral, left := rudder.Stands[0], rudder.Stands[1]
	if neutral.Horn[1] != -15 || neutral.Hinge[1] != 5 || neutral.Arm[1] >= 0 || neutral.Arm[0] <= 0 {
		t.Errorf("%+v", neutral)
	}
	if !strings.Contains(left.Says, "channel at 1000 µs (-100 %): arm 30° aft, LEFT ") || left.TrailingEdge[1] <= left.Hinge[1] {
		t.Errorf("%+v", left)
	}
	joined := strings.Join(rudder.Lengths, ", ")
	if !strings.Contains(joined, "hinge line 5 mm to port of the servo's shaft") || !strings.Contains(joined, "arm at neutral 80° from aft") {
		t.Errorf("%s", joined)
	}
}

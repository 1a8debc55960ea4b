package verify

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/verify/result"
)

// plank has a wing of constant chord, so that its roll can be worked out by
// hand. Ailerons from 500 to 700 mm and flaps from 100 to 500 mm have the same
// part in the roll for each degree: 700² − 500² = 500² − 100².
const plank = `hingeline: 1
name: Plank
wing: {span_mm: 1500, root_chord_mm: 200, tip_chord_mm: 200}
controls:
  roll stick: roll
  rate switch: {switch: [low, high], aka: rates}
demands:
  roll: roll stick
channels:
  1: {mix: roll}
  2: {mix: [{add: roll, share: -100%}]}
  3: {mix: [{add: roll, share: 50%, when: rates are high}]}
  4: {mix: [{add: roll, share: -50%, when: rates are high}]}
surfaces:
  starboard aileron: {channel: 1, chord_mm: 50, span_mm: [500, 700], servo: {torque_ncm: 30}, measured: {100%: 20° up}}
  port aileron: {channel: 2, chord_mm: 50, span_mm: [500, 700], servo: {torque_ncm: 30}, measured: {100%: 20° up}}
  starboard flap: {channel: 3, chord_mm: 50, span_mm: [100, 500], measured: {100%: 20° up}}
  port flap: {channel: 4, chord_mm: 50, span_mm: [100, 500], measured: {100%: 20° up}}
`

func effectAt(t *testing.T, airframe string, speed float64, settings ...string) *result.Effect {
	t.Helper()
	m := load(t, airframe)
	e := Show(m, View{To: moveTo(t, m, settings...), Speed: speed}).Effect
	if e == nil {
		t.Fatal("no effect")
	}
	return e
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within*math.Abs(b) }

// By strips pb/2V of a plank is 6·τ·(y₂² − y₁²)/b²·δ, whatever its lift slope; τ
// of a flap of a quarter of the chord is 1 − (θ − sin θ)/π with θ = 2π/3 (Glauert).
func TestEffectOfARollByHand(t *testing.T) {
	theta := 2 * math.Pi / 3
	tau := 1 - (theta-math.Sin(theta))/math.Pi
	want := 6 * tau * (0.7*0.7 - 0.5*0.5) / (1.5 * 1.5) * 20 * math.Pi / 180
	e := effectAt(t, plank, 16, "roll stick=full right")
	if e.Roll == nil || !near(e.Roll.Helix, want, 1e-9) || e.Roll.Way != "RIGHT" {
		t.Fatalf("roll is %+v, wanted pb/2V %.4f to the right", e.Roll, want)
	}
	if rate := want * 2 * 16 / 1.5 * 180 / math.Pi; !near(e.Roll.Rate, rate, 1e-9) {
		t.Errorf("%g° a second, wanted %g", e.Roll.Rate, rate)
	}
	if len(e.Roll.Shares) != 0 || e.Roll.Stops != "" {
		t.Errorf("ailerons alone, without stops: %+v", e.Roll)
	}
	var turns []string
	for _, turn := range e.Turns {
		turns = append(turns, turn.Text)
	}
	if want := []string{"rolls RIGHT", "does not pitch", "does not yaw"}; !slices.Equal(turns, want) {
		t.Errorf("turns %q, wanted %q", turns, want)
	}
	worth := strings.Join(e.Worth, " ")
	for _, word := range []string{"within 5 % of lifting line", "up to 40 % too high", "estimates"} {
		if !strings.Contains(worth, word) {
			t.Errorf("what the numbers are worth lacks %q: %q", word, worth)
		}
	}
	if left := effectAt(t, plank, 0, "roll stick=full left"); left.Roll.Way != "LEFT" || !near(left.Roll.Helix, want, 1e-9) || left.Roll.Rate != 0 {
		t.Errorf("to the left: %+v", left.Roll)
	}
}

func TestEffectSaysWhatFlapsAdd(t *testing.T) {
	e := effectAt(t, plank, 16, "rates=high", "roll stick=full right")
	if len(e.Roll.Shares) != 1 || !near(e.Roll.Shares[0].Percent, 50, 1e-9) || e.Roll.Shares[0].Text != "the flaps add 50 % to the roll of the ailerons" {
		t.Errorf("shares are %+v, wanted 50 %%", e.Roll.Shares)
	}
	fighting := strings.NewReplacer("share: 50%", "share: -50%", "share: -50%", "share: 50%").Replace(plank)
	e = effectAt(t, fighting, 16, "rates=high", "roll stick=full right")
	if len(e.Roll.Shares) != 1 || e.Roll.Shares[0].Text != "the flaps take 50 % from the roll of the ailerons" {
		t.Errorf("shares are %+v, wanted 50 %% less", e.Roll.Shares)
	}
}

// One of two ailerons that stops half way takes a quarter of the roll.
func TestEffectSaysWhatAStopTakes(t *testing.T) {
	stopped := strings.Replace(plank, "port aileron: {", "port aileron: {stops: {down: 10°}, ", 1)
	e := effectAt(t, stopped, 16, "roll stick=full right")
	if !near(e.Roll.Lost, 25, 1e-9) || !strings.HasPrefix(e.Roll.Stops, "25 % of the roll is lost to the stop of port aileron: without it pb/2V would be 0.136") {
		t.Errorf("roll is %+v, wanted a quarter lost", e.Roll)
	}
	stalled := 0
	for _, l := range e.Loads {
		if l.Stalls != (l.Servo == "port aileron servo") {
			t.Errorf("load %+v", l)
		}
		if l.Stalls {
			stalled++
		}
	}
	if stalled != 1 {
		t.Errorf("%d servos stall, wanted 1: %+v", stalled, e.Loads)
	}
}

// The air's pull goes with the square of the speed, and is a band: the lower
// end is a flat plate, ½·ρ·V²·c²·s·sin δ/2.
func TestEffectLoads(t *testing.T) {
	slow, fast := effectAt(t, plank, 10, "roll stick=full right"), effectAt(t, plank, 20, "roll stick=full right")
	if len(slow.Loads) != 2 || len(fast.Loads) != 2 {
		t.Fatalf("loads are %+v and %+v, wanted those of two ailerons: the flaps rest", slow.Loads, fast.Loads)
	}
	for i, l := range slow.Loads {
		if f := fast.Loads[i]; !near(f.Low, 4*l.Low, 1e-9) || !near(f.High, 4*l.High, 1e-9) || !(l.Low > 0 && l.Low < l.High) || l.Has != 30 {
			t.Errorf("%+v at 10 m/s, %+v at 20", l, f)
		}
	}
	// 45° of arm for 20° of surface is how a table is geared.
	plate := 1.225 / 2 * 100 * 0.05 * 0.05 * 0.2 * math.Sin(20*math.Pi/180) / 2 * 100 * 20 / 45
	if got := slow.Loads[0].Low; !near(got, plate, 1e-3) {
		t.Errorf("a flat plate at 10 m/s needs %g N·cm, got %g", plate, got)
	}
}

func TestEffectSaysWhatIsMissing(t *testing.T) {
	for _, c := range []struct {
		name, airframe, want string
		speed                float64
	}{
		{"no wing", strings.Replace(plank, "wing: {span_mm: 1500, root_chord_mm: 200, tip_chord_mm: 200}\n", "", 1), "wing: {span_mm", 16},
		{"neither wing nor speed", strings.Replace(plank, "wing: {span_mm: 1500, root_chord_mm: 200, tip_chord_mm: 200}\n", "", 1), "for roll rate and servo loads: wing:, the span_mm", 0},
		{"no size", strings.Replace(plank, "port flap: {channel: 4, chord_mm: 50, span_mm: [100, 500]", "port flap: {channel: 4", 1), "span_mm and chord_mm of port flap in the airframe file, for roll rate", 16},
		{"no speed", plank, "an airspeed, --speed N", 0},
	} {
		e := effectAt(t, c.airframe, c.speed, "roll stick=full right")
		if got := strings.Join(e.Missing, "; "); !strings.Contains(got, c.want) {
			t.Errorf("%s: missing is %q, wanted %q in it", c.name, got, c.want)
		}
		if c.speed > 0 && e.Roll != nil {
			t.Errorf("%s: roll is %+v", c.name, e.Roll)
		}
	}
	if e := effectAt(t, plank, 16); len(e.Missing)+len(e.Loads)+len(e.Worth) != 0 || e.Roll != nil {
		t.Errorf("at rest: %+v", e)
	}
}

// The airframe file's airspeed stands in for one that is not asked for.
func TestEffectTakesTheSpeedOfTheAirframe(t *testing.T) {
	m := load(t, strings.Replace(plank, "name: Plank\n", "name: Plank\nairspeed_ms: 12\n", 1))
	if e := Show(m, View{To: moveTo(t, m, "roll stick=full right")}).Effect; e.Speed != 12 || e.Roll.Rate == 0 {
		t.Errorf("%+v", e)
	}
	if e := Show(m, View{To: moveTo(t, m, "roll stick=full right"), Speed: 20}).Effect; e.Speed != 20 {
		t.Errorf("speed is %g, wanted 20", e.Speed)
	}
	if s := Show(m, View{To: moveTo(t, m), Parts: []int{0}}); s.Effect != nil {
		t.Errorf("of one part: %+v", s.Effect)
	}
}

// leaking ailerons take a little of the pitch.
var leaking = strings.NewReplacer("  roll stick: roll\n", "  roll stick: roll\n  pitch stick: pitch\n",
	"  roll: roll stick\n", "  roll: roll stick\n  pitch: pitch stick\n",
	"1: {mix: roll}", "1: {mix: [roll, {add: pitch, share: 15%}]}",
	"2: {mix: [{add: roll, share: -100%}]}", "2: {mix: [{add: roll, share: -100%}, {add: pitch, share: -15%}]}\n  5: {mix: pitch}",
	"surfaces:\n", "surfaces:\n  elevator: {channel: 5, chord_mm: 60, span_mm: [0, 300], measured: {100%: 25° up}}\n").Replace(plank)

// A roll that is small beside the pitch is still a roll, and how fast is said.
func TestEffectSaysASlightRoll(t *testing.T) {
	e := effectAt(t, leaking, 20, "pitch stick=full back")
	if got := e.Turns[0]; got.Text != "rolls RIGHT a little, far less than it pitches" || got.Sure {
		t.Errorf("roll is %+v", got)
	}
	if e.Roll == nil || e.Roll.Way != "RIGHT" || e.Roll.Rate < 10 {
		t.Errorf("roll is %+v, wanted its rate", e.Roll)
	}
	if e := effectAt(t, strings.ReplaceAll(leaking, "15%", "0.2%"), 20, "pitch stick=full back"); e.Turns[0].Text != "does not roll" || e.Roll != nil {
		t.Errorf("a fiftieth of that: %+v, %+v", e.Turns[0], e.Roll)
	}
}

func TestEffectLeavesTheDihedralOpen(t *testing.T) {
	yawing := strings.NewReplacer("  roll stick: roll\n", "  roll stick: roll\n  yaw stick: yaw\n",
		"  roll: roll stick\n", "  roll: roll stick\n  yaw: yaw stick\n",
		"  1: {mix: roll}", "  6: {mix: yaw}\n  1: {mix: roll}",
		"surfaces:\n", "surfaces:\n  rudder: {channel: 6, measured: {100%: 25° right}}\n").Replace(plank)
	e := effectAt(t, yawing, 20, "yaw stick=full right")
	if got := e.Turns[0]; got.Sure || got.Way != "" || !strings.Contains(got.Text, "dihedral") {
		t.Errorf("roll is %+v, wanted it open", got)
	}
	if got := e.Turns[2].Text; got != "yaws RIGHT" || e.Roll != nil {
		t.Errorf("yaw is %q, roll %+v", got, e.Roll)
	}
}

// Past what linear theory can say the estimate says so.
func TestEffectSaysWhereSurfacesAreTooFarOut(t *testing.T) {
	worth := func(e *result.Effect) string { return strings.Join(e.Worth, " ") }
	const says = "past about 20°, as at starboard aileron, port aileron, they say too much"
	if e := effectAt(t, strings.ReplaceAll(plank, "20° up", "35° up"), 16, "roll stick=full right"); !strings.Contains(worth(e), says) {
		t.Errorf("at 35°: %q, wanted %q in it", worth(e), says)
	}
	if e := effectAt(t, plank, 16, "roll stick=full right"); strings.Contains(worth(e), "too much") {
		t.Errorf("at 20°: %q", worth(e))
	}
}

package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/result"
	"pgregory.net/rapid"
)

// thrown has measured surfaces, so that every throw can be worked out in the head: 20°
// for 100 % of the channel, of the elevator 30° up and 10° down.
const thrown = `hingeline: 1
name: Thrown
controls:
  roll stick: roll
  pitch stick: pitch
  yaw stick: yaw
  flap lever: {lever: {up: 10, down: 90}}
  rate switch: [low, mid, high]
  phase switch: [cruise, thermal]
  gear switch: [lowered, raised]
phases:
  thermal: phase switch is thermal
demands:
  roll: {from: roll stick, rates: [{when: rate switch is high, throw: 90%}, {throw: {right: 50%, left: 40%}}]}
  pitch: {from: pitch stick, curve: {-100%: -40%, -50%: -80%, 0%: 0%, 100%: 60%}}
  yaw: yaw stick
  flap: flap lever
channels:
  1: {name: port aileron, mix: [{add: roll, share: {right: 50%, left: 100%}}]}
  2: {name: starboard aileron, mix: [{add: roll, share: -100%}]}
  3: {name: elevator, mix: [pitch, {add: flap, share: -10%}]}
  4: {name: wheel, mix: [{add: yaw, share: 50%, when: gear switch is lowered and not thermal}]}
  5: {name: spoiler, mix: [-100%, {add: roll, share: {right: 0%, left: -150%}}]}
surfaces:
  port aileron: {channel: 1, chord_mm: 50, measured: {100%: 20° down}}
  starboard aileron: {channel: 2, chord_mm: 50, measured: {100%: 20° down}}
  elevator: {channel: 3, measured: {-100%: 10° down, 0%: 0°, 100%: 30° up}}
  port spoiler: {channel: 5, measured: {-100%: 0°, 100%: 50° up}}
wheels:
  nose wheel: {channel: 4, measured: {100%: 20° right}}
`

// said puts a throw on one line.
func said(r *result.Throw) string {
	line := r.Part + ", " + r.Control + " (" + strings.Join(r.When, "; ") + "):"
	for _, e := range r.Ends {
		line += " " + e.Way + " " + strings.TrimRight(strings.TrimRight(format(e.Degrees), "0"), ".") + " " + e.At + ";"
	}
	return line + " " + r.Partner
}

func format(x float64) string {
	whole, thousandth := math.Floor(x), int(math.Round((x-math.Floor(x))*1000))
	digits := []byte{'.', byte('0' + thousandth/100), byte('0' + thousandth/10%10), byte('0' + thousandth%10)}
	return itoa(int(whole)) + string(digits)
}

func itoa(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return itoa(n/10) + string(rune('0'+n%10))
}

func TestThrowsAreWhatTheMixSays(t *testing.T) {
	m, problems := airframes.Load("thrown.yaml", []byte(thrown))
	if m == nil {
		t.Fatal(problems)
	}
	want := []string{
		// Right is plus and DOWN for the port aileron, with half the share.
		"port aileron, roll stick (rate switch low or mid): UP 8 roll stick full left; DOWN 5 roll stick full right; 2° less UP and 3° less DOWN than the starboard aileron",
		"port aileron, roll stick (rate switch high): UP 18 roll stick full left; DOWN 9 roll stick full right; 9° less DOWN than the starboard aileron",
		"starboard aileron, roll stick (rate switch low or mid): UP 10 roll stick full right; DOWN 8 roll stick full left; 2° more UP and 3° more DOWN than the port aileron",
		"starboard aileron, roll stick (rate switch high): UP 18 roll stick full right; DOWN 18 roll stick full left; 9° more DOWN than the port aileron",
		// With the flap lever at its rest the elevator stands at −1 %, 0.1° DOWN. The
		// curve turns back beyond half forward: −81 % is 8.1° DOWN, 59 % is 17.7° UP.
		"elevator, pitch stick (): UP 17.8 pitch stick full back; DOWN 8 pitch stick 50 % forward; ",
		// From rest at 10 % to 100 % is 9 % of the channel, and 0.9°.
		"elevator, flap lever (): DOWN 0.9 flap lever 100 %; ",
		"port spoiler, roll stick (rate switch low or mid): UP 15 roll stick full left; ",
		"port spoiler, roll stick (rate switch high): UP 33.75 roll stick full left; ",
		"nose wheel, yaw stick (phase switch cruise and gear switch lowered): LEFT 10 yaw stick full left; RIGHT 10 yaw stick full right; ",
	}
	var got []string
	for _, r := range throwsOf(m) {
		got = append(got, said(&r))
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestThrowsSayMillimetresAndTolerances(t *testing.T) {
	m, _ := airframes.Load("thrown.yaml", []byte(thrown))
	list := throwsOf(m)
	up := list[1].Ends[0]
	// 18° of 50 mm: 2·50·sin 9° = 15.643 mm ± 50·cos 9°·2° = 1.724 mm, by hand.
	if abs(up.Millimetres-15.643) > 0.001 || up.Tolerance.Degrees != 2 || abs(up.Tolerance.Millimetres-1.724) > 0.001 {
		t.Errorf("%+v", up)
	}
	for _, r := range list {
		if r.Part != "port spoiler" {
			continue
		}
		if e := r.Ends[0]; e.Tolerance != (result.Tolerance{Degrees: 3}) || e.Millimetres != 0 {
			t.Errorf("%+v", e)
		}
	}
}

// Wherever the control stands, no part is further from where it stood than its throw
// says; and where the throw says that it is so far, it is.
func holdsThrows(t fatal, m *airframes.Model) (rows int) {
	t.Helper()
	th := thrower{m: m, s: &m.Setup, probe: poses.New(m.Plan), out: m.Plan.NewOutput(), rest: m.Plan.Rest()}
	th.at = th.rest.Clone()
	out := m.Plan.NewOutput()
	for part := range th.s.Parts {
		if !th.s.Parts[part].Motion.Hinged() {
			continue
		}
		reach := th.probe.PartReach(part)
		for c := range th.s.Controls {
			if kind := th.s.Controls[c].Kind; !reach[c] || kind == mixcore.TrimControl || kind == mixcore.SwitchControl {
				continue
			}
			b := th.bearing(part, c)
			for _, state := range b.states() {
				rows++
				th.pose(&b, state)
				far := th.throw(part, c)
				angle := func(x float64) float64 {
					th.pose(&b, state)
					th.at.Position[c] = x
					m.Plan.Eval(&th.at, out)
					return float64(out.Parts[part].Angle)
				}
				low, high := th.s.Controls[c].Range()
				from := angle(th.rest.Position[c])
				const pieces, slip = 333, 0.03 // less than is shown
				for i := range pieces + 1 {
					x := low + (high-low)*float64(i)/pieces
					if by := angle(x) - from; by > float64(far.plus.by)+slip || -by > float64(far.minus.by)+slip {
						t.Fatalf("%s by %s: %v° at %v %%, further than %+v", th.s.Parts[part].Name, th.s.Controls[c].Name, by, x, far)
					}
				}
				if by := angle(far.plus.at) - from; far.plus.by > 0 && math.Abs(by-float64(far.plus.by)) > slip {
					t.Fatalf("%s by %s: %v° where it is said to be at %+v", th.s.Parts[part].Name, th.s.Controls[c].Name, by, far.plus)
				}
				if by := from - angle(far.minus.at); far.minus.by > 0 && math.Abs(by-float64(far.minus.by)) > slip {
					t.Fatalf("%s by %s: %v° where it is said to be at %+v", th.s.Parts[part].Name, th.s.Controls[c].Name, by, far.minus)
				}
			}
		}
	}
	return rows
}

func TestThrowsAreTheFurthestOnTheWay(t *testing.T) {
	rows := 0
	for _, name := range airframes.Shipped() {
		m, _ := shipped(t, name)
		rows += holdsThrows(t, m)
	}
	if rows < 100 {
		t.Errorf("only %d looked at", rows)
	}
	rapid.Check(t, func(t *rapid.T) {
		m, problems := airframes.Load("drawn.yaml", airframestest.Generate(t))
		if m == nil {
			t.Fatalf("%+v", problems)
		}
		holdsThrows(t, m)
	})
}

// Every state is in one row of its part and control, as its words say: that of its throws.
func TestThrowsSayWhichStatesTheyAreOf(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m, _ := shipped(t, name)
		th := thrower{m: m, s: &m.Setup, probe: poses.New(m.Plan), out: m.Plan.NewOutput(), rest: m.Plan.Rest()}
		th.at = th.rest.Clone()
		for _, r := range throwsOf(m) {
			part := slices.IndexFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Name == r.Part })
			c := slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Name == r.Control })
			for _, when := range append([]string(nil), r.When...) {
				for _, pose := range writtenOut(when) {
					in := poseSaid(t, m, pose)
					copy(th.at.Position, in.Position)
					far := th.throw(part, c)
					ends := th.ends(part, c, far)
					if len(ends) != len(r.Ends) {
						t.Fatalf("%s: %s with %q: %+v, want %+v", name, said(&r), pose, ends, r.Ends)
					}
					for i := range ends {
						if ends[i].Way != r.Ends[i].Way || abs(ends[i].Degrees-r.Ends[i].Degrees) > 2*alike {
							t.Fatalf("%s: %s with %q: %+v", name, said(&r), pose, ends)
						}
					}
				}
			}
		}
	}
}

// writtenOut are the poses that "rate switch low or mid and phase switch launch" names.
func writtenOut(when string) [][]string {
	list := [][]string{nil}
	for _, one := range strings.Split(when, " and ") {
		places := strings.Split(one, " or ")
		control := places[0][:strings.LastIndex(places[0], " ")]
		places[0] = places[0][len(control)+1:]
		var more [][]string
		for _, pose := range list {
			for _, place := range places {
				more = append(more, append(slices.Clone(pose), control+" "+place))
			}
		}
		list = more
	}
	return list
}

// crowded has more switches on one aileron than a table can show.
func crowded() string {
	var b strings.Builder
	b.WriteString("hingeline: 1\nname: Crowded\ncontrols:\n  roll stick: roll\n  rate switch: [low, high]\n")
	names := []string{"first", "second", "third", "fourth", "fifth"}
	for _, n := range names {
		b.WriteString("  " + n + " switch: [off, on, more]\n")
	}
	b.WriteString("demands:\n  roll: {from: roll stick, rates: [{when: rate switch is high, throw: 20%}, {throw: 10%}]}\nchannels:\n  1:\n    name: aileron\n    mix:\n      - roll\n")
	for _, n := range names {
		b.WriteString("      - {add: roll, share: 5%, when: " + n + " switch is on}\n")
	}
	b.WriteString("surfaces:\n  aileron: {channel: 1, measured: {100%: 40° up}}\n")
	return b.String()
}

func TestThrowsSayWhatIsLeftOut(t *testing.T) {
	m, problems := airframes.Load("crowded.yaml", []byte(crowded()))
	if m == nil {
		t.Fatal(problems)
	}
	list := throwsOf(m)
	if len(list) > mostStates {
		t.Fatalf("%d rows", len(list))
	}
	for _, r := range list {
		for _, w := range r.When {
			if !strings.Contains(w, "rate switch ") || !strings.Contains(w, "fifth switch off (its other places are left out)") || strings.Contains(w, "first switch off (its") {
				t.Errorf("%q", w)
			}
		}
	}
}

// A part that stands still or goes the other way is never within the tolerance of a throw,
// also as it is shown, to a tenth of a degree.
func TestTolerancesNeverReachNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]mixcore.Kind{"aileron", "spoiler", "nose wheel"}).Draw(t, "kind")
		throw := mixcore.Degrees(rapid.Float64Range(0.01, 90).Draw(t, "throw"))
		off := offOf(kind, throw)
		if off < 0 || off > throw/2+same || math.Round(float64(off)*10) >= math.Round(float64(throw)*10) && off > 0 {
			t.Fatalf("%v° ± %v°", throw, off)
		}
		if throw >= 6 && off < usualOff {
			t.Fatalf("%v° ± %v°: less than the usual", throw, off)
		}
		for _, chord := range []mixcore.Millimetres{10, 40, 300} {
			if travel, slack := mixcore.ChordTravel(chord, throw), tolerance(chord, throw, off); slack > travel/2 {
				t.Fatalf("%v° of %v: %v ± %v", throw, chord, travel, slack)
			}
		}
	})
	for _, row := range []struct {
		kind       mixcore.Kind
		throw, off mixcore.Degrees
	}{{"flap", 1.5, 0.7}, {"flap", 4, 2}, {"flap", 30, 2}, {"airbrake", 4, 2}, {"airbrake", 60, 3}, {"flap", 0.5, 0.2}} {
		if got := offOf(row.kind, row.throw); math.Abs(float64(got-row.off)) > same {
			t.Errorf("%s %v°: ± %v°, want ± %v°", row.kind, row.throw, got, row.off)
		}
	}
}

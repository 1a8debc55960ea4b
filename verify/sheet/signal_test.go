package sheet

import (
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
)

// lossy has three motors: one that stops without a signal, one that holds, and one whose
// failsafe lets it run; and one that can never run.
const lossy = `hingeline: 1
name: Lossy
controls: {throttle: lever, motor switch: [safe, live], roll stick: roll}
demands:
  throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}
  roll: roll stick
channels:
  1: {name: first, mix: [throttle, {replace_with: -100%, when: motor switch is safe}], failsafe: -100%}
  2: {name: second, mix: [throttle], failsafe: hold}
  3: {name: third, mix: [{add: throttle, share: 40%}], failsafe: 1100 µs}
  4: {mix: throttle, pulse_us: {max: 1015}, failsafe: hold}
  5: {name: wing, mix: roll, failsafe: 25%}
surfaces:
  port aileron: {channel: 5, measured: {100%: 20° down}}
  starboard aileron: {channel: 5, measured: {100%: 20° up}}
motors:
  first motor: {channel: 1, stopped_when: motor switch is safe}
  second motor: {channel: 2}
  third motor: {channel: 3}
  fourth motor: {channel: 4}
`

func lossyModel(t *testing.T) *airframes.Model {
	t.Helper()
	m, problems := airframes.Load("lossy.yaml", []byte(lossy))
	if m == nil {
		t.Fatal(problems)
	}
	return m
}

func TestSignalSaysWhatIsLeftRunning(t *testing.T) {
	got := signals(lossyModel(t))
	want := []result.Signal{
		{Channel: "channel 1 (first)", Does: "goes to 1000 µs (-100 %)", Parts: []string{"first motor: stopped, at once, from wherever it was"}, Motor: true},
		{Channel: "channel 2 (second)", Does: "holds what it put out", Parts: []string{"second motor: goes on as it was"}, Motor: true, Runs: true},
		{Channel: "channel 3 (third)", Does: "goes to 1100 µs (-80 %)", Parts: []string{"third motor: power 10 %, at once, from wherever it was"}, Motor: true, Runs: true},
		{Channel: "channel 4", Does: "holds what it put out", Parts: []string{"fourth motor: goes on as it was: this channel can never make it run"}, Motor: true},
		{Channel: "channel 5 (wing)", Does: "goes to 1625 µs (25 %)", Parts: []string{"port aileron: trailing edge DOWN 5°, at once, from wherever it was", "starboard aileron: trailing edge UP 5°, at once, from wherever it was"}},
	}
	for i := range want {
		g, w := got[i], want[i]
		if g.Channel != w.Channel || g.Does != w.Does || !slices.Equal(g.Parts, w.Parts) || g.Motor != w.Motor || g.Runs != w.Runs {
			t.Errorf("got  %+v\nwant %+v", g, w)
		}
	}
}

func TestMotorsSayHowTheyRunFull(t *testing.T) {
	got := motorsOf(lossyModel(t))
	want := []result.Motor{
		{Name: "first motor", Channel: "channel 1 (first)", StoppedWhen: "motor switch is safe", Rest: "stopped", Full: []string{"motor switch live", "throttle 100 %"}},
		{Name: "second motor", Channel: "channel 2 (second)", Rest: "stopped", Full: []string{"throttle 100 %"}},
		{Name: "third motor", Channel: "channel 3 (third)", Rest: "power 30 %", Full: []string{"throttle 100 %", "power 70 % there, and never more"}},
		{Name: "fourth motor", Channel: "channel 4", Rest: "stopped", Full: nil},
	}
	for i := range want {
		g, w := got[i], want[i]
		if i == 3 { // it stands still wherever the throttle is
			if last := g.Full[len(g.Full)-1]; last != "stopped there, and never more" {
				t.Errorf("%+v", g)
			}
			continue
		}
		if g.Name != w.Name || g.Channel != w.Channel || g.StoppedWhen != w.StoppedWhen || g.Rest != w.Rest || !slices.Equal(g.Full, w.Full) {
			t.Errorf("got  %+v\nwant %+v", g, w)
		}
	}
}

// At the position that is said to give full power it is given, and no position that the
// model's own script sets gives more.
func TestMotorsRunFullWhereTheySayIt(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m, record := shipped(t, name)
		out := m.Plan.NewOutput()
		next := 0
		motors := motorsOf(m)
		for i := range m.Setup.Parts {
			p := &m.Setup.Parts[i]
			if p.Motion != mixcore.Power {
				continue
			}
			words := slices.DeleteFunc(slices.Clone(motors[next].Full), func(s string) bool { return strings.HasSuffix(s, "never more") })
			next++
			full := poseSaid(t, m, words)
			m.Plan.Eval(&full, out)
			most := out.Parts[i].Amount
			for k := range record.Judged {
				in := record.Judged[k].At.Now.Input()
				if m.Plan.Eval(&in, out); out.Parts[i].Amount > most+closeEnough {
					t.Errorf("%s: %s has %v %% at %q, and %v %% elsewhere", name, p.Name, most, words, out.Parts[i].Amount)
				}
			}
		}
		if next != len(motors) {
			t.Errorf("%s: %d motors, want %d", name, len(motors), next)
		}
	}
}

// A channel that holds leaves its part where it was, wherever that is, and never says
// where it stands with all at rest. Of a part with two channels of which only one holds
// nothing is said that both must agree on.
func TestSignalSaysWhatStaysWhereItWas(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m, _ := shipped(t, name)
		for i, sig := range signals(m) {
			for _, said := range sig.Parts {
				stays := strings.Contains(said, "as it was") || strings.Contains(said, "where it was")
				if holds := m.Setup.Channels[i].Failsafe.Hold; holds && !stays || sig.Runs && strings.Contains(said, "stopped") {
					t.Errorf("%s: %s holds %v: %q", name, sig.Channel, holds, said)
				}
			}
		}
	}
	m, problems := airframes.Load("two.yaml", []byte(strings.NewReplacer("{channel: 5, measured: {100%: 20° down}}",
		"{servos: [{channel: 5, measured: {100%: 20° down}}, {channel: 6, measured: {100%: 20° down}}]}",
		"  5: {name: wing", "  6: {mix: roll, failsafe: hold}\n  5: {name: wing").Replace(lossy)))
	if m == nil {
		t.Fatal(problems)
	}
	both := 0
	for _, sig := range signals(m) {
		for _, said := range sig.Parts {
			if strings.HasPrefix(said, "port aileron: this channel") && !strings.Contains(said, "°") {
				both++
			}
		}
	}
	if both != 2 {
		t.Errorf("%d of the 2 channels of the port aileron say that another one does otherwise", both)
	}
}

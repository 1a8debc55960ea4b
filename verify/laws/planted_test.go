package laws_test

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/verifytest"
)

var update = flag.Bool("update", false, "write the golden file anew")

// fault is one mistake in a shipped model, and the laws that it breaks.
type fault struct {
	name, model string
	breaks      []string
	edit        func(s *mixcore.Setup)
}

// faults are at least one for every law; each breaks no other law than those named.
var faults = []fault{
	{"flaps that go against the roll", "bracken-20", []string{"control-sense"}, func(s *mixcore.Setup) {
		for _, name := range []string{"port flap", "starboard flap"} {
			l := &channel(s, name).Mix[1]
			l.Share = mixcore.Sides{Plus: -l.Share.Plus, Minus: -l.Share.Minus}
		}
	}},
	{"ailerons reversed on a Y-lead", "ousel-trainer", []string{"control-sense"}, func(s *mixcore.Setup) {
		s.Channels[0].Reversed = true
	}},
	{"a reversed trim", "bracken-20", []string{"control-sense"}, func(s *mixcore.Setup) {
		d := demand(s, "roll")
		d.TrimRange = -d.TrimRange
	}},
	{"a throttle that works backwards", "bracken-20", []string{"control-sense"}, func(s *mixcore.Setup) {
		demand(s, "throttle").Curve = &mixcore.Curve{Points: []mixcore.Point{{X: 0, Y: 100}, {X: 100, Y: -100}}}
	}},
	{"a rudder that does not hear the yaw stick with the rudder switch coupled", "hollin-spoilers", []string{"control-sense"}, func(s *mixcore.Setup) {
		c := channel(s, "rudder")
		when := mixcore.Condition{Op: mixcore.AtPosition, Control: control(s, "rudder switch"), Position: 0}
		c.Mix[0].When = &when
		demand(s, "yaw").TrimRange = 0
		demand(s, "yaw").Trim = mixcore.NoTrim
	}},
	{"tail shares that add up to more than the travel", "skerry", []string{"travel"}, func(s *mixcore.Setup) {
		for _, name := range []string{"port tail", "starboard tail"} {
			channel(s, name).Mix[1].Share = mixcore.Both(-40)
		}
	}},
	{"an end point beyond the pulse limits", "ousel-trainer", []string{"travel", "rates"}, func(s *mixcore.Setup) {
		s.Channels[3].EndPoints.Plus = 120
	}},
	{"a throw that alone is more than the shares leave", "pellin-park", []string{"travel", "rates"}, func(s *mixcore.Setup) {
		channel(s, "rudder").Mix[0].Share = mixcore.Sides{Plus: 150, Minus: 100}
	}},
	{"a servo that cannot swing as far", "bracken-20", []string{"travel", "rates"}, func(s *mixcore.Setup) {
		part(s, "elevator").Drives[0].Servo.Max = 35
	}},
	{"a stop that full trim reaches", "bracken-20", []string{"stops"}, func(s *mixcore.Setup) {
		part(s, "elevator").Stops.Plus = 24
	}},
	{"a failsafe that drives a linkage to its lock", "bracken-20", []string{"linkage"}, func(s *mixcore.Setup) {
		c := channel(s, "port flap")
		c.PulseMax, c.Failsafe = 2050, mixcore.Failsafe{Output: 110}
	}},
	{"an arm that comes near its dead point", "bracken-20", []string{"linkage"}, func(s *mixcore.Setup) {
		p := part(s, "nose wheel")
		p.Drives[0].Servo.Swing = 75.5
		p.Stops = mixcore.Stops{Plus: 120, Minus: 120}
	}},
	{"a share that is two percent more on one side", "bracken-20", []string{"symmetry"}, func(s *mixcore.Setup) {
		channel(s, "starboard flap").Mix[1].Share.Plus = -22
	}},
	{"a trim that is stronger than the stick", "pellin-park", []string{"trims"}, func(s *mixcore.Setup) {
		d := demand(s, "yaw")
		d.TrimRange = 15
		d.Rates[1].Throw = mixcore.Both(14)
	}},
	{"a low rate that is sharper than the high one", "bracken-20", []string{"rate-order"}, func(s *mixcore.Setup) {
		demand(s, "pitch").Rates[1].Expo = -100
	}},
	{"a low rate that a mix line makes up for", "bracken-20", []string{"rate-order"}, func(s *mixcore.Setup) {
		demand(s, "pitch").TrimRange = 5
		c := channel(s, "elevator")
		when := mixcore.Condition{Op: mixcore.AtPosition, Control: control(s, "rate switch")}
		c.Mix = append(c.Mix, mixcore.MixLine{Op: mixcore.Add, Demand: c.Mix[0].Demand, Share: mixcore.Both(55), When: &when})
	}},
	{"a motor that runs with landing flap though it is safe", "bracken-20", []string{"motor-safe"}, func(s *mixcore.Setup) {
		safe := *channel(s, "motor").Mix[1].When
		flap := mixcore.Condition{Op: mixcore.AtMost, Control: control(s, "flap lever"), High: 99.9}
		channel(s, "motor").Mix[1].When = &mixcore.Condition{Op: mixcore.And, Args: []mixcore.Condition{safe, flap}}
	}},
	{"a motor that holds on loss of signal", "bracken-20", []string{"motor-signal"}, func(s *mixcore.Setup) {
		channel(s, "motor").Failsafe = mixcore.Failsafe{Hold: true}
	}},
	{"a rate switch that moves the elevator", "bracken-20", []string{"switch-scope"}, func(s *mixcore.Setup) {
		when := mixcore.Condition{Op: mixcore.AtPosition, Control: control(s, "rate switch"), Position: 1}
		c := channel(s, "elevator")
		c.Mix = append(c.Mix, mixcore.MixLine{Op: mixcore.Fixed, Value: 4, When: &when})
	}},
	{"a gear switch that moves the elevator at a tenth of a percent of the stick", "garrow-twin", []string{"control-sense", "switch-scope"}, func(s *mixcore.Setup) {
		raised := mixcore.Condition{Op: mixcore.AtPosition, Control: control(s, "gear switch"), Position: 1}
		half := mixcore.Condition{Op: mixcore.Within, Control: control(s, "pitch stick"), Low: 50, High: 50.1}
		c := channel(s, "elevator")
		c.Mix = append(c.Mix, mixcore.MixLine{Op: mixcore.Add, Demand: c.Mix[0].Demand, Share: mixcore.Both(10),
			When: &mixcore.Condition{Op: mixcore.And, Args: []mixcore.Condition{raised, half}}})
	}},
}

func named[T any](list []T, name string, of func(*T) string) *T {
	i := slices.IndexFunc(list, func(x T) bool { return of(&x) == name })
	return &list[i]
}

func channel(s *mixcore.Setup, name string) *mixcore.Channel {
	return named(s.Channels, name, func(c *mixcore.Channel) string { return c.Name })
}

func demand(s *mixcore.Setup, name string) *mixcore.Demand {
	return named(s.Demands, name, func(d *mixcore.Demand) string { return d.Name })
}

func part(s *mixcore.Setup, name string) *mixcore.Part {
	return named(s.Parts, name, func(p *mixcore.Part) string { return p.Name })
}

func control(s *mixcore.Setup, name string) int {
	return slices.IndexFunc(s.Controls, func(c mixcore.Control) bool { return c.Name == name })
}

// variant is a shipped model with its set-up edited.
func variant(t testing.TB, name string, edit func(*mixcore.Setup)) *airframes.Model {
	t.Helper()
	v, faults := verifytest.Shipped(t, name).With(edit)
	if v == nil {
		t.Fatalf("the edit cannot be compiled: %+v", faults)
	}
	return v
}

// answers are the codes of the laws that have a claim with some answer.
func answers(p *result.Proofs, answer result.ProofAnswer) (codes []string) {
	for _, l := range p.Laws {
		if slices.ContainsFunc(l.Claims, func(c result.Proof) bool { return c.Answer == answer }) {
			codes = append(codes, l.Code)
		}
	}
	return codes
}

// TestPlantedFaultsBreakTheirLawsOnly plants one mistake at a time, wants it to
// disprove the laws that it breaks and no others, and compares what is said about it.
func TestPlantedFaultsBreakTheirLawsOnly(t *testing.T) {
	broken := map[string]bool{}
	var said bytes.Buffer
	for _, f := range faults {
		p := laws.Prove(context.Background(), variant(t, f.model, f.edit), laws.Options{Boxes: 20_000})
		if got := answers(p, result.Disproved); !slices.Equal(got, f.breaks) {
			t.Errorf("%s breaks %q, want %q", f.name, got, f.breaks)
		}
		if p.Verdict != result.SomeDisproved {
			t.Errorf("%s: verdict %q", f.name, p.Verdict)
		}
		fmt.Fprintf(&said, "# %s (%s)\n", f.name, f.model)
		for _, l := range p.Laws {
			for _, c := range l.Claims {
				if c.Answer == result.Disproved {
					broken[l.Code] = true
					tell(&said, &l, &c)
				}
			}
		}
		said.WriteByte('\n')
	}
	for _, l := range laws.Codes() {
		if !broken[l.Code] {
			t.Errorf("no planted fault breaks %s", l.Code)
		}
	}
	airframestest.Golden(t, "testdata/planted.txt", said.Bytes(), *update)
}

func tell(to *bytes.Buffer, l *result.Law, c *result.Proof) {
	fmt.Fprintf(to, "[%s] %s\n  over %s\n", l.Code, c.Claim, c.Over)
	for _, line := range []struct {
		label string
		words []string
	}{{"pose", c.Counter.Pose}, {"before", c.Counter.Before}, {"moved", c.Counter.Moved}, {"set", c.Counter.Set}} {
		fmt.Fprintf(to, "  %-6s %s\n", line.label, strings.Join(line.words, ", "))
	}
	fmt.Fprintf(to, "  got    %s\n", c.Counter.Got)
	for _, at := range c.LookAt {
		fmt.Fprintf(to, "  look at line %d: %s\n", at.Line, at.Note)
	}
}

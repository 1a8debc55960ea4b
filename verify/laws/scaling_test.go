package laws_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/verifytest"
)

// grown is a generated airframe: so many switches with two positions, and so many
// levers that reach the flaps by two ways, for they scale their mix and add to it.
type grown struct {
	switches int
	together bool // all switches bear on the flaps; else in turn on ailerons, flaps, elevator
	repeated int
}

// airframe is the model as a file: a wing of four surfaces and a tail.
func (v grown) airframe() string {
	var b strings.Builder
	line := func(format string, values ...any) { fmt.Fprintf(&b, format+"\n", values...) }
	line("hingeline: 1\nname: Scaling\ncontrols:")
	line("  roll stick: {axis: roll, trim: 5%%}\n  pitch stick: {axis: pitch, trim: 5%%}\n  yaw stick: {axis: yaw, trim: 5%%}")
	for i := range v.switches {
		line("  switch %d: [low, high]", i+1)
	}
	for i := range v.repeated {
		line("  lever %d: lever", i+1)
	}
	line("demands:\n  roll: {from: roll stick, throw: 90%%, expo: 25%%}\n  pitch: {from: pitch stick, throw: 85%%, expo: 20%%}\n  yaw: {from: yaw stick, throw: 85%%}")
	for i := range v.repeated {
		line("  room %d: {from: lever %d, curve: {0%%: 100%%, 45%%: 92%%, 100%%: 70%%}, smooth: true}", i+1, i+1)
		line("  lift %d: {from: lever %d, curve: {0%%: -10%%, 35%%: 20%%, 100%%: 60%%}, smooth: true}", i+1, i+1)
	}
	line("channels:")
	number := 0
	channel := func(name, first string) {
		number++
		line("  %d:\n    name: %s\n    mix:\n      - %s", number, name, first)
	}
	switched := func(pair int, sign string) {
		for i := range v.switches {
			if v.together && pair == 1 || !v.together && i%3 == pair {
				line("      - {fixed: %s%.1f%%, when: switch %d is high}", sign, 0.3*float64(i+1), i+1)
			}
		}
	}
	for _, side := range []struct{ name, aileron, flap string }{
		{"port", "{right: 60%, left: 90%}", "{right: 20%, left: 28%}"},
		{"starboard", "{right: -90%, left: -60%}", "{right: -28%, left: -20%}"},
	} {
		channel(side.name+" aileron", "{add: roll, share: "+side.aileron+"}")
		switched(0, "")
		channel(side.name+" flap", "{add: roll, share: "+side.flap+"}")
		switched(1, "")
		for i := range v.repeated {
			line("      - {scale_by: room %d}", i+1)
		}
		for i := range v.repeated {
			line("      - {add: lift %d, share: 12%%}", i+1)
		}
	}
	channel("elevator", "pitch")
	switched(2, "-")
	channel("rudder", "yaw")
	line("surfaces:")
	for i, name := range []string{"port aileron", "port flap", "starboard aileron", "starboard flap"} {
		line("  %s:\n    channel: %d\n    stops: {up: 40°, down: 40°}\n    servo: fore\n    linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 62, horn: below}", name, i+1)
	}
	line("  elevator: {channel: 5, servo: aft, linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 90, horn: below}}")
	line("  rudder: {channel: 6, servo: fore, linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 90, horn: starboard}}")
	return b.String()
}

func (v grown) load(t testing.TB) *airframes.Model {
	t.Helper()
	return verifytest.Model(t, "scaling.yaml", []byte(v.airframe()))
}

// scalings are the models that DEVELOPERS.md has in its tables.
func scalings() map[string]grown {
	all := map[string]grown{}
	for n := 2; n <= 12; n += 2 {
		all[fmt.Sprintf("switches=%02d/spread", n)] = grown{switches: n}
		all[fmt.Sprintf("switches=%02d/together", n)] = grown{switches: n, together: true}
	}
	for n := 1; n <= 4; n++ {
		all[fmt.Sprintf("repeated=%d", n)] = grown{switches: 2, repeated: n}
	}
	return all
}

// BenchmarkScaling decides all laws about models with more and more switches, and finds
// their margins on models with more and more levers that reach the flaps by two ways:
// most claims of those are decided before it comes to a search, but no margin is.
func BenchmarkScaling(b *testing.B) {
	var names []string
	all := scalings()
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		b.Run(name, func(b *testing.B) {
			m := all[name].load(b)
			claims := laws.Claims(m)
			var states, boxes, open int
			for b.Loop() {
				states, boxes, open = 0, 0, 0
				prover := prove.New(m.Plan)
				for i := range claims {
					d := prover.Decide(context.Background(), &claims[i].Claim, prove.Options{Margins: all[name].repeated > 0})
					states, boxes = max(states, d.States), boxes+d.Boxes
					if d.Answer == prove.Undecided {
						open++
					}
				}
			}
			b.ReportMetric(float64(len(claims)), "claims")
			b.ReportMetric(float64(states), "states")
			b.ReportMetric(float64(boxes), "boxes")
			b.ReportMetric(float64(open), "undecided")
		})
	}
}

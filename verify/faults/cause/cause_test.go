package cause_test

import (
	"context"
	"flag"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/faults/walk"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

// oneIn makes the slow test try one mistake in so many; .ci/run tries every one.
var oneIn = flag.Int("one-in", 17, "try one mistake in `N`")

// observer is an honest person with the model in hand who says what is asked and no more:
// it is evaluated plainly, and what moves a little cannot be said.
type observer struct {
	plan *mixcore.Plan
	look sight.Look
}

func (o *observer) see(ask *cause.Session, step int, s *sight.Step, late func(part int) bool) (list []cause.Seen) {
	from, to := o.plan.NewOutput(), o.plan.NewOutput()
	o.plan.Eval(&s.From, from)
	o.plan.Eval(&s.To, to)
	for _, part := range ask.Parts(step) {
		p := &o.plan.Setup().Parts[part]
		move := sight.MoveOf(o.plan.Setup(), part, s, from, to)
		one := cause.Seen{Part: part}
		if o.look.Ruler {
			one.After = &move.To
		}
		if o.look.Ruler && ask.Before(step, part) {
			one.Before = &move.From
		}
		if p.Motion != mixcore.Power || ask.Way(step, part) {
			one.Way = o.look.Way(p, move)
		}
		if p.Motion == mixcore.Power {
			one.Runs = turning(p, move.To)
		}
		if p.Motion == mixcore.Power && ask.Before(step, part) {
			one.RanBefore = turning(p, move.From)
		}
		if ask.Timed(step, part) {
			early := late(part)
			one.Early = &early
		}
		list = append(list, one)
	}
	return list
}

// turning is whether a propeller turns, and nil where nobody could say.
func turning(p *mixcore.Part, power float64) *bool {
	stands, runs := sight.Propeller(p, power)
	if !stands && !runs {
		return nil
	}
	return &runs
}

// Every mistake of every shipped model, made on the model and looked at honestly, is named
// or left among those that look the same, in no more steps than are promised; and it is
// never ruled out.
func TestSessionNamesEveryMistake(t *testing.T) {
	for _, name := range airframes.Shipped() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			m := verifytest.Shipped(t, name)
			all := mistake.All(m, mistake.Options{})
			tab := table.New(m, all, table.Steps(m))
			for _, look := range []sight.Look{sight.Eye, sight.Measured} {
				start := time.Now()
				promised, _ := tab.Named(look)
				most, total, ended := 0, 0, 0
				every := max(1, *oneIn)
				for i := range all {
					if i%every != 0 || tab.Fault(i) != nil {
						continue
					}
					variant, _ := all[i].Variant(m)
					s := cause.NewSession(context.Background(), tab, nil, look)
					steps, tells := 0, false
					for {
						step, ok := s.Step()
						if !ok {
							break
						}
						o := observer{variant.Plan, look}
						s.Answer(step, o.see(s, step, &tab.Steps[step], func(part int) bool { // what is only timed looks as it should at rest
							return tab.Late(i, step, part) >= float64(look.Visible)
						}))
						tells = tells || len(tab.Left(look, i, []int{table.None}, step)) == 0
						steps++
						if steps > promised {
							t.Errorf("%s: %d steps, promised %d", all[i].Text, steps, promised)
							break
						}
					}
					most, total, ended = max(most, steps), total+steps, ended+1
					if !s.Keeps(i) {
						t.Errorf("%s was ruled out", all[i].Text)
					}
					if tells && s.Keeps(table.None) {
						t.Errorf("%s: what was asked does not tell that something is wrong, though it shows", all[i].Text)
					}
				}
				t.Logf("ruler %v: promised %d, most %d, on average %.1f of %d, %v", look.Ruler, promised, most, float64(total)/float64(ended), ended, time.Since(start))
			}
		})
	}
}

// A reversed channel in the file: the repairs of a failed check name its line.
func TestRepairsNameTheReversedChannel(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	for i := range m.Setup.Channels {
		wrong, _ := m.With(func(s *mixcore.Setup) { s.Channels[i].Reversed = !s.Channels[i].Reversed })
		start := time.Now()
		r := cause.Repairs(context.Background(), wrong, verifytest.Scripts(t, "bracken-20"))
		if r == nil || len(r.List) == 0 {
			t.Errorf("channel %d: nothing was offered", i+1)
			continue
		}
		found := slices.ContainsFunc(r.List, func(x result.Repair) bool {
			return strings.Contains(x.Change, "channel "+string(rune('1'+i))) && (strings.HasPrefix(x.Change, "reverse") || strings.HasPrefix(x.Change, "take the reversing off"))
		})
		if !found {
			t.Errorf("channel %d: offered are %+v", i+1, r.List)
		}
		t.Logf("channel %d: %d of %d in %v", i+1, len(r.List), r.Tried, time.Since(start))
		for _, x := range r.List {
			t.Logf("   %+v", x)
		}
	}
}

// What a wrong model does at the steps of the right one's walk-around, written down
// honestly as sentences, is explained by the mistake that was made, or by what looks the
// same; a mistake that the walk does not show is not found wanting.
func TestExplainFindsWhatWasWrittenDown(t *testing.T) {
	for _, name := range []string{"pellin-park", "ousel-trainer", "bracken-20"} {
		m := verifytest.Shipped(t, name)
		for _, look := range []sight.Look{sight.Eye, sight.Measured} {
			found := walk.Shortest(context.Background(), m, walk.Options{Look: look})
			explained, unseen := 0, 0
			for i := range found.Table.Mistakes {
				wrong := &found.Table.Mistakes[i]
				if i%(len(m.Setup.Channels)**oneIn/2) != 0 || found.Table.Fault(i) != nil || wrong.Kind.Timed {
					continue
				}
				variant, _ := wrong.Variant(m)
				honest := walk.Found{Table: table.New(variant, nil, found.Table.Steps), Look: look, Order: found.Order}
				seen := script.File{Name: "seen.feature", Text: honest.Script()}
				r, problems := cause.Explain(context.Background(), m, nil, seen, cause.Options{Look: look})
				if r == nil {
					t.Fatalf("%s: %s: %+v", name, wrong.Text, problems)
				}
				if !found.Visible(i) {
					unseen++
					continue
				}
				named := slices.ContainsFunc(r.Suspects, func(s result.Suspect) bool {
					return s.Text == wrong.Text || slices.Contains(s.Alike, wrong.Text)
				})
				if !named {
					t.Errorf("%s, ruler %v: %s: verdict %s, %d suspects, the truth is not among them", name, look.Ruler, wrong.Text, r.Verdict, len(r.Suspects))
				}
				explained++
			}
			t.Logf("%s, ruler %v: %d explained, %d not seen", name, look.Ruler, explained, unseen)
			if explained < 2 {
				t.Errorf("only %d were looked at", explained)
			}
		}
	}
}

// Somebody who only looks calls a drag rudder still that goes in by 3 %, and a motor
// stopped that turns as slowly: that is not odd, and rules nothing out.
func TestExplainTakesLittleForStill(t *testing.T) {
	m := verifytest.Shipped(t, "skein-wing")
	list := mistake.All(m, mistake.Options{})
	wrong := slices.IndexFunc(list, func(x mistake.Mistake) bool { return x.Text == "channel 1 (port elevon) is reversed" })
	right, reversed := m.Plan.NewOutput(), m.Plan.NewOutput()
	in := m.Plan.Rest()
	m.Plan.Eval(&in, right)
	at := slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Kind == mixcore.AxisControl && c.Axis == mixcore.Roll })
	in.Position[at] = 35
	m.Plan.Eval(&in, reversed)
	part := slices.IndexFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Name == "starboard drag rudder" })
	if by := reversed.Parts[part].Amount - right.Parts[part].Amount; by < 1 || by > 5 {
		t.Fatalf("the %s moves by %v %%, which is not the little that is meant", m.Setup.Parts[part].Name, by)
	}
	seen := "Feature: Seen\n\n  Scenario: Roll\n    Given everything rests\n    When the " + m.Setup.Controls[at].Name +
		" is 35% right\n    Then the starboard drag rudder stays still\n"
	file := script.File{Name: "seen.feature", Text: []byte(seen)}
	if r, problems := cause.Explain(context.Background(), m, nil, file, cause.Options{}); r == nil || r.Verdict != result.AsItShould {
		t.Errorf("of the model as it should be: %+v %v", r, problems)
	}
	file.Text = []byte(seen + "\n  Scenario: Pitch\n    * with the pitch stick full back, the port elevon drops\n")
	r, problems := cause.Explain(context.Background(), m, nil, file, cause.Options{})
	if r == nil {
		t.Fatal(problems)
	}
	if !slices.ContainsFunc(r.Suspects, func(s result.Suspect) bool {
		return s.Text == list[wrong].Text || slices.Contains(s.Alike, list[wrong].Text)
	}) {
		t.Errorf("%s, and the truth is not among the suspects: %+v", r.Verdict, r.Wrong)
	}
}

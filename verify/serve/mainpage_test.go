package serve

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/sheet"
	"example.com/hingeline/verify/verifytest"
)

// unreversed is bracken-20 with the channel of its port aileron no longer reversed.
func unreversed(t testing.TB) Now {
	t.Helper()
	text := string(verifytest.ShippedText(t, "bracken-20"))
	wrong := strings.Replace(text, "    reversed: true\n", "", 1)
	if wrong == text {
		t.Fatal("no channel of bracken-20 is reversed")
	}
	now := checkedBy(t, verifytest.Model(t, "bracken-20.yaml", wrong), "bracken-20")
	now.Changed = []string{"bracken-20.yaml"}
	return now
}

// TestNumbersAreThoseOfTheBench holds the numbers on the page against those that are typed
// at the bench.
func TestNumbersAreThoseOfTheBench(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		l := newSubject(Now{Model: m}, 1).layout
		rest := m.Plan.Rest()
		walk := bench.NewWalk(m, bench.Chosen{Steps: []sight.Step{{From: rest, To: rest.Clone()}}, Watch: [][]int{nil}}, sight.Eye)
		for k, e := range walk.Steps[0].Expect {
			if got := l.Parts[e.Part].Number; got != k+1 {
				t.Errorf("%s: the %s is number %d on the page and %d at the bench", name, l.Parts[e.Part].Name, got, k+1)
			}
		}
		if len(walk.Steps[0].Expect) != len(l.Parts) {
			t.Errorf("%s: %d parts at the bench, %d on the page", name, len(walk.Steps[0].Expect), len(l.Parts))
		}
	}
}

// reaching are poses in which every control by itself is at either end, and all at rest.
func reaching(m *airframes.Model) []mixcore.Input {
	list := []mixcore.Input{m.Plan.Rest()}
	for control := range m.Setup.Controls {
		low, high := m.Setup.Controls[control].Range()
		for _, position := range []float64{low, high} {
			at := m.Plan.Rest()
			at.Position[control] = position
			list = append(list, at)
		}
	}
	return list
}

// numerals are where the numbers of parts are written.
func numerals(d *figure.Drawing) map[string]figure.Point {
	at := map[string]figure.Point{}
	for _, item := range d.Items {
		if text, ok := item.(figure.Text); ok {
			if _, err := strconv.Atoi(text.Words); err == nil {
				at[text.Words] = text.At
			}
		}
	}
	return at
}

func TestPicturesKeepTheirSizeAndTheirNumbers(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		s := newSubject(Now{Model: m}, 1)
		for _, view := range []func(*result.Picture, string) figure.Drawing{s.live.Behind, s.live.Above} {
			var first figure.Drawing
			for i, at := range reaching(m) {
				p := sheet.Stands(m, &at)
				seen := neared(m, &p)
				d := view(&seen, "the model")
				if i == 0 {
					first = d
					if got := len(numerals(&d)); got != len(m.Setup.Parts) {
						t.Fatalf("%s: %d numbers of %d parts", name, got, len(m.Setup.Parts))
					}
				}
				if d.Height != first.Height || d.Width != first.Width {
					t.Errorf("%s: the picture is %g by %g mm, at rest %g by %g mm", name, d.Width, d.Height, first.Width, first.Height)
				}
				for number, place := range numerals(&first) {
					if got := numerals(&d)[number]; got != place {
						t.Errorf("%s: number %s is at %v, at rest at %v", name, number, got, place)
					}
				}
			}
		}
	}
}

// leastSeen is how far a tail surface at full stick goes at least in the picture from
// behind, in millimetres of a picture 90 mm wide: on a phone 6 pixels.
const leastSeen = 1.4

func TestMovementOfTheTailCanBeSeen(t *testing.T) {
	for _, c := range []struct{ model, part string }{{"skerry", "port v-tail"}, {"skerry", "starboard v-tail"}, {"bracken-20", "elevator"}, {"bracken-20", "rudder"}} {
		m := verifytest.Shipped(t, c.model)
		s, part := newSubject(Now{Model: m}, 1), partCalled(m, c.part)
		most := 0.0
		for _, at := range reaching(m) {
			p := sheet.Stands(m, &at)
			d := s.live.Behind(&p, "")
			for _, run := range d.Of {
				if path, ok := d.Items[run.From+1].(figure.Path); ok && run.Part == part && len(path.Points) == 4 && path.Closed {
					a, b := path.Points[0], path.Points[3]
					most = max(most, math.Hypot(b.X-a.X, b.Y-a.Y))
				}
			}
		}
		if most < leastSeen {
			t.Errorf("%s: the %s is seen to move %.2f mm, wanted at least %g mm", c.model, c.part, most, leastSeen)
		}
	}
}

func TestMotorThatRunsIsSaidInWordsAndInThePicture(t *testing.T) {
	now := shipping(t, "bracken-20")
	s := newSubject(now, 1)
	for _, c := range []struct {
		live, throttle float64
		motors         []string
		drawn          string
	}{{0, 0, nil, ">stopped<"}, {0, 100, nil, ">stopped<"}, {1, 100, []string{"MOTOR RUNS at 100 %"}, ">RUNS 100 %<"}} {
		at := now.Model.Plan.Rest().Position
		at[namedControl(now.Model, "motor switch")], at[namedControl(now.Model, "throttle")] = c.live, c.throttle
		h := hand{At: at, Against: -1}
		pose, err := s.pose(&h)
		if err != nil {
			t.Fatal(err)
		}
		a := (&page{}).answerTo(s, &h, pose)
		if !slices.Equal(a.Motors, c.motors) {
			t.Errorf("motor switch %g, throttle %g: it is said %q, wanted %q", c.live, c.throttle, a.Motors, c.motors)
		}
		for _, view := range []string{"behind", "above"} {
			if !strings.Contains(a.Drawings[view], c.drawn) {
				t.Errorf("motor switch %g, throttle %g: %q is not in the picture from %s", c.live, c.throttle, c.drawn, view)
			}
		}
	}
}

// TestLostSignalIsSaidOnlyWhileItIsLost holds the words that tell why the model does not
// follow the controls.
func TestLostSignalIsSaidOnlyWhileItIsLost(t *testing.T) {
	now := shipping(t, "bracken-20")
	s := newSubject(now, 1)
	rest := now.Model.Plan.Rest().Position
	for _, c := range []struct {
		held places
		want string
	}{{nil, ""}, {rest, "SIGNAL LOST: what holds stays where it was; the controls move nothing"}} {
		h := hand{At: slices.Clone(rest), Held: c.held, Against: -1}
		h.At[namedControl(now.Model, "roll stick")] = 100
		pose, err := s.pose(&h)
		if err != nil {
			t.Fatal(err)
		}
		a := (&page{}).answerTo(s, &h, pose)
		if a.Lost != c.want {
			t.Errorf("held %v: it is said %q, wanted %q", c.held, a.Lost, c.want)
		}
		if still := a.Parts[partCalled(now.Model, "port aileron")].Way == ""; still != (c.want != "") {
			t.Errorf("held %v: the port aileron stays: %t", c.held, still)
		}
	}
}

func namedControl(m *airframes.Model, name string) int {
	return slices.IndexFunc(m.Setup.Controls, func(c mixcore.Control) bool { return c.Name == name })
}

func TestFailuresComeFirstAndNameTheirSurfaces(t *testing.T) {
	now := unreversed(t)
	s := newSubject(now, 1)
	c := s.checks
	if !strings.HasPrefix(c.Short, "DO NOT FLY: ") || !strings.Contains(c.Short, ": port aileron") {
		t.Errorf("the verdict in short is %q", c.Short)
	}
	if !strings.HasPrefix(c.First, "port aileron: WRONG WAY: wanted DOWN, it goes UP (") {
		t.Errorf("the first failure is %q", c.First)
	}
	if aileron, rudder := partCalled(now.Model, "port aileron"), partCalled(now.Model, "rudder"); len(c.Marks) != 3 || !c.Marks[slices.IndexFunc(c.Marks, func(k markSaid) bool { return k.Part == aileron })].Fails || slices.ContainsFunc(c.Marks, func(k markSaid) bool { return k.Part == rudder }) {
		t.Errorf("marked are %+v, wanted %d to fail, and nothing of %d", c.Marks, aileron, rudder)
	}
	failed := 0
	for _, stage := range c.Stages {
		for i, one := range stage.List {
			if !one.Passed {
				failed++
				if one.Of == "" {
					t.Errorf("%q fails and names no part", one.Sentence)
				}
				if i > 0 && stage.List[i-1].Passed {
					t.Errorf("%s: %q fails and comes after one that passes", stage.Name, one.Sentence)
				}
			}
		}
	}
	if _, want := now.Report.Counts(); failed != want {
		t.Errorf("%d failed checks are shown, wanted %d", failed, want)
	}
	at := now.Model.Plan.Rest()
	p := sheet.Stands(now.Model, &at)
	d := s.live.Behind(&p, "")
	var marks []string
	for _, item := range d.Items {
		if text, ok := item.(figure.Text); ok && (text.Words == "FAILS" || strings.HasPrefix(text.Words, "↔")) {
			marks = append(marks, text.Words)
		}
	}
	slices.Sort(marks)
	if want := []string{"FAILS", "↔ WITH 1", "↔ WITH 1"}; !slices.Equal(marks, want) {
		t.Errorf("marked in the picture is %q, wanted %q", marks, want)
	}
	if good := newSubject(shipping(t, "bracken-20"), 1).checks; good.First != "" || len(good.Marks) > 0 || !strings.Contains(good.Short, "PASSED") || !strings.Contains(good.Short, "still to be checked") {
		t.Errorf("where all passes: %q, %q, %v", good.Short, good.First, good.Marks)
	}
}

func TestPartsOfACheckAreThoseThatItNames(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	flap := &m.Setup.Parts[partCalled(m, "port flap")]
	channel := m.Setup.Channels[flap.Drives[0].Channel].Number
	for _, c := range []struct {
		check result.Check
		want  []string
	}{
		{result.Check{Subject: "port flap"}, []string{"port flap"}},
		{result.Check{Subject: "port flap servo"}, []string{"port flap"}},
		{result.Check{Subject: fmt.Sprintf("channel %d (whatever)", channel)}, []string{"port flap"}},
		{result.Check{Subject: fmt.Sprintf("channel %d0", channel)}, nil},
		{result.Check{Subject: "port flap and starboard flap"}, []string{"port flap", "starboard flap"}},
		{result.Check{Subject: "the model", Why: []result.Reason{{Of: "rudder"}}}, []string{"rudder"}},
		{result.Check{Subject: "the model"}, nil},
	} {
		var got []string
		a := askedBy(m, &c.check)
		for _, i := range a.named() {
			got = append(got, m.Setup.Parts[i].Name)
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%q names %q, wanted %q", c.check.Subject, got, c.want)
		}
	}
}

func TestOldPictureSaysFromWhenItIs(t *testing.T) {
	s := New(1, func(string) {})
	now := shipping(t, "bracken-20")
	for _, c := range []struct {
		since string
		old   bool
		want  string
	}{{"12:00:00", false, ""}, {"12:05:00", true, "12:00:00"}, {"12:06:00", true, "12:00:00"}, {"12:07:00", false, ""}, {"12:08:00", true, "12:07:00"}} {
		next := now
		next.Since, next.Old = c.since, c.old
		if c.old {
			next.Report = nil
		}
		s.Show(next)
		shown, _ := s.current()
		k := shown.checks
		if k.OldSince != c.want {
			t.Errorf("at %s: what is shown is said to be of %q, wanted %q", c.since, k.OldSince, c.want)
		}
		if c.old && !strings.HasPrefix(k.Short, "DO NOT FLY") {
			t.Errorf("of a file that cannot be used it is said %q", k.Short)
		}
	}
}

func TestNearlyNeutralIsSaidSo(t *testing.T) {
	elevator := &mixcore.Part{Name: "elevator", Motion: mixcore.UpDown}
	for _, c := range []struct {
		angle mixcore.Degrees
		short string
		way   string
	}{
		{0, "neutral", ""}, {0.04, "neutral", ""}, {0.1, "neutral (0.1° DOWN)", ""}, {-0.4, "neutral (0.4° UP)", ""},
		{0.5, "DOWN 0.5°", "DOWN"}, {-14.2, "UP 14.2°", "UP"},
	} {
		if got := standing(elevator, mixcore.PartOutput{Angle: c.angle}); got.Short != c.short || got.Way != c.way {
			t.Errorf("%g°: %+v, wanted %q", float64(c.angle), got, c.short)
		}
	}
}

func TestCopiedScenarioSaysThatItIsComputed(t *testing.T) {
	now := shipping(t, "bracken-20")
	s := newSubject(now, 1)
	h := hand{At: now.Model.Plan.Rest().Position, Against: -1, Sentence: true}
	pose, err := s.pose(&h)
	if err != nil {
		t.Fatal(err)
	}
	text := "Feature: f\n" + (&page{}).answerTo(s, &h, pose).Sentence.Text
	if !strings.Contains(text, "# As computed at this pose, not as wanted") {
		t.Errorf("it is copied without its warning:\n%s", text)
	}
	if report, wrong := verify.Check(now.Model, []script.File{{Name: "copied.feature", Text: []byte(text)}}, script.Selection{}); report == nil {
		t.Errorf("it cannot be used: %v", wrong)
	}
}

package verify

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
)

func moveTo(t *testing.T, m *airframes.Model, settings ...string) phrase.Pose {
	t.Helper()
	pose, err := MoveTo(m, phrase.RestPose(&m.Setup), settings)
	if err != nil {
		t.Fatal(err)
	}
	return pose
}

func TestMoveToUnderstandsSettings(t *testing.T) {
	m := load(t, fennel)
	for _, c := range []struct {
		settings []string
		want     []float64 // roll stick, roll trim, flap lever, rate switch
		lost     bool
	}{
		{nil, []float64{0, 0, 0, 0}, false},
		{[]string{"roll stick=full right"}, []float64{100, 0, 0, 0}, false},
		{[]string{"roll stick=100%"}, []float64{100, 0, 0, 0}, false},
		{[]string{"Roll  Stick = -30 %"}, []float64{-30, 0, 0, 0}, false},
		{[]string{"aileron stick=-7.5"}, []float64{-7.5, 0, 0, 0}, false},
		{[]string{"roll trim=50%"}, []float64{0, 50, 0, 0}, false},
		{[]string{"flap lever=landing", "rate switch=high"}, []float64{0, 0, 100, 1}, false},
		{[]string{"flap lever=35%"}, []float64{0, 0, 35, 0}, false},
		{[]string{"rates=high", "rates=low"}, []float64{0, 0, 0, 0}, false},
		{[]string{"rates are high and the flap lever is parked"}, []float64{0, 0, 0, 1}, false},
		{[]string{"rates=high", "the signal is lost"}, []float64{0, 0, 0, 1}, true},
	} {
		shown := moveTo(t, m, c.settings...).Shown()
		order := []string{"roll stick", "roll trim", "flap lever", "rate switch"}
		for i, name := range order {
			at := slices.IndexFunc(m.Setup.Controls, func(k mixcore.Control) bool { return k.Name == name })
			if at < 0 {
				t.Fatalf("no control is called %q", name)
			}
			if shown.Position[at] != c.want[i] {
				t.Errorf("%q: %s at %g, wanted %g", c.settings, name, shown.Position[at], c.want[i])
			}
		}
		if shown.SignalLost != c.lost {
			t.Errorf("%q: signal lost is %v, wanted %v", c.settings, shown.SignalLost, c.lost)
		}
	}
}

func TestMoveToRefusesWhatMakesNoSense(t *testing.T) {
	m := load(t, fennel)
	for _, setting := range []string{
		"", "=", "roll stick", "roll stick=", "rol stick=full right", "roll stick=130%", "roll stick=-100.1",
		"roll stick=NaN", "roll stick=0x10", "flap lever=-5%", "flap lever=takeoff", "rate switch=mid", "rate switch=1",
		"the flap drops", "with rates high, the flap drops", "when the signal is lost, the flap drops",
	} {
		pose, err := MoveTo(m, phrase.RestPose(&m.Setup), []string{setting})
		var wrong *PoseError
		if !errors.As(err, &wrong) || wrong.Message == "" || wrong.Setting != setting {
			t.Errorf("%q: got error %v and pose %+v, wanted a PoseError", setting, err, pose)
		}
	}
}

func TestShowPutsPartsInWalkingOrder(t *testing.T) {
	m := load(t, fennel)
	shown := Show(m, View{To: moveTo(t, m, "rates=high", "roll stick=full right")})
	var got []string
	for _, p := range shown.Parts {
		got = append(got, string(p.Stage)+": "+p.Name+" "+p.Position)
		if p.Name != "flap" && len(p.Chain) == 0 {
			t.Errorf("%s has no reason", p.Name)
		}
		for _, step := range p.Chain {
			if step.Place.Line > 0 && step.Place.Excerpt == "" {
				t.Errorf("%s: the line of %+v is missing", p.Name, step)
			}
		}
	}
	// 20° for 100 %, so 18° for 90 %; 2·40·sin(9°) = 12.5 mm, shown in whole ones.
	want := []string{
		"port wing: port aileron trailing edge DOWN 18° (13 mm)",
		"port wing: flap neutral",
		"starboard wing: starboard aileron trailing edge UP 18° (13 mm)",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwanted\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if pose := []string{"roll stick full right", "rate switch high"}; !slices.Equal(shown.Pose, pose) || shown.After != "" {
		t.Errorf("pose %q after %q, wanted %q at rest", shown.Pose, shown.After, pose)
	}
}

func TestShowNamesTheLimitsOfChannelsToo(t *testing.T) {
	m := load(t, `hingeline: 1
name: Sedge
controls: {roll stick: roll}
demands: {roll: roll stick}
channels:
  1: {mix: [{add: roll, share: 120%}], limit: 90%, sub_trim: 5%, pulse_us: {max: 1950}}
surfaces:
  port aileron: {channel: 1, stops: {down: 15°}, measured: {100%: 20° down}}
`)
	// 120 held to 90; + 5 = 95 %: 1975 µs; 1950 µs is 90 %: 18°
	want := []string{
		"beyond the channel's travel limit: 120 % asked of channel 1, 90 % came out",
		"beyond the pulse limits: 1975 µs asked of channel 1, 1950 µs came out",
		"at its stop: DOWN 18° asked, DOWN 15° came out",
	}
	shown := Show(m, View{To: moveTo(t, m, "roll stick=full right")})
	if got := shown.Parts[0].Limits; !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if got := Show(m, View{To: moveTo(t, m, "roll stick=50%")}).Parts[0].Limits; got != nil {
		t.Errorf("no limit bites at half stick, got %q", got)
	}
}

func TestShowOnTheWay(t *testing.T) {
	m := load(t, fennel)
	from := phrase.RestPose(&m.Setup)
	flap := slices.IndexFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Name == "flap" })
	shown := Show(m, View{From: &from, To: moveTo(t, m, "flap lever=landing"), After: 1, Parts: []int{flap}})
	if len(shown.Parts) != 1 || shown.Parts[0].Position != "trailing edge DOWN 20°" || shown.After != "1 s" {
		t.Errorf("after 1 of 2 s: %+v, wanted the flap half way to 40°", shown)
	}
}

func TestShowWithTheSignalLost(t *testing.T) {
	m := load(t, fennel)
	shown := Show(m, View{To: moveTo(t, m, "roll stick=full right", "the signal is lost", "roll stick=centred")})
	at := func(name string) string {
		i := slices.IndexFunc(shown.Parts, func(p result.ShownPart) bool { return p.Name == name })
		return shown.Parts[i].Position
	}
	// The aileron channels hold what they had, whatever the stick does since.
	if got, want := at("starboard aileron"), "trailing edge UP 10° (7 mm)"; got != want {
		t.Errorf("starboard aileron: %s, wanted %s", got, want)
	}
	if got, want := at("flap"), "trailing edge DOWN 8°"; got != want {
		t.Errorf("flap: %s, wanted %s", got, want)
	}
	if !slices.Contains(shown.Pose, "signal lost") {
		t.Errorf("pose is %q", shown.Pose)
	}
}

package sheet

import (
	"context"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/result"
	"pgregory.net/rapid"
)

// fatal is what testing and rapid have in common here.
type fatal interface {
	Helper()
	Fatalf(format string, args ...any)
}

// closeEnough is how near what was found is to the very end, in percent and in
// microseconds: travelClose, and the rounding of a pose in words.
const closeEnough = 0.02

// steepest is the most that a curve makes of a thousandth of a percent: more is a jump.
const steepest = 0.5

// spareSaid is what a channel has to spare in a pose in words, and how far it may be off as
// words give no more than thousandths of a percent of a control: closeEnough, and what one
// thousandth more or less makes where a curve is steeper than most.
func spareSaid(m *airframes.Model, channel int, in mixcore.Input) (said, off float64) {
	out := m.Plan.NewOutput()
	spare := func() float64 {
		m.Plan.Eval(&in, out)
		return float64(m.Setup.Channels[channel].Spare(out.Channels[channel].Sum))
	}
	said, off = spare(), closeEnough
	for i, at := range in.Position {
		c := &m.Setup.Controls[i]
		if c.Kind == mixcore.SwitchControl {
			continue
		}
		low, high := c.Range()
		for _, x := range []float64{at - 0.001, at + 0.001} {
			in.Position[i] = min(max(x, low), high)
			if change := abs(spare() - said); change < steepest {
				off = max(off, closeEnough+change)
			}
		}
		in.Position[i] = at
	}
	return said, off
}

// poseSaid is the pose that words name.
func poseSaid(t fatal, m *airframes.Model, words []string) mixcore.Input {
	t.Helper()
	v, pose := phrase.NewVocabulary(m), phrase.RestPose(&m.Setup)
	for _, said := range words {
		found := false
		for i := range m.Setup.Controls {
			name := m.Setup.Controls[i].Name
			if place, ok := strings.CutPrefix(said, name+" "); ok {
				meaning, problem := v.Parse(phrase.Given, "the "+name+" is "+strings.TrimSuffix(place, ")"))
				if cut := strings.Index(place, " ("); cut >= 0 { // a lever near a detent, said with both
					meaning, problem = v.Parse(phrase.Given, "the "+name+" is at "+place[:cut])
				}
				if problem == nil {
					pose, found = pose.Take(&m.Setup, &meaning.Settings), true
				}
			}
		}
		if !found {
			t.Fatalf("%q puts no control anywhere", said)
		}
	}
	return pose.Input()
}

// Whatever position is tried, no channel puts out less or more than its travel says, nor
// has it less to spare; and at the position that is named it has just that.
func holdsTravel(t fatal, m *airframes.Model, random *rand.Rand, samples int) (sure int) {
	t.Helper()
	list := travelOf(context.Background(), m)
	s, out, points := &m.Setup, m.Plan.NewOutput(), poses.New(m.Plan).Points
	in := m.Plan.Rest()
	for range samples {
		for i := range in.Position {
			switch low, high := s.Controls[i].Range(); {
			case s.Controls[i].Kind == mixcore.SwitchControl || random.IntN(3) > 0:
				in.Position[i] = points[i][random.IntN(len(points[i]))]
			default:
				in.Position[i] = low + (high-low)*random.Float64()
			}
		}
		m.Plan.Eval(&in, out)
		for i := range list {
			r, pulse := &list[i], float64(out.Channels[i].Pulse)
			spare := float64(s.Channels[i].Spare(out.Channels[i].Sum))
			if r.Sure && (pulse < r.Low-closeEnough || pulse > r.High+closeEnough || spare < r.Spare-closeEnough && r.Bites == "") {
				t.Fatalf("%s: %v µs with %v %% to spare at %v, outside of %+v", r.Channel, pulse, spare, in.Position, *r)
			}
		}
	}
	for i := range list {
		r := &list[i]
		if r.Sure {
			sure++
		}
		worst := poseSaid(t, m, r.Worst)
		m.Plan.Eval(&worst, out)
		said, off := spareSaid(m, i, worst)
		if bit := out.Channels[i].Limits&(mixcore.TravelLimit|mixcore.PulseLimit) != 0; bit != (r.Bites != "") || !bit && abs(said-r.Spare) > off {
			t.Fatalf("%s: %v %% to spare at %q, want %+v", r.Channel, said, r.Worst, *r)
		}
	}
	return sure
}

func TestTravelHoldsWhateverIsTried(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 1))
	for _, name := range airframes.Shipped() {
		m, _ := shipped(t, name)
		if sure := holdsTravel(t, m, random, 20_000); sure != len(m.Setup.Channels) {
			t.Errorf("%s: %d of %d channels are sure", name, sure, len(m.Setup.Channels))
		}
	}
	twelve, err := os.ReadFile("../../testdata/benchmark/twelve.yaml")
	if err != nil {
		t.Fatal(err)
	}
	m, _ := airframes.Load("twelve.yaml", twelve)
	if sure := holdsTravel(t, m, random, 20_000); sure != len(m.Setup.Channels) {
		t.Errorf("twelve: %d of %d channels are sure", sure, len(m.Setup.Channels))
	}
}

func TestTravelOfDrawnModelsHoldsWhateverIsTried(t *testing.T) {
	channels, sure := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		m, problems := airframes.Load("drawn.yaml", airframestest.Generate(t))
		if m == nil {
			t.Fatalf("%+v", problems)
		}
		channels += len(m.Setup.Channels)
		sure += holdsTravel(t, m, rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0)), 300)
	})
	if sure*10 < channels*9 {
		t.Errorf("%d of %d channels are sure", sure, channels)
	}
}

// travelled has an aileron whose roll and trim come to 110 % on high rates, one whose
// end point and sub-trim bring its pulse to its limit, and one that has 20 % left.
const travelled = `hingeline: 1
name: Travelled
controls:
  roll stick: {axis: roll, trim: 20%}
  flap lever: {lever: {up: 0, down: 100}}
  rate switch: [low, high]
demands:
  roll: {from: roll stick, rates: [{when: rate switch is high, throw: 90%}, {throw: 50%}]}
  flap: {from: flap lever, curve: {0%: 0%, 40%: 100%, 100%: 20%}}
channels:
  1: {name: port aileron, mix: roll}
  2: {mix: roll, sub_trim: 60%, reversed: true, pulse_us: {min: 900, max: 2100}}
  3: {name: flap, mix: [{add: flap, share: 80%}]}
surfaces:
  port aileron: {channel: 1, measured: {100%: 20° down}}
  starboard aileron: {channel: 2, measured: {-120%: 24° down, 0%: 0°, 120%: 24° up}}
  flap: {channel: 3, measured: {100%: 40° down}}
`

func TestTravelSaysWhichLimitBites(t *testing.T) {
	m, problems := airframes.Load("travelled.yaml", []byte(travelled))
	if m == nil {
		t.Fatal(problems)
	}
	list := travelOf(context.Background(), m)
	for i, want := range []result.Travel{
		{Channel: "channel 1 (port aileron)", Low: 1000, High: 2000, Bites: "its travel limit of 100 %: the mix comes to"},
		{Channel: "channel 2", Low: 1300, High: 2100, Bites: "its "},
		{Channel: "channel 3 (flap)", Low: 1500, High: 1900, Spare: 20},
	} {
		got := list[i]
		if got.Channel != want.Channel || !got.Sure || abs(got.Low-want.Low) > closeEnough || abs(got.High-want.High) > closeEnough ||
			abs(got.Spare-want.Spare) > closeEnough || !strings.HasPrefix(got.Bites, want.Bites) || (want.Bites == "") != (got.Bites == "") {
			t.Errorf("got  %+v\nwant %+v", got, want)
		}
	}
	// The flap is furthest at 40 % of its lever, not at its end.
	if w := list[2].Worst; len(w) != 1 || w[0] != "flap lever 40 %" {
		t.Errorf("got %q", w)
	}
}

// edged has the least to spare just within the stretch of a detent whose ends binary
// fractions do not meet, and a lever that is furthest a hair above a threshold.
const edged = `hingeline: 1
name: Edged
controls:
  pitch stick: {axis: pitch}
  flap lever: {lever: {up: 0, slow: 8.999, down: 100}}
demands:
  pitch: pitch stick
  flap: {from: flap lever, curve: {0%: 90%, 10%: -5%, 100%: 0%}}
channels:
  1: {name: elevator, mix: [{add: pitch, share: 50%}, {add: flap, share: 20%, when: flap lever is slow}]}
  2: {name: flap, mix: [{add: flap, when: flap lever is above 3%}]}
surfaces:
  elevator: {channel: 1, measured: {100%: 20° down}}
  flap: {channel: 2, measured: {100%: 40° down}}
`

// The position that is named has what is told of it, also where the last place of a
// number decides.
func TestTravelNamesAPositionThatHasIt(t *testing.T) {
	m, problems := airframes.Load("edged.yaml", []byte(edged))
	if m == nil {
		t.Fatal(problems)
	}
	if sure := holdsTravel(t, m, rand.New(rand.NewPCG(8, 999)), 20_000); sure != 2 {
		t.Errorf("%d of 2 channels are sure", sure)
	}
	list := travelOf(context.Background(), m)
	if got, want := strings.Join(list[0].Worst, ", "), "pitch stick full back, flap lever 7.999 % (slow)"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := strings.Join(list[1].Worst, ", "), "flap lever 3.001 %"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func abs(x float64) float64 { return max(x, -x) }

// A search that is stopped says so, and what it has found by then was reached.
func TestTravelIsNotSureWhenStopped(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	m, _ := shipped(t, "skerry")
	for _, r := range travelOf(ctx, m) {
		if r.Low < r.Min || r.High > r.Max || r.Low > r.High {
			t.Errorf("%+v", r)
		}
	}
}

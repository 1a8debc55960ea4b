package phrase

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/chain"
)

// layout is a set-up by what its surfaces do for full roll, pitch and yaw to
// the plus side, in degrees (percent, for motors and extras), each on its own
// channel.
type layout struct {
	name  string
	parts []layoutPart
}

type layoutPart struct {
	kind             mixcore.Kind
	side             mixcore.Side
	roll, pitch, yaw float64
	tilt             mixcore.Degrees // 0 is as usual for the kind
}

const (
	port, star = mixcore.Port, mixcore.Starboard
	mid        = mixcore.Centre
)

// layouts: right roll lifts the starboard aileron and drops the port one (AOPA
// Air Safety Institute, July 2024, mirrored from left); stick back lifts the
// elevator, right rudder moves it right (model-flying club pre-flight lists,
// LMMAC items 11–14 and WMAC, mirrored). All others are common practice, no
// source.
var layouts = []layout{
	{"conventional", []layoutPart{{kind: "aileron", side: port, roll: 15}, {kind: "aileron", side: star, roll: -15},
		{kind: "elevator", side: mid, pitch: -20}, {kind: "rudder", side: mid, yaw: -25}}},
	{"full-span roll", []layoutPart{{kind: "aileron", side: port, roll: 15}, {kind: "flap", side: port, roll: 8},
		{kind: "flap", side: star, roll: -8}, {kind: "aileron", side: star, roll: -15}, {kind: "elevator", side: mid, pitch: -20}, {kind: "rudder", side: mid, yaw: -25}}},
	{"v-tail and flaperons", []layoutPart{{kind: "flaperon", side: port, roll: 10}, {kind: "flaperon", side: star, roll: -10},
		{kind: "v-tail", side: port, pitch: -15, yaw: -15}, {kind: "v-tail", side: star, pitch: -15, yaw: 15}}},
	{"inverted v-tail", []layoutPart{{kind: "aileron", side: port, roll: 15}, {kind: "aileron", side: star, roll: -15},
		{kind: "v-tail", side: port, pitch: -15, yaw: 15, tilt: -38}, {kind: "v-tail", side: star, pitch: -15, yaw: -15, tilt: -38}}},
	{"delta", []layoutPart{{kind: "elevon", side: port, roll: 12, pitch: -12}, {kind: "elevon", side: star, roll: -12, pitch: -12}, {kind: "rudder", side: mid, yaw: -25}}},
	{"flying wing with drag rudders", []layoutPart{{kind: "elevon", side: port, roll: 12, pitch: -12}, {kind: "elevon", side: star, roll: -12, pitch: -12},
		{kind: "drag rudder", side: port, yaw: -45}, {kind: "drag rudder", side: star, yaw: 45}}},
	{"canard", []layoutPart{{kind: "aileron", side: port, roll: 15}, {kind: "aileron", side: star, roll: -15}, {kind: "canard", side: mid, pitch: 15}, {kind: "rudder", side: mid, yaw: -25}}},
	{"tailerons", []layoutPart{{kind: "taileron", side: port, roll: 8, pitch: -8}, {kind: "taileron", side: star, roll: -8, pitch: -8}, {kind: "rudder", side: mid, yaw: -25}}},
	{"twin", []layoutPart{{kind: "aileron", side: port, roll: 15}, {kind: "aileron", side: star, roll: -15}, {kind: "elevator", side: mid, pitch: -20},
		{kind: "motor", side: port, yaw: 30}, {kind: "motor", side: star, yaw: -30}}},
}

// setup makes a layout's set-up. Drag rudders and motors stand half way, so that
// they can move both ways.
func (l layout) setup() mixcore.Setup {
	s := mixcore.Setup{Name: l.name}
	for i, axis := range axes {
		word := turnWords[axis].do
		s.Controls = append(s.Controls, mixcore.Control{Name: word + " stick", Kind: mixcore.AxisControl, Axis: axis})
		s.Demands = append(s.Demands, mixcore.Demand{Name: word, From: i, Rates: []mixcore.Rate{{Throw: mixcore.Both(100)}}, Trim: mixcore.NoTrim})
	}
	free := mixcore.Degrees(math.Inf(1))
	for i, lp := range l.parts {
		info, _ := lp.kind.Info()
		c := mixcore.Channel{Number: i + 1, Limit: 100, EndPoints: mixcore.Both(100), PulseMin: 1000, PulseMax: 2000, Failsafe: mixcore.Failsafe{Hold: true}}
		scale := 1.0
		if info.Motion == mixcore.Power || info.Motion == mixcore.OutIn {
			scale = 2 // from −100 … +100 % to 0 … 100 %
		}
		for d, by := range []float64{lp.roll, lp.pitch, lp.yaw} {
			if by != 0 {
				c.Mix = append(c.Mix, mixcore.MixLine{Op: mixcore.Add, Demand: d, Share: mixcore.Both(mixcore.Percent(by * scale))})
			}
		}
		p := mixcore.Part{Name: strings.TrimSpace([]string{"", "port ", "starboard "}[lp.side] + string(lp.kind)), Kind: lp.kind, Side: lp.side, Motion: info.Motion,
			Drives: []mixcore.Drive{{Channel: i, Servo: mixcore.Servo{Swing: 45, Max: free}}}, Stops: mixcore.Stops{Plus: free, Minus: free},
			Place: mixcore.Placement{Tilt: lp.tilt, TiltSaid: lp.tilt != 0}}
		switch info.Motion {
		case mixcore.Power:
			p.Motor = &mixcore.Motor{Idle: 1000, Full: 2000}
		case mixcore.UpDown, mixcore.LeftRight:
			p.Drives[0].Table = []mixcore.Point{{X: -100, Y: -100}, {X: 100, Y: 100}}
		}
		s.Channels, s.Parts = append(s.Channels, c), append(s.Parts, p)
	}
	return s
}

// Senses: control right, right wing down; rearward, nose up; right pedal, nose
// right (14 CFR 23.779; FAA Airplane Flying Handbook, ch. 3, p. 3-2).
var senses = []struct{ when, right, wrong, still string }{
	{"the roll stick is full right", "the model rolls right", "the model rolls left", "the model does not roll"},
	{"the roll stick is half left", "the model rolls left", "the model rolls right", "the model does not roll"},
	{"the pitch stick is full back", "the model pitches up", "the model pitches down", "the model does not pitch"},
	{"the pitch stick is half forward", "the model pitches down", "the model pitches up", "the model does not pitch"},
	{"the yaw stick is full right", "the model yaws right", "the model yaws left", "the model does not yaw"},
	{"the yaw stick is half left", "the model yaws left", "the model yaws right", "the model does not yaw"},
}

func TestSentencesHaveTheSenseOfEveryLayout(t *testing.T) {
	for _, l := range layouts {
		for _, s := range senses {
			if len(senseParts(l, s.when)) == 0 {
				continue
			}
			m := compiled(t, l.setup())
			if list := verdicts(t, m, scene{"", s.when}, s.right); !passes(list) {
				t.Errorf("%s: when %s, %s: %+v", l.name, s.when, s.right, list)
			}
			for _, text := range []string{s.wrong, s.still} {
				if list := verdicts(t, m, scene{"", s.when}, text); passes(list) {
					t.Errorf("%s: when %s, %s passes: %+v", l.name, s.when, text, list)
				}
			}
		}
	}
}

// A layout whose surfaces for one axis are all reversed turns the wrong way; the
// failure names one of them to look at, and says which way they turn it.
func TestSentencesFailOnEveryReversedLayout(t *testing.T) {
	for _, l := range layouts {
		for _, s := range senses {
			moving := senseParts(l, s.when)
			if len(moving) == 0 {
				continue
			}
			setup := l.setup()
			reverse(moving...)(&setup)
			got := verdicts(t, compiled(t, setup), scene{"", s.when}, s.right)[0]
			if got.Passed || len(got.Explain) == 0 || len(got.Explain) > MostExplained {
				t.Fatalf("%s reversed: when %s: %+v", l.name, s.when, got)
			}
			for _, e := range got.Explain {
				if !slices.Contains(moving, e.Part) || e.Doubt != chain.Direction || !strings.Contains(got.Got, setup.Parts[e.Part].Name) {
					t.Errorf("%s reversed: when %s: explains %+v of %q", l.name, s.when, e, got.Got)
				}
			}
		}
	}
}

// senseParts are the parts that move for the control named.
func senseParts(l layout, when string) (parts []int) {
	for i, p := range l.parts {
		if by := map[byte]float64{'r': p.roll, 'p': p.pitch, 'y': p.yaw}[when[len("the ")]]; by != 0 {
			parts = append(parts, i)
		}
	}
	return parts
}

func compiled(t testing.TB, s mixcore.Setup) *airframes.Model {
	t.Helper()
	return exampleModel(t, func(to *mixcore.Setup) { *to = s })
}

// A spoiler takes lift away on its side: the starboard one rolls right. Common
// practice, no source.
func TestSpoilersRollTowardsTheirSide(t *testing.T) {
	l := layout{"spoilers", []layoutPart{{kind: "spoiler", side: port}, {kind: "spoiler", side: star}}}
	s := l.setup()
	for i := range s.Channels {
		s.Channels[i].Mix = []mixcore.MixLine{{Op: mixcore.Add, Demand: 0, Share: mixcore.Sides{Plus: -30, Minus: 0}}}
	}
	s.Channels[0].Mix[0].Share = mixcore.Sides{Plus: 0, Minus: 30}
	m := compiled(t, s)
	for when, text := range map[string]string{"right roll": "the model rolls right and yaws right", "left roll": "the model rolls left and does not yaw right"} {
		text, _, _ = strings.Cut(text, " and does")
		if list := verdicts(t, m, scene{"", when}, text); !passes(list) {
			t.Errorf("%s: %s: %+v", when, text, list)
		}
	}
	if list := verdicts(t, m, scene{"", "right roll"}, "adverse yaw does not grow"); passes(list) || !strings.Contains(list[0].Got, "shows nothing") {
		t.Errorf("adverse yaw of spoilers alone: %+v", list)
	}
}

func TestJudgeSaysWhatTheModelDoesAndWhatDoesIt(t *testing.T) {
	portReversed := exampleModel(t, reverse(portAileronChannel))
	bothReversed := exampleModel(t, reverse(portAileronChannel, starboardAileronChannel))
	placed := exampleModel(t, func(s *mixcore.Setup) {
		for _, i := range []int{portFlap, starboardFlap} {
			s.Parts[i].Place = mixcore.Placement{Aft: 100, AftSaid: true}
		}
	})
	noElevator := exampleModel(t, dead(elevatorChannel))
	good := exampleModel(t, nil)
	type expl = []Explained
	for _, c := range []struct {
		name string
		m    *airframes.Model
		scene
		text        string
		passed      bool
		wanted, got string
		explain     []Explained
	}{
		{"right", good, scene{"rates low", fullRight}, "the model rolls right", true, "rolls RIGHT",
			"rolls RIGHT: starboard aileron and port aileron roll it right", nil},
		{"both ailerons reversed", bothReversed, scene{"rates low", fullRight}, "the model rolls right", false, "rolls RIGHT",
			"rolls LEFT: starboard aileron and port aileron roll it left", expl{{Part: starboardAileron, Doubt: chain.Direction}, {Part: portAileron, Doubt: chain.Direction}}},
		{"reversed, with flaps", bothReversed, scene{"rates high", fullRight}, "the model rolls right after 3 s", false, "rolls RIGHT after 3 s",
			"after 3 s: rolls LEFT: port flap and starboard flap roll it right; starboard aileron and port aileron roll it left", expl{{Part: starboardAileron, Doubt: chain.Direction}, {Part: portAileron, Doubt: chain.Direction}}},
		{"one reversed, not enough to turn it", portReversed, scene{"rates low", "the roll stick is full left"}, "the model rolls left", false, "rolls LEFT",
			"rolls RIGHT: port aileron rolls it right; starboard aileron rolls it left", expl{{Part: portAileron, Doubt: chain.Direction}}},
		{"nothing acts", noElevator, scene{"", "the pitch stick is full back"}, "the model pitches up", false, "pitches UP",
			"does not pitch", expl{{Part: elevator, Doubt: chain.Stuck}}},
		{"what should not", good, scene{"", "the pitch stick is half back"}, "the model does not pitch", false, "does not pitch",
			"pitches UP: elevator pitches it up", expl{{Part: elevator, Doubt: chain.Astir}}},
		{"flaps not placed", good, scene{"", "landing flap"}, "the model does not pitch", false, "does not pitch",
			"cannot be told: the port flap and starboard flap move, and with the downwash at the tail may pitch it either way", expl{{Part: portFlap}, {Part: starboardFlap}}},
		{"flaps not placed, either way", good, scene{"", "landing flap"}, "the model pitches up", false, "pitches UP",
			"cannot be told: the port flap and starboard flap move, and with the downwash at the tail may pitch it either way", expl{{Part: portFlap}, {Part: starboardFlap}}},
		{"flaps placed", placed, scene{"", "landing flap"}, "the model pitches down", false, "pitches DOWN",
			"cannot be told: the port flap and starboard flap move, and with the downwash at the tail may pitch it either way", expl{{Part: portFlap}, {Part: starboardFlap}}},
		{"flaps cancel out", good, scene{"", "landing flap"}, "the model does not roll", true, "does not roll",
			"does not roll: port flap rolls it right; starboard flap rolls it left", nil},
		{"adverse yaw", good, scene{"rates low", fullRight}, "adverse yaw does not grow", true, "adverse yaw no more than with equal up and down throws",
			"18.4 % less adverse yaw than with equal throws (estimate)", nil},
		{"adverse yaw grows", bothReversed, scene{"rates low", fullRight}, "adverse yaw does not grow", false, "adverse yaw no more than with equal up and down throws",
			"18.4 % more adverse yaw than with equal throws (estimate)", expl{{Part: starboardAileron, Doubt: chain.Amount}}},
		{"adverse rudder", exampleModel(t, func(s *mixcore.Setup) {
			s.Channels[yawChannel].Mix = append(s.Channels[yawChannel].Mix, mixcore.MixLine{Op: mixcore.Add, Demand: 0, Share: mixcore.Both(-40)})
		}), scene{"rates low", fullRight}, "adverse yaw does not grow", false, "adverse yaw no more than with equal up and down throws",
			"rolls RIGHT, and the rudder yaws it against that", expl{{Part: rudder, Doubt: chain.Direction}}},
		{"no roll", good, scene{"", "landing flap"}, "adverse yaw does not grow", false, "adverse yaw no more than with equal up and down throws",
			"no surface of the wing rolls the model, so this shows nothing", nil},
	} {
		got := verdicts(t, c.m, c.scene, c.text)[0]
		if got.Passed != c.passed || got.Wanted != c.wanted || got.Got != c.got || !slices.Equal(got.Explain, c.explain) || got.Subject != TheModel {
			t.Errorf("%s: %q of %s: got %v, wanted %q, got %q, explained %v;\nwant %v, %q, %q, %v", c.name, c.text, got.Subject,
				got.Passed, got.Wanted, got.Got, got.Explain, c.passed, c.wanted, c.got, c.explain)
		}
	}
}

func TestJudgeSaysSharesAndTorquesAsEstimates(t *testing.T) {
	helping := func(percent mixcore.Percent) *airframes.Model {
		return exampleModel(t, func(s *mixcore.Setup) {
			s.Channels[portFlapChannel].Mix[1].Share = mixcore.Both(percent)
			s.Channels[starboardFlapChannel].Mix[1].Share = mixcore.Both(-percent)
		})
	}
	good := exampleModel(t, nil)
	for _, c := range []struct {
		m *airframes.Model
		scene
		text    string
		passed  bool
		subject string
		got     string
	}{
		{good, scene{"rates high", fullRight}, "the flaps add at least 25 % to the roll", true, "port flap and starboard flap", "add 32.1 % to the roll (estimate)"},
		{good, scene{"rates high", fullRight}, "the port flap adds between 10 % and 20 % to the roll", true, "port flap", "adds 13.8 % to the roll (estimate)"},
		{helping(-20), scene{"rates high", fullRight}, "the flaps add at most 50 % to the roll", false, "port flap and starboard flap", "take 32.1 % from the roll (estimate)"},
		{good, scene{"rates low", fullRight}, "the flaps add at least 1 % to the roll", false, "port flap and starboard flap", "add 0 % to the roll (estimate)"},
		{good, scene{"", "landing flap"}, "the flaps add at least 1 % to the roll", false, "port flap and starboard flap", "nothing else rolls the model, so there is nothing to add to"},
		{good, scene{"landing flap", ""}, "the port flap servo has 3 times the torque it needs at 30 m/s", false, "port flap servo", ""},
		{good, scene{"parked flap", ""}, "the port flap servo has enough torque at 30 m/s", false, "port flap servo", "it stands at neutral, where the air hardly loads it, so this shows nothing"},
		{exampleModel(t, func(s *mixcore.Setup) { s.Parts[portFlap].Stops.Plus = 30 }), scene{"landing flap", ""}, "the port flap servo has enough torque at 3 m/s", false, "port flap servo", "driven against its stop, where it needs all the torque it has"},
	} {
		got := verdicts(t, c.m, c.scene, c.text)[0]
		if got.Passed != c.passed || got.Subject != c.subject || c.got != "" && got.Got != c.got {
			t.Errorf("%q: got %+v; want %v of %s: %q", c.text, got, c.passed, c.subject, c.got)
		}
	}
}

// The share is that of the helix angles, and the torque that of the hinge
// moment, worked out here from package effect's own formulas by hand.
func TestShareAndTorqueAreThoseOfTheFormulas(t *testing.T) {
	m := exampleModel(t, nil)
	w := effect.Wing{Span: 1900, RootChord: 260, TipChord: 200}
	roll := func(from, to, degrees float64) float64 {
		part := 40 / w.ChordAt((from+to)/2)
		return w.StripRoll(1, effect.ThinFlap(part).Effectiveness, from, to) / 2 * degrees
	}
	want := 2 * roll(120, 540, 10) / (roll(560, 940, 12) + roll(560, 940, 20)) * 100
	got := verdicts(t, m, scene{"rates high", fullRight}, "the flaps add 32.1 % ± 0.1 % to the roll")[0]
	if math.Abs(want-32.1) > 0.1 || !got.Passed {
		t.Errorf("share: formulas say %v, sentence %+v", want, got)
	}
	moment := effect.HingeMoment(0.04, 0.42, 40/w.ChordAt(330), 30, 40)
	gear := 50.0 / 45
	margin := 60 / (moment.High * gear * 100)
	for _, c := range []struct {
		times float64
		want  bool
	}{{margin - 0.001, true}, {margin + 0.001, false}} {
		v := NewVocabulary(m)
		o := outcomesOf(t, v, "the port flap servo has twice the torque it needs at 30 m/s")[0]
		o.Amount.Value = c.times
		if got := v.Judge(&o, Situation{Now: Pose{Position: poseAt(m, flapLever, 100)}})[0]; got.Passed != c.want {
			t.Errorf("%v times, where %v are there: %+v", c.times, margin, got)
		}
	}
}

func poseAt(m *airframes.Model, control int, position float64) []float64 {
	p := RestPose(&m.Setup).Position
	p[control] = position
	return p
}

// Of rolling right, rolling left and not rolling a movement does at most one, and
// back is the opposite of there.
func TestTheModelDoesAtMostOneOfThree(t *testing.T) {
	m := exampleModel(t, nil)
	v := NewVocabulary(m)
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawPose(t, &m.Setup, "before"), drawPose(t, &m.Setup, "now")
		there, back := Situation{Before: a, Now: b, Moved: true}, Situation{Before: b, Now: a, Moved: true}
		for _, third := range [][3]string{{"rolls right", "rolls left", "does not roll"}, {"yaws right", "yaws left", "does not yaw"}, {"pitches up", "pitches down", "does not pitch"}} {
			holding := 0
			for _, verb := range third {
				if judgeOne(t, v, there, "the model "+verb) {
					holding++
				}
			}
			if holding > 1 {
				t.Fatalf("%d of %v hold", holding, third)
			}
			if judgeOne(t, v, there, "the model "+third[0]) != judgeOne(t, v, back, "the model "+third[1]) {
				t.Fatalf("back is not the opposite of there: %v", third)
			}
		}
	})
}

func TestMovedControlsAreThoseThatStandElsewhere(t *testing.T) {
	m := exampleModel(t, nil)
	at := Situation{Before: RestPose(&m.Setup), Now: RestPose(&m.Setup), Moved: true}
	at.Now.Position[flapLever], at.Now.Position[rollStick] = 100, -20
	if got := at.MovedControls(); !slices.Equal(got, []int{rollStick, flapLever}) {
		t.Errorf("got %v", got)
	}
	at.Moved = false
	if got := at.MovedControls(); got != nil {
		t.Errorf("nothing was moved: got %v", got)
	}
}

// What is neither a turn nor none passes neither sentence, and the report says why.
func TestSlightAndUnsureTurnsAreSaid(t *testing.T) {
	m := exampleModel(t, nil)
	for _, c := range []struct {
		scene
		text, got string
	}{
		{scene{"rates high", fullRight}, "the model does not pitch", "pitch a little"},
		{scene{"rates high", fullRight}, "the model pitches up", "pitch a little"},
		{scene{"", "the yaw stick is full right"}, "the model does not roll", "by its dihedral and sweep may roll it either way"},
		{scene{"", "the yaw stick is full right"}, "the model rolls right", "by its dihedral and sweep may roll it either way"},
	} {
		v := verdicts(t, m, c.scene, c.text)[0]
		if v.Passed || !strings.Contains(v.Got, c.got) || len(v.Explain) == 0 {
			t.Errorf("%q: passed %v, got %q, explained by %+v; want %q", c.text, v.Passed, v.Got, v.Explain, c.got)
		}
	}
}

package phrase

import (
	"slices"
	"testing"

	"example.com/hingeline/mixcore"
)

// Ways to break a set-up, one thing at a time.

func reverse(channels ...int) func(*mixcore.Setup) {
	return func(s *mixcore.Setup) {
		for _, c := range channels {
			s.Channels[c].Reversed = !s.Channels[c].Reversed
		}
	}
}

func dead(channel int) func(*mixcore.Setup) {
	return func(s *mixcore.Setup) { s.Channels[channel].Mix = nil }
}

func weak(channel int) func(*mixcore.Setup) {
	return func(s *mixcore.Setup) { s.Channels[channel].EndPoints = mixcore.Both(60) }
}

func subTrim(channel int, by mixcore.Percent) func(*mixcore.Setup) {
	return func(s *mixcore.Setup) { s.Channels[channel].SubTrim = by }
}

func slower(channel int) func(*mixcore.Setup) {
	return func(s *mixcore.Setup) { s.Channels[channel].Slow = 6 }
}

// Demands of the example model.
const (
	rollDemand = iota
	pitchDemand
	yawDemand
	throttleDemand
	flapDemand
	gearDemand
)

// also adds a share of a demand to a channel, behind all else.
func also(channel, demand int, share mixcore.Percent) func(*mixcore.Setup) {
	return func(s *mixcore.Setup) {
		s.Channels[channel].Mix = append(s.Channels[channel].Mix, mixcore.MixLine{Op: mixcore.Add, Demand: demand, Share: mixcore.Both(share)})
	}
}

// hooked takes the starboard aileron back by a little near full right stick.
func hooked(s *mixcore.Setup) {
	far := &mixcore.Condition{Op: mixcore.Above, Control: rollStick, Low: 90}
	s.Channels[starboardAileronChannel].Mix = append(s.Channels[starboardAileronChannel].Mix, mixcore.MixLine{Op: mixcore.Fixed, Value: 2, When: far})
}

// longThrow makes the elevator go down to 26°.
func longThrow(s *mixcore.Setup) {
	for i := range s.Parts[elevator].Drives {
		s.Parts[elevator].Drives[i].Table = []mixcore.Point{{X: -100, Y: 26}, {X: 0, Y: 0}, {X: 100, Y: -25}}
	}
}

// noSafety leaves the motor switch and the failsafe out.
func noSafety(s *mixcore.Setup) {
	s.Channels[motorChannel].Mix = s.Channels[motorChannel].Mix[:1]
	s.Channels[motorChannel].Failsafe = mixcore.Failsafe{Hold: true}
}

// neverRuns keeps the motor stopped.
func neverRuns(s *mixcore.Setup) { s.Channels[motorChannel].Mix[1].When = nil }

// noStops takes the elevator's stops away to where it never comes.
func noStops(s *mixcore.Setup) { s.Parts[elevator].Stops = mixcore.Stops{Plus: 60, Minus: 60} }

const fullRight = "the roll stick is full right"

// forms and the faults they must catch, by Sentence.Name.
var trials = map[string]struct {
	scene
	faults []func(*mixcore.Setup)
}{
	"rise and drop":   {scene{"rates high", fullRight}, []func(*mixcore.Setup){reverse(starboardAileronChannel), dead(starboardAileronChannel), weak(starboardAileronChannel)}},
	"left and right":  {scene{"", "the yaw stick is full right"}, []func(*mixcore.Setup){reverse(yawChannel), dead(yawChannel), weak(yawChannel)}},
	"motor power":     {scene{"live motor", "throttle 50%"}, []func(*mixcore.Setup){reverse(motorChannel), dead(motorChannel), weak(motorChannel)}},
	"out and in":      {scene{"gear wheels up", "gear wheels down"}, []func(*mixcore.Setup){reverse(gearChannel), dead(gearChannel)}},
	"still":           {scene{"rates low", fullRight}, []func(*mixcore.Setup){func(s *mixcore.Setup) { s.Channels[portFlapChannel].Mix[1].When = nil }}},
	"amount at least": {scene{"", "the flap lever is at landing"}, []func(*mixcore.Setup){reverse(portFlapChannel), dead(portFlapChannel), weak(portFlapChannel)}},
	"amount between":  {scene{"", "landing flap"}, []func(*mixcore.Setup){reverse(portFlapChannel), dead(portFlapChannel), weak(portFlapChannel), func(s *mixcore.Setup) { s.Channels[portFlapChannel].Mix[0].Share = mixcore.Both(95) }}},
	"amount in mm":    {scene{"rates high", fullRight}, []func(*mixcore.Setup){reverse(starboardAileronChannel), dead(starboardAileronChannel), weak(starboardAileronChannel)}},
	"groups":          {scene{"", "landing flap"}, []func(*mixcore.Setup){reverse(portFlapChannel), reverse(starboardFlapChannel), dead(starboardFlapChannel)}},
	"several":         {scene{"rates high", fullRight}, []func(*mixcore.Setup){reverse(portAileronChannel), reverse(starboardAileronChannel), weak(starboardAileronChannel)}},
	"neutral":         {scene{"", ""}, []func(*mixcore.Setup){subTrim(elevatorChannel, 4), subTrim(elevatorChannel, -4)}},
	"position":        {scene{"landing flap", ""}, []func(*mixcore.Setup){reverse(portFlapChannel), dead(portFlapChannel), weak(portFlapChannel)}},
	"position in mm":  {scene{"rates high and full right roll", ""}, []func(*mixcore.Setup){reverse(portAileronChannel), dead(portAileronChannel), weak(portAileronChannel)}},
	"power":           {scene{"motor live, throttle 50%", ""}, []func(*mixcore.Setup){subTrim(motorChannel, 5), subTrim(motorChannel, -5)}},
	"stopped":         {scene{"motor safe, throttle full", ""}, []func(*mixcore.Setup){noSafety}},
	"runs":            {scene{"motor live, throttle 5%", ""}, []func(*mixcore.Setup){subTrim(motorChannel, -7)}},
	"stops":           {scene{"motor live, throttle full", "the signal is lost"}, []func(*mixcore.Setup){noSafety, neverRuns}},
	"stays stopped":   {scene{"motor safe", "full throttle"}, []func(*mixcore.Setup){noSafety}},
	"out or in":       {scene{"gear wheels up", ""}, []func(*mixcore.Setup){reverse(gearChannel), dead(gearChannel)}},
	"pulse":           {scene{"", ""}, []func(*mixcore.Setup){subTrim(elevatorChannel, 2), subTrim(elevatorChannel, -2)}},
	"output":          {scene{"landing flap", ""}, []func(*mixcore.Setup){reverse(starboardFlapChannel), weak(starboardFlapChannel)}},
	"together":        {scene{"", "landing flap"}, []func(*mixcore.Setup){reverse(portFlapChannel), dead(portFlapChannel), dead(starboardFlapChannel)}},
	"opposite":        {scene{"", "right roll"}, []func(*mixcore.Setup){reverse(portAileronChannel), dead(portAileronChannel), dead(starboardAileronChannel)}},
	"as far":          {scene{"", "landing flap"}, []func(*mixcore.Setup){weak(portFlapChannel), weak(starboardFlapChannel), dead(portFlapChannel)}},
	"less":            {scene{"", "right roll"}, []func(*mixcore.Setup){weak(starboardAileronChannel), dead(portAileronChannel)}},
	"more":            {scene{"", "right roll"}, []func(*mixcore.Setup){weak(starboardAileronChannel), dead(portAileronChannel)}},
	"at its stop":     {scene{"pitch stick full back", ""}, []func(*mixcore.Setup){noStops}},
	"not at its stop": {scene{"pitch stick half back", ""}, []func(*mixcore.Setup){subTrim(elevatorChannel, 40)}},
	"within travel":   {scene{"rates high, right roll", ""}, []func(*mixcore.Setup){func(s *mixcore.Setup) { s.Channels[portAileronChannel].Limit = 50 }, subTrim(portAileronChannel, 60)}},
	"model turns": {scene{"rates high", fullRight}, []func(*mixcore.Setup){reverse(portAileronChannel, starboardAileronChannel), reverse(portAileronChannel, starboardAileronChannel, portFlapChannel, starboardFlapChannel),
		func(s *mixcore.Setup) {
			for c := portAileronChannel; c <= starboardFlapChannel; c++ {
				s.Channels[c].Mix = nil
			}
		}}},
	"model does not turn": {scene{"", "the yaw stick is full right"}, []func(*mixcore.Setup){also(elevatorChannel, yawDemand, 50), also(elevatorChannel, yawDemand, 2), also(starboardFlapChannel, yawDemand, 20)}},
	"adds to the roll":    {scene{"rates high", fullRight}, []func(*mixcore.Setup){dead(portFlapChannel), reverse(portFlapChannel), reverse(portFlapChannel, starboardFlapChannel), reverse(portAileronChannel, starboardAileronChannel), func(s *mixcore.Setup) { weak(portFlapChannel)(s); weak(starboardFlapChannel)(s) }}},
	"adverse yaw": {scene{"rates high", fullRight}, []func(*mixcore.Setup){func(s *mixcore.Setup) {
		s.Channels[portAileronChannel].Mix[0].Share = mixcore.Both(100)
		s.Channels[starboardAileronChannel].Mix[0].Share = mixcore.Both(-60)
	}, reverse(portAileronChannel, starboardAileronChannel), dead(starboardAileronChannel), func(s *mixcore.Setup) {
		s.Channels[yawChannel].Mix = append(s.Channels[yawChannel].Mix, mixcore.MixLine{Op: mixcore.Add, Demand: 0, Share: mixcore.Both(-30)})
	}}},
	"servo torque": {scene{"landing flap", ""}, []func(*mixcore.Setup){dead(portFlapChannel),
		func(s *mixcore.Setup) { s.Parts[portFlap].Drives[0].Servo.TorqueNcm = 45 },
		func(s *mixcore.Setup) { s.Parts[portFlap].Chord = 60 },
		func(s *mixcore.Setup) { s.Parts[portFlap].Stops.Plus = 39 },
		func(s *mixcore.Setup) { s.Parts[portFlap].Drives[0].Servo.Swing = 30 }}},
	"servos agree": {scene{"pitch stick half back", ""}, []func(*mixcore.Setup){func(s *mixcore.Setup) {
		s.Parts[elevator].Drives[1].Table = []mixcore.Point{{X: -100, Y: 22}, {X: 100, Y: -22}}
	}, func(s *mixcore.Setup) { s.Parts[elevator].Drives[1].Channel = yawChannel }}},
	"on purpose":         {scene{"rates high", fullRight}, []func(*mixcore.Setup){reverse(starboardAileronChannel), dead(starboardAileronChannel)}},
	"after":              {scene{"", "landing flap"}, []func(*mixcore.Setup){slower(portFlapChannel), func(s *mixcore.Setup) { s.Channels[portFlapChannel].Slow = 0 }}},
	"within":             {scene{"", "landing flap"}, []func(*mixcore.Setup){slower(portFlapChannel), reverse(portFlapChannel)}},
	"one line":           {scene{"", ""}, []func(*mixcore.Setup){reverse(portFlapChannel), reverse(starboardFlapChannel), dead(starboardFlapChannel)}},
	"whatever":           {scene{"", ""}, []func(*mixcore.Setup){also(elevatorChannel, rollDemand, 10)}},
	"whatever else":      {scene{"motor safe", ""}, []func(*mixcore.Setup){noSafety}},
	"at every":           {scene{"", ""}, []func(*mixcore.Setup){func(s *mixcore.Setup) { s.Channels[portAileronChannel].Limit = 99 }, also(elevatorChannel, yawDemand, 1)}},
	"every position of":  {scene{"rates high", fullRight}, []func(*mixcore.Setup){reverse(starboardFlapChannel), dead(starboardFlapChannel), func(s *mixcore.Setup) { s.Channels[starboardFlapChannel].Limit = 60 }}},
	"anywhere":           {scene{"motor live", ""}, []func(*mixcore.Setup){subTrim(motorChannel, 5), reverse(motorChannel)}},
	"whenever":           {scene{"", ""}, []func(*mixcore.Setup){reverse(starboardAileronChannel), dead(starboardAileronChannel), also(starboardAileronChannel, rollDemand, 90)}},
	"always":             {scene{"motor safe", ""}, []func(*mixcore.Setup){noSafety}},
	"never":              {scene{"", ""}, []func(*mixcore.Setup){longThrow}},
	"no and nothing":     {scene{"motor safe", ""}, []func(*mixcore.Setup){noSafety}},
	"nothing but":        {scene{"", ""}, []func(*mixcore.Setup){also(elevatorChannel, yawDemand, 10), also(motorChannel, yawDemand, 3)}},
	"the more":           {scene{"", ""}, []func(*mixcore.Setup){reverse(starboardAileronChannel), dead(starboardAileronChannel), hooked}},
	"depends on":         {scene{"", ""}, []func(*mixcore.Setup){also(elevatorChannel, flapDemand, 5), also(elevatorChannel, gearDemand, 3)}},
	"one line with when": {scene{"", ""}, []func(*mixcore.Setup){noSafety}},
}

func TestSentencesPassOnAGoodModelAndFailOnEachFault(t *testing.T) {
	for _, form := range Sentences() {
		if _, sets := positionsSet[form.Name]; sets {
			continue
		}
		trial, ok := trials[form.Name]
		if !ok {
			t.Errorf("sentence %q has no trial", form.Name)
			continue
		}
		t.Run(form.Name, func(t *testing.T) {
			if list := verdicts(t, exampleModel(t, nil), trial.scene, form.Example); !passes(list) {
				t.Errorf("%q fails on the good model: %+v", form.Example, list)
			}
			for i, fault := range trial.faults {
				if list := verdicts(t, exampleModel(t, fault), trial.scene, form.Example); passes(list) {
					t.Errorf("%q passes in spite of fault %d: %+v", form.Example, i, list)
				}
			}
			if len(trial.faults) == 0 {
				t.Error("no fault was planted")
			}
		})
	}
}

// positionsSet is where the examples of settings put the controls, by
// Sentence.Name.
var positionsSet = map[string]map[int]float64{
	"setting":        {rollStick: 100, rateSwitch: 1},
	"short setting":  {rateSwitch: 1, throttle: 50},
	"position first": {flapLever: 100, throttle: 100, rollStick: 50},
	"rest":           {},
	"signal":         {},
}

func TestSentencesOfSettingsPutControlsWhereTheySay(t *testing.T) {
	m := exampleModel(t, nil)
	for _, form := range Sentences() {
		positions, ok := positionsSet[form.Name]
		if !ok {
			continue
		}
		for _, role := range []Role{Given, When, AnyRole} {
			meaning, problem := NewVocabulary(m).Parse(role, form.Example)
			if problem != nil {
				t.Errorf("%q: %s", form.Example, problem.Message)
				continue
			}
			expected := RestPose(&m.Setup)
			for control, position := range positions {
				expected.Position[control] = position
			}
			got := RestPose(&m.Setup).Take(&m.Setup, &meaning.Settings)
			if !slices.Equal(got.Position, expected.Position) || got.Lost != (form.Name == "signal") {
				t.Errorf("%q: got %v, want %v", form.Example, got.Position, expected.Position)
			}
		}
	}
}

func TestSentencesHaveUniqueNamesAndExplainThemselves(t *testing.T) {
	seen := map[string]bool{}
	for _, form := range Sentences() {
		if seen[form.Name] || form.Form == "" || form.Example == "" || form.Means == "" {
			t.Errorf("sentence %q is incomplete or twice", form.Name)
		}
		seen[form.Name] = true
	}
	for name := range trials {
		if !seen[name] {
			t.Errorf("trial %q belongs to no sentence", name)
		}
	}
}

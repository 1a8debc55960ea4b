package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// shipped is a shipped model with the record of its own script, made once.
func shipped(t testing.TB, name string) (*airframes.Model, *script.Record) {
	t.Helper()
	if known, ok := records[name]; ok {
		return known.m, known.record
	}
	text, _ := airframes.ReadShipped(name)
	m, problems := airframes.Load(name+".yaml", text)
	if m == nil {
		t.Fatal(problems)
	}
	asked, _ := features.Read(name)
	record, problems := script.Run(m, []script.File{{Name: name + ".feature", Text: asked}}, script.Selection{})
	if len(record.Checks) == 0 {
		t.Fatal(problems)
	}
	records[name] = recorded{m, &record}
	return m, &record
}

type recorded struct {
	m      *airframes.Model
	record *script.Record
}

// records are those that were made; no test here runs beside another.
var records = map[string]recorded{}

// standsIn says whether a part stands where it is wanted; close that it stands so near an
// end that the judge may count it in or out, as less than still counts and still does not.
func standsIn(w *result.Want, at float64) (in, close bool) {
	low, high := w.Low, w.High
	if w.LowOpen {
		low = math.Inf(-1)
	}
	if w.HighOpen {
		high = math.Inf(1)
	}
	in = at >= low-phrase.Rounding && at <= high+phrase.Rounding
	return in, math.Abs(at-low) <= 2*phrase.Rounding || math.Abs(at-high) <= 2*phrase.Rounding
}

// sharp are amounts whose ends count to within Rounding, so that nothing is close.
func sharp(o *phrase.Outcome) bool {
	switch o.Amount.Kind {
	case phrase.About, phrase.AtLeast, phrase.AtMost, phrase.Between:
		return o.Verb != phrase.AsFar
	}
	return false
}

// Where a stretch is wanted, a check has passed if and only if the part stands in it: of
// every shipped script, on its model and on the model with mistakes.
func TestWantedStretchAgreesWithTheJudge(t *testing.T) {
	const stride = 17 // every seventeenth mistake, each model beginning with another one
	passed, failed, close := 0, 0, 0
	for n, name := range airframes.Shipped() {
		m, record := shipped(t, name)
		mistakes := mistake.All(m, mistake.Options{})
		variants := []*airframes.Model{m}
		for i := n; i < len(mistakes); i += stride {
			if v, faults := mistakes[i].Variant(m); faults == nil {
				variants = append(variants, v)
			}
		}
		words := phrase.NewVocabulary(m)
		for k, variant := range variants {
			d := depicter{m: variant, words: words.On(variant), before: variant.Plan.NewOutput(), now: variant.Plan.NewOutput()}
			shape := Shape(variant)
			d.shape = &shape
			for i := range record.Asked {
				a := &record.Asked[i]
				if a.Outcome.Every != nil && (k+i)%40 != 0 || a.Outcome.OnTheWay() && (k+i)%10 != 0 {
					continue // they take long: some of them on each variant
				}
				verdict := d.words.Judge(&a.Outcome, a.At)[0]
				p := d.picture(&script.Judged{Outcome: a.Outcome, At: a.At, Verdict: verdict}, &result.Check{Wanted: verdict.Wanted})
				if p.Want == nil {
					continue
				}
				at := p.Stands[p.Of[0]].At
				in, near := standsIn(p.Want, at)
				if near && !sharp(&a.Outcome) {
					close++
					continue
				}
				if p.Want.Low > p.Want.High || in != verdict.Passed {
					t.Errorf("%s, variant %d: %s: %s: wanted %q got %q, passed %v: stands %+v, want %+v", name, k, a.Title, a.Sentence, verdict.Wanted, verdict.Got, verdict.Passed, p.Stands[p.Of[0]], *p.Want)
				}
				if in {
					passed++
				} else {
					failed++
				}
			}
		}
	}
	if passed < 10_000 || failed < 500 || close > passed/100 {
		t.Errorf("%d passed, %d failed, %d too close to tell: too few looked at", passed, failed, close)
	}
	t.Logf("%d passed, %d failed, %d too close to tell", passed, failed, close)
}

// painted has an aileron with a chord, a slowed flap, a motor and a hook.
const painted = `hingeline: 1
name: Painted
controls:
  roll stick: {axis: roll, trim: 10%}
  flap lever: {lever: {parked: 0, landing: 100}}
  throttle: lever
  motor switch: [safe, live]
  hook switch: [held, let go]
demands:
  roll: roll stick
  flap: flap lever
  throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}
  hook: {from: hook switch, values: {held: -100%, let go: 100%}}
channels:
  1: {name: starboard aileron, mix: [{add: roll, share: 80%}], failsafe: hold}
  2: {name: port aileron, mix: [{add: roll, share: -80%}], failsafe: -50%}
  3: {name: flap, mix: flap, slow: 2 s, failsafe: 20%}
  4: {name: motor, mix: [throttle, {replace_with: -100%, when: motor switch is safe}], failsafe: -100%}
  5: {name: hook, mix: hook}
surfaces:
  starboard aileron: {channel: 1, chord_mm: 40, stops: {up: 18°, down: 18°}, measured: {100%: 20° up}}
  port aileron: {channel: 2, chord_mm: 40, measured: {100%: 20° up}}
  flap: {channel: 3, measured: {100%: 40° down}}
motors:
  motor: {channel: 4, stopped_when: motor switch is safe}
extras:
  hook: {channel: 5}
`

// paint is the record of sentences about the painted model.
func paint(t *testing.T, sentences ...string) (*airframes.Model, *script.Record) {
	t.Helper()
	m, problems := airframes.Load("painted.yaml", []byte(painted))
	if m == nil {
		t.Fatal(problems)
	}
	text := "Feature: f\n"
	for i, s := range sentences {
		text += " Scenario: " + string(rune('a'+i)) + "\n  " + strings.ReplaceAll(s, "; ", "\n  ") + "\n"
	}
	record, problems := script.Run(m, []script.File{{Name: "f.feature", Text: []byte(text)}}, script.Selection{})
	if len(record.Checks) == 0 {
		t.Fatal(problems)
	}
	return m, &record
}

// open is an end that nobody asked for.
var open = math.Inf(1)

func TestPicturesShowWhatIsWanted(t *testing.T) {
	const port, starboard, flap, motor, hook = 1, 0, 2, 3, 4
	for _, row := range []struct {
		script    string
		part      int
		from, at  float64
		way, says string
		moved     bool
		low, high float64 // low above high: no stretch
	}{
		{"* with full right roll, the starboard aileron rises 16° ± 2°", starboard, 0, -16, "UP", "trailing edge UP 16° (11 mm)", true, -18, -14},
		// The trim's 10 % brought it 1.6° UP before.
		{"Given the roll trim is full right; When the roll stick is full right; Then the starboard aileron rises 16° ± 2°", starboard, -1.6, -17.6, "UP", "trailing edge UP 17.6° (12 mm)", true, -19.6, -15.6},
		{"* with full right roll, the starboard aileron is 16° up", starboard, 0, -16, "UP", "trailing edge UP 16° (11 mm)", true, -17, -15},
		{"Given the roll stick is full right; Then the starboard aileron is up", starboard, -16, -16, "UP", "trailing edge UP 16° (11 mm)", false, -open, -0.5},
		// 2·40·sin(δ/2) = 11.13 mm at 16°; 12 mm are 17.2539°, 10 mm 14.3619°.
		{"* with full right roll, the starboard aileron rises, between 10 mm and 12 mm", starboard, 0, -16, "UP", "trailing edge UP 16° (11 mm)", true, -17.253853, -14.361512},
		{"* with full right roll, the port aileron drops", port, 0, 16, "DOWN", "trailing edge DOWN 16° (11 mm)", true, 0.5, open},
		{"* with full right roll, the port aileron rises", port, 0, 16, "DOWN", "trailing edge DOWN 16° (11 mm)", true, -open, -0.5},
		{"* with full right roll, the flap stays still", flap, 0, 0, "", "neutral", false, -0.5, 0.5},
		{"Then the flap is at neutral", flap, 0, 0, "", "neutral", false, -0.5, 0.5},
		{"* with full right roll, the port aileron moves opposite to the starboard aileron", port, 0, 16, "DOWN", "trailing edge DOWN 16° (11 mm)", true, 0.5, open},
		{"* with full right roll, the port aileron moves together with the starboard aileron", port, 0, 16, "DOWN", "trailing edge DOWN 16° (11 mm)", true, -open, -0.5},
		{"* with full right roll, the port aileron moves as far as the starboard aileron ± 3°", port, 0, 16, "DOWN", "trailing edge DOWN 16° (11 mm)", true, 13, 19},
		{"* with full right roll, the port aileron moves less than the starboard aileron", port, 0, 16, "DOWN", "trailing edge DOWN 16° (11 mm)", true, 0.5, 15.9},
		{"* with full right roll, the port aileron moves more than the starboard aileron", port, 0, 16, "DOWN", "trailing edge DOWN 16° (11 mm)", true, 16.1, open},
		// Nothing to compare with: wherever the aileron were, this could not pass.
		{"* with full right roll, the port aileron moves as far as the flap", port, 0, 16, "DOWN", "trailing edge DOWN 16° (11 mm)", true, 1, 0},
		{"* with full right roll, the starboard aileron is not at its stop", starboard, 0, -16, "UP", "trailing edge UP 16° (11 mm)", true, -17.95, 17.95},
		{"* with full right roll, the starboard aileron is at its stop", starboard, 0, -16, "UP", "trailing edge UP 16° (11 mm)", true, -open, -17.95},
		// One second after, the flap is half way.
		{"* with landing flap, the flap drops 20° ± 2° after 1 s", flap, 0, 20, "DOWN", "trailing edge DOWN 20°", true, 18, 22},
		{"Given the motor switch is live; When the throttle is 40%; Then the motor is at 40% ± 2%", motor, 0, 40, "MORE", "power 40 %", true, 38, 42},
		{"Given the motor switch is live; And the throttle is 40%; Then the motor is running", motor, 40, 40, "", "power 40 %", false, 2, open},
		{"Then the motor is stopped", motor, 0, 0, "", "stopped", false, -open, 2},
		{"When the throttle is full; Then the motor stays stopped", motor, 0, 0, "", "stopped", false, -open, 2},
		// It did not run before, so that nothing it does now could show that it stops.
		{"When the signal is lost; Then the motor stops", motor, 0, 0, "", "stopped", false, 1, 0},
		{"Given the motor switch is live; And the throttle is 40%; When the signal is lost; Then the motor stops", motor, 40, 0, "LESS", "stopped", true, -open, 2},
		{"Then the hook is in", hook, 0, 0, "IN", "IN", false, -open, 1},
		{"When the hook switch is let go; Then the hook extends, at least 90%", hook, 0, 100, "OUT", "OUT 100 %", true, 90, open},
		// Lost where it stood: the one channel holds, the other does not.
		{"Given the roll stick is full right; When the signal is lost; Then the starboard aileron stays still", starboard, -16, -16, "", "trailing edge UP 16° (11 mm)", false, -16.5, -15.5},
		{"Given the roll stick is full right; When the signal is lost; Then the port aileron is 10° down", port, 16, 10, "UP", "trailing edge DOWN 10° (7 mm)", true, 9, 11},
		{"Given the roll stick is full right; And the signal is lost; Then the starboard aileron is 16° up", starboard, -16, -16, "UP", "trailing edge UP 16° (11 mm)", false, -17, -15},
	} {
		m, record := paint(t, row.script)
		p := picturesOf(m, record)[0]
		s := p.Stands[row.part]
		if len(p.Of) != 1 || p.Of[0] != row.part || abs(s.From-row.from) > 1e-6 || abs(s.At-row.at) > 1e-6 || s.Way != row.way || s.Says != row.says || s.Moved != row.moved {
			t.Errorf("%s: got %v %+v, want %+v", row.script, p.Of, s, row)
		}
		if row.low > row.high {
			if p.Want != nil {
				t.Errorf("%s: got %+v, want no stretch", row.script, *p.Want)
			}
			continue
		}
		if w := p.Want; w == nil || w.LowOpen != math.IsInf(row.low, -1) || w.HighOpen != math.IsInf(row.high, 1) || !w.LowOpen && abs(w.Low-row.low) > 1e-6 || !w.HighOpen && abs(w.High-row.high) > 1e-6 ||
			w.Says != record.Checks[0].Wanted || math.IsInf(w.Low, 0) || math.IsInf(w.High, 0) || w.Low > w.High {
			t.Errorf("%s: got %+v, want %v to %v", row.script, w, row.low, row.high)
		}
	}
}

func TestPicturesOfWhatIsSaidOfEveryPosition(t *testing.T) {
	m, record := paint(t, "Then whatever moves, the starboard aileron never rises more than 12°")
	p := picturesOf(m, record)[0]
	if record.Checks[0].Passed || p.Want == nil || !(p.Stands[0].At < -12) || p.Want.High <= p.Stands[0].At {
		t.Errorf("refuted: %+v %+v", p.Stands[0], p.Want)
	}
	// Proved, it is shown where it has least to spare: with stick and trim at their ends.
	m, record = paint(t, "Then whatever moves, the starboard aileron is never more than 17.9° up")
	p = picturesOf(m, record)[0]
	if !record.Checks[0].Passed || p.Want == nil || abs(p.Stands[0].At+17.6) > 1e-6 || abs(p.Want.Low+17.9) > 1e-6 || !p.Want.HighOpen {
		t.Errorf("proved: %+v %+v", p.Stands[0], p.Want)
	}
}

func TestPicturesHaveNoStretchWhereNoneCanBeTold(t *testing.T) {
	m, record := paint(t, "* with full right roll, the model rolls right", "* with full right roll, the port aileron channel is within its travel",
		"* with full right roll, channel 1 is at 80%")
	for i, p := range picturesOf(m, record) {
		if p.Want != nil || len(p.Stands) != len(m.Setup.Parts) || !p.Moves {
			t.Errorf("%s: %+v", record.Checks[i].Sentence, p)
		}
	}
}

// A trim that is only asked to turn the model moves surfaces, and one that is reversed is
// found by looking at them.
func TestPicturesOfAModelThatTurnsShowWhatMoves(t *testing.T) {
	m, record := paint(t, "* with full right roll, the model rolls right")
	p := picturesOf(m, record)[0]
	if len(p.Of) < 2 {
		t.Errorf("a roll shows the parts %v", p.Of)
	}
	for part, stand := range p.Stands {
		if stand.Moved != slices.Contains(p.Of, part) {
			t.Errorf("%s moved: %t, is shown: %t", m.Setup.Parts[part].Name, stand.Moved, !stand.Moved)
		}
	}
	m, record = paint(t, "* with full right roll, the model does not pitch")
	if of := picturesOf(m, record)[0].Of; len(of) > 0 {
		t.Errorf("a model that does not pitch shows the parts %v", of)
	}
}

package mistake_test

import (
	"bytes"
	"flag"
	"fmt"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/verifytest"
)

var update = flag.Bool("update", false, "write the golden files anew")

const small = `hingeline: 1
name: Wheatear
controls:
  pitch stick: {axis: pitch, trim: 10%}
  yaw stick: yaw
  throttle: lever
  rate switch: [low, high]
  motor switch: [safe, live]
demands:
  pitch:
    from: pitch stick
    rates:
      - {when: rate switch is high, throw: 85%, expo: 30%}
      - {throw: 50%, expo: 15%}
  yaw: yaw stick
  throttle: {from: throttle, curve: {0%: -100%, 100%: 100%}}
channels:
  1: {name: elevator, mix: pitch, failsafe: hold}
  2: {name: rudder, mix: yaw, failsafe: 0%}
  3:
    name: motor
    mix: [throttle, {replace_with: -100%, when: motor switch is safe}]
    failsafe: -100%
surfaces:
  elevator:
    channel: 1
    chord_mm: 40
    servo: {swing_deg: 40, plus_swings: aft}
    linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 60, horn: below}
  rudder: {channel: 2, measured: {100%: 25° right}}
motors:
  motor: {channel: 3, stopped_when: motor switch is safe}
`

// smallCounts are counted by hand, line by line of the file.
var smallCounts = map[string]int{
	"channel-reversed":    3, // a channel each
	"plugs-swapped":       3, // pairs of three
	"servo-dead":          3, // a servo each
	"share-sign":          4, // pitch, yaw, throttle and what replaces all
	"share-one-side":      6, // both sides of pitch, yaw and throttle
	"share-missing":       4,
	"share-size":          8, // each line half and twice
	"share-demand":        2, // pitch and yaw for each other; no other lever
	"line-always":         1, // the motor's
	"condition-inverted":  1, // high rate
	"condition-position":  2, // high rate and the motor's
	"motor-safe-inverted": 1,
	"rates-swapped":       1,
	"rate-stuck":          2,
	"throw-half":          8, // two sides of two rates of pitch, of yaw and of throttle
	"expo-wrong":          4, // the other sign and none, of two rates
	"curve-wrong":         2, // upside down and missing
	"control-reversed":    2, // pitch and yaw; of the throttle it is a curve upside down
	"trim-reversed":       1,
	"trim-missing":        1,
	"horn-side":           2, // the elevator's linkage and the rudder's table
	"arm-side":            1, // only a linkage has an arm
	"holes-swapped":       1,
	"end-point-cut":       6,
	"limit-low":           3,
	"sub-trim-off":        6,
	"failsafe-wrong":      9, // elevator to 0 and both ends; rudder hold and both ends; motor hold, 0 and full
	"motor-idle-off":      1,
	"other-model":         1, // the plain one
}

func TestCatalogueOfSmallModelIsCountedByHand(t *testing.T) {
	got := map[string]int{}
	for _, wrong := range mistake.All(verifytest.Model(t, "wheatear.yaml", small), mistake.Options{}) {
		got[wrong.Kind.Code]++
	}
	if !reflect.DeepEqual(got, smallCounts) {
		for _, k := range mistake.Kinds() {
			if got[k.Code] != smallCounts[k.Code] {
				t.Errorf("%s: %d mistakes, want %d", k.Code, got[k.Code], smallCounts[k.Code])
			}
		}
	}
}

func TestRowsOfTheCatalogueSayEverything(t *testing.T) {
	codes := map[string]bool{}
	for _, k := range append(slices.Clone(mistake.Kinds()), mistake.Pair()) {
		if codes[k.Code] {
			t.Errorf("two kinds have the code %s", k.Code)
		}
		codes[k.Code] = true
		if k.Code == "" || k.Title == "" || !strings.HasSuffix(k.Means, ".") || k.Odds < 1 || k.Odds > 3 {
			t.Errorf("%+v does not say everything", k)
		}
	}
}

// Words of every mistake in a model that a person can read through.
func TestMistakesAreSaidInWords(t *testing.T) {
	var b bytes.Buffer
	m := verifytest.Shipped(t, "bracken-20")
	for _, wrong := range mistake.All(m, mistake.Options{Others: []*airframes.Model{verifytest.Shipped(t, "pellin-park")}}) {
		where := "in the transmitter"
		if wrong.OnModel {
			where = "on the model"
		}
		fmt.Fprintf(&b, "%s, line %d, %s\n  wrong  %s\n  do     %s\n  undo   %s\n",
			wrong.Kind.Code, wrong.Place().Line, where, wrong.Text, wrong.Change, wrong.Undo)
	}
	airframestest.Golden(t, filepath.Join("testdata", "bracken-20.txt"), b.Bytes(), *update)
}

func TestOwnFileIsNoMistake(t *testing.T) {
	m := verifytest.Shipped(t, "ousel-trainer")
	found := mistake.All(m, mistake.Options{Others: []*airframes.Model{verifytest.Shipped(t, "ousel-trainer")}, Only: []string{"other-model"}})
	if len(found) != 1 {
		t.Errorf("%d mistakes: %+v, want the plain model alone", len(found), found)
	}
}

// A sub-trim is off by less where a measured table or a linkage does not reach further.
func TestSubTrimIsOffAsFarAsCanBeBuilt(t *testing.T) {
	m, faults := verifytest.Model(t, "wheatear.yaml", small).With(func(s *mixcore.Setup) {
		c := &s.Channels[1]
		c.PulseMin, c.PulseMax = 900, 2100 // 120 % either way
		s.Parts[1].Drives[0].Table = []mixcore.Point{{X: -150, Y: 37}, {X: 112, Y: -28}}
	})
	if faults != nil {
		t.Fatal(faults)
	}
	var got []mixcore.Percent
	for _, wrong := range mistake.All(m, mistake.Options{Only: []string{"sub-trim-off"}}) {
		variant, faults := wrong.Variant(m)
		if faults != nil {
			t.Errorf("%s: %v", wrong.Text, faults)
			continue
		}
		if off := variant.Setup.Channels[1].SubTrim; off != 0 {
			got = append(got, off)
		}
	}
	if want := []mixcore.Percent{10, -25}; !slices.Equal(got, want) {
		t.Errorf("the rudder's sub-trim is off by %v %%, want %v %%: its table ends at 112 %%", got, want)
	}
}

// BenchmarkVariants makes every mistake of the large model and builds the model so.
func BenchmarkVariants(b *testing.B) {
	m := verifytest.Twelve(b)
	b.ReportAllocs()
	count := 0
	for b.Loop() {
		all := mistake.All(m, mistake.Options{})
		count = len(all)
		for i := range all {
			all[i].Variant(m)
		}
	}
	b.ReportMetric(float64(count), "mistakes")
}

// A condition may ask for another phase, of those that may stand there: a phase's own only
// for phases before it.
func TestConditionsAskForOtherPhases(t *testing.T) {
	for name, want := range map[string]string{
		"tarn-measured": `asks for "speed flight" instead of "braking"`,
		"skerry":        `asks for "launch" instead of "speed"`,
	} {
		m, found := verifytest.Shipped(t, name), false
		for _, wrong := range mistake.All(m, mistake.Options{Only: []string{"condition-position"}}) {
			found = found || strings.Contains(wrong.Text, want)
			if _, faults := wrong.Variant(m); faults != nil {
				t.Errorf("%s: %s: %v", name, wrong.Text, faults)
			}
		}
		if !found {
			t.Errorf("no condition of %s %s", name, want)
		}
	}
}

package airframes_test

import (
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"
)

// everything is an airframe with every key of the format.
const everything = `
hingeline: 1
name: Fennel
about: A model that has everything.
mass_kg: 3.2
still_deg: 0.5
airspeed_ms: 16
wing: {span_mm: 2000, root_chord_mm: 260, tip_chord_mm: 200}
script: [one.feature, two.feature]
controls:
  roll stick: {axis: roll, trim: {range: 10%, name: aileron trim, reversed: true}, aka: [ailerons stick]}
  pitch stick: {axis: pitch, trim: 10%, aka: nick}
  yaw stick: yaw
  throttle: lever
  flap lever: {lever: {parked: 0, takeoff: 40, landing: 100}}
  rate switch: [low, high]
  motor switch: {switch: [safe, live]}
phases:
  landing: flap lever is above 50%
  launch: {when: motor switch is live, fade: 1.5 s}
demands:
  roll: {from: roll stick, rates: [{when: rate switch is high, throw: 90%, expo: 30%}, {throw: {right: 50%, left: 60%}}]}
  pitch: {from: pitch stick, throw: {back: 90%, forward: 80%}, expo: 20%, trim: no}
  yaw: {from: yaw stick, curve: {-100%: -80%, 0%: 0%, 100%: 80%}, smooth: true}
  flap: {from: flap lever, throw: {plus: 50%, minus: 0%}}
  throttle: throttle
  camber: {from: rate switch, values: {low: 0%, high: 10%}}
channels:
  1: roll
  2: {mix: pitch}
  3:
    name: flaps
    mix:
      - flap
      - {add: camber, share: 50%}
      - {add: roll, share: {right: 20%, left: 10%}, when: landing}
      - {add: pitch, share: {back: 5%, forward: 5%}}
      - {fixed: 2%}
      - 1%
      - {scale_by: flap, when: launch}
      - {replace_with: 5%, when: rate switch is high}
    limit: 90%
    reversed: true
    end_points: {plus: 90%, minus: 95%}
    sub_trim: 2%
    pulse_us: {min: 900, max: 2100}
    slow: 2 s
    failsafe: hold
  4: {mix: yaw, end_points: 80%, failsafe: 0%}
  5: {mix: throttle, failsafe: 1000 µs}
surfaces:
  port aileron: {channel: 1, measured: {-100%: 20° down, 0%: 0°, 100%: 25° up}, kind: aileron, side: port, chord_mm: 40, span_mm: [100, 400], aft_mm: 60, up_mm: -20, tilt_deg: 3, stops: {up: 40°, down: 40°}, aka: outer}
  flap:
    channel: 3
    servo: {plus_swings: aft, swing_deg: 40, max_deg: 60, seconds_per_60deg: 0.1, torque_ncm: 30}
    linkage: {arm_mm: 10, horn_mm: 20, pivots_mm: 400, offset_mm: 5, horn: below, arm: below, arm_deg: 90, horn_deg: 90, pushrod_mm: 400}
  elevator: {servos: [{channel: 2, measured: {100%: 20° up}}, {channel: "2", servo: fore, linkage: {arm_mm: 10, horn_mm: 20, pivots_mm: 400, horn: above}}]}
  rudder: {channel: 4, servo: aft, linkage: {arm_mm: 10, horn_mm: 20, pivots_mm: 400, horn: starboard, arm: port}, aft_mm: 900, up_mm: 100, tilt_deg: 90, stops: {left: 40°, right: 40°}}
wheels:
  wheel: {place: nose, side: centre, channel: 4, measured: {100%: 20° right}}
motors:
  motor: {channel: 5, side: centre, idle_us: 1000, full_us: 2000, stopped_below: 2%, stopped_when: motor switch is safe, out_mm: 0, aft_mm: -300, up_mm: 10}
extras:
  odd thing: {kind: other, side: port, channel: 5, plus_moves: in, out_mm: 900, aft_mm: 50, up_mm: 0}
`

// values are tried at every place of everything. Those with digits bracket the
// ranges of the format.
func values() []string {
	list := []string{"true", `"no"`, "~", "{}", "[]", `""`, "some text", "2nd", "it is so"}
	for _, number := range []string{
		"-10000.001", "-10000", "-1000.001", "-1000", "-90.001", "-90", "-200.001", "-200", "-100.001", "-100", "-0.001", "0", "0.001", "0.099", "0.1", "0.499", "0.5", "0.999", "1", "2", "5", "5.001", "9.999", "10", "10.001",
		"20", "20.001", "32", "33", "60", "60.001", "90", "90.001", "100", "100.001", "120", "120.001", "150", "150.001", "170", "170.001", "180", "180.001",
		"200", "200.001", "499.999", "500", "500.001", "1000", "1000.001", "2000", "2000.001", "2500", "2500.001", "5000", "5000.001", "10000", "10000.001", "20000", "20000.001",
	} {
		list = append(list, number, `"`+number+`"`)
		for _, unit := range []string{"%", " %", "°", " deg", " s", "µs", " us", "mm", " m/s", " kg", "° up", " deg left"} {
			list = append(list, number+unit)
		}
	}
	for _, words := range []string{
		"roll", "pitch", "lever", "no", "hold", "up", "aft", "fore", "above", "below", "port", "starboard", "left", "right", "centre",
		"nose", "tail", "in", "out", "aileron", "v-tail", "rudder", "drag rudder", "yes", "retract", "other", "flap",
	} {
		list = append(list, words, strings.ToUpper(words))
	}
	return list
}

func TestSchemaAgreesWithTheLoaderAboutEveryValueAtEveryPlace(t *testing.T) {
	schema := compileSchema(t)
	var seen verdicts
	if difference := seen.compare(schema, []byte(everything)); difference != "" || seen.right != 1 {
		t.Fatalf("the airframe with everything is not right: %+v\n%s", seen, difference)
	}
	document, err := parseYAML([]byte(everything))
	if err != nil {
		t.Fatal(err)
	}
	const step = 97
	tried := values()
	places := 0
	for _, at := range valuesIn("", document.Content[0]) {
		if at.node.Kind != yaml.ScalarNode {
			continue
		}
		places++
		original := *at.node
		// Some of the values at each place, others at the next.
		for i := places % step; i < len(tried); i += step {
			value, err := parseYAML([]byte(tried[i]))
			if err != nil {
				t.Fatal(err)
			}
			*at.node = *value.Content[0]
			text, err := yaml.Marshal(document)
			if err != nil {
				t.Fatal(err)
			}
			if difference := seen.compare(schema, text); difference != "" {
				t.Errorf("%s: %s for %s: %s", at.key, tried[i], original.Value, difference)
			}
		}
		*at.node = original
	}
	t.Logf("%d places: %+v", places, seen)
	if places < 100 || seen.right < 50 || seen.wrongStructure < 500 {
		t.Errorf("%d places, %+v: too few to tell", places, seen)
	}
}

// TestSchemaComparisonCanFail holds the loader against schemas that are wrong.
func TestSchemaComparisonCanFail(t *testing.T) {
	for name, document := range map[string]any{
		"takes everything": map[string]any{},
		"takes nothing":    false,
	} {
		compiler := jsonschema.NewCompiler()
		if err := compiler.AddResource("wrong.json", document); err != nil {
			t.Fatal(err)
		}
		schema, err := compiler.Compile("wrong.json")
		if err != nil {
			t.Fatal(err)
		}
		var seen verdicts
		right := seen.compare(schema, []byte(everything))
		wrong := seen.compare(schema, []byte(strings.Replace(everything, "mass_kg: 3.2", "colour: red", 1)))
		if (right == "") == (wrong == "") {
			t.Errorf("a schema that %s: %q for a right airframe, %q for a wrong one, want one difference", name, right, wrong)
		}
	}
}

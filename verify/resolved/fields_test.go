package resolved_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/verifytest"
)

// notCounted are the fields that bear on no answer, or are told by others.
var notCounted = map[string]string{
	"Model.About":   "remarks",
	"Model.Scripts": "names of files; what they ask has a digest of its own",
	"Model.Source":  "the text",
	"Model.Places":  "where in the text",
	"Model.Plan":    "what is made of Setup",
	"Setup.Name":    "the same as Model.Name",
}

// setup with something of everything.
const everything = `hingeline: 1
name: All of it
mass_kg: 3
airspeed_ms: 20
wing: {span_mm: 2000, root_chord_mm: 300, tip_chord_mm: 200}
controls:
  roll stick: {axis: roll, trim: 8%, aka: ailerons}
  flap lever: {lever: {parked: 0, landing: 90}}
  rate switch: [low, high, top]
  motor switch: [safe, live]
phases:
  slowly: {when: flap lever is above 20% and rate switch is not high, fade: 2}
  landing: {when: "slowly and (flap lever is between 30% and 60% or flap lever is at most 99% or flap lever is below 98%)"}
  launch: {when: flap lever is at least 50%}
demands:
  roll:
    from: roll stick
    rates:
      - {when: rate switch is high, throw: {right: 90%, left: 80%}, expo: 30%}
      - {throw: 50%}
    curve: {-100%: -100%, 0%: 10%, 100%: 100%}
    smooth: yes
  flap: {from: flap lever}
  mode: {from: rate switch, values: {low: 10%, high: 20%, top: 30%}}
  spare: {from: rate switch, values: {low: 1%, high: 2%, top: 3%}}
channels:
  1:
    name: left one
    mix:
      - {add: roll, share: {right: 40%, left: 30%}, when: launch or flap lever is between 30% and 60% or flap lever is at least 99%}
      - {scale_by: flap}
      - {fixed: 3%}
      - {replace_with: 5%, when: landing}
    limit: 90%
    sub_trim: 3%
    end_points: {plus: 90%, minus: 80%}
    pulse_us: {min: 1010, max: 1990}
    slow: 1
    failsafe: 4%
  2: {name: right one, mix: [roll], reversed: true}
  3: {name: power, mix: [mode], failsafe: -100%}
surfaces:
  port aileron:
    channel: 1
    chord_mm: 40
    span_mm: [100, 400]
    aft_mm: 10
    up_mm: 20
    tilt_deg: 3
    stops: {up: 40°, down: 40°}
    aka: left thing
    servo: {swing_deg: 45, max_deg: 80, plus_swings: aft, seconds_per_60deg: 0.2, torque_ncm: 30}
    linkage: {arm_mm: 10, horn_mm: 20, pivots_mm: 60, offset_mm: 2, horn: below, arm_deg: 88, horn_deg: 92, pushrod_mm: 60}
  starboard aileron:
    servos:
      - {channel: 2, measured: {-200%: 40° down, 0%: 0°, 200%: 40° up}}
      - {channel: 1, measured: {-200%: 40° down, 0%: 0°, 200%: 40° up}}
motors:
  motor: {channel: 3, out_mm: 0, idle_us: 1010, full_us: 1990, stopped_below: 3%, stopped_when: motor switch is safe}
extras:
  gear retract: {channel: 2, plus_moves: in}
`

// TestEverySettingCounts changes each field of the set-up and the model in turn, wherever
// it stands in a set-up that has something of everything: for at least one of its places
// the digest must change. A field that is new and that nobody told SetUp about fails.
func TestEverySettingCounts(t *testing.T) {
	m := verifytest.Model(t, "everything.yaml", everything)
	whole := digest(m)
	counts, fields := map[string]bool{}, []string{}
	var visit func(name string, v reflect.Value)
	try := func(name string, change func(), undo func()) {
		if !slices.Contains(fields, name) {
			fields = append(fields, name)
		}
		change()
		defer undo()
		defer func() {
			if recover() != nil { // a nonsense that SetUp looked at and no file can say
				counts[name] = true
			}
		}()
		if digest(m) != whole {
			counts[name] = true
		}
	}
	visit = func(name string, v reflect.Value) {
		set := func(to reflect.Value) {
			was := reflect.New(v.Type()).Elem()
			was.Set(v)
			try(name, func() { v.Set(to) }, func() { v.Set(was) })
		}
		switch v.Kind() {
		case reflect.Struct:
			for i := range v.NumField() {
				field := v.Type().Name() + "." + v.Type().Field(i).Name
				switch {
				case notCounted[field] != "":
				case field == "Phase.When": // changed whole: a phase that names itself has no end
					part := v.Field(i)
					was := part.Interface()
					try(field, func() { part.Set(reflect.ValueOf(mixcore.Condition{Op: mixcore.Above, Control: 2})) }, func() { part.Set(reflect.ValueOf(was)) })
				default:
					visit(field, v.Field(i))
				}
			}
		case reflect.Slice:
			for i := range v.Len() {
				visit(name, v.Index(i))
			}
			if v.Len() > 0 {
				set(v.Slice(0, v.Len()-1))
			} else {
				set(reflect.Append(v, reflect.New(v.Type().Elem()).Elem()))
			}
		case reflect.Array:
			for i := range v.Len() {
				visit(name, v.Index(i))
			}
		case reflect.Pointer:
			if v.IsNil() {
				set(reflect.New(v.Type().Elem()))
				return
			}
			set(reflect.Zero(v.Type()))
			visit(name, v.Elem())
		case reflect.Bool:
			set(reflect.ValueOf(!v.Bool()).Convert(v.Type()))
		case reflect.String:
			set(reflect.ValueOf(v.String() + "x").Convert(v.Type()))
		case reflect.Float64:
			set(reflect.ValueOf(math.Nextafter(v.Float(), 1e9)).Convert(v.Type()))
		case reflect.Int:
			to := v.Int() - 1
			if to < 0 {
				to = v.Int() + 1
			}
			set(reflect.ValueOf(to).Convert(v.Type()))
		case reflect.Uint8:
			to := v.Uint() - 1
			if v.Uint() <= 1 {
				to = v.Uint() + 1
			}
			set(reflect.ValueOf(to).Convert(v.Type()))
		default:
			t.Fatalf("%s is a %v, which this test cannot change", name, v.Kind())
		}
	}
	visit("Model", reflect.ValueOf(m).Elem())
	for _, name := range fields {
		if !counts[name] {
			t.Errorf("%s does not count: tell SetUp about it, or say in this test why it bears on no answer", name)
		}
	}
	if len(fields) < 80 {
		t.Errorf("only %d fields: %v", len(fields), fields)
	}
	if digest(m) != whole {
		t.Error("this test left the model changed")
	}
}

func TestEveryFieldThatDoesNotCountIsThere(t *testing.T) {
	for name := range notCounted {
		var kind string
		var field string
		fmt.Sscanf(name, "%5s.%s", &kind, &field)
		of := reflect.TypeFor[airframes.Model]()
		if kind == "Setup" {
			of = reflect.TypeFor[mixcore.Setup]()
		}
		if _, ok := of.FieldByName(field); !ok {
			t.Errorf("there is no %s", name)
		}
	}
}

// The digest holds lengths, so that nothing moves from a path into a value.
func TestDigestIsUnambiguous(t *testing.T) {
	one := []resolved.Setting{{Path: "ab", Value: "c"}}
	other := []resolved.Setting{{Path: "a", Value: "bc"}}
	if resolved.Digest(one) == resolved.Digest(other) {
		t.Error("two settings have one digest")
	}
	if got := resolved.Digest(nil); len(got) != len("sha256:")+64 {
		t.Errorf("got %q", got)
	}
}

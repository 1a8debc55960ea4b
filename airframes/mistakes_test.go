package airframes_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
)

// whole is a right file that says something of everything.
const whole = `hingeline: 1
name: Fennel
about: A model to break.
mass_kg: 3.2
airspeed_ms: 16
wing: {span_mm: 2000, root_chord_mm: 260, tip_chord_mm: 200}
script: [fennel.feature]
controls:
  roll stick: {axis: roll, trim: {range: 8%, reversed: true}}
  pitch stick: pitch
  flap lever: {lever: {parked: 0, landing: 100}, aka: flaps}
  rate switch: {switch: [low, high], aka: [rates]}
phases:
  landing: {when: flap lever is above 50%, fade: 1.5 s}
  calm: rate switch is low
demands:
  roll: {from: roll stick, rates: [{when: rates are high, throw: 90%}, {throw: {right: 50%, left: 40%}, expo: 15%}]}
  pitch: {from: pitch stick, curve: {-100%: -90%, 0%: 0%, 100%: 100%}, smooth: true}
  flap: flap lever
  rate: {from: rate switch, values: {low: 0%, high: 100%}}
channels:
  1: {name: wing, mix: [{add: roll, share: {right: 20%, left: 30%}, when: calm}, 3%], reversed: true}
  2: {mix: pitch, limit: 90%, end_points: {plus: 90%, minus: 80%}, sub_trim: 2%, failsafe: -90%}
  3: {mix: [{add: flap}, {scale_by: rate}], pulse_us: {min: 1000, max: 2000}, slow: 2 s}
surfaces:
  port aileron: {channel: 1, chord_mm: 48, span_mm: [140, 470], aft_mm: 60, up_mm: 10, tilt_deg: 3, stops: {up: 20°}, measured: {-100%: 24° up, 0%: 0°, 100%: 20° down}}
  elevator:
    servos:
      - {channel: 2, servo: {plus_swings: aft, swing_deg: 40}, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: below, arm: below}}
wheels:
  wheel: {place: tail, channel: 1, servo: aft, linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: left}}
motors:
  port motor: {channel: 3, out_mm: 300, aft_mm: -200, idle_us: 1000, full_us: 1900, stopped_when: rate switch is low}
extras:
  hook: {channel: 3, plus_moves: in}
  drag rudder: {channel: 3, side: port, out_mm: 900}
`

// Each mistake is made alone and must be reported alone: one slip of the pen is
// one problem. «» stand around what the caret must point at.
func TestOneMistakeIsOneProblem(t *testing.T) {
	read(t, whole)
	for _, c := range []struct{ old, new, code, message string }{
		{"hingeline: 1\n", "", "missing-key", `the airframe has no "hingeline"`},
		{"hingeline: 1", "hingeline: «2»", "unknown-version", `in version "2" of the format, want 1`},
		{"hingeline: 1", "hingeline: «[»1]", "wrong-kind", "hingeline is a list, want the version of the format, 1"},
		{"name: Fennel\n", "", "missing-key", `the airframe has no "name"`},
		{"name: Fennel", "name: «''»", "holds-nothing", "name is empty"},
		{"name: Fennel", "name: «true»", "bad-name", `"true" is not taken as a name`},
		{"name: Fennel", "«name»:", "no-value", `"name" has no value`},
		{"name: Fennel", "name: «" + strings.Repeat("x", 81) + "»", "out-of-range", "name has 81 characters, want at most 80"},
		{"name: Fennel", "name: «|»\n  two\n  lines", "wrong-kind", "name goes over several lines, want one"},
		{"about: A", "about: «" + strings.Repeat("x", 2001) + "» #", "out-of-range", "about has 2001 characters, want at most 2000"},
		{"about: A model to break.", "about: «{»a: b}", "wrong-kind", "about is settings in the form {key: value}"},
		{"mass_kg: 3.2", "mass_kg: «3.2 kg»", "bad-unit", "want a mass in kilograms"},
		{"script: [fennel.feature]", "script: «[»]", "holds-nothing", "script is an empty list"},
		{"script: [fennel.feature]", "script: [«~»]", "no-value", "an item of the list is empty"},
		{"airspeed_ms: 16", "airspeed_ms: «0»", "out-of-range", "airspeed_ms is 0 m/s, want 0.1 to 200 m/s"},
		{"airspeed_ms: 16", "airspeed_ms: «16 km»", "bad-unit", "want a speed in metres a second"},
		{"wing: {span_mm: 2000, root_chord_mm: 260, tip_chord_mm: 200}", "wing: «2000»", "wrong-kind", "want settings such as {span_mm: …}"},
		{"span_mm: 2000, ", "", "missing-key", `wing has no "span_mm"`},
		{", tip_chord_mm: 200", "", "missing-key", `wing has no "tip_chord_mm"`},
		{"root_chord_mm: 260", "root_chord_mm: «0»", "out-of-range", "root_chord_mm of wing is 0 mm, want 1 to 20000 mm"},
		{"wing: {span", "wing: {«chord_mm»: 3, span", "unknown-key", `wing has no setting "chord_mm"`},
		{"span_mm: [140, 470]", "«span_mm»: [140, 1000.001]", "out-of-range", "reaches out to 1000.001 mm, want at most half the wing's span, 1000 mm"},
		{"chord_mm: 48, span_mm: [140, 470]", "«chord_mm»: 241.701, span_mm: [140, 470]", "out-of-range", "is 241.701 mm, want at most the wing's chord 305 mm out, 241.7 mm"},
		{"chord_mm: 48, span_mm: [140, 470]", "«chord_mm»: 261", "out-of-range", "is 261 mm, want at most the wing's chord, 260 mm"},
		{"aft_mm: 60", "aft_mm: «-10000.001»", "out-of-range", "want -10000 to 10000 mm"},
		{"up_mm: 10", "up_mm: «high»", "bad-number", `up_mm of surface "port aileron" is "high"`},
		{"tilt_deg: 3", "tilt_deg: «91°»", "out-of-range", "want -90 to 90°"},
		{"tilt_deg: 3", "«out_mm»: 3", "unknown-key", `surface "port aileron" has no setting "out_mm"`},
		{"out_mm: 300", "out_mm: «-300»", "out-of-range", "want 0 to 10000 mm"},
		{"out_mm: 300", "«tilt_deg»: 3", "unknown-key", `motor "port motor" has no setting "tilt_deg"`},
		{"port motor: {channel: 3, out_mm", "motor: {channel: 3, «out_mm»", "not-together", "is 300 mm out from the centre line, but on neither side"},
		{"side: port, out_mm: 900", "«out_mm»: 900", "not-together", "on neither side"},
		{"side: port, out_mm: 900", "side: «over», out_mm: 900", "unknown-word", "side of extra"},
		{"  drag rudder: {channel: 3, side: port,", "  «port starboard drag rudder»: {channel: 3,", "missing-key", "holds both sides"},
		{"controls:\n", "controls:\n  «2 stick»: yaw\n", "bad-name", "does not begin with a letter"},
		{"controls:\n", "controls:\n  stick: «{»}\n", "holds-nothing", `control "stick" holds nothing`},
		{"controls:\n", "controls:\n  stick: «jaw»\n", "unknown-word", `control "stick" is "jaw"`},
		{"controls:\n", "controls:\n  stick: {axis: yaw, «lever»: {}}\n", "not-together", `has both "axis" and "lever"`},
		{"controls:\n", "controls:\n  stick: {lever: «[»a, b]}\n", "wrong-kind", "want its detents"},
		{"controls:\n", "controls:\n  stick: {lever: {}, «trim»: 3%}\n", "not-together", "only an axis can have one"},
		{"controls:\n", "controls:\n  stick: «[»one]\n", "out-of-range", "has 1 position, want 2 to 6"},
		{"controls:\n", "controls:\n  stick: [one, «One»]\n", "duplicate-name", "another position of control \"stick\" is called"},
		{"controls:\n", "controls:\n  stick: {axis: yaw, «trim»: {name: a}}\n", "missing-key", `trim of control "stick" has no "range"`},
		{"controls:\n", "controls:\n  stick: {axis: yaw, trim: «[»5%]}\n", "wrong-kind", "trim of control \"stick\" is a list"},
		{"controls:\n", "controls:\n  stick: {axis: yaw, «trim»: }\n", "no-value", `"trim" has no value`},
		{"aka: flaps", "aka: «pitch-stick»", "duplicate-name", `another control is called "pitch-stick"`},
		{"reversed: true}}", "reversed: «on»}}", "wrong-kind", "reversed is \"on\", want true or false"},
		{"reversed: true}}", "reversed: «[»true]}}", "wrong-kind", "reversed is a list, want true or false"},
		{"when: flap lever is above 50%, ", "", "missing-key", `phase "landing" has no "when"`},
		{"when: flap lever", "when: «flop lever»", "unknown-name", `looks at "flop lever"`},
		{"when: flap lever is above 50%", "when: «[»a]", "wrong-kind", "want a condition"},
		{"fade: 1.5 s", "fade: «61 s»", "out-of-range", "want 0 to 60 s"},
		{"  calm: rate switch is low", "  calm: «[»a]", "wrong-kind", `phase "calm" is a list`},
		{"from: roll stick", "from: «role stick»", "unknown-name", `demand "roll" comes from "role stick"`},
		{"from: roll stick", "from: «roll trim»", "not-together", "comes from a trim"},
		{"from: roll stick, ", "", "missing-key", `demand "roll" has no "from"`},
		{"from: roll stick,", "from: roll stick, «throw»: 80%,", "not-together", `both "rates" and "throw"`},
		{"from: roll stick,", "from: roll stick, trim: «yes»,", "unknown-word", `trim of demand "roll" is "yes", want no`},
		{"throw: {right: 50%, left: 40%}", "throw: «{»right: 50%}", "missing-key", `throw has no "left"`},
		{"throw: {right: 50%, left: 40%}", "throw: {right: 50%, left: 40%, «back»: 40%}", "unknown-key", `throw has no setting "back"`},
		{"curve: {-100%: -90%, 0%: 0%, 100%: 100%}, ", "", "missing-key", `has "smooth" but no "curve"`},
		{"curve: {-100%: -90%, 0%: 0%, 100%: 100%}", "curve: «[»0%, 1%]", "wrong-kind", "curve of demand \"pitch\" is a list, want points"},
		{"curve: {-100%: -90%, 0%: 0%, 100%: 100%}", "«curve»: {100%: 100%}", "out-of-range", "has 1 point, want 2 to 33"},
		{"curve: {-100%: -90%, 0%: 0%, 100%: 100%}", "curve: {-100%: -90%, 0%: 0%, «-0»: 0%, 100%: 100%}", "duplicate-key", `"-0" is given twice`},
		{"curve: {-100%: -90%, 0%: 0%, 100%: 100%}", "curve: {-100%: -90%, «101%»: 0%, 100%: 100%}", "out-of-range", "a position of curve of demand \"pitch\" is 101 %"},
		{"curve: {-100%: -90%, 0%: 0%, 100%: 100%}", "curve: {-100%: -90%, «0%:0%», 100%: 100%}", "colon", "no space after the colon"},
		{"values: {low: 0%, high: 100%}", "values: «[»0%, 100%]", "wrong-kind", "values of demand \"rate\" is a list"},
		{"values: {low: 0%, high: 100%}", "values: {low: 0%, high: 100%, «High»: 3%}", "duplicate-key", `"High" is given twice`},
		{"values: {low: 0%, high: 100%}", "«values»: {low: 0%}", "missing-key", `has none for "high"`},
		{", values: {low: 0%, high: 100%}", "", "missing-key", `demand "rate" has no "values"`},
		{"name: wing", "name: «3»", "bad-name", "not taken as a name"},
		{"share: {right: 20%, left: 30%}", "share: {right: 20%, left: «30 mm»}", "bad-unit", "left of share"},
		{"when: calm", "when: «clam»", "unknown-name", `the condition names "clam"`},
		{", 3%]", ", «{»share: 3%}]", "missing-key", "does not say what it does"},
		{", 3%]", ", «[»3%]]", "wrong-kind", "a mix line of channel 1 is a list"},
		{"mix: pitch", "mix: «3%»", "wrong-kind", "want a demand or a list of lines"},
		{"mix: pitch", "mix: «{»add: pitch}", "wrong-kind", "want a demand or a list of lines"},
		{"mix: pitch, ", "", "missing-key", `channel 2 has no "mix"`},
		{"add: flap}", "add: flap, share: «{»plus: 3%, minus: 4%}}", "not-together", "does not come from an axis"},
		{"scale_by: rate", "scale_by: «rat»", "unknown-name", `mix is scaled by "rat"`},
		{"{scale_by: rate}", "«{»scale_by: pitch}", "scale-out-of-range", "pitch"},
		{"failsafe: -90%", "failsafe: «-90»", "bad-unit", "without a unit"},
		{"failsafe: -90%", "failsafe: «holt»", "unknown-word", `is "holt"`},
		{"failsafe: -90%", "failsafe: «-090%»", "bad-number", "begins with a 0"},
		{"failsafe: -90%", "failsafe: «-90°»", "bad-unit", "want a percent"},
		{"failsafe: -90%", "failsafe: «900 µs»", "out-of-range", "within its pulse limits, 1000 to 2000 µs"},
		{"max: 2000", "max: «2600»", "out-of-range", "want 500 to 2500 µs"},
		{"channels:\n", "channels:\n  «three»: roll\n", "bad-number", `a channel is "three"`},
		{"surfaces:\n", "  «\"3\"»: roll\nsurfaces:\n", "duplicate-key", "given twice"},
		{"channels:\n", "channels:\n  4: «[»roll]\n", "wrong-kind", "channel 4 is a list"},
		{"port aileron: {", "port aileron: {«side»: right, ", "side-against-name", "its name says otherwise"},
		{"port aileron: {", "port aileron: {side: «over», ", "unknown-word", "side of surface"},
		{"port aileron: {", "«port starboard aileron»: {", "missing-key", "holds both sides"},
		{"port aileron: {", "«port alieron»: {", "missing-key", `surface "port alieron" has no "kind"`},
		{"port aileron: {", "port aileron: {kind: «motor», ", "unknown-word", "kind of surface"},
		{"  port aileron:", "  port flap: «3»\n  port aileron:", "wrong-kind", `surface "port flap" is "3"`},
		{"  port aileron:", "  «port flap»: {measured: {100%: 3° up}}\n  port aileron:", "missing-key", `has no "channel"`},
		{"  port aileron:", "  «port flap»: {channel: 1}\n  port aileron:", "missing-key", `has no "linkage" or "measured"`},
		{"span_mm: [140, 470]", "span_mm: «[»140]", "out-of-range", "want from and to"},
		{"span_mm: [140, 470]", "span_mm: [«470», 140]", "out-of-range", "want it outwards"},
		{"span_mm: [140, 470]", "span_mm: [140, «far»]", "bad-number", "which is no number"},
		{"stops: {up: 20°}", "stops: {«left»: 20°}", "unknown-key", `has no setting "left"`},
		{"0%: 0°,", "0%: «4°»,", "unknown-word", "without a direction"},
		{"0%: 0°,", "0%: «4° right»,", "unknown-word", "want up or down behind the angle"},
		{"0%: 0°,", "0%: «up 4°»,", "bad-number", "no number"},
		{"0%: 0°,", "0%: «[»4°],", "wrong-kind", "want an angle and a direction"},
		{"measured: {-100%: 24° up, 0%: 0°, 100%: 20° down}", "measured: {-100%: 24° up, 0%: 0°, «0»: 1° up, 100%: 20° down}", "duplicate-key", "given twice"},
		{"measured: {-100%: 24° up, 0%: 0°, 100%: 20° down}", "«measured»: {-100%: 24° up, 0%: 25° up, 100%: 20° down}", "table-turns-back", "turns back"},
		{"    servos:\n", "    «channel»: 2\n    servos:\n", "not-together", `both "servos" and "channel"`},
		{"- {channel: 2, ", "- «{»", "missing-key", `servo 1 of surface "elevator" has no "channel"`},
		{"- {channel: 2, ", "- {channel: «4», ", "unknown-name", "is on channel 4, which the file does not have"},
		{"- {channel: 2, ", "- {channel: «wing», ", "bad-number", `is "wing", want its number`},
		{", 3%]", ", {«pitch»: 3%}]", "unknown-key", `has no setting "pitch"`},
		{"- {channel: 2, ", "- {channel: «-2», ", "out-of-range", "want 1 to 32"},
		{"- {channel: 2, ", "- {channel: «+2», ", "bad-number", "want a whole number"},
		{"      - {channel: 2, ", "      - «3»\n      - {channel: 2, ", "wrong-kind", "servo 1 of surface"},
		{"servo: {plus_swings: aft, swing_deg: 40}, ", "", "missing-key", `has no "servo"`},
		{"servo: {plus_swings: aft, swing_deg: 40}", "«servo»: {swing_deg: 40}", "missing-key", `has no "plus_swings"`},
		{"servo: {plus_swings: aft, swing_deg: 40}", "servo: «[»aft]", "wrong-kind", "servo of servo 1 of surface"},
		{"arm: below", "arm: «left»", "unknown-word", "want above or below"},
		{"horn: below, ", "", "missing-key", `linkage of servo 1 of surface "elevator" has no "horn"`},
		{"linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: below, arm: below}", "linkage: «3»", "wrong-kind", "want settings"},
		{"linkage: {arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: below", "«linkage»: {arm_mm: 12, horn_mm: 6, pivots_mm: 60, horn: below", "linkage-locks", "locks"},
		{"place: tail", "place: «middle»", "unknown-word", "want nose or tail"},
		{"wheel: {place", "wheel: {«kind»: aileron, place", "unknown-key", `wheel "wheel" has no setting "kind"`},
		{"idle_us: 1000", "«idle_us»: 2000", "out-of-range", "want idle below full"},
		{"idle_us: 1000, full_us: 1900", "«full_us»: 900", "out-of-range", "want idle below full"},
		{"stopped_when: rate switch is low", "stopped_when: «rate switch»", "bad-condition", "is a control"},
		{"port motor: {channel: 3, ", "«port motor»: {", "missing-key", `motor "port motor" has no "channel"`},
		{"plus_moves: in", "plus_moves: «up»", "unknown-word", "want out or in"},
		{"hook: {", "«hoook»: {", "missing-key", `extra "hoook" has no "kind"`},
		{"hook: {", "hook: &a {", "alias", `"&a" marks this`},
		{"controls:\n", "controls:\n  «true»: yaw\n", "bad-name", `"true" is not taken as a name`},
		{"controls:\n", "controls:\n  «null»: yaw\n", "bad-name", `"null" is not taken as a name`},
		{"mass_kg: 3.2", "still_deg: «2.001»\nmass_kg: 3.2", "out-of-range", "still_deg is 2.001°, want 0.001 to 2°"},
		{"idle_us: 1000", "stopped_below: «10.001%», idle_us: 1000", "out-of-range", "want 0 to 10 %"},
		{"share: {right: 20%, left: 30%}", "share: {right: «0.65», left: 30%}", "bad-unit", `right of share is "0.65", but 0.65 % moves almost nothing`},
		{"throw: 90%", "throw: «0.9»", "bad-unit", `throw is "0.9", but 0.9 % moves almost nothing`},
		{"range: 8%", "range: «1»", "bad-unit", "1 % moves almost nothing"},
		{"pitch stick: pitch", "pitch stick: {axis: pitch, trim: «1.999»}", "bad-unit", "1.999 % moves almost nothing"},
		{"limit: 90%", "limit: «1»", "bad-unit", "1 % moves almost nothing"},
		{"limit: 90%", "limit: «0.9»", "bad-unit", "0.9 % moves almost nothing"},
		{"end_points: {plus: 90%, minus: 80%}", "end_points: «1»", "bad-unit", "1 % moves almost nothing"},
		{"limit: 90%", "limit: «0.9%»", "out-of-range", "limit of channel 2 is 0.9 %"},
		{"throw: 90%", "throw: «-0.5»", "out-of-range", "throw is -0.5 %, want 0 to 100 %"},
		{"arm_mm: 10, horn_mm: 15, pivots_mm: 60, horn: below", "arm_mm: «10,5», horn_mm: 15, pivots_mm: 60, horn: below", "bad-number", `"10,5" is two things to YAML, want a decimal point, not a comma`},
		{"throw: {right: 50%, left: 40%}", "throw: {right: «50,25%», left: 40%}", "bad-number", `"50,25%" is two things`},
		{"0%: 0°,", "«12,5%»: 4° up,", "bad-number", `"12,5%" is two things`},
		{"0%: 0°,", "0%: «0,5° up»,", "bad-number", `"0,5° up" is two things`},
		{"span_mm: [140, 470]", "span_mm: [«140,5», 470]", "bad-number", `"140,5" is two things`},
		{"span_mm: [140, 470]", "span_mm: [140, «470,5»]", "bad-number", `"470,5" is two things`},
		{", 3%]", ", «3,5%»]", "bad-number", `"3,5%" is two things`},
		{"mass_kg: 3.2", "mass_kg: «3,2»", "bad-number", "want a decimal point, not a comma"},
		{"port aileron: {channel", "port aileron: {aka: [outer, «right outer»], channel", "side-against-name", `surface "port aileron" is on the other side, but it is also known as "right outer"`},
		{"  drag rudder: {channel: 3, side: port,", "  drag rudder: {channel: 3, side: port, aka: «starboard drag»,", "side-against-name", "on the other side"},
		{"hook: {channel", "hook: {aka: «left hook», channel", "side-against-name", "on neither side"},
		{"pitch stick: pitch", "pitch stick: {axis: pitch, aka: «yaw stick»}", "side-against-name", `is called "yaw stick", but its axis is pitch`},
		{"controls:\n", "controls:\n  «roll wheel»: yaw\n", "side-against-name", `is called "roll wheel", but its axis is yaw`},
		{"range: 8%", "name: «pitch trim», range: 8%", "side-against-name", "but its axis is roll"},
		{"range: 8%", "name: «Yaw», range: 8%", "reserved-word", "the word for an axis"},
		{"controls:\n", "controls:\n  flaps switch: [up, «Half»]\n", "reserved-word", `is called "Half", a word by which sentences say where a stick is`},
		{"controls:\n", "controls:\n  flaps switch: {switch: [«left», mid]}\n", "reserved-word", `is called "left"`},
		{"controls:\n", "controls:\n  slide lever: {lever: {shut: 0, «full»: 80}}\n", "reserved-word", `detent "full" stands at 80 %, but sentences take the word for 100 %`},
		{"controls:\n", "controls:\n  slide lever: {lever: {shut: 0, «neutral»: 50}}\n", "reserved-word", `a detent is called "neutral"`},
		{"hook: {", "«hоok»: {kind: hook, ", "bad-name", "mixes letters of two alphabets: after Latin ones comes 'о', which is Cyrillic"},
		{"aka: flaps", "aka: «flαps»", "bad-name", "which is Greek"},
		{"0%: 0°,", "0%: «-4°»,", "unknown-word", "want an angle without a sign and up or down behind it"},
		{"0%: 0°,", "0%: «-4° up»,", "unknown-word", "want an angle without a sign"},
		{"measured: {-100%: 24° up, 0%: 0°, 100%: 20° down}", "measured: «20° up»", "wrong-kind", "want points such as {100%: 20° up}"},
		{"  calm: rate switch is low", "  calm: «rates = low»", "bad-condition", "does not say in words where a control stands"},
		{"flap: flap lever", "flap: «12»", "bad-name", "not taken as a name"},
		{"flap: flap lever", "flap: {from: «[»flap lever]}", "wrong-kind", "from of demand \"flap\" is a list, want a control"},
		{"add: flap", "add: «{»flap: 3}", "wrong-kind", "mix adds is settings"},
	} {
		if !strings.Contains(whole, c.old) {
			t.Fatalf("the file does not hold %q", c.old)
		}
		if !slices.Contains(loaderCodes, c.code) {
			t.Errorf("no broken file shows %s", c.code)
		}
		marked := strings.Replace(whole, c.old, c.new, 1)
		text := strings.NewReplacer("«", "", "»", "").Replace(marked)
		_, problems := airframes.Load("f", []byte(text))
		if len(problems) != 1 || problems[0].Code != c.code || !strings.Contains(problems[0].Message, c.message) {
			var shown bytes.Buffer
			diag.Write(&shown, problems, diag.NewSource("f", []byte(text)))
			t.Errorf("%q: want [%s] %q alone, got\n%s", c.new, c.code, c.message, shown.String())
			continue
		}
		if before, after, ok := strings.Cut(marked, "«"); ok {
			word, _, _ := strings.Cut(after, "»")
			line := strings.Count(before, "\n") + 1
			column := len([]rune(before[strings.LastIndex(before, "\n")+1:])) + 1
			if p := problems[0]; p.Line != line || p.Column != column {
				t.Errorf("%q: got line %d column %d, want %d and %d", c.new, p.Line, p.Column, line, column)
			}
			if problems[0].Width != len([]rune(word)) {
				t.Errorf("%q: the caret is %d wide, want %d", c.new, problems[0].Width, len([]rune(word)))
			}
		}
	}
}

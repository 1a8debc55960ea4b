package resolved_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/verifytest"
)

// A planted change for each kind of setting, and what is said of it.
func TestEachChangeIsSaid(t *testing.T) {
	for _, row := range []struct {
		old, new string
		want     []string
	}{
		{"name: All of it", "name: All of that", []string{"the model: name All of it → All of that"}},
		{"mass_kg: 3", "mass_kg: 3.5", []string{"the model: mass 3 → 3.5 kg"}},
		{"mass_kg: 3\n", "", []string{"the model: mass 3 kg → not said"}},
		{"airspeed_ms: 20", "airspeed_ms: 21", []string{"the model: airspeed 20 → 21 m/s"}},
		{"mass_kg: 3", "mass_kg: 3\nstill_deg: 0.4", []string{"the model: what counts as still 0.5 → 0.4°"}},
		{"tip_chord_mm: 200", "tip_chord_mm: 190", []string{"the wing: tip chord 200 → 190 mm"}},
		{"aka: ailerons", "aka: [ailerons, bank]", []string{"roll stick: further names ailerons → ailerons, bank"}},
		{"{axis: roll, trim: 8%", "{axis: roll, trim: {range: 8%, reversed: yes}", []string{"demand roll: full trim adds 8 → -8 %"}},
		{"landing: 90}", "landing: 85}", []string{"flap lever landing: is at 90 → 85 %"}},
		{"landing: 90}", "landing: 90, mid: 50}", []string{"flap lever has a new position mid"}},
		{"{parked: 0, landing: 90}", "{parked: 0, down: 90}", []string{"flap lever: the position landing is called down now"}},
		{"[safe, live]", "[safe, live, mid]", []string{"motor switch has a new position mid"}},
		{"[safe, live]", "[live, safe]", []string{"motor switch: the position safe is number 2 now, not number 1"}},
		{"fade: 2", "fade: 0", []string{"phase slowly: fades in 2 s → at once"}},
		{"launch: {when: flap lever is at least 50%}", "launch: {when: flap lever is at least 51%}",
			[]string{"phase launch: is in force when flap lever is at least 50 % → when flap lever is at least 51 %"}},
		{"{when: flap lever is at least 50%}", "{when: rate switch is high}",
			[]string{"phase launch: is in force when flap lever is at least 50 % → when rate switch is high"}},
		{"throw: {right: 90%, left: 80%}", "throw: {right: 90%, left: 81%}",
			[]string{"demand roll: throw (rate switch is high) 90 % right, 80 % left → 90 % right, 81 % left"}},
		{"      - {throw: 50%}", "      - {when: rate switch is top, throw: 30%}\n      - {throw: 50%}", []string{"demand roll has a new rate: when rate switch is top"}},
		{"expo: 30%", "expo: 31%", []string{"demand roll: expo (rate switch is high) 30 → 31 %"}},
		{"0%: 10%, 100%", "0%: 11%, 100%", []string{"demand roll: curve at 0 % 10 → 11 %"}},
		{"0%: 10%, 100%", "0%: 10%, 50%: 60%, 100%", []string{"demand roll has a new curve point at 50 %: 60 %"}},
		{"smooth: yes", "smooth: no", []string{"demand roll has a curve of straight lines"}},
		{"flap: {from: flap lever}", "flap: {from: flap lever, throw: 90%}", []string{"demand flap: throw 100 → 90 %"}},
		{"values: {low: 10%", "values: {low: 12%", []string{"demand mode: value at low 10 → 12 %"}},
		{"  spare: {from: rate switch, values: {low: 1%, high: 2%, top: 3%}}\n", "", []string{"demand spare is gone"}},
		{"  spare: {", "  extra: {", []string{"demand spare is called extra now"}},
		{"name: left one", "name: right two", []string{"channel 1 (right two): name left one → right two"}},
		{"share: {right: 40%, left: 30%}", "share: 40%", []string{"channel 1 (left one): share of roll 40 % right, 30 % left → 40 %"}},
		{"      - {scale_by: flap}\n", "", []string{"channel 1 (left one) no longer has its line: scaled by flap"}},
		{"      - {scale_by: flap}\n      - {fixed: 3%}\n", "      - {fixed: 3%}\n      - {scale_by: flap}\n", []string{"channel 1 (left one): the line: scaled by flap is number 3 now, not number 2"}},
		{"{fixed: 3%}", "{fixed: 4%}", []string{"channel 1 (left one): fixed percent 3 → 4 %"}},
		{"{fixed: 3%}", "{add: flap}", []string{"channel 1 (left one): line 3 was 3 % fixed, and is 100 % of flap"}},
		{"{replace_with: 5%, when: landing}", "{replace_with: 5%, when: launch}", []string{"channel 1 (left one): replacement counts when landing → when launch"}},
		{"{replace_with: 5%, when: landing}", "{replace_with: 5%}", []string{"channel 1 (left one): replacement counts when landing → always"}},
		{"limit: 90%", "limit: 91%", []string{"channel 1 (left one): travel limit 90 → 91 %"}},
		{"mix: [roll], reversed: true", "mix: [roll]", []string{"channel 2 (right one) is no longer reversed"}},
		{"name: power, mix", "name: power, reversed: yes, mix", []string{"channel 3 (power) is reversed"}},
		{"sub_trim: 3%", "sub_trim: -3%", []string{"channel 1 (left one): sub-trim 3 → -3 %"}},
		{"end_points: {plus: 90%, minus: 80%}", "end_points: {plus: 90%, minus: 95%}", []string{"channel 1 (left one): end points 90 % plus, 80 % minus → 90 % plus, 95 % minus"}},
		{"max: 1990}", "max: 1980}", []string{"channel 1 (left one): longest pulse 1990 → 1980 µs"}},
		{"slow: 1\n", "slow: 2\n", []string{"channel 1 (left one): moves through 100 % in 1 → 2 s"}},
		{"failsafe: 4%", "failsafe: hold", []string{"channel 1 (left one): on loss of signal 4 % → hold"}},
		{"failsafe: 4%", "failsafe: 1525 us", []string{"channel 1 (left one): on loss of signal 4 → 5 %"}},
		{"chord_mm: 40", "chord_mm: 41", []string{"port aileron: chord 40 → 41 mm"}},
		{"[100, 400]", "[110, 400]", []string{"port aileron: span 100 mm to 400 → 110 mm to 400 mm"}},
		{"    aft_mm: 10\n", "", []string{"port aileron: place aft of the balance point 10 mm → none"}},
		{"stops: {up: 40°, down: 40°}", "stops: {up: 40°}", []string{"port aileron: stop DOWN 40° → none"}},
		{"plus_swings: aft", "plus_swings: fore", []string{"port aileron: plus swings the servo aft → fore"}},
		{"torque_ncm: 30", "torque_ncm: 31", []string{"port aileron: servo's torque 30 → 31 N·cm"}},
		{"horn_mm: 20", "horn_mm: 21", []string{"port aileron: horn 20 → 21 mm"}},
		{"horn: below", "horn: above", []string{"port aileron: horn below → above", "port aileron: offset of the hinge line towards the horn -2 → 2 mm"}},
		{"pushrod_mm: 60}", "arm: above}", []string{"port aileron: pushrod 60 mm → as neutral needs it", "port aileron: arm on the horn's side → on the other side than the horn"}},
		{"{channel: 2, measured: {-200%: 40° down", "{channel: 2, measured: {-200%: 41° down", []string{"starboard aileron, servo 1: measured at -200 % DOWN 40 → DOWN 41°"}},
		{"{channel: 2, measured: {-200%: 40° down, 0%: 0°, 200%: 40° up}}", "{channel: 2, measured: {-200%: 40° up, 0%: 0°, 200%: 40° down}}",
			[]string{"starboard aileron, servo 1: measured at -200 % DOWN 40 → UP 40°", "starboard aileron, servo 1: measured at 200 % UP 40 → DOWN 40°"}},
		{"idle_us: 1010", "idle_us: 1000", []string{"motor: idle pulse 1010 → 1000 µs"}},
		{"stopped_below: 3%", "stopped_below: 2%", []string{"motor: stands still up to 3 → 2 %"}},
		{", stopped_when: motor switch is safe", "", []string{"motor: is to be stopped when motor switch is safe → not said"}},
		{"gear retract: {channel: 2, plus_moves: in}", "gear retract: {channel: 2}", []string{"gear retract: plus moves it in → out"}},
		{"gear retract: {", "gear hook: {", []string{"gear hook is new", "gear retract is gone"}},
		{"extras:\n  gear retract: {channel: 2, plus_moves: in}\n", "", []string{"gear retract is gone"}},
	} {
		was := verifytest.Model(t, "was.yaml", everything)
		is := verifytest.Model(t, "is.yaml", swap(t, everything, row.old, row.new))
		got := resolved.Differences(was, is)
		if !slices.Equal(texts(got), row.want) {
			t.Errorf("%s\ngot  %q\nwant %q", row.new, texts(got), row.want)
		}
		for _, d := range got {
			if want := "is.yaml"; d.Gone {
				want = "was.yaml"
			} else if d.Place.File != want || d.Place.Line == 0 {
				t.Errorf("%s: at %+v", d.Text, d.Place)
			}
		}
		if digest(was) == digest(is) {
			t.Errorf("%s: the digest is the same", row.new)
		}
	}
}

// One thing that is called otherwise is one difference, however often it is used.
func TestAnotherNameIsOneDifference(t *testing.T) {
	was := verifytest.Model(t, "was.yaml", everything)
	for _, row := range []struct{ old, new, want string }{
		{"rate switch", "mode switch", "rate switch is called mode switch now"},
		{"landing", "final", ""},
		{"slowly", "gently", "phase slowly is called gently now"},
		{"roll stick", "bank stick", "roll stick is called bank stick now"},
		{"starboard aileron", "right outer aileron", "starboard aileron is called right outer aileron now"},
		{"high", "steep", "rate switch: the position high is called steep now"},
	} {
		is := verifytest.Model(t, "is.yaml", strings.ReplaceAll(everything, row.old, row.new))
		got := resolved.Differences(was, is)
		if row.want == "" { // a phase and a lever's position at once
			if len(got) != 2 {
				t.Errorf("%q", texts(got))
			}
			continue
		}
		if len(got) != 1 || got[0].Text != row.want || len(got[0].Parts) > 0 {
			t.Errorf("%s: got %q bearing on %v", row.new, texts(got), got)
		}
		if digest(was) == digest(is) {
			t.Errorf("%s: names count", row.new)
		}
	}
}

func TestSpellingChangesNothing(t *testing.T) {
	was := verifytest.Model(t, "was.yaml", everything)
	for _, row := range [][2]string{
		{"port aileron:", "Left-Aileron:"},
		{"limit: 90%", "limit: 90.000"},
		{"failsafe: 4%", "failsafe: 1520 us"},
		{"flap: {from: flap lever}", "flap: {from: FLAP-lever, throw: 100%, expo: 0}"},
		{"mix: [roll], reversed: true", "mix: [{add: roll, share: 100%}], reversed: yes, sub_trim: 0, limit: 100%"},
		{"flap lever is above 20% and rate switch is not high", "rate switch is not high and (flap lever is above 20% and flap lever is above 20%)"},
		{"name: All of it", "about: It has everything.\nname: All of it"},
		{"horn: below,", "horn: below, arm: below,"},
	} {
		is := verifytest.Model(t, "is.yaml", swap(t, everything, row[0], row[1]))
		if got := resolved.Differences(was, is); len(got) > 0 || digest(was) != digest(is) {
			t.Errorf("%s: got %q", row[1], texts(got))
		}
	}
}

// What is said is rounded for reading; a change too small for that is said exactly.
func TestLastBitIsSaid(t *testing.T) {
	was := verifytest.Model(t, "was.yaml", everything)
	is := verifytest.Model(t, "is.yaml", everything)
	is.Setup.Channels[0].SubTrim = 3.0000000000000004
	if got, want := texts(resolved.Differences(was, is)), []string{"channel 1 (left one): sub-trim 3 → 3.0000000000000004 %"}; !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
}

func TestPartsThatADifferenceBearsOn(t *testing.T) {
	was := verifytest.Model(t, "was.yaml", everything)
	for _, row := range []struct {
		old, new string
		want     []string
	}{
		{"expo: 30%", "expo: 31%", []string{"port aileron", "starboard aileron", "gear retract"}},
		{"launch: {when: flap lever is at least 50%}", "launch: {when: flap lever is at least 51%}", []string{"port aileron", "starboard aileron"}},
		{"{parked: 0, landing: 90}", "{parked: 0, landing: 89}", []string{"port aileron", "starboard aileron"}},
		{"values: {low: 10%", "values: {low: 12%", []string{"motor"}},
		{"spare: {from: rate switch, values: {low: 1%", "spare: {from: rate switch, values: {low: 2%", nil},
		{"[safe, live]", "[safe, live, mid]", []string{"motor"}},
		{"tip_chord_mm: 200", "tip_chord_mm: 190", []string{"port aileron", "starboard aileron"}},
	} {
		got := resolved.Differences(was, verifytest.Model(t, "is.yaml", swap(t, everything, row.old, row.new)))
		if len(got) != 1 || !slices.Equal(got[0].Parts, row.want) {
			t.Errorf("%s: got %+v, want %q", row.new, got, row.want)
		}
	}
}

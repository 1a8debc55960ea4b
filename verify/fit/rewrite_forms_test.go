package fit

import (
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
)

// The ways in which a file may be written, each with what is to come of it: the arm at
// 11.25 mm and 86.5°, or a table with one more point. Everything else stays.
func TestRewriteTakesEveryWayOfWriting(t *testing.T) {
	const head = "hingeline: 1\nname: Sorrel\ncontrols: {roll stick: roll, pitch stick: pitch}\ndemands: {roll: roll stick, pitch: pitch stick}\nchannels: {1: roll, 2: pitch}\nsurfaces:\n"
	const rest = "  elevator: {channel: 2, servo: aft, linkage: {arm_mm: 10, horn_mm: 16, pivots_mm: 60, horn: below}}\n"
	for _, c := range []struct{ name, was, is string }{
		{"arm last, the bracket below it", "  aileron:\n    channel: 1\n    servo: aft\n    linkage: {\n      horn_mm: 16, pivots_mm: 60, horn: below,\n      arm_mm: 10  # guessed\n    }\n",
			"  aileron:\n    channel: 1\n    servo: aft\n    linkage: {\n      horn_mm: 16, pivots_mm: 60, horn: below,\n      arm_mm: 11.25, arm_deg: 86.5  # guessed\n    }\n"},
		{"other letters before it on the line", "  aileron: {aka: [Querruder größer], channel: 1, servo: aft, linkage: {horn_mm: 16, arm_mm: 10, pivots_mm: 60, horn: below}}  # ü\n",
			"  aileron: {aka: [Querruder größer], channel: 1, servo: aft, linkage: {horn_mm: 16, arm_mm: 11.25, arm_deg: 86.5, pivots_mm: 60, horn: below}}  # ü\n"},
		{"a list of servos", "  aileron:\n    servos:\n      - channel: 1\n        servo: aft\n        linkage:\n          arm_mm: 10\t# a tab\n          horn_mm: 16\n          pivots_mm: 60\n          horn: below\n",
			"  aileron:\n    servos:\n      - channel: 1\n        servo: aft\n        linkage:\n          arm_deg: 86.5\n          arm_mm: 11.25\t# a tab\n          horn_mm: 16\n          pivots_mm: 60\n          horn: below\n"},
		{"single quotes, space before the colon", "  'left  aileron':\n    channel: 1\n    servo: aft\n    linkage: { 'arm_mm' : '10 mm' , horn_mm: 16, pivots_mm: 60, horn: below, arm_deg : 90 }\n",
			"  'left  aileron':\n    channel: 1\n    servo: aft\n    linkage: { 'arm_mm' : '11.25 mm' , horn_mm: 16, pivots_mm: 60, horn: below, arm_deg : 86.5 }\n"},
		{"a table, a line each", "  aileron:\n    channel: 1\n    measured:\n      -100%: 20° up     # with the gauge\n      0%: 0°\n      # the outer one\n      100%: 22 down\t# again\n",
			"  aileron:\n    channel: 1\n    measured:\n      -100%: 18.5° up     # with the gauge\n      0%: 0.4° down\n      48.2%: 11° down\n      # the outer one\n      100%: 22 down\t# again\n"},
		{"a table from the other end, over two lines", "  aileron:\n    channel: 1\n    measured: {\"100%\": 22° down,   # first\n      0%: 0°, -100%: '20° up'}\n",
			"  aileron:\n    channel: 1\n    measured: {\"100%\": 22° down,   # first\n      0%: 0.4° down, 48.2%: 11° down, -100%: 18.5° up}\n"},
		{"a table of one point", "  aileron: {channel: 1, measured: {100%: 21° down}}\n",
			"  aileron: {channel: 1, measured: {-100%: 18.5° up, 0%: 0.4° down, 48.2%: 11° down, 100%: 22° down}}\n"},
		{"a table of one point, a line", "  aileron:\n    channel: 1\n    measured:\n      -100%: 21° up # far\n",
			"  aileron:\n    channel: 1\n    measured:\n      -100%: 18.5° up # far\n      0%: 0.4° down\n      48.2%: 11° down\n      100%: 22° down\n"},
	} {
		for _, form := range []struct {
			name string
			of   func(string) string
		}{
			{"plain", func(s string) string { return s }},
			{"CR LF", func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }},
			{"byte order mark", func(s string) string { return "\uFEFF" + s }},
			{"no line end at the end", func(s string) string { return strings.TrimSuffix(s, "\n") }},
		} {
			// The part stands last, so that the end of the file is tried too.
			m := sorrelModel(t, form.of(head+rest+c.was))
			part := partNamed(m, "aileron")
			if part < 0 {
				part = partNamed(m, "left aileron")
			}
			if part < 0 {
				t.Fatalf("%s: no aileron in %v", c.name, m.Setup.Parts)
			}
			fix := Correction{Part: part, Table: []mixcore.Point{{X: -100, Y: -18.5}, {X: 0, Y: 0.4}, {X: 48.2, Y: 11}, {X: 100, Y: 22}}}
			if m.Setup.Parts[part].Drives[0].Linkage != nil {
				fix = linkageWith(m, m.Setup.Parts[part].Name, 11.25, 86.5, 0)
			}
			got, err := Rewrite(m, []Correction{fix})
			if want := form.of(head + rest + c.is); err != nil || string(got) != want {
				t.Errorf("%s, %s: %v\ngot\n%s\nwant\n%s", c.name, form.name, err, got, want)
			}
		}
	}
}

// The same part twice is no way to be written.
func TestRewriteRefusesTwoCorrectionsOfOnePart(t *testing.T) {
	m := sorrelModel(t, sorrel)
	got, err := Rewrite(m, []Correction{linkageWith(m, "port aileron", 11, 92, 0), linkageWith(m, "port aileron", 12, 92, 0)})
	if err == nil || got != nil {
		t.Errorf("%s", got)
	}
}

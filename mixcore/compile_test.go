package mixcore_test

import (
	"strings"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

func TestCompileFaults(t *testing.T) {
	withLinkage := func(g linkage.Geometry) func(*mixcore.Setup) {
		return func(s *mixcore.Setup) { s.Parts[0].Drives = geared(0, g, true, 1) }
	}
	withTable := func(table ...mixcore.Point) func(*mixcore.Setup) {
		return func(s *mixcore.Setup) { s.Parts[0].Drives[0].Table = table }
	}
	for _, c := range []struct {
		name  string
		edit  func(*mixcore.Setup)
		codes string
		says  string
	}{
		// Arm 12, horn 8, pivots 60 locks inside ±45°: computed with a
		// general-purpose numerical library.
		{"locks", withLinkage(linkage.Geometry{Arm: 12, Horn: 8, Pivots: 60, ArmDeg: 90, HornDeg: 90}),
			mixcore.CodeLocks, "locks at -85.7 % of output (arm 38.6° fore)"},
		{"over centre", func(s *mixcore.Setup) {
			withLinkage(linkage.Geometry{Arm: 6, Horn: 25, Pivots: 70, ArmDeg: 50, HornDeg: 90})(s)
		}, mixcore.CodeOverCentre, "runs over centre"},
		{"cannot be joined", withLinkage(linkage.Geometry{Arm: 10, Horn: 15, Pivots: 60, Pushrod: 20, ArmDeg: 90, HornDeg: 90}),
			mixcore.CodeImpossible, "cannot be joined at neutral"},
		{"table too short", withTable(mixcore.Point{X: -100, Y: -20}, mixcore.Point{X: 90, Y: 20}),
			mixcore.CodeTooShort, "reaches from -100 % to 90 %, but the channel can put out -100 % to 100 %"},
		{"table turns back", withTable(mixcore.Point{X: -100, Y: -20}, mixcore.Point{X: 0, Y: -20}, mixcore.Point{X: 60, Y: 20}, mixcore.Point{X: 100, Y: 18}),
			mixcore.CodeTurnsBack, "turns back at 60 %"},
		{"failsafe counts", func(s *mixcore.Setup) {
			withTable(mixcore.Point{X: -50, Y: -20}, mixcore.Point{X: 50, Y: 20})(s)
			s.Channels[0].Limit = 50
			s.Channels[0].Failsafe = mixcore.Failsafe{Output: 70}
		}, mixcore.CodeTooShort, "-50 % to 70 %"},
		{"scale by an axis", func(s *mixcore.Setup) {
			s.Channels[0].Mix = append(s.Channels[0].Mix, mixcore.MixLine{Op: mixcore.ScaleBy, Demand: 0})
		}, mixcore.CodeScaleRange, "-100 % to 100 %"},
		{"scale by a lever", func(s *mixcore.Setup) {
			s.Channels[0].Mix = append(s.Channels[0].Mix, mixcore.MixLine{Op: mixcore.ScaleBy, Demand: 1})
		}, "", ""},
		{"held back before the lock", func(s *mixcore.Setup) {
			withLinkage(linkage.Geometry{Arm: 12, Horn: 8, Pivots: 60, ArmDeg: 90, HornDeg: 90})(s)
			s.Channels[0].EndPoints.Minus = 80
		}, "", ""},
		{"servo stops before the lock", func(s *mixcore.Setup) {
			withLinkage(linkage.Geometry{Arm: 12, Horn: 8, Pivots: 60, ArmDeg: 90, HornDeg: 90})(s)
			s.Parts[0].Drives[0].Servo.Max = 38
		}, "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			plan, faults := mixcore.Compile(oneChannel(c.edit))
			var codes, text []string
			for _, f := range faults {
				codes, text = append(codes, f.Code), append(text, f.Message)
				if f.Hint == "" {
					t.Errorf("no hint: %+v", f)
				}
			}
			if (plan == nil) != (len(faults) > 0) {
				t.Errorf("plan %v with %d faults", plan != nil, len(faults))
			}
			if got := strings.Join(codes, " "); got != c.codes {
				t.Errorf("codes %q, want %q: %q", got, c.codes, text)
			}
			if !strings.Contains(strings.Join(text, "\n"), c.says) {
				t.Errorf("says %q, want %q", text, c.says)
			}
		})
	}
}

func TestCompileGivesEveryFault(t *testing.T) {
	s := sport()
	for i := range 4 {
		s.Parts[i].Drives[0].Linkage = &linkage.Geometry{Arm: 12, Horn: 8, Pivots: 60, ArmDeg: 90, HornDeg: 90}
	}
	_, faults := mixcore.Compile(s)
	if len(faults) != 4 {
		t.Errorf("%d faults, want 4: %+v", len(faults), faults)
	}
}

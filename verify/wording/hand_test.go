package wording_test

import (
	"slices"
	"testing"

	"example.com/hingeline/verify/verifytest"
	"example.com/hingeline/verify/wording"
)

// The file of this model has its throttle before its motor switch: said in that order, the
// motor would start at the flick of the switch.
func TestPoseIsSaidAsAHandSetsIt(t *testing.T) {
	m := verifytest.Shipped(t, "ousel-trainer")
	rest, runs := m.Plan.Rest(), m.Plan.Rest()
	for i := range m.Setup.Controls {
		switch m.Setup.Controls[i].Name {
		case "throttle":
			runs.Position[i] = 50
		case "motor switch":
			runs.Position[i] = 1
		case "roll stick":
			runs.Position[i] = -100
		}
	}
	runs.SignalLost = true
	want := []string{"roll stick full left", "motor switch live", "throttle 50 %", wording.SignalLost}
	if got := wording.Pose(&m.Setup, &runs); !slices.Equal(got, want) {
		t.Errorf("a pose: got %q, want %q", got, want)
	}
	if before, moved := wording.Moves(&m.Setup, &rest, &runs); before != nil || !slices.Equal(moved, want) {
		t.Errorf("a movement: got %q after %q, want %q", moved, before, want)
	}
	before, moved := wording.Moves(&m.Setup, &runs, &rest)
	if !slices.Equal(before, want) {
		t.Errorf("before a movement back: got %q, want %q", before, want)
	}
	if back := []string{"throttle 0 %", "motor switch safe", "roll stick centred", wording.SignalBack}; !slices.Equal(moved, back) {
		t.Errorf("a movement back: got %q, want %q", moved, back)
	}
	if sets := wording.Sets(&m.Setup, &runs); slices.Index(sets, "motor switch=live") < slices.IndexFunc(sets, func(s string) bool { return s[:8] == "throttle" }) {
		t.Errorf("settings for a command are not in the file's order: %q", sets)
	}
}

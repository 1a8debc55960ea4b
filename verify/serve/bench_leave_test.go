package serve

import (
	"strings"
	"testing"
)

// Whoever comes to the end, or pauses, with the throttle open or the signal lost is told to
// make the motor safe.
func TestBenchPageSaysHowToLeaveTheModel(t *testing.T) {
	r, _ := atBench(t, "bracken-20")
	h := r.openBench(t)
	h.begins()
	for h.v.Phase == "step" {
		h.expected()
	}
	leave := h.v.Leave
	if h.v.Phase != "last" || !strings.Contains(leave, "throttle") {
		t.Fatalf("%s: %q", h.v.Phase, leave)
	}
	if v := h.does("pause", 0, ""); !strings.HasSuffix(v.Said, leave) {
		t.Errorf("paused: %q", v.Said)
	}
}

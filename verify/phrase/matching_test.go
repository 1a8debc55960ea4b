package phrase

import "testing"

func TestMatchingFindsSentencesByWord(t *testing.T) {
	names := func(query string) map[string]bool {
		found := map[string]bool{}
		for _, s := range Matching(query) {
			found[s.Name] = true
		}
		return found
	}
	for query, want := range map[string][]string{
		"rises":         {"rise and drop", "several", "on purpose"},
		"RISING":        {"rise and drop"},
		"failsafe":      {"signal", "one line with when"},
		"torque":        {"servo torque"},
		"motor stopped": {"stopped", "stays stopped"},
		"agree":         {"servos agree"},
		"±":             {"rise and drop", "as far"},
	} {
		got := names(query)
		for _, name := range want {
			if !got[name] {
				t.Errorf("%q: %v, want %q among them", query, got, name)
			}
		}
		if len(got) == len(Sentences()) {
			t.Errorf("%q filters nothing", query)
		}
	}
	if got := Matching(""); len(got) != len(Sentences()) {
		t.Errorf("an empty query finds %d", len(got))
	}
	if got := Matching("xyzzy"); len(got) != 0 {
		t.Errorf("nonsense finds %v", got)
	}
}

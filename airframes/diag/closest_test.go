package diag

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestClosestFindsWhatWasMeant(t *testing.T) {
	among := []string{"roll", "pitch", "yaw", "flap lever", "rate switch", "port flap", "starboard flap", "reversed", "Landing Gear"}
	for name, want := range map[string]string{
		"rol":                      "roll",
		"rolll":                    "roll",
		"rlol":                     "roll",
		"ROLL":                     "roll",
		"piitch":                   "pitch",
		"reverse":                  "reversed",
		"lever flap":               "flap lever",
		"rate swicth":              "rate switch",
		"switch":                   "rate switch",
		"starbord flap":            "starboard flap",
		"landing gear":             "Landing Gear",
		"flap":                     "",
		"brake":                    "",
		"":                         "",
		"yu":                       "",
		"zzzz":                     "",
		"starboard flaps":          "starboard flap",
		strings.Repeat("r", 10000): "",
	} {
		if got, ok := Closest(name, among); got != want || ok != (want != "") {
			t.Errorf("%.20q: got %q, %v, want %q", name, got, ok, want)
		}
	}
}

func TestClosestTakesTheFirstOfEquals(t *testing.T) {
	if got, _ := Closest("bat", []string{"cat", "hat"}); got != "cat" {
		t.Errorf("got %q, want cat", got)
	}
}

// The distance must be that of the textbook recursion over the last letters.
func TestDistanceIsThatOfTheDefinition(t *testing.T) {
	var slow func(a, b []rune) int
	slow = func(a, b []rune) int {
		if len(a) == 0 || len(b) == 0 {
			return max(len(a), len(b))
		}
		m, n := len(a)-1, len(b)-1
		best := min(slow(a[:m], b), slow(a, b[:n])) + 1
		cost := 1
		if a[m] == b[n] {
			cost = 0
		}
		best = min(best, slow(a[:m], b[:n])+cost)
		if m > 0 && n > 0 && a[m] == b[n-1] && a[m-1] == b[n] {
			best = min(best, slow(a[:m-1], b[:n-1])+1)
		}
		return best
	}
	word := rapid.SliceOfN(rapid.SampledFrom([]rune("abé")), 0, 6)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		if got, want := distance(a, b), slow(a, b); got != want {
			t.Fatalf("%q to %q: got %d, want %d", string(a), string(b), got, want)
		}
	})
}

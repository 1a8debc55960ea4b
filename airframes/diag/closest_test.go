package diag

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestClosestFindsWhatWasMeant(t *testing.T) {
	among := []string{"roll", "pitch", "yaw", "flap lever", "rate switch", "port flap", "starboard flap", "reversed", "Landing Gear", "chord_mm", "arm_mm", "arm_deg"}
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
		"chord":                    "chord_mm",
		"arm":                      "",
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

// A name that is taken for its opposite, side or way, can cost a model.
func TestClosestNeverSuggestsAnOpposite(t *testing.T) {
	among := []string{
		"port aileron", "starboard aileron", "left aileron", "right aileron", "full right", "full left", "half right", "half left",
		"rises", "drops", "stays", "stops", "runs", "speeds", "slows", "rolls", "high", "low", "run", "safe", "wheels up", "wheels down",
		"inner flap", "outer flap", "forward", "back", "retracts", "extends", "in", "out",
	}
	for name, want := range map[string]string{
		"stbd aileron":     "starboard aileron",
		"stb aileron":      "starboard aileron",
		"rt aileron":       "right aileron",
		"lft aileron":      "left aileron",
		"prot aileron":     "port aileron",
		"portaileron":      "port aileron",
		"starbord aileron": "starboard aileron",
		"aileron port":     "port aileron",
		"starts":           "",
		"steers":           "",
		"turns":            "",
		"starst":           "",
		"hard right":       "",
		"hard left":        "",
		"ful right":        "full right",
		"full rigth":       "full right",
		"wheels upp":       "wheels up",
		"wheels dwon":      "wheels down",
		"iner flap":        "inner flap",
		"oter flap":        "outer flap",
		"hihg":             "high",
		"safw":             "safe",
		"stop":             "stops",
		"stpos":            "stops",
		"dorps":            "drops",
		"risse":            "rises",
	} {
		if got, _ := Closest(name, among); got != want {
			t.Errorf("%q: got %q, want %q", name, got, want)
		}
	}
}

// No word of a family is ever suggested for one that means something else in it,
// alone or in front of a name.
func TestClosestKeepsFamiliesApart(t *testing.T) {
	for _, family := range apart {
		for i, meaning := range family {
			for k, other := range family {
				if i == k {
					continue
				}
				for _, word := range strings.Fields(meaning) {
					for _, wrong := range strings.Fields(other) {
						for _, behind := range []string{"", " flap", " aileron lever"} {
							if got, ok := Closest(word+behind, []string{wrong + behind}); ok {
								t.Errorf("%q: suggests %q", word+behind, got)
							}
						}
					}
				}
			}
		}
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
		want, most := slow(a, b), rapid.IntRange(0, 7).Draw(t, "most")
		if got := distance(a, b, most); got != want && (want <= most || got <= most) {
			t.Fatalf("%q to %q, at most %d: got %d, want %d", string(a), string(b), most, got, want)
		}
	})
}

package airframes_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
)

func TestFoldNameMakesSpellingsAlike(t *testing.T) {
	for _, name := range []string{"flap lever", "Flap Lever", "FLAP-LEVER", "flap_lever", "  flap \t lever ", "flap - lever"} {
		if got := airframes.FoldName(name); got != "flap lever" {
			t.Errorf("%q: got %q", name, got)
		}
	}
	if got := airframes.FoldName("-_ "); got != "" {
		t.Errorf("got %q, want nothing", got)
	}
}

func TestCheckNameKnowsWhatANameMayBe(t *testing.T) {
	for _, name := range []string{"a", "flap lever", "v-tail", "Servo 2", "grün", "日本", "île", "left inner flap 12", "android", "notch", strings.Repeat("x", 40)} {
		if message, _ := airframes.CheckName(name); message != "" {
			t.Errorf("%q is refused: %s", name, message)
		}
	}
	for name, want := range map[string]string{
		"": "empty", " ": "empty", "2nd": "begin with a letter", "-a": "begin with a letter", "a_b": "'_'", "a/b": "'/'", "a.b": "'.'", "a(b": "'('",
		"a\u200Bb": "no name may", strings.Repeat("x", 41): "at most 40",
		"stick of roll": `"of"`, "fly-by-wire": `"by"`, "ALL IN": `"in"`, "up or down": `"or"`,
	} {
		if message, _ := airframes.CheckName(name); !strings.Contains(message, want) {
			t.Errorf("%q: got %q, want it to say %q", name, message, want)
		}
	}
}

func TestFoldNameIsStable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.String().Draw(t, "name")
		once := airframes.FoldName(name)
		if twice := airframes.FoldName(once); twice != once {
			t.Fatalf("%q folds to %q and then to %q", name, once, twice)
		}
	})
}

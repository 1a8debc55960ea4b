package terminal

import (
	"strings"
	"testing"

	"example.com/hingeline/verify/report/sample"
	"example.com/hingeline/verify/result"
)

func TestAboutTheScriptGolden(t *testing.T) {
	for name, o := range map[string]Options{
		"backwards": {}, "backwards_brief": {Brief: true}, "backwards_narrow": {Width: 44}, "backwards_ascii": {ASCII: true},
	} {
		t.Run(name, func(t *testing.T) { golden(t, name, render(t, sample.Backwards(), o)) })
	}
}

// A script that is wrong is told as loudly as a failed check, in brief as well.
func TestWrongScriptIsNoPass(t *testing.T) {
	for _, brief := range []bool{false, true} {
		text := strings.Join(strings.Fields(render(t, sample.Backwards(), Options{Brief: brief})), " ")
		for _, want := range []string{
			"✗ DO NOT FLY: the script is wrong in 1 place, so it proves nothing; 0 of 5 checks failed",
			"ABOUT THE SCRIPT: 1 thing wrong, 1 thing to look at, 1 sentence kept on purpose",
			"rolls the model LEFT", "on purpose, the pilot's own decision:",
		} {
			if !strings.Contains(text, want) {
				t.Errorf("brief %v: the report lacks %q:\n%s", brief, want, text)
			}
		}
		if strings.Contains(text, "PASSED") {
			t.Errorf("brief %v: the report says PASSED:\n%s", brief, text)
		}
	}
}

func TestScriptThatWantsALookPassesAndSaysSo(t *testing.T) {
	r := sample.Backwards()
	r.Script, r.Verdict = r.Script[1:], result.Passed
	text := strings.Join(strings.Fields(render(t, r, Options{})), " ")
	for _, want := range []string{"PASSED", "About the script: 1 thing to look at, 1 sentence kept on purpose."} {
		if !strings.Contains(text, want) {
			t.Errorf("the report lacks %q:\n%s", want, text)
		}
	}
	if strings.Contains(text, "DO NOT FLY") {
		t.Errorf("a warning about the script fails the check:\n%s", text)
	}
}

package phrase

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"
)

// spans are the places of things in a sentence, which spelling moves.
var spans = regexp.MustCompile(`"\w*":\{"Column":\d+,"Width":\d+\}`)

// Plain says the same as what it was made from, of every kind of sentence, and is made
// from every spelling of it.
func TestPlainMeansTheSame(t *testing.T) {
	v := NewVocabulary(exampleModel(t, nil))
	means := func(text string) string {
		for _, role := range []Role{Then, Given, When} {
			if m, problem := v.Parse(role, text); problem == nil {
				said, err := json.Marshal(m)
				if err != nil {
					t.Fatal(err)
				}
				return spans.ReplaceAllString(string(said), "")
			}
		}
		t.Errorf("%q is not understood", text)
		return ""
	}
	for _, form := range Sentences() {
		plain := Plain(form.Example)
		if got, want := means(plain), means(form.Example); got != want {
			t.Errorf("%q means %s\n%q means %s", plain, got, form.Example, want)
		}
		if again := Plain(plain); again != plain {
			t.Errorf("%q comes to %q", plain, again)
		}
		if other := Plain("  " + strings.ToUpper(strings.ReplaceAll(form.Example, " ", "  ")) + "."); other != plain {
			t.Errorf("%q comes to %q, want %q", form.Example, other, plain)
		}
	}
}

func TestPlainKeepsNumbersApart(t *testing.T) {
	for _, row := range [][2]string{
		{"The Port-Flap rises  8.50 deg ± 1°", "the port flap rises 8.5 ° ± 1 °"},
		{"the motor gives 45 percent", "the motor gives 45 %"},
		{"channel 3 puts out −20%", "channel 3 puts out -20 %"},
		{"channel 3 puts out +20%", "channel 3 puts out +20 %"},
		{"the rudder 'claps'", "the rudder 'claps'"},
	} {
		if got := Plain(row[0]); got != row[1] {
			t.Errorf("%q comes to %q, want %q", row[0], got, row[1])
		}
	}
	if Plain("the elevator rises 8°") == Plain("the elevator rises 80°") || Plain("the elevator rises 8°") == Plain("the elevator rises 8 mm") {
		t.Error("two sentences have one spelling")
	}
}

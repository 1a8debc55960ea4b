package script

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/phrase"
)

// What Gherkin or godog passes over in silence must be a problem here.
func TestRunRefusesWhatGherkinPassesOver(t *testing.T) {
	m := fennel(t)
	const asks = "    Then the rudder is at neutral\n"
	for _, c := range []struct{ name, text, want string }{
		{"an empty file", "", "0:0 no-scenarios"},
		{"only remarks", "# nothing\n", "0:0 no-scenarios"},
		{"only a feature", "Feature: f\n", "0:0 no-scenarios"},
		{"only a background", "Feature: f\n  Background:\n    Given rates are high\n", "0:0 no-scenarios"},
		{"an empty scenario", "Feature: f\n  Scenario: a\n" + asks + "  Scenario: b\n", "4:3 empty-scenario"},
		{"a scenario without a Then", "Feature: f\n  Scenario: a\n    When right roll\n", "2:3 nothing-asked"},
		{"an unknown step", "Feature: f\n  Scenario: a\n    Then the moon is full\n", "3:14 unknown-subject"},
		{"a misspelt When", "Feature: f\n  Scenario: a\n    Whne right roll\n" + asks, "3:5 misspelt-keyword"},
		{"a misspelt Then", "Feature: f\n  Scenario: a\n    The port flap drops\n" + asks, "3:5 misspelt-keyword"},
		{"a keyword in small letters", "Feature: f\n  Scenario: a\n    then nonsense\n" + asks, "3:5 misspelt-keyword"},
		{"a keyword in capitals", "Feature: f\n  Scenario: a\n    THEN nonsense\n" + asks, "3:5 misspelt-keyword"},
		{"a step without keyword", "Feature: f\n  Scenario: a\n    the port flap drops\n" + asks, "3:5 misspelt-keyword"},
		{"a step as a list", "Feature: f\n  Scenario: a\n    - the port flap drops\n" + asks, "3:5 misspelt-keyword"},
		{"a star without a space", "Feature: f\n  Scenario: a\n    *the port flap drops\n" + asks, "3:5 misspelt-keyword"},
		{"a step behind a hard space", "Feature: f\n  Scenario: a\n\u00a0   Then the port flap drops\n" + asks, "3:5 misspelt-keyword"},
		{"steps below the feature", "Feature: f\n  When right roll\n  Then the port flap drops\n  Scenario: a\n" + asks, "2:3 misspelt-keyword"},
		{"a misspelt Scenario", "Feature: f\n  Scenaro: lost\n  Scenario: a\n" + asks, "2:3 misspelt-keyword"},
		{"a Scenario without colon", "Feature: f\n  Scenario lost\n  Scenario: a\n" + asks, "2:3 misspelt-keyword"},
		{"a misspelt Scenario behind steps", "Feature: f\n  Scenario: a\n" + asks + "  Scenaro: b\n" + asks, "4:3 misspelt-keyword"},
		{"a step lost below a background", "Feature: f\n  Background:\n    Givn rates are high\n  Scenario: a\n" + asks, "3:5 misspelt-keyword"},
		{"a step lost below a rule", "Feature: f\n  Rule: r\n    Given rates are high\n    Scenario: a\n" + asks, "3:5 misspelt-keyword"},
		{"a step lost below Examples", "Feature: f\n  Scenario Outline: a\n    Then the <p> is at neutral\n    Examples:\n    Then the rudder is at neutral\n      | p |\n      | rudder |\n", "5:5 misspelt-keyword"},
		{"a table below a step", "Feature: f\n  Scenario: a\n" + asks + "      | a |\n", "4:7 step-argument"},
		{"a text block below a step", "Feature: f\n  Scenario: a\n" + asks + "      ```\n      Then nonsense\n      ```\n", "4:7 step-argument"},
		{"two scenarios of one name", "Feature: f\n  Scenario: a\n" + asks + "  Scenario: a\n" + asks, "4:3 same-scenario"},
		{"an outline without Examples", "Feature: f\n  Scenario Outline: a\n" + asks, "2:3 empty-examples"},
		{"Examples without rows", "Feature: f\n  Scenario Outline: a\n" + asks + "    Examples:\n      | a |\n", "4:5 empty-examples"},
		{"Examples without a table", "Feature: f\n  Scenario Outline: a\n" + asks + "    Examples:\n", "4:5 empty-examples"},
		{"an unfilled placeholder", "Feature: f\n  Scenario Outline: a\n    Then the <q> is at neutral\n    Examples:\n      | p |\n      | rudder |\n", "3:14 unknown-column"},
		{"a placeholder in a background", "Feature: f\n  Background:\n    Given <p> roll\n  Scenario Outline: a\n    Then the <p> is at neutral\n    Examples:\n      | p |\n      | rudder |\n", "3:11 unknown-column"},
		{"a placeholder in another", "Feature: f\n  Scenario Outline: a\n    Then the <<p>> is at neutral\n    Examples:\n      | p |\n      | rudder |\n", "3:14 unknown-column"},
		{"a placeholder in another that a row would fill", "Feature: f\n  Scenario Outline: a\n    Then the <<p>> is at neutral\n    Examples:\n      | p | rudder |\n      | rudder | rudder |\n", "3:14 unknown-column"},
		{"a placeholder in halves", "Feature: f\n  Scenario Outline: a\n    Then the <p><q> is at neutral\n    Examples:\n      | p | q |\n      | <p | q> |\n", "6:9 unknown-column"},
		{"a placeholder in halves that a row would fill", "Feature: f\n  Scenario Outline: a\n    Then the <p><q> is at neutral\n    Examples:\n      | p | q | r |\n      | <r | > | rudder |\n", "6:9 unknown-column"},
		{"a placeholder half in the step", "Feature: f\n  Scenario Outline: a\n    Then the <<q> is at neutral\n    Examples:\n      | p | q |\n      | rudder | p> |\n", "3:14 unknown-column"},
		{"half a placeholder", "Feature: f\n  Scenario Outline: a\n    Then the <p is at neutral\n    Examples:\n      | p |\n      | rudder |\n", "3:14 unknown-column"},
		{"a column with a bracket", "Feature: f\n  Scenario Outline: a\n    Then the <p> is at neutral\n    Examples:\n      | p | <q |\n      | rudder | x |\n", "5:13 unknown-column"},
		{"a nested placeholder in an outline's name", "Feature: f\n  Scenario Outline: a <<p>>\n    Then the <p> is at neutral\n    Examples:\n      | p | rudder |\n      | rudder | x |\n", "2:23 unknown-column"},
		{"a bracket in a scenario", "Feature: f\n  Scenario: a\n    Then the > rudder is at neutral\n", "3:14 unknown-sentence"},
		{"an unknown language", "# language: xx-nowhere\nFeature: f\n  Scenario: a\n" + asks, "1:1 unknown-language"},
		{"no Gherkin at all", "to be done\n", "1:1 script-syntax"},
		{"two features", "Feature: f\n  Scenario: a\n" + asks + "Feature: g\n", "4:1 script-syntax"},
		{"an unfinished text block", "Feature: f\n  Scenario: a\n" + asks + "      \"\"\"\n      text\n", "6:1 script-syntax"},
		{"a remark in plain words", "Feature: f\n  Scenario: a\n    The wing is well made.\n" + asks, "3:5 misspelt-keyword"},
		{"a wish", "Feature: f\n  Scenario: a\n    Verify that the elevator rises\n" + asks, "3:5 misspelt-keyword"},
		{"a numbered step", "Feature: f\n  Scenario: a\n    1. Then nonsense\n" + asks, "3:5 misspelt-keyword"},
		{"a step of a list", "Feature: f\n  Scenario: a\n    Step 1: Then nonsense\n" + asks, "3:5 misspelt-keyword"},
		{"a rule of thumb", "Feature: f\n  Background:\n    motor switch must be live\n  Scenario: a\n" + asks, "3:5 misspelt-keyword"},
		{"a remark below Examples", "Feature: f\n  Scenario Outline: a\n    Then the <p> is at neutral\n    Examples:\n    These are all.\n      | p |\n      | rudder |\n", "5:5 misspelt-keyword"},
		{"a German step in an English script", "Feature: f\n  Scenario: a\n    Dann nonsense\n" + asks, "3:5 misspelt-keyword"},
		{"a numbered step below the feature", "Feature: f\n  1. Then nonsense\n  Scenario: a\n" + asks, "2:3 misspelt-keyword"},
		{"a German step below the feature", "Feature: f\n  Wenn nonsense\n  Scenario: a\n" + asks, "2:3 misspelt-keyword"},
		{"a claim below the feature", "Feature: f\n  With the stick to the right the port aileron rises a lot\n  Scenario: a\n" + asks, "2:3 misspelt-keyword"},
		{"where a switch stands below a rule", "Feature: f\n  Rule: r\n    The motor switch must be live all the time\n    Scenario: a\n  " + asks, "3:5 misspelt-keyword"},
		{"no feature", "Scenario: a\n" + asks, "1:1 script-syntax"},
		{"a feature in small letters", "feature: f\n  Scenario: a\n" + asks, "1:1 misspelt-keyword"},
		{"a feature without colon", "Feature f\n  Scenario: a\n" + asks, "1:1 misspelt-keyword"},
		{"a language that is not said", "Funktionalität: f\n  Szenario: a\n    Dann nonsense\n", "1:1 misspelt-keyword"},
		{"a heading in a language that is not said", "Feature: f\n  Szenario: a\n    Dann nonsense\n", "2:3 misspelt-keyword"},
		{"a step behind Examples", "Feature: f\n  Scenario Outline: a\n    Then the <p> is at neutral\n    Examples:\n      | p |\n      | rudder |\n" + asks, "7:5 script-syntax"},
		{"a lone carriage return", "Feature: f\n  Scenario: a\n    # bench\r    Then nonsense\n" + asks, "3:12 script-not-text"},
		{"a carriage return at the end", "Feature: f\n  Scenario: a\n" + strings.TrimSpace(asks) + "\r", "3:30 script-not-text"},
		{"a line separator", "Feature: f\n  Scenario: a\n    # bench\u2028    Then nonsense\n" + asks, "3:12 script-not-text"},
		{"a paragraph separator", "Feature: f\n  Scenario: a\n    # bench\u2029    Then nonsense\n" + asks, "3:12 script-not-text"},
		{"a vertical tab", "Feature: f\n  Scenario: a\n    # bench\v    Then nonsense\n" + asks, "3:12 script-not-text"},
		{"a form feed", "Feature: f\n  Scenario: a\n    # bench\f    Then nonsense\n" + asks, "3:12 script-not-text"},
		{"a next line", "Feature: f\n  Scenario: a\n    # bench\u0085    Then nonsense\n" + asks, "3:12 script-not-text"},
		{"a byte order mark inside", "Feature: f\n  Scenario: a\uFEFF\n" + asks, "2:14 script-not-text"},
		{"a byte that is no text", "Feature: f\n  Scenario: a\xff\n" + asks, "2:14 script-not-text"},
		{"a NUL", "Feature: f\n  Scenario: a\x00\n" + asks, "2:14 script-not-text"},
	} {
		if got := codesOf(m, c.text); !slices.Contains(got, c.want) {
			t.Errorf("%s: got %v, want %s", c.name, got, c.want)
		}
	}
	if _, problems := Run(m, nil, Selection{}); len(problems) != 1 || problems[0].Code != codeNoScenarios {
		t.Errorf("no script at all: got %v", problems)
	}
}

// TestRunSaysHowToMendWhatGherkinCannotRead wants one problem whose hint is the
// cure.
func TestRunSaysHowToMendWhatGherkinCannotRead(t *testing.T) {
	for _, c := range []struct{ text, message, hint string }{
		{"Scenario: a\n  When right roll\n  Then the rudder is at neutral\n", "must begin with its Feature", "Feature: NAME"},
		{"Given right roll\nThen the rudder is at neutral\n", "must begin with its Feature", "Feature: NAME"},
		{"My model\n Scenario: a\n  Then the rudder is at neutral\n", "must begin with its Feature", "Feature: NAME"},
		{"feature: f\n Scenario: a\n  Then the rudder is at neutral\n", "\"feature\"", "\"Feature:\""},
		{"Funktionalität: f\n Szenario: a\n  Dann the rudder is at neutral\n", "German", "# language: de"},
		{"Fonctionnalité: f\n Scénario: a\n  Alors the rudder is at neutral\n", "French", "# language: fr"},
		{"Feature: f\n Scenario: a\n  Dann the rudder is at neutral\n  Then the rudder is at neutral\n", "German", "# language: de"},
		{"Feature: f\n Scenario: a\n  Then the rudder is at neutral\n  Dann the rudder is at neutral\n", "German", "# language: de"},
		{"Feature: f\n Scenario: a\n  2. Then the rudder is at neutral\n  Then the rudder is at neutral\n", "\"2.\"", "begin the line with Then"},
		{"Feature: f\n Scenario: a\n  A fine wing\n  Then the rudder is at neutral\n", "taken for a remark and not checked", "with # if it is a remark"},
		{"Feature: f\n Scenario: a\n  then the rudder is at neutral\n  Then the rudder is at neutral\n", "\"then\" is not written \"Then\"", "Then"},
	} {
		_, problems := Run(fennel(t), []File{{"test.feature", []byte(c.text)}}, Selection{})
		if len(problems) != 1 || !strings.Contains(problems[0].Message, c.message) || !strings.Contains(problems[0].Hint, c.hint) {
			t.Errorf("%q: got %+v, want %q with the hint %q", c.text, problems, c.message, c.hint)
		}
	}
}

func TestRunReportsEveryMistakeAtOnceInOrder(t *testing.T) {
	got := codesOf(fennel(t), `Feature: f
  Scenario: a
    Given rates hihg
    Whem right roll
    Then the port flpa drops
    And the rudder rises
  Scenario: b
  Scenaro: c
    Then the elevator is at neutral
`)
	want := []string{"3:17 unknown-setting", "5:14 unknown-subject", "6:20 wrong-motion", "4:5 misspelt-keyword"}
	slices.Sort(got)
	slices.Sort(want)
	for _, w := range want {
		if !slices.Contains(got, w) {
			t.Errorf("got %v, want %s among them", got, w)
		}
	}
}

func TestDescriptionsMaySayWhatTheyLike(t *testing.T) {
	ran(t, fennel(t), `Feature: Fennel, before the maiden flight
  The wing has four servos, on four channels. One reversed flap is enough
  to lose this model, so every surface is asked about in every direction.
  The flaps: on high rates they join the ailerons.
  Any doubt? Put the model down.

  Background: as it stands in the pits
    # The motor switch stays where it is on the bench.
    Given the motor switch is safe

  Rule: Rates matter
    They are there to tame the model.

    Scenario: Neutral
      # This is how the model stands on its wheels. (Look along the wing.)
      # Then nothing: this is a remark
      Then the rudder is at neutral

    Scenario Outline: Yaw
      * with full <way> yaw, the rudder moves <way>

      Examples: both ways
        # These are all there are.
        | way   |
        | left  |
        | right |
`)
}

func TestRunTakesOtherLanguagesKeywords(t *testing.T) {
	record := ran(t, fennel(t), `# language: de
Funktionalität: Fennel
  Grundlage:
    Angenommen rates are high
  Szenario: Rollen
    Wenn the roll stick is full right
    Dann the port aileron drops
    Und the starboard aileron rises
    Aber the elevator stays still
  Szenariogrundriss: Seitenruder
    Wenn the yaw stick is full <way>
    Dann the rudder moves <way>
    Beispiele:
      | way  |
      | left |
`)
	if len(record.Checks) != 4 || slices.ContainsFunc(said(record), func(s string) bool { return strings.HasSuffix(s, "false") }) {
		t.Errorf("got %v", said(record))
	}
	// Keywords without a space behind them.
	record = ran(t, fennel(t), "# language: ja\n機能: f\n  シナリオ: s\n    前提rates are high\n    もしthe roll stick is full right\n    ならばthe port aileron drops\n")
	if len(record.Checks) != 1 || !record.Checks[0].Passed || record.Checks[0].Pose[1] != "rate switch high" {
		t.Errorf("got %v", record.Checks)
	}
	if got := codesOf(fennel(t), "# language: de\nFunktionalität: f\n  Szenario: s\n    Then the rudder is at neutral\n    Dann the rudder is at neutral\n"); !slices.Contains(got, "4:5 misspelt-keyword") {
		t.Errorf("an English keyword in a German script: got %v", got)
	}
}

func TestRunTakesByteOrderMarksAndCarriageReturns(t *testing.T) {
	text := "\uFEFF" + strings.ReplaceAll(rolling, "\n", "\r\n")
	if got, want := said(ran(t, fennel(t), text)), said(ran(t, fennel(t), rolling)); !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	text = "\uFEFF# language: de\r\nFunktionalität: f\r\n  Szenario: s\r\n    Dann the ruder is at neutral\r\n"
	if got := codesOf(fennel(t), text); !slices.Equal(got, []string{"4:14 unknown-subject"}) {
		t.Errorf("got %v", got)
	}
}

func TestRunRefusesHugeScriptsAtOnce(t *testing.T) {
	m := fennel(t)
	outline := func(steps, rows int) string {
		return "Feature: f\n Scenario Outline: o\n" + strings.Repeat("  Then rudder is <p>\n", steps) + "  Examples:\n   | p |\n" + strings.Repeat("   | neutral |\n", rows)
	}
	for _, c := range []struct{ name, text string }{
		{"10 MB of scenarios", "Feature: f\n" + strings.Repeat(" Scenario: s\n  Then the rudder is at neutral\n", 250000)},
		{"10 MB of one line", "Feature: f\n Scenario: s\n  Then " + strings.Repeat("x", 10<<20) + "\n"},
		{"a long line", "Feature: f\n Scenario: s\n  Then the rudder " + strings.Repeat("is ", 2000) + "\n"},
		{"more lines than a hand writes", "Feature: f\n" + strings.Repeat("@a\n", maxLines)},
		{"an outline that multiplies", outline(4000, 5000)},
		{"groups that multiply", strings.Replace(outline(1, 5000), "rudder is", strings.Repeat("every surface is at neutral and ", 5)+"the rudder is", 1)},
		{"time that adds up", "Feature: f\n Scenario: s\n  When landing flap\n" + strings.Repeat("  Then the flaps drop within 1 s\n", 2000)},
	} {
		codes := codesOf(m, c.text)
		if len(codes) != 1 || !strings.HasSuffix(codes[0], codeTooBig) {
			t.Errorf("%s: got %v", c.name, codes[:min(len(codes), 3)])
		}
	}
}

// TestRunPrintsNothing holds stdout and stderr still while godog runs.
func TestRunPrintsNothing(t *testing.T) {
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	stdout, stderr := os.Stdout, os.Stderr
	os.Stdout, os.Stderr = write, write
	ran(t, fennel(t), rolling)
	codesOf(fennel(t), "Feature: f\n  Scenario: a\n    nonsense\n")
	os.Stdout, os.Stderr = stdout, stderr
	write.Close()
	var printed bytes.Buffer
	if _, err := printed.ReadFrom(read); err != nil || printed.Len() > 0 {
		t.Errorf("printed %q, %v", printed.String(), err)
	}
}

func TestRunPanicsWhereTheRecordCannotBeTrusted(t *testing.T) {
	m := fennel(t)
	files := []File{{"test.feature", []byte(rolling)}}
	for name, spoil := range map[string]func(*run){
		"a scenario too many": func(r *run) { r.scenarios = append(r.scenarios, &scenario{file: "test.feature", name: "ghost"}) },
		"a scenario too few":  func(r *run) { r.scenarios = r.scenarios[:0] },
		"another name":        func(r *run) { r.scenarios[0].name = "another" },
		"another file":        func(r *run) { r.scenarios[0].file = "another" },
		"another text":        func(r *run) { r.scenarios[0].steps[1].text = "another" },
		"a step too few":      func(r *run) { r.scenarios[0].steps = r.scenarios[0].steps[1:] },
		"a check left out": func(r *run) {
			r.scenarios[0].steps[2].checks[0].done = true
			r.scenarios[0].steps[2].checks[0].selected = false
		},
		"a check that panics":     func(r *run) { r.scenarios[0].steps[2].checks[0].outcome.Subject.Parts[0] = 99 },
		"a verdict that vanished": func(r *run) { r.failing = -1 },
	} {
		scenarios, vocabulary, problems := prepare(m, files)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		each(scenarios, func(ch *check) { ch.selected = true })
		r := &run{model: m, vocabulary: vocabulary, scenarios: scenarios}
		spoil(r)
		if err := r.godog(files); err == nil {
			t.Errorf("%s: godog and the record are said to agree", name)
		}
	}
}

func TestAccountPanicsWhereAStepIsLost(t *testing.T) {
	d, problems := read(File{"test.feature", []byte(rolling)})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for name, spoil := range map[string]func(*compiler){
		"nothing is lost":                  func(*compiler) {},
		"a step that became nothing":       func(c *compiler) { c.scenarios[0].steps[1].set = false },
		"checks that vanished":             func(c *compiler) { c.scenarios[0].steps[2].checks = nil },
		"a step that was left out":         func(c *compiler) { c.scenarios[0].steps = c.scenarios[0].steps[1:] },
		"a step refused without a problem": func(c *compiler) { c.scenarios[0].steps[1].refused = true },
	} {
		m := fennel(t)
		c := &compiler{model: m, vocabulary: phrase.NewVocabulary(m)}
		c.compile(d)
		spoil(c)
		func() {
			defer func() {
				if bug, isBug := recover().(*Bug); isBug != (name != "nothing is lost") {
					t.Errorf("%s: got %v", name, bug)
				}
			}()
			c.account([]*document{d})
		}()
	}
}

func FuzzScript(f *testing.F) {
	m := fennel(f)
	f.Add([]byte(rolling))
	for _, code := range allCodes {
		if text, err := os.ReadFile(problemFiles + "/" + code + "/script.feature"); err == nil && len(text) < 1000 {
			f.Add(text)
		}
	}
	f.Add([]byte("# language: de\nFunktionalität: f\n  Szenario: s\n    Dann the rudder is at neutral\n"))
	f.Add([]byte("Feature: f\n  Rule: r\n    Background:\n      Given rates high\n    Scenario Outline: s <a>\n      * with <a>, the rudder moves <b>\n      Examples:\n        | a | b |\n        | right yaw | right |\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		record, problems := Run(m, []File{{"f.feature", text}}, Selection{})
		if len(record.Checks) == 0 && len(problems) == 0 {
			t.Fatal("nothing was checked and nothing is wrong")
		}
		source := diag.NewSource("f.feature", text)
		for _, p := range problems {
			if p.Message == "" || p.Code == "" || p.File != "f.feature" || p.Line > source.Lines() {
				t.Fatalf("a problem without a place: %+v", p)
			}
		}
		diag.Write(&bytes.Buffer{}, problems, source)
	})
}

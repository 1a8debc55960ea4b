package script_test

import (
	"testing"

	"example.com/hingeline/verify/script"
)

// What is written behind a script is in its language, and stands on nothing that its
// background sets.
func TestBehindKeepsLanguageBackgroundAndRules(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want script.Behind
	}{
		"plain":      {"Feature: F\n\n  Scenario: A\n    * x\n", script.Behind{Scenario: "Scenario:", Rule: "Rule:"}},
		"example":    {"Feature: F\n\n  Example: A\n    * x\n", script.Behind{Scenario: "Example:", Rule: "Rule:"}},
		"outline":    {"Feature: F\n\n  Scenario Outline: A\n    * <x>\n\n    Examples:\n      | x |\n      | y |\n", script.Behind{Scenario: "Scenario:", Rule: "Rule:"}},
		"background": {"Feature: F\n\n  Background:\n    Given x\n\n  Scenario: A\n    * x\n", script.Behind{Scenario: "Scenario:", Rule: "Rule:", Rest: "Given everything rests"}},
		"rule": {"Feature: F\n\n  Rule: R\n    Background:\n      Given x\n\n    Scenario: A\n      * x\n\n  Rule: S\n    Scenario: B\n      * x\n",
			script.Behind{Scenario: "Scenario:", Rule: "Rule:", LastRule: "S"}},
		"german": {"# language: de\nFunktionalität: F\n\n  Grundlage:\n    Angenommen x\n\n  Szenario: A\n    * x\n",
			script.Behind{Scenario: "Szenario:", Rule: "Rule:", Rest: "Angenommen everything rests"}},
	} {
		if got := script.BehindOf(script.File{Name: "f.feature", Text: []byte(c.text)}); got != c.want {
			t.Errorf("%s: %+v, wanted %+v", name, got, c.want)
		}
	}
}

package script

import (
	"slices"
	"strings"
)

// Behind is how a scenario is written behind all others of a script, which keeps what the
// script has: its language, and what its background sets.
type Behind struct {
	Scenario, Rule string // the headings, with their colon
	Rest           string // the step that brings everything to rest where a background sets something; else empty
	LastRule       string // the title of the last rule, to which a scenario behind it would belong; empty without one
}

// BehindOf reads how a scenario is written behind a script that can be read.
func BehindOf(f File) Behind {
	d, _ := read(f)
	dialect := d.dialect
	if dialect == nil {
		dialect = english
	}
	words := dialect.ScenarioKeywords()
	b := Behind{Scenario: words[len(words)-1] + ":", Rule: dialect.RuleKeywords()[0] + ":"}
	for _, e := range d.entries() { // the word that the script has, of several
		if slices.Contains(words, e.scenario.Keyword) {
			b.Scenario = e.scenario.Keyword + ":"
			break
		}
	}
	if d.feature == nil {
		return b
	}
	for _, child := range d.feature.Children {
		switch {
		case child.Rule != nil:
			b.LastRule = child.Rule.Name
		case child.Background != nil && len(child.Background.Steps) > 0:
			b.Rest = given(dialect.Keywords["given"]) + "everything rests"
		}
	}
	return b
}

// given is the keyword of a Given, with the space behind it that it has.
func given(keywords []string) string {
	for _, k := range keywords {
		if strings.TrimSpace(k) != "*" {
			return k
		}
	}
	return "* "
}

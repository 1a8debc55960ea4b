package script

// The problem codes of scripts. Those of sentences are in package phrase.
const (
	codeNoScenarios     = "no-scenarios"     // nothing in the file would be checked
	codeEmptyScenario   = "empty-scenario"   // a scenario without steps
	codeNothingAsked    = "nothing-asked"    // a scenario without an outcome
	codeMisspeltKeyword = "misspelt-keyword" // a line that would be lost as description
	codeStepArgument    = "step-argument"    // a table or text block below a step
	codeSameScenario    = "same-scenario"    // two scenarios of one name
	codeSameScript      = "same-script"      // two scripts of one name or text
	codeUnknownColumn   = "unknown-column"   // a placeholder without a column
	codeEmptyExamples   = "empty-examples"   // an outline without rows
	CodeNothingSelected = "nothing-selected" // a selection that matches nothing
	codeSyntax          = "script-syntax"    // no Gherkin
	codeLanguage        = "unknown-language" // a language that Gherkin does not have
	codeTooBig          = "script-too-big"   // more than a script may hold
	codeNotText         = "script-not-text"  // no UTF-8 text
)

package script

// The problem codes of scripts. Those of sentences are in package phrase.
const (
	CodeNoScenarios     = "no-scenarios"     // nothing in the file would be checked
	CodeEmptyScenario   = "empty-scenario"   // a scenario without steps
	CodeNothingAsked    = "nothing-asked"    // a scenario without an outcome
	CodeMisspeltKeyword = "misspelt-keyword" // a line that would be lost as description
	CodeStepArgument    = "step-argument"    // a table or text block below a step
	CodeSameScenario    = "same-scenario"    // two scenarios of one name
	CodeSameScript      = "same-script"      // two scripts of one name or text
	CodeUnknownColumn   = "unknown-column"   // a placeholder without a column
	CodeEmptyExamples   = "empty-examples"   // an outline without rows
	CodeNothingSelected = "nothing-selected" // a selection that matches nothing
	CodeSyntax          = "script-syntax"    // no Gherkin
	CodeLanguage        = "unknown-language" // a language that Gherkin does not have
	CodeTooBig          = "script-too-big"   // more than a script may hold
	CodeNotText         = "script-not-text"  // no UTF-8 text
)

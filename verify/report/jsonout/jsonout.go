// Package jsonout writes a control check as JSON, for other programs. The
// shapes are documented by the JSON Schemas beside this file and stay as they
// are within one format number; a new one may only follow a new number.
//
// It knows package result only, never decides anything and never leaves a key
// out: a list that is empty is [], a place that is nowhere is null. Values are
// in the words that people read ("49.5 %", "trailing edge UP 14.2° (11 mm)"), and
// on the way from the hand to the part exact as well.
// Start at [Render]; [RenderShown] is one position of the controls, [RenderProofs]
// what holds at all of them, [RenderFaults], [RenderWalk] and [RenderCauses] are about
// mistakes, [RenderProblems] is what is written where there is no answer.
package jsonout

import (
	"encoding/json"
	"io"

	"example.com/hingeline/verify/result"
)

// Format is the number of the shapes that this package writes.
const Format = 6

// Render writes the report. The error is the writer's.
func Render(w io.Writer, r *result.Report) error {
	passed, failed := r.Counts()
	wrong, warn, onPurpose := r.ScriptCounts()
	doc := reportJSON{
		Format:  Format,
		Tool:    r.Tool,
		Model:   modelJSON(r.Model),
		Scripts: list(r.Scripts),
		Date:    r.Date,
		Files:   printsOf(r.Prints),
		SetUp:   r.SetUp,
		Asked:   r.Asked,
		Rest:    list(r.Rest),
		Verdict: string(r.Verdict),
		Counts: countsJSON{
			Checks: len(r.Checks), Passed: passed, Failed: failed, Proofs: r.Proofs(),
			LeftOut: r.NotSelected, Warnings: len(r.Findings),
			ScriptWrong: wrong, ScriptWarnings: warn, ScriptOnPurpose: onPurpose,
		},
		Checks:   []checkJSON{},
		Repairs:  offerOf(r.Repairs),
		Warnings: warningsOf(r.Findings),
		Script:   scriptOf(r.Script),
		Uncovered: uncoveredJSON{
			Parts:     list(r.Uncovered.Parts),
			Controls:  list(r.Uncovered.Controls),
			Positions: list(r.Uncovered.Positions),
		},
		Paper:    paperOf(r.Paper),
		Cautions: list(r.Cautions),
	}
	for i := range r.Checks {
		doc.Checks = append(doc.Checks, checkOf(i+1, &r.Checks[i]))
	}
	return write(w, doc)
}

func warningsOf(found []result.Finding) []warningJSON {
	out := []warningJSON{}
	for _, f := range found {
		out = append(out, warningJSON{Code: f.Code, Message: f.Message, Hint: f.Hint, Place: placeOf(f.Place)})
	}
	return out
}

// RenderShown writes what every part does at one position of the controls. The
// error is the writer's.
func RenderShown(w io.Writer, s *result.Shown) error {
	doc := shownJSON{
		Format: Format,
		Tool:   s.Tool,
		Model:  modelJSON(s.Model),
		From:   list(s.From),
		Pose:   list(s.Pose),
		After:  s.After,
		Parts:  []shownPartJSON{},
		Effect: effectOf(s.Effect),
	}
	for _, p := range s.Parts {
		doc.Parts = append(doc.Parts, shownPartJSON{
			Stage: string(p.Stage), Name: p.Name, Position: p.Position,
			Limits: list(p.Limits), Chain: chainOf(p.Chain),
		})
	}
	return write(w, doc)
}

func write(w io.Writer, doc any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(doc)
}

func checkOf(number int, c *result.Check) checkJSON {
	return checkJSON{
		Number:   number,
		Stage:    string(c.Stage),
		Feature:  c.Feature,
		Scenario: c.Scenario,
		Sentence: c.Sentence,
		Place:    placeOf(c.Place),
		Pose: poseJSON{
			Controls: list(c.Pose), Before: list(c.Before), Moved: list(c.Moved), OthersRest: c.Rests,
		},
		Subject: c.Subject,
		Wanted:  c.Wanted,
		Got:     c.Got,
		Miss:    c.Miss,
		Passed:  c.Passed,
		Why:     whyOf(c.Why),
		Proof:   proofOf(c.Proof),
	}
}

func scriptOf(found []result.ScriptFinding) []scriptJSON {
	out := []scriptJSON{}
	for _, f := range found {
		out = append(out, scriptJSON{
			Code: f.Code, Message: f.Message, Sentence: f.Sentence, Place: placeOf(f.Place),
			Reason: f.Reason, Picture: f.Picture, Right: f.Right, Hint: f.Hint, OnPurpose: f.OnPurpose, Fails: f.Fails,
		})
	}
	return out
}

func whyOf(reasons []result.Reason) []reasonJSON {
	out := []reasonJSON{}
	for _, r := range reasons {
		out = append(out, reasonJSON{Of: r.Of, Chain: chainOf(r.Chain), LookAt: looksOf(r.LookAt)})
	}
	return out
}

func chainOf(steps []result.Step) []stepJSON {
	out := []stepJSON{}
	for _, s := range steps {
		out = append(out, stepJSON{
			Stage: s.Stage, Name: s.Name, Text: s.Text, Value: s.Value, Exact: exactOf(s.Exact), Limit: s.Limit, Place: placeOf(s.Place),
		})
	}
	return out
}

func exactOf(e *result.Exact) *exactJSON {
	if e == nil {
		return nil
	}
	return &exactJSON{Number: e.Number, Unit: e.Unit, Way: e.Way, Signed: signed(e)}
}

// signed is an exact value with the sign that its way has by convention: down,
// left and aft are plus.
func signed(e *result.Exact) float64 {
	switch e.Way {
	case "UP", "RIGHT", "fore":
		return -e.Number
	}
	return e.Number
}

func looksOf(places []result.Place) []lookJSON {
	out := []lookJSON{}
	for _, p := range places {
		if at := placeOf(p); at != nil {
			out = append(out, lookJSON{*at, p.Note})
		}
	}
	return out
}

func placeOf(p result.Place) *placeJSON {
	if p.File == "" {
		return nil
	}
	return &placeJSON{File: p.File, Line: p.Line, Column: p.Column, Excerpt: p.Excerpt}
}

func list(words []string) []string {
	if words == nil {
		return []string{}
	}
	return words
}

package jsonout

import (
	_ "embed"
	"io"
	"math"

	"example.com/hingeline/verify/result"
)

// ComparisonSchema is the JSON Schema (2020-12) of what RenderComparison writes.
//
//go:embed compare.schema.json
var ComparisonSchema []byte

type comparisonJSON struct {
	Format   int                  `json:"hingeline_comparison"`
	Tool     string               `json:"tool"`
	Verdict  string               `json:"verdict"`
	Stopped  string               `json:"stopped"`
	Older    comparedJSON         `json:"older"`
	Newer    comparedJSON         `json:"newer"`
	Counts   comparisonCountsJSON `json:"counts"`
	SetUp    []differenceJSON     `json:"set_up"`
	Script   []differenceJSON     `json:"script"`
	Parts    []partChangeJSON     `json:"parts"`
	Same     []string             `json:"same"`
	Checks   []checkChangeJSON    `json:"checks"`
	NotAlike []string             `json:"not_compared"`
	Warnings []warningJSON        `json:"warnings"`
	Cautions []string             `json:"cautions"`
}

type comparedJSON struct {
	Name    string   `json:"name"`
	File    string   `json:"file"`
	Scripts []string `json:"scripts"`
}

type comparisonCountsJSON struct {
	SetUp   int `json:"set_up"`
	Script  int `json:"script"`
	Both    int `json:"checks_on_both"`
	Failing int `json:"failing_on_both"`
	Worse   int `json:"worse"`
	Better  int `json:"better"`
}

type differenceJSON struct {
	Text  string     `json:"text"`
	Place *placeJSON `json:"place"`
	Parts []string   `json:"parts"`
}

type partChangeJSON struct {
	Stage string     `json:"stage"`
	Name  string     `json:"name"`
	Note  string     `json:"note"`
	With  *apartJSON `json:"with_signal"`
	Lost  *apartJSON `json:"signal_lost"`
}

type apartJSON struct {
	By     float64  `json:"by"`
	AtMost *float64 `json:"at_most"`
	Exact  bool     `json:"exact"`
	Unit   string   `json:"unit"`
	Way    string   `json:"way"`
	Text   string   `json:"text"`
	Was    string   `json:"was"`
	Is     string   `json:"is"`
	Pose   []string `json:"pose"`
	Set    []string `json:"set"`
}

type checkChangeJSON struct {
	Stage    string     `json:"stage"`
	Scenario string     `json:"scenario"`
	Sentence string     `json:"sentence"`
	Subject  string     `json:"subject"`
	Place    *placeJSON `json:"place"`
	Pose     []string   `json:"pose"`
	Wanted   string     `json:"wanted"`
	Was      string     `json:"was"`
	Is       string     `json:"is"`
	GotWas   string     `json:"got_was"`
	GotIs    string     `json:"got_is"`
	Script   string     `json:"script"`
	Worse    bool       `json:"worse"`
}

// RenderComparison writes what differs between two set-ups. The error is the writer's.
func RenderComparison(w io.Writer, c *result.Comparison) error {
	worse, better := c.Counts()
	doc := comparisonJSON{
		Format: Format, Tool: c.Tool, Verdict: string(c.Verdict), Stopped: c.Stopped,
		Older: comparedJSON{c.Old.Name, c.Old.File, list(c.OldScripts)},
		Newer: comparedJSON{c.New.Name, c.New.File, list(c.NewScripts)},
		Counts: comparisonCountsJSON{
			SetUp: len(c.SetUp), Script: len(c.Asked), Both: c.Both, Failing: c.Failing, Worse: worse, Better: better,
		},
		SetUp: differencesOf(c.SetUp), Script: differencesOf(c.Asked),
		Parts: []partChangeJSON{}, Same: list(c.Same), Checks: []checkChangeJSON{},
		NotAlike: append(append([]string{}, c.Apart...), c.Notes...),
		Warnings: warningsOf(c.Findings), Cautions: list(c.Cautions),
	}
	for _, p := range c.Parts {
		doc.Parts = append(doc.Parts, partChangeJSON{string(p.Stage), p.Name, p.Note, apartOf(p.With), apartOf(p.Lost)})
	}
	for i := range c.Checks {
		ch := &c.Checks[i]
		doc.Checks = append(doc.Checks, checkChangeJSON{
			Stage: string(ch.Stage), Scenario: ch.Scenario, Sentence: ch.Sentence, Subject: ch.Subject, Place: placeOf(ch.Place),
			Pose: list(ch.Pose), Wanted: ch.Wanted, Was: ch.Was, Is: ch.Is, GotWas: ch.GotWas, GotIs: ch.GotIs, Script: ch.Script, Worse: ch.Worse(),
		})
	}
	return write(w, doc)
}

func differencesOf(changes []result.Change) []differenceJSON {
	out := []differenceJSON{}
	for _, c := range changes {
		out = append(out, differenceJSON{c.Text, placeOf(c.Place), list(c.Parts)})
	}
	return out
}

func apartOf(a *result.Apart) *apartJSON {
	if a == nil {
		return nil
	}
	out := &apartJSON{By: a.By, Exact: a.Exact, Unit: a.Unit, Way: a.Way, Text: a.Text, Was: a.Was, Is: a.Is, Pose: list(a.Pose), Set: list(a.Set)}
	if !math.IsInf(a.AtMost, 0) {
		out.AtMost = &a.AtMost
	}
	return out
}

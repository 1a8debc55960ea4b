package jsonout

import (
	"io"

	"example.com/hingeline/verify/result"
)

type faultsJSON struct {
	Format   int           `json:"hingeline_faults"`
	Tool     string        `json:"tool"`
	Model    modelJSON     `json:"model"`
	Scripts  []string      `json:"scripts"`
	Verdict  string        `json:"verdict"`
	Stopped  string        `json:"stopped"`
	Least    int           `json:"least_percent"`
	Score    scoreJSON     `json:"score"`
	Mistakes []faultJSON   `json:"mistakes"`
	Spare    []spareJSON   `json:"spare"`
	Warnings []warningJSON `json:"warnings"`
	Cautions []string      `json:"cautions"`
}

type scoreJSON struct {
	Checks    int `json:"checks"`
	Visible   int `json:"visible"`
	Caught    int `json:"caught"`
	Missed    int `json:"missed"`
	Undecided int `json:"undecided"`
	Invisible int `json:"invisible"`
	NotBuilt  int `json:"not_built"`
	Percent   int `json:"percent"`
	LeftOut   int `json:"kinds_left_out"`
}

type faultJSON struct {
	Kind        string         `json:"kind"`
	Title       string         `json:"title"`
	Text        string         `json:"text"`
	Place       *placeJSON     `json:"place"`
	State       string         `json:"state"`
	By          []caughtByJSON `json:"caught_by"`
	Rank        int            `json:"rank"`
	Consequence string         `json:"consequence"`
	Witness     *counterJSON   `json:"witness"`
	Wanted      string         `json:"wanted"`
	Sentence    string         `json:"sentence"`
	Reason      string         `json:"reason"`
}

type caughtByJSON struct {
	Scenario string     `json:"scenario"`
	Sentence string     `json:"sentence"`
	Subject  string     `json:"subject"`
	Place    *placeJSON `json:"place"`
}

type spareJSON struct {
	Scenario string     `json:"scenario"`
	Place    *placeJSON `json:"place"`
}

// RenderFaults writes which single mistakes a script would miss. The error is the
// writer's.
func RenderFaults(w io.Writer, r *result.Faults) error {
	s := r.Score()
	doc := faultsJSON{
		Format: Format, Tool: r.Tool, Model: modelJSON(r.Model), Scripts: list(r.Scripts), Verdict: string(r.Verdict),
		Stopped: r.Stopped, Least: r.Min,
		Score: scoreJSON{Checks: r.Checks, Visible: s.Visible(), Caught: s.Caught, Missed: s.Missed, Undecided: s.Open,
			Invisible: s.Invisible, NotBuilt: s.NotBuilt, Percent: s.Percent(), LeftOut: r.Left},
		Mistakes: []faultJSON{}, Spare: []spareJSON{}, Warnings: warningsOf(r.Findings), Cautions: list(r.Cautions),
	}
	for i := range r.Faults {
		f := &r.Faults[i]
		one := faultJSON{
			Kind: f.Kind, Title: f.Title, Text: f.Text, Place: placeOf(f.Place), State: string(f.State), By: []caughtByJSON{},
			Rank: f.Rank, Consequence: f.Consequence, Witness: counterOf(f.Witness), Wanted: f.Wanted, Sentence: f.Sentence, Reason: f.Reason,
		}
		for _, by := range f.By {
			one.By = append(one.By, caughtByJSON{by.Scenario, by.Sentence, by.Subject, placeOf(by.Place)})
		}
		doc.Mistakes = append(doc.Mistakes, one)
	}
	for _, s := range r.Spare {
		doc.Spare = append(doc.Spare, spareJSON{s.Scenario, placeOf(s.Place)})
	}
	return write(w, doc)
}

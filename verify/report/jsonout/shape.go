package jsonout

import _ "embed"

// ReportSchema is the JSON Schema (2020-12) of what Render writes.
//
//go:embed report.schema.json
var ReportSchema []byte

// PositionSchema is the JSON Schema (2020-12) of what RenderShown writes.
//
//go:embed position.schema.json
var PositionSchema []byte

type reportJSON struct {
	Format    int           `json:"hingeline_report"`
	Tool      string        `json:"tool"`
	Model     modelJSON     `json:"model"`
	Scripts   []string      `json:"scripts"`
	Verdict   string        `json:"verdict"`
	Counts    countsJSON    `json:"counts"`
	Checks    []checkJSON   `json:"checks"`
	Warnings  []warningJSON `json:"warnings"`
	Uncovered uncoveredJSON `json:"uncovered"`
	Cautions  []string      `json:"cautions"`
}

type modelJSON struct {
	Name string `json:"name"`
	File string `json:"file"`
}

type countsJSON struct {
	Checks   int `json:"checks"`
	Passed   int `json:"passed"`
	Failed   int `json:"failed"`
	LeftOut  int `json:"left_out"`
	Warnings int `json:"warnings"`
}

type checkJSON struct {
	Number   int          `json:"number"`
	Stage    string       `json:"stage"`
	Feature  string       `json:"feature"`
	Scenario string       `json:"scenario"`
	Sentence string       `json:"sentence"`
	Place    *placeJSON   `json:"place"`
	Pose     poseJSON     `json:"pose"`
	Subject  string       `json:"subject"`
	Wanted   string       `json:"wanted"`
	Got      string       `json:"got"`
	Passed   bool         `json:"passed"`
	Chain    []stepJSON   `json:"chain"`
	LookAt   []*placeJSON `json:"look_at"`
}

type poseJSON struct {
	Controls   []string `json:"controls"`
	Before     []string `json:"before"`
	Moved      []string `json:"moved"`
	OthersRest bool     `json:"others_rest"`
}

type stepJSON struct {
	Stage string     `json:"stage"`
	Name  string     `json:"name"`
	Text  string     `json:"text"`
	Value string     `json:"value"`
	Limit string     `json:"limit"`
	Place *placeJSON `json:"place"`
}

type placeJSON struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Excerpt string `json:"excerpt"`
}

type warningJSON struct {
	Code    string     `json:"code"`
	Message string     `json:"message"`
	Hint    string     `json:"hint"`
	Place   *placeJSON `json:"place"`
}

type uncoveredJSON struct {
	Parts     []string `json:"parts"`
	Controls  []string `json:"controls"`
	Positions []string `json:"positions"`
}

type shownJSON struct {
	Format int             `json:"hingeline_position"`
	Tool   string          `json:"tool"`
	Model  modelJSON       `json:"model"`
	From   []string        `json:"from"`
	Pose   []string        `json:"pose"`
	After  string          `json:"after"`
	Parts  []shownPartJSON `json:"parts"`
}

type shownPartJSON struct {
	Stage    string     `json:"stage"`
	Name     string     `json:"name"`
	Position string     `json:"position"`
	Limits   []string   `json:"limits"`
	Chain    []stepJSON `json:"chain"`
}

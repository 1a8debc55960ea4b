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

// ProblemsSchema is the JSON Schema (2020-12) of what RenderProblems writes.
//
//go:embed problems.schema.json
var ProblemsSchema []byte

// ProofsSchema is the JSON Schema (2020-12) of what RenderProofs writes.
//
//go:embed proofs.schema.json
var ProofsSchema []byte

// FaultsSchema is the JSON Schema (2020-12) of what RenderFaults writes.
//
//go:embed faults.schema.json
var FaultsSchema []byte

// WalkSchema is the JSON Schema (2020-12) of what RenderWalk writes.
//
//go:embed walk.schema.json
var WalkSchema []byte

// CausesSchema is the JSON Schema (2020-12) of what RenderCauses writes.
//
//go:embed causes.schema.json
var CausesSchema []byte

type reportJSON struct {
	Format    int           `json:"hingeline_report"`
	Tool      string        `json:"tool"`
	Model     modelJSON     `json:"model"`
	Scripts   []string      `json:"scripts"`
	Date      string        `json:"date"`
	Files     []printJSON   `json:"files"`
	SetUp     string        `json:"set_up"`
	Asked     string        `json:"asked"`
	Rest      []string      `json:"rest"`
	Verdict   string        `json:"verdict"`
	Counts    countsJSON    `json:"counts"`
	Checks    []checkJSON   `json:"checks"`
	Repairs   *repairsJSON  `json:"repairs"`
	Warnings  []warningJSON `json:"warnings"`
	Script    []scriptJSON  `json:"script"`
	Uncovered uncoveredJSON `json:"uncovered"`
	Paper     *paperJSON    `json:"paper"`
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
	Proofs   int `json:"proofs"`
	LeftOut  int `json:"left_out"`
	Warnings int `json:"warnings"`

	ScriptWrong     int `json:"script_wrong"`
	ScriptWarnings  int `json:"script_warnings"`
	ScriptOnPurpose int `json:"script_on_purpose"`
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
	Miss     string       `json:"miss"`
	Passed   bool         `json:"passed"`
	Why      []reasonJSON `json:"why"`
	Proof    *proofJSON   `json:"proof"`
}

type reasonJSON struct {
	Of     string     `json:"of"`
	Chain  []stepJSON `json:"chain"`
	LookAt []lookJSON `json:"look_at"`
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
	Exact *exactJSON `json:"exact"`
	Limit string     `json:"limit"`
	Place *placeJSON `json:"place"`
}

type exactJSON struct {
	Number float64 `json:"number"`
	Unit   string  `json:"unit"`
	Way    string  `json:"way"`
	Signed float64 `json:"signed"`
}

type placeJSON struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Excerpt string `json:"excerpt"`
}

type lookJSON struct {
	placeJSON
	Note string `json:"note"`
}

type warningJSON struct {
	Code    string     `json:"code"`
	Message string     `json:"message"`
	Hint    string     `json:"hint"`
	Place   *placeJSON `json:"place"`
}

type scriptJSON struct {
	Code      string     `json:"code"`
	Message   string     `json:"message"`
	Sentence  string     `json:"sentence"`
	Place     *placeJSON `json:"place"`
	Reason    string     `json:"reason"`
	Picture   string     `json:"picture"`
	Right     string     `json:"right"`
	Hint      string     `json:"hint"`
	OnPurpose bool       `json:"on_purpose"`
	Fails     bool       `json:"fails"`
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
	Effect *effectJSON     `json:"effect"`
}

type shownPartJSON struct {
	Stage    string     `json:"stage"`
	Name     string     `json:"name"`
	Position string     `json:"position"`
	Limits   []string   `json:"limits"`
	Chain    []stepJSON `json:"chain"`
}

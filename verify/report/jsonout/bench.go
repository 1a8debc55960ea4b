package jsonout

import (
	_ "embed"
	"io"

	"example.com/hingeline/verify/result"
)

// BenchSchema is the JSON Schema (2020-12) of what RenderBench writes.
//
//go:embed bench.schema.json
var BenchSchema []byte

type benchJSON struct {
	Format   int              `json:"hingeline_bench_report"`
	Tool     string           `json:"tool"`
	Model    modelJSON        `json:"model"`
	Record   string           `json:"record"`
	Date     string           `json:"date"`
	SetUp    string           `json:"set_up"`
	Asked    string           `json:"asked"`
	Script   string           `json:"script"`
	Fails    bool             `json:"script_fails"`
	Walk     string           `json:"walk"`
	Look     string           `json:"look"`
	Ruler    bool             `json:"ruler"`
	Verdict  string           `json:"verdict"`
	Counts   benchCountsJSON  `json:"counts"`
	Steps    []benchStepJSON  `json:"steps"`
	Causes   *benchCausesJSON `json:"causes"`
	Ratios   []benchRatioJSON `json:"ratios"`
	Throws   []benchThrowJSON `json:"throws"`
	Fits     []benchFitJSON   `json:"fits"`
	Warnings []warningJSON    `json:"warnings"`
	Cautions []string         `json:"cautions"`
}

type benchCountsJSON struct {
	Steps      int `json:"steps"`
	AsExpected int `json:"as_expected"`
	Differ     int `json:"differ"`
	Skipped    int `json:"skipped"`
	NotSeen    int `json:"not_seen"`
	ByEye      int `json:"by_eye"`
}

type benchStepJSON struct {
	Number  int             `json:"number"`
	Further bool            `json:"further"`
	Stand   []string        `json:"stand"`
	Move    []string        `json:"move"`
	State   string          `json:"state"`
	Reason  string          `json:"reason"`
	Parts   []benchPartJSON `json:"parts"`
}

type benchPartJSON struct {
	Name    string             `json:"name"`
	Stage   string             `json:"stage"`
	Way     string             `json:"way"`
	Exact   string             `json:"exact"`
	Moves   bool               `json:"moves"`
	Sure    bool               `json:"sure"`
	Takes   string             `json:"takes"`
	Said    string             `json:"said"`
	Differs bool               `json:"differs"`
	How     string             `json:"how"`
	Reading []benchReadingJSON `json:"measured"`
}

type benchReadingJSON struct {
	Before bool   `json:"before_the_movement"`
	Says   string `json:"says"`
	Off    string `json:"off"`
}

type benchCausesJSON struct {
	Verdict  string        `json:"verdict"`
	Tried    int           `json:"tried"`
	Suspects []suspectJSON `json:"suspects"`
	Near     []nearJSON    `json:"near"`
	Next     *nextJSON     `json:"next"`
	Script   askedJSON     `json:"script"`
	Repairs  []remedyJSON  `json:"repairs"`
	Edits    []editJSON    `json:"file_edits"`
}

type benchRatioJSON struct {
	Part   string   `json:"part"`
	Ratio  float64  `json:"measured_of_computed"`
	Places int      `json:"places"`
	Ways   []string `json:"ways"`
	OneWay bool     `json:"other_way_as_computed"`
}

type benchThrowJSON struct {
	Part     string        `json:"part"`
	Way      string        `json:"way"`
	At       []string      `json:"at"`
	Measured benchSizeJSON `json:"measured"`
	Computed benchSizeJSON `json:"computed"`
	Other    string        `json:"computed_way"`
	Off      string        `json:"off"`
	Partner  string        `json:"partner"`
}

type benchSizeJSON struct {
	Degrees     float64 `json:"deg"`
	Millimetres float64 `json:"mm"`
}

type benchFitJSON struct {
	Part    string            `json:"part"`
	Servo   int               `json:"servo,omitempty"` // of several, the one that alone held it
	Place   *placeJSON        `json:"place"`
	Kind    string            `json:"kind"`
	Offered bool              `json:"offered"`
	Changes []benchChangeJSON `json:"changes"`
	Before  float64           `json:"off_as_written_deg"`
	After   float64           `json:"off_corrected_deg"`
	Points  []benchPointJSON  `json:"points"`
	Note    string            `json:"note"`

	Table      string  `json:"table"`
	TableAfter float64 `json:"off_as_table_deg"`
}

type benchChangeJSON struct {
	Key    string `json:"key"`
	Was    string `json:"was"`
	Is     string `json:"is"`
	Within string `json:"within"`
}

type benchPointJSON struct {
	Output   float64 `json:"output_percent"`
	Measured string  `json:"measured"`
	Before   float64 `json:"off_as_written_deg"`
	After    float64 `json:"off_corrected_deg"`
}

// RenderBench writes what was seen at the bench. The error is the writer's.
func RenderBench(w io.Writer, r *result.Bench) error {
	doc := benchJSON{
		Format: Format, Tool: r.Tool, Model: modelJSON(r.Model), Record: r.Record, Date: r.Date, SetUp: r.SetUp, Asked: r.Asked,
		Script: r.Script, Fails: r.Fails, Walk: r.Walk, Look: r.Look, Ruler: r.Ruler, Verdict: string(r.Verdict),
		Counts: benchCountsJSON{Steps: len(r.Steps)}, Steps: []benchStepJSON{}, Ratios: []benchRatioJSON{}, Throws: []benchThrowJSON{}, Fits: []benchFitJSON{},
		Warnings: warningsOf(r.Findings), Cautions: list(r.Cautions),
	}
	for i := range r.Steps {
		doc.Steps = append(doc.Steps, benchStepOf(&r.Steps[i], &doc.Counts))
	}
	if c := r.Causes; c != nil {
		doc.Causes = &benchCausesJSON{
			Verdict: string(c.Verdict), Tried: c.Tried, Suspects: []suspectJSON{}, Near: nearOf(c.Near), Next: nextOf(c.Next),
			Script: askedJSON(c.Script), Repairs: remediesOf(c.Repairs), Edits: editsOf(c.Edits),
		}
		for i := range c.Suspects {
			doc.Causes.Suspects = append(doc.Causes.Suspects, suspectOf(&c.Suspects[i]))
		}
	}
	for _, one := range r.Ratios {
		doc.Ratios = append(doc.Ratios, benchRatioJSON{one.Part, one.Ratio, one.Places, list(one.Ways), one.OneWay})
	}
	for _, t := range r.Throws {
		doc.Throws = append(doc.Throws, benchThrowJSON{t.Part, t.Way, list(t.At), benchSizeJSON(t.Measured), benchSizeJSON(t.Computed), t.Other, t.Off, t.Partner})
	}
	for i := range r.Fits {
		doc.Fits = append(doc.Fits, benchFitOf(&r.Fits[i]))
	}
	return write(w, doc)
}

func benchStepOf(s *result.BenchStep, counts *benchCountsJSON) benchStepJSON {
	one := benchStepJSON{s.Number, s.Further, list(s.Stand), list(s.Move), string(s.State), s.Reason, []benchPartJSON{}}
	switch s.State {
	case result.StepAsExpected:
		counts.AsExpected++
	case result.StepDiffers:
		counts.Differ++
	case result.StepSkipped:
		counts.Skipped++
	case result.StepByEye:
		counts.ByEye++
	default:
		counts.NotSeen++
	}
	for i := range s.Parts {
		p := &s.Parts[i]
		part := benchPartJSON{p.Name, string(p.Stage), p.Way, p.Exact, p.Moves, p.Sure, p.Takes, p.Said, p.Differs, p.How, []benchReadingJSON{}}
		for _, r := range p.Reading {
			part.Reading = append(part.Reading, benchReadingJSON(r))
		}
		one.Parts = append(one.Parts, part)
	}
	return one
}

func benchFitOf(f *result.BenchFit) benchFitJSON {
	one := benchFitJSON{f.Part, f.Servo, placeOf(f.Place), f.Kind, f.Offered, []benchChangeJSON{}, f.Before, f.After, []benchPointJSON{}, f.Note, f.Table, f.TableAfter}
	for _, c := range f.Changes {
		one.Changes = append(one.Changes, benchChangeJSON(c))
	}
	for _, p := range f.Points {
		one.Points = append(one.Points, benchPointJSON(p))
	}
	return one
}

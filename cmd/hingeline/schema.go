package main

import (
	"path"
	"regexp"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
	"example.com/hingeline/features"
	"example.com/hingeline/verify/report/jsonout"
)

func (s *session) schemaCommand() *cobra.Command {
	var explain, example, exampleScript, report, position, proofs, faults, walk, causes, bench, standing, comparison, problems bool
	c := &cobra.Command{
		Use:   "schema",
		Short: "the airframe file: its schema, its reference page, one to start from",
		Long: `Schema writes the JSON Schema of the airframe file, for editors that complete and
check as you type; or what a flag asks for instead.`,
		Example: `  hingeline schema --example > my-model.yaml
  hingeline schema --example-script > my-model.feature`,
		Args: atMost(0, "no arguments"),
		RunE: func(c *cobra.Command, _ []string) error {
			var text []byte
			asked := 0
			for _, choice := range []struct {
				wanted bool
				text   func() []byte
			}{
				{explain, func() []byte { return []byte(airframes.Reference()) }},
				{example, exampleAirframe},
				{exampleScript, exampleSentences},
				{report, func() []byte { return jsonout.ReportSchema }},
				{position, func() []byte { return jsonout.PositionSchema }},
				{proofs, func() []byte { return jsonout.ProofsSchema }},
				{faults, func() []byte { return jsonout.FaultsSchema }},
				{walk, func() []byte { return jsonout.WalkSchema }},
				{causes, func() []byte { return jsonout.CausesSchema }},
				{bench, func() []byte { return jsonout.BenchSchema }},
				{standing, func() []byte { return jsonout.StandingSchema }},
				{comparison, func() []byte { return jsonout.ComparisonSchema }},
				{problems, func() []byte { return jsonout.ProblemsSchema }},
			} {
				if choice.wanted {
					text = choice.text()
					asked++
				}
			}
			switch asked {
			case 0:
				text = airframes.Schema()
			case 1:
			default:
				return &usageError{message: "schema writes one thing at a time", usage: usageOf(c)}
			}
			_, err := s.results().Write(text)
			return written(err)
		},
	}
	f := c.Flags()
	f.BoolVar(&explain, "explain", false, "the reference page: every key in plain words")
	f.BoolVar(&example, "example", false, "an airframe file to start your own from")
	f.BoolVar(&exampleScript, "example-script", false, "the script for that airframe file")
	f.BoolVar(&report, "report", false, "the JSON Schema of what check --json writes")
	f.BoolVar(&position, "position", false, "the JSON Schema of what show --json writes")
	f.BoolVar(&proofs, "proofs", false, "the JSON Schema of what prove --json writes")
	f.BoolVar(&faults, "faults", false, "the JSON Schema of what faults --json writes")
	f.BoolVar(&walk, "walk", false, "the JSON Schema of what faults --walk --json writes")
	f.BoolVar(&causes, "causes", false, "the JSON Schema of what faults --seen --json writes")
	f.BoolVar(&bench, "bench", false, "the JSON Schema of what bench --json writes")
	f.BoolVar(&standing, "standing", false, "the JSON Schema of what verify --json writes")
	f.BoolVar(&comparison, "compare", false, "the JSON Schema of what compare --json writes")
	f.BoolVar(&problems, "problems", false, "the JSON Schema of what --json writes where a file cannot be used or nothing was checked")
	return c
}

// scriptLine is the line of an airframe file that names its script.
var scriptLine = regexp.MustCompile(`(?m)^script: *(\S+)(?: +#.*)?\n`)

// exampleAirframe is the example without the name of its script: it is saved
// where that script is not.
func exampleAirframe() []byte { return scriptLine.ReplaceAll(airframes.Example(), nil) }

// exampleSentences is the script of the example.
func exampleSentences() []byte {
	named := scriptLine.FindSubmatch(airframes.Example())
	if named == nil {
		panic("the example names no script")
	}
	text, ok := features.Read(path.Base(string(named[1])))
	if !ok {
		panic("the script of the example is missing")
	}
	return text
}

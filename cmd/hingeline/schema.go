package main

import (
	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/report/jsonout"
)

func (s *session) schemaCommand() *cobra.Command {
	var explain, example, report, position bool
	c := &cobra.Command{
		Use:   "schema",
		Short: "the airframe file: its schema, its reference page, one to start from",
		Long: `Schema writes the JSON Schema of the airframe file, for editors that complete and
check as you type; or what a flag asks for instead.`,
		Example: "  hingeline schema --example > my-model.yaml",
		Args:    atMost(0, "no arguments"),
		RunE: func(c *cobra.Command, _ []string) error {
			var text []byte
			asked := 0
			for _, choice := range []struct {
				wanted bool
				text   func() []byte
			}{
				{explain, func() []byte { return []byte(airframes.Reference()) }},
				{example, airframes.Example},
				{report, func() []byte { return jsonout.ReportSchema }},
				{position, func() []byte { return jsonout.PositionSchema }},
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
	f.BoolVar(&report, "report", false, "the JSON Schema of what check --json writes")
	f.BoolVar(&position, "position", false, "the JSON Schema of what show --json writes")
	return c
}

package main

import (
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/report/terminal"
)

// listKinds writes the catalogue of mistakes.
func (s *session) listKinds(c *cobra.Command, args []string) error {
	others := len(args) > 0
	c.LocalNonPersistentFlags().VisitAll(func(f *pflag.Flag) { others = others || f.Changed && f.Name != "kinds" })
	if others {
		return &usageError{message: "--kinds lists the catalogue, and goes with nothing else", usage: usageOf(c)}
	}
	text := terminal.NewText(s.layout(false))
	text.Paragraph(0, "The kinds of single mistakes that faults makes, one at a time, wherever a model has room for them.")
	for _, k := range mistake.Kinds() {
		text.Gap()
		text.Title(k.Title + " [" + k.Code + "]")
		text.Paragraph(2, k.Means)
	}
	return written(text.Render(s.results()))
}

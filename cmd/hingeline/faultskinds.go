package main

import (
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/report/terminal"
)

// listKinds writes the catalogue of mistakes.
func (s *session) listKinds() error {
	text := terminal.NewText(s.layout(false))
	text.Paragraph(0, "The kinds of single mistakes that faults makes, one at a time, wherever a model has room for them.")
	for _, k := range mistake.Kinds() {
		text.Gap()
		text.Title(k.Title + " [" + k.Code + "]")
		text.Paragraph(2, k.Means)
	}
	return written(text.Render(s.results()))
}

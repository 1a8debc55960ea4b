package main

import (
	"encoding/json"

	"github.com/spf13/cobra"

	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/report/terminal"
)

func (s *session) phrasesCommand() *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "phrases",
		Short: "every sentence that a script may have, with an example",
		Args:  atMost(0, "no arguments"),
		RunE: func(*cobra.Command, []string) error {
			if asJSON {
				return written(s.phrasesAsJSON())
			}
			return written(s.phrases())
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "write them as JSON")
	return c
}

func (s *session) phrases() error {
	text := terminal.NewText(s.layout(false))
	for _, sentence := range phrase.Sentences() {
		text.Gap()
		text.Title(sentence.Form)
		text.Entry("  keyword  ", sentence.Keyword)
		text.Entry("  example  ", sentence.Example)
		text.Paragraph(2, sentence.Means)
	}
	return text.Render(s.results())
}

// phraseJSON is one sentence for other programs.
type phraseJSON struct {
	Name    string `json:"name"`
	Keyword string `json:"keyword"`
	Form    string `json:"form"`
	Example string `json:"example"`
	Means   string `json:"means"`
}

func (s *session) phrasesAsJSON() error {
	list := []phraseJSON{}
	for _, sentence := range phrase.Sentences() {
		list = append(list, phraseJSON(sentence))
	}
	e := json.NewEncoder(s.results())
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(list)
}

package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/report/terminal"
)

func (s *session) phrasesCommand() *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "phrases [WORD...]",
		Short: "every sentence that a script may have, with an example",
		Long: "Phrases lists every sentence that a script may have, each with an example; with\n" +
			"words, only the sentences that speak of all of them.",
		Example: "  hingeline phrases\n  hingeline phrases motor stops",
		RunE: func(c *cobra.Command, args []string) error {
			found := phrase.Matching(strings.Join(args, " "))
			if len(found) == 0 {
				return &usageError{
					message: fmt.Sprintf("no sentence speaks of %q", strings.Join(args, " ")),
					hint:    `"hingeline phrases" lists them all`,
					usage:   usageOf(c),
				}
			}
			if asJSON {
				return written(s.phrasesAsJSON(found))
			}
			return written(s.phrases(found))
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "write them as JSON")
	return c
}

func (s *session) phrases(sentences []phrase.Sentence) error {
	text := terminal.NewText(s.layout(false))
	for _, sentence := range sentences {
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

func (s *session) phrasesAsJSON(sentences []phrase.Sentence) error {
	list := []phraseJSON{}
	for _, sentence := range sentences {
		list = append(list, phraseJSON(sentence))
	}
	e := json.NewEncoder(s.results())
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(list)
}

package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/laws"
	"example.com/hingeline/verify/report/terminal"
)

func (s *session) explainCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "explain [CODE]",
		Short:   "what a code in [brackets] means, and what to write instead",
		Long:    "Explain tells about the code that stands in brackets behind a message. Without a\ncode it lists them all.",
		Example: "  hingeline explain unknown-name",
		Args:    atMost(1, "one code"),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return codes(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return s.listCodes()
			}
			code := strings.ToLower(strings.Trim(args[0], "[]"))
			info, ok := explained(code)
			if !ok {
				hint := didYouMean(code, codes())
				if hint == "" {
					hint = `"hingeline explain" lists them all`
				}
				return &usageError{
					message: fmt.Sprintf("no message has the code %q", args[0]),
					hint:    hint,
					usage:   usageOf(c),
				}
			}
			return s.explain(info)
		},
	}
}

// ofMistakes is a kind of mistake as explain tells of it, with the flag that makes it.
func ofMistakes(k *mistake.Kind, flag string) diag.CodeInfo {
	return diag.CodeInfo{
		Code: k.Code, Title: k.Title + ", a kind of mistake that faults makes",
		Text: k.Means + "\n\nhingeline faults AIRFRAME " + flag,
	}
}

// everyCode is every problem code, then every law, then every kind of mistake.
func everyCode() []diag.CodeInfo {
	all := diag.Codes()
	for _, l := range laws.Codes() {
		all = append(all, diag.CodeInfo{
			Code: l.Code, Title: l.Title + ", a law that prove decides",
			Text: l.Means + "\n\nhingeline prove AIRFRAME --only " + l.Code,
		})
	}
	for _, k := range mistake.Kinds() {
		all = append(all, ofMistakes(k, "--only "+k.Code))
	}
	all = append(all, ofMistakes(mistake.Pair(), "--pairs"))
	return all
}

func explained(code string) (diag.CodeInfo, bool) {
	for _, info := range everyCode() {
		if info.Code == code {
			return info, true
		}
	}
	return diag.CodeInfo{}, false
}

func codes() []string {
	var names []string
	for _, info := range everyCode() {
		names = append(names, info.Code)
	}
	return names
}

func (s *session) explain(info diag.CodeInfo) error {
	text := terminal.NewText(s.layout(false))
	text.Title(info.Code + ": " + info.Title)
	text.Gap()
	for i, paragraph := range strings.Split(strings.TrimSpace(info.Text), "\n\n") {
		if i > 0 {
			text.Gap()
		}
		text.Paragraph(2, paragraph)
	}
	return written(text.Render(s.results()))
}

func (s *session) listCodes() error {
	widest := 0
	for _, code := range codes() {
		widest = max(widest, len(code))
	}
	text := terminal.NewText(s.layout(false))
	for _, info := range everyCode() {
		text.Entry(fmt.Sprintf("%-*s  ", widest, info.Code), info.Title)
	}
	return written(text.Render(s.results()))
}

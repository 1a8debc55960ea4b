package said

import (
	"strings"

	"example.com/hingeline/verify/result"
)

// ShowCommand is the command line, in words that are not to be broken, that shows a
// counterexample of the model that a command line names so.
func ShowCommand(c *result.Counter, airframe string) []string {
	words := []string{"hingeline show", ShellWord(airframe)}
	for _, setting := range c.Set {
		words = append(words, "--set "+ShellWord(setting))
	}
	return words
}

// ShellWord is text as shells take it for one word.
func ShellWord(text string) string {
	plain := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune("./_-+,:=%", r)
	}
	switch {
	case text != "" && !strings.ContainsFunc(text, func(r rune) bool { return !plain(r) }):
		return text
	case strings.ContainsAny(text, "\"$`!"):
		return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'"
	}
	return `"` + text + `"`
}

package tap

import (
	"strconv"
	"strings"
	"unicode"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// field is one entry of a block of YAML: a text, a number, a list of texts or fields.
type field struct {
	key   string
	value any // string, int, []string or []field
}

func failure(all *said.Checks, i int, c *result.Check) []field {
	fields := []field{{"message", all.Headline(i)}, {"severity", "fail"}, {"wanted", all.Wanted(i)}, {"got", all.Got(i)}}
	fields = append(fields, at(c.Place)...)
	fields = append(fields, field{"stage", string(c.Stage)}, field{"feature", c.Feature}, field{"scenario", c.Scenario}, field{"controls", all.Pose(i)})
	decided, do := said.HowDecided(c.Proof)
	return append(fields, field{"decided", decided}, field{"do", do}, field{"cause", said.Causes(c)})
}

func scriptFinding(f *result.ScriptFinding) []field {
	fields := []field{{"message", f.Message}, {"severity", "fail"}, {"code", f.Code}}
	fields = append(fields, at(f.Place)...)
	return append(fields, field{"sentence", f.Sentence}, field{"why", f.Reason}, field{"look", f.Picture}, field{"right", f.Right}, field{"do", f.Hint})
}

// at is a place; none where it is nowhere.
func at(p result.Place) []field {
	if p.File == "" {
		return nil
	}
	where := []field{{"file", p.File}}
	if p.Line > 0 {
		where = append(where, field{"line", p.Line})
		if p.Column > 0 {
			where = append(where, field{"column", p.Column})
		}
	}
	return []field{{"at", where}}
}

// write adds the field; what says nothing is left out. Texts are in double quotes, with
// whatever does not print as an escape, so that no text can end the block.
func (f *field) write(to *strings.Builder, indent string) {
	switch v := f.value.(type) {
	case string:
		if v != "" {
			to.WriteString(indent + f.key + ": " + quoted(v) + "\n")
		}
	case int:
		to.WriteString(indent + f.key + ": " + strconv.Itoa(v) + "\n")
	case []string:
		if len(v) == 0 {
			return
		}
		to.WriteString(indent + f.key + ":\n")
		for _, text := range v {
			to.WriteString(indent + "  - " + quoted(text) + "\n")
		}
	case []field:
		to.WriteString(indent + f.key + ":\n")
		for i := range v {
			v[i].write(to, indent+"  ")
		}
	}
}

// quoted is a text in double quotes. All that strconv escapes YAML escapes the same way;
// bytes that are no text, which YAML cannot hold, become U+FFFD.
func quoted(text string) string { return strconv.Quote(strings.ToValidUTF8(text, "\uFFFD")) }

// oneLine is a text without whatever could end its line, or change how the line reads.
func oneLine(text string) string {
	var line strings.Builder
	for _, r := range text {
		switch {
		case unicode.IsSpace(r):
			line.WriteByte(' ')
		case !unicode.IsPrint(r):
			line.WriteRune(unicode.ReplacementChar)
		default:
			line.WriteRune(r)
		}
	}
	return line.String()
}

// escape keeps the protocol from reading a text as more than text.
func escape(text string) string { return strings.NewReplacer(`\`, `\\`, "#", `\#`).Replace(text) }

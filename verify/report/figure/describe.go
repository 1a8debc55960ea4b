package figure

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.com/hingeline/verify/result"
)

// describe is what a picture of the model shows, in sentences.
func describe(seen string, s *result.Shape, p *result.Picture, how []shown) string {
	var b strings.Builder
	b.WriteString(seen)
	var quiet []string
	for i := range s.Parts {
		o, st := &s.Parts[i], &p.Stands[i]
		if how[i] == plainly {
			quiet = append(quiet, o.Name)
			continue
		}
		fmt.Fprintf(&b, " %s: %s", capital(o.Name), plain(st.Says))
		if p.Moves && st.Way != "" && st.Moved {
			b.WriteString(", it went " + st.Way + " to there")
		}
		if how[i] == subject {
			b.WriteString("; the check is about it")
		}
		b.WriteString(".")
	}
	switch {
	case len(quiet) == 0:
	case p.Moves:
		fmt.Fprintf(&b, " Not moved: %s.", strings.Join(quiet, ", "))
	default:
		fmt.Fprintf(&b, " Not off neutral: %s.", strings.Join(quiet, ", "))
	}
	return b.String()
}

func capital(words string) string {
	first, size := utf8.DecodeRuneInString(words)
	if size == 0 {
		return ""
	}
	return strings.ToUpper(string(first)) + words[size:]
}

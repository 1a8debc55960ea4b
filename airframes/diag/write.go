package diag

import (
	"bufio"
	"fmt"
	"io"
	"strings"
)

// Write shows problems in the order given, as plain text:
//
//	bracken.yaml:23:11: mix adds "rol", which no demand is called [unknown-name]
//	   23 |   - {add: rol, share: 100%}
//	      |           ^^^ did you mean "roll"?
//
// The excerpt comes from the source whose name is the place's file; without
// one, or without a line, the hint stands alone below the message. Errors of w
// are not reported: like the rest of the package it is meant for messages to a
// person.
func Write(w io.Writer, problems []Problem, sources ...*Source) {
	WriteWithin(w, 0, problems, sources...)
}

// WriteWithin is Write for a terminal of so many columns: lines of files are cut
// to fit around the caret, and a hint that does not fit beside the caret stands
// below it. 0 columns are a terminal that is not known.
func WriteWithin(w io.Writer, columns int, problems []Problem, sources ...*Source) {
	out := bufio.NewWriter(w)
	defer out.Flush()
	for _, p := range problems {
		out.WriteString(headline(p))
		out.WriteByte('\n')
		writeExcerpt(out, columns, p, sources)
	}
}

// headline is a problem on one line.
func headline(p Problem) string {
	var line strings.Builder
	if p.File != "" {
		line.WriteString(clean(p.File))
		if p.Line > 0 {
			fmt.Fprintf(&line, ":%d", p.Line)
			if p.Column > 0 {
				fmt.Fprintf(&line, ":%d", p.Column)
			}
		}
		line.WriteString(": ")
	}
	if p.Severity == Warning {
		line.WriteString("warning: ")
	}
	line.WriteString(clean(p.Message))
	if p.Code != "" {
		fmt.Fprintf(&line, " [%s]", p.Code)
	}
	return line.String()
}

// margin is how many columns stand before an excerpt: "  123 | ".
const margin = 8

func writeExcerpt(out *bufio.Writer, columns int, p Problem, sources []*Source) {
	text, column, more, found := "", 0, [2]bool{}, false
	for _, s := range sources {
		if s != nil && s.Name == p.File {
			text, column, more, found = s.around(p.Place)
			break
		}
	}
	hint := clean(p.Hint)
	if !found {
		if hint != "" {
			fmt.Fprintf(out, "      %s\n", hint)
		}
		return
	}
	room := excerptColumns
	if columns > 0 {
		room = max(min(room, columns-margin-2*widthOf(ellipsis)), leastColumns)
	}
	excerpt, indent, underline := excerptOf(text, column, p.Width, more, room)
	fmt.Fprintf(out, "%s\n", strings.TrimRight(fmt.Sprintf("%5d | %s", p.Line, excerpt), " "))
	switch {
	case column > 0:
		caret := strings.Repeat(" ", indent) + strings.Repeat("^", underline)
		below := columns > 0 && margin+indent+underline+1+widthOf(hint) > columns
		if !below {
			caret += " " + hint
		}
		fmt.Fprintf(out, "%s\n", strings.TrimRight("      | "+caret, " "))
		if below && hint != "" {
			fmt.Fprintf(out, "      | %s\n", hint)
		}
	case hint != "":
		fmt.Fprintf(out, "      | %s\n", hint)
	}
}

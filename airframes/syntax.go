package airframes

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
)

// parse turns the text into a tree of nodes. Where the text is no YAML it
// returns every likely cause that it can place, and what the YAML library says
// only if it finds none: that often names no line, or a wrong one.
func parse(source *diag.Source) (*yaml.Node, []diag.Problem) {
	found := scan(source.Text)
	if found.deepAt >= 0 {
		return nil, []diag.Problem{tooDeep(source.At(found.deepAt, 1))}
	}
	if len(found.certain) > 0 {
		return nil, placed(source, append(found.certain, found.wrong...))
	}
	root, more, err := decode(source.Text)
	switch {
	case err != nil && len(found.wrong) > 0:
		return nil, placed(source, found.wrong)
	case err != nil:
		return nil, []diag.Problem{libraryProblem(source, err)}
	case more:
		at := source.Whole()
		if found.second >= 0 {
			at = source.At(found.second, len("---"))
		}
		return nil, []diag.Problem{{Place: at, Code: codeSeveral,
			Message: "a second document begins, want one airframe in a file",
			Hint:    "put it in a file of its own, or take the line away"}}
	}
	return root, nil
}

func tooDeep(at diag.Place) diag.Problem {
	return diag.Problem{Place: at, Code: codeTooDeep,
		Message: fmt.Sprintf("things nest more than %d deep here", maxDepth),
		Hint:    "an airframe needs no more than seven: count the brackets"}
}

func placed(source *diag.Source, found []suspicion) []diag.Problem {
	problems := make([]diag.Problem, len(found))
	for i, s := range found {
		problems[i] = diag.Problem{Place: source.At(s.offset, s.width), Code: s.code, Message: s.message, Hint: s.hint}
	}
	diag.Sort(problems)
	return problems
}

// errLibrary is a panic of the YAML library, which is its bug, not the
// person's; the text is refused all the same.
var errLibrary = errors.New("the YAML reader cannot make sense of the file")

// decode runs the YAML library; more says that another document follows.
func decode(text []byte) (root *yaml.Node, more bool, err error) {
	defer func() {
		if recover() != nil {
			root, more, err = nil, false, errLibrary
		}
	}()
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	var document, next yaml.Node
	if err := decoder.Decode(&document); err != nil {
		return nil, false, err
	}
	if err := decoder.Decode(&next); err != io.EOF {
		return nil, err == nil, err
	}
	return &document, false, nil
}

var libraryLine = regexp.MustCompile(`^line (\d+): (.*)$`)

// libraryProblem is what the YAML library says, with the line if it names one.
func libraryProblem(source *diag.Source, err error) diag.Problem {
	if errors.Is(err, io.EOF) {
		return diag.Problem{Place: source.Whole(), Code: "empty-file",
			Message: "the file holds comments only, want an airframe", Hint: `begin with "hingeline: 1"`}
	}
	message := strings.TrimPrefix(err.Error(), "yaml: ")
	at := source.Whole()
	if parts := libraryLine.FindStringSubmatch(message); parts != nil {
		if line, err := strconv.Atoi(parts[1]); err == nil && line <= source.Lines() {
			at.Line = line
		}
		message = parts[2]
	}
	if strings.Contains(message, "unknown anchor") {
		return diag.Problem{Place: at, Code: codeAlias, Message: "a * stands for something written elsewhere, which an airframe may not use", Hint: hintAlias}
	}
	return diag.Problem{Place: at, Code: codeSyntax, Message: "this is no YAML: " + message,
		Hint: "the mistake may be in a line above: look for a bracket, quote, colon or comma"}
}

package airframes

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
)

// maxNameLength is the most characters that a name may have.
const maxNameLength = 40

// reservedWords are the words that sentences and conditions need, so that no
// name may hold them.
var reservedWords = []string{
	"and", "or", "not", "is", "are", "with", "when", "whenever", "whatever", "in",
	"after", "within", "above", "below", "between", "at", "by", "to", "of",
	"never", "always", "every", "than", "as", "the",
}

// FoldName is a name as it is compared: in lower case, with any white space,
// "-" and "_" between its words as one space.
func FoldName(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return unicode.IsSpace(r) || r == '-' || r == '_'
	})
	return strings.Join(words, " ")
}

// tidy is a name as it is shown: as written, with single spaces.
func tidy(name string) string { return strings.Join(strings.Fields(name), " ") }

// CheckName says what is wrong with a name of an airframe file, and what to do
// about it; both are empty if nothing is.
func CheckName(name string) (message, hint string) {
	name = tidy(name)
	first, _ := utf8.DecodeRuneInString(name)
	switch {
	case name == "":
		return "a name is empty", "a name begins with a letter and holds letters, digits, spaces and -"
	case utf8.RuneCountInString(name) > maxNameLength:
		return fmt.Sprintf("%s has %d characters, want at most %d", quoted(name), utf8.RuneCountInString(name), maxNameLength), ""
	case !unicode.IsLetter(first):
		return fmt.Sprintf("%s does not begin with a letter", quoted(name)), "a name begins with a letter and holds letters, digits, spaces and -"
	}
	for _, r := range name {
		if !unicode.IsLetter(r) && !unicode.IsMark(r) && !unicode.IsDigit(r) && r != ' ' && r != '-' {
			return fmt.Sprintf("%s holds %q, which no name may", quoted(name), r), "a name holds letters, digits, spaces and -"
		}
	}
	if message, hint := mixedAlphabets(name); message != "" {
		return message, hint
	}
	for _, word := range strings.Fields(FoldName(name)) {
		if slices.Contains(reservedWords, word) {
			return fmt.Sprintf("%s holds the word %q, which sentences need", quoted(name), word), "say it in other words"
		}
	}
	return "", ""
}

// codeReserved is of names that sentences need.
const codeReserved = "reserved-word"

// names are the things of one sort that a file names, by index.
type names struct {
	sort   string // "control"
	list   []string
	absent bool // the section could not be read: nothing can be said about a name
	fold   func(string) string
	index  map[string]int
	at     map[string]diag.Place
}

func newNames(sort string, fold func(string) string) names {
	return names{sort: sort, fold: fold, index: map[string]int{}, at: map[string]diag.Place{}}
}

// FoldPart is the name of a part as it is compared: FoldName with left and right
// as port and starboard, which scripts take for the same.
func FoldPart(name string) string {
	words := strings.Fields(FoldName(name))
	for i, word := range words {
		switch word {
		case "left":
			words[i] = "port"
		case "right":
			words[i] = "starboard"
		}
	}
	return strings.Join(words, " ")
}

// find is the index of what is called so.
func (n *names) find(name string) (int, bool) {
	i, ok := n.index[n.fold(name)]
	return i, ok
}

// checkName reports what is wrong with a name that a node or key gives.
func (r *reader) checkName(at diag.Place, name string) bool {
	message, hint := CheckName(name)
	if message == "" {
		return true
	}
	code := "bad-name"
	if strings.Contains(message, "which sentences need") {
		code = codeReserved
	}
	r.fail(at, code, hint, "%s", message)
	return false
}

// add gives a name to the thing with the index; a name that is taken is
// reported.
func (r *reader) add(n *names, name string, index int, at diag.Place) {
	r.checkName(at, name)
	fold := n.fold(name)
	if before, ok := n.at[fold]; ok {
		if before != at {
			r.fail(at, codeDuplicateName, fmt.Sprintf("it is taken on line %d; capitals, spaces and - make no difference", before.Line),
				"another %s is called %s", n.sort, quoted(name))
		}
		return
	}
	n.index[fold], n.at[fold] = index, at
	n.list = append(n.list, name)
}

// plainName reads a scalar that is a name. What YAML takes as something else
// than a word needs quotes.
func (r *reader) plainName(n *yaml.Node, what string) (string, bool) {
	text, ok := r.text(n, what, "a name")
	if !ok {
		return "", false
	}
	return tidy(text), r.needsNoQuotes(n)
}

// needsNoQuotes reports a plain scalar that YAML does not take as text.
func (r *reader) needsNoQuotes(n *yaml.Node) bool {
	if n.Style == 0 && n.Tag != "!!str" {
		r.fail(r.place(n), "bad-name", fmt.Sprintf("put it in quotes: \"%s\"", n.Value), "%s is not taken as a name", quoted(n.Value))
		return false
	}
	return true
}

// aka reads the further names of a thing, with where they stand.
func (r *reader) aka(f *fields, n *names, index int) (all []string, at []diag.Place) {
	value := f.get("aka")
	if value == nil {
		return nil, nil
	}
	items := []*yaml.Node{value}
	if value.Kind != yaml.ScalarNode {
		items = r.items(value, "aka", "a name or a list of names", maxAka)
	}
	for _, item := range items {
		if name, ok := r.plainName(item, "a name under aka"); ok {
			r.add(n, name, index, r.place(item))
			all, at = append(all, name), append(at, r.place(item))
		}
	}
	return all, at
}

// lookUp finds what a name stands for; a name that nothing has is reported as
// "subject names "x", which no control is called".
func (r *reader) lookUp(n *names, name, subject string, at diag.Place) (int, bool) {
	if i, ok := n.find(name); ok {
		return i, true
	}
	if !n.absent {
		r.fail(at, codeUnknownName, r.suggestion(tidy(name), n.list, "there is "+listed(n.list, "and")),
			"%s %s, which no %s is called", subject, quoted(name), n.sort)
	}
	return 0, false
}

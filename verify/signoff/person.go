package signoff

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"
)

// How long texts may be, in characters.
const (
	maxName    = 80
	maxPlace   = 80
	maxRemarks = 400
	minReason  = 10 // shorter than any reason that says something
	maxReason  = 300
)

// CleanName is a person's name as it is signed: composed (Unicode NFC), trimmed, single
// spaces. The error says what is wrong with it.
func CleanName(name string) (string, error) {
	name, err := cleanText("the name", name, maxName)
	switch {
	case err != nil:
		return "", err
	case foldName(name) == "":
		return "", errors.New("the name has no letter in it")
	}
	if a, b := mixed(name); a != "" {
		return "", fmt.Errorf("the name mixes %s and %s letters in one word, so that it looks like another name", a, b)
	}
	return name, nil
}

// cleanReason is why a warning is accepted, made tidy.
func cleanReason(reason string) (string, error) {
	reason, err := cleanText("the reason", reason, maxReason)
	if err == nil && utf8.RuneCountInString(reason) < minReason {
		err = fmt.Errorf("the reason %q is too short to say why; want at least %d characters", reason, minReason)
	}
	return reason, err
}

// cleanText is text for one line: composed, trimmed, single spaces, nothing that cannot
// be seen or that turns the direction of writing.
func cleanText(what, text string, most int) (string, error) {
	if !utf8.ValidString(text) {
		return "", fmt.Errorf("%s is not UTF-8 text", what)
	}
	for _, r := range text {
		if unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp) || r == unicode.ReplacementChar {
			return "", fmt.Errorf("%s holds a character that cannot be seen (%U)", what, r)
		}
	}
	text = norm.NFC.String(strings.Join(strings.Fields(text), " "))
	if n := utf8.RuneCountInString(text); n > most {
		return "", fmt.Errorf("%s has %d characters, want at most %d", what, n, most)
	}
	return text, nil
}

// scripts are those whose letters can be taken for one another.
var scripts = []struct {
	called  string
	letters *unicode.RangeTable
}{{"Latin", unicode.Latin}, {"Greek", unicode.Greek}, {"Cyrillic", unicode.Cyrillic}}

// mixed names two alphabets of which one word has letters.
func mixed(name string) (a, b string) {
	for word := range strings.FieldsSeq(name) {
		first := ""
		for _, r := range word {
			for _, s := range scripts {
				switch {
				case !unicode.Is(s.letters, r):
				case first == "":
					first = s.called
				case first != s.called:
					return first, s.called
				}
			}
		}
	}
	return "", ""
}

// foldName is a name as two names are compared: only letters and digits count, in one
// case, so that "ADA  Crane" and "Ada-Crane" are one person.
func foldName(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) {
			return r
		}
		return -1
	}, norm.NFKC.String(cases.Fold().String(norm.NFKC.String(name))))
}

// people tells which records are of one person: whoever has the same name, or the same
// key, and whoever is the same as one of these.
type people struct{ of map[string]string }

// peopleOf brings the names and keys of records together.
func peopleOf(records []*Record) people {
	p := people{map[string]string{}}
	for _, r := range records {
		p.meet(r.Name, r.Key)
	}
	return p
}

// meet makes a name and a key those of one person.
func (p people) meet(name, key string) {
	n := p.root("name " + foldName(name))
	if key != "" {
		p.of[p.root("key "+key)] = n
	}
}

func (p people) root(x string) string {
	for {
		next, ok := p.of[x]
		if !ok || next == x {
			return x
		}
		x = next
	}
}

// same says whether two names are of one person.
func (p people) same(a, b string) bool {
	return p.root("name "+foldName(a)) == p.root("name "+foldName(b))
}

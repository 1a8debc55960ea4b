package signoff

import (
	"bytes"
	"errors"
	"fmt"
	"path"
	"strings"
	"time"
	"unicode"

	"golang.org/x/crypto/ssh"
)

// Allowed is an allowed-signers file in the format of OpenSSH (ssh-keygen(1), ALLOWED
// SIGNERS): which key is whose. Make one with ReadAllowed.
type Allowed struct {
	Name  string
	lines []allowedLine
}

type allowedLine struct {
	principals    []string
	namespaces    []string // empty: all
	after, before time.Time
	key           []byte
}

// ReadAllowed reads an allowed-signers file. Lines about certificates are passed over:
// none counts here. The error names every line that cannot be read.
func ReadAllowed(name string, text []byte) (*Allowed, error) {
	a := &Allowed{Name: name}
	var wrong []error
	for i, line := range bytes.Split(text, []byte("\n")) {
		trimmed := strings.TrimSpace(string(line))
		if trimmed == "" || strings.HasPrefix(trimmed, "#") {
			continue
		}
		l, err := readAllowedLine(trimmed)
		if err != nil {
			wrong = append(wrong, fmt.Errorf("%s:%d: %w", name, i+1, err))
			continue
		}
		if l != nil {
			a.lines = append(a.lines, *l)
		}
	}
	return a, errors.Join(wrong...)
}

func readAllowedLine(line string) (*allowedLine, error) {
	principals, rest, err := firstWord(line)
	if err != nil {
		return nil, err
	}
	if principals == "" || rest == "" {
		return nil, errors.New("wanted principals, then a public key")
	}
	key, _, options, _, err := ssh.ParseAuthorizedKey([]byte(rest))
	if err != nil {
		return nil, errors.New("the public key cannot be read")
	}
	l := &allowedLine{principals: strings.Split(principals, ","), key: key.Marshal()}
	for _, o := range options {
		name, value, _ := strings.Cut(o, "=")
		value = strings.Trim(value, `"`)
		switch strings.ToLower(name) {
		case "namespaces":
			l.namespaces = strings.Split(value, ",")
		case "valid-after":
			l.after, err = allowedTime(value)
		case "valid-before":
			l.before, err = allowedTime(value)
		case "cert-authority":
			return nil, nil
		default:
			err = fmt.Errorf("there is no option %q", name)
		}
		if err != nil {
			return nil, err
		}
	}
	return l, nil
}

// firstWord is the first word of a line, which may be in quotes, and what follows.
func firstWord(line string) (word, rest string, err error) {
	if quoted, ok := strings.CutPrefix(line, `"`); ok {
		word, rest, ok = strings.Cut(quoted, `"`)
		if !ok {
			return "", "", errors.New("a quote is not closed")
		}
		return word, strings.TrimSpace(rest), nil
	}
	end := strings.IndexFunc(line, unicode.IsSpace)
	if end < 0 {
		return line, "", nil
	}
	return line[:end], strings.TrimSpace(line[end:]), nil
}

// allowedTime is a time as allowed-signers files have it: YYYYMMDD or
// YYYYMMDDHHMM[SS], in UTC if Z is behind it, else in local time.
func allowedTime(text string) (time.Time, error) {
	bare, utc := strings.CutSuffix(text, "Z")
	where := time.Local
	if utc {
		where = time.UTC
	}
	for _, layout := range []string{"20060102", "200601021504", "20060102150405"} {
		if t, err := time.ParseInLocation(layout, bare, where); err == nil {
			return t, nil
		}
	}
	return time.Time{}, fmt.Errorf("%q is no time; wanted YYYYMMDD or YYYYMMDDHHMM, with Z for UTC", text)
}

// vouches says for whom the file gives the key: the principal that is the person of the
// name. The error says in words why there is none.
func (a *Allowed) vouches(key ssh.PublicKey, name string, at time.Time) (principal string, err error) {
	err = fmt.Errorf("the key is not in %s", a.Name)
	for _, l := range a.lines {
		if !bytes.Equal(l.key, key.Marshal()) {
			continue
		}
		switch principal, ok := l.principal(name); {
		case len(l.namespaces) > 0 && !matchesList(l.namespaces, Namespace):
			err = fmt.Errorf("%s allows the key for other things only", a.Name)
		case !l.after.IsZero() && at.Before(l.after) || !l.before.IsZero() && at.After(l.before):
			err = fmt.Errorf("%s does not allow the key at that date", a.Name)
		case !ok:
			err = fmt.Errorf("the key is that of %s in %s", strings.Join(l.principals, ", "), a.Name)
		default:
			return principal, nil
		}
	}
	return "", err
}

// principal is the principal of the line that is the person of this name: the whole of
// it, or what stands before its @, is the name but for capitals and what parts its
// words. "Ada Crane", ada-crane and ada.crane@club.example are all Ada Crane's. One
// with * or ? must match the name or such a spelling of it.
func (l *allowedLine) principal(name string) (string, bool) {
	var found string
	for _, p := range l.principals {
		pattern, not := strings.CutPrefix(p, "!")
		if !isPersons(pattern, name) {
			continue
		}
		if not {
			return "", false
		}
		if found == "" {
			found = pattern
		}
	}
	return found, found != ""
}

func isPersons(pattern, name string) bool {
	local, _, _ := strings.Cut(pattern, "@")
	if !strings.ContainsAny(local, "*?") {
		return foldName(pattern) == foldName(name) || foldName(local) == foldName(name)
	}
	lower := strings.ToLower(name)
	for _, gap := range []string{" ", ".", "-", "_", ""} {
		spelt := strings.ReplaceAll(lower, " ", gap)
		if matches(strings.ToLower(pattern), spelt) || matches(strings.ToLower(local), spelt) {
			return true
		}
	}
	return false
}

func matchesList(patterns []string, text string) bool {
	found := false
	for _, p := range patterns {
		pattern, not := strings.CutPrefix(p, "!")
		if matches(pattern, text) {
			if not {
				return false
			}
			found = true
		}
	}
	return found
}

// matches is a pattern of OpenSSH, in which * stands for any characters and ? for one.
func matches(pattern, text string) bool {
	literal := strings.NewReplacer(`\`, `\\`, `[`, `\[`, `/`, "\x00").Replace(pattern)
	ok, err := path.Match(literal, strings.ReplaceAll(text, "/", "\x00"))
	return err == nil && ok
}

package airframes

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
)

// fields are the settings of one thing: a mapping whose keys the format fixes.
type fields struct {
	r       *reader
	at      diag.Place // where to say that a key is missing
	path    string
	what    string // in messages: `surface "port flap"`
	allowed []string
	keys    map[string]*yaml.Node
	values  map[string]*yaml.Node
	merged  bool // a merge key, which inspect reports, may bring more
}

// fields reads a mapping with fixed keys; what is not allowed is reported. It
// is false if the node is none.
func (r *reader) fields(n *yaml.Node, at diag.Place, path, what string, allowed ...string) (fields, bool) {
	f := fields{r: r, at: at, path: path, what: what, allowed: allowed, keys: map[string]*yaml.Node{}, values: map[string]*yaml.Node{}}
	if !readable(n) {
		return f, false
	}
	if n.Kind != yaml.MappingNode {
		r.wrongKind(n, what, "settings such as {"+allowed[0]+": …}")
		return f, false
	}
	if len(n.Content) == 0 {
		r.fail(r.place(n), codeNothingThere, "give it settings, or take it away; it may have "+listed(allowed, "and"), "%s holds nothing", what)
		return f, false
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if key.Kind != yaml.ScalarNode || key.Value == "<<" || key.Value == "" {
			f.merged = f.merged || key.Value == "<<"
			continue
		}
		if !slices.Contains(allowed, key.Value) {
			if !isNull(value) || !strings.Contains(key.Value, ":") {
				r.fail(r.place(key), codeUnknownKey, r.suggestion(key.Value, allowed, "it may have "+listed(allowed, "and")),
					"%s has no setting %s", what, quoted(key.Value))
			}
			continue
		}
		if f.keys[key.Value] != nil {
			continue
		}
		f.keys[key.Value], f.values[key.Value] = key, value
		r.record(f.pathOf(key.Value), key)
	}
	return f, true
}

// record keeps the place of a key for Places.Fields.
func (r *reader) record(path string, key *yaml.Node) { r.model.Places.Fields[path] = r.place(key) }

func (f *fields) pathOf(key string) string {
	if f.path == "" {
		return key
	}
	return f.path + "." + key
}

// given says whether a key is there, with a value or without.
func (f *fields) given(key string) bool { return f.keys[key] != nil }

// get is the value of a key; nil if it is not there or cannot be read.
func (f *fields) get(key string) *yaml.Node {
	if value := f.values[key]; readable(value) {
		return value
	}
	return nil
}

// placeOf is where a key stands.
func (f *fields) placeOf(key string) diag.Place {
	if n := f.keys[key]; n != nil {
		return f.r.place(n)
	}
	return f.at
}

// require is get; a key that is not there is reported.
func (f *fields) require(key, hint string) *yaml.Node {
	if !f.given(key) {
		f.missing(key, hint)
	}
	return f.get(key)
}

func (f *fields) missing(key, hint string) {
	if f.merged {
		return
	}
	f.r.fail(f.at, codeMissingKey, hint, "%s has no %q", f.what, key)
}

// apart reports keys of which only one may be given; it is the first of them
// that is.
func (f *fields) apart(keys ...string) string {
	first := ""
	for _, key := range keys {
		switch {
		case !f.given(key):
		case first == "":
			first = key
		default:
			f.r.fail(f.placeOf(key), codeNotTogether, "take one of them away", "%s has both %q and %q, want one of them", f.what, first, key)
		}
	}
	return first
}

// entry is one thing of a section whose keys are names or numbers.
type entry struct {
	name  string // as written, white space tidied
	at    diag.Place
	key   *yaml.Node
	value *yaml.Node
	path  string
}

// namedEntries is entries where the keys are names: those that YAML does not
// take as text need quotes.
func (r *reader) namedEntries(n *yaml.Node, path, what string, most int) []entry {
	all := r.entries(n, path, what, most)
	for _, e := range all {
		if e.key.Style == 0 && (e.key.Tag == "!!bool" || isNull(e.key)) {
			r.needsNoQuotes(e.key)
		}
	}
	return all
}

// entries reads a mapping whose keys the person chooses.
func (r *reader) entries(n *yaml.Node, path, what string, most int) []entry {
	if !readable(n) {
		return nil
	}
	if n.Kind != yaml.MappingNode {
		r.wrongKind(n, what, "lines such as \"name: …\"")
		return nil
	}
	if len(n.Content) == 0 {
		r.fail(r.place(n), codeNothingThere, "put something in, or take it away", "%s holds nothing", what)
		return nil
	}
	var all []entry
	seen := map[string]bool{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if key.Kind != yaml.ScalarNode || key.Value == "<<" || key.Value == "" || seen[key.Value] {
			continue
		}
		if isNull(value) && strings.Contains(key.Value, ":") {
			continue
		}
		if len(all) == most {
			r.fail(r.place(key), codeTooMany, "", "%s holds %d things, want at most %d", what, len(n.Content)/2, most)
			break
		}
		seen[key.Value] = true
		e := entry{name: tidy(key.Value), at: r.place(key), key: key, value: value, path: path + "." + key.Value}
		r.record(e.path, key)
		all = append(all, e)
	}
	return all
}

// items reads a list.
func (r *reader) items(n *yaml.Node, what, want string, most int) []*yaml.Node {
	if !readable(n) {
		return nil
	}
	if n.Kind != yaml.SequenceNode {
		r.wrongKind(n, what, want)
		return nil
	}
	if len(n.Content) == 0 {
		r.fail(r.place(n), codeNothingThere, "", "%s is an empty list, want %s", what, want)
		return nil
	}
	if len(n.Content) > most {
		r.fail(r.place(n.Content[most]), codeTooMany, "", "%s has %d items, want at most %d", what, len(n.Content), most)
		return n.Content[:most]
	}
	return n.Content
}

// text is a scalar's value.
func (r *reader) text(n *yaml.Node, what, want string) (string, bool) {
	if !readable(n) {
		return "", false
	}
	if n.Kind != yaml.ScalarNode {
		r.wrongKind(n, what, want)
		return "", false
	}
	return strings.TrimSpace(n.Value), true
}

// wrongKind reports that one kind of value stands where another is wanted.
func (r *reader) wrongKind(n *yaml.Node, what, want string) {
	hint := ""
	if n.Kind == yaml.ScalarNode && n.Style == 0 && strings.Contains(n.Value, ":") {
		hint = hintColon
	}
	r.fail(r.place(n), codeWrongKind, hint, "%s is %s, want %s", what, kindOf(n), want)
}

// kindOf is a node's kind, in words.
func kindOf(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "settings in the form {key: value}"
	case yaml.SequenceNode:
		return "a list"
	}
	return quoted(n.Value)
}

package airframes

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes/airframestest"
)

// The scanner is only asked where the YAML library has failed, but then it must
// not point at what is right.
func TestScanSuspectsNothingInRightFiles(t *testing.T) {
	check := func(name string, text []byte) string {
		found := scan(text)
		for _, s := range append(found.certain, found.wrong...) {
			return name + ": " + s.message + " at " + string(text[s.offset:min(len(text), s.offset+20)])
		}
		if found.deepAt >= 0 || found.second >= 0 {
			return name + ": it is too deep, or has a second document"
		}
		return ""
	}
	for _, name := range Shipped() {
		text, _ := ReadShipped(name)
		if wrong := check(name, text); wrong != "" {
			t.Error(wrong)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text := airframestest.Generate(t)
		if wrong := check("drawn", text); wrong != "" {
			t.Fatalf("%s\n%s", wrong, text)
		}
	})
}

func TestScanPlacesWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		text string
		code string
		at   string // what stands at the place
	}{
		{"a:\n\tb: c\n", codeTab, "\tb"},
		{"a:\n  b: c\n \td: e\n", codeTab, "\td"},
		{"a: {b: c\nd: e\n", codeBracket, "{b"},
		{"a: [b, {c: d]\n", codeBracket, "{c"},
		{"a: b}\nc: }\n", codeBracket, "}\n"},
		{"a: {b: c d: e}\n", codeBracket, "c d"},
		{"a: [b] c\n", codeSyntax, "c\n"},
		{"a: [\"b\" \"c\"]\n", codeBracket, "\"c"},
		{"a: \"b\n", codeQuote, "\"b"},
		{"a:\n  b: 'c\nd: e\n", codeQuote, "'c"},
		{"a: b\nc d\n", codeColon, "c d"},
		{"a: b\nc:d\n", codeColon, ":d"},
		{"a: b: c\n", codeColon, ": c"},
		{"a:\n    b: c\n  d: e\n", codeIndentation, "d: e"},
		{"a: b\n  c: d\n", codeIndentation, "c: d"},
		{"a: %5\n", codeSyntax, "%5"},
		{"a: {b: `c`}\n", codeSyntax, "`c"},
	} {
		found := scan([]byte(c.text))
		all := append(found.certain, found.wrong...)
		if len(all) == 0 || all[0].code != c.code || len(c.text) < all[0].offset+len(c.at) || c.text[all[0].offset:all[0].offset+len(c.at)] != c.at {
			t.Errorf("%q: got %+v, want %s at %q", c.text, all, c.code, c.at)
		}
	}
}

func TestScanLeavesOddButRightTextAlone(t *testing.T) {
	for _, text := range []string{
		"a: b # {[\"'\nc: d\n", "a: \"x: {\\\"y\"\nb: c\n", "a: 'it''s: {'\nb: c\n",
		"about: |\n  any: {thing\n\n   \"goes\nb: c\n", "about: >-\n  a: b\nc: d\n",
		"a:\n- b\n- c: d\n  e: f\ng: h\n", "a: {\n  b: c,\n  d: [e,\n    f]\n}\ng: h\n",
		"a: it's {fine}\nb: c#d\n", "? a\n: b\n", "a: some text\n  that goes on\nb: c\n",
		"\"a b\": c\n'd': {\"e\": f, 'g':h}\n", "a: {b: -5%, c: 12°}\n", "--- # first\na: b\n...\n",
		"a: {b: c}   \r\nd: e\r\n", "a: - b\n",
	} {
		if found := scan([]byte(text)); len(found.wrong)+len(found.certain) > 0 {
			t.Errorf("%q: got %+v %+v, want nothing", text, found.certain, found.wrong)
		}
	}
}

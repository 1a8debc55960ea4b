// Package html renders a control check as one page that stands alone: no script, nothing
// fetched, every picture in it, to be read on any screen, by a screen reader, or printed.
//
// It knows packages result, said and figure only, and decides nothing. A state is a word
// and a sign, never a colour alone; every picture carries its sentence and says in words
// what it shows. Names come from files and are never taken for markup; control
// characters, those that turn the direction of writing among them, are shown as a
// question mark, as the terminal does. The same report gives the same bytes.
//
// Start at [Render]; page.gohtml is the page, pageOf what it is filled with.
package html

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"
	"io"
	"strings"
	"unicode"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

var (
	//go:embed page.gohtml
	pageText string
	//go:embed style.css
	styleText string
)

// layout is the page without its contents.
var layout = template.Must(template.New("page").Funcs(template.FuncMap{
	"count": said.Count,
	"at":    said.At,
	"join":  func(words []string) string { return strings.Join(words, ", ") },
}).Parse(pageText))

// policy allows the page's own style sheet by its hash, pictures that are in the page, and
// nothing else: no script, no request, no form.
func policy() string {
	hash := sha256.Sum256([]byte(styleText))
	return "default-src 'none'; style-src 'sha256-" + base64.StdEncoding.EncodeToString(hash[:]) +
		"'; img-src data:; base-uri 'none'; form-action 'none'"
}

// Render writes the page. Report.Paper may be nil: what it holds is then left out. The
// error is the writer's, or says which picture cannot be drawn; then nothing is written.
func Render(w io.Writer, r *result.Report) error {
	p, err := pageOf(r)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := layout.Execute(&out, p); err != nil {
		return err
	}
	_, err = w.Write(bytes.Map(shown, out.Bytes()))
	return err
}

// shown is a letter as it may stand in a page.
func shown(r rune) rune {
	switch {
	case ' ' <= r && r < 0x7f, r == '\n', r == '\t':
		return r
	case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r), r == 0xfffe, r == 0xffff:
		return '?'
	}
	return r
}

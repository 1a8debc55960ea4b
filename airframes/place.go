package airframes

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/airframes/diag"
)

// offset is where in the text a node begins.
func (r *reader) offset(n *yaml.Node) (int, bool) {
	return r.source.Offset(diag.Place{Line: n.Line, Column: n.Column})
}

// place is where a node stands, as wide as its text on its first line; a list
// or mapping is marked at its beginning.
func (r *reader) place(n *yaml.Node) diag.Place {
	at := diag.Place{File: r.source.Name, Line: n.Line, Column: n.Column, Width: 1}
	if n.Kind != yaml.ScalarNode && n.Kind != yaml.AliasNode {
		return at
	}
	offset, ok := r.offset(n)
	if !ok {
		return at
	}
	at.Width = max(utf8.RuneCount(r.scalarText(n, offset)), 1)
	return at
}

// scalarText is a scalar as the file has it, quotes included, as far as it
// stands on its first line.
func (r *reader) scalarText(n *yaml.Node, offset int) []byte {
	raw := r.source.Text[offset:]
	if n.Kind == yaml.AliasNode {
		return raw[:min(len(raw), len("*")+len(n.Value))]
	}
	if n.Style == 0 && n.Value != "" && bytes.HasPrefix(raw, []byte(n.Value)) {
		return raw[:len(n.Value)]
	}
	if len(raw) > 0 && (raw[0] == '"' || raw[0] == '\'') {
		return quotedText(raw)
	}
	const enough = 200
	raw = raw[:min(len(raw), enough)]
	if end := bytes.IndexByte(raw, '\n'); end >= 0 {
		raw = raw[:end]
	}
	if comment := bytes.Index(raw, []byte(" #")); comment >= 0 {
		raw = raw[:comment]
	}
	return bytes.TrimRight(raw, " \t\r")
}

// quotedText is what begins with a quote up to the quote that closes it, or to
// the end of the line.
func quotedText(raw []byte) []byte {
	for i := 1; i < len(raw); i++ {
		switch {
		case raw[i] == '\n':
			return bytes.TrimRight(raw[:i], " \t\r")
		case raw[i] == '\\' && raw[0] == '"':
			i++
		case raw[i] == raw[0] && raw[0] == '\'' && i+1 < len(raw) && raw[i+1] == '\'':
			i++
		case raw[i] == raw[0]:
			return raw[:i+1]
		}
	}
	return raw
}

// inside is where a part of a scalar's value stands, given by byte offset and
// length in the value. Where quotes with escapes or blocks of text keep it from
// being found, it is the place of the whole scalar.
func (r *reader) inside(n *yaml.Node, from, length int) diag.Place {
	offset, ok := r.offset(n)
	if !ok || from > len(n.Value) {
		return r.place(n)
	}
	raw := r.source.Text[offset:]
	if n.Style == yaml.SingleQuotedStyle || n.Style == yaml.DoubleQuotedStyle {
		offset, raw = offset+1, raw[1:]
	} else if n.Style != 0 {
		return r.place(n)
	}
	start, ok := rawOffset(raw, n.Value, from)
	end, endOK := rawOffset(raw, n.Value, min(from+length, len(n.Value)))
	if !ok || !endOK {
		return r.place(n)
	}
	part, _, _ := bytes.Cut(raw[start:end], []byte("\n"))
	return r.source.At(offset+start, max(utf8.RuneCount(bytes.TrimRight(part, " \t\r")), 1))
}

// rawOffset finds where in a scalar's raw text a byte of its value stands;
// white space of the value may be any white space of the text.
func rawOffset(raw []byte, value string, at int) (int, bool) {
	const white = " \t\r\n"
	i := 0
	for v := 0; v < at; v++ {
		switch {
		case i >= len(raw):
			return 0, false
		case value[v] == ' ' && strings.IndexByte(white, raw[i]) >= 0:
			start := i
			for i < len(raw) && strings.IndexByte(white, raw[i]) >= 0 {
				i++
			}
			if bytes.IndexByte(raw[start:i], '\n') < 0 {
				i = start + 1
			}
		case raw[i] == value[v]:
			i++
		default:
			return 0, false
		}
	}
	return i, true
}

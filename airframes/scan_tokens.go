package airframes

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

// tokens reads the rest of a line, and further lines while a quote is open.
// Start is the offset of the line, indent how far it is indented.
func (s *scanner) tokens(start, indent int) {
	s.fresh = s.fresh || len(s.open) == 0
	for s.pos < len(s.text) && s.deepAt < 0 {
		c := s.text[s.pos]
		switch {
		case c == '\n':
			s.pos++
			return
		case c == ' ' || c == '\t' || c == '\r':
			s.pos++
		case c == '#' && s.spaceBefore():
			s.pos += len(s.rest())
		case c == ']' || c == '}':
			s.closeBracket(c)
			s.fresh = false
		case c == ',' && len(s.open) > 0:
			s.open[len(s.open)-1].colons = 0
			s.pos++
			s.fresh = true
		case c == ':' && (s.colonEnds(s.pos) || len(s.open) > 0 && !s.fresh):
			s.pos++
			s.key(start, s.began, s.pos-1)
		case (c == '|' || c == '>') && len(s.open) == 0 && s.fresh && scalarHeader.Match(s.rest()):
			s.blockScalar()
			return
		default:
			s.value(c, start, indent)
		}
	}
}

// value reads what begins a key or a value.
func (s *scanner) value(c byte, start, indent int) {
	if !s.fresh {
		s.unexpected()
	}
	s.fresh = false
	s.began = s.pos
	switch c {
	case '[', '{':
		s.open = append(s.open, bracket{char: c, offset: s.pos, indent: indent})
		s.checkDepth()
		s.pos++
		s.fresh = true
		s.last.valued = s.last.key
	case '"', '\'':
		s.quote(c, indent)
		s.last.valued = s.last.key
	case '%', '@', '`':
		s.suspect(s.pos, 1, codeSyntax, fmt.Sprintf("a value cannot begin with %q", string(c)), startHint(c))
		s.plain(start)
	default:
		s.plain(start)
	}
}

// unexpected says that something follows a value with nothing between.
func (s *scanner) unexpected() {
	if len(s.open) > 0 {
		s.suspect(s.pos, 1, codeBracket, "a comma is missing before this", "write {key: value, key: value} or [one, two]")
		return
	}
	s.suspect(s.pos, 1, codeSyntax, "the value ends before this", hintQuoteTheWhole)
}

func startHint(c byte) string {
	if c == '%' {
		return "the sign comes after the number, as in 50%"
	}
	return hintQuoteTheWhole
}

func (s *scanner) spaceBefore() bool {
	return s.pos == 0 || bytes.IndexByte([]byte(" \t\n"), s.text[s.pos-1]) >= 0
}

// colonEnds says whether a colon at the offset ends a key.
func (s *scanner) colonEnds(offset int) bool {
	if offset+1 >= len(s.text) {
		return true
	}
	next := s.text[offset+1]
	return bytes.IndexByte([]byte(" \t\r\n"), next) >= 0 || len(s.open) > 0 && bytes.IndexByte([]byte(",[]{}"), next) >= 0
}

// plain reads unquoted text, up to and including the colon that makes it a key.
func (s *scanner) plain(start int) {
	from := s.pos
	for s.pos < len(s.text) {
		c := s.text[s.pos]
		if c == '\n' || c == '#' && s.spaceBefore() && s.pos > from {
			break
		}
		if len(s.open) > 0 && bytes.IndexByte([]byte(",[]{}"), c) >= 0 && s.pos > from {
			break
		}
		if c == ':' && s.colonEnds(s.pos) {
			s.pos++
			s.key(start, from, s.pos-1)
			return
		}
		s.pos++
	}
	if len(s.open) == 0 {
		s.last.valued = s.last.key
	}
}

// key takes a key, which ends at a colon.
func (s *scanner) key(start, from, colon int) {
	s.fresh = true
	if len(s.open) > 0 {
		name, _, _ := bytes.Cut(s.text[from:colon], []byte("\n"))
		s.colon(from, utf8.RuneCount(name))
		return
	}
	if s.last.key && s.last.start == start {
		s.suspect(colon, 1, codeColon, "a second colon on the line", "begin a new line, or put the value in quotes")
	}
	s.last = keyLine{column: max(from-start, 0), start: start, key: true}
	if n := len(s.levels); n > 0 && s.levels[n-1].column == from-start {
		s.levels[n-1].keys = true
	}
}

// colon takes the colon of a key inside brackets.
func (s *scanner) colon(from, width int) {
	inner := &s.open[len(s.open)-1]
	inner.colons++
	if inner.colons > 1 && inner.char == '{' {
		s.suspect(from, width, codeBracket, "a comma is missing before this or inside it", "write {key: value, key: value}")
	}
}

func (s *scanner) closeBracket(c byte) {
	n := len(s.open)
	switch {
	case n == 0:
		s.suspect(s.pos, 1, codeBracket, fmt.Sprintf("%q closes no bracket", string(c)), "take it away, or open one before it")
	case closerOf(s.open[n-1].char) != string(c):
		s.wrongBracket(c)
	default:
		s.open = s.open[:n-1]
	}
	s.pos++
}

// wrongBracket takes a closing bracket of the other kind than the innermost
// open one: it closes the bracket further out that it fits.
func (s *scanner) wrongBracket(c byte) {
	innermost := s.open[len(s.open)-1]
	want := closerOf(innermost.char)
	for i := len(s.open) - 1; i >= 0; i-- {
		if closerOf(s.open[i].char) == string(c) {
			s.suspect(innermost.offset, 1, codeBracket, fmt.Sprintf("this bracket is closed by %q, want %q", string(c), want), "")
			s.open = s.open[:i]
			return
		}
	}
	s.suspect(s.pos, 1, codeBracket, fmt.Sprintf("%q closes no bracket, want %q", string(c), want), "")
}

// quote reads quoted text. Text that goes on over a line which holds a key and
// is indented no deeper than this one was not meant to: YAML wants the lines of
// quoted text to stand deeper.
func (s *scanner) quote(quote byte, indent int) {
	from := s.pos
	firstEnd := from + len(s.rest())
	s.pos++
	for s.pos < len(s.text) {
		c := s.text[s.pos]
		switch {
		case c == '\\' && quote == '"':
			s.pos++
		case c == quote && quote == '\'' && s.pos+1 < len(s.text) && s.text[s.pos+1] == '\'':
			s.pos++
		case c == quote:
			s.pos++
			return
		case c == '\n' && s.pos+1 < len(s.text):
			s.pos++
			line := s.rest()
			spaces := len(line) - len(bytes.TrimLeft(line, " "))
			if spaces <= indent && keyPattern.Match(line) {
				s.sure(from, 1, codeQuote, "this quote is not closed before the next key begins", "close it on its line")
				s.pos = firstEnd
				return
			}
			continue
		}
		s.pos++
	}
	s.pos = min(s.pos, len(s.text))
	s.suspect(from, 1, codeQuote, "this quote is never closed", "close it on its line")
}

// blockScalar skips text that follows | or >: all lines that stand deeper than
// its key.
func (s *scanner) blockScalar() {
	s.pos += len(s.rest()) + 1
	s.last.valued = true
	for s.pos < len(s.text) {
		line := s.rest()
		spaces := len(line) - len(bytes.TrimLeft(line, " "))
		if len(bytes.TrimSpace(line)) > 0 && spaces <= s.last.column {
			break
		}
		s.pos += len(line) + 1
	}
	s.pos = min(s.pos, len(s.text))
}

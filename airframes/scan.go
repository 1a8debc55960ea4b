package airframes

import (
	"bytes"
	"regexp"
	"unicode/utf8"
)

// scanner reads YAML text as far as brackets, quotes, comments and indentation
// go, in one pass, in memory that does not grow with the text. It finds how
// deeply things nest before the YAML library sees them, and what most likely is
// wrong where that library only knows that it is lost.
type scanner struct {
	text []byte
	pos  int

	open    []bracket // flow brackets, outermost first
	levels  []level   // block indentation, outermost first
	last    keyLine   // the last line that began in block context
	fresh   bool      // a value or key may begin here
	began   int       // offset of the value or key read last
	second  int       // offset of a second "---" or of one after text, -1 if none
	started bool      // a line of the document was seen

	deepAt  int // offset where nesting passed maxDepth, -1 if nowhere
	wrong   []suspicion
	certain []suspicion
}

// bracket is an opening bracket that has not been closed yet.
type bracket struct {
	char   byte
	offset int
	indent int // of the line it stands on
	colons int // since the last comma at this level
}

// level is one step of block indentation.
type level struct {
	column int
	keys   bool // keys stand at this column, not dashes
}

// keyLine is what the last line of block context was like.
type keyLine struct {
	column int  // of its last key, or of its last dash if it has no key
	start  int  // offset of the line
	key    bool // it holds a key
	valued bool // it holds a key with a value behind it
}

// suspicion is a likely mistake.
type suspicion struct {
	offset, width int
	code          string
	message, hint string
}

// Problem codes of text that is no YAML.
const (
	codeTab           = "tab-indentation"
	codeIndentation   = "indentation"
	codeBracket       = "bracket"
	codeQuote         = "quote"
	codeColon         = "colon"
	codeSyntax        = "yaml-syntax"
	codeTooDeep       = "too-deep"
	codeSeveral       = "several-documents"
	hintSpaces        = "indent with spaces: two for each level will do"
	hintColon         = `a key is written "key: value", with a space after the colon`
	hintQuoteTheWhole = "put the whole value in quotes"
)

var keyPattern = regexp.MustCompile(`^[ \t]*(?:- +)*[^\s#'"\[\]{},:&*!|>%@-][^#'"\[\]{},:]*:(?:[ \t\r\n]|$)`)

var scalarHeader = regexp.MustCompile(`^[|>][-+0-9]{0,2}[ \t]*(?:#.*)?\r?$`)

// scan reads the text to its end, or to where it nests too deeply.
func scan(text []byte) *scanner {
	s := &scanner{text: text, deepAt: -1, second: -1}
	if bytes.HasPrefix(text, []byte("\uFEFF")) {
		s.pos = len("\uFEFF")
	}
	for s.pos < len(text) && s.deepAt < 0 {
		s.line()
	}
	for _, b := range s.open {
		s.suspect(b.offset, 1, codeBracket, "this bracket is never closed", `want a "`+closerOf(b.char)+`"`)
	}
	return s
}

// enoughWrong is how many likely mistakes of one sort are kept.
const enoughWrong = 20

func (s *scanner) suspect(offset, width int, code, message, hint string) {
	if len(s.wrong) < enoughWrong {
		s.wrong = append(s.wrong, suspicion{offset, width, code, message, hint})
	}
}

// sure is suspect for what is wrong whatever the YAML library makes of it.
func (s *scanner) sure(offset, width int, code, message, hint string) {
	if len(s.certain) < enoughWrong {
		s.certain = append(s.certain, suspicion{offset, width, code, message, hint})
	}
}

// rest is the text from the position to the end of the line.
func (s *scanner) rest() []byte {
	if end := bytes.IndexByte(s.text[s.pos:], '\n'); end >= 0 {
		return s.text[s.pos : s.pos+end]
	}
	return s.text[s.pos:]
}

// line reads from the start of a line to the end of it, or of the last line of
// what began on it.
func (s *scanner) line() {
	start := s.pos
	line := s.rest()
	content := bytes.TrimLeft(line, " \t\r")
	if len(content) == 0 || content[0] == '#' {
		s.pos = start + len(line) + 1
		return
	}
	spaces := len(line) - len(bytes.TrimLeft(line, " "))
	s.abandonBrackets(line, spaces)
	s.pos = start + len(line) - len(content)
	if len(s.open) > 0 {
		s.tokens(start, spaces)
		return
	}
	if isMarker(line) {
		if s.started && s.second < 0 && line[0] == '-' {
			s.second = start
		}
		s.started, s.levels, s.last = true, nil, keyLine{}
		s.pos += len("---")
		s.tokens(start, spaces)
		return
	}
	s.started = true
	if s.pos != start+spaces {
		s.suspect(start+spaces, 1, codeTab, "the line is indented with a tab, want spaces", hintSpaces)
		s.tokens(start, spaces)
		s.levels, s.last = s.levels[:min(len(s.levels), 1)], keyLine{}
		return
	}
	s.block(start)
	s.tokens(start, spaces)
}

func isMarker(line []byte) bool {
	line = bytes.TrimRight(line, "\r")
	for _, marker := range []string{"---", "..."} {
		if rest, ok := bytes.CutPrefix(line, []byte(marker)); ok && (len(rest) == 0 || rest[0] == ' ' || rest[0] == '\t') {
			return true
		}
	}
	return false
}

// abandonBrackets gives up on brackets that were left open: a line that holds
// a key and stands no deeper than the line where the outermost one opened.
func (s *scanner) abandonBrackets(line []byte, spaces int) {
	if len(s.open) == 0 || spaces > s.open[0].indent || !keyPattern.Match(line) {
		return
	}
	innermost := s.open[len(s.open)-1]
	s.suspect(innermost.offset, 1, codeBracket, "this bracket is not closed before the next key begins", `want a "`+closerOf(innermost.char)+`"`)
	s.open = nil
}

// block reads the indentation and dashes that a line of block context begins
// with.
func (s *scanner) block(start int) {
	column := s.pos - start
	s.indent(column)
	for s.pos+1 < len(s.text) && (s.text[s.pos] == '-' || s.text[s.pos] == '?') && (s.text[s.pos+1] == ' ' || s.text[s.pos+1] == '\t') {
		s.last = keyLine{column: column}
		s.pos++
		for s.pos < len(s.text) && (s.text[s.pos] == ' ' || s.text[s.pos] == '\t') {
			s.pos++
		}
		column = s.pos - start
		s.push(level{column: column})
		if s.deepAt >= 0 {
			return
		}
	}
}

// indent takes a line's own column, before any dash.
func (s *scanner) indent(column int) {
	line := s.rest()
	isKey := keyPattern.Match(line)
	if isKey && column > s.last.column && s.last.valued {
		s.suspect(s.pos, 1, codeIndentation, "the line stands deeper than the one before it, which has a value already",
			"begin it below the key of the line before")
	}
	left := false
	for len(s.levels) > 0 && s.levels[len(s.levels)-1].column > column {
		s.levels = s.levels[:len(s.levels)-1]
		left = true
	}
	if len(s.levels) > 0 && s.levels[len(s.levels)-1].column == column {
		s.sibling(line)
		return
	}
	if left && isKey {
		s.suspect(s.pos, 1, codeIndentation, "the line begins at a column where no line above it does", "begin it below the line that it belongs with")
	}
	s.push(level{column: column})
}

// sibling looks at a line that stands below another of the same column.
func (s *scanner) sibling(line []byte) {
	at := s.levels[len(s.levels)-1]
	if !at.keys || line[0] == '-' || bytes.ContainsAny(line[:1], `"'[{]},&*!|>%@?`) {
		return
	}
	text := bytes.TrimRight(line, " \t\r")
	colon := bytes.IndexByte(text, ':')
	switch {
	case colon < 0:
		s.suspect(s.pos, utf8.RuneCount(text), codeColon, "a key without a colon", hintColon)
	case colon+1 < len(text) && text[colon+1] != ' ' && text[colon+1] != '\t':
		s.suspect(s.pos+colon, 1, codeColon, "no space after the colon", hintColon)
	}
}

func (s *scanner) push(l level) {
	s.levels = append(s.levels, l)
	s.checkDepth()
}

func (s *scanner) checkDepth() {
	if len(s.levels)+len(s.open) > maxDepth && s.deepAt < 0 {
		s.deepAt = s.pos
	}
}

func closerOf(char byte) string {
	if char == '[' {
		return "]"
	}
	return "}"
}

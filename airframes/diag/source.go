package diag

import (
	"bytes"
	"sort"
	"sync"
)

// Source is the text of a file, kept to say where in it something stands and
// to show excerpts of it. Make one with NewSource. Lines end with LF or CR LF;
// a byte order mark at the start is no part of the first line. It is safe for
// concurrent use.
type Source struct {
	Name string
	Text []byte

	once    sync.Once
	starts  []int // offset of the first byte of each line
	columns []int // at each multiple of stride, how many characters of its line begin before it
}

// stride is how far apart the places are, in bytes, at which a Source keeps
// the column, so that a long line costs no more than a short one.
const stride = 512

// byteOrderMark is U+FEFF in UTF-8, which some editors put before the text.
const byteOrderMark = "\uFEFF"

// NewSource keeps a file's text; name is what problems call the file.
func NewSource(name string, text []byte) *Source {
	return &Source{Name: name, Text: text}
}

func (s *Source) index() {
	s.once.Do(func() {
		start := 0
		if bytes.HasPrefix(s.Text, []byte(byteOrderMark)) {
			start = len(byteOrderMark)
		}
		s.starts = append(s.starts, start)
		column := 0
		for i, c := range s.Text {
			if i%stride == 0 {
				s.columns = append(s.columns, column)
			}
			switch {
			case c == '\n':
				column = 0
				s.starts = append(s.starts, i+1)
			case begins(c) && i >= start:
				column++
			}
		}
		s.columns = append(s.columns, column)
	})
}

// begins says whether a byte is the first of a character in UTF-8.
func begins(c byte) bool { return c&0xC0 != 0x80 }

// end is the offset behind a line's last character, its line break left out.
func (s *Source) end(number int) int {
	end := len(s.Text)
	if number < len(s.starts) {
		end = s.starts[number] - len("\n")
	}
	if end > s.starts[number-1] && s.Text[end-1] == '\r' {
		end--
	}
	return end
}

// Lines is how many lines the text has; text that ends with a line break has
// an empty last one.
func (s *Source) Lines() int {
	s.index()
	return len(s.starts)
}

// Line is a line of the text without its line break, counted from 1; false if
// there is no such line.
func (s *Source) Line(number int) (string, bool) {
	s.index()
	if number < 1 || number > len(s.starts) {
		return "", false
	}
	return string(s.Text[s.starts[number-1]:s.end(number)]), true
}

// Whole is the place of the file as a whole.
func (s *Source) Whole() Place { return Place{File: s.Name} }

// At is the place of the character that starts at a byte offset, width
// characters wide. An offset outside the text is taken to the nearer end.
func (s *Source) At(offset, width int) Place {
	s.index()
	offset = min(max(offset, s.starts[0]), len(s.Text))
	low, high := 0, len(s.starts)
	for high-low > 1 {
		if middle := (low + high) / 2; s.starts[middle] <= offset {
			low = middle
		} else {
			high = middle
		}
	}
	return Place{File: s.Name, Line: low + 1, Column: s.before(s.starts[low], offset) + 1, Width: width}
}

// before is how many characters of the line that starts at start begin before
// an offset in it.
func (s *Source) before(start, offset int) int {
	from, count := start, 0
	if mark := offset / stride; mark*stride > start {
		from, count = mark*stride, s.columns[mark]
	}
	for _, c := range s.Text[from:offset] {
		if begins(c) {
			count++
		}
	}
	return count
}

// Offset is the byte offset of a place; false if the text has no such line.
// A column beyond the line's end is taken to that end.
func (s *Source) Offset(p Place) (int, bool) {
	s.index()
	if p.Line < 1 || p.Line > len(s.starts) {
		return 0, false
	}
	start, end := s.starts[p.Line-1], s.end(p.Line)
	wanted := max(p.Column-1, 0)
	from, count := start, 0
	first, last := start/stride+1, end/stride
	marks := sort.Search(max(last-first+1, 0), func(i int) bool { return s.columns[first+i] > wanted })
	if marks > 0 {
		from, count = (first+marks-1)*stride, s.columns[first+marks-1]
	}
	for ; from < end; from++ {
		if begins(s.Text[from]) {
			if count == wanted {
				return from, true
			}
			count++
		}
	}
	return end, true
}

// longLine is how many bytes of a line are looked at for an excerpt, at most;
// of a longer one, those around the place.
const longLine = 2000

// around is a line as far as an excerpt needs it, the column counted in that
// text, and whether there is more on either side.
func (s *Source) around(p Place) (text string, column int, more [2]bool, ok bool) {
	at, ok := s.Offset(p)
	if !ok {
		return "", 0, more, false
	}
	start, end := s.starts[p.Line-1], s.end(p.Line)
	if end-start <= longLine {
		return string(s.Text[start:end]), p.Column, more, true
	}
	from, to := max(start, at-longLine/2), min(end, at+longLine/2)
	for from < at && !begins(s.Text[from]) {
		from++
	}
	for to < end && to > at && !begins(s.Text[to]) {
		to--
	}
	more = [2]bool{from > start, to < end}
	column = min(p.Column, 1)
	for _, c := range s.Text[from:at] {
		if begins(c) {
			column++
		}
	}
	return string(s.Text[from:to]), column, more, true
}

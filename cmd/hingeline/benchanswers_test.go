package main

import "testing"

func TestWordsFrom(t *testing.T) {
	for _, c := range []struct {
		line                string
		word, column, width int
	}{
		{"port flap up", 0, 1, 12}, {"port flap up", 1, 6, 7}, {"  3\tübel ", 1, 5, 4}, {" 3 up", 2, 2, 4}, {"", 0, 1, 0},
	} {
		if column, width := wordsFrom(c.line, c.word); column != c.column || width != c.width {
			t.Errorf("%q from word %d: got column %d and width %d, wanted %d and %d", c.line, c.word, column, width, c.column, c.width)
		}
	}
}

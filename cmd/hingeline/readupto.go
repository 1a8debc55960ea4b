package main

import (
	"fmt"
	"io"
)

// readUpTo reads at most so many bytes; more is an error.
func readUpTo(r io.Reader, most int64) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, most+1))
	if err == nil && int64(len(text)) > most {
		err = fmt.Errorf("it holds more than %d kB", most/1000)
	}
	return text, err
}

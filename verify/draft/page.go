package draft

import (
	"bytes"
	"fmt"
	"strings"
)

// page is the script as it is written.
type page struct {
	text      bytes.Buffer
	undecided int
}

func (p *page) line(indent int, format string, values ...any) {
	text := fmt.Sprintf(format, values...)
	if text != "" {
		text = strings.Repeat("  ", indent) + text
	}
	fmt.Fprintln(&p.text, text)
}

func (p *page) gap() { p.line(0, "") }

// decide writes a sentence that is left to the pilot.
func (p *page) decide(indent int, sentence string) {
	p.undecided++
	p.line(indent, "%s%s", YouDecide, sentence)
}

// outcomes writes sentences under Then and And, then those left to the pilot. At
// least one must not be.
func (p *page) outcomes(indent int, lines []line) {
	keyword := "Then"
	for _, l := range lines {
		if l.open {
			p.decide(indent, "And "+l.text)
			continue
		}
		p.line(indent, "%s %s", keyword, l.text)
		keyword = "And"
	}
}

// settled are the sentences that are not left to the pilot.
func settled(lines []line) []string {
	var list []string
	for _, l := range lines {
		if !l.open {
			list = append(list, l.text)
		}
	}
	return list
}

func open(lines []line) []string {
	var list []string
	for _, l := range lines {
		if l.open {
			list = append(list, l.text)
		}
	}
	return list
}

package terminal

import (
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// Columns of the cause chain: the stage, the name, how the value came about,
// and the value itself, right-aligned so that the numbers can be compared.
const (
	chainIndent  = 5
	chainStage   = 8  // "channel ", the longest stage and a space
	chainName    = 22 // more is wrapped
	chainValue   = 14
	chainMinText = 16 // with less room than this for the working, the table is given up for lines
)

// chain shows every intermediate value from the control to the part.
func (p *page) chain(title string, steps []result.Step) {
	if len(steps) == 0 {
		return
	}
	p.para(columns(title)-columns(strings.TrimLeft(title, " ")), title, p.faint)
	name, value := 0, 0
	for _, s := range steps {
		name = max(name, columns(p.say(s.Name)))
		value = max(value, columns(p.say(s.Value)))
	}
	name, value = min(name, chainName), min(value, chainValue)
	text := p.width - chainIndent - chainStage - 1 - name - 2 - 2 - value
	for i, s := range steps {
		stage := s.Stage
		if i > 0 && steps[i-1].Stage == s.Stage && steps[i-1].Name == s.Name {
			s.Name = ""
		}
		if i > 0 && steps[i-1].Stage == stage {
			stage = ""
		}
		if text < chainMinText {
			p.hang(spaces(chainIndent)+"- ", p.faint, said.StepWords(s), plain) // there is no room for a table
		} else {
			p.stepRow(stage, s, name, text, value)
		}
		if s.Limit != "" {
			indent := chainIndent + chainStage + 1
			p.hang(spaces(indent)+"LIMIT ▲ ", p.warn, s.Limit, p.warn)
		}
	}
}

// stepRow is a step as a row of the table; cells that are too long go on below.
// A long value spreads to the left and takes room from the working.
func (p *page) stepRow(stage string, s result.Step, nameWidth, textWidth, valueWidth int) {
	names := wrap(p.say(s.Name), nameWidth)
	both := textWidth + 2 + valueWidth
	valueWidth = max(valueWidth, min(columns(p.say(s.Value)), both-2-chainMinText))
	values := wrap(p.say(s.Value), valueWidth)
	texts := wrap(p.say(s.Text), both-2-valueWidth)
	for i := range max(len(names), len(texts), len(values)) {
		if i > 0 {
			stage = ""
		}
		text, value := cell(texts, i), cell(values, i)
		p.row(
			inked{spaces(chainIndent), plain},
			inked{pad(p.say(stage), chainStage+1), p.faint},
			inked{pad(cell(names, i), nameWidth+2), plain},
			inked{text, plain},
			inked{spaces(both - columns(text) - columns(value)), plain},
			inked{value, p.strong},
		)
	}
}

func cell(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return ""
}

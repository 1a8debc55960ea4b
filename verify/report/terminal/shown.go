package terminal

import (
	"io"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// RenderShown writes what every part does at one position of the controls, and
// why; the reasons are left out if Options.Brief. The error is the writer's.
func RenderShown(w io.Writer, s *result.Shown, o Options) error {
	p := newPage(o)
	p.para(0, s.Model.Name+": one position of the controls", p.strong)
	if s.After != "" {
		p.hang("  from      ", p.faint, said.Pose(s.From, nil, nil, true), plain)
		p.hang("  to        ", p.faint, said.Pose(s.Pose, nil, nil, true), plain)
		p.hang("  after     ", p.faint, s.After, plain)
	} else {
		p.hang("  controls  ", p.faint, said.Pose(s.Pose, nil, nil, true), plain)
	}
	name := 0
	for _, part := range s.Parts {
		name = max(name, columns(p.say(part.Name)))
	}
	for _, stage := range stagesOf(s.Parts, func(part result.ShownPart) result.Stage { return part.Stage }) {
		p.blank()
		p.para(0, strings.ToUpper(string(stage)), p.strong)
		for _, part := range s.Parts {
			if part.Stage == stage {
				p.shownPart(part, name, o.Brief)
			}
		}
	}
	p.effect(s.Effect)
	return p.flush(w)
}

// effect is what a position does to the aeroplane.
func (p *page) effect(e *result.Effect) {
	if e == nil {
		return
	}
	p.blank()
	p.para(0, "WHAT IT DOES TO THE MODEL, against everything at rest", p.strong)
	var turns []string
	for _, t := range e.Turns {
		turns = append(turns, t.Text)
	}
	p.hang("  turns     ", p.faint, strings.Join(turns, gap), p.strong)
	if r := e.Roll; r != nil {
		p.hang("  roll      ", p.faint, r.Text, plain)
		for _, s := range r.Shares {
			p.hang("            ", plain, s.Text, plain)
		}
		if r.Stops != "" {
			p.hang("    LIMIT ▲ ", p.warn, r.Stops, p.warn)
		}
	}
	for i, l := range e.Loads {
		label := "  servos    "
		if i > 0 {
			label = "            "
		}
		ink := plain
		if l.Stalls || l.Has > 0 && l.Has < l.High {
			ink = p.warn
		}
		p.hang(label, p.faint, l.Servo+": "+l.Text, ink)
	}
	for i, words := range e.Worth {
		label := "  estimates "
		if i > 0 {
			label = "            "
		}
		p.hang(label, p.faint, words, plain)
	}
	for i, what := range e.Missing {
		label := "  missing   "
		if i > 0 {
			label = "            "
		}
		p.hang(label, p.faint, what, plain)
	}
}

func (p *page) shownPart(part result.ShownPart, nameWidth int, brief bool) {
	p.hang("  "+pad(p.say(part.Name), nameWidth)+"  ", plain, part.Position, p.strong)
	if brief {
		for _, l := range part.Limits {
			p.hang(spaces(chainIndent)+"LIMIT ▲ ", p.warn, l, p.warn)
		}
		return
	}
	p.chain("     why:", part.Chain)
}

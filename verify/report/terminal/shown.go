package terminal

import (
	"io"
	"strings"

	"example.com/hingeline/verify/result"
)

// RenderShown writes what every part does at one position of the controls, and
// why; the reasons are left out if Options.Brief. The error is the writer's.
func RenderShown(w io.Writer, s *result.Shown, o Options) error {
	p := newPage(o)
	p.para(0, s.Model.Name+": one position of the controls", p.strong)
	if s.After != "" {
		p.hang("  from      ", p.faint, pose(s.From, nil, nil, true), plain)
		p.hang("  to        ", p.faint, pose(s.Pose, nil, nil, true), plain)
		p.hang("  after     ", p.faint, s.After, plain)
	} else {
		p.hang("  controls  ", p.faint, pose(s.Pose, nil, nil, true), plain)
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
	return p.flush(w)
}

func (p *page) shownPart(part result.ShownPart, nameWidth int, brief bool) {
	p.hang("  "+pad(p.say(part.Name), nameWidth)+"  ", plain, part.Position, p.strong)
	if brief {
		for _, l := range part.Limits {
			p.hang(strings.Repeat(" ", chainIndent)+"LIMIT ▲ ", p.warn, l, p.warn)
		}
		return
	}
	p.chain("     why:", part.Chain)
}

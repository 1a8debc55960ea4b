package terminal

import (
	"fmt"
	"io"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// RenderWalk writes the shortest walk-around as a table to take to the model: step by
// step what to set, what to move and what every part must do, with room for a tick. If
// Options.Brief, the steps only. The error is the writer's.
func RenderWalk(w io.Writer, r *result.Walk, o Options) error {
	p := newPage(o)
	p.para(0, r.Model.Name+": the shortest walk-around", p.strong)
	if !o.Brief {
		if len(r.Cautions) > 0 {
			p.hang("▲ ", p.warn, r.Cautions[0], p.warn)
		}
		p.about(r.Model, nil, r.Tool)
		p.hang("  watch     ", p.faint, r.Look, plain)
	}
	for i := range r.Steps {
		p.walkStep(i+1, &r.Steps[i], r.Ruler, o.Brief)
	}
	if !o.Brief {
		p.unseen(r)
		p.warnings(r.Findings, "beside the walk-around")
		p.cautions(r.Cautions)
	}
	p.walkVerdict(r)
	return p.flush(w)
}

func (p *page) walkStep(n int, s *result.WalkStep, ruler, brief bool) {
	p.blank()
	title := "look at the model as it stands"
	if len(s.Move) > 0 {
		title = strings.Join(s.Move, ", ")
	}
	if len(s.Ready) > 0 {
		p.hang(fmt.Sprintf("%3d. set   ", n), p.strong, strings.Join(s.Ready, ", "), plain)
		p.hang("     move  ", p.strong, title, p.strong)
	} else {
		p.hang(fmt.Sprintf("%3d. move  ", n), p.strong, title, p.strong)
	}
	for _, text := range s.Beware {
		p.hang("     ▲ ", p.warn, text, p.warn)
	}
	p.walkParts(s.Parts, ruler)
	if !brief && s.First > 0 {
		p.hang("     shows ", p.faint, fmt.Sprintf("%s, %s of them first here: %s", said.Count(s.Shows, "mistake"), said.Grouped(s.First), someOf(s.Kinds)), p.faint)
	}
}

// mostNamed is how many of a step's mistakes are named.
const mostNamed = 2

func someOf(names []string) string {
	if len(names) <= mostNamed {
		return strings.Join(names, "; ")
	}
	return strings.Join(names[:mostNamed], "; ") + "; …"
}

// walkParts is what every part must do, in columns, with a box to tick.
func (p *page) walkParts(parts []result.WalkPart, ruler bool) {
	names, ways := 0, 0
	for i := range parts {
		names, ways = max(names, columns(p.say(parts[i].Name))), max(ways, columns(p.say(parts[i].Way)))
	}
	for i := range parts {
		part := &parts[i]
		label, does, ink := "      [ ] "+pad(p.say(part.Name), names)+"  ", plainly(part), p.strong
		if ruler {
			label, does, ink = label+pad(p.say(part.Way), ways)+"  ", part.Exact, plain
		}
		if does = p.say(does); columns(label)+columns(does) > p.width {
			p.walkPart(part, ruler)
			continue
		}
		p.row(inked{label, plain}, inked{does, ink})
	}
}

// plainly is what an eye sees of a part; where it may see nothing, what there would be to
// see.
func plainly(part *result.WalkPart) string {
	if part.Way == result.ALittle {
		return said.MayMove + ": " + part.Exact
	}
	return part.Way
}

// walkPart is one part where there is no room for columns.
func (p *page) walkPart(part *result.WalkPart, ruler bool) {
	does := part.Name + ": " + plainly(part)
	if ruler {
		does = part.Name + ": " + part.Way + ", " + part.Exact
	}
	p.hang("      [ ] ", plain, does, plain)
}

// unseen are mistakes that the walk-around cannot show.
func (p *page) unseen(r *result.Walk) {
	if len(r.Unseen) == 0 {
		return
	}
	p.blank()
	p.para(0, "NOT SEEN THIS WAY: "+said.Count(len(r.Unseen), "mistake"), p.warn)
	for _, u := range r.Unseen[:min(mostTold/2, len(r.Unseen))] {
		p.hang("  - ", p.faint, u.Text+": "+u.Why, plain)
	}
	p.more(2, len(r.Unseen)-mostTold/2, "mistake")
}

func (p *page) walkVerdict(r *result.Walk) {
	p.blank()
	if len(r.Steps) == 0 {
		p.hang("▲ ", p.warn, "NOTHING TO WALK AROUND FOR: no mistake of the catalogue can be seen this way, so this says nothing about the model.", p.warn)
		return
	}
	fewest := fmt.Sprintf("of the %s that were tried no fewer do (proved)", said.Count(r.Tried, "step"))
	if r.AtLeast < len(r.Steps) {
		fewest = fmt.Sprintf("of the %s that were tried %d may do, fewer do not (proved)", said.Count(r.Tried, "step"), r.AtLeast)
	}
	moves := fmt.Sprintf("%s of controls by hand", said.Count(r.Moves, "movement"))
	if r.MovesMin < r.Moves {
		moves += fmt.Sprintf(", no order of them with fewer than %d (proved)", r.MovesMin)
	} else {
		moves += ", no order of them with fewer (proved)"
	}
	left := ""
	if len(r.Unseen) > 0 {
		left = fmt.Sprintf(" %s cannot be seen this way.", said.Count(len(r.Unseen), "mistake"))
	}
	if r.Stopped != "" {
		left += " The run was " + r.Stopped + "."
	}
	p.hang("▲ ", p.warn, fmt.Sprintf("%s %s: %s; %s. Whatever does not do what stands here: DO NOT FLY, and ask \"hingeline faults --seen\" or \"--ask\" for the cause.%s",
		said.Does(len(r.Steps), "step", "shows", "show"), said.Count(r.Mistakes, "single mistake"), fewest, moves, left), p.warn)
	if r.Further > 0 {
		p.para(2, fmt.Sprintf("Asked step by step, a mistake is named in %s at most, it or what looks the same everywhere.", said.Count(r.Further, "step")), plain)
	}
}

package terminal

import (
	"fmt"
	"io"
	"math"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// RenderComparison writes what differs between two set-ups, how far each part is elsewhere
// because of it, and which checks come out otherwise. If Options.Brief, the differences,
// the largest change of each part and the verdict in a line each. The error is the
// writer's.
func RenderComparison(w io.Writer, c *result.Comparison, o Options) error {
	p := newPage(o)
	if !o.Brief {
		p.para(0, c.New.Name+": what changed, and what does that do?", p.strong)
		p.hang("  older  ", p.faint, joined(c.Old.File, c.OldScripts), plain)
		p.hang("  newer  ", p.faint, joined(c.New.File, c.NewScripts), plain)
		p.hang("  by     ", p.faint, "Hingeline "+c.Tool, plain)
	}
	p.differences("SET-UP", c.SetUp, mostTold, o.Brief)
	p.differences("SCRIPT", c.Asked, mostSentences, o.Brief)
	p.partChanges(c, o.Brief)
	p.checkChanges(c, o.Brief)
	if !o.Brief {
		p.compareNotes(c)
		p.warnings(c.Findings, "beside the comparison")
		if c.Verdict != result.NoDifference {
			p.cautions(c.Cautions)
		}
	}
	p.comparisonVerdict(c)
	return p.flush(w)
}

// mostSentences is how many differences of scripts are told: they are long, and the checks
// that come out otherwise are told besides.
const mostSentences = 12

func joined(file string, scripts []string) string {
	return strings.Join(append([]string{file}, scripts...), ", ")
}

func (p *page) differences(what string, list []result.Change, most int, brief bool) {
	if len(list) == 0 {
		return
	}
	p.blank()
	p.para(0, what+": "+said.Count(len(list), "difference"), p.strong)
	for _, c := range list[:min(most, len(list))] {
		p.hang("  - ", p.faint, c.Text, plain)
		if !brief && c.Place.File != "" {
			p.para(4, said.At(c.Place), p.faint)
		}
	}
	p.more(2, len(list)-most, "difference")
}

func (p *page) partChanges(c *result.Comparison, brief bool) {
	if len(c.SetUp) == 0 {
		return
	}
	p.blank()
	p.para(0, "AT THE SURFACES: the largest change, at the same position of the controls", p.strong)
	var stage result.Stage
	for i := range c.Parts {
		part := &c.Parts[i]
		if part.Stage != stage && !brief {
			stage = part.Stage
			p.para(2, string(stage), p.faint)
		}
		if part.Note != "" {
			p.hang("  ▲ ", p.warn, part.Name+": "+part.Note, plain)
		}
		p.apart(part.Name, "", part.With, brief)
		p.apart(part.Name, "with the signal lost, ", part.Lost, brief)
	}
	if len(c.Same) > 0 {
		p.hang("  ✓ ", p.good, "proved the same: "+strings.Join(c.Same, ", "), plain)
	}
}

// apart is one largest change.
func (p *page) apart(name, when string, a *result.Apart, brief bool) {
	if a == nil {
		return
	}
	size := a.Text
	switch {
	case a.By == 0:
		size = "no change was found, and it is not proved that there is none"
	case a.Exact:
	default:
		size += atMost(a)
	}
	if brief {
		p.hang("  ▲ ", p.warn, name+": "+when+size+gap+said.Pose(a.Pose, nil, nil, true), plain)
		return
	}
	p.hang("  ▲ ", p.warn, name+": "+when+size, p.strong)
	if a.By == 0 {
		return
	}
	p.hang("    with  ", p.faint, said.Pose(a.Pose, nil, nil, true), plain)
	p.hang("    was   ", p.faint, a.Was, plain)
	p.hang("    is    ", p.faint, a.Is, plain)
}

// atMost is how far what was found may be from the largest change.
func atMost(a *result.Apart) string {
	if a.AtMost > 360 { // nothing was proved
		return ", or more: the search reached its limit"
	}
	unit := a.Unit
	if unit == "%" {
		unit = " %"
	}
	return "; nowhere more than " + said.Decimal(math.Ceil(a.AtMost*10)/10, 1) + unit
}

func (p *page) checkChanges(c *result.Comparison, brief bool) {
	groups := []struct {
		title string
		one   string // the verb of one
		many  string
		mark  string
		ink   paint
		whole bool // told as far as anything is; else only some, for there may be very many
		takes func(*result.CheckChange) bool
	}{
		{"WORSE: %s that passed and now %s", "fails", "fail", "✗ ", p.bad, true, (*result.CheckChange).Worse},
		{"BETTER: %s that failed and now %s", "passes", "pass", "✓ ", p.good, true, (*result.CheckChange).Better},
		{"NEW: %s that only the newer script asks, and that %s", "fails", "fail", "✗ ", p.bad, true, func(ch *result.CheckChange) bool {
			return ch.Was == ch.Is && ch.Script == "newer" && ch.Is == "failed"
		}},
		{"ONE-SIDED: %s that %s held against one set-up only", "could be", "could be", "▲ ", p.warn, false, func(ch *result.CheckChange) bool {
			return (ch.Was == "") != (ch.Is == "")
		}},
	}
	for _, g := range groups {
		var list []*result.CheckChange
		for i := range c.Checks {
			if g.takes(&c.Checks[i]) {
				list = append(list, &c.Checks[i])
			}
		}
		if len(list) == 0 {
			continue
		}
		p.blank()
		most := mostTold
		if !g.whole {
			most = mostSentences
		}
		p.para(0, fmt.Sprintf(g.title, said.Count(len(list), "check"), said.Number(len(list), g.one, g.many)), g.ink)
		for _, ch := range list[:min(most, len(list))] {
			p.checkChange(ch, g.mark, g.ink, brief)
		}
		p.more(2, len(list)-most, "check")
	}
}

func (p *page) checkChange(ch *result.CheckChange, mark string, ink paint, brief bool) {
	p.hang("  "+mark, ink, ch.Sentence, p.strong)
	if brief {
		return
	}
	p.hang("    in      ", p.faint, ch.Scenario+gap+said.At(ch.Place), p.faint)
	p.hang("    of      ", p.faint, ch.Subject+", "+said.Pose(ch.Pose, nil, nil, len(ch.Pose) == 0), plain)
	p.hang("    wanted  ", p.faint, ch.Wanted, plain)
	if ch.Was != "" {
		p.hang("    was     ", p.faint, ch.GotWas+": "+ch.Was, plain)
	}
	if ch.Is != "" {
		p.hang("    is      ", p.faint, ch.GotIs+": "+ch.Is, plain)
	}
}

func (p *page) compareNotes(c *result.Comparison) {
	if len(c.Apart)+len(c.Notes) == 0 {
		return
	}
	p.blank()
	p.para(0, "NOT COMPARED", p.strong)
	for _, list := range [][]string{c.Apart, c.Notes} {
		for _, n := range list {
			p.hang("  - ", p.faint, n, plain)
		}
	}
}

// comparisonVerdict is the last line.
func (p *page) comparisonVerdict(c *result.Comparison) {
	p.blank()
	worse, better := c.Counts()
	held := said.Count(c.Both, "check") + " held against both"
	if c.Failing > 0 {
		held += fmt.Sprintf(", %d of which %s on both", c.Failing, said.Number(c.Failing, "fails", "fail"))
	}
	changes := fmt.Sprintf("%s in the set-up, %d in the script", said.Count(len(c.SetUp), "difference"), len(c.Asked))
	stopped := ""
	if c.Stopped != "" {
		stopped = " The comparison was " + c.Stopped + "."
	}
	switch c.Verdict {
	case result.NoDifference:
		p.hang("✓ ", p.good, "NO DIFFERENCE: set-ups and scripts mean the same, whatever their comments and their order.", p.good)
	case result.SomeWorse:
		p.hang("✗ ", p.bad, fmt.Sprintf("DO NOT FLY: %s that passed %s now (%s; %s).%s", said.Count(worse, "check"), said.Number(worse, "fails", "fail"), changes, held, stopped), p.bad)
	case result.NoneCompared:
		p.hang("▲ ", p.warn, "NO CHECK WAS HELD AGAINST BOTH: "+changes+". What it does, nobody has said."+stopped, p.warn)
	default:
		text := fmt.Sprintf("NO CHECK GOT WORSE: %s; %s", changes, held)
		if better > 0 {
			text += fmt.Sprintf(", %d better", better)
		}
		p.hang("▲ ", p.warn, text+". A change that no check looks at is not in this answer: run check, then look at what changed on the model."+stopped, p.warn)
	}
}

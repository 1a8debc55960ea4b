package terminal

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// RenderFaults writes which single mistakes a script would miss, the worst first, with
// what to add to it; then what cannot be seen, what is caught, and the score. If
// Options.Brief, only what is missed and the score. The error is the writer's.
func RenderFaults(w io.Writer, r *result.Faults, o Options) error {
	p := newPage(o)
	if !o.Brief {
		p.para(0, r.Model.Name+": which single mistakes would the script miss?", p.strong)
		p.about(r.Model, r.Scripts, r.Tool)
	}
	p.missed(r)
	p.openFaults(r)
	if !o.Brief {
		p.invisible(r)
		p.notBuilt(r)
		p.caught(r)
		p.spare(r)
		p.warnings(r.Findings, "beside the mistakes")
		p.cautions(r.Cautions)
	}
	p.faultsVerdict(r)
	return p.flush(w)
}

// inState are the faults of one state, in the report's order.
func inState(r *result.Faults, state result.FaultState) (list []*result.Fault) {
	for i := range r.Faults {
		if r.Faults[i].State == state {
			list = append(list, &r.Faults[i])
		}
	}
	return list
}

// mostTold is how many mistakes of one sort are told in full.
const mostTold = 40

// more says how many are left where a list is cut.
func (p *page) more(indent, left int, noun string) {
	if left > 0 {
		p.para(indent, fmt.Sprintf("… and %s more; --json has them all", said.Count(left, noun)), p.faint)
	}
}

func (p *page) missed(r *result.Faults) {
	list := inState(r, result.Missed)
	if len(list) == 0 {
		return
	}
	p.blank()
	p.para(0, "MISSED: "+said.Count(len(list), "mistake")+" with which every check passes, the worst first", p.bad)
	told := map[string]int{} // sentences that stand above, by number
	for i, f := range list[:min(mostTold, len(list))] {
		p.blank()
		p.hang(fmt.Sprintf("%d. ✗ MISSED  ", i+1), p.bad, f.Text+" ["+f.Kind+"]", p.strong)
		p.hang("   so        ", p.faint, f.Consequence, plain)
		if c := f.Witness; c != nil {
			p.hang("   seen with ", p.faint, said.Pose(c.Pose, c.Before, c.Moved, true), plain)
			p.hang("   wanted    ", p.faint, f.Wanted, plain)
			p.hang("   got       ", p.faint, c.Got, plain)
		}
		switch above, known := told[f.Sentence]; {
		case f.Sentence == "":
			p.hang("   add       ", p.faint, "no sentence was found that tells it; check it by hand", plain)
		case known:
			p.hang("   add       ", p.faint, fmt.Sprintf("the sentence of %d above", above), plain)
		default:
			told[f.Sentence] = i + 1
			p.hang("   add       ", p.faint, f.Sentence, p.strong)
		}
		p.faultLine(f.Place)
	}
	p.more(0, len(list)-mostTold, "mistake")
}

// faultLine is the line of the airframe file that a mistake is about.
func (p *page) faultLine(place result.Place) {
	if place.File != "" {
		p.hang("   at        ", p.faint, said.At(place), plain)
		p.line(place)
	}
}

func (p *page) openFaults(r *result.Faults) {
	list := inState(r, result.Open)
	if len(list) == 0 {
		return
	}
	p.blank()
	p.para(0, "UNDECIDED: "+said.Count(len(list), "mistake")+" that no check catches and nothing rules out", p.warn)
	for _, f := range list[:min(mostTold, len(list))] {
		p.hang("  ▲ ", p.warn, f.Text+": "+f.Reason+" ["+f.Kind+"]", plain)
	}
	p.more(2, len(list)-mostTold, "mistake")
}

// invisible tells what no check could catch, reason by reason.
func (p *page) invisible(r *result.Faults) {
	list := inState(r, result.Invisible)
	if len(list) == 0 {
		return
	}
	p.blank()
	p.para(0, "INVISIBLE BY NATURE: "+said.Count(len(list), "mistake")+" that nobody could see on this model (proved)", p.strong)
	var reasons []string
	for _, f := range list {
		if !slices.Contains(reasons, f.Reason) {
			reasons = append(reasons, f.Reason)
		}
	}
	for _, reason := range reasons {
		p.para(2, reason+":", plain)
		told := 0
		for _, f := range list {
			if f.Reason != reason {
				continue
			}
			if told++; told <= mostTold {
				p.hang("  - ", p.faint, f.Text, plain)
			}
		}
		p.more(2, told-mostTold, "mistake")
	}
}

func (p *page) notBuilt(r *result.Faults) {
	list := inState(r, result.NotBuilt)
	if len(list) == 0 {
		return
	}
	p.blank()
	p.para(0, "NOT WORKED OUT: "+said.Count(len(list), "mistake")+" with which the model cannot be built as it is described", p.strong)
	p.para(2, "They count neither as caught nor as missed.", plain)
	for _, f := range list[:min(mostTold, len(list))] {
		p.hang("  - ", p.faint, f.Text+": "+f.Reason, plain)
	}
	p.more(2, len(list)-mostTold, "mistake")
}

// caught is how many mistakes of each kind are caught.
func (p *page) caught(r *result.Faults) {
	list := inState(r, result.Caught)
	if len(list) == 0 {
		return
	}
	p.blank()
	p.para(0, "CAUGHT: "+said.Count(len(list), "mistake")+", kind by kind", p.strong)
	counts, titles := map[string]int{}, []string{}
	for _, f := range list {
		if counts[f.Title] == 0 {
			titles = append(titles, f.Title)
		}
		counts[f.Title]++
	}
	for _, title := range titles {
		p.hang(fmt.Sprintf("  %4d  ", counts[title]), plain, title, plain)
	}
}

func (p *page) spare(r *result.Faults) {
	if len(r.Spare) == 0 {
		return
	}
	p.blank()
	title := said.Count(len(r.Spare), "scenario") + " of which any one"
	if len(r.Spare) == 1 {
		title = "1 scenario that"
	}
	p.para(0, "SPARE: "+title+" could go and every mistake that is caught would still be", p.strong)
	p.para(2, "That is no reason to take one out: it may say what nobody gets wrong but everybody should read.", p.faint)
	for _, s := range r.Spare[:min(mostTold, len(r.Spare))] {
		p.hang("  - ", p.faint, s.Scenario+gap+said.At(s.Place), plain)
	}
	p.more(2, len(r.Spare)-mostTold, "scenario")
}

// faultsVerdict is the last line.
func (p *page) faultsVerdict(r *result.Faults) {
	p.blank()
	s := r.Score()
	noun, besides := "single mistake", " Two mistakes at once may hide each other. "+said.Afterwards
	if r.Pairs {
		noun, besides = "mistake", " Some of them are two mistakes at once; others may hide each other. "+said.Afterwards
	}
	score := fmt.Sprintf("%s of %s that can be seen %s caught (%d %%)", said.Grouped(s.Caught), said.Count(s.Visible(), noun),
		said.Number(s.Caught, "is", "are"), s.Percent())
	var rest []string
	if s.Invisible > 0 {
		rest = append(rest, fmt.Sprintf("%d invisible by nature", s.Invisible))
	}
	if s.NotBuilt > 0 {
		rest = append(rest, fmt.Sprintf("%d not worked out", s.NotBuilt))
	}
	if r.Left > 0 {
		rest = append(rest, said.Count(r.Left, "kind")+" left out by --only")
	}
	others := ""
	if len(rest) > 0 {
		others = " Besides: " + strings.Join(rest, ", ") + "."
	}
	if r.Stopped != "" {
		others += " The run was " + r.Stopped + "."
	}
	others += said.WantLook(r.Findings)
	sign, ink := "✗ ", p.bad
	switch {
	case r.Verdict != result.SomeMissed || r.Min == 0:
	case s.Percent() >= r.Min && r.Stopped == "":
		sign, ink = "▲ ", p.warn
		others += fmt.Sprintf(" --min %d is reached.", r.Min)
	default:
		others += fmt.Sprintf(" --min %d is not reached.", r.Min)
	}
	switch r.Verdict {
	case result.NoneMissed:
		if r.Left > 0 {
			p.hang("▲ ", p.warn, "NONE MISSED, IN PART: "+score+"."+others+besides, p.warn)
			return
		}
		p.hang("✓ ", p.good, "NONE MISSED: "+score+"."+others+besides, p.good)
	case result.SomeMissed:
		p.hang(sign, ink, fmt.Sprintf("%d MISSED%s: %s.%s", s.Missed, undecidedFaults(s), score, others), ink)
	case result.AlreadyWrong:
		p.hang("✗ ", p.bad, "DO NOT FLY: the script does not pass on this set-up as it is, so it cannot be said what it would catch. Run check first.", p.bad)
	default:
		p.hang("▲ ", p.warn, "NOTHING WAS TRIED: no mistake of these kinds can be made in this model."+others, p.warn)
	}
}

func undecidedFaults(s result.Score) string {
	if s.Open == 0 {
		return ""
	}
	return fmt.Sprintf(", %d UNDECIDED", s.Open)
}

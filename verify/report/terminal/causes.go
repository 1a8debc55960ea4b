package terminal

import (
	"fmt"
	"io"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// RenderCauses writes what explains what was seen on the model, what to look at next and
// what would put it right. If Options.Brief, the explanations and the verdict only. The
// error is the writer's.
func RenderCauses(w io.Writer, r *result.Causes, o Options) error {
	p := newPage(o)
	p.para(0, r.Model.Name+": what explains what was seen?", p.strong)
	if !o.Brief {
		p.about(r.Model, nil, r.Tool)
		p.odd(r)
	}
	p.suspects(r)
	p.nearly(r)
	if r.Next != nil {
		p.next(r.Next, "LOOK NEXT: this step tells them apart best", "if you see  ", "it is     ")
	}
	p.remedies(r)
	if !o.Brief {
		p.warnings(r.Findings, "beside what was seen")
		p.cautions(r.Cautions)
	}
	p.causesVerdict(r)
	return p.flush(w)
}

func (p *page) odd(r *result.Causes) {
	if len(r.Wrong) == 0 {
		return
	}
	p.blank()
	p.para(0, fmt.Sprintf("NOT AS IT SHOULD: %d of %s", len(r.Wrong), said.Count(r.Seen, "thing")+" seen"), p.warn)
	for _, s := range r.Wrong[:min(mostTold, len(r.Wrong))] {
		p.hang("  ✗ ", p.bad, s.Sentence, plain)
		p.hang("    as written ", p.faint, s.Got, plain)
	}
	p.more(2, len(r.Wrong)-mostTold, "sentence")
}

// mostAlike is how many look-alikes of a suspect are named.
const mostAlike = 6

func (p *page) suspects(r *result.Causes) {
	if len(r.Suspects) == 0 {
		return
	}
	p.blank()
	p.para(0, "MAY BE: "+said.Count(len(r.Suspects), "single mistake")+" would look so"+said.Number(len(r.Suspects), "", ", the likeliest first"), p.strong)
	for i, s := range r.Suspects[:min(mostTold, len(r.Suspects))] {
		p.hang(fmt.Sprintf("%3d. ", i+1), p.strong, s.Text+" (made "+s.Odds+") ["+s.Kind+"]", plain)
		if len(s.Alike) > 0 {
			p.hang("     looks the same at every step: ", p.faint, someAlike(s.Alike), plain)
		}
		p.fileSays("     ", s.Place)
	}
	p.more(2, len(r.Suspects)-mostTold, "mistake")
}

func someAlike(names []string) string {
	if len(names) <= mostAlike {
		return strings.Join(names, "; ")
	}
	return fmt.Sprintf("%s; and %d more", strings.Join(names[:mostAlike], "; "), len(names)-mostAlike)
}

// next is the step that tells what is left apart.
func (p *page) next(n *result.NextStep, title, see, then string) {
	p.blank()
	p.para(0, title, p.strong)
	for _, text := range n.Step.Beware {
		p.hang("  ▲ ", p.warn, text, p.warn)
	}
	if len(n.Step.Ready) > 0 {
		p.hang("  set   ", p.strong, strings.Join(n.Step.Ready, ", "), plain)
	}
	move := strings.Join(n.Step.Move, ", ")
	if move == "" {
		move = said.LookAsItStands
	}
	p.hang("  move  ", p.strong, move, plain)
	for _, a := range n.Answers {
		what := strings.Join(a.See, ", ")
		if what == "" {
			what = "nothing that tells"
		}
		p.hang("  "+see, p.strong, what, p.strong)
		p.hang("    "+then, p.faint, someAlike(a.Suspects), plain)
	}
	if n.Left > 1 {
		p.para(2, fmt.Sprintf("It takes %s at most to name it, this one included.", said.Count(n.Left, "step")), p.faint)
	}
}

// nearly are mistakes that explain all but a few answers.
func (p *page) nearly(r *result.Causes) {
	if len(r.Near) == 0 {
		return
	}
	p.blank()
	p.para(0, said.Nearly(r), p.strong)
	for i := range r.Near[:min(mostTold, len(r.Near))] {
		n := &r.Near[i]
		p.hang(fmt.Sprintf("%3d. ", i+1), p.strong, said.NearOf(n), plain)
		if len(n.Alike) > 0 {
			p.hang("     looks the same at every step: ", p.faint, someAlike(n.Alike), plain)
		}
		p.para(5, said.LookAgain(n), p.warn)
		p.para(5, "if it is that, "+said.UndoOf(n), plain)
	}
	p.more(2, len(r.Near)-mostTold, "mistake")
}

// fileSays is a line of the airframe file that is right: it is shown without a caret, as
// nothing is wrong with it.
func (p *page) fileSays(label string, place result.Place) {
	if words := said.FileSays(place); words != "" {
		p.hang(label+"file  ", p.faint, words, p.faint)
	}
}

// remedies are what puts a model right whose file is right, and apart from it what makes
// up for a mistake, and what the file would have to say if the model is right.
func (p *page) remedies(c *result.Causes) {
	if len(c.Repairs) == 0 {
		return
	}
	p.blank()
	p.para(0, "WHAT PUTS IT RIGHT", p.strong)
	p.para(2, said.WhichIsWrong(c.Script), plain)
	back := countAsFile(c.Repairs)
	for i := range c.Repairs[:min(mostTold, back)] {
		r := &c.Repairs[i]
		label := "  - "
		if i > 0 {
			label = "  - or, "
		}
		p.hang(label, plain, said.AsTheFileSays(r), p.strong)
		p.fileSays("    ", r.Place)
	}
	p.more(2, back-mostTold, "change")
	p.madeUpFor(c.Repairs[back:])
	p.fileEdits(c)
	p.para(2, said.NothingOfItself, plain)
}

// countAsFile is how many changes, which come first, put a model as its file says.
func countAsFile(list []result.Repair) (n int) {
	for n < len(list) && list[n].AsFile {
		n++
	}
	return n
}

func (p *page) madeUpFor(list []result.Repair) {
	if len(list) == 0 {
		return
	}
	p.blank()
	p.para(0, said.MadeUpFor, plain)
	for i := range list[:min(mostTold, len(list))] {
		r := &list[i]
		p.hang("  - ", plain, said.AsTheFileSays(r), plain)
		if with := said.WithRepair(r); with != "" {
			p.para(4, with, p.faint)
		}
	}
	p.more(2, len(list)-mostTold, "change")
}

func (p *page) fileEdits(c *result.Causes) {
	if len(c.Edits) == 0 {
		return
	}
	p.blank()
	ink := plain
	if c.Script.Failing > 0 {
		ink = p.warn
	}
	p.para(0, said.FileIsWrong(c.Script), ink)
	for i := range c.Edits[:min(mostTold, len(c.Edits))] {
		e := &c.Edits[i]
		p.hang("  - ", plain, "in the file: "+e.Edit, plain)
		if e.Place.File != "" {
			p.para(4, said.At(e.Place), p.faint)
		}
		if with := said.WithEdit(e, c.Script); with != "" {
			p.para(4, with, p.faint)
		}
	}
	p.more(2, len(c.Edits)-mostTold, "edit")
}

// repairs are changes that would put a model right. None is made.
func (p *page) repairs(list []result.Repair, title string) {
	if len(list) == 0 {
		return
	}
	p.blank()
	p.para(0, title, p.strong)
	for _, r := range list[:min(mostTold, len(list))] {
		p.hang("  - ", plain, said.RepairOf(&r), p.strong)
		if r.Place.File != "" {
			p.hang("    ", plain, said.At(r.Place), p.faint)
			p.line(r.Place)
		}
		if with := said.WithRepair(&r); with != "" {
			p.para(4, with, p.faint)
		}
	}
	p.more(2, len(list)-mostTold, "change")
	p.para(2, said.NothingByItself, plain)
}

func (p *page) causesVerdict(r *result.Causes) {
	p.blank()
	switch r.Verdict {
	case result.AsItShould:
		p.hang("✓ ", p.good, fmt.Sprintf("AS IT SHOULD, AS FAR AS WAS LOOKED: nothing of %s seen speaks against the set-up as written.%s %s",
			said.Count(r.Seen, "thing"), possibleWords(r), said.Afterwards), p.good)
	case result.NotToldApart:
		p.hang("▲ ", p.warn, fmt.Sprintf("NOT DECIDED, which is not a yes: %s seen, and the model may be as it should, or not.%s", said.Count(r.Seen, "thing"), possibleWords(r)), p.warn)
	case result.OneCause:
		p.hang("✗ ", p.bad, "ONE CAUSE, DO NOT FLY: "+r.Suspects[0].Text+alikeWords(&r.Suspects[0])+", if only one thing is wrong.", p.bad)
	case result.SeveralCause:
		p.hang("✗ ", p.bad, "SEVERAL CAUSES, DO NOT FLY: "+said.Count(len(r.Suspects), "mistake")+" would look so. Do the step above and say what you see.", p.bad)
	default:
		if len(r.Near) > 0 {
			p.hang("✗ ", p.bad, said.Nearest(r)+".", p.bad)
			return
		}
		p.hang("✗ ", p.bad, fmt.Sprintf("NO CAUSE FOUND, DO NOT FLY: none of %s looks so. Two things may be wrong at once (--pairs tries some), "+
			"what was written may not be what was seen, or the airframe file describes another model.", said.Count(r.Tried, "single mistake")), p.bad)
	}
}

// possibleWords says what was not ruled out.
func possibleWords(r *result.Causes) string {
	if r.Possible == 0 {
		return ""
	}
	return fmt.Sprintf(" %d of %s would look the same in all of them.", r.Possible, said.Count(r.Tried, "single mistake"))
}

func alikeWords(s *result.Suspect) string {
	if len(s.Alike) == 0 {
		return ""
	}
	if len(s.Alike) == 1 {
		return ", or 1 other that looks the same"
	}
	return fmt.Sprintf(", or one of %s that look the same", said.Count(len(s.Alike), "other"))
}

// offer is what a failed check can offer.
func (p *page) offer(r *result.Repairs) {
	switch {
	case r == nil:
		return
	case len(r.List) == 0:
		p.blank()
		p.para(0, said.Offer(r), p.faint)
	default:
		p.repairs(r.List, said.Offer(r))
		if r.Apart != nil {
			p.next(r.Apart, said.WhichOfThem, "if it should do  ", "then      ")
		}
	}
	if open := said.NotTried(r); open != "" {
		p.para(2, open, p.warn)
	}
}

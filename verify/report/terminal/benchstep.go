package terminal

import (
	"fmt"
	"io"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// BenchLook says how much of a step is shown.
type BenchLook struct {
	Picture bool // it is drawn as well
	Rows    int  // that it should not be longer than: a picture is drawn smaller, or left out; 0 is any
	Ruler   bool // where everything stands is measured, and so said
}

// RenderBenchStep writes one step to do at the bench: what to set, what to move and what
// must be seen, in words first. The error is the writer's.
func RenderBenchStep(w io.Writer, s *result.BenchStep, look BenchLook, o Options) error {
	p := newPage(o)
	title := fmt.Sprintf("STEP %d of %d", s.Number, s.Of)
	if s.Further {
		title = fmt.Sprintf("STEP %d, to tell which mistake it is", s.Number)
	}
	p.row(inked{title, p.strong})
	for _, text := range s.Beware {
		p.hang("  ! ", p.warn, text, p.warn)
	}
	if s.SignalBack {
		p.hang("  first ", p.strong, "the transmitter on again, and see that the model hears it", plain)
	}
	stand := "everything at rest"
	if len(s.Stand) > 0 {
		stand = strings.Join(s.Stand, ", ") + "; everything else at rest"
	}
	p.hang("  set   ", p.strong, stand, plain)
	if s.Stands() {
		p.hang("  look  ", p.strong, "at the model as it stands; move nothing", p.strong)
	} else {
		move := strings.Join(s.Move, ", ")
		if s.SignalLost {
			move += ": switch the transmitter off"
		}
		p.hang("  move  ", p.strong, move, p.strong)
	}
	p.mustMove(s, look.Ruler)
	p.mustStay(s, look.Ruler)
	if look.Picture {
		p.picture(s, look.Rows)
	}
	return p.flush(w)
}

// mustMove are the parts that must be seen to do something.
func (p *page) mustMove(s *result.BenchStep, ruler bool) {
	names := 0
	for i := range s.Parts {
		if s.Parts[i].Moves {
			names = max(names, columns(p.say(s.Parts[i].Name)))
		}
	}
	if names == 0 {
		p.para(2, "nothing must move", p.strong)
		return
	}
	title := "these must move:"
	if s.Stands() {
		title = "these must stand off neutral:"
	}
	p.para(2, title, plain)
	from := false
	for i := range s.Parts {
		part := &s.Parts[i]
		if !part.Moves {
			continue
		}
		from = from || part.To != ""
		p.hang("  "+pad(fmt.Sprintf("%2d ", part.Number)+p.say(part.Name), names+3)+"  ", plain, said.MustDo(s, part, ruler), p.strong)
	}
	if from || ruler {
		p.para(2, "measure where a part then stands, from neutral, and not how far it moved", p.faint)
	}
}

// mustStay are the parts that must not move, in as few lines as can be.
func (p *page) mustStay(s *result.BenchStep, ruler bool) {
	var still, elsewhere, stopped, little, runs []string
	for i := range s.Parts {
		part := &s.Parts[i]
		name := fmt.Sprintf("%d %s", part.Number, part.Name)
		where := name
		if ruler {
			where += " (" + part.Exact + ")"
		}
		switch {
		case part.Moves:
		case !part.Sure, ruler && part.Motion != result.Power && strings.Contains(part.Exact, " to "):
			little = append(little, name+" ("+part.Exact+")")
		case part.Way == "STOPPED":
			stopped = append(stopped, name)
		case part.Motion == result.Power:
			runs = append(runs, where)
		case ruler && part.Exact != "neutral":
			elsewhere = append(elsewhere, where)
		case part.Way == "IN" && !ruler:
			still = append(still, name+" (in)")
		default:
			still = append(still, name)
		}
	}
	word := "must not move:  "
	switch {
	case s.Stands():
		word = "at neutral:     "
	case ruler:
		word = "stays neutral:  "
	}
	p.items("  "+word, still)
	p.items("  stays there:    ", elsewhere)
	p.items("  stays stopped:  ", stopped)
	p.items("  runs on, alike: ", runs)
	p.items("  "+said.MayMove+": ", little)
}

// items are some items behind a label, with commas; no line ends within one that is not
// wider than a line.
func (p *page) items(label string, all []string) {
	for _, item := range all {
		if columns(label)+columns(p.say(item))+1 > p.width { // then below the label
			p.row(inked{label, plain})
			label = spaces(4)
			break
		}
	}
	room := p.width - columns(label)
	line := ""
	flush := func() {
		if line != "" {
			p.hang(label, plain, line, plain)
			label, line = spaces(columns(label)), ""
		}
	}
	for i, item := range all {
		item = p.say(item)
		if i < len(all)-1 {
			item += ","
		}
		if line != "" && columns(line)+1+columns(item) > room {
			flush()
		}
		if line != "" {
			line += " "
		}
		line += item
	}
	flush()
}

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
	for i := range s.Parts {
		part := &s.Parts[i]
		if !part.Moves {
			continue
		}
		p.hang("  "+pad(fmt.Sprintf("%2d ", part.Number)+p.say(part.Name), names+3)+"  ", plain, said.MustDo(s, part, ruler), p.strong)
	}
}

// mustStay are the parts that must not move, in as few lines as can be.
func (p *page) mustStay(s *result.BenchStep, ruler bool) {
	var still, stopped, little, runs []string
	for i := range s.Parts {
		part := &s.Parts[i]
		name := fmt.Sprintf("%d %s", part.Number, part.Name)
		if ruler && part.Way != "STOPPED" {
			name += " (" + part.Exact + ")"
		}
		switch {
		case part.Moves:
		case !part.Sure:
			little = append(little, name)
		case part.Way == "STOPPED":
			stopped = append(stopped, name)
		case part.Motion == result.Power:
			runs = append(runs, name)
		case part.Way == "IN" && !ruler:
			still = append(still, name+" (in)")
		default:
			still = append(still, name)
		}
	}
	word := "must not move:  "
	if s.Stands() {
		word = "at neutral:     "
	}
	p.listed("  "+word, still)
	p.listed("  stays stopped:  ", stopped)
	p.listed("  runs on, alike: ", runs)
	p.listed("  may move a bit: ", little)
}

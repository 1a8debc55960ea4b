package terminal

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// aboutScript is what is odd about the script itself: first what fails the check,
// then what wants a look, then what the pilot has decided. In brief, only what
// fails the check is told in full.
func (p *page) aboutScript(r *result.Report, brief bool) {
	if len(r.Script) == 0 {
		return
	}
	fail, warn, onPurpose := r.ScriptCounts()
	p.blank()
	ink := p.warn
	if fail > 0 {
		ink = p.bad
	}
	p.para(0, "ABOUT THE SCRIPT: "+strings.Join(said.ScriptParts(fail, warn, onPurpose), ", "), ink)
	n := 0
	for _, turn := range []func(*result.ScriptFinding) bool{
		func(f *result.ScriptFinding) bool { return f.Fails },
		func(f *result.ScriptFinding) bool { return !f.Fails && !f.OnPurpose },
		func(f *result.ScriptFinding) bool { return !f.Fails && f.OnPurpose },
	} {
		for i := range r.Script {
			if f := &r.Script[i]; turn(f) {
				n++
				p.scriptFinding(n, f, brief && !f.Fails)
			}
		}
	}
}

func (p *page) scriptFinding(n int, f *result.ScriptFinding, inOneLine bool) {
	sign, ink := "▲", p.warn
	switch {
	case f.Fails:
		sign, ink = "✗", p.bad
	case f.OnPurpose:
		sign, ink = "·", p.faint
	}
	what := f.Message + " [" + f.Code + "]"
	if f.OnPurpose {
		what = "on purpose, the pilot's own decision: " + what
	}
	p.hang(fmt.Sprintf("%3d. %s ", n, sign), ink, what, plain)
	if inOneLine {
		return
	}
	if f.Place.File != "" {
		p.para(7, said.At(f.Place), p.faint)
		p.line(f.Place)
	}
	if f.Sentence != "" && !strings.Contains(f.Place.Excerpt, f.Sentence) {
		p.para(7, "“"+f.Sentence+"”", plain)
	}
	p.hang("       why   ", p.faint, f.Reason, plain)
	if f.Picture != "" {
		p.hang("       look  ", p.faint, f.Picture, plain)
	}
	if f.Hint != "" && !f.OnPurpose {
		p.hang("       do    ", p.strong, f.Hint, plain)
	}
}

package terminal

import (
	"fmt"
	"io"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// RenderStanding writes who has signed a model, and what of it still stands. If
// Options.Brief, what does not stand and the verdict only. The error is the writer's.
func RenderStanding(w io.Writer, tool string, model result.Model, s *result.Standing, o Options) error {
	p := newPage(o)
	p.para(0, model.Name+": who has signed it, and does that still stand?", p.strong)
	if !o.Brief {
		p.about(model, nil, tool)
	}
	p.signatures(s, o.Brief)
	p.changes(s.Changes)
	p.troubles(s.Troubles)
	if !o.Brief && len(s.Signatures) > 0 {
		p.blank()
		p.para(2, "A signature is somebody's word about the set-up as written, and about the model itself only where it says what was seen. What a check cannot see is still to be looked at on the model."+
			" Records that were taken away from the end leave no trace here: keep a copy elsewhere.", plain)
	}
	p.standingVerdict(s)
	return p.flush(w)
}

func (p *page) signatures(s *result.Standing, brief bool) {
	if len(s.Signatures) == 0 {
		return
	}
	p.blank()
	p.para(0, "SIGNATURES, the oldest first", p.strong)
	left := 0
	for i := range s.Signatures {
		if sig := &s.Signatures[i]; brief && sig.Stands() {
			left++
		} else {
			p.signature(sig)
		}
	}
	if left > 0 {
		p.para(2, said.Count(left, "signature")+said.Number(left, " stands", " stand"), plain)
	}
}

func (p *page) signature(s *result.Signature) {
	tone, worth := said.SignatureOf(s)
	mark, ink := p.signOf(tone)
	p.hang(fmt.Sprintf("  %s%d  ", mark, s.Number), ink, said.SignedBy(s), p.strong)
	if s.Name != "" {
		if s.Genuine {
			p.hang("       ", plain, said.Key(s), p.faint)
		}
		p.signedToo(s)
	}
	if s.Stands() {
		p.hang("       ", plain, worth, ink)
	} else {
		p.hang("       "+worth+": ", ink, s.Note, plain)
	}
}

// signedToo is what a signature says besides.
func (p *page) signedToo(s *result.Signature) {
	if s.Tool != "" {
		p.hang("       checked by ", p.faint, "Hingeline "+s.Tool, plain)
	}
	if s.Place != "" {
		p.hang("       at ", p.faint, s.Place, plain)
	}
	if s.Remarks != "" {
		p.hang("       remarks: ", p.faint, s.Remarks, plain)
	}
	tone, words := said.OnTheModel(s)
	_, ink := p.signOf(tone)
	p.hang("       ", plain, words, ink)
	for _, a := range s.Accepted {
		p.hang("       in spite of: ", p.warn, a, plain)
	}
}

// mostChecks is how many sentences are told of those that a change bears on.
const mostChecks = 3

func (p *page) changes(all []result.Change) {
	if len(all) == 0 {
		return
	}
	p.blank()
	p.para(0, "CHANGED since the last signature: "+said.Count(len(all), "difference"), p.warn)
	for _, c := range all {
		p.hang("  ▲ ", p.warn, c.Text, p.strong)
		if c.Place.File != "" {
			p.hang("    ", plain, said.At(c.Place), p.faint)
			p.line(c.Place)
		}
		if len(c.Parts) > 0 {
			p.hang("    bears on  ", p.faint, strings.Join(c.Parts, ", "), plain)
		}
		if n := len(c.Checks); n > 0 {
			words := strings.Join(c.Checks[:min(n, mostChecks)], "; ")
			if n > mostChecks {
				words += fmt.Sprintf("; and %d more", n-mostChecks)
			}
			p.hang("    sentences ", p.faint, words, plain)
		}
	}
}

func (p *page) troubles(all []string) {
	if len(all) == 0 {
		return
	}
	p.blank()
	p.para(0, "NOT TO BE TRUSTED", p.bad)
	for _, t := range all {
		p.hang("  ✗ ", p.bad, t, plain)
	}
}

func (p *page) standingVerdict(s *result.Standing) {
	tone, words := said.StandingOf(s)
	switch {
	case len(s.Troubles) > 0:
		words += ": " + s.Troubles[0]
		if n := len(s.Troubles) - 1; n > 0 {
			words += fmt.Sprintf(", and %d more", n)
		}
	case tone == said.Heed && len(s.Signatures) > 0:
		words += " for what is there now"
	default:
		words += ": " + s.Summary
	}
	p.blank()
	p.toned(tone, words)
}

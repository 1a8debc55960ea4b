package terminal

import (
	"fmt"
	"io"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// RenderBench writes what was seen at the bench against what the set-up does. If
// Options.Brief, only what differs, what is offered and the verdict. The error is the
// writer's.
func RenderBench(w io.Writer, r *result.Bench, o Options) error {
	p := newPage(o)
	p.para(0, r.Model.Name+": the model in the hand, against its set-up as written", p.strong)
	if !o.Brief {
		p.about(r.Model, nil, r.Tool)
		if r.Record != "" {
			p.hang("  record    ", p.faint, r.Record, plain)
		}
		if r.Script != "" {
			p.hang("  script    ", p.faint, r.Script, plain)
		}
		p.hang("  steps     ", p.faint, r.Walk, plain)
		p.hang("  watched   ", p.faint, r.Look, plain)
		if by := said.ByEye(r); by != "" {
			p.hang("  measured  ", p.faint, by, p.warn)
		}
		p.cautions(r.Cautions)
		p.benchSteps(r)
	}
	p.benchDiffers(r)
	p.benchCauses(r, o.Brief)
	p.benchRatios(r)
	if !o.Brief {
		p.benchThrows(r.Throws)
	}
	p.benchFits(r.Fits, o.Brief)
	if !o.Brief {
		p.warnings(r.Findings, "beside the model")
	}
	p.benchVerdict(r)
	return p.flush(w)
}

// benchMarks are the signs and words of what became of a step.
var benchMarks = map[result.BenchState]string{
	result.StepAsExpected: "✓ as expected", result.StepByEye: "▲ as expected by eye, not measured", result.StepDiffers: "✗ DIFFERS", result.StepUnsure: "▲ not all seen",
	result.StepSkipped: "▲ skipped", result.StepOpen: "- not reached",
}

func (p *page) benchInk(s result.BenchState) paint {
	switch s {
	case result.StepAsExpected:
		return p.good
	case result.StepDiffers:
		return p.bad
	case result.StepOpen:
		return p.faint
	}
	return p.warn
}

// benchSteps is every step with what became of it.
func (p *page) benchSteps(r *result.Bench) {
	p.blank()
	for i := range r.Steps {
		s := &r.Steps[i]
		text := benchMarks[s.State]
		if s.Further {
			text += " (to tell which mistake it is)"
		}
		if s.Reason != "" {
			text += ": " + s.Reason
		}
		p.hang(fmt.Sprintf("%3d. ", s.Number), p.strong, benchPose(s)+" · "+text, p.benchInk(s.State))
	}
}

// benchPose is what was done in a step, in a line.
func benchPose(s *result.BenchStep) string {
	switch {
	case len(s.Stand) == 0 && s.Stands():
		return "everything at rest"
	case s.Stands():
		return strings.Join(s.Stand, ", ")
	case len(s.Stand) == 0:
		return strings.Join(s.Move, ", ")
	}
	return strings.Join(s.Stand, ", ") + "; then " + strings.Join(s.Move, ", ")
}

// mostExamples is how many steps are told of a part that is off by other amounts in each.
const mostExamples = 3

// benchDiffers is what was not as expected, part by part.
func (p *page) benchDiffers(r *result.Bench) {
	all := said.Differing(r)
	if len(all) == 0 {
		return
	}
	p.blank()
	p.para(0, "NOT AS EXPECTED: DO NOT FLY", p.bad)
	for i := range all {
		d := &all[i]
		p.hang("  ✗ ", p.bad, said.DifferenceOf(d), p.bad)
		examples := 1
		if d.Measured {
			examples = mostExamples
		}
		for _, one := range d.Steps[:min(examples, len(d.Steps))] {
			p.hang(fmt.Sprintf("      step %d  ", one.Number), p.faint, benchPose(one), p.faint)
			p.para(8, benchDiffer(one.Part(d.Part)), plain)
		}
		if left := len(d.Steps) - mostExamples; d.Measured && left > 0 {
			p.more(6, left, "step")
		}
	}
}

func benchDiffer(part *result.BenchPart) string {
	wanted := part.Way
	if !part.Sure {
		wanted = "a little at most"
	}
	if part.Moves && part.Amount != "" && part.Motion != result.Power {
		wanted += " by " + part.Amount
		if part.To != "" {
			wanted += ", to " + part.To
		}
	}
	var got []string
	if part.Said != "" {
		got = append(got, part.Said)
	}
	for _, r := range part.Reading {
		got = append(got, said.Measured(&r))
	}
	return fmt.Sprintf("wanted %s; seen: %s", wanted, strings.Join(got, "; "))
}

// benchCauses is what explains what differs.
func (p *page) benchCauses(r *result.Bench, brief bool) {
	c := r.Causes
	if c == nil {
		return
	}
	p.suspects(c)
	p.nearly(c)
	if c.Next != nil {
		p.next(c.Next, "LOOK NEXT: this step tells them apart best", "if you see  ", "it is     ")
	}
	if !brief {
		p.remedies(c)
	}
	switch {
	case len(c.Suspects)+len(c.Near) > 0:
	case c.Verdict == result.NoCause:
		p.blank()
		p.para(0, fmt.Sprintf("NO SINGLE MISTAKE of %s that were tried looks so: two things may be wrong at once, an answer may not be what was seen, or lengths and angles in the airframe file are not those of the model.", said.Grouped(c.Tried)), p.warn)
	case len(r.Ratios) > 0:
	default:
		p.blank()
		p.para(0, "WHICH WAY everything went is as the set-up does it; only how far is not. No cause can be told from that: measure what moved too little or too much, with --ruler.", p.warn)
	}
	if r.Sizes > 0 && len(c.Suspects) > 0 {
		p.para(2, "What moved too little or too much and was not measured does not count here.", p.faint)
	}
}

// benchRatios is what goes to the same part of what is computed everywhere.
func (p *page) benchRatios(r *result.Bench) {
	if len(r.Ratios) == 0 {
		return
	}
	p.blank()
	p.para(0, said.BySize, p.strong)
	for i := range r.Ratios {
		one := &r.Ratios[i]
		p.hang("  - "+one.Part+" ", p.strong, said.RatioOf(one), p.warn)
	}
}

// benchThrows is what was measured beside what is computed.
func (p *page) benchThrows(all []result.BenchThrow) {
	if len(all) == 0 {
		return
	}
	p.blank()
	p.para(0, "MEASURED, the furthest each way", p.strong)
	for i := range all {
		t := &all[i]
		text := fmt.Sprintf("%s, computed %s", sizeWords(t.Measured), sizeWords(t.Computed))
		if t.Other != "" {
			text += " " + t.Other
		}
		if t.Off != "" {
			text += ": " + t.Off
		}
		if t.Partner != "" {
			text += "; " + t.Partner
		}
		ink := plain
		if t.Off != "" || t.Partner != "" {
			ink = p.warn
		}
		p.hang("  "+t.Part+" "+t.Way+"  ", p.strong, text, ink)
	}
}

func sizeWords(s result.ThrowSize) string {
	text := said.Decimal(s.Degrees, 1) + "°"
	if s.Millimetres > 0 {
		text += " (" + said.Decimal(s.Millimetres, 1) + " mm)"
	}
	return text
}

// benchFits is what measurements offer to correct.
func (p *page) benchFits(all []result.BenchFit, brief bool) {
	head, offered := false, false
	for i := range all {
		f := &all[i]
		if brief && !f.Offered && f.Table == "" {
			continue
		}
		offered = offered || f.Offered
		if !head {
			head = true
			p.blank()
			p.para(0, "THE AIRFRAME FILE AGAINST WHAT WAS MEASURED", p.strong)
		}
		text := fmt.Sprintf("as written the measurements are off by %s° (root mean square)", said.Decimal(f.Before, 2))
		if f.Offered {
			text += fmt.Sprintf("; corrected, they are off by %s°", said.Decimal(f.After, 2))
		}
		p.hang("  "+f.Name()+"  ", p.strong, text, plain)
		for _, c := range f.Changes {
			line := fmt.Sprintf("%s: %s instead of %s", c.Key, c.Is, c.Was)
			if c.Within != "" {
				line += " (" + c.Within + ")"
			}
			p.hang("    - ", plain, line, p.strong)
		}
		if !brief {
			for _, at := range f.Points {
				line := fmt.Sprintf("%s %%: measured %s, off by %s° as written", said.Decimal(at.Output, 1), at.Measured, said.Decimal(at.Before, 1))
				if f.Offered {
					line += fmt.Sprintf(", by %s° corrected", said.Decimal(at.After, 1))
				}
				p.hang("      channel at ", p.faint, line, p.faint)
			}
		}
		if f.Note != "" {
			p.para(4, f.Note, plain)
		}
		if f.Table != "" {
			p.hang("    in its place with --as-table  ", p.strong, fmt.Sprintf("measured: %s; then off by %s°. A table keeps what was misread.", f.Table, said.Decimal(f.TableAfter, 2)), plain)
		}
	}
	if offered {
		p.para(2, "Nothing is changed by itself: --write FILE writes a new airframe file with what is offered.", plain)
	}
}

// benchVerdict is the last words, with where to look first before them.
func (p *page) benchVerdict(r *result.Bench) {
	p.blank()
	if first := said.LookFirst(r); first != "" && r.Verdict == result.SeenDiffers {
		p.hang("✗ ", p.bad, first, p.strong)
	}
	v := said.BenchVerdict(r)
	p.toned(v.Tone, v.String())
}

package pdf

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// front is page 1: the verdict, what it is about, and what it does not cover.
func (d *document) front() {
	r := d.report
	d.put("name", d.fonts.text(d.inner(), bit{r.Model.Name, lettering{title, bold, figure.Black}}))
	d.put("what", d.fonts.text(d.inner(), bit{"control check, on paper: what the set-up as written does", note}))
	d.put("verdict", d.panel())
	if len(r.Cautions) > 0 {
		d.put("caution", d.fonts.signed(heed, d.inner(), bit{r.Cautions[0], lettering{large, bold, figure.Black}}))
	}
	d.facts()
	d.standing()
	d.uncovered()
}

// leftToDo is what no paper can do.
func (d *document) leftToDo() {
	if len(d.report.Cautions) == 0 {
		return
	}
	d.section("Left to do, with the model in front of you")
	for _, c := range d.report.Cautions {
		d.put("caution", d.fonts.signed(tickBox, d.inner(), bit{c, body}))
	}
}

// panel is the verdict in large words, in a frame.
func (d *document) panel() piece {
	const (
		room  = 4.0
		mark  = 14.0
		frame = 0.7
	)
	v, ink, line := d.verdict, figure.Black, frame
	switch v.Tone {
	case said.Good:
		ink = figure.Good
	case said.Bad:
		ink, line = figure.Bad, 2*frame
	}
	size := huge
	if len(v.Word) > 24 {
		size *= 0.6
	}
	wide := d.inner() - 2*room - mark - room
	text := d.fonts.text(wide, bit{v.Word, lettering{size, bold, ink}})
	text.below(d.fonts.text(wide, bit{sentence(v.Text), lettering{large, regular, figure.Black}}), 0.5)
	p := beside(room, sign(v.Tone, mark), text)
	p.width = d.inner() - 2*room
	p = framed(padded(p, room, room*0.8), line, figure.Fill{}, ink)
	p.height += gapPiece
	return p
}

// sentence is what follows a word and a colon, by itself.
func sentence(text string) string { return strings.TrimPrefix(text, ": ") }

// labels is the width of the labels of facts.
const labels = 32.0

// facts are what the check is about and what it was made with.
func (d *document) facts() {
	r := d.report
	d.section("What was checked")
	fact := func(label string, bits ...bit) {
		d.put("fact", d.fonts.labelled(d.inner(), labels, label, bits...))
	}
	name := []bit{{r.Model.Name, strong}}
	if r.Paper != nil && r.Paper.MassKg > 0 {
		name = append(name, bit{", " + said.Kilograms(r.Paper.MassKg), body})
	}
	fact("model", name...)
	fact("airframe file", bit{r.Model.File, body})
	if len(r.Scripts) > 0 {
		fact(said.Number(len(r.Scripts), "script", "scripts"), bit{strings.Join(r.Scripts, ", "), body})
	}
	if len(r.Rest) > 0 {
		fact("at rest", bit{strings.Join(r.Rest, ", "), body})
	}
	date := said.When(r.Date)
	if date == "" {
		date = "not said"
	}
	fact("date of the check", bit{date, body})
	if r.Tool != "" {
		fact("by", bit{"Hingeline " + r.Tool, body})
	}
	for _, print := range [][2]string{{"set-up", r.SetUp}, {"what was asked", r.Asked}} {
		if print[1] != "" {
			fact(print[0], bit{grouped(strings.TrimPrefix(print[1], "sha256:")), body})
		}
	}
	for _, print := range r.Prints {
		fact("file", bit{print.File, body}, bit{" " + grouped(print.SHA256), body})
	}
	if r.SetUp != "" {
		d.put("note", d.fonts.labelled(d.inner(), labels, "", bit{
			"These are fingerprints (SHA-256). Those of the set-up and of what was asked stay the same when only comments or the order of lines change; those of the files do not.", quiet}))
	}
}

// standing is what has been signed before, and whether it still stands.
func (d *document) standing() {
	s := d.report.Standing
	if s == nil {
		return
	}
	d.section("Signatures so far")
	tone, word := said.StandingOf(s)
	d.put("standing", d.fonts.toned(tone, d.inner(), bit{word, strong}, bit{prefixed(": ", s.Summary), body}))
	for _, trouble := range s.Troubles {
		d.put("trouble", d.fonts.toned(said.Bad, d.inner(), bit{trouble, strong}))
	}
	for i := range s.Signatures {
		g := &s.Signatures[i]
		tone, worth := said.SignatureOf(g)
		p := d.fonts.signed(func(size float64) piece { return sign(tone, size) }, d.inner(),
			bit{fmt.Sprintf("%d, %s: ", g.Number, said.SignedBy(g)), body}, bit{worth, strong}, bit{prefixed("; ", g.Note), body})
		if g.Genuine { // else nobody knows whose key it is
			p.below(d.fonts.labelled(d.inner(), 4, "", bit{said.Key(g), note}), 0)
		}
		more := func(label, words string) {
			if words != "" {
				p.below(d.fonts.labelled(d.inner(), 4, "", bit{label + words, note}), 0)
			}
		}
		if g.Name != "" {
			_, seen := said.OnTheModel(g)
			more("", seen)
		}
		more("at ", g.Place)
		more("remarks: ", g.Remarks)
		for _, a := range g.Accepted {
			more("accepted: ", a)
		}
		d.put("signature", p)
	}
	for _, c := range s.Changes {
		words := "changed: " + c.Text
		if len(c.Parts) > 0 {
			words += "; it can bear on " + strings.Join(c.Parts, ", ")
		}
		if len(c.Checks) > 0 {
			words += "; checks about them: " + strings.Join(c.Checks, "; ")
		}
		d.put("change", d.fonts.signed(heed, d.inner(), bit{words, body}, bit{prefixed(" ", said.At(c.Place)), quiet}))
	}
}

// uncovered is what no check touched. That there is nothing is said too.
func (d *document) uncovered() {
	u := d.report.Uncovered
	d.section("Not covered")
	if len(u.Parts)+len(u.Controls)+len(u.Positions)+d.report.NotSelected == 0 && len(d.report.Checks) > 0 {
		d.put("covered", d.fonts.text(d.inner(), bit{said.AllTouched, body}))
		return
	}
	for _, list := range []struct {
		label string
		names []string
	}{
		{"parts that no check looks at: ", u.Parts},
		{"controls that no check moves: ", u.Controls},
		{"positions that no check uses: ", u.Positions},
	} {
		if len(list.names) > 0 {
			d.put("uncovered", d.fonts.signed(heed, d.inner(), bit{list.label, body}, bit{strings.Join(list.names, ", "), strong}))
		}
	}
	if d.report.NotSelected > 0 {
		d.put("uncovered", d.fonts.signed(heed, d.inner(), bit{said.LeftOutOnPaper(d.report), strong}))
	}
	if len(d.report.Checks) == 0 {
		d.put("uncovered", d.fonts.signed(heed, d.inner(), bit{"no check ran", strong}))
	}
}

// place is where something stands in a file, with the line.
func (d *document) place(width float64, label string, at result.Place) piece {
	var p piece
	bits := []bit{{said.At(at), note}}
	if at.Note != "" {
		bits = append(bits, bit{", " + at.Note, note})
	}
	p.below(d.fonts.labelled(width, chainLabel, label, bits...), 0)
	if strings.TrimSpace(at.Excerpt) != "" && at.Line > 0 {
		p.add(d.fonts.excerpt(width-chainLabel, at.Line, at.Excerpt), chainLabel, p.height)
	}
	return p
}

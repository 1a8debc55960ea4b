package html

import (
	"fmt"
	"html/template"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// page is what the layout is filled with.
type page struct {
	Policy  string
	Style   template.CSS
	Report  *result.Report
	Verdict verdict
	Title   string

	Contents []chapter

	Mass      string
	Date      string
	Prints    []print
	Standing  *standing
	Uncovered []listed

	Failures []failure
	Shared   []said.Shared
	Offer    *offer
	Script   []scriptFinding
	About    string // of the findings about the script

	Legend *shot // of the pictures of the walk-around; nil where there are none
	Stages []stage
	Asked  []stop
	Always []sight

	Throws   []throw
	Travel   []travel
	Linkages []linkage
	Signal   []signal
	Motors   []motor

	Statement said.Statement
	Signers   []said.Signer
}

// verdict is the verdict with its sign.
type verdict struct {
	mark
	Word, Text string
}

// mark is how something is meant: a class for its colour and a sign. The word beside it
// says the same.
type mark struct{ Class, Sign string }

func markOf(t said.Tone) mark {
	switch t {
	case said.Good:
		return mark{"good", "✓"}
	case said.Bad:
		return mark{"bad", "✗"}
	}
	return mark{"heed", "▲"}
}

// remark is words with their mark.
type remark struct {
	mark
	Text string
}

func remarkOf(t said.Tone, text string) remark { return remark{markOf(t), text} }

// chapter is an entry of the table of contents.
type chapter struct {
	ID, Title string
	Parts     []chapter
}

// print is a fingerprint in groups that can be read out.
type print struct {
	Of     string
	Groups []string
}

const printGroup = 8

func printOf(of, digits string) print {
	p := print{Of: of}
	digits = strings.TrimPrefix(digits, "sha256:")
	for len(digits) > printGroup {
		p.Groups = append(p.Groups, digits[:printGroup])
		digits = digits[printGroup:]
	}
	p.Groups = append(p.Groups, digits)
	return p
}

// listed is a label and what belongs to it.
type listed struct {
	Label string
	Names []string
}

func pageOf(r *result.Report) (*page, error) {
	v := said.OnPaper(r)
	p := &page{
		Policy: policy(), Style: template.CSS(styleText), Report: r,
		Verdict:   verdict{markOf(v.Tone), v.Word, sentence(v.Text)},
		Title:     v.Word + ": " + r.Model.Name + ", control check",
		Date:      said.When(r.Date),
		Uncovered: uncoveredOf(&r.Uncovered),
		Shared:    said.SharedPlaces(r),
		Statement: said.StatementOf(r),
		Signers:   said.Signers(r),
	}
	if r.Paper != nil && r.Paper.MassKg > 0 {
		p.Mass = said.Kilograms(r.Paper.MassKg)
	}
	if r.SetUp != "" {
		p.Prints = append(p.Prints, printOf("set-up", r.SetUp))
	}
	if r.Asked != "" {
		p.Prints = append(p.Prints, printOf("what was asked", r.Asked))
	}
	for _, f := range r.Prints {
		p.Prints = append(p.Prints, printOf(f.File, f.SHA256))
	}
	if r.Standing != nil {
		p.Standing = standingOf(r.Standing)
	}
	if r.Repairs != nil {
		p.Offer = offerOf(r.Repairs)
	}
	for _, f := range said.ScriptFindings(r) {
		p.Script = append(p.Script, scriptFindingOf(f))
	}
	p.About = strings.Join(said.ScriptParts(r.ScriptCounts()), ", ")
	d := newDrawer(r)
	p.failures(d)
	p.walk(d)
	if r.Paper != nil {
		p.bench(r.Paper, d)
	}
	p.contents()
	return p, d.finish()
}

// sentence is what follows a word and a colon, by itself, with a capital.
func sentence(text string) string {
	text = strings.TrimPrefix(text, ": ")
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 || first == utf8.RuneError {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

func uncoveredOf(u *result.Uncovered) []listed {
	var all []listed
	for _, l := range []listed{
		{"parts that no check looks at", u.Parts},
		{"controls that no check moves", u.Controls},
		{"positions that no check uses", u.Positions},
	} {
		if len(l.Names) > 0 {
			all = append(all, l)
		}
	}
	return all
}

// AllTouched is what there is to say where nothing is left out by name.
func (p *page) AllTouched() string { return sentence(said.AllTouched) }

// LeftOut says how many checks were not run; empty for none.
func (p *page) LeftOut() string {
	if p.Report.NotSelected == 0 {
		return ""
	}
	return said.LeftOutOnPaper(p.Report)
}

// contents is the table of contents, of the chapters that there are.
func (p *page) contents() {
	add := func(is bool, id, title string, parts ...chapter) {
		if is {
			p.Contents = append(p.Contents, chapter{id, title, parts})
		}
	}
	r := p.Report
	var failures, stages []chapter
	for i := range p.Failures {
		failures = append(failures, chapter{p.Failures[i].ID, fmt.Sprintf("%d. %s", i+1, p.Failures[i].Title), nil})
	}
	for i := range p.Stages {
		stages = append(stages, chapter{p.Stages[i].ID, p.Stages[i].Title, nil})
	}
	add(true, "about", "What was checked")
	add(p.Standing != nil, "signed", "Signatures so far")
	add(true, "uncovered", "Not covered")
	add(p.Offer != nil, "repairs", "What would put it right")
	add(len(p.Failures) > 0, "failed", p.FailedTitle(), failures...)
	add(len(r.Cautions) > 0, "todo", "Left to do, with the model in front of you")
	add(len(p.Script) > 0, "script", "About the script: "+p.About)
	add(len(r.Findings) > 0, "warnings", p.WarningsTitle())
	add(len(p.Stages) > 0, "walk", "The walk-around", stages...)
	add(len(p.Asked) > 0, "asked", p.AskedTitle())
	add(len(p.Always) > 0, "always", p.AlwaysTitle())
	add(len(p.Throws) > 0, "throws", "Throws, to be measured")
	add(len(p.Travel) > 0, "travel", "Travel of the channels")
	add(len(p.Linkages) > 0, "linkages", "Linkages")
	add(len(p.Signal) > 0, "signal", "Loss of signal")
	add(len(p.Motors) > 0, "motors", "Motors")
	add(true, "sign", "Signatures")
}

// FailedTitle heads the failures.
func (p *page) FailedTitle() string {
	return fmt.Sprintf("Failed: %d of %s", len(p.Failures), said.Count(len(p.Report.Checks), "check"))
}

// WarningsTitle heads the warnings.
func (p *page) WarningsTitle() string {
	return "Warnings: " + said.Count(len(p.Report.Findings), "thing") + " to look at that no check decides"
}

// AskedTitle heads the checks that cannot be seen on the model, AskedNote says so.
func (p *page) AskedTitle() string { return said.AskedTitle(said.ChecksOf(p.Report).Asked()) }

func (p *page) AskedNote() string { return said.AskedNote }

// AlwaysTitle heads the checks that speak of every position.
func (p *page) AlwaysTitle() string {
	n := len(said.ChecksOf(p.Report).Everywhere())
	return "Asked for every position of the controls: " + said.Count(n, "check")
}

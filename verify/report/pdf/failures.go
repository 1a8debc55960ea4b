package pdf

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// chainLabel is the width of the labels of a failure.
const chainLabel = 20.0

// failures shows every failed check with what is needed to put it right.
func (d *document) failures() {
	r := d.report
	_, failed := r.Counts()
	if failed == 0 {
		return
	}
	d.section(fmt.Sprintf("Failed: %d of %s", failed, said.Count(len(r.Checks), "check")))
	if shared := said.SharedPlaces(r); len(shared) > 0 {
		d.lead(d.fonts.text(d.inner(), bit{"NAMED MOST OFTEN by these failures, which may have one cause:", strong}))
		for _, s := range shared {
			p := d.fonts.labelled(d.inner(), chainLabel, "", bit{"by " + said.Count(s.Failures, "failure"), body})
			p.below(d.place(d.inner(), "", s.Place), 0)
			d.put("shared", p)
		}
	}
	n := 0
	for _, group := range said.ByCause(r) {
		first := n + 1
		for k, i := range group {
			n++
			if k == 0 {
				d.failure(n, i)
			} else {
				d.put("failure", d.again(n, i, first, group[0]))
			}
		}
	}
}

// pictureRoom is how wide a picture beside what failed is.
const pictureRoom = 84.0

// failure is one failed check: what it asked and got, then why.
func (d *document) failure(n, i int) {
	c := &d.report.Checks[i]
	wide := d.inner()
	p := d.fonts.signed(badCross, wide,
		bit{fmt.Sprintf("%d. FAIL ", n), lettering{large, bold, figure.Bad}}, bit{c.Sentence, lettering{large, bold, figure.Black}})
	shown := d.wantedGot(i, pictureRoom)
	if shown.height > 0 {
		wide -= pictureRoom + gapPiece
	}
	var facts piece
	row := func(label string, bits ...bit) {
		if bits[0].text != "" {
			facts.below(d.fonts.labelled(wide, chainLabel, label, bits...), 0)
		}
	}
	row("", bit{c.Miss, badly})
	row("check", bit{fmt.Sprintf("%d, %s, %s", i+1, c.Stage, c.Scenario), body}, bit{"  " + said.At(c.Place), note})
	row("controls", bit{d.checks.Pose(i), body})
	row("WANTED", bit{c.Wanted, strong})
	row("GOT", bit{d.checks.Got(i), badly})
	decided, do := said.HowDecided(c.Proof)
	row("decided", bit{decided, body})
	row("do", bit{do, body})
	facts.add(shown, wide+gapPiece, 0)
	p.below(facts, 0)
	d.put("failure", p)
	for k, why := range c.Why {
		d.put("why", d.chain(said.Why(c, k)+":", why.Chain))
		var places piece
		for j, place := range said.MostTelling(why.LookAt) {
			label := "look at"
			if j > 0 {
				label = "and at"
			}
			places.below(d.place(d.inner(), label, place), 0.3)
		}
		d.put("look at", places)
	}
}

// again is one more failure of a cause that another has shown: in short, with what is not
// at the other.
func (d *document) again(n, i, first, shown int) piece {
	c := &d.report.Checks[i]
	wide := d.inner()
	p := d.fonts.signed(badCross, wide, bit{fmt.Sprintf("%d. FAIL ", n), badly}, bit{c.Sentence, strong}, bit{prefixed("  ", c.Miss), badly})
	bold := lettering{small, bold, figure.Black}
	bits := []bit{{fmt.Sprintf("check %d, %s. ", i+1, said.At(c.Place)), note}}
	for _, one := range [][2]string{{"controls ", d.checks.Pose(i)}, {"WANTED ", c.Wanted}, {"GOT ", d.checks.Got(i)}} {
		if one[1] != "" {
			bits = append(bits, bit{one[0], quiet}, bit{one[1] + ". ", bold})
		}
	}
	decided, do := said.HowDecided(c.Proof)
	bits = append(bits, bit{prefixed("decided: ", decided), note}, bit{prefixed("; ", do), note},
		bit{fmt.Sprintf(" why: as at %d above", first), note}, bit{prefixed("; here also ", strings.Join(said.Besides(c, &d.report.Checks[shown]), "; ")), note})
	p.below(d.fonts.labelled(wide, 4, "", bits...), 0)
	return p
}

// chain is every intermediate value from the control to the part, as a table.
func (d *document) chain(title string, steps []result.Step) piece {
	if len(steps) == 0 {
		return piece{}
	}
	const stage, name, gap = 16.0, 42.0, 2.0
	value := 30.0
	text := d.inner() - chainLabel - stage - name - value - 3*gap
	table := d.fonts.text(d.inner()-chainLabel, bit{title, quiet})
	for i, s := range steps {
		if i > 0 && steps[i-1].Stage == s.Stage && steps[i-1].Name == s.Name {
			s.Name = ""
		}
		label := s.Stage
		if i > 0 && steps[i-1].Stage == label {
			label = ""
		}
		row := beside(gap,
			d.fonts.text(stage, bit{label, quiet}), d.fonts.text(name, bit{s.Name, note}),
			d.fonts.text(text, bit{s.Text, note}), d.fonts.text(value, bit{s.Value, lettering{small, bold, figure.Black}}))
		if s.Limit != "" {
			row.add(d.fonts.signed(heed, d.inner()-chainLabel-stage-gap, bit{"LIMIT " + s.Limit, lettering{small, bold, figure.Black}}), stage+gap, row.height)
		}
		table.below(row, 0.2)
	}
	var p piece
	p.add(table, chainLabel, 0)
	return p
}

// offer is which single changes would make every check pass, where somebody looked.
func (d *document) offer() {
	r := d.report.Repairs
	if r == nil {
		return
	}
	d.section("What would make it pass")
	if offer := d.fonts.text(d.inner(), bit{said.Offer(r), strong}); len(r.List) > 0 {
		d.lead(offer)
	} else {
		d.put("offer", offer)
	}
	for i := range r.List {
		one := &r.List[i]
		p := d.fonts.text(d.inner(), bit{fmt.Sprintf("%d. %s", i+1, said.RepairOf(one)), strong}, bit{prefixed(", ", said.WithRepair(one)), body})
		if one.Place.File != "" {
			p.below(d.place(d.inner(), "", one.Place), 0)
		}
		d.put("offer", p)
	}
	if words := said.NotTried(r); words != "" {
		d.put("offer", d.fonts.signed(heed, d.inner(), bit{words, body}))
	}
	if n := r.Apart; n != nil {
		p := d.fonts.text(d.inner(), bit{said.WhichOfThem, strong})
		move := said.LookAsItStands
		if len(n.Step.Move) > 0 {
			move = strings.Join(n.Step.Move, ", ")
		}
		for _, text := range n.Step.Beware {
			p.below(d.fonts.signed(heed, d.inner(), bit{text, body}), 0)
		}
		if len(n.Step.Ready) > 0 {
			p.below(d.fonts.labelled(d.inner(), chainLabel, "set", bit{strings.Join(n.Step.Ready, ", "), body}), 0)
		}
		p.below(d.fonts.labelled(d.inner(), chainLabel, "move", bit{move, strong}), 0)
		for _, a := range n.Answers {
			p.below(d.fonts.labelled(d.inner(), chainLabel, "if it should do", bit{strings.Join(a.See, ", "), strong}, bit{prefixed(": ", strings.Join(a.Suspects, "; ")), body}), 0)
		}
		d.put("offer", p)
	}
	if len(r.List) > 0 {
		d.put("offer", d.fonts.text(d.inner(), bit{said.NothingByItself, note}))
	}
}

// aboutScript is what is odd about the script itself: first what fails the check, then
// what wants a look, then what the pilot has decided.
func (d *document) aboutScript() {
	r := d.report
	if len(r.Script) == 0 {
		return
	}
	d.section("About the script: " + strings.Join(said.ScriptParts(r.ScriptCounts()), ", "))
	for n, f := range said.ScriptFindings(r) {
		d.put("about the script", d.scriptFinding(n+1, f))
	}
}

func (d *document) scriptFinding(n int, f *result.ScriptFinding) piece {
	mark := heed
	switch {
	case f.Fails:
		mark = badCross
	case f.OnPurpose:
		mark = goodTick
	}
	wide := d.inner()
	p := d.fonts.signed(mark, wide, bit{fmt.Sprintf("%d. %s", n, said.ScriptFinding(f)), strong})
	row := func(label, text string) {
		if text != "" {
			p.below(d.fonts.labelled(wide, chainLabel, label, bit{text, body}), 0)
		}
	}
	if f.Sentence != "" {
		row("", "“"+f.Sentence+"”")
	}
	row("why", f.Reason)
	row("look", f.Picture)
	if !f.OnPurpose {
		row("do", f.Hint)
	}
	if f.Place.File != "" {
		p.below(d.place(wide, "", f.Place), 0)
	}
	return p
}

// warnings are what is odd about the set-up, asked for or not.
func (d *document) warnings() {
	found := d.report.Findings
	if len(found) == 0 {
		return
	}
	d.section("Warnings: " + said.Count(len(found), "thing") + " to look at that no check decides")
	for i, f := range found {
		p := d.fonts.signed(heed, d.inner(), bit{fmt.Sprintf("%d. %s [%s]", i+1, f.Message, f.Code), strong})
		if f.Hint != "" {
			p.below(d.fonts.labelled(d.inner(), chainLabel, "do", bit{f.Hint, body}), 0)
		}
		if f.Place.File != "" {
			p.below(d.place(d.inner(), "", f.Place), 0)
		}
		d.put("warning", p)
	}
}

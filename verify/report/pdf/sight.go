package pdf

import (
	"strconv"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result/said"
)

// sight is what is asked and what was worked out, for a cell of the walk-around.
func (d *document) sight(s *said.Sight) piece { return d.sightIn(s, d.mustWidth()-2*cellSides) }

func (d *document) sightIn(s *said.Sight, wide float64) piece {
	mark, word, computed := goodTick, lettering{small, regular, figure.Grey}, strong
	state := " pass "
	if !s.Passed {
		mark, word, computed, state = badCross, badly, badly, " FAIL "
	}
	p := d.fonts.signed(mark, wide, bit{numbers(s.Checks) + state, word}, bit{s.Sentence, strong})
	told := map[string]bool{}
	line := func(label, words string, as lettering) {
		if words != "" && !told[label+words] {
			told[label+words] = true
			p.below(d.fonts.hanging(wide, label, bit{words, as}), 0)
		}
	}
	for _, i := range s.Checks {
		c := &d.report.Checks[i]
		if c.Miss != "" {
			p.below(d.fonts.text(wide, bit{c.Miss, badly}), 0)
		}
		if !c.Passed || c.Wanted != c.Got && !strings.Contains(unpointed(s.Sentence), unpointed(c.Wanted)) {
			line("wanted", d.checks.Wanted(i), note)
		}
		line("set-up gives", d.checks.Got(i)+said.Assuming(c.Proof), computed)
		if !c.Passed {
			p.below(d.wantedGot(i, wide), 0.6)
		}
	}
	return p
}

// unpointed is text without its commas: "drops, at least 1°" asks for "drops at least 1°".
func unpointed(text string) string { return strings.ReplaceAll(text, ",", "") }

// numbers are checks by their numbers in the report.
func numbers(checks []int) string {
	var all []string
	for _, i := range checks {
		all = append(all, strconv.Itoa(i+1))
	}
	return strings.Join(all, ", ")
}

// hanging is a text with a small label before it, narrow enough for a cell.
func (f *fonts) hanging(width float64, label string, bits ...bit) piece {
	const wide = 16.5
	return beside(0, f.text(wide, bit{label, quiet}), f.text(width-wide, bits...))
}

// asked are the checks of the stops that nobody can see on the model.
func (d *document) asked() {
	stops := d.checks.Asked()
	if len(stops) == 0 {
		return
	}
	d.section(said.AskedTitle(stops))
	d.lead(d.fonts.text(d.inner(), bit{said.AskedNote, body}))
	for _, s := range stops {
		d.lead(d.fonts.text(d.inner(), bit{s.Pose, lettering{small, bold, figure.Grey}}))
		for _, one := range d.checks.Sights(s.Checks) {
			if one.Passed {
				d.put("asked", d.brief(&one))
			} else {
				d.put("asked", d.sightIn(&one, d.inner()))
			}
		}
	}
}

// brief is a sight that passed, in a line where there is room.
func (d *document) brief(s *said.Sight) piece {
	bits := []bit{{numbers(s.Checks) + " pass ", quiet}, {s.Sentence + ": ", lettering{small, bold, figure.Black}}}
	told := map[string]bool{}
	for _, i := range s.Checks {
		c := &d.report.Checks[i]
		words := d.checks.Got(i) + said.Assuming(c.Proof)
		if c.Wanted != c.Got && !strings.Contains(unpointed(s.Sentence), unpointed(c.Wanted)) {
			words += " (wanted " + c.Wanted + ")"
		}
		if !told[words] {
			told[words] = true
			bits = append(bits, bit{words + "; ", note})
		}
	}
	last := &bits[len(bits)-1]
	last.text = strings.TrimSuffix(last.text, "; ")
	return d.fonts.signed(goodTick, d.inner(), bits...)
}

// everyPosition are the checks that no one can set and look at: they speak of every
// position.
func (d *document) everyPosition() {
	checks := d.checks.Everywhere()
	if len(checks) == 0 {
		return
	}
	d.section("Asked for every position of the controls: " + said.Count(len(checks), "check"))
	d.lead(d.fonts.text(d.inner(), bit{"These were decided for the set-up as written, over all positions that the sentence speaks of. There is nothing to tick: nobody can set them all.", body}))
	for _, s := range d.checks.Sights(checks) {
		d.put("every position", d.sightIn(&s, d.inner()))
	}
}

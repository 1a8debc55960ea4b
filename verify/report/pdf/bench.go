package pdf

import (
	"fmt"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// linkageWidth is how wide the drawing of a linkage is.
const linkageWidth = 92.0

// linkages are the linkages, drawn to scale.
func (d *document) linkages(all []result.Linkage) {
	if len(all) == 0 {
		return
	}
	d.section("Linkages")
	for i := range all {
		l := &all[i]
		wide := d.inner() - linkageWidth - gapSection
		p := d.fonts.text(wide, bit{l.Part, strong}, bit{prefixed(", ", l.Channel), body})
		for _, words := range append(append([]string{l.Seen}, l.Lengths...), l.Horn) {
			p.below(d.fonts.text(wide, bit{words, note}), 0)
		}
		for k := range l.Stands {
			p.below(d.fonts.text(wide, bit{"– " + l.Stands[k].Says, note}), 0.4)
		}
		p.add(d.linkage(l, linkageWidth), wide+gapSection, 0)
		d.put("linkage", p)
	}
}

// signal is what every channel does when the signal is lost, to be seen with the
// transmitter switched off.
func (d *document) signal(all []result.Signal) {
	if len(all) == 0 {
		return
	}
	d.section("Loss of signal: switch the transmitter off and look")
	d.lead(d.lostSteps())
	g := grid{d, []column{{"channel", 0.28}, {"does, as the set-up has it", 0.47}, {"seen", 0.25}}, "signal"}
	g.begin()
	for i := range all {
		s := &all[i]
		does := g.cell(1, bit{s.Does, strong})
		if len(s.Parts) > 0 {
			does.below(g.cell(1, bit{strings.Join(s.Parts, ", "), note}), 0)
		}
		if tone, words := said.LostMotor(s); words != "" {
			does.below(d.fonts.toned(tone, g.width(1), bit{words, strong}), 0)
		}
		g.row(g.cell(0, bit{s.Channel, strong}), does, d.seenOr(s.Runs, g.width(2)))
	}
	d.ended()
	d.put("signal back", d.fonts.signed(tickBox, d.inner(), bit{said.SignalBack(d.report.Paper), strong}))
}

// lostSteps is how the loss of signal is tried.
func (d *document) lostSteps() piece {
	var p piece
	for i, step := range said.LostSteps(d.report.Paper) {
		words := fmt.Sprintf("%d. %s", i+1, step)
		if i == 0 {
			p = d.fonts.signed(heed, d.inner(), bit{words, strong})
			continue
		}
		p.below(d.fonts.text(d.inner(), bit{words, body}), 0)
	}
	return p
}

// seenOr is a box to tick, or, where the model must not be flown as it is, what to do.
func (d *document) seenOr(mend bool, width float64) piece {
	if mend {
		return d.fonts.toned(said.Bad, width, bit{said.MendFirst, strong})
	}
	return d.ticked(width, "as it stands here")
}

// motors is what is looked at on every motor, with its propeller off.
func (d *document) motors(all []result.Motor) {
	if len(all) == 0 {
		return
	}
	d.section("Motors")
	d.lead(d.fonts.signed(heed, d.inner(), bit{said.PropellerOff, strong}))
	g := grid{d, []column{{"motor", 0.28}, {"what must be seen", 0.47}, {"seen", 0.25}}, "motor"}
	g.begin()
	for i := range all {
		m := &all[i]
		about := g.cell(0, bit{m.Name, strong})
		about.below(g.cell(0, bit{m.Channel, note}), 0)
		for k, see := range said.MotorSights(m) {
			if k > 0 {
				about = g.cell(0, bit{m.Name, note})
			}
			g.row(about, d.fonts.toned(see.Tone, g.width(1), bit{see.Text, strong}), d.seenOr(see.Tone == said.Bad, g.width(2)))
		}
	}
	d.ended()
}

// ticked is a box to tick with words beside it.
func (d *document) ticked(width float64, label string) piece {
	const size = 4.4
	var p piece
	p.add(tickBox(size), 0, 0)
	p.add(d.fonts.text(width-size-1.6, bit{label, note}), size+1.6, (size-leading*small)/2)
	p.height = max(p.height, size)
	return p
}

// lines are labels with lines to write on, in two columns.
func (d *document) lines(labels ...string) piece {
	const columns, gap = 2, 6.0
	wide := (d.inner() - gap) / columns
	var all piece
	for len(labels) > 0 {
		var row []piece
		for _, label := range labels[:min(len(labels), columns)] {
			row = append(row, d.fonts.blank(wide, label))
		}
		labels = labels[len(row):]
		all.below(beside(gap, row...), 0)
	}
	return all
}

// balance is what no file knows: where the model balances and what it weighs.
func (d *document) balance() {
	d.section("Balance and mass, to be filled in")
	d.put("balance", d.lines("balance point wanted, from … to … mm", "balance point measured, mm",
		"across, which wing is heavy", "mass measured, kg"))
}

func (d *document) rangeCheck() {
	d.section("Range check, to be filled in")
	p := d.lines("distance asked for, m", "distance reached, m", "power and aerial as the maker asks", "who held the model")
	for _, check := range said.RangeSights(d.report.Paper) {
		p.below(d.fonts.signed(tickBox, d.inner(), bit{check, lettering{large, regular, figure.Black}}), gapPiece)
	}
	d.put("range", p)
}

// day is with what and by whom the model was looked at, and what came of it.
func (d *document) day() {
	d.section("The model and the day, to be filled in")
	p := d.lines(said.DayLines(d.report.Paper)...)
	for _, check := range said.DaySights {
		p.below(d.fonts.signed(tickBox, d.inner(), bit{check, lettering{large, regular, figure.Black}}), gapPiece)
	}
	const room = 2.0
	wide := d.inner() - 2*room
	outcome := d.fonts.text(wide, bit{"Result", strong})
	for _, one := range said.Outcomes {
		outcome.below(d.fonts.signed(tickBox, wide, bit{one, lettering{large, bold, figure.Black}}), gapPiece)
	}
	outcome.width = wide
	p.below(framed(padded(outcome, room, room/2), 0.35, figure.Fill{}, figure.Black), gapSection/2)
	d.put("day", p)
}

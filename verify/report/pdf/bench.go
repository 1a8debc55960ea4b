package pdf

import (
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
	d.lead(d.fonts.signed(heed, d.inner(), bit{said.PropellerOff, strong}))
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
		g.row(g.cell(0, bit{s.Channel, strong}), does, d.ticked(g.width(2), "as it stands here"))
	}
	d.ended()
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
			g.row(about, d.fonts.toned(see.Tone, g.width(1), bit{see.Text, strong}), d.ticked(g.width(2), "as it stands here"))
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
	d.put("balance", d.lines("balance point wanted, mm behind", "balance point measured, mm",
		"across, which wing is heavy", "mass measured, kg", "battery, its state", "receiver battery, its state"))
}

// rangeChecks are what is looked at at the far end of a range check.
var rangeChecks = []string{
	"every surface answers at once and the right way, motor stopped",
	"the same with the motor running, the model held",
	"the surfaces stay still while nothing is moved",
	"transmitter off: the motor stops, and every surface goes where the set-up says it goes",
}

func (d *document) rangeCheck() {
	d.section("Range check, to be filled in")
	p := d.lines("distance asked for, m", "distance reached, m", "power and aerial as the maker asks", "who held the model")
	for _, check := range rangeChecks {
		p.below(d.fonts.signed(tickBox, d.inner(), bit{check, lettering{large, regular, figure.Black}}), gapPiece)
	}
	d.put("range", p)
}

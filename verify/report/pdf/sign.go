package pdf

import (
	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result/said"
)

// signatures is the end of the sheet, on one page: what is being signed, and by whom.
func (d *document) signatures() {
	d.section("Signatures")
	all := d.statement()
	if len(d.report.Checks) == 0 {
		d.put("signatures", all)
		return
	}
	for _, s := range said.Signers(d.report) {
		all.below(d.signature(s), 3)
	}
	all.below(d.fonts.text(d.inner(), bit{"Remarks", strong}), 3)
	for range 4 {
		all.below(d.fonts.blank(d.inner(), ""), 0)
	}
	d.put("signatures", all)
}

// statement is what a signature says, and what it does not.
func (d *document) statement() piece {
	const room = 3.0
	wide := d.inner() - 2*room
	s := said.StatementOf(d.report)
	p := d.fonts.toned(s.Tone, wide, bit{s.Title, lettering{large, bold, figure.Black}})
	p.below(d.fonts.text(wide, bit{s.Text, body}), 0.6)
	if s.Condition != "" {
		p.below(d.fonts.signed(heed, wide, bit{s.Condition, strong}), 0.6)
	}
	p.width = wide
	return framed(padded(p, room, room*0.7), 0.35, figure.Fill{}, figure.Black)
}

// signature is the lines of one person.
func (d *document) signature(s said.Signer) piece {
	const gap = 6.0
	wide := (d.inner() - gap) / 2
	p := d.fonts.text(d.inner(), bit{s.Who, strong}, bit{prefixed(" – ", s.About), note})
	p.below(d.fonts.text(d.inner(), bit{s.Did, note}), 0)
	for _, pair := range [][2]string{{"name", "signature"}, {"place", "date"}} {
		p.below(beside(gap, d.fonts.blank(wide, pair[0]), d.fonts.blank(wide, pair[1])), 0)
	}
	return p
}

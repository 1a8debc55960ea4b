package pdf

import (
	"io"
	"strings"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// RenderCard writes a card of what is to be seen at every position of the controls: one
// page that is folded once or twice to 105 by 74 mm, for a shirt pocket. What finds no room
// is counted on it. Options.Paper does not matter. Errors are as of [Lay] and [Sheet.Write].
func RenderCard(w io.Writer, r *result.Report, o Options) error {
	d, err := composeCard(r, o)
	if err != nil {
		return err
	}
	return d.write(w)
}

// folded is a page that is folded along its middle, or along both.
type folded struct {
	width, height float64
	down          int // how many of its parts stand one above another, 1 or 2
}

// The cards: both are 105 by 74 mm when they are folded.
var (
	once  = folded{148, 105, 1}
	twice = folded{210, 148, 2}
)

// Sizes of a card's letters, in millimetres: as large as there is room for. With small ones
// it is folded twice instead; under them nobody reads it outdoors.
const (
	cardMargin = 5.0
	cardMost   = 2.8
	cardSmall  = 2.2
	cardFine   = 1.8 // of its foot, which nobody reads in the field
	cardStep   = 0.1
	cardGap    = 0.35
)

// composeCard lays out the card: the smaller one if everything fits on it in good letters,
// else the larger one, and if need be as many rows as it takes, the most telling first.
func composeCard(r *result.Report, o Options) (*document, error) {
	d, err := newDocument(r, o)
	if err != nil {
		return nil, err
	}
	d.title = cardTitled
	rows := d.cardRows()
	for size := cardMost; size >= cardSmall; size -= cardStep {
		if d.card(once, rows, size) {
			return d, nil
		}
	}
	for size := cardMost; size >= cardSmall; size -= cardStep {
		if d.card(twice, rows, size) {
			return d, nil
		}
	}
	d.cardInPart(twice, rows)
	return d, nil
}

// side is one part of a folded page, with how far it is filled.
type side struct{ x, y, bottom float64 }

// fill is a card being filled, part after part.
type fill struct {
	d     *document
	wide  float64
	sides []side
	foot  piece
}

// begin empties the page and gives it its foot and its folds.
func (d *document) begin(f folded) *fill {
	d.leaves = []*leaf{{}}
	d.width, d.height = f.width, f.height
	half, tall := f.width/2, f.height/float64(f.down)
	c := &fill{d: d, wide: half - 2*cardMargin}
	for row := range f.down {
		for column := range 2 {
			top := float64(row) * tall
			c.sides = append(c.sides, side{float64(column)*half + cardMargin, top + cardMargin, top + tall - cardMargin})
		}
	}
	l := d.leaf()
	l.marks = append(l.marks,
		stroke{half, 0, half, f.height, 0.15, figure.Dashed, figure.Grey},
		box{0.5, 0.5, f.width - 1, f.height - 1, 0.15, figure.Fill{}, figure.Grey})
	if f.down > 1 {
		l.marks = append(l.marks, stroke{0, tall, f.width, tall, 0.15, figure.Dashed, figure.Grey})
	}
	last := &c.sides[len(c.sides)-1]
	c.foot = d.cardFoot(c.wide)
	last.bottom -= c.foot.height
	d.standAt("foot", c.foot, last.x, last.bottom)
	last.bottom -= cardGap
	return c
}

// put places a piece where there is room for it, and reports whether there is.
func (c *fill) put(what string, p piece) bool {
	for len(c.sides) > 0 {
		if s := &c.sides[0]; s.y+p.height <= s.bottom {
			c.d.standAt(what, p, s.x, s.y)
			s.y += p.height + cardGap
			return true
		}
		if len(c.sides) == 1 {
			return false
		}
		c.sides = c.sides[1:]
	}
	return false
}

// card fills a page and reports whether everything has found room.
func (d *document) card(f folded, rows []cardRow, size float64) bool {
	c := d.begin(f)
	for _, p := range d.cardHead(c.wide, size) {
		if !c.put("head", p) {
			return false
		}
	}
	for i := range rows {
		if !c.put("row", d.cardRow(&rows[i], c.wide, size)) {
			return false
		}
	}
	return true
}

// cardInPart fills a page with as many rows as it takes, and says how many it does not. Its
// head is made to fit.
func (d *document) cardInPart(f folded, rows []cardRow) {
	c := d.begin(f)
	last := &c.sides[len(c.sides)-1]
	x, room := last.x, 2*leading*cardSmall+cardGap
	last.bottom -= room
	foot := last.bottom
	for _, p := range d.cardHead(c.wide, cardSmall) {
		const most = 0.4 // of a part's height
		if s := c.sides[0]; p.height > (s.bottom-s.y)*most {
			p = p.scaled((s.bottom - s.y) * most / p.height)
		}
		c.put("head", p)
	}
	rows = mostTelling(rows)
	for i := range rows {
		if !c.put("row", d.cardRow(&rows[i], c.wide, cardSmall)) {
			d.standAt("left out", d.fonts.signed(heed, c.wide, bit{
				said.Count(len(rows)-i, "row") + " more found no room here: see the sheet", lettering{cardSmall, bold, figure.Black}}), x, foot+cardGap)
			return
		}
	}
}

// standAt puts a piece at a place of the page.
func (d *document) standAt(what string, p piece, x, y float64) {
	l := d.leaf()
	p.draw(l, x, y, 1)
	l.placed = append(l.placed, placed{what, y, y + p.height})
}

// cardHead is the verdict, the model and what must not be forgotten.
func (d *document) cardHead(wide, size float64) []piece {
	r := d.report
	const room, mark = 1.5, 6.0
	ink := figure.Black
	if d.verdict.Tone == said.Bad {
		ink = figure.Bad
	}
	text := wide - 2*room - mark - room
	v := d.fonts.text(text, bit{d.verdict.Word, lettering{size * 1.9, bold, ink}})
	v.below(d.fonts.text(text, bit{sentence(d.verdict.Text), lettering{size * 0.92, regular, figure.Black}}), 0.2)
	panel := beside(room, sign(d.verdict.Tone, mark), v)
	panel.width = wide - 2*room
	plain, heavy := lettering{size, regular, figure.Black}, lettering{size, bold, figure.Black}
	heads := []piece{
		d.fonts.text(wide, bit{r.Model.Name, lettering{size * 1.3, bold, figure.Black}}),
		framed(padded(panel, room, room*0.6), 0.5, figure.Fill{}, ink),
	}
	if len(r.Cautions) > 0 {
		heads = append(heads, d.fonts.signed(heed, wide, bit{r.Cautions[0], heavy}))
	}
	if len(r.Rest) > 0 {
		heads = append(heads, d.fonts.text(wide, bit{"at rest: ", heavy}, bit{strings.Join(r.Rest, ", "), plain}))
	}
	if r.Paper != nil {
		heads = append(heads, d.fonts.text(wide, bit{"UP and DOWN are the trailing edge's.", plain}))
	}
	return heads
}

// cardFoot says what the card was made from.
func (d *document) cardFoot(wide float64) piece {
	r := d.report
	words := "a check on paper" + prefixed(", set-up ", said.ShortPrint(r.SetUp)) + prefixed(", ", said.When(r.Date)) + prefixed(", Hingeline ", r.Tool)
	p := rule(wide, 0.15, figure.Whole, figure.Grey)
	p.add(d.fonts.text(wide, bit{words, lettering{cardFine, regular, figure.Black}}), 0, 0.3)
	return p
}

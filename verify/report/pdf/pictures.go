package pdf

import (
	"slices"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// pictureOf is the picture of a check; nil where there is none.
func (d *document) pictureOf(i int) *result.Picture {
	p := d.report.Paper
	if p == nil || i >= len(p.Pictures) {
		return nil
	}
	return &p.Pictures[i]
}

// behind is the model from behind at checks that are seen together; empty where they are
// about no part, about a channel, or about more than one position.
func (d *document) behind(checks []int, width float64) piece {
	var together *result.Picture
	for _, i := range checks {
		one := d.pictureOf(i)
		switch {
		case one == nil || len(one.Of) == 0 || said.Everywhere(&d.report.Checks[i]) || said.Unseen(&d.report.Checks[i]):
		case together == nil:
			copied := *one
			copied.Of = slices.Clone(one.Of)
			together = &copied
		default:
			for _, part := range one.Of {
				if !slices.Contains(together.Of, part) {
					together.Of = append(together.Of, part)
				}
			}
			together.Want = nil
			together.Moves = together.Moves || one.Moves
		}
	}
	if together == nil {
		return piece{}
	}
	shown := figure.Behind(&d.report.Paper.Shape, together, d.report.Checks[checks[0]].Sentence)
	return d.drawn(shown, width)
}

// wantedGot is a failed check as a picture: where the part should be and where it is;
// empty where the sentence names no place or way.
func (d *document) wantedGot(i int, width float64) piece {
	p := d.pictureOf(i)
	if p == nil || p.Want == nil || len(p.Of) == 0 {
		return piece{}
	}
	part := p.Of[0]
	if part < 0 || part >= len(p.Stands) || part >= len(d.report.Paper.Shape.Parts) {
		return piece{}
	}
	shown := figure.WantedGot(&d.report.Paper.Shape.Parts[part], &p.Stands[part], p.Want, d.report.Checks[i].Sentence)
	return d.drawn(shown, width)
}

// drawn is a drawing as a piece. Its words are looked at, so that letters that are missing
// are known before it is written.
func (d *document) drawn(shown figure.Drawing, width float64) piece {
	for _, item := range shown.Items {
		if text, ok := item.(figure.Text); ok {
			as := regular
			if text.Bold {
				as = bold
			}
			d.fonts.plain(text.Words, as)
		}
	}
	return picture(&shown, width)
}

// linkage is a linkage drawn at neutral and at both ends of its travel.
func (d *document) linkage(l *result.Linkage, width float64) piece {
	return d.drawn(figure.Linkage(l, l.Part), width)
}

package figure

// gauge draws what does not turn: a bar from nothing to all, filled as far as it is.
func (c *section) gauge(s *sheet, left, top float64) float64 {
	const high = 4.0
	x, long, y := left+margin+1, sectionWidth-2*margin-2, top+6
	at := func(percent float64) float64 { return x + long*share(percent) }
	bar := func(from, to float64, stroke Stroke, fill Fill) {
		s.add(Path{Closed: true, Stroke: stroke, Fill: fill, Points: []Point{{from, y}, {to, y}, {to, y + high}, {from, y + high}}})
	}
	if c.w != nil {
		low, high := c.stretch()
		s.add(Path{Closed: true, Stroke: thin, Fill: Fill{Pattern: Rising, Ink: Good}, Points: []Point{
			{at(low) - sectionNarrow, y - 2.8}, {at(high) + sectionNarrow, y - 2.8}, {at(high) + sectionNarrow, y - 0.6}, {at(low) - sectionNarrow, y - 0.6}}})
	}
	bar(x, x+long, thin, white)
	if c.showAt {
		if c.st.At > 0 {
			bar(x, at(c.st.At), Stroke{}, Fill{Pattern: Solid, Ink: Grey})
		}
		s.line(Stroke{Width: 0.9, Ink: Black}, Point{at(c.st.At), y - 0.5}, Point{at(c.st.At), y + high + 0.5})
	}
	for _, end := range []struct {
		at     float64
		words  string
		anchor Anchor
	}{{0, "0 %", Start}, {100, "100 %", End}} {
		s.write(Point{at(end.at), y + high + 3}, end.words, 2.1, end.anchor, false, Grey)
	}
	return y + high + 3.6
}

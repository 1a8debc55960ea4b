package figure

import (
	"fmt"
	"math"

	"example.com/hingeline/verify/result"
)

func (c *section) heading(s *sheet, left float64) float64 {
	const base = 5.2
	x := left + margin
	if c.mark != nil {
		s.add(c.mark(Point{x + 1.7, base - 1.2}, 3.4, c.ink)...)
		x += 4.4
	}
	s.write(Point{x, base}, c.head, 3.4, Start, true, c.ink)
	return base + 1.5
}

// seen says from where, and from above, which side is which.
func (c *section) seen(s *sheet, left, top, bottom float64) {
	words := "from the side, nose left"
	if c.o.Motion == result.LeftRight {
		words = "from above, nose left"
		right := left + sectionWidth - margin
		s.write(Point{right, top + 2}, "starboard", 2.1, End, false, Grey)
		s.write(Point{right, bottom}, "port", 2.1, End, false, Grey)
	}
	s.write(Point{left + margin, top + 2}, words, 2.1, Start, false, Grey)
}

// words are below the picture: the symbol, and what is to be said.
func (c *section) words(s *sheet, left, y float64) float64 {
	says, way, ink := told(c.st, c.st.From != c.st.At), wayOf(c.st), Black
	if !c.showAt {
		says, way = short(c.w.Says), c.wantedWay()
	}
	if c.mark != nil {
		ink = c.ink
	}
	x := left + margin
	if way != "" {
		s.add(Arrow(way, Point{x + 1.4, y + 2.2}, 2.5, ink)...)
		x += symbolRoom + 0.3
	}
	lines := wrapped(says, left+sectionWidth-margin-x, wordSize, true, saysLines)
	if lines == nil {
		lines = []string{way}
	}
	for _, line := range lines {
		y += wordSize * lineHeight
		s.write(Point{x, y - 0.4}, line, wordSize, Start, true, ink)
	}
	if c.showAt && c.turns() && math.Abs(c.start()) >= neutralBelow {
		y += noteSize * lineHeight
		s.write(Point{left + margin, y}, fromNeutral, noteSize, Start, false, Grey)
		y += 0.5
	}
	if c.showAt && c.w != nil && c.head == "" {
		x := left + margin
		s.add(Path{Closed: true, Stroke: Stroke{Width: 0.2, Ink: Black}, Fill: Fill{Pattern: Rising, Ink: Good},
			Points: []Point{{x, y + 0.9}, {x + 2.8, y + 0.9}, {x + 2.8, y + 3.1}, {x, y + 3.1}}})
		for _, line := range wrapped("wanted: "+short(c.w.Says), left+sectionWidth-margin-x-symbolRoom-0.3, nameSize, false, saysLines) {
			y += nameSize * lineHeight
			s.write(Point{x + symbolRoom + 0.3, y - 0.2}, line, nameSize, Start, false, Black)
		}
	}
	return y + 1.8
}

// turns says whether the part has an angle.
func (c *section) turns() bool {
	return c.o.Motion == result.UpDown || c.o.Motion == result.LeftRight
}

// wantedWay is the way from where the part was, or from neutral, to all of what is wanted.
func (c *section) wantedWay() string {
	ways := [2]string{"DOWN", "UP"}
	switch c.o.Motion {
	case result.LeftRight:
		ways = [2]string{"LEFT", "RIGHT"}
	case result.UpDown:
	default:
		return ""
	}
	from := c.start()
	low, high := c.stretch()
	switch {
	case low >= from && high > from:
		return ways[0]
	case high <= from && low < from:
		return ways[1]
	}
	return ""
}

// described is what is seen, in sentences.
func (c *section) described() string {
	seen := "at its hinge, from the side, the nose to the left"
	switch {
	case c.o.Motion == result.LeftRight:
		seen = "at its hinge, from above, the nose to the left"
	case c.o.Motion != result.UpDown:
		seen = "as a bar from 0 to 100 percent"
	}
	text := fmt.Sprintf("%s, %s: %s", capital(c.o.Name), seen, plain(c.st.Says))
	if c.st.Way != "" && c.st.From != c.st.At {
		text += ", it went " + c.st.Way + " to there"
	}
	text += "."
	if c.w != nil && c.head == "" {
		text += " Wanted: " + plain(c.w.Says) + "."
	}
	return text
}

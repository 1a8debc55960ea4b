package figure

// Box is about the room that a text takes: left, top, right, bottom.
func (t Text) Box() [4]float64 {
	b := t.box()
	return [4]float64{b.x0, b.y0, b.x1, b.y1}
}

// Cut, Wrapped and Told are what they say, for tests.
var (
	Cut     = cut
	Wrapped = wrapped
	Told    = told
)

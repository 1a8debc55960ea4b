package figure

// Box is about the room that a text takes: left, top, right, bottom.
func (t Text) Box() [4]float64 {
	b := t.box()
	return [4]float64{b.x0, b.y0, b.x1, b.y1}
}

// LeaderWidth is the width of the lines to words.
const LeaderWidth = leaderWidth

// Through says whether a line runs through a box made smaller by so much.
func Through(from, to Point, b [4]float64, by float64) bool {
	return crosses([2]Point{from, to}, box{b[0], b[1], b[2], b[3]}.grown(-by))
}

// Cut, Wrapped and Told are what they say, for tests.
var (
	Cut     = cut
	Wrapped = wrapped
	Told    = told
)

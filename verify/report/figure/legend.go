package figure

// Legend is one small strip that says what the symbols and patterns of all drawings mean,
// to be shown once.
func Legend() Drawing {
	var s sheet
	y := 1.0
	for _, row := range legendRows {
		y += legendRow
		x := margin
		for _, e := range row {
			at := Point{x + legendSign/2, y - nameSize*0.36}
			s.add(e.sign(at)...)
			x += legendSign + 0.9
			s.write(Point{x, y}, e.words, nameSize, Start, false, Black)
			x += TextWidth(e.words, nameSize, false) + legendGap
		}
	}
	return s.finish(sheetWidth, y+1.6, "what the pictures mean", legendSaid())
}

const (
	legendRow  = 4.2 // from one row to the next
	legendSign = 4.2 // the width of a sign
	legendGap  = 2.2 // between two entries
)

// entry is one sign with its meaning.
type entry struct {
	sign  func(at Point) []Item
	said  string // what the sign looks like
	words string
}

var legendRows = [][]entry{
	{arrow("UP"), arrow("DOWN"), arrow("LEFT"), arrow("RIGHT")},
	{arrow("OUT"), arrow("IN"), arrow("MORE"), arrow("LESS")},
	{
		{patch(thin, Fill{Pattern: Rising, Ink: Black}), "hatched rising to the right", "UP, LEFT, OUT, MORE"},
		{patch(thin, Fill{Pattern: Falling, Ink: Black}), "hatched falling to the right", "DOWN, RIGHT, IN, LESS"},
	},
	{
		{patch(bold, white), "bold outline", "the check is about it"},
		{patch(faint, pale), "grey", "does not move, or stands at neutral"},
	},
	{
		{rule(dotted), "dotted line", "where it was before"},
		{rule(dashed), "dashed line", "neutral"},
		{patch(Stroke{Width: 0.2, Ink: Black}, Fill{Pattern: Rising, Ink: Good}), "hatched band", "where it should be"},
	},
	{{power, "part of a ring that is filled", "how much of its power a motor has"}},
}

func arrow(way string) entry {
	words := way
	switch way {
	case "MORE", "LESS":
		words += " power"
	}
	return entry{func(at Point) []Item { return Arrow(way, at, 2.3, Black) }, arrowsSaid[way], words}
}

var arrowsSaid = map[string]string{
	"UP": "filled triangle, point up", "DOWN": "hollow triangle, point down",
	"LEFT": "filled triangle, point left", "RIGHT": "hollow triangle, point right",
	"OUT": "filled diamond", "IN": "hollow diamond", "MORE": "filled square", "LESS": "hollow square",
}

func patch(stroke Stroke, fill Fill) func(Point) []Item {
	return func(at Point) []Item {
		const half, high = 1.9, 1.1
		return []Item{Path{Closed: true, Stroke: stroke, Fill: fill, Points: []Point{
			{at.X - half, at.Y - high}, {at.X + half, at.Y - high}, {at.X + half, at.Y + high}, {at.X - half, at.Y + high}}}}
	}
}

func rule(stroke Stroke) func(Point) []Item {
	return func(at Point) []Item {
		return []Item{Path{Stroke: stroke, Points: []Point{{at.X - 2, at.Y}, {at.X + 2, at.Y}}}}
	}
}

func power(at Point) []Item {
	const radius, ring = 1.7, 0.7
	return []Item{
		Path{Points: circle(at, radius), Closed: true, Stroke: thin},
		Arc{Centre: at, Radius: radius - ring/2, From: -90, To: 30, Stroke: Stroke{Width: ring, Ink: Black}},
	}
}

// legendSaid is the legend in sentences.
func legendSaid() string {
	text := "Signs:"
	for _, row := range legendRows {
		for _, e := range row {
			text += " " + e.said + ": " + e.words + ";"
		}
	}
	return text[:len(text)-1] + "."
}

package figure

import "math"

// Symbols are drawn as paths, since the fonts on paper do not have them. Each stands in a
// square of the given size about its centre.

// Tick is the mark of what is as it should be.
func Tick(centre Point, size float64, ink Ink) []Item {
	return []Item{Path{
		Points: around(centre, size, [][2]float64{{-0.42, 0.05}, {-0.12, 0.36}, {0.44, -0.36}}),
		Stroke: Stroke{Width: size * 0.16, Ink: ink},
	}}
}

// Cross is the mark of what is not.
func Cross(centre Point, size float64, ink Ink) []Item {
	stroke := Stroke{Width: size * 0.16, Ink: ink}
	return []Item{
		Path{Points: around(centre, size, [][2]float64{{-0.38, -0.38}, {0.38, 0.38}}), Stroke: stroke},
		Path{Points: around(centre, size, [][2]float64{{-0.38, 0.38}, {0.38, -0.38}}), Stroke: stroke},
	}
}

// Box is an empty box to tick.
func Box(centre Point, size float64, ink Ink) []Item {
	return []Item{Path{
		Points: around(centre, size, [][2]float64{{-0.46, -0.46}, {0.46, -0.46}, {0.46, 0.46}, {-0.46, 0.46}}),
		Closed: true, Stroke: Stroke{Width: max(size*0.08, 0.2), Ink: ink},
	}}
}

// Warning is a triangle with an exclamation mark.
func Warning(centre Point, size float64, ink Ink) []Item {
	return []Item{
		Path{Points: around(centre, size, [][2]float64{{0, -0.46}, {0.48, 0.42}, {-0.48, 0.42}}), Closed: true, Stroke: Stroke{Width: size * 0.09, Ink: ink}},
		Path{Points: around(centre, size, [][2]float64{{0, -0.16}, {0, 0.13}}), Stroke: Stroke{Width: size * 0.1, Ink: ink}},
		Path{Points: around(centre, size, [][2]float64{{0, 0.2}, {0, 0.3}}), Stroke: Stroke{Width: size * 0.1, Ink: ink}},
	}
}

// Arrow is the symbol of a way: filled for UP, LEFT, OUT and MORE, hollow for DOWN, RIGHT,
// IN and LESS, so that two ways differ even where the paper is turned. It is empty for
// another word.
func Arrow(way string, centre Point, size float64, ink Ink) []Item {
	var at [][2]float64
	switch way {
	case "UP":
		at = [][2]float64{{0, -0.45}, {0.45, 0.4}, {-0.45, 0.4}}
	case "DOWN":
		at = [][2]float64{{0, 0.45}, {0.45, -0.4}, {-0.45, -0.4}}
	case "LEFT":
		at = [][2]float64{{-0.45, 0}, {0.4, -0.45}, {0.4, 0.45}}
	case "RIGHT":
		at = [][2]float64{{0.45, 0}, {-0.4, -0.45}, {-0.4, 0.45}}
	case "OUT", "IN":
		at = [][2]float64{{0, -0.45}, {0.45, 0}, {0, 0.45}, {-0.45, 0}}
	case "MORE", "LESS":
		at = [][2]float64{{-0.4, -0.4}, {0.4, -0.4}, {0.4, 0.4}, {-0.4, 0.4}}
	default:
		return nil
	}
	fill := Fill{Pattern: Solid, Ink: White}
	if filled(way) {
		fill.Ink = ink
	}
	return []Item{Path{Points: around(centre, size, at), Closed: true, Fill: fill, Stroke: Stroke{Width: size * 0.1, Ink: ink}}}
}

func filled(way string) bool {
	return way == "UP" || way == "LEFT" || way == "OUT" || way == "MORE"
}

// hatching is the pattern of a way.
func hatching(way string) Pattern {
	switch {
	case filled(way):
		return Rising
	case way != "":
		return Falling
	}
	return Empty
}

func around(centre Point, size float64, at [][2]float64) []Point {
	points := make([]Point, len(at))
	for i, p := range at {
		points[i] = Point{centre.X + p[0]*size, centre.Y + p[1]*size}
	}
	return points
}

// Disc is a filled circle.
func Disc(centre Point, radius float64, ink Ink) []Item {
	return []Item{Path{Points: circle(centre, radius), Closed: true, Fill: Fill{Pattern: Solid, Ink: ink}}}
}

// circle is a circle as a closed path.
func circle(centre Point, radius float64) []Point {
	corners := 32
	if radius < 1 {
		corners = 12
	}
	points := make([]Point, corners)
	for i := range points {
		sin, cos := math.Sincos(float64(i) * 2 * math.Pi / float64(corners))
		points[i] = Point{centre.X + radius*cos, centre.Y + radius*sin}
	}
	return points
}

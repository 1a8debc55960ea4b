package figure_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/figure"
)

func TestSymbolsKeepToTheirSquare(t *testing.T) {
	at := figure.Point{X: 10, Y: 20}
	symbols := map[string][]figure.Item{
		"tick": figure.Tick(at, 4, figure.Good), "cross": figure.Cross(at, 4, figure.Bad),
		"box": figure.Box(at, 4, figure.Black), "warning": figure.Warning(at, 4, figure.Black),
	}
	for _, way := range []string{"UP", "DOWN", "LEFT", "RIGHT", "OUT", "IN", "MORE", "LESS"} {
		symbols[way] = figure.Arrow(way, at, 4, figure.Black)
	}
	seen := map[string]string{}
	for name, items := range symbols {
		if len(items) == 0 {
			t.Errorf("%s is nothing", name)
		}
		for _, item := range items {
			for _, p := range places(item) {
				if math.Abs(p.X-at.X) > 2+slack || math.Abs(p.Y-at.Y) > 2+slack {
					t.Errorf("%s goes out of its square, to %v", name, p)
				}
			}
		}
		if other, ok := seen[fmt.Sprintf("%+v", items)]; ok {
			t.Errorf("%s looks like %s", name, other)
		}
		seen[fmt.Sprintf("%+v", items)] = name
	}
	if items := figure.Arrow("sideways", at, 4, figure.Black); items != nil {
		t.Errorf("an arrow of no way: %v", items)
	}
}

// Ways that are each other's opposite differ in black and white even turned around.
func TestOppositeArrowsDifferInTheirFill(t *testing.T) {
	for _, pair := range [][2]string{{"UP", "DOWN"}, {"LEFT", "RIGHT"}, {"OUT", "IN"}, {"MORE", "LESS"}} {
		a := figure.Arrow(pair[0], figure.Point{}, 2, figure.Black)[0].(figure.Path)
		b := figure.Arrow(pair[1], figure.Point{}, 2, figure.Black)[0].(figure.Path)
		if a.Fill == b.Fill {
			t.Errorf("%s and %s are filled alike", pair[0], pair[1])
		}
	}
}

func TestHatchStaysInsideAndRuns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(0, 40)
		x, y, wide, high := length.Draw(t, "x"), length.Draw(t, "y"), length.Draw(t, "wide"), length.Draw(t, "high")
		corners := []figure.Point{{X: x, Y: y}, {X: x + wide, Y: y}, {X: x + wide, Y: y + high}, {X: x, Y: y + high}}
		for _, pattern := range []figure.Pattern{figure.Rising, figure.Falling} {
			total := 0.0
			for _, l := range figure.Hatch(corners, pattern) {
				for _, p := range l {
					if p.X < x-slack || p.X > x+wide+slack || p.Y < y-slack || p.Y > y+high+slack {
						t.Fatalf("a line goes to %v, out of %v", p, corners)
					}
				}
				dx, dy := l[1].X-l[0].X, l[1].Y-l[0].Y
				if rises := dx*dy < 0; math.Abs(dx) > slack && rises != (pattern == figure.Rising) {
					t.Fatalf("pattern %d: a line goes from %v to %v", pattern, l[0], l[1])
				}
				total += math.Hypot(dx, dy)
			}
			// Lines that far apart fill the area, but for one at an end.
			if area := wide * high; math.Abs(total*figure.HatchSpacing-area) > figure.HatchSpacing*(wide+high) {
				t.Fatalf("%g mm of lines in %g mm²", total, area)
			}
		}
	})
	if lines := figure.Hatch([]figure.Point{{}, {X: math.NaN()}, {Y: 5}}, figure.Rising); lines != nil {
		t.Errorf("lines in what is no shape: %v", lines)
	}
}

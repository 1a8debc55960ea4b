package figure_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
)

// slack is by how much sizes on paper may be off, in millimetres: rounding only.
const slack = 1e-6

var kinds = []struct {
	name   string
	motion result.Motion
	stage  result.Stage
}{
	{"aileron", result.UpDown, result.PortWing}, {"flap", result.UpDown, result.PortWing},
	{"elevon", result.UpDown, result.StarboardWing}, {"spoiler", result.UpDown, result.StarboardWing},
	{"elevator", result.UpDown, result.Tail}, {"v-tail", result.UpDown, result.Tail},
	{"rudder", result.LeftRight, result.Tail}, {"canard", result.UpDown, result.PortWing},
	{"nose wheel", result.LeftRight, result.Tail}, {"tail wheel", result.LeftRight, result.Tail},
	{"motor", result.Power, result.MotorAndSignal}, {"retract", result.OutIn, result.MotorAndSignal},
	{"drag rudder", result.OutIn, result.PortWing},
}

// aModel is any model in any position that the file format can say, and more.
func aModel(t *rapid.T) (*result.Shape, *result.Picture) {
	number := func(low, high float64, what string) float64 { return rapid.Float64Range(low, high).Draw(t, what) }
	s := &result.Shape{
		Semispan: number(1, 10000, "semispan"),
		Chords:   [2]float64{number(1, 20000, "root"), number(1, 20000, "tip")},
	}
	p := &result.Picture{Moves: rapid.Bool().Draw(t, "moves")}
	for range rapid.IntRange(0, 16).Draw(t, "parts") {
		kind := rapid.SampledFrom(kinds).Draw(t, "kind")
		place := func() result.Point {
			return result.Point{Out: number(-10000, 10000, "out"), Aft: number(-10000, 10000, "aft"), Up: number(-10000, 10000, "up")}
		}
		inner := place()
		outer := inner
		if rapid.Bool().Draw(t, "has a span") {
			outer = place()
		}
		o := result.Outline{
			Name: rapid.StringN(1, 40, -1).Draw(t, "name"), Kind: kind.name, Stage: kind.stage, Motion: kind.motion,
			Side:  rapid.SampledFrom([]string{"port", "starboard", "centre"}).Draw(t, "side"),
			Inner: inner, Outer: outer, Tilt: number(-90, 90, "tilt"),
			Chord: number(0, 2000, "chord"), Most: number(0, 120, "most"),
		}
		s.Parts = append(s.Parts, o)
		p.Stands = append(p.Stands, aStand(t, &o))
	}
	if len(s.Parts) > 0 {
		p.Of = rapid.SliceOfNDistinct(rapid.IntRange(0, len(s.Parts)-1), 0, min(2, len(s.Parts)), rapid.ID).Draw(t, "of")
	}
	return s, p
}

func aStand(t *rapid.T, o *result.Outline) result.Stand {
	low, high, ways := -120.0, 120.0, []string{"", "UP", "DOWN"}
	switch o.Motion {
	case result.LeftRight:
		ways = []string{"", "LEFT", "RIGHT"}
	case result.Power:
		low, high, ways = 0, 100, []string{"", "MORE", "LESS"}
	case result.OutIn:
		low, high, ways = 0, 100, []string{"", "OUT", "IN"}
	}
	return result.Stand{
		From: rapid.Float64Range(low, high).Draw(t, "from"), At: rapid.Float64Range(low, high).Draw(t, "at"),
		Moved: rapid.Bool().Draw(t, "moved"), Way: rapid.SampledFrom(ways).Draw(t, "way"),
		Says: rapid.StringN(0, 40, -1).Draw(t, "says"),
	}
}

func aWant(t *rapid.T) *result.Want {
	if rapid.Bool().Draw(t, "nothing wanted") {
		return nil
	}
	w := &result.Want{
		Low: rapid.Float64Range(-150, 150).Draw(t, "low"), LowOpen: rapid.Bool().Draw(t, "low open"),
		HighOpen: rapid.Bool().Draw(t, "high open"), Says: rapid.StringN(0, 60, -1).Draw(t, "wanted"),
	}
	w.High = w.Low + rapid.Float64Range(0, 100).Draw(t, "wide")
	return w
}

// places are all corners of what an item takes.
func places(item figure.Item) []figure.Point {
	switch item := item.(type) {
	case figure.Path:
		return item.Points
	case figure.Arc:
		var at []figure.Point
		for i := range 9 {
			sin, cos := math.Sincos((item.From + (item.To-item.From)*float64(i)/8) * math.Pi / 180)
			at = append(at, figure.Point{X: item.Centre.X + item.Radius*cos, Y: item.Centre.Y + item.Radius*sin})
		}
		return at
	case figure.Text:
		b := item.Box()
		return []figure.Point{{X: b[0], Y: b[1]}, {X: b[2], Y: b[3]}}
	}
	return nil
}

// fault is what is wrong with a drawing as such: something off the sheet or no number, or
// words over words; empty for nothing.
func fault(d *figure.Drawing) string {
	var words []figure.Text
	for _, item := range d.Items {
		for _, p := range places(item) {
			if !(p.X >= -slack && p.X <= d.Width+slack && p.Y >= -slack && p.Y <= d.Height+slack) {
				return fmt.Sprintf("%+v is off the sheet of %g by %g", item, d.Width, d.Height)
			}
		}
		if text, ok := item.(figure.Text); ok {
			for _, other := range words {
				a, b := text.Box(), other.Box()
				if a[0] < b[2]-slack && b[0] < a[2]-slack && a[1] < b[3]-slack && b[1] < a[3]-slack {
					return fmt.Sprintf("%q at %v runs over %q at %v", text.Words, a, other.Words, b)
				}
			}
			words = append(words, text)
		}
	}
	return ""
}

func TestDrawingsStayOnTheSheetAndApart(t *testing.T) {
	for name, d := range drawings() {
		if wrong := fault(&d); wrong != "" {
			t.Errorf("%s: %s", name, wrong)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		s, p := aModel(t)
		drawn := []figure.Drawing{figure.Behind(s, p, "behind"), figure.Plan(s, p, "plan")}
		for i := range s.Parts {
			w := aWant(t)
			drawn = append(drawn, figure.Section(&s.Parts[i], &p.Stands[i], w, "section"), figure.WantedGot(&s.Parts[i], &p.Stands[i], w, "two"))
		}
		for i := range drawn {
			if wrong := fault(&drawn[i]); wrong != "" {
				t.Fatalf("%s: %s", drawn[i].Title, wrong)
			}
		}
	})
}

func TestLinkageStaysOnTheSheetAndApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		place := func() [2]float64 {
			length := rapid.Float64Range(-6000, 6000)
			return [2]float64{length.Draw(t, "x"), length.Draw(t, "y")}
		}
		l := result.Linkage{
			Part: rapid.StringN(0, 40, -1).Draw(t, "part"), Seen: rapid.SampledFrom([]string{"from the side, nose left", "from above, nose left"}).Draw(t, "seen"),
			Horn: "horn below", Lengths: []string{rapid.StringN(0, 60, -1).Draw(t, "lengths")},
		}
		for range rapid.IntRange(1, 3).Draw(t, "stands") {
			l.Stands = append(l.Stands, result.LinkageAt{
				Says: rapid.StringN(0, 80, -1).Draw(t, "says"), Shaft: place(), Arm: place(), Horn: place(), Hinge: place(), TrailingEdge: place()})
		}
		d := figure.Linkage(&l, "linkage")
		if wrong := fault(&d); wrong != "" {
			t.Fatal(wrong)
		}
	})
}

// boldest is the closed path with the boldest line: the part that the check is about.
func boldest(d figure.Drawing) figure.Path {
	var found figure.Path
	for _, item := range d.Items {
		if p, ok := item.(figure.Path); ok && p.Closed && p.Stroke.Width > found.Stroke.Width {
			found = p
		}
	}
	return found
}

func extent(points []figure.Point) (left, top, right, bottom float64) {
	left, top, right, bottom = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, p := range points {
		left, top, right, bottom = min(left, p.X), min(top, p.Y), max(right, p.X), max(bottom, p.Y)
	}
	return left, top, right, bottom
}

func oneSurface(side string, out, chord, at float64) (*result.Shape, *result.Picture) {
	way := "UP"
	if at > 0 {
		way = "DOWN"
	}
	s := &result.Shape{Semispan: 1000, Chords: [2]float64{200, 150}, Parts: []result.Outline{{
		Name: "flap", Kind: "flap", Side: side, Stage: result.PortWing, Motion: result.UpDown,
		Inner: result.Point{Out: out, Aft: 100}, Outer: result.Point{Out: out * 2, Aft: 100}, Chord: chord, Most: 60}}}
	return s, &result.Picture{Stands: []result.Stand{{From: at, At: at, Way: way, Says: way}}, Of: []int{0}}
}

// least is from where heights on paper are in proportion, in millimetres; less is drawn
// as that, to be seen.
const least = 0.35

func TestBehindUpIsAboveTheWingAndInProportion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.Float64Range(1, 60).Draw(t, "angle")
		chord := rapid.Float64Range(20, 100).Draw(t, "chord")
		side, sign := "port", -1.0
		if rapid.Bool().Draw(t, "starboard") {
			side, sign = "starboard", 1
		}
		draw := func(at float64) (left, top, right, bottom float64) {
			s, p := oneSurface(side, sign*300, chord, at)
			return extent(boldest(figure.Behind(s, p, "")).Points)
		}
		left, top, right, line := draw(-angle)
		_, same, _, bottom := draw(angle)
		if math.Abs(line-same) > slack || !(top < line) || !(bottom > same) {
			t.Fatalf("UP is from %g to %g, DOWN from %g to %g down the sheet", top, line, same, bottom)
		}
		if side == "port" != (right < 45) || side == "starboard" != (left > 45) {
			t.Fatalf("the %s flap is from %g to %g across", side, left, right)
		}
		_, full, _, _ := draw(-60)
		if got, want := line-top, (line-full)*math.Sin(angle*math.Pi/180)/math.Sin(60*math.Pi/180); got > least+slack && math.Abs(got-want) > slack {
			t.Fatalf("UP %g° is %g mm high, want %g", angle, got, want)
		}
	})
}

func TestPlanHasPortOnTheLeftAndTheNoseOnTop(t *testing.T) {
	for _, side := range []struct {
		name string
		out  float64
	}{{"port", -300}, {"starboard", 300}} {
		s, p := oneSurface(side.name, side.out, 50, -10)
		left, top, right, bottom := extent(boldest(figure.Plan(s, p, "")).Points)
		if (side.out < 0) != (right < 45) || (side.out > 0) != (left > 45) {
			t.Errorf("the %s flap is from %g to %g across", side.name, left, right)
		}
		s.Parts[0].Inner.Aft, s.Parts[0].Outer.Aft, s.Parts[0].Kind = 400, 400, "spoiler"
		_, further, _, end := extent(boldest(figure.Plan(s, p, "")).Points)
		if further <= top || end <= bottom {
			t.Errorf("further aft, the flap is at %g, not below %g", further, top)
		}
	}
}

func TestBehindMovesTheRudderToItsSide(t *testing.T) {
	for _, at := range []float64{-20, 20} {
		s := &result.Shape{Semispan: 1000, Chords: [2]float64{200, 150}, Parts: []result.Outline{{
			Name: "rudder", Kind: "rudder", Side: "centre", Stage: result.Tail, Motion: result.LeftRight, Tilt: 90,
			Inner: result.Point{Aft: 700, Up: 50}, Outer: result.Point{Aft: 720, Up: 250}, Chord: 70, Most: 30}}}
		p := &result.Picture{Stands: []result.Stand{{At: at, From: at, Way: "LEFT"}}, Of: []int{0}}
		for name, d := range map[string]figure.Drawing{"behind": figure.Behind(s, p, ""), "plan": figure.Plan(s, p, "")} {
			left, _, right, _ := extent(boldest(d).Points)
			if middle := (left + right) / 2; (at > 0) != (middle < 45) {
				t.Errorf("%s: at %g°, plus LEFT, the rudder is at %g of 90 across", name, at, middle)
			}
		}
	}
}

// angleTolerance is how far the angle on paper may be off, in degrees.
const angleTolerance = 0.01

func TestSectionAngleIsTrue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(-120, 120).Draw(t, "at")
		o := result.Outline{Name: "flap", Kind: "flap", Motion: result.UpDown, Chord: 40}
		d := figure.Section(&o, &result.Stand{At: at, From: 0, Way: "UP"}, nil, "")
		wedge := boldest(d).Points
		front := figure.Point{X: (wedge[0].X + wedge[2].X) / 2, Y: (wedge[0].Y + wedge[2].Y) / 2}
		got := math.Atan2(wedge[1].Y-front.Y, wedge[1].X-front.X) * 180 / math.Pi
		if math.Abs(got-at) > angleTolerance {
			t.Fatalf("%g° is drawn at %g°", at, got)
		}
	})
}

func TestSectionWheelTurnsAsTheModelDoes(t *testing.T) {
	// Seen from above with the nose to the left, port is down: to turn the model LEFT the
	// front of a nose wheel goes down, and the back of a tail wheel.
	for _, kind := range []struct {
		name  string
		right bool // the line that shows the angle runs to the right
	}{{"nose wheel", false}, {"tail wheel", true}} {
		o := result.Outline{Name: kind.name, Kind: kind.name, Motion: result.LeftRight}
		d := figure.Section(&o, &result.Stand{At: 15, From: 15, Way: "LEFT"}, nil, "")
		var pointer []figure.Point
		for _, item := range d.Items {
			if p, ok := item.(figure.Path); ok && !p.Closed && len(p.Points) == 2 && p.Stroke.Dash == figure.Whole {
				pointer = p.Points
			}
		}
		if pointer == nil {
			t.Fatalf("%s: no line shows its angle", kind.name)
		}
		if pointer[1].Y <= pointer[0].Y || (pointer[1].X > pointer[0].X) != kind.right {
			t.Errorf("%s: LEFT is drawn from %v to %v", kind.name, pointer[0], pointer[1])
		}
	}
}

// mirrored is the model seen in a mirror: port for starboard, LEFT for RIGHT.
func mirrored(s result.Shape, p result.Picture) (*result.Shape, *result.Picture) {
	s.Parts, p.Stands = slices.Clone(s.Parts), slices.Clone(p.Stands)
	for i := range s.Parts {
		o, st := &s.Parts[i], &p.Stands[i]
		o.Inner.Out, o.Outer.Out = -o.Inner.Out, -o.Outer.Out
		o.Side = map[string]string{"port": "starboard", "starboard": "port", "centre": "centre"}[o.Side]
		if o.Side == "centre" {
			o.Inner, o.Outer = o.Outer, o.Inner
		}
		if o.Motion == result.LeftRight {
			st.At, st.From = -st.At, -st.From
			st.Way = map[string]string{"LEFT": "RIGHT", "RIGHT": "LEFT"}[st.Way]
		}
	}
	return &s, &p
}

// shapes are the middles and sizes of all shapes of the model in a drawing, from left to
// right, those of symbols and numbers left out; mirror turns them about the centre line.
func shapes(d figure.Drawing, mirror bool) []string {
	var list []string
	for _, item := range d.Items {
		p, ok := item.(figure.Path)
		if !ok || !p.Closed || len(p.Points) != 4 || p.Stroke.Width == 0 || p.Fill.Pattern == figure.Solid && p.Fill.Ink != figure.Pale {
			continue
		}
		left, top, right, bottom := extent(p.Points)
		if mirror {
			left, right = d.Width-right, d.Width-left
		}
		list = append(list, fmt.Sprintf("%.4f %.4f %.4f %.4f", left+1e-9, top+1e-9, right+1e-9, bottom+1e-9))
	}
	slices.Sort(list)
	return list
}

func TestMirroredModelIsDrawnMirrored(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := result.Shape{Semispan: 1000, Chords: [2]float64{250, 180}}
		p := result.Picture{Moves: rapid.Bool().Draw(t, "moves")}
		number := func(low, high float64, what string) float64 { return rapid.Float64Range(low, high).Draw(t, what) }
		for range rapid.IntRange(0, 8).Draw(t, "parts") {
			// Of surfaces only: what hangs below the wing is moved aside, first to starboard.
			kind := rapid.SampledFrom(kinds[:7]).Draw(t, "kind")
			inner := result.Point{Out: number(-900, 900, "out"), Aft: number(-500, 800, "aft"), Up: number(-50, 50, "up")}
			outer := inner
			outer.Out += number(100, 500, "span")
			outer.Up += number(-100, 100, "rise")
			if kind.motion == result.LeftRight {
				outer.Out, outer.Up = inner.Out, inner.Up+number(100, 200, "height")
			}
			o := result.Outline{
				Name: "part", Kind: kind.name, Stage: kind.stage, Motion: kind.motion, Inner: inner, Outer: outer,
				Side:  rapid.SampledFrom([]string{"port", "starboard", "centre"}).Draw(t, "side"),
				Chord: number(10, 100, "chord"), Most: number(0, 120, "most"),
			}
			s.Parts, p.Stands = append(s.Parts, o), append(p.Stands, aStand(t, &o))
		}
		ms, mp := mirrored(s, p)
		for name, draw := range map[string]func(*result.Shape, *result.Picture, string) figure.Drawing{"behind": figure.Behind, "plan": figure.Plan} {
			got, want := shapes(draw(ms, mp, ""), true), shapes(draw(&s, &p, ""), false)
			if !slices.Equal(got, want) {
				t.Fatalf("%s: mirrored it has\n%q\nwant\n%q", name, got, want)
			}
		}
	})
}

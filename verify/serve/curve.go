package serve

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/wording"
)

// curve is the travel of one part against one control, drawn and as a table.
type curve struct {
	Part    int        `json:"part"`
	Against int        `json:"against"`
	Caption string     `json:"caption"`
	SVG     string     `json:"svg"`
	Heads   []string   `json:"heads"` // of the columns: the control, then each way
	Rows    [][]string `json:"rows"`
	Dead    []string   `json:"dead"` // the dead parts, a sentence each

	plot plot
	now  way // the way with the switches as they stand
}

// curveAt is the curve that a page wants, nil where it wants none or has it, and the place
// in its drawing where the part stands now. Where the control itself stands is no part of a
// curve.
func (p *page) curveAt(s *subject, h *hand, in *mixcore.Input) (*curve, *figure.Point) {
	if h.Against < 0 || s.model.Setup.Controls[h.Against].Kind == mixcore.SwitchControl {
		p.curve, p.curveOf = nil, "" // the page puts it away
		return nil, nil
	}
	others := in.Clone()
	others.Position[h.Against] = s.model.Setup.Controls[h.Against].Rest()
	key := fmt.Sprint(h.Part, " ", h.Against, " ", others.Key())
	var drawn *curve
	if p.curve == nil || p.curveOf != key {
		drawn = s.curve(h.Part, h.Against, in)
		p.curve, p.curveOf = drawn, key
	}
	x := h.At[h.Against]
	return drawn, &figure.Point{X: p.curve.plot.x(x), Y: p.curve.plot.y(p.curve.now.at(x))}
}

func (s *subject) curve(part, against int, in *mixcore.Input) *curve {
	ways := s.ways(part, against, in)
	name, control := s.model.Setup.Parts[part].Name, s.model.Setup.Controls[against].Name
	c := &curve{Part: part, Against: against, Caption: "The " + name + " against the " + control, Heads: []string{control}}
	c.Dead = s.deadWords(against, ways)
	if singly := s.singlyWords(part, in); singly != "" {
		c.Dead = append([]string{singly}, c.Dead...)
		ways[0].singly = true
	}
	for i, w := range ways {
		c.Heads = append(c.Heads, wayName(ways, i)+nowWord(ways, w))
	}
	for _, x := range s.told(against) {
		row := []string{wording.Stand(&s.model.Setup.Controls[against], x)}
		for _, w := range ways {
			row = append(row, s.placeWords(part, w.at(x)))
		}
		c.Rows = append(c.Rows, row)
	}
	c.now, c.plot = ways[0], s.plotOf(part, against, ways)
	d := s.draw(part, against, ways, &c.plot)
	d.Title = c.Caption
	d.Description = "Its values are in the table below. " + strings.Join(c.Dead, " ")
	c.SVG = svgOf(d, "curve")
	return c
}

// told are the places of a control that the table has: every quarter, and its detents.
func (s *subject) told(against int) []float64 {
	c := &s.model.Setup.Controls[against]
	low, high := c.Range()
	var list []float64
	const quarters = 8
	for i := range quarters + 1 {
		list = append(list, low+(high-low)*float64(i)/quarters)
	}
	for _, d := range c.Detents {
		list = append(list, float64(d.At))
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// at is a way's value at a place, straight between the places that were looked at.
func (w *way) at(x float64) float64 {
	for i := 1; i < len(w.X); i++ {
		if x <= w.X[i] {
			t := (x - w.X[i-1]) / (w.X[i] - w.X[i-1])
			return w.Y[i-1] + (w.Y[i]-w.Y[i-1])*t
		}
	}
	return w.Y[len(w.Y)-1]
}

// placeWords says where a part is.
func (s *subject) placeWords(part int, at float64) string {
	p := &s.model.Setup.Parts[part]
	if p.Motion.Hinged() {
		return wording.Turn(p.Motion, mixcore.Degrees(at))
	}
	return wording.Position(p, mixcore.PartOutput{Amount: mixcore.Percent(at)})
}

// singlyWords says that not every position of the switches was looked at; nothing where
// it was.
func (s *subject) singlyWords(part int, in *mixcore.Input) string {
	switches, _, singly := s.states(part, in)
	if !singly || in.SignalLost {
		return ""
	}
	return fmt.Sprintf("NOT EVERY SWITCH POSITION IS HERE: %d switches bear on it. Each is moved by itself from where it stands, and no two together.", len(switches))
}

// letter names a way in the drawing: A to Z, then A2 and so on.
func letter(i int) string {
	const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	name := letters[i%len(letters):][:1]
	if round := i / len(letters); round > 0 {
		name += fmt.Sprint(round + 1)
	}
	return name
}

func wayName(ways []way, i int) string {
	switch {
	case len(ways) > 1:
		return letter(i) + ": " + ways[i].When
	case ways[0].singly:
		return "whichever one switch is moved"
	}
	return "in every switch position"
}

func nowWord(ways []way, w way) string {
	if len(ways) > 1 && w.Now {
		return " (now)"
	}
	return ""
}

// deadWords tells the dead parts of every way, and that there are none.
func (s *subject) deadWords(against int, ways []way) []string {
	c := &s.model.Setup.Controls[against]
	low, high := c.Range()
	var list []string
	for i, w := range ways {
		for _, d := range w.Dead {
			words := "from " + wording.Stand(c, d.From) + " to " + wording.Stand(c, d.To)
			if d.From == low && d.To == high {
				words = "all of it"
			}
			if d.Because != "" {
				words += " (" + d.Because + ")"
			}
			if len(ways) > 1 {
				words = letter(i) + ": " + words
			}
			list = append(list, words)
		}
	}
	if list == nil {
		return []string{"No part of the " + c.Name + "'s travel is dead."}
	}
	return []string{"Dead part of the " + c.Name + ", where nothing moves: " + strings.Join(list, "; ") + "."}
}

// Lengths in the drawing, in millimetres of paper.
const (
	plotWide   = 90.0
	plotLeft   = 17.0
	plotRight  = 86.0
	plotTop    = 4.0
	plotBottom = 52.0
	deadRow    = 4.2 // of each way's strip of dead parts
	keyRow     = 3.9
	small      = 2.6
)

// plot is where places lie in the drawing.
type plot struct {
	low, high         float64 // of the control
	bottom, top, step float64 // heights, and those at which lines are drawn
	up                float64 // −1 where UP is at the top, which is minus
}

func (p *plot) x(at float64) float64 {
	return plotLeft + (plotRight-plotLeft)*(at-p.low)/(p.high-p.low)
}

func (p *plot) y(at float64) float64 {
	return plotBottom - (plotBottom-plotTop)*(p.up*at-p.bottom)/(p.top-p.bottom)
}

// plotOf is the plot in which ways fit: UP, LEFT, OUT and MORE at the top.
func (s *subject) plotOf(part, against int, ways []way) plot {
	p := plot{up: 1, step: leastStep}
	p.low, p.high = s.model.Setup.Controls[against].Range()
	if s.model.Setup.Parts[part].Motion == mixcore.UpDown {
		p.up = -1
	}
	most := 0.0
	for _, w := range ways {
		for _, y := range w.Y {
			p.bottom, p.top, most = min(p.bottom, p.up*y), max(p.top, p.up*y), max(most, math.Abs(y))
		}
	}
	for most > mostLines*p.step {
		p.step *= 2
	}
	const room = 0.2 // of a step, beyond what is furthest
	p.bottom, p.top = math.Floor(p.bottom/p.step-room)*p.step, math.Ceil(p.top/p.step+room)*p.step
	return p
}

// The lines of the scale: the least step, in degrees or percent, and how many either way.
const (
	leastStep = 5.0
	mostLines = 4
)

// draw draws the ways, and below them their dead parts.
func (s *subject) draw(part, against int, ways []way, p *plot) *figure.Drawing {
	d := &figure.Drawing{Width: plotWide}
	add := func(items ...figure.Item) { d.Items = append(d.Items, items...) }
	write := func(x, y float64, anchor figure.Anchor, bold bool, words string) {
		add(figure.Text{At: figure.Point{X: x, Y: y}, Size: small, Anchor: anchor, Bold: bold, Words: words})
	}
	control, x, y := &s.model.Setup.Controls[against], p.x, p.y
	for h := p.bottom; h <= p.top+p.step/2; h += p.step {
		at := p.up * h
		stroke := figure.Stroke{Width: 0.15, Ink: figure.Pale}
		if math.Abs(h) < p.step/2 {
			stroke = figure.Stroke{Width: 0.25, Ink: figure.Grey}
		}
		add(figure.Path{Points: []figure.Point{{X: plotLeft, Y: y(at)}, {X: plotRight, Y: y(at)}}, Stroke: stroke})
		write(plotLeft-1, y(at)+0.9, figure.End, false, s.tick(part, at))
	}
	for _, at := range s.told(against) {
		long := 1.0
		if words := placeBelow(control, at); words != "" {
			long = 1.8
			anchor := figure.Middle
			if at == p.high {
				anchor = figure.End
			} else if at == p.low {
				anchor = figure.Start
			}
			write(x(at), plotBottom+4.8, anchor, false, words)
		}
		add(figure.Path{Points: []figure.Point{{X: x(at), Y: plotBottom}, {X: x(at), Y: plotBottom + long}}, Stroke: figure.Stroke{Width: 0.25, Ink: figure.Grey}})
	}
	add(figure.Path{Points: []figure.Point{{X: plotLeft, Y: plotTop}, {X: plotLeft, Y: plotBottom}, {X: plotRight, Y: plotBottom}}, Stroke: figure.Stroke{Width: 0.25, Ink: figure.Grey}})
	for i := len(ways) - 1; i >= 0; i-- { // the one in force last, on top
		w := &ways[i]
		stroke := figure.Stroke{Width: 0.4, Ink: figure.Black, Dash: []figure.Dash{figure.Dashed, figure.Dotted}[i%2]}
		if w.Now {
			stroke = figure.Stroke{Width: 0.8, Ink: figure.Black}
		}
		var points []figure.Point
		for k := range w.X {
			points = append(points, figure.Point{X: x(w.X[k]), Y: y(w.Y[k])})
		}
		add(figure.Path{Points: points, Stroke: stroke})
		if len(ways) > 1 {
			k := len(w.X) - 1 - (i%5)*len(w.X)/12
			add(figure.Disc(figure.Point{X: x(w.X[k]), Y: y(w.Y[k])}, 1.7, figure.White)...)
			write(x(w.X[k]), y(w.Y[k])+0.95, figure.Middle, w.Now, letter(i))
		}
	}
	d.Height = s.below(d, ways, x)
	return d
}

// below draws the strips of dead parts and the key, and gives the drawing's height.
func (s *subject) below(d *figure.Drawing, ways []way, x func(float64) float64) float64 {
	y := plotBottom + 7.5
	write := func(x, y float64, anchor figure.Anchor, bold bool, words string) {
		d.Items = append(d.Items, figure.Text{At: figure.Point{X: x, Y: y}, Size: small, Anchor: anchor, Bold: bold, Words: words})
	}
	for i, w := range ways {
		if len(w.Dead) == 0 {
			continue
		}
		word := "dead"
		if len(ways) > 1 {
			word += " " + letter(i)
		}
		write(plotLeft-1, y+2.5, figure.End, w.Now, word)
		for _, part := range w.Dead {
			a, b := x(part.From), x(part.To)
			d.Items = append(d.Items, figure.Path{Closed: true, Stroke: figure.Stroke{Width: 0.25, Ink: figure.Bad}, Fill: figure.Fill{Pattern: figure.Rising, Ink: figure.Bad},
				Points: []figure.Point{{X: a, Y: y}, {X: b, Y: y}, {X: b, Y: y + 3}, {X: a, Y: y + 3}}})
		}
		y += deadRow
	}
	if len(ways) > 1 {
		for i, w := range ways {
			line := wayName(ways, i) + nowWord(ways, w)
			for figure.TextWidth(line, small, w.Now) > plotWide-3 {
				runes := []rune(line)
				line = string(runes[:len(runes)-2]) + "…"
			}
			write(1.5, y+3, figure.Start, w.Now, line)
			y += keyRow
		}
	}
	return y + 1.5
}

// placeBelow is what is written below a place of a control: its ends, its middle, its
// detents.
func placeBelow(c *mixcore.Control, at float64) string {
	low, high := c.Range()
	for _, d := range c.Detents {
		if float64(d.At) == at {
			return d.Name
		}
	}
	if at == low || at == high || at == (low+high)/2 && len(c.Detents) == 0 {
		return wording.Stand(c, at)
	}
	return ""
}

// tick is what is written beside a line of the scale.
func (s *subject) tick(part int, at float64) string {
	p := &s.model.Setup.Parts[part]
	if p.Motion.Hinged() {
		return wording.Turn(p.Motion, mixcore.Degrees(at))
	}
	return wording.Percent(mixcore.Percent(at))
}

package prove

import (
	"math/rand/v2"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
)

// Box is a part of a claim's positions, opened up for tests: what the engine says of it,
// and poses in it.
type Box struct {
	Margin interval.Range
	b      *box
	rising int
}

// Boxes makes random boxes in random cells of a claim: whole cells, halves, slivers and
// points.
func Boxes(p *Prover, c *Claim, random *rand.Rand, most int) []*Box {
	board := p.newBoard(c)
	var cells []*cell
	board.eachCell(100_000, func() bool { return len(cells) > 20*most }, func(cell *cell) bool {
		cells = append(cells, cell)
		return len(cells) < 20*most
	})
	var list []*Box
	for range most {
		if len(cells) == 0 {
			break
		}
		cell := cells[random.IntN(len(cells))]
		b := &box{place: &place{b: board, cell: cell}, spans: append([]interval.Range(nil), cell.spans...), fine: random.IntN(2) == 0}
		for i, s := range b.spans {
			if random.IntN(3) == 0 || p.setup.Controls[i%board.n].Kind == mixcore.SwitchControl {
				continue
			}
			x, y := s.Low+(s.High-s.Low)*random.Float64(), s.Low+(s.High-s.Low)*random.Float64()
			switch random.IntN(4) {
			case 0:
				y = x
			case 1:
				y = x + (s.High-s.Low)/1000
			case 2:
				x = s.Low
			}
			b.spans[i] = interval.Range{Low: clampTo(s, min(x, y)), High: clampTo(s, max(x, y))}
		}
		out := &Box{b: b, rising: none}
		if w, ok := c.Want.(Rising); ok {
			out.rising = board.now.variable[w.Control]
		}
		out.Margin = c.Want.bound(b)
		list = append(list, out)
	}
	return list
}

func clampTo(s interval.Range, x float64) float64 { return min(max(x, s.Low), s.High) }

// Pose is a random pose in the box, its ends preferred.
func (o *Box) Pose(random *rand.Rand) Pose {
	s := &search{b: o.b.b, rising: none}
	values := o.values(random)
	if o.rising == none {
		return s.poseOf(o.b, values)
	}
	first := o.b.b.pose(values).Now
	second := first.Clone()
	i := o.b.b.c.Want.(Rising).Control
	x := o.values(random)[o.rising]
	first.Position[i], second.Position[i] = max(x, values[o.rising]), min(x, values[o.rising])
	return Pose{Now: first, Other: second}
}

func (o *Box) values(random *rand.Rand) []float64 {
	values := make([]float64, len(o.b.spans))
	for i, s := range o.b.spans {
		switch values[i] = s.Low; random.IntN(3) {
		case 0:
			values[i] = s.High
		case 1:
			values[i] = clampTo(s, s.Low+(s.High-s.Low)*random.Float64())
		}
		if o.b.b.p.setup.Controls[i%o.b.b.n].Kind == mixcore.SwitchControl {
			values[i] = s.Low
		}
	}
	return values
}

// Sum is what the engine says of a channel's sum in the box, in one pose.
func (o *Box) Sum(channel int, other bool) interval.Range { return o.b.sum(channel, other) }

// Where is what the engine says of a part's place in the box, in one pose.
func (o *Box) Where(part int, other bool) interval.Range { return o.b.where(part, other) }

// Differ is what the engine says of place(first) now less side times place(second) in
// the other pose.
func (o *Box) Differ(first, second int, side float64, want interval.Range) interval.Range {
	return o.b.differ(first, false, second, true, side, want)
}

// Two says whether the claim has another pose.
func (o *Box) Two() bool { return o.b.b.two }

// Uses says whether a channel bears on the claim, so that the box knows its conditions.
func (o *Box) Uses(channel int) bool {
	for _, c := range o.b.b.uses.channels {
		if c == channel {
			return true
		}
	}
	return false
}

// Tail is a drive of a part, from the sum of its channel on.
type Tail struct{ t *tail }

// TailOf opens up one drive.
func TailOf(p *Prover, part, drive int, lost bool) Tail { return Tail{p.tail(part, drive, lost)} }

// Over, Slope and At are the tail's.
func (t Tail) Over(sum interval.Range) interval.Range { return t.t.over(sum) }

// Slope is in degrees or percent for one percent of the sum.
func (t Tail) Slope(sum interval.Range) interval.Range { return t.t.slope(sum) }

// At is by the Plan.
func (t Tail) At(sum float64) float64 { return t.t.at(sum) }

// Accuracy is what At may be wrong by.
func (t Tail) Accuracy() float64 { return t.t.accuracy }

// Same says whether side·other(turn·sum) counts as the same function as the tail.
func (t Tail) Same(other Tail, turn, side float64) bool { return t.t.same(other.t, turn, side) }

// Lean is the box as the engine makes it smaller, with what it says of the margin then;
// nil where it does not.
func (o *Box) Lean() *Box {
	s := &search{b: o.b.b, rising: none}
	small := &box2{box: &box{place: o.b.place, spans: o.b.spans, fine: o.b.fine}}
	if !s.lean(small) {
		return nil
	}
	s.bound(small)
	return &Box{Margin: small.margin, b: small.box, rising: none}
}

// Moved is a random pose in the box, and the one in a smaller box that is nearest to it.
func (o *Box) Moved(small *Box, random *rand.Rand) (from, to Pose) {
	values := o.values(random)
	ends := make([]float64, len(values))
	for i, x := range values {
		ends[i] = clampTo(small.b.spans[i], x)
	}
	return o.b.b.pose(values), o.b.b.pose(ends)
}

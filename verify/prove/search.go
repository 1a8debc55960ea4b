package prove

import (
	"container/heap"
	"context"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
)

// How long the search for the smallest margin goes on once a claim is proved.
const (
	marginClose = 0.005 // degrees or percent: a margin is found to this
	marginBoxes = 60    // boxes looked at for it
)

// cellsPerBox is how many choices of stretches may be gone through for each box of the
// limit: most are like one before and cost next to nothing.
const cellsPerBox = 64

// cornersPerBox is how many steps of the search for the least value of a form cost as
// much as a box.
const cornersPerBox = 32

// lookOften is how many boxes lie between two looks at the context.
const lookOften = 64

// search decides one claim: boxes that are open, the one with the least margin first.
type search struct {
	b       *board
	options Options
	limit   int
	done    func() bool
	open    frontier
	boxes   int
	cells   int
	corners int // of the prover's when the search began
	looked  int // what was spent when the context was last looked at
	forms   map[*component]bool
	shifts  int // forms without a component

	worth int  // boxes to look at for the smallest margin
	tried bool // a pose was tried
	best  float64
	pose  Pose

	// Of a claim of Rising: the variable of its control, whose two ends in a box are
	// the places to try; else none.
	rising int
}

type frontier []*box2

// box2 is an open box with the bound of its margin.
type box2 struct {
	*box
	margin rangeOf
	tried  bool

	// rounding is how much less than here the margin may be by the Plan elsewhere in the
	// larger box that this one stands for; 0 where it stands for itself. See lean.
	rounding float64
}

func (f frontier) Len() int           { return len(f) }
func (f frontier) Less(i, j int) bool { return f[i].margin.Low < f[j].margin.Low }
func (f frontier) Swap(i, j int)      { f[i], f[j] = f[j], f[i] }
func (f *frontier) Push(x any)        { *f = append(*f, x.(*box2)) }
func (f *frontier) Pop() any {
	n := len(*f) - 1
	x := (*f)[n]
	(*f)[n] = nil
	*f = (*f)[:n]
	return x
}

// Decide decides a claim. If ctx is done it answers Undecided.
func (p *Prover) Decide(ctx context.Context, c *Claim, o Options) Decision {
	if o.Boxes == 0 {
		o.Boxes = UsualBoxes
	}
	if !p.sound {
		return Decision{}
	}
	d := p.decide(ctx, c, o)
	if d.Answer == Disproved && !o.Plain {
		p.simplify(ctx, c, &d)
	}
	return d
}

func (p *Prover) decide(ctx context.Context, c *Claim, o Options) Decision {
	if w, ok := c.Want.(Rising); ok {
		return p.decideRising(ctx, c, w, o)
	}
	return p.run(ctx, c, o)
}

// run searches.
func (p *Prover) run(ctx context.Context, c *Claim, o Options) Decision {
	return p.newSearch(ctx, c, o).run()
}

func (p *Prover) newSearch(ctx context.Context, c *Claim, o Options) *search {
	worth := marginBoxes
	switch c.Want.(type) {
	case Pair, Turn, Rising: // how much they have to spare tells a person nothing
		worth = 0
	}
	p.enough = p.corners + product(o.Boxes, cornersPerBox)
	return &search{b: p.newBoard(c), worth: worth, options: o, limit: o.Boxes, corners: p.corners, forms: map[*component]bool{}, best: math.Inf(1),
		done: func() bool { return ctx.Err() != nil }, rising: none}
}

func (s *search) run() Decision {
	b, margins := s.b, s.options.Margins
	d := Decision{States: b.states, Timed: b.uses.timed}
	complete := b.eachCell(product(cellsPerBox, s.limit), s.done, func(cell *cell) bool {
		s.cells++
		at := &place{b: b, cell: cell}
		return s.look(&box2{box: &box{place: at, depth: -1}}, cell.spans)
	})
	answer := Undecided
	switch {
	case s.tried && s.best < 0:
		answer = Disproved
	case complete && s.cells == 0:
		answer = Empty
	case complete:
		answer = s.work(&d)
	}
	d.Answer, d.Boxes, d.Forms = answer, s.spent(), len(s.forms)+s.shifts
	if answer == Proved && !margins {
		d.AtLeast = 0 // boxes that hold were not kept
		return d
	}
	if s.tried && (answer == Disproved || answer == Proved) {
		d.Pose, d.Margin = s.pose, s.best
	}
	return d
}

// look bounds one box, a part of another. It returns false if that was the last.
func (s *search) look(of *box2, spans []interval.Range) bool {
	if s.spent() >= s.limit {
		return false
	}
	if s.spent() >= s.looked+lookOften {
		s.looked = s.spent()
		if s.done() {
			return false
		}
		if s.options.Progress != nil {
			s.options.Progress(s.looked)
		}
	}
	s.boxes++
	at := of.place
	box := &box2{box: &box{place: at, spans: spans, depth: of.depth + 1}, rounding: of.rounding}
	s.bound(box)
	if !(box.margin.Low >= 0) {
		box.fine = true
		s.bound(box)
	}
	if enough := s.enough(); box.margin.Low < enough {
		for low := box.margin.Low; low < enough && s.lean(box); low = box.margin.Low {
			s.bound(box)
			box.margin.Low = max(box.margin.Low, low)
		}
	}
	s.count(at)
	if box.margin.Low < 0 {
		s.try(box)
		if s.best < 0 {
			return false
		}
	} else if !s.options.Margins {
		return true
	}
	heap.Push(&s.open, box)
	return true
}

// enough is the margin that a box need not be looked at for any further.
func (s *search) enough() float64 {
	if s.options.Margins && s.tried {
		return s.best - marginClose
	}
	return 0
}

// spent is what the search has cost so far, in boxes: those looked at, and what was
// spent on finding the ranges of forms.
func (s *search) spent() int { return s.boxes + (s.b.p.corners-s.corners)/cornersPerBox }

// bound finds the range of a box's margin.
func (s *search) bound(box *box2) {
	box.tries = box.tries[:0]
	box.margin = s.enclose(box)
	if math.IsNaN(box.margin.Low) {
		box.margin = interval.Everything
	}
}

func (s *search) enclose(box *box2) rangeOf {
	margin := s.b.c.Want.bound(box.box)
	if box.rounding > 0 {
		margin = margin.Widen(box.rounding)
	}
	return margin
}

// count takes note of the forms that were made in a cell.
func (s *search) count(at *place) {
	for _, r := range at.forms {
		if len(r.list) == 0 {
			s.shifts = max(s.shifts, 1)
		}
		for _, c := range r.list {
			s.forms[c] = true
		}
	}
}

// try holds the Plan's own margin against a box, where it is likely least.
func (s *search) try(box *box2) {
	box.tried = true
	for _, values := range box.places() {
		pose := s.poseOf(box.box, values)
		if margin := s.b.p.Margin(s.b.c, pose); !s.tried || margin < s.best {
			s.tried, s.best, s.pose = true, margin, pose
		}
	}
	if box.isPoint() && box.rounding == 0 {
		// Nothing is left open: the Plan says what the margin is.
		box.margin = interval.Point(s.b.p.Margin(s.b.c, s.poseOf(box.box, box.middle())))
	}
	box.tries = nil
}

// poseOf is the pose to try at some values of the variables.
func (s *search) poseOf(box *box, values []float64) Pose {
	if s.rising == none {
		return s.b.pose(values)
	}
	span := box.spans[s.rising]
	ends := slices.Clone(values)
	ends[s.rising] = span.High
	pose := s.b.pose(ends)
	ends[s.rising] = span.Low
	pose.Other = s.b.pose(ends).Now
	return pose
}

func (b *box) middle() []float64 {
	values := make([]float64, len(b.spans))
	for i, s := range b.spans {
		values[i] = s.Low
		if b.b.p.setup.Controls[i%b.b.n].Kind != mixcore.SwitchControl {
			values[i] = s.Middle()
		}
	}
	return values
}

// isPoint says whether nothing that bears on the claim can move in the box.
func (b *box) isPoint() bool {
	for _, r := range b.forms {
		for _, c := range r.list {
			for _, v := range c.variables {
				if !b.spans[v].IsPoint() {
					return false
				}
			}
		}
	}
	return true
}

// work goes on until the claim is decided.
func (s *search) work(d *Decision) Answer {
	for proved := 0; len(s.open) > 0; {
		box := s.open[0]
		if box.margin.Low >= 0 && box.tried {
			if proved++; s.tried && (proved > s.worth || s.best-box.margin.Low <= marginClose || math.IsInf(s.best, 1)) {
				break
			}
		}
		if !box.fine {
			box.fine = true
			low := box.margin.Low
			s.bound(box)
			box.margin.Low = max(box.margin.Low, low)
			heap.Fix(&s.open, 0)
			continue
		}
		if !box.tried {
			s.try(box)
			heap.Fix(&s.open, 0)
			if s.best < 0 {
				return Disproved
			}
			continue
		}
		if box.margin.Low < 0 && box.margin.IsPoint() {
			return Disproved
		}
		if target := s.best - marginClose; box.target < target && box.margin.Low < target {
			box.target = target
			box.margin = box.margin.Within(s.enclose(box))
			box.tries = nil
			heap.Fix(&s.open, 0)
			continue
		}
		heap.Pop(&s.open)
		if box.margin.Low < 0 && box.margin.Low > -TooClose && box.margin.Width() < 10*TooClose {
			d.Close = true
			continue
		}
		halves := box.halves()
		if halves == nil {
			if box.margin.Low < 0 {
				d.Close = true
				continue
			}
			s.options.Margins = false // as close as it gets
			heap.Push(&s.open, box)
			break
		}
		for _, half := range halves {
			if !s.look(box, half) {
				if s.best < 0 {
					return Disproved
				}
				if box.margin.Low < 0 || d.Close {
					return Undecided
				}
				d.AtLeast = box.margin.Low
				return Proved
			}
		}
	}
	if d.Close {
		return Undecided
	}
	if len(s.open) > 0 {
		d.AtLeast = min(s.open[0].margin.Low, s.best)
	}
	return Proved
}

// Margin is the margin of a claim at one pose, by the Plan: negative where it does not
// hold there. The claim's condition is not looked at.
func (p *Prover) Margin(c *Claim, at Pose) float64 {
	p.plan.Eval(&at.Now, p.nowOut)
	if at.Other.Position != nil {
		p.plan.Eval(&at.Other, p.otherOut)
	}
	return c.Want.margin(p, p.nowOut, p.otherOut)
}

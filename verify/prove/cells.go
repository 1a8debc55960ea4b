package prove

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
)

// A claim's variables are the places of its controls: variable i is control i in Now,
// variable n+i is control i in Other where that stands apart, n being the number of
// controls.

// view is how one pose is made from the variables.
type view struct {
	variable []int  // for each control
	mirrored []bool // for each control: at minus the variable
	lost     bool
}

// cell is one choice of stretches: everything that switches stands still in it.
type cell struct {
	spans      []interval.Range // by variable; of a switch the index of its position
	now, other weights
}

// weights are which conditions of the plan hold in a view of a cell.
type weights []float64

// setting is what can differ from cell to cell: one variable and where it may stand.
type setting struct {
	variable int
	stretch  []interval.Range
}

// board is a claim made ready: its views, and the stretches of every variable.
type board struct {
	p          *Prover
	c          *Claim
	n          int // controls
	now, other view
	two        bool // Other counts
	free       []interval.Range
	settings   []setting // of the variables that have more than one stretch, or are switches that matter
	states     int       // switch positions covered
	uses       uses
}

// newBoard makes a claim ready.
func (p *Prover) newBoard(c *Claim) *board {
	n := len(p.setup.Controls)
	b := &board{p: p, c: c, n: n, two: c.Other != nil, uses: c.Want.uses(p), states: 1}
	b.now = view{variable: make([]int, n), mirrored: make([]bool, n), lost: c.Lost}
	b.other = view{variable: make([]int, n), mirrored: make([]bool, n), lost: c.OtherLost}
	b.free = make([]interval.Range, 2*n)
	for i := range n {
		b.now.variable[i], b.other.variable[i] = i, i
		b.free[i] = rangeOfSpan(&c.Now[i])
		if !b.two {
			continue
		}
		switch o := &c.Other[i]; o.Kind {
		case Mirrored:
			b.other.mirrored[i] = true
		case Apart:
			b.free[n+i] = rangeOfSpan(&o.Span)
			if b.free[i] != b.free[n+i] || !b.free[i].IsPoint() {
				b.other.variable[i] = n + i
			}
		}
	}
	b.cut()
	return b
}

func rangeOfSpan(s *Span) interval.Range {
	if s.Places != nil {
		return interval.Range{Low: float64(s.Places[0]), High: float64(s.Places[len(s.Places)-1])}
	}
	return interval.Range{Low: s.Low, High: s.High}
}

// places are the switch positions of a variable.
func (b *board) places(variable int) []int {
	if variable < b.n {
		return b.c.Now[variable].Places
	}
	return b.c.Other[variable-b.n].Span.Places
}

// cut finds the stretches of every variable that something looks at.
func (b *board) cut() {
	tests := make([][]interval.Range, 2*b.n)
	matters := make([]bool, 2*b.n) // of switches
	look := func(v *view, when *mixcore.Condition) {
		b.p.setup.EachTest(when, func(t *mixcore.Condition) {
			low, high := t.Bounds()
			if v.mirrored[t.Control] {
				low, high = -high, -low
			}
			at := v.variable[t.Control]
			tests[at] = append(tests[at], interval.Range{Low: low, High: high})
			matters[at] = true
		})
	}
	views := []*view{&b.now}
	if b.two {
		views = append(views, &b.other)
	}
	for _, v := range views {
		b.uses.conditions(b.p, func(when *mixcore.Condition) { look(v, when) })
		b.uses.demands(b.p, func(demand int) {
			if from := b.p.setup.Demands[demand].From; b.p.setup.Controls[from].Kind == mixcore.SwitchControl {
				matters[v.variable[from]] = true
			}
		})
	}
	if b.c.When != nil {
		look(&b.now, b.c.When)
		if b.c.WhenBoth {
			look(&b.other, b.c.When)
		}
	}
	for variable := range 2 * b.n {
		control := &b.p.setup.Controls[variable%b.n]
		if variable >= b.n && (!b.two || b.other.variable[variable-b.n] != variable) {
			continue
		}
		if control.Kind == mixcore.SwitchControl {
			b.states = product(b.states, len(b.places(variable)))
			if matters[variable] {
				b.settings = append(b.settings, setting{variable, positions(b.places(variable))})
			} else {
				b.free[variable] = interval.Point(float64(b.places(variable)[0]))
			}
			continue
		}
		if pieces := stretches(b.free[variable], tests[variable]); len(pieces) > 1 {
			b.settings = append(b.settings, setting{variable, pieces})
		}
	}
}

// product is a·b, held at the largest number where it is more.
func product(a, b int) int {
	if b > 0 && a > math.MaxInt/b {
		return math.MaxInt
	}
	return a * b
}

func positions(places []int) []interval.Range {
	var list []interval.Range
	for _, at := range places {
		list = append(list, interval.Point(float64(at)))
	}
	return list
}

// stretches cuts a range where a test begins or ceases to hold: each test is low ≤
// position ≤ high, and the number below the start of one stretch is the end of the
// stretch before it.
func stretches(whole interval.Range, tests []interval.Range) []interval.Range {
	starts := []float64{whole.Low}
	for _, t := range tests {
		for _, start := range []float64{t.Low, math.Nextafter(t.High, math.Inf(1))} {
			if start > whole.Low && start <= whole.High {
				starts = append(starts, start)
			}
		}
	}
	slices.Sort(starts)
	starts = slices.Compact(starts)
	var list []interval.Range
	for i, start := range starts {
		end := whole.High
		if i+1 < len(starts) {
			end = math.Nextafter(starts[i+1], math.Inf(-1))
		}
		list = append(list, interval.Range{Low: start, High: end})
	}
	return list
}

// eachCell visits every different cell at which the claim's condition holds, until
// visit returns false or done does, and says whether it visited all. Cells in which the
// same conditions hold over the same stretches are visited once. It gives up after most
// choices of stretches.
func (b *board) eachCell(most int, done func() bool, visit func(*cell) bool) (complete bool) {
	spans := slices.Clone(b.free)
	seen := map[string]bool{}
	at := make([]int, len(b.settings))
	var key []byte
	now, other := b.middle(spans, &b.now), mixcore.Input{}
	if b.two {
		other = b.middle(spans, &b.other)
	}
	for turns := 1; ; turns++ {
		if turns > most || turns%1024 == 0 && done() {
			return false
		}
		for i, s := range b.settings {
			spans[s.variable] = s.stretch[at[i]]
		}
		b.stand(spans, &b.now, &now)
		if b.counts(spans, &now, &other) {
			holding := b.p.plan.Weigh(&now, b.p.nowOut)
			key = b.key(key[:0], at, holding)
			var beside []float64
			if b.two {
				beside = b.p.plan.Weigh(&other, b.p.otherOut)
				key = b.key(key, nil, beside)
			}
			if !seen[string(key)] {
				seen[string(key)] = true
				c := &cell{spans: slices.Clone(spans), now: slices.Clone(holding), other: slices.Clone(beside)}
				if !visit(c) {
					return false
				}
			}
		}
		if !next(at, b.settings) {
			return true
		}
	}
}

// counts says whether the claim speaks of the poses in some spans. Both are written.
func (b *board) counts(spans []interval.Range, now, other *mixcore.Input) bool {
	if b.two {
		b.stand(spans, &b.other, other)
	}
	return b.c.When == nil || b.p.plan.Holds(b.c.When, now) && (!b.c.WhenBoth || b.p.plan.Holds(b.c.When, other))
}

// next counts on through the stretches, and says whether there is one more.
func next(at []int, settings []setting) bool {
	for i := range at {
		if at[i]++; at[i] < len(settings[i].stretch) {
			return true
		}
		at[i] = 0
	}
	return false
}

// key is what tells cells apart: the conditions that bear on the claim, the stretches,
// and the positions of switches that a demand comes from.
func (b *board) key(key []byte, at []int, holding []float64) []byte {
	for _, i := range b.uses.weights {
		key = append(key, byte(holding[i]))
	}
	for i, s := range b.settings[:len(at)] {
		if b.uses.sources[s.variable%b.n] {
			key = append(key, byte(at[i]), byte(at[i]>>8))
		}
	}
	return append(key, 0xff)
}

// stand writes a view of some place in the spans: what switches is the same at any.
func (b *board) stand(spans []interval.Range, v *view, in *mixcore.Input) {
	for i := range b.n {
		in.Position[i] = v.place(spans[v.variable[i]].Low, i)
	}
}

func (b *board) middle(spans []interval.Range, v *view) mixcore.Input {
	in := mixcore.Input{Position: make([]float64, b.n), SignalLost: v.lost}
	b.stand(spans, v, &in)
	return in
}

// place is where a control stands when its variable has a value.
func (v *view) place(value float64, control int) float64 {
	if v.mirrored[control] {
		return -value
	}
	return value
}

// pose makes the poses of some values of the variables.
func (b *board) pose(values []float64) Pose {
	var pose Pose
	pose.Now = mixcore.Input{Position: make([]float64, b.n), SignalLost: b.now.lost}
	for i := range b.n {
		pose.Now.Position[i] = b.now.place(values[b.now.variable[i]], i)
	}
	if b.two {
		pose.Other = mixcore.Input{Position: make([]float64, b.n), SignalLost: b.other.lost}
		for i := range b.n {
			pose.Other.Position[i] = b.other.place(values[b.other.variable[i]], i)
		}
	}
	return pose
}

package prove

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/mixcore/interval"
)

// Prover decides claims about one set-up. It keeps what it found out, so that the
// next claim is decided faster; it must not be used from two goroutines at once.
type Prover struct {
	plan   *mixcore.Plan
	setup  *mixcore.Setup
	air    *effect.Airframe
	shapes [][]int // by demand and rate: the number that equal ones share
	kinds  []shape // by that number

	sound      bool // every number of the set-up is one, and of a reasonable size
	corners    int  // steps of all searches for the least value of a form
	enough     int  // corners at which the search in hand is to end
	components map[string]*component
	influence  []effect.Influence // by part
	tails      map[[3]int]*tail   // by part, drive and whether the signal is lost
	bears      []bearing          // by channel
	forms      map[string]*ready
	aparts     map[differenceKey]*ready
	gaps       map[gapKnown]interval.Range

	nowOut, otherOut *mixcore.Output // scratch
	channels         []mixcore.ChannelOutput
}

// shape is one demand with one of its rates in force.
type shape struct {
	demand, rate int
	control      int
	odd          bool      // turning its control and trim about turns it about
	trim         int       // control, or mixcore.NoTrim
	trimRange    float64   // percent
	most         float64   // its largest size, trim included
	never        float64   // +1 where it never goes above 0, −1 where it never goes below, else 0
	breaks       []float64 // see mixcore.Plan.ShapedBreaks

	known map[interval.Range]*shapeBounds
}

// New makes a prover for a plan.
func New(plan *mixcore.Plan) *Prover {
	p := &Prover{
		plan: plan, setup: plan.Setup(), air: effect.New(plan.Setup()),
		components: map[string]*component{}, tails: map[[3]int]*tail{},
		nowOut: plan.NewOutput(), otherOut: plan.NewOutput(),
		channels: make([]mixcore.ChannelOutput, len(plan.Setup().Channels)),
	}
	if p.sound = soundNumbers(p.setup); !p.sound {
		return p
	}
	for i := range p.setup.Parts {
		p.influence = append(p.influence, p.air.Influence(i))
	}
	p.forms, p.aparts = map[string]*ready{}, map[differenceKey]*ready{}
	for i := range p.setup.Channels {
		p.bears = append(p.bears, p.bearsOn(i))
	}
	for i := range p.setup.Demands {
		d := &p.setup.Demands[i]
		var numbers []int
		for r := range d.Rates {
			numbers = append(numbers, p.shape(i, r))
		}
		p.shapes = append(p.shapes, numbers)
	}
	return p
}

// shape is the number of a demand's rate: that of an equal one where there is one.
func (p *Prover) shape(demand, rate int) int {
	d := &p.setup.Demands[demand]
	for n := range p.kinds {
		k := &p.kinds[n]
		if sameShape(d, &d.Rates[rate], &p.setup.Demands[k.demand], k.rate) {
			return n
		}
	}
	low, high := d.Range(p.setup.Controls)
	p.kinds = append(p.kinds, shape{
		demand: demand, rate: rate, control: d.From, odd: isOdd(d, &d.Rates[rate]),
		trim: d.Trim, trimRange: float64(d.TrimRange),
		most:   max(-float64(low), float64(high)),
		never:  sideNever(float64(low), float64(high)),
		breaks: p.plan.ShapedBreaks(demand, rate),
	})
	return len(p.kinds) - 1
}

func sideNever(low, high float64) float64 {
	switch {
	case low >= 0:
		return -1
	case high <= 0:
		return 1
	}
	return 0
}

func sameShape(d *mixcore.Demand, r *mixcore.Rate, e *mixcore.Demand, rate int) bool {
	other := &e.Rates[rate]
	return d.From == e.From && d.Trim == e.Trim && (d.Trim == mixcore.NoTrim || d.TrimRange == e.TrimRange) &&
		r.Throw == other.Throw && r.Expo == other.Expo && d.Values == nil && e.Values == nil &&
		(d.Curve == e.Curve || d.Curve != nil && e.Curve != nil && sameCurve(d.Curve, e.Curve))
}

func sameCurve(c, e *mixcore.Curve) bool {
	if c.Smooth != e.Smooth || len(c.Points) != len(e.Points) {
		return false
	}
	for i := range c.Points {
		if c.Points[i] != e.Points[i] {
			return false
		}
	}
	return true
}

// isOdd says whether turning a demand's control about turns the demand about: expo is
// odd, so that it needs equal throws and straight lines the same on both sides.
func isOdd(d *mixcore.Demand, r *mixcore.Rate) bool {
	if d.Values != nil || r.Throw.Plus != r.Throw.Minus {
		return false
	}
	if d.Curve == nil {
		return true
	}
	if d.Curve.Smooth {
		return false // its slopes are rounded one side at a time
	}
	last := len(d.Curve.Points) - 1
	for i, a := range d.Curve.Points {
		if b := d.Curve.Points[last-i]; a.X != -b.X || a.Y != -b.Y {
			return false
		}
	}
	return true
}

// value encloses a demand before its trim over a stretch of control positions.
func (k *shape) value(p *Prover, at interval.Range) interval.Range {
	b := k.bounds(at)
	if !b.valued {
		b.valued = true
		if p.setup.Demands[k.demand].Values != nil {
			b.value = interval.Point(float64(p.plan.ShapedAt(k.demand, k.rate, at.Low)))
		} else {
			b.value = p.plan.ShapedRange(k.demand, k.rate, at)
		}
	}
	return b.value
}

// slope encloses how much that changes with the position, in percent for one percent.
func (k *shape) slope(p *Prover, at interval.Range) interval.Range {
	if p.setup.Demands[k.demand].Values != nil {
		return interval.Point(0)
	}
	b := k.bounds(at)
	if !b.sloped {
		b.slope, b.sloped = p.plan.ShapedSlope(k.demand, k.rate, at), true
	}
	return b.slope
}

// shapeBounds are what is known of a shape over a stretch.
type shapeBounds struct {
	value, slope   interval.Range
	valued, sloped bool
}

// mostBounds is how many stretches a shape remembers.
const mostBounds = 4096

func (k *shape) bounds(at interval.Range) *shapeBounds {
	if b, ok := k.known[at]; ok {
		return b
	}
	if k.known == nil || len(k.known) >= mostBounds {
		k.known = map[interval.Range]*shapeBounds{}
	}
	b := &shapeBounds{}
	k.known[at] = b
	return b
}

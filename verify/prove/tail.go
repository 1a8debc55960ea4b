package prove

import (
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
)

// outputError bounds what the Plan's rounding does between a channel's sum and its
// output, in percent, and between output and the power of a motor or the travel of an
// extra: a handful of operations on numbers of at most a few thousand.
const outputError = 1e-11

// output encloses a channel's output over a range of its sum. Nothing between the two
// turns back.
func (p *Prover) output(channel int, sum interval.Range, lost bool) interval.Range {
	a := p.plan.ChannelAt(channel, mixcore.Percent(sum.Low), lost).Output
	if sum.IsPoint() {
		return interval.Point(float64(a))
	}
	b := p.plan.ChannelAt(channel, mixcore.Percent(sum.High), lost).Output
	low, high := p.setup.Channels[channel].Reach()
	reach := interval.Range{Low: float64(low), High: float64(high)}
	return interval.Point(float64(a)).Hull(interval.Point(float64(b))).Widen(outputError).Within(reach)
}

// tail is one drive of a part as a function of its channel's sum: in degrees, or in
// percent of a motor or extra. The only drive of a part has the part's stops in it.
type tail struct {
	p                    *Prover
	part, drive, channel int
	lost, only, hinged   bool
	accuracy             float64
	rises                float64 // +1 where the part moves plus as the sum does, else −1

	// The part stands still at sums below still.Low and above still.High, where
	// something holds it, and is held by nothing at sums within free.
	still, free interval.Range

	first, step float64          // of the pieces that the output's reach is cut into
	slopes      []interval.Range // of the drive over each; Everything where not yet known

	known map[interval.Range]interval.Range // places over sums that were asked for
}

// slopePieces is into how many pieces the reach of a hinged part's output is cut, over
// each of which its slope is enclosed once: over a wide stretch at a go, the enclosure
// of a linkage's slope is too wide to be of use.
const slopePieces = 32

func (p *Prover) tail(part, drive int, lost bool) *tail {
	pt := &p.setup.Parts[part]
	t := &tail{p: p, part: part, drive: drive, channel: pt.Drives[drive].Channel, lost: lost,
		only: len(pt.Drives) == 1, hinged: pt.Motion.Hinged(),
		accuracy: outputError, rises: 1}
	limit := float64(p.setup.Channels[t.channel].Limit)
	if t.hinged {
		low, high := p.setup.Channels[t.channel].Reach()
		t.accuracy = p.plan.DriveAccuracy(part, drive, interval.Range{Low: float64(low), High: float64(high)})
		t.first, t.step = float64(low), float64(high-low)/slopePieces
		t.slopes = make([]interval.Range, slopePieces)
		for i := range t.slopes {
			t.slopes[i] = interval.Everything
		}
	}
	if t.raw(limit) < t.raw(-limit) {
		t.rises = -1
	}
	t.still.High, t.free.High = t.edge(0, limit)
	t.still.Low, t.free.Low = t.edge(0, -limit)
	return t
}

// edge finds where the part comes to its end as the sum goes from one value to
// another: from held on it stands exactly as at the end, and up to free it does not.
// The tail never turns back, so that halving finds it.
func (t *tail) edge(from, to float64) (held, free float64) {
	end := t.at(to)
	if t.at(from) == end {
		return from, -math.Copysign(math.Inf(1), to-from)
	}
	free, held = from, to
	for range 60 {
		middle := free + (held-free)/2
		if middle == free || middle == held {
			break
		}
		if t.at(middle) == end {
			held = middle
		} else {
			free = middle
		}
	}
	return held, free
}

// beyond is how much of a range of sums may lie where something holds the part.
func (t *tail) beyond(sum interval.Range) float64 {
	low, high := max(t.free.Low-sum.Low, 0), max(sum.High-t.free.High, 0)
	return interval.Point(low).Add(interval.Point(high)).High
}

// raw is where the drive puts the part, without stops.
func (t *tail) raw(sum float64) float64 {
	out := t.p.plan.ChannelAt(t.channel, mixcore.Percent(sum), t.lost)
	if t.hinged {
		return float64(t.p.plan.DriveAngle(t.part, t.drive, out.Output))
	}
	t.p.channels[t.channel] = out
	return float64(t.p.plan.PartAt(t.part, t.p.channels).Amount)
}

// at is where the drive puts the part.
func (t *tail) at(sum float64) float64 {
	a := t.raw(sum)
	if t.hinged && t.only {
		s := &t.p.setup.Parts[t.part].Stops
		a = min(max(a, -float64(s.Minus)), float64(s.Plus))
	}
	return a
}

// over encloses at over a range of sums.
func (t *tail) over(sum interval.Range) interval.Range {
	if r, ok := t.known[sum]; ok {
		return r
	}
	if t.known == nil || len(t.known) >= mostKnown {
		t.known = map[interval.Range]interval.Range{}
	}
	r := t.place(sum)
	t.known[sum] = r
	return r
}

func (t *tail) place(sum interval.Range) interval.Range {
	a := t.at(sum.Low)
	if sum.IsPoint() || sum.Low >= t.still.High || sum.High <= t.still.Low {
		return interval.Point(a)
	}
	r := interval.Point(a).Hull(interval.Point(t.at(sum.High))).Widen(2 * t.accuracy)
	return r.Within(t.reach())
}

// reach is where the part can be at all.
func (t *tail) reach() interval.Range {
	switch {
	case !t.hinged:
		return interval.Range{High: 100}
	case !t.only:
		return interval.Everything
	}
	s := &t.p.setup.Parts[t.part].Stops
	return interval.Range{Low: -float64(s.Minus), High: float64(s.Plus)}
}

// slope encloses how much the part moves for one percent of the sum, over a range of
// sums; 0 is in it where something may hold the part.
func (t *tail) slope(sum interval.Range) interval.Range {
	if t.beyond(sum) > 0 {
		return t.freeSlope(sum).Hull(interval.Point(0))
	}
	return t.freeSlope(sum)
}

// freeSlope is slope over the sums at which nothing holds the part.
func (t *tail) freeSlope(sum interval.Range) interval.Range {
	c := &t.p.setup.Channels[t.channel]
	if t.lost && !c.Failsafe.Hold {
		return interval.Point(0)
	}
	out := t.p.output(t.channel, sum, t.lost)
	by := t.channelSlope(c, sum)
	pt := &t.p.setup.Parts[t.part]
	switch pt.Motion {
	case mixcore.Power:
		perPercent := interval.Point(float64(mixcore.PulsePerPercent) * 100).Over(interval.Point(float64(pt.Motor.Full - pt.Motor.Idle)))
		by = by.Mul(perPercent)
	case mixcore.OutIn:
		by = by.Scale(0.5)
		if pt.PlusIn {
			by = by.Neg()
		}
	default:
		by = by.Mul(t.driveSlope(out))
	}
	return by
}

// driveSlope encloses how much the drive moves the part for one percent of output.
func (t *tail) driveSlope(out interval.Range) interval.Range {
	if !(t.step > 0) || out.Width() < t.step/4 {
		return t.p.plan.DriveSlope(t.part, t.drive, out)
	}
	from, to := t.pieceOf(out.Low), t.pieceOf(out.High)
	slope := t.pieceSlope(from)
	for i := from + 1; i <= to; i++ {
		slope = slope.Hull(t.pieceSlope(i))
	}
	return slope
}

func (t *tail) pieceOf(out float64) int {
	return min(max(int((out-t.first)/t.step), 0), slopePieces-1)
}

// pieceSlope is the slope over one piece, and a little beyond its ends.
func (t *tail) pieceSlope(i int) interval.Range {
	if t.slopes[i] == interval.Everything {
		piece := interval.Range{Low: t.first + float64(i)*t.step, High: t.first + float64(i+1)*t.step}.Widen(t.step / 1000)
		low, high := t.p.setup.Channels[t.channel].Reach()
		piece = interval.Range{Low: max(piece.Low, float64(low)), High: min(piece.High, float64(high))}
		t.slopes[i] = t.p.plan.DriveSlope(t.part, t.drive, piece)
	}
	return t.slopes[i]
}

// channelSlope is by how much the output changes for one percent of the sum.
func (t *tail) channelSlope(c *mixcore.Channel, sum interval.Range) interval.Range {
	plus, minus := interval.Point(float64(c.EndPoints.Plus)).Scale(0.01), interval.Point(float64(c.EndPoints.Minus)).Scale(0.01)
	if c.Reversed {
		plus, minus = minus, plus
	}
	by := plus.Hull(minus)
	switch {
	case sum.Low > 0:
		by = plus
	case sum.High < 0:
		by = minus
	}
	if c.Reversed {
		by = by.Neg()
	}
	return by
}

// ending is a tail as plain numbers, turned so that its channel is not reversed, to
// tell whether two tails are the same function.
type ending struct {
	limit, plus, minus, sub, low, high float64
	swing, most                        float64
	linkage                            any // its geometry, or nil
	sign, stopPlus, stopMinus          float64
	scale                              [3]float64 // of a motor or extra
}

// ending is that of side·at(turn·sum).
func (t *tail) ending(turn, side float64) (ending, []mixcore.Point) {
	c, pt := &t.p.setup.Channels[t.channel], &t.p.setup.Parts[t.part]
	d := &pt.Drives[t.drive]
	e := ending{limit: float64(c.Limit), plus: float64(c.EndPoints.Plus), minus: float64(c.EndPoints.Minus),
		sub: float64(c.SubTrim), low: float64(c.PulseMin - mixcore.CentrePulse), high: float64(c.PulseMax - mixcore.CentrePulse),
		swing: float64(d.Servo.Swing), most: float64(d.Servo.Max), sign: d.Sign * side}
	if !d.Servo.PlusAft {
		e.swing = -e.swing
	}
	e.stopPlus, e.stopMinus = float64(pt.Stops.Plus), float64(pt.Stops.Minus)
	if side < 0 {
		e.stopPlus, e.stopMinus = e.stopMinus, e.stopPlus
	}
	table := d.Table
	if c.Reversed != (turn < 0) {
		e.plus, e.minus, e.sub = e.minus, e.plus, -e.sub
		e.low, e.high, e.swing = -e.high, -e.low, -e.swing
		table = turnedTable(table, -1, side)
	} else {
		table = turnedTable(table, 1, side)
	}
	switch {
	case d.Linkage != nil:
		e.linkage = *d.Linkage
	case t.hinged:
		e.swing, e.most, e.sign = 0, 0, 0
	case pt.Motor != nil:
		e.scale = [3]float64{float64(pt.Motor.Idle), float64(pt.Motor.Full), turn * side}
	default:
		e.scale = [3]float64{whole01(pt.PlusIn), 0, turn * side}
	}
	return e, table
}

func whole01(b bool) float64 { return float64(whole(b)) }

func turnedTable(table []mixcore.Point, x, y float64) []mixcore.Point {
	out := make([]mixcore.Point, len(table))
	for i, p := range table {
		at := i
		if x < 0 {
			at = len(table) - 1 - i
		}
		out[at] = mixcore.Point{X: p.X * x, Y: p.Y*y + 0}
	}
	return out
}

// same says whether side·other(turn·sum) is the same function of the sum as the tail.
func (t *tail) same(other *tail, turn, side float64) bool {
	if t.lost != other.lost || t.only != other.only || t.hinged != other.hinged {
		return false
	}
	if t.part == other.part && t.drive == other.drive && turn == 1 && side == 1 {
		return true
	}
	if !t.hinged && (turn != 1 || side != 1) { // turned about, 0…100 % is 0…−100 %
		return false
	}
	if t.lost && !(t.p.setup.Channels[t.channel].Failsafe.Hold && t.p.setup.Channels[other.channel].Failsafe.Hold) {
		return false
	}
	e, table := t.ending(1, 1)
	f, otherTable := other.ending(turn, side)
	if e != f || len(table) != len(otherTable) {
		return false
	}
	for i := range table {
		if table[i] != otherTable[i] || math.IsNaN(table[i].Y) {
			return false
		}
	}
	return true
}

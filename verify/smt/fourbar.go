package smt

import (
	"fmt"
	"math"
	"math/big"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/interval"
	"example.com/hingeline/mixcore/linkage"
)

// fourBar is a linkage as a script knows it: the horn's swing is within off of a line
// of straight pieces of the arm's swing, and between two slopes from one arm swing to
// any other.
type fourBar struct {
	geometry linkage.Geometry
	knots    []knot
	off      *big.Rat // degrees
	slopes   [2]*big.Rat
	line     string // name of the pieces, once written
	uses     []barUse
}

type knot struct{ arm, horn float64 } // degrees

// barUse is a linkage at one of the positions.
type barUse struct {
	arm, horn   number
	part, drive int
}

// How closely the pieces follow a linkage.
const (
	nearBar    = 0.02 // degrees: no more pieces than it takes for this
	mostPieces = 48
	mostOff    = 0.5 // degrees: what can be told no better is not written
)

// barOf is the linkage of a drive, bounded over everything that servos with the same
// one can do.
func (s *script) barOf(d *mixcore.Drive) *fourBar {
	for _, bar := range s.bars {
		if bar.geometry == *d.Linkage {
			return bar
		}
	}
	l, err := linkage.New(*d.Linkage)
	if err != nil {
		refuse("a linkage cannot be built: %v", err)
	}
	low, high := math.Inf(1), math.Inf(-1)
	for i := range s.setup.Parts {
		for j := range s.setup.Parts[i].Drives {
			e := &s.setup.Parts[i].Drives[j]
			if e.Linkage == nil || *e.Linkage != *d.Linkage {
				continue
			}
			a, b := s.setup.Channels[e.Channel].Reach()
			for _, out := range []mixcore.Percent{a, b} {
				arm := float64(out) * float64(e.Servo.Swing) / 100
				if !e.Servo.PlusAft {
					arm = -arm
				}
				arm = min(max(arm, -float64(e.Servo.Max)), float64(e.Servo.Max))
				low, high = min(low, arm), max(high, arm)
			}
		}
	}
	bar := bend(l, outward(low, -1), outward(high, +1))
	bar.geometry = *d.Linkage
	s.bars = append(s.bars, bar)
	return bar
}

// outward moves an arm swing away from 0 in its direction, to a short decimal.
func outward(arm, side float64) float64 { return side * math.Ceil(side*arm*arms) / arms }

// arms and horns are how finely swings of arm and horn are written, as parts of a
// degree.
const (
	arms  = 1e3
	horns = 1e9
)

// slack is added to every bound of a four-bar, in degrees: far above what the floating
// point that finds the bounds can be wrong by, far below what can be seen.
const slack = 1e-7

// bend bounds a linkage over a stretch of arm swings. A piece runs from one point of
// the linkage to another. Between them the linkage keeps its slope between m and M
// (linkage.Slope), and so lies in the parallelogram that lines of those slopes through
// the two points enclose: no further from the piece, whose slope is c, than
// (M − c)·(c − m)/(M − m) times the length of the piece.
func bend(l *linkage.Linkage, low, high float64) *fourBar {
	whole := interval.Range{Low: low, High: high}
	slope := slopeOf(l, whole, 128)
	knots := []knot{knotAt(l, low)}
	if high > low {
		knots = append(knots, knotAt(l, high))
	}
	var offs []float64 // of the piece that ends at each knot but the first
	for i := 1; i < len(knots); i++ {
		offs = append(offs, deviation(l, knots[i-1], knots[i]))
	}
	off := 0.0
	for len(offs) > 0 {
		off = slices.Max(offs)
		if off <= nearBar || len(knots) > mostPieces {
			break
		}
		n := slices.Index(offs, off)
		a, b := knots[n], knots[n+1]
		middle := knotAt(l, math.Round((a.arm+b.arm)/2*arms)/arms)
		knots = slices.Insert(knots, n+1, middle)
		offs = slices.Replace(offs, n, n+1, deviation(l, a, middle), deviation(l, middle, b))
	}
	off = math.Ceil((off+2*l.Accuracy(whole)+slack)*1e6) / 1e6
	steady := slope.Low > 0 && !math.IsInf(slope.High, 1) || slope.High < 0 && !math.IsInf(slope.Low, -1)
	if !(off <= mostOff && steady) {
		refuse("a linkage comes so near to its lock that straight pieces cannot follow it")
	}
	return &fourBar{knots: knots, off: ratOf(off), slopes: around(ratOf(wider(slope.Low, -1)), ratOf(wider(slope.High, +1)), knots)}
}

// around are bounds of the slope that hold those of the straight pieces too, so that the
// pieces themselves keep what is said of the linkage: a piece over a very short stretch,
// whose ends are rounded, may be steeper or flatter than the linkage ever is. Bounds keep
// their sign.
func around(low, high *big.Rat, knots []knot) [2]*big.Rat {
	for i := 1; i < len(knots); i++ {
		piece := steepness(knots[i-1], knots[i])
		switch {
		case piece.Sign() != low.Sign():
		case piece.Cmp(low) < 0:
			low = piece
		case piece.Cmp(high) > 0:
			high = piece
		}
	}
	return [2]*big.Rat{low, high}
}

// steepness is the slope of a straight piece, exactly, so that pieces meet at their knots.
// A piece of no length is level.
func steepness(a, b knot) *big.Rat {
	rise, run := new(big.Rat).Sub(ratOf(b.horn), ratOf(a.horn)), new(big.Rat).Sub(ratOf(b.arm), ratOf(a.arm))
	if run.Sign() == 0 {
		return run
	}
	return rise.Quo(rise, run)
}

func knotAt(l *linkage.Linkage, arm float64) knot {
	return knot{arm, math.Round(l.Swing(arm)*horns) / horns}
}

// slopeOf bounds the slope of a linkage over a stretch, by some pieces, which tells
// more than all of it at once.
func slopeOf(l *linkage.Linkage, whole interval.Range, pieces int) interval.Range {
	slope := interval.Range{Low: math.Inf(1), High: math.Inf(-1)}
	from := whole.Low
	for i := range pieces {
		to := whole.Low + (whole.High-whole.Low)*float64(i+1)/float64(pieces)
		if i == pieces-1 {
			to = whole.High
		}
		slope = slope.Hull(l.Slope(interval.Range{Low: from, High: to}))
		from = to
	}
	return slope
}

// wider is a slope moved outward to a short decimal that has its sign.
func wider(slope, side float64) float64 {
	unit := math.Pow(10, math.Floor(math.Log10(math.Abs(slope)))-6)
	return side * (math.Ceil(side*slope/unit) + 1) * unit
}

// deviation bounds how far a linkage goes from a straight piece: by its slope, or, as
// neither turns back, by all that the piece rises.
func deviation(l *linkage.Linkage, a, b knot) float64 {
	slope := slopeOf(l, interval.Range{Low: a.arm, High: b.arm}, 16)
	length, rise := b.arm-a.arm, math.Abs(b.horn-a.horn)
	c := (b.horn - a.horn) / length
	up, down := slope.High-c, c-slope.Low
	by := up * down / (up + down) * length
	switch {
	case math.IsInf(up, 1) || math.IsInf(down, 1) || math.IsNaN(by):
		return rise
	case up <= 0 || down <= 0: // straight, but for rounding
		return max(-up, -down, 0) * length
	}
	return min(by, rise)
}

// swung is the horn's swing in degrees at an arm swing.
func (s *script) swung(bar *fourBar, use barUse, name string) number {
	for _, u := range bar.uses {
		if u.arm.text == use.arm.text {
			return u.horn
		}
	}
	if bar.line == "" {
		s.writeLine(bar)
	}
	use.horn = s.unknown(name)
	near := exactly(bar.off)
	apart := number{text: fmt.Sprintf("(- %s (%s %s))", use.horn.text, bar.line, use.arm.text)}
	s.assert(truth{text: fmt.Sprintf("(<= %s %s %s)", negative(near).text, apart.text, near.text)})
	for _, u := range bar.uses {
		if s.pairs || u.part == use.part && u.drive == use.drive {
			s.keepSlope(bar, u, use)
		}
	}
	bar.uses = append(bar.uses, use)
	return use.horn
}

// keepSlope ties two swings of one linkage together: from one arm swing to another the
// horn keeps between the two slopes, and so never turns back.
func (s *script) keepSlope(bar *fourBar, from, to barUse) {
	arm := s.define(trimBars(to.horn.text)+" arm by", "", minus(to.arm, from.arm))
	horn := minus(to.horn, from.horn)
	least, most := scaled(arm, bar.slopes[0]), scaled(arm, bar.slopes[1])
	s.assert(truth{text: fmt.Sprintf("(ite (>= %s 0.0) (<= %s %s %s) (<= %s %s %s))",
		arm.text, least.text, horn.text, most.text, most.text, horn.text, least.text)})
}

func trimBars(symbol string) string { return symbol[1 : len(symbol)-1] }

// writeLine writes the straight pieces of a linkage.
func (s *script) writeLine(bar *fourBar) {
	g := &bar.geometry
	bar.line = s.symbol("linkage")
	remark(&s.body, "A linkage: swing of the horn for a swing of the arm, in degrees, plus aft. Arm %v mm,\n"+
		"horn %v mm, hinge %v mm aft and %v mm up; its horn is within %s degrees of\nthese %d straight pieces, and its slope between %s and %s.",
		g.Arm, g.Horn, g.Pivots, g.Offset, bar.off.FloatString(6), max(len(bar.knots)-1, 1), bar.slopes[0].FloatString(4), bar.slopes[1].FloatString(4))
	x := number{text: "arm"}
	last := len(bar.knots) - 1
	text := setting(bar.knots[last].horn).text
	for i := last - 1; i >= 0; i-- {
		a, b := bar.knots[i], bar.knots[i+1]
		line := sum(setting(a.horn), scaled(sum(x, setting(-a.arm)), steepness(a, b)))
		if i == last-1 {
			text = line.text
		} else {
			text = "(ite (< arm " + setting(b.arm).text + ") " + line.text + "\n  " + text + ")"
		}
	}
	fmt.Fprintf(&s.body, "(define-fun %s ((arm Real)) Real\n  %s)\n", bar.line, text)
}

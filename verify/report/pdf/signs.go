package pdf

import (
	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result/said"
)

// Signs are drawn: the fonts have none.

// sign is the sign of a verdict, in a square.
func sign(t said.Tone, size float64) piece {
	switch t {
	case said.Good:
		return goodTick(size)
	case said.Bad:
		return badCross(size)
	}
	return heed(size)
}

func goodTick(size float64) piece { return square(size, figure.Tick, figure.Good) }
func badCross(size float64) piece { return square(size, figure.Cross, figure.Bad) }
func heed(size float64) piece     { return square(size, figure.Warning, figure.Black) }
func tickBox(size float64) piece  { return square(size, figure.Box, figure.Black) }

// square is a symbol as a piece.
func square(size float64, symbol func(figure.Point, float64, figure.Ink) []figure.Item, ink figure.Ink) piece {
	d := &figure.Drawing{Width: size, Height: size, Items: symbol(figure.Point{X: size / 2, Y: size / 2}, size, ink)}
	return picture(d, size)
}

// signed is a piece with a sign left of its first line.
func (f *fonts) signed(mark func(size float64) piece, width float64, bits ...bit) piece {
	const gap = 1.2
	size := bits[0].as.size * 0.95
	var p piece
	m := mark(size)
	p.add(m, 0, (leading*bits[0].as.size-size)/2)
	p.add(f.text(width-size-gap, bits...), size+gap, 0)
	return p
}

// toned is a text with a sign where it wants a look or is bad.
func (f *fonts) toned(t said.Tone, width float64, bits ...bit) piece {
	switch t {
	case said.Bad:
		for i := range bits {
			bits[i].as.ink = figure.Bad
		}
		return f.signed(badCross, width, bits...)
	case said.Heed:
		return f.signed(heed, width, bits...)
	}
	return f.text(width, bits...)
}

// blank is a line to write on, with what is to be written under it or before it.
func (f *fonts) blank(width float64, label string) piece {
	const room = 7.0 // for handwriting
	p := piece{width: width, height: room}
	name := f.text(width, bit{label, quiet})
	start := 0.0
	if label != "" {
		start = f.width(f.plain(label, regular), regular, small) + 1.5
	}
	if start > width*0.6 {
		p.add(name, 0, 0)
		p.height = name.height + room
		start = 0
	} else {
		p.add(name, 0, room-name.height+0.4)
	}
	p.marks = append(p.marks, stroke{start, p.height - 0.5, width, p.height - 0.5, 0.2, figure.Whole, figure.Grey})
	return p
}

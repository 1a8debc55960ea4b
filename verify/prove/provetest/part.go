package provetest

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
)

func (m *maker) parts(most sizes) {
	for range m.between(1, most.parts) {
		m.s.Parts = append(m.s.Parts, m.part())
		if m.maybe() {
			m.s.Parts = append(m.s.Parts, m.other(&m.s.Parts[len(m.s.Parts)-1]))
		}
	}
	for i := range m.s.Parts {
		m.s.Parts[i].Name = m.name("part", i)
	}
}

func (m *maker) part() mixcore.Part {
	info := pick(m.drawing, mixcore.Kinds[:m.between(1, len(mixcore.Kinds))]...)
	p := mixcore.Part{Kind: info.Kind, Motion: info.Motion, Side: mixcore.Side(m.between(0, 2)),
		Stops: mixcore.Stops{Plus: mixcore.Degrees(math.Inf(1)), Minus: mixcore.Degrees(math.Inf(1))}}
	channel := m.between(0, len(m.s.Channels)-1)
	switch info.Motion {
	case mixcore.Power:
		p.Motor = &mixcore.Motor{Idle: 1000, Full: 2000, StoppedBelow: mixcore.Percent(m.setting(0, 10))}
		if m.maybe() {
			p.Motor.Idle, p.Motor.Full = mixcore.Microseconds(m.setting(900, 1200)), mixcore.Microseconds(m.setting(1800, 2100))
		}
		p.Drives = []mixcore.Drive{{Channel: channel}}
	case mixcore.OutIn:
		p.PlusIn = m.maybe()
		p.Drives = []mixcore.Drive{{Channel: channel}}
	default:
		p.Drives = append(p.Drives, m.drive(channel))
		for range m.some(0, 2) {
			p.Drives = append(p.Drives, m.drive(m.between(0, len(m.s.Channels)-1)))
		}
		if m.one(3) {
			p.Stops.Plus = mixcore.Degrees(m.setting(0, 60))
		}
		if m.one(3) {
			p.Stops.Minus = mixcore.Degrees(m.setting(0, 60))
		}
	}
	if m.one(3) {
		p.Place.Aft, p.Place.AftSaid = mixcore.Millimetres(m.setting(-500, 800)), true
		p.Place.Up, p.Place.UpSaid = mixcore.Millimetres(m.setting(-100, 100)), true
	}
	return p
}

// other is a part like another, on the next channel or the same, on the other side.
func (m *maker) other(p *mixcore.Part) mixcore.Part {
	q := *p
	q.Side = map[mixcore.Side]mixcore.Side{mixcore.Port: mixcore.Starboard, mixcore.Starboard: mixcore.Port}[p.Side]
	q.Drives = append([]mixcore.Drive(nil), p.Drives...)
	way := m.between(0, 3)
	for i := range q.Drives {
		d := &q.Drives[i]
		if next := d.Channel + 1; next < len(m.s.Channels) && m.suits(d, next) {
			d.Channel = next
		}
		switch {
		case way == 0:
		case d.Linkage != nil && way < 3:
			d.Servo.PlusAft = !d.Servo.PlusAft
			if way == 2 {
				d.Sign = -d.Sign
			}
			if !m.suits(d, d.Channel) {
				d.Servo.PlusAft = !d.Servo.PlusAft
			}
		case d.Linkage != nil:
			d.Sign = -d.Sign
		case d.Table != nil:
			d.Table = m.turned(d.Table)
		}
	}
	if m.one(4) {
		q.Stops.Plus, q.Stops.Minus = p.Stops.Minus, p.Stops.Plus
	}
	if m.one(3) {
		m.alter(&q.Drives[m.between(0, len(q.Drives)-1)])
	}
	return q
}

// alter makes a drive a little other than it was, if its channel allows.
func (m *maker) alter(d *mixcore.Drive) {
	was := *d
	switch {
	case d.Table != nil:
		d.Table = slices.Clone(d.Table)
		end := &d.Table[len(d.Table)-1]
		end.Y += math.Copysign(0.5, end.Y-d.Table[0].Y)
	case d.Linkage != nil:
		g := *d.Linkage
		switch m.between(0, 3) {
		case 0:
			g.Arm += 0.1
		case 1:
			g.HornDeg += 0.5
		case 2:
			d.Servo.Swing = min(d.Servo.Swing+0.5, 90)
		case 3:
			d.Servo.Max = max(min(d.Servo.Max, 60)-0.5, 1)
		}
		d.Linkage = &g
	}
	if !m.suits(d, d.Channel) {
		*d = was
	}
}

func (m *maker) turned(table []mixcore.Point) []mixcore.Point {
	out := make([]mixcore.Point, len(table))
	sign := pick(m.drawing, 1.0, -1)
	for i, at := range table {
		out[len(table)-1-i] = mixcore.Point{X: -at.X, Y: sign * at.Y}
	}
	return out
}

// suits says whether a drive can take all that a channel puts out.
func (m *maker) suits(d *mixcore.Drive, channel int) bool {
	if d.Linkage == nil && d.Table == nil {
		return true
	}
	s := mixcore.Setup{Channels: []mixcore.Channel{m.s.Channels[channel]}}
	s.Channels[0].Mix = nil
	one := *d
	one.Channel = 0
	s.Parts = []mixcore.Part{{Motion: mixcore.UpDown, Drives: []mixcore.Drive{one}}}
	_, faults := mixcore.Compile(s)
	return faults == nil
}

func (m *maker) drive(channel int) mixcore.Drive {
	if m.maybe() {
		return mixcore.Drive{Channel: channel, Table: m.table()}
	}
	for range 3 {
		d := mixcore.Drive{Channel: channel, Sign: pick(m.drawing, 1.0, -1), Servo: mixcore.Servo{
			Swing: mixcore.Degrees(m.setting(10, 90)), Max: mixcore.Degrees(math.Inf(1)), PlusAft: m.maybe()}}
		if m.one(3) {
			d.Servo.Max = mixcore.Degrees(m.setting(1, 180))
		}
		if m.one(6) {
			d.Servo.SecondsPer60Deg = mixcore.Seconds(m.setting(0, 1))
		}
		g := m.geometry()
		l, err := linkage.New(g)
		if err != nil {
			continue
		}
		d.Linkage = &g
		if m.suits(&d, channel) {
			return d
		}
		// Hold the servo back just before the linkage ends.
		fore, aft := l.Range()
		room := min(math.Abs(fore.Swing), math.Abs(aft.Swing))
		d.Servo.Max = mixcore.Degrees(math.Floor(room*pick(m.drawing, 0.9, 0.99, 0.999, 1)*1000-1) / 1000)
		if d.Servo.Max >= 1 && m.suits(&d, channel) {
			return d
		}
	}
	return mixcore.Drive{Channel: channel, Table: m.table()}
}

func (m *maker) geometry() linkage.Geometry {
	g := linkage.Geometry{Arm: m.setting(5, 20), Horn: m.setting(8, 30), Pivots: m.setting(20, 200), ArmDeg: 90, HornDeg: 90}
	if m.maybe() {
		g.ArmDeg, g.HornDeg = m.setting(40, 140), m.setting(40, 140)
	}
	if m.one(3) {
		g.Offset = m.setting(-15, 15)
	}
	g.Crossed = m.one(4)
	if m.one(4) {
		g.Pushrod = m.setting(max(g.Pivots-g.Horn, 1), g.Pivots+g.Arm)
	}
	return g
}

// table rises or falls over all that a channel can put out, with flat pieces.
func (m *maker) table() []mixcore.Point {
	pieces := m.between(1, 5)
	sign := pick(m.drawing, 1.0, -1)
	list := make([]mixcore.Point, 0, pieces+1)
	y := -m.setting(0, 60)
	for i := range pieces + 1 {
		x := -200 + 400*float64(i)/float64(pieces)
		if i > 0 {
			if !m.one(4) {
				y += m.setting(0, 40)
			}
			if i < pieces {
				x = m.setting(x-30, x+30)
			}
		}
		list = append(list, mixcore.Point{X: x, Y: sign * math.Round(y*1000) / 1000})
	}
	return list
}

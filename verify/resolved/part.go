package resolved

import (
	"math"
	"strconv"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

var (
	sideNames   = map[mixcore.Side]string{mixcore.Centre: "centre", mixcore.Port: "port", mixcore.Starboard: "starboard"}
	motionNames = map[mixcore.Motion]string{mixcore.UpDown: "up and down", mixcore.LeftRight: "left and right", mixcore.Power: "power", mixcore.OutIn: "out and in"}
)

func (b *builder) part(i int) *node {
	p := &b.s.Parts[i]
	n := &node{key: "parts/" + airframes.FoldPart(p.Name), title: p.Name, sort: "part", place: where.Part(b.m, i), bears: b.bears.part(i)}
	n.set(word("kind", "kind", string(p.Kind)), where.Part(b.m, i, "kind"))
	n.set(word("side", "side", sideNames[p.Side]), where.Part(b.m, i, "side"))
	n.set(word("motion", "moves", motionNames[p.Motion]), where.Part(b.m, i, "kind"))
	if i < len(b.m.PartAka) {
		n.set(aka(b.m.PartAka[i], airframes.FoldPart), where.Part(b.m, i, "aka"))
	}
	stop := func(key string, plus bool, at mixcore.Degrees) {
		n.set(number("stops/"+key, "stop "+wording.Direction(p.Motion, plus), float64(at), "°"), where.Part(b.m, i, "stops"))
	}
	stop("plus", true, p.Stops.Plus)
	stop("minus", false, p.Stops.Minus)
	n.set(length("chord", "chord", p.Chord, "not said"), where.Part(b.m, i, "chord_mm"))
	span := length("span", "span", p.Span[1])
	span.Value = exact(float64(p.Span[0])) + " to " + span.Value
	span.words = wording.SetLength(p.Span[0]) + " to " + span.words
	n.set(maybe(span, p.Span != [2]mixcore.Millimetres{}), where.Part(b.m, i, "span_mm"))
	b.placement(n, i)
	if p.Motion == mixcore.OutIn || p.PlusIn {
		plus := "out"
		if p.PlusIn {
			plus = "in"
		}
		n.set(word("plus moves", "plus moves it", plus), where.Part(b.m, i, "plus_moves"))
	}
	b.motor(n, i)
	l := n.list("servos")
	for k := range p.Drives {
		b.drive(n, l, i, k)
	}
	return n
}

func (b *builder) placement(n *node, i int) {
	at := &b.s.Parts[i].Place
	n.set(maybe(length("place/out", "place out from the centre line", at.Out), at.OutSaid), where.Part(b.m, i, "out_mm"))
	n.set(maybe(length("place/aft", "place aft of the balance point", at.Aft), at.AftSaid), where.Part(b.m, i, "aft_mm"))
	n.set(maybe(length("place/up", "place above the balance point", at.Up), at.UpSaid), where.Part(b.m, i, "up_mm"))
	n.set(maybe(number("place/tilt", "tilt", float64(at.Tilt), "°"), at.TiltSaid), where.Part(b.m, i, "tilt_deg"))
}

func (b *builder) motor(n *node, i int) {
	m := b.s.Parts[i].Motor
	if m == nil {
		return
	}
	n.set(number("motor/idle", "idle pulse", float64(m.Idle), " µs"), where.Part(b.m, i, "idle_us"))
	n.set(number("motor/full", "full pulse", float64(m.Full), " µs"), where.Part(b.m, i, "full_us"))
	n.set(percent("motor/stopped below", "stands still up to", m.StoppedBelow), where.Part(b.m, i, "stopped_below"))
	promise := when("motor/stopped when", "is to be stopped", b.s, m.StoppedWhen)
	if m.StoppedWhen == nil {
		promise = word(promise.Path, promise.name, "not said")
	}
	n.set(promise, where.Part(b.m, i, "stopped_when"))
}

// drive adds one servo with what joins it to its part.
func (b *builder) drive(n *node, l *list, i, k int) {
	p := &b.s.Parts[i]
	d := &p.Drives[k]
	item := l.item(n, strconv.Itoa(b.s.Channels[d.Channel].Number), "servo")
	item.place, item.says = where.Drive(b.m, i, k), "on "+channelTitle(&b.s.Channels[d.Channel])
	what := ""
	if len(p.Drives) > 1 {
		what = "servo " + strconv.Itoa(k+1) + ": "
		item.title = n.title + ", servo " + strconv.Itoa(k+1)
	}
	set := func(s Setting, fields ...string) {
		if s.name != "" {
			s.name = what + s.name
		}
		item.set(s, where.Drive(b.m, i, k, fields...))
	}
	set(named("channel", "channel", strconv.Itoa(b.s.Channels[d.Channel].Number), strconv.Itoa(b.s.Channels[d.Channel].Number)), "channel")
	set(number("swing", "servo's swing for 100 %", float64(d.Servo.Swing), "°"), "servo.swing_deg", "servo")
	set(number("most swing", "servo's largest swing", float64(d.Servo.Max), "°"), "servo.max_deg", "servo")
	way := "fore"
	if d.Servo.PlusAft {
		way = "aft"
	}
	set(word("plus swings", "plus swings the servo", way), "servo.plus_swings", "servo")
	set(number("speed", "servo's time for 60°", float64(d.Servo.SecondsPer60Deg), " s", "not said"), "servo.seconds_per_60deg", "servo")
	set(number("torque", "servo's torque", d.Servo.TorqueNcm, " N·cm", "not said"), "servo.torque_ncm", "servo")
	b.joint(item, i, k, set)
}

// joint adds a linkage or a measured table.
func (b *builder) joint(n *node, i, k int, set func(Setting, ...string)) {
	p := &b.s.Parts[i]
	d := &p.Drives[k]
	if d.Table != nil {
		t := n.child("measured", n.title, "measured table")
		t.place = where.Drive(b.m, i, k, "measured")
		b.points(t, d.Table, "measured", func(y float64) (string, string) { return angle(p.Motion, y) })
	}
	g := d.Linkage
	if g == nil {
		return
	}
	t := n.child("linkage", n.title, "linkage")
	t.place = where.Drive(b.m, i, k, "linkage")
	put := func(s Setting, fields ...string) {
		for f := range fields {
			fields[f] = "linkage." + fields[f]
		}
		t.set(s, where.Drive(b.m, i, k, append(fields, "linkage")...))
	}
	side := hornSide(p, d.Sign)
	put(Setting{Path: "horn side", Value: exact(d.Sign), name: "horn", words: side}, "horn")
	put(length("arm", "arm", mixcore.Millimetres(g.Arm)), "arm_mm")
	put(length("horn", "horn", mixcore.Millimetres(g.Horn)), "horn_mm")
	put(length("pivots", "distance of the pivots", mixcore.Millimetres(g.Pivots)), "pivots_mm")
	put(length("offset", "offset of the hinge line towards the horn", mixcore.Millimetres(g.Offset)), "offset_mm")
	put(length("pushrod", "pushrod", mixcore.Millimetres(g.Pushrod), "as neutral needs it"), "pushrod_mm")
	put(number("arm angle", "arm at neutral", g.ArmDeg, "°"), "arm_deg")
	put(number("horn angle", "horn at neutral", g.HornDeg, "°"), "horn_deg")
	across := "on the horn's side"
	if g.Crossed {
		across = "on the other side than the horn"
	}
	put(Setting{Path: "crossed", Value: strconv.FormatBool(g.Crossed), name: "arm", words: across}, "arm")
}

// hornSide is the side of its hinge that a part's horn stands on, from the sign of the
// way in which it moves when its horn swings aft.
func hornSide(p *mixcore.Part, sign float64) string {
	if p.Kind == "nose wheel" { // its horn turns the rolling model the other way
		sign = -sign
	}
	switch {
	case p.Motion == mixcore.UpDown && sign > 0:
		return "above"
	case p.Motion == mixcore.UpDown:
		return "below"
	case sign > 0:
		return "to starboard"
	}
	return "to port"
}

// angle is a measured angle with its direction.
func angle(m mixcore.Motion, y float64) (words, unit string) {
	if y == 0 {
		return "neutral", ""
	}
	return wording.Direction(m, y > 0) + " " + exact(math.Abs(y)), "°"
}

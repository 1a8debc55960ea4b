package airframes

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"example.com/hingeline/mixcore"
)

// hinge is in which words a hinged part moves, and what its linkage does to
// it.
type hinge struct {
	plus, minus   string  // directions, the plus one first
	horn, hornOff string  // sides that the horn may stand on; offsets count towards the first
	sign          float64 // of the part's angle when a horn on the first side swings aft
}

// The hinges. A horn above an elevator that swings aft pushes the trailing edge
// down; one to starboard of a rudder, to port. A horn to starboard of a nose
// wheel that swings aft turns the wheel, and so the rolling model, right; a
// tail wheel that turns so swings the tail right and the model left.
var (
	upDownHinge    = hinge{"down", "up", "above", "below", +1}
	rudderHinge    = hinge{"left", "right", "starboard", "port", +1}
	noseWheelHinge = hinge{"left", "right", "starboard", "port", -1}
	tailWheelHinge = hinge{"left", "right", "starboard", "port", +1}
)

// The longest chord of a surface, in millimetres.
const longestChord = 2000

func (r *reader) readSurface(e entry, index int) {
	f, ok := r.partFields(e, index, "surface", "kind", "side", "channel", "servo", "linkage", "measured",
		"servos", "chord_mm", "span_mm", "aft_mm", "up_mm", "tilt_deg", "stops", "aka")
	if !ok {
		return
	}
	part := &r.setup.Parts[index]
	r.readKind(&f, e, index, kindsOf(mixcore.UpDown, mixcore.LeftRight))
	sided := r.readSide(&f, e, index)
	h := upDownHinge
	if part.Motion == mixcore.LeftRight || part.Motion == 0 && speaksOf(e.value, rudderHinge) {
		h = rudderHinge
	}
	r.readStops(&f, &h, part)
	r.readDrives(&f, &h, index)
	if chord, ok := r.number(f.get("chord_mm"), "chord_mm of "+f.what, inLength, 1, longestChord); ok {
		part.Chord = mixcore.Millimetres(chord)
	}
	r.readSpan(&f, part)
	r.readPlacement(&f, part, sided)
	r.checkOnWing(&f, part)
}

// speaksOf says whether the words of a hinge stand somewhere below a node: of a
// surface whose kind is not known, that is how it most likely moves.
func speaksOf(n *yaml.Node, h hinge) bool {
	if n.Kind == yaml.ScalarNode {
		for _, word := range strings.Fields(n.Value) {
			if word == h.plus || word == h.minus {
				return true
			}
		}
	}
	return slices.ContainsFunc(n.Content, func(inner *yaml.Node) bool { return speaksOf(inner, h) })
}

func (r *reader) readSpan(f *fields, part *mixcore.Part) {
	n := f.get("span_mm")
	if r.tornSpan(n) {
		return
	}
	items := r.items(n, "span_mm of "+f.what, "from and to, such as [140, 470]", 2)
	if len(items) == 0 {
		return
	}
	if len(items) != 2 {
		r.fail(r.place(n), codeOutOfRange, "write [140, 470]", "span_mm of %s is 1 number, want from and to", f.what)
		return
	}
	from, fromOK := r.number(items[0], "span_mm of "+f.what, inLength, 0, furthestOut)
	to, toOK := r.number(items[1], "span_mm of "+f.what, inLength, 0, furthestOut)
	if !fromOK || !toOK {
		return
	}
	if from >= to {
		r.fail(r.place(items[0]), codeOutOfRange, "the end nearer to the model's centre line comes first", "span_mm of %s goes from %s to %s, want it outwards", f.what, inLength.show(from), inLength.show(to))
		return
	}
	part.Span = [2]mixcore.Millimetres{mixcore.Millimetres(from), mixcore.Millimetres(to)}
}

// tornSpan reports decimal commas in a span: those of [140,470] part two
// numbers, one of [140,5, 470] does not.
func (r *reader) tornSpan(n *yaml.Node) bool {
	if n == nil || n.Kind != yaml.SequenceNode || len(n.Content) == 2 {
		return false
	}
	found := false
	for i := 1; i < len(n.Content); i++ {
		if r.torn(n.Content[i-1], n.Content[i]) {
			r.tornNumber(n.Content[i-1], n.Content[i])
			found = true
			i++
		}
	}
	return found
}

// widestAngle is the largest angle, in degrees, of a stop or measured point.
const widestAngle = 120

// readStops reads where a part can go no further.
func (r *reader) readStops(of *fields, h *hinge, part *mixcore.Part) {
	n := of.get("stops")
	if n == nil {
		return
	}
	f, ok := r.fields(n, of.placeOf("stops"), of.pathOf("stops"), "stops of "+of.what, h.minus, h.plus)
	if !ok {
		return
	}
	if plus, ok := r.number(f.get(h.plus), h.plus+" stop of "+of.what, inDegrees, 0, widestAngle); ok {
		part.Stops.Plus = mixcore.Degrees(plus)
	}
	if minus, ok := r.number(f.get(h.minus), h.minus+" stop of "+of.what, inDegrees, 0, widestAngle); ok {
		part.Stops.Minus = mixcore.Degrees(minus)
	}
}

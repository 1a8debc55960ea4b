package airframes

import (
	"fmt"
	"math"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

// The smallest and largest sizes of a wing, in millimetres.
const (
	smallestWing = 1
	largestWing  = 20000
)

// readWing reads the wing's measures; they are of use only all together.
func (r *reader) readWing(of *fields) {
	n := of.get("wing")
	if n == nil {
		return
	}
	f, ok := r.fields(n, of.placeOf("wing"), of.pathOf("wing"), "wing", "span_mm", "root_chord_mm", "tip_chord_mm")
	if !ok {
		return
	}
	sizes := map[string]mixcore.Millimetres{}
	for _, key := range f.allowed {
		size, ok := r.number(f.require(key, "measure the wing flat: span_mm tip to tip, root_chord_mm and tip_chord_mm"), key+" of wing", inLength, smallestWing, largestWing)
		if ok {
			sizes[key] = mixcore.Millimetres(size)
		}
	}
	if len(sizes) == len(f.allowed) {
		r.setup.Wing = &mixcore.Wing{Span: sizes["span_mm"], RootChord: sizes["root_chord_mm"], TipChord: sizes["tip_chord_mm"]}
	}
}

// checkOnWing reports a surface of the wing that is larger than the wing: wider
// than its half, or longer than its chord in the middle of the surface; where
// the surface's span is not known, than its longest chord.
func (r *reader) checkOnWing(f *fields, part *mixcore.Part) {
	info, _ := part.Kind.Info()
	if r.setup.Wing == nil || !info.Wing {
		return
	}
	wing := effect.Wing{Span: float64(r.setup.Wing.Span), RootChord: float64(r.setup.Wing.RootChord), TipChord: float64(r.setup.Wing.TipChord)}
	if outer := float64(part.Span[1]); outer > wing.Span/2 {
		r.fail(f.placeOf("span_mm"), codeOutOfRange, "span_mm of a surface counts from the centre line, that of the wing from tip to tip",
			"%s reaches out to %s, want at most half the wing's span, %s", f.what, inLength.show(outer), inLength.show(wing.Span/2))
		return
	}
	chord, where := math.Max(wing.RootChord, wing.TipChord), ""
	if part.Span[1] > 0 {
		middle := float64(part.Span[0]+part.Span[1]) / 2
		chord = Thousandths(wing.ChordAt(middle))
		where = fmt.Sprintf(" %s out", inLength.show(middle))
	}
	if float64(part.Chord) > chord {
		r.fail(f.placeOf("chord_mm"), codeOutOfRange, "chord_mm of a surface counts from its hinge line to its trailing edge",
			"chord_mm of %s is %s, want at most the wing's chord%s, %s", f.what, inLength.show(float64(part.Chord)), where, inLength.show(chord))
	}
}

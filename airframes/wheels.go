package airframes

import (
	"slices"
	"strings"

	"example.com/hingeline/mixcore"
)

func (r *reader) readWheel(e entry, index int) {
	f, ok := r.partFields(e, index, "wheel", "place", "side", "channel", "servo", "linkage", "measured", "servos", "stops", "aka")
	if !ok {
		return
	}
	at := "nose"
	if slices.Contains(strings.Fields(FoldName(e.name)), "tail") {
		at = "tail"
	}
	if said, ok := r.word(f.get("place"), "place of "+f.what, "nose", "tail"); ok {
		at = said
	}
	h := noseWheelHinge
	if at == "tail" {
		h = tailWheelHinge
	}
	r.setKind(index, mixcore.Kind(at+" wheel"))
	r.readSide(&f, e, index)
	r.readStops(&f, &h, &r.setup.Parts[index])
	r.readDrives(&f, &h, index)
}

package airframes

import "example.com/hingeline/mixcore"

func (r *reader) readExtra(e entry, index int) {
	r.setup.Parts[index].Motion = mixcore.OutIn
	f, ok := r.partFields(e, index, "extra", "kind", "side", "channel", "plus_moves", "out_mm", "aft_mm", "up_mm", "aka")
	if !ok {
		return
	}
	r.readKind(&f, e, index, kindsOf(mixcore.OutIn))
	r.readPlacement(&f, &r.setup.Parts[index], r.readSide(&f, e, index))
	r.plainDrive(&f, index)
	if way, ok := r.word(f.get("plus_moves"), "plus_moves of "+f.what, "out", "in"); ok {
		r.setup.Parts[index].PlusIn = way == "in"
	}
}

package result

// Shown is what every part of a model does at one position of the controls.
type Shown struct {
	Tool  string
	Model Model
	From  []string // the position that the controls left, where time counts; else empty
	Pose  []string // how the controls stand: only those that do not rest
	After string   // how long ago they moved, "2 s"; empty once everything has come to rest
	Parts []ShownPart

	Effect *Effect // what it does to the aeroplane; nil if only some parts were asked for
}

// ShownPart is one part.
type ShownPart struct {
	Stage    Stage
	Name     string
	Position string   // in words: "trailing edge UP 14.2° (11 mm)"
	Limits   []string // that bit on the way to the part, with what was asked and what came out
	Chain    []Step   // why: from the control to the part
}

package mixcore

// KindInfo is what the trade's name of a part says about it.
type KindInfo struct {
	Kind   Kind
	Motion Motion
	Tail   bool // at the tail, for the walk-around
}

// Kinds are the kinds of part, in the order they are listed to people: hinged
// surfaces, wheels, motors, extras.
var Kinds = []KindInfo{
	{"aileron", UpDown, false},
	{"flap", UpDown, false},
	{"flaperon", UpDown, false},
	{"elevator", UpDown, true},
	{"elevon", UpDown, false},
	{"taileron", UpDown, true},
	{"rudder", LeftRight, true},
	{"v-tail", UpDown, true},
	{"canard", UpDown, false},
	{"spoiler", UpDown, false},
	{"airbrake", UpDown, false},
	{"nose wheel", LeftRight, true},
	{"tail wheel", LeftRight, true},
	{"motor", Power, false},
	{"retract", OutIn, false},
	{"hook", OutIn, false},
	{"door", OutIn, false},
	{"brake", OutIn, false},
	{"release", OutIn, false},
	{"other", OutIn, false},
}

// Info finds a kind among Kinds.
func (k Kind) Info() (KindInfo, bool) {
	for _, info := range Kinds {
		if info.Kind == k {
			return info, true
		}
	}
	return KindInfo{}, false
}

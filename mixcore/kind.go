package mixcore

// KindInfo is what the trade's name of a part says about it.
type KindInfo struct {
	Kind   Kind
	Motion Motion
	Tail   bool // at the tail, for the walk-around
	Wing   bool // part of the wing
}

// Kinds are the kinds of part, in the order they are listed to people: hinged
// surfaces, wheels, motors, extras.
var Kinds = []KindInfo{
	{Kind: "aileron", Motion: UpDown, Wing: true},
	{Kind: "flap", Motion: UpDown, Wing: true},
	{Kind: "flaperon", Motion: UpDown, Wing: true},
	{Kind: "elevator", Motion: UpDown, Tail: true},
	{Kind: "elevon", Motion: UpDown, Wing: true},
	{Kind: "taileron", Motion: UpDown, Tail: true},
	{Kind: "rudder", Motion: LeftRight, Tail: true},
	{Kind: "v-tail", Motion: UpDown, Tail: true},
	{Kind: "canard", Motion: UpDown},
	{Kind: "spoiler", Motion: UpDown, Wing: true},
	{Kind: "airbrake", Motion: UpDown, Wing: true},
	{Kind: "nose wheel", Motion: LeftRight, Tail: true},
	{Kind: "tail wheel", Motion: LeftRight, Tail: true},
	{Kind: "motor", Motion: Power},
	{Kind: "retract", Motion: OutIn},
	{Kind: "hook", Motion: OutIn},
	{Kind: "door", Motion: OutIn},
	{Kind: "brake", Motion: OutIn},
	{Kind: "release", Motion: OutIn},
	{Kind: "drag rudder", Motion: OutIn, Wing: true},
	{Kind: "other", Motion: OutIn},
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

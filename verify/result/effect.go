package result

// Effect is what a position of the controls does to the aeroplane, against
// everything at rest. Every number in it is an estimate.
type Effect struct {
	Turns   []Turn   // about roll, pitch and yaw, in this order
	Speed   float64  // metres a second that rates and loads are for; 0 if none is known
	Roll    *Rolling // nil where it cannot be told
	Loads   []Load   // of the servos that hold a surface off neutral; none without a speed
	Missing []string // what must be said for more: "wing: {span_mm, root_chord_mm, tip_chord_mm} in the airframe file"
	Worth   []string // what the numbers are and how far they may be off, each a sentence
}

// Turn is which way the aeroplane turns about one axis.
type Turn struct {
	Axis string // "roll", "pitch" or "yaw"
	Way  string // "LEFT", "RIGHT", "UP" or "DOWN"; empty if it does not turn, or nobody can tell
	Sure bool   // false: it may turn either way, or not
	Text string // "rolls RIGHT"
}

// Rolling is the steady roll that the surfaces of the wing give.
type Rolling struct {
	Way    string  // "LEFT" or "RIGHT"; empty for none
	Helix  float64 // pb/2V in radians, never negative
	Rate   float64 // degrees a second at Effect.Speed, never negative; 0 without a speed
	Text   string  // "pb/2V 0.083, 143° a second at 16 m/s"
	Shares []Share // by kind of surface, beside the one that does most
	Lost   float64 // percent of the roll that stops take away; 0 for none
	Stops  string  // the same in words; empty for none
}

// Share is what one kind of surface adds to the roll of another.
type Share struct {
	Kind    string  // "flap"
	Of      string  // "aileron"
	Percent float64 // negative: it takes away
	Text    string  // "the flaps add 41 % to the roll of the ailerons"
}

// Load is what one servo must hold against the air, in newton centimetres.
type Load struct {
	Servo     string // "port flap servo"
	Low, High float64
	Has       float64 // torque of the servo; 0 if the airframe file does not say
	Stalls    bool    // its surface is driven against a stop, where it needs all the torque it has
	Text      string
}

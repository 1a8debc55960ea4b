package mixcore

// Trace is one evaluation with every intermediate value, for explaining a
// result from the stick to the trailing edge. Slices run parallel to those of
// the Setup.
type Trace struct {
	Input    Input
	Phases   []float64 // weight of each phase, 0…1
	Demands  []DemandTrace
	Channels []ChannelTrace
	Parts    []PartTrace
	Output   Output
}

// DemandTrace is stage 2 of the chain, each value after the step named.
type DemandTrace struct {
	Position                          float64 // of the control: percent or switch index
	X                                 Percent // the position, or the value given to the switch position
	Rate                              int     // index of the rate in force; while rates blend, the heaviest
	Blended                           bool    // more than one rate has weight
	Expo                              Percent // setting of that rate
	AfterExpo, AfterCurve, AfterThrow Percent
	Throw                             Percent // the throw of that rate on the side in use
	Trim                              Percent // what the trim adds
	Value                             Percent
}

// ChannelTrace is stages 3 and 4.
type ChannelTrace struct {
	Lines    []LineTrace
	Sum      Percent
	Limited  Percent      // after the travel limit (and the slowing, when time runs)
	Reversed Percent      // after reverse
	Ended    Percent      // after end points
	Trimmed  Percent      // after sub-trim
	Wanted   Microseconds // before the pulse limits
	Pulse    Microseconds
	Output   Percent
	Failsafe bool // the signal is lost and the failsafe value is in force
	Limits   Limit
}

// LineTrace is one line of the mix.
type LineTrace struct {
	Weight float64 // 0: the line did nothing
	Share  Percent // of Add: the share on the side in use
	Demand Percent // of Add and ScaleBy
	Change Percent // what the line did to the sum
	Sum    Percent // after the line
}

// PartTrace is stages 5 to 7.
type PartTrace struct {
	Drives []DriveTrace
	Wanted float64 // degrees or percent before stops or ends
	Spread Degrees // between the servos that ask for most and least
	PartOutput
}

// DriveTrace is one servo and its linkage.
type DriveTrace struct {
	Output Percent // of its channel, as it reaches the servo
	Wanted Degrees // arm swing asked for, plus aft; 0 for a measured table
	Swing  Degrees // arm swing
	Angle  Degrees // what it asks of the part
	Limits Limit
}

// Trace is Eval with every intermediate value.
func (p *Plan) Trace(in *Input) *Trace {
	t := p.newTrace(in)
	p.compute(in, nil, &t.Output, t)
	copy(t.Phases, t.Output.phases)
	return t
}

// TraceAfter is EvalAfter with every intermediate value.
func (p *Plan) TraceAfter(from, to *Input, after Seconds) *Trace {
	t := p.newTrace(to)
	p.compute(to, p.follow(from, to, after, &t.Output), &t.Output, t)
	copy(t.Phases, t.Output.phases)
	return t
}

func (p *Plan) newTrace(in *Input) *Trace {
	t := &Trace{
		Input:    in.Clone(),
		Phases:   make([]float64, len(p.phases)),
		Demands:  make([]DemandTrace, len(p.demands)),
		Channels: make([]ChannelTrace, len(p.lines)),
		Parts:    make([]PartTrace, len(p.parts)),
		Output:   *p.NewOutput(),
	}
	for i := range t.Channels {
		t.Channels[i].Lines = make([]LineTrace, len(p.lines[i]))
	}
	for i := range t.Parts {
		t.Parts[i].Drives = make([]DriveTrace, len(p.parts[i].drives))
	}
	return t
}

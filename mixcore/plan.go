package mixcore

import (
	"encoding/binary"
	"fmt"
	"math"
)

// Plan is a compiled Setup: what every other part of Hingeline calls. It never
// changes after Compile and is safe for concurrent use.
type Plan struct {
	setup      *Setup
	conditions []condition
	known      map[string]int // index into conditions by what one says; for compiling only
	phases     []condition
	demands    []demand
	lines      [][]line // by channel
	parts      []part
	drives     int // of all parts together
}

// Input is where every control stands.
type Input struct {
	Position   []float64 // one for each control: percent, or the index of a switch position
	SignalLost bool
}

// Output is what every channel and part does. Make one with Plan.NewOutput and
// use it again and again, but not from two goroutines at once.
type Output struct {
	Demands  []Percent
	Channels []ChannelOutput
	Parts    []PartOutput

	phases, weights []float64 // of phases and conditions
}

// ChannelOutput is one channel.
type ChannelOutput struct {
	Sum    Percent // the mix, before any limit
	Output Percent // what leaves the channel: (Pulse − 1500)/5
	Pulse  Microseconds
	Limits Limit
}

// PartOutput is one part.
type PartOutput struct {
	Angle  Degrees     // of UpDown and LeftRight, else 0; see the sign convention
	Travel Millimetres // trailing-edge travel from neutral, without sign; 0 if no chord is given
	Amount Percent     // of Power and OutIn, else 0
	Limits Limit
}

// Place is where the part stands: degrees of a hinged part, with their sign, and percent
// of any other.
func (o *PartOutput) Place() float64 {
	return float64(o.Angle) + float64(o.Amount) // one of the two is 0
}

// Setup is what the plan was compiled from. It must not be changed.
func (p *Plan) Setup() *Setup { return p.setup }

// Rest is an Input with every control at rest.
func (p *Plan) Rest() Input {
	in := Input{Position: make([]float64, len(p.setup.Controls))}
	for i := range p.setup.Controls {
		in.Position[i] = p.setup.Controls[i].Rest()
	}
	return in
}

// Clone is a copy that shares nothing.
func (in Input) Clone() Input {
	in.Position = append([]float64(nil), in.Position...)
	return in
}

// CheckInput says what is wrong with an Input, or nil. Eval needs one that is
// right: every control there, each inside its range, switches at a whole
// number.
func (p *Plan) CheckInput(in *Input) error {
	if got, want := len(in.Position), len(p.setup.Controls); got != want {
		return fmt.Errorf("positions of %d controls, want %d", got, want)
	}
	for i := range in.Position {
		if err := p.setup.Controls[i].check(in.Position[i]); err != nil {
			return err
		}
	}
	return nil
}

// NewOutput makes an Output of the right size for Eval.
func (p *Plan) NewOutput() *Output {
	return &Output{
		Demands:  make([]Percent, len(p.demands)),
		Channels: make([]ChannelOutput, len(p.lines)),
		Parts:    make([]PartOutput, len(p.parts)),
		phases:   make([]float64, len(p.phases)),
		weights:  make([]float64, len(p.conditions)),
	}
}

// Eval computes what every channel and part does once everything has come to
// rest with the controls at in. It allocates nothing and changes only out.
func (p *Plan) Eval(in *Input, out *Output) { p.compute(in, nil, out, nil) }

// Holds says whether a condition of the plan's setup is true with the controls
// at in and everything at rest.
func (p *Plan) Holds(c *Condition, in *Input) bool {
	phases := make([]float64, len(p.phases))
	p.phaseWeights(in.Position, phases)
	compiled := compileCondition(c)
	return compiled.weight(in.Position, phases) == 1
}

func (p *Plan) phaseWeights(position, phases []float64) {
	for i := range p.phases {
		phases[i] = p.phases[i].weight(position, phases)
	}
}

// compute is the chain, once through. under gives the state of what takes time;
// nil where everything has come to rest. trace may be nil.
func (p *Plan) compute(in *Input, under *underWay, out *Output, trace *Trace) {
	if under == nil {
		p.phaseWeights(in.Position, out.phases)
	} else {
		copy(out.phases, under.phases)
	}
	p.mixAll(in.Position, out, trace)
	for i := range out.Channels {
		p.channel(i, in, under, out, trace)
	}
	late := 0
	for i := range p.parts {
		part := &p.parts[i]
		var pt *PartTrace
		if trace != nil {
			pt = &trace.Parts[i]
		}
		if under == nil {
			part.finish(out.Channels, nil, &out.Parts[i], pt)
			continue
		}
		next := late + len(part.drives)
		part.finish(out.Channels, under.late[late:next], &out.Parts[i], pt)
		late = next
	}
}

// mixAll computes every demand and every channel's sum, from phase weights that
// stand in out.
func (p *Plan) mixAll(position []float64, out *Output, trace *Trace) {
	for i := range p.conditions {
		out.weights[i] = p.conditions[i].weight(position, out.phases)
	}
	for i := range p.demands {
		var dt *DemandTrace
		if trace != nil {
			dt = &trace.Demands[i]
		}
		v := p.demands[i].value(position, out.weights, dt)
		out.Demands[i] = Percent(v)
		if dt != nil {
			dt.Value = Percent(v)
		}
	}
	for i, lines := range p.lines {
		var lt []LineTrace
		if trace != nil {
			lt = trace.Channels[i].Lines
		}
		out.Channels[i] = ChannelOutput{Sum: Percent(sum(lines, out.Demands, out.weights, lt))}
	}
}

func (p *Plan) channel(i int, in *Input, under *underWay, out *Output, trace *Trace) {
	c, o := &p.setup.Channels[i], &out.Channels[i]
	var ct *ChannelTrace
	if trace != nil {
		ct = &trace.Channels[i]
		ct.Sum = o.Sum
	}
	var limited float64
	limited, o.Limits = c.limited(float64(o.Sum))
	if under != nil {
		limited = under.limited[i]
	}
	c.put(limited, o, ct)
	if in.SignalLost {
		if under != nil && c.Failsafe.Hold {
			o.Output, o.Pulse = under.held[i], PulseOf(under.held[i])
		}
		c.fail(o, ct)
	}
	if ct != nil {
		ct.Pulse, ct.Output, ct.Limits = o.Pulse, o.Output, o.Limits
	}
}

// DriveAngle is what one servo of a part asks of it when an output reaches it,
// in degrees with the part's sign; 0 for motors and extras. The output must be
// within what the channel can put out.
func (p *Plan) DriveAngle(part, drive int, output Percent) Degrees {
	if d := &p.parts[part].drives[drive]; d.linkage != nil || d.Table != nil {
		a, _ := d.angle(float64(output), nil)
		return Degrees(a)
	}
	return 0
}

// DriveAt is one servo and its linkage with an output reaching it, as in a trace; all 0
// but for the output of motors and extras. The output must be within what the channel
// can put out.
func (p *Plan) DriveAt(part, drive int, output Percent) DriveTrace {
	t := DriveTrace{Output: output}
	if d := &p.parts[part].drives[drive]; d.linkage != nil || d.Table != nil {
		d.angle(float64(output), &t)
	}
	return t
}

// Key is a text that two inputs have in common only where they are the same.
func (in *Input) Key() string {
	key := make([]byte, 0, 8*len(in.Position)+1)
	for _, at := range in.Position {
		key = binary.LittleEndian.AppendUint64(key, math.Float64bits(at+0)) // −0 is 0
	}
	if in.SignalLost {
		key = append(key, 1)
	}
	return string(key)
}

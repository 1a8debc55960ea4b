package mixcore

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"

	"example.com/hingeline/mixcore/linkage"
)

// Fault is a mistake in a Setup that only the arithmetic can see, such as a
// linkage that locks.
type Fault struct {
	Code    string // a problem code: see Compile
	Part    int    // index of the part, or −1
	Drive   int    // index of the part's drive
	Channel int    // index of the channel, or −1
	Line    int    // index of the channel's mix line, or −1
	Message string // lower case, got and wanted with units
	Hint    string
}

// The codes of faults.
const (
	CodeImpossible = "linkage-impossible"
	CodeLocks      = "linkage-locks"
	CodeOverCentre = "linkage-over-centre"
	CodeTooShort   = "table-too-short"
	CodeTurnsBack  = "table-turns-back"
	CodeScaleRange = "scale-out-of-range"
)

// Compile checks what only the arithmetic can see and makes the Plan, which
// keeps s. It returns every fault; the plan is nil if there is one. What a
// reader of files can see (names, ranges, order) must be right already.
func Compile(s Setup) (*Plan, []Fault) { return compile(s, nil) }

// compile makes a plan and takes from another one, which may be nil, what is the same
// in both.
func compile(s Setup, was *Plan) (*Plan, []Fault) {
	p := &Plan{setup: &s, known: map[string]int{}}
	if was != nil {
		p.conditions, p.known = slices.Clip(was.conditions), maps.Clone(was.known)
	}
	for i := range s.Phases {
		p.phases = append(p.phases, compileCondition(&s.Phases[i].When))
	}
	for i := range s.Demands {
		if was != nil && i < len(was.demands) && sameDemand(&was.setup.Demands[i], &s.Demands[i]) {
			p.demands = append(p.demands, was.demands[i])
			continue
		}
		p.demands = append(p.demands, p.compileDemand(&s.Demands[i]))
	}
	var faults []Fault
	for i := range s.Channels {
		for j := range s.Channels[i].Mix {
			if s.Channels[i].Mix[j].Op == ScaleBy {
				faults = append(faults, scaleFault(&s, i, j)...)
			}
		}
		if was != nil && i < len(was.lines) && slices.Equal(was.setup.Channels[i].Mix, s.Channels[i].Mix) {
			p.lines = append(p.lines, was.lines[i])
			continue
		}
		p.lines = append(p.lines, p.compileMix(s.Channels[i].Mix))
	}
	for i := range s.Parts {
		compiled := part{Part: &s.Parts[i]}
		for j := range s.Parts[i].Drives {
			if was != nil && i < len(was.parts) && j < len(was.parts[i].drives) && sameDrive(was.setup, &s, i, j) {
				d := was.parts[i].drives[j]
				d.Drive = &s.Parts[i].Drives[j]
				compiled.drives = append(compiled.drives, d)
				continue
			}
			d, err := compileDrive(&s.Parts[i].Drives[j])
			faults = append(faults, driveFaults(&s, i, j, &d, err)...)
			compiled.drives = append(compiled.drives, d)
		}
		p.parts = append(p.parts, compiled)
		p.drives += len(compiled.drives)
	}
	if faults != nil {
		return nil, faults
	}
	return p, nil
}

func (p *Plan) compileMix(mix []MixLine) []line {
	lines := make([]line, 0, len(mix))
	for i := range mix {
		lines = append(lines, p.compileLine(&mix[i]))
	}
	return lines
}

// compileWhen keeps each different condition once and returns its index.
func (p *Plan) compileWhen(c *Condition) int {
	if c == nil {
		return always
	}
	compiled := compileCondition(c)
	says := fmt.Sprint(compiled)
	i, ok := p.known[says]
	if !ok {
		i = len(p.conditions)
		p.known[says] = i
		p.conditions = append(p.conditions, compiled)
	}
	return i
}

func scaleFault(s *Setup, channel, line int) []Fault {
	d := &s.Demands[s.Channels[channel].Mix[line].Demand]
	low, high := d.Range(s.Controls)
	if low >= -Hair && high <= 100+Hair {
		return nil
	}
	return []Fault{{Code: CodeScaleRange, Part: -1, Channel: channel, Line: line,
		Message: fmt.Sprintf("scale_by %q, which runs from %s to %s, want a demand that stays within 0 and 100 %%",
			d.Name, percentText(low), percentText(high)),
		Hint: "scale by a lever or switch; give the demand a curve, values or a throw that keep it within 0…100 %"}}
}

// driveFaults checks one servo and what joins it to its part over everything
// that its channel can put out.
func driveFaults(s *Setup, part, index int, d *drive, err error) []Fault {
	motion := s.Parts[part].Motion
	if motion == Power || motion == OutIn {
		return nil
	}
	fault := Fault{Part: part, Drive: index, Channel: -1, Line: -1}
	low, high := s.Channels[d.Channel].Reach()
	if d.Linkage == nil {
		return tableFaults(fault, d.Table, low, high)
	}
	if err != nil {
		fault.Code = CodeImpossible
		fault.Message = "the linkage cannot be built: " + err.Error()
		fault.Hint = "measure arm, horn and pushrod from centre to centre of the holes, and the angles from straight aft"
		if errors.Is(err, linkage.ErrStuck) {
			fault.Hint = "turn the arm or the horn so that the pushrod pulls on both at an angle"
		}
		return []Fault{fault}
	}
	return linkageFaults(fault, d, low, high)
}

func tableFaults(fault Fault, table []Point, low, high Percent) []Fault {
	var faults []Fault
	first, last := table[0], table[len(table)-1]
	if float64(low) < first.X-Hair || float64(high) > last.X+Hair {
		fault.Code = CodeTooShort
		fault.Message = fmt.Sprintf("the measured table reaches from %s to %s, but the channel can put out %s to %s",
			percentText(Percent(first.X)), percentText(Percent(last.X)), percentText(low), percentText(high))
		fault.Hint = "measure further out, or hold the channel back with its limit or end points"
		faults = append(faults, fault)
	}
	direction := 0.0
	for i := 1; i < len(table); i++ {
		step := table[i].Y - table[i-1].Y
		if step*direction < 0 {
			fault.Code = CodeTurnsBack
			fault.Message = fmt.Sprintf("the measured table turns back at %s", percentText(Percent(table[i-1].X)))
			fault.Hint = "a linkage that comes back has run over centre: measure again, or hold the channel back before that"
			return append(faults, fault)
		}
		if step != 0 {
			direction = step
		}
	}
	return faults
}

func linkageFaults(fault Fault, d *drive, low, high Percent) []Fault {
	fore, aft := d.linkage.Range()
	var faults []Fault
	for _, reach := range []Percent{low, high} {
		swing, _ := clamp(float64(reach)*d.swing, -d.most, d.most)
		end, way := aft, "aft"
		if swing < 0 {
			end, way = fore, "fore"
		}
		if math.Abs(swing) < math.Abs(end.Swing) {
			continue
		}
		fault.Code, fault.Hint = CodeLocks, "use a longer horn or a shorter arm, or hold the channel back with limit, end_points or pulse_us"
		switch end.Kind {
		case linkage.OverCentre:
			fault.Code, fault.Hint = CodeOverCentre, "the arm comes into line with the pushrod: turn the arm on its shaft, or hold the channel back with limit, end_points or pulse_us"
		case linkage.TurnsTooFar:
			fault.Code, fault.Hint = CodeImpossible, "no surface turns so far: measure arm and horn again, or use a shorter arm or a longer horn"
		}
		fault.Message = fmt.Sprintf("the linkage %s at %s of output (arm %.1f° %s), and the limits of the channel let it go to %s",
			end.Kind.Does(), percentText(Percent(end.Swing/d.swing)), math.Abs(end.Swing), way, percentText(reach))
		faults = append(faults, fault)
	}
	return faults
}

func percentText(p Percent) string { return fmt.Sprintf("%.4g %%", math.Round(float64(p)*10)/10+0) }

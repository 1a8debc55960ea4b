package sheet

import (
	"math"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// linkages are the servos that move a part by arm, pushrod and horn, to be drawn to
// scale, as far as their channels are used: used is what [Travel] says of each. What was
// measured with a gauge has no linkage to draw.
func linkages(m *airframes.Model, used []result.Travel) []result.Linkage {
	var list []result.Linkage
	for part := range m.Setup.Parts {
		for k := range m.Setup.Parts[part].Drives {
			if m.Setup.Parts[part].Drives[k].Linkage != nil {
				list = append(list, linkageOf(m, part, k, used))
			}
		}
	}
	return list
}

// joint is one drive with its linkage.
type joint struct {
	m           *airframes.Model
	part, index int
	p           *mixcore.Part
	d           *mixcore.Drive
	g           *linkage.Geometry
	l           *linkage.Linkage
	side        float64 // +1 where the horn is above or to starboard, else −1
}

func linkageOf(m *airframes.Model, part, index int, used []result.Travel) result.Linkage {
	p := &m.Setup.Parts[part]
	j := joint{m: m, part: part, index: index, p: p, d: &p.Drives[index], g: p.Drives[index].Linkage, side: p.Drives[index].Sign}
	if p.Kind == "nose wheel" { // its horn turns the model the other way
		j.side = -j.side
	}
	j.l, _ = linkage.New(*j.g) // the plan was compiled with it
	c := &m.Setup.Channels[j.d.Channel]
	out := result.Linkage{Part: p.Name, Channel: channelName(c), Seen: "from the side, nose left", Horn: "horn " + j.hornSide()}
	if p.Motion == mixcore.LeftRight {
		out.Seen = "from above, nose left"
	}
	goes := &used[j.d.Channel]
	out.Goes = "as far as the channel goes: "
	if !goes.Sure {
		out.Goes = "as far as the channel was found to go: "
	}
	out.Goes += strings.TrimSuffix(wording.Pulse(mixcore.Microseconds(goes.Low)), " µs") + " to " + wording.Pulse(mixcore.Microseconds(goes.High))
	least, most := c.Reach()
	out.Stands = append(out.Stands, j.at(0))
	for _, pulse := range []float64{goes.Low, goes.High} {
		out.Stands = append(out.Stands, j.at(min(max(mixcore.OutputOf(mixcore.Microseconds(pulse)), least), most)))
	}
	out.Lengths = j.lengths()
	return out
}

func (j *joint) hornSide() string {
	switch {
	case j.p.Motion == mixcore.UpDown && j.side > 0:
		return "above"
	case j.p.Motion == mixcore.UpDown:
		return "below"
	case j.side > 0:
		return "to starboard"
	}
	return "to port"
}

// at is where everything is with the channel at an output: where that is beyond the
// part's stop, at the stop.
func (j *joint) at(output mixcore.Percent) result.LinkageAt {
	held := j.held(output)
	drive := j.m.Plan.DriveAt(j.part, j.index, held)
	arm, horn := j.l.Tips(float64(drive.Swing))
	sin, cos := math.Sincos(-j.l.Swing(float64(drive.Swing)) * math.Pi / 180)
	edge := j.trailing()
	place := func(p [2]float64) [2]float64 { return [2]float64{neat(p[0]), neat(j.seen(p[1]))} }
	return result.LinkageAt{
		Says: j.says(&drive, output), Arm: place(arm), Horn: place(horn),
		Hinge:        place([2]float64{j.g.Pivots, j.g.Offset}),
		TrailingEdge: place([2]float64{j.g.Pivots + edge*cos, j.g.Offset + edge*sin}),
	}
}

// seen is how far up, or from above to port, something lies that lies so far towards
// the horn's side.
func (j *joint) seen(y float64) float64 {
	if j.p.Motion == mixcore.LeftRight {
		return -j.side * y
	}
	return j.side * y
}

// trailing is the chord, or where it is not said, and of wheels, one that can be drawn.
func (j *joint) trailing() float64 {
	if j.p.Chord > 0 {
		return float64(j.p.Chord)
	}
	return drawnChord * j.g.Horn
}

// drawnChord is how long the chord of a part without one is drawn, in lengths of its horn.
const drawnChord = 2.5

// held is the output at which the part comes to its stop, if that is on the way to an
// output, else that output. Beyond it the servo pushes on and nothing turns.
func (j *joint) held(output mixcore.Percent) mixcore.Percent {
	switch {
	case !j.beyond(output):
		return output
	case j.beyond(0): // a linkage that does not fit: it pushes at neutral already
		return 0
	}
	inside, outside := mixcore.Percent(0), output
	for range halvings {
		if middle := (inside + outside) / 2; j.beyond(middle) {
			outside = middle
		} else {
			inside = middle
		}
	}
	return inside
}

// halvings find an output to a thousand millionth of its travel.
const halvings = 40

// beyond says whether a part would be beyond its stop at an output.
func (j *joint) beyond(output mixcore.Percent) bool { return j.past(output) > stopSlip }

// past is how far beyond its stop a part would be at an output; less than 0 short of it.
func (j *joint) past(output mixcore.Percent) mixcore.Degrees {
	angle := j.m.Plan.DriveAngle(j.part, j.index, output)
	return max(angle-j.p.Stops.Plus, -angle-j.p.Stops.Minus)
}

// stopSlip is what arithmetic may add to an angle that stands exactly at its stop.
const stopSlip mixcore.Degrees = 1e-9

// says is where arm and part are with the channel at an output, where they may be held
// short of it.
func (j *joint) says(drive *mixcore.DriveTrace, output mixcore.Percent) string {
	at := mixcore.PartOutput{Angle: drive.Angle}
	if j.p.Chord > 0 {
		at.Travel = mixcore.ChordTravel(j.p.Chord, drive.Angle)
	}
	words := "channel at " + wording.Pulse(mixcore.PulseOf(output)) + " (" + wording.Percent(output) + "): arm " + armWords(drive.Swing) + ", " + wording.Position(j.p, at)
	switch {
	case drive.Output != output:
		words += ", held at its stop: the servo pushes on"
	case j.past(output) >= wording.NeutralBelow:
		words += ", beyond its stop at neutral already"
	}
	return words
}

func armWords(swing mixcore.Degrees) string {
	if wording.Angle(swing) == wording.Angle(0) {
		return "at neutral"
	}
	way := " aft"
	if swing < 0 {
		way = " fore"
	}
	return wording.Angle(swing) + way
}

func (j *joint) lengths() []string {
	mm := func(x float64) string { return wording.SetLength(mixcore.Millimetres(x)) }
	list := []string{"arm " + mm(j.g.Arm), "horn " + mm(j.g.Horn),
		"pushrod " + mm(math.Round(j.l.Pushrod()*10)/10), "pivots " + mm(j.g.Pivots)}
	if j.g.Offset != 0 {
		list = append(list, "hinge line "+mm(math.Abs(j.g.Offset))+" "+j.offsetSide())
	}
	if j.g.ArmDeg != square {
		list = append(list, "arm at neutral "+wording.SetAngle(mixcore.Degrees(j.g.ArmDeg))+" from aft")
	}
	if j.g.HornDeg != square {
		list = append(list, "horn at neutral "+wording.SetAngle(mixcore.Degrees(j.g.HornDeg))+" from aft")
	}
	return list
}

// square is the angle of an arm or horn that leans neither way.
const square = 90

func (j *joint) offsetSide() string {
	plus := j.g.Offset*j.side > 0
	switch {
	case j.p.Motion == mixcore.UpDown && plus:
		return "above the servo's shaft"
	case j.p.Motion == mixcore.UpDown:
		return "below the servo's shaft"
	case plus:
		return "to starboard of the servo's shaft"
	}
	return "to port of the servo's shaft"
}

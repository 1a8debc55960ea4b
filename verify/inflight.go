package verify

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// inFlight works out what one position of the controls does to the aeroplane,
// against everything at rest.
type inFlight struct {
	model  *airframes.Model
	air    *effect.Airframe
	trace  *mixcore.Trace
	out    *mixcore.Output
	rest   *mixcore.Output
	change effect.Change
	speed  float64

	reported   result.Effect
	unmeasured []string // what the numbers want
}

// effectOf is what the position of a trace does to the aeroplane at an airspeed
// in metres a second, 0 for one that is not known.
func effectOf(m *airframes.Model, trace *mixcore.Trace, speed float64) *result.Effect {
	f := inFlight{model: m, air: effect.New(&m.Setup), trace: trace, out: &trace.Output, rest: m.Plan.NewOutput(), speed: speed}
	rest := m.Plan.Rest()
	m.Plan.Eval(&rest, f.rest)
	f.reported.Speed = speed
	f.turns()
	f.roll()
	f.loads()
	if speed == 0 && m.Setup.Wing == nil && len(f.unmeasured) > 0 {
		f.unmeasured = []string{"for roll rate and servo loads: wing:, the span_mm and chord_mm of its surfaces, and --speed N"}
	}
	f.reported.Missing = append(f.reported.Missing, f.unmeasured...)
	return &f.reported
}

func (f *inFlight) lacks(what string) {
	if !slices.Contains(f.unmeasured, what) {
		f.unmeasured = append(f.unmeasured, what)
	}
}

func (f *inFlight) worth(words string) { f.reported.Worth = append(f.reported.Worth, words) }

// axes are the three axes, and the words for them.
var axes = []struct {
	axis              mixcore.Axis
	name, plus, minus string
}{
	{mixcore.Roll, "roll", "RIGHT", "LEFT"},
	{mixcore.Pitch, "pitch", "UP", "DOWN"},
	{mixcore.Yaw, "yaw", "RIGHT", "LEFT"},
}

// verbs are how an axis is said of the model.
var verbs = map[string]string{"roll": "rolls", "pitch": "pitches", "yaw": "yaws"}

func (f *inFlight) turns() {
	f.change = f.air.Change(f.rest, f.out)
	for _, a := range axes {
		turn := result.Turn{Axis: a.name, Sure: true}
		switch f.change.Answer(a.axis) {
		case effect.Plus:
			turn.Way = a.plus
		case effect.Minus:
			turn.Way = a.minus
		case effect.Unsure:
			turn.Sure = false
			turn.Text = "may " + a.name + " " + a.plus + " or " + a.minus + ", or not: that depends on " + f.decider(a.axis)
		case effect.Slight:
			turn.Sure = false
			turn.Text = verbs[a.name] + f.slightly(a.axis, a.plus, a.minus) + " a little, far less than it " + verbs[axisName(f.change.Strongest())]
		default:
			turn.Text = "does not " + a.name
		}
		if turn.Way != "" {
			turn.Text = verbs[a.name] + " " + turn.Way
		}
		f.reported.Turns = append(f.reported.Turns, turn)
	}
}

// decider is what nobody has said and a turn depends on.
func (f *inFlight) decider(axis mixcore.Axis) string {
	if axis == mixcore.Roll {
		return "the dihedral and sweep of the wing, by which what yaws it also rolls it, and which the file does not say"
	}
	return "the downwash at the tail of the " + f.names(f.change.Unplaced)
}

// slightly is the way of a slight turn, if that is sure.
func (f *inFlight) slightly(axis mixcore.Axis, plus, minus string) string {
	switch m := f.change.About(axis); {
	case axis == mixcore.Pitch && math.Abs(m) <= f.change.PitchUnsure:
		return ""
	case m > 0:
		return " " + plus
	}
	return " " + minus
}

func axisName(axis mixcore.Axis) string {
	for _, a := range axes {
		if a.axis == axis {
			return a.name
		}
	}
	return ""
}

func (f *inFlight) names(parts []int) string {
	var names []string
	for _, i := range parts {
		names = append(names, f.model.Setup.Parts[i].Name)
	}
	return strings.Join(names, ", ")
}

// leastHelix is the smallest pb/2V, in radians, that is said as a roll.
const leastHelix = 0.0005

// roll is how fast the surfaces of the wing roll a model that rolls, however
// little that is beside what else it does.
func (f *inFlight) roll() {
	is, missing := f.air.Helix(f.out)
	was, _ := f.air.Helix(f.rest)
	total := is.Total - was.Total
	answer := f.change.Answer(mixcore.Roll)
	if (answer == effect.None || answer == effect.Unsure) && (!missing.None() || math.Abs(total) < leastHelix) {
		return
	}
	if missing.None() && math.Abs(total) < leastHelix {
		if others := f.uncounted(); others != nil {
			f.worth("How fast " + f.names(others) + " would roll it is not worked out.")
		}
		return
	}
	if missing.Wing {
		f.lacks("wing: {span_mm, root_chord_mm, tip_chord_mm} in the airframe file, for roll rate")
	}
	if len(missing.Parts) > 0 {
		f.lacks("span_mm and chord_mm of " + f.names(missing.Parts) + " in the airframe file, for roll rate")
	}
	if !missing.None() {
		return
	}
	r := &result.Rolling{Helix: math.Abs(total), Way: "RIGHT"}
	if total < 0 {
		r.Way = "LEFT"
	}
	r.Text = "pb/2V " + strconv.FormatFloat(r.Helix, 'f', 3, 64)
	if f.speed > 0 {
		r.Rate = math.Abs(f.air.Rate(total, f.speed))
		r.Text += fmt.Sprintf(", %.0f° a second at %s", r.Rate, wording.Speed(f.speed))
	} else {
		f.lacks(airspeed)
	}
	r.Text += ", to the " + strings.ToLower(r.Way)
	r.Shares = f.shares(is.Parts, was.Parts)
	f.stops(r, total, was.Total)
	f.reported.Roll = r
	f.worth(fmt.Sprintf("Full roll usually wants a pb/2V of %.2f or more (NACA Report 715; the number from memory).", effect.GoodHelix))
	f.worth("pb/2V and roll rate are estimates by strips for a rigid wing that is not stalled: within 5 % of lifting line for ailerons near the tips, low by up to 25 % for what flaps add.")
	if far := f.farOut(); far != nil {
		f.worth(fmt.Sprintf("They take lift to grow with the angle all the way: past about %d°, as at %s, they say too much.", effect.LinearTo, f.names(far)))
	}
	if others := f.uncounted(); others != nil {
		f.worth("They count the surfaces of the wing that move both ways, and leave out what " + f.names(others) + " adds.")
	}
}

// farOut are the surfaces whose part in the roll is overstated.
func (f *inFlight) farOut() []int {
	var far []int
	for i := range f.out.Parts {
		is, was := float64(f.out.Parts[i].Angle), float64(f.rest.Parts[i].Angle)
		if f.air.Counted(i) && is != was && max(math.Abs(is), math.Abs(was)) > effect.LinearTo {
			far = append(far, i)
		}
	}
	return far
}

// airspeed is what must be said for numbers that need one.
const airspeed = "an airspeed, --speed N in metres a second or airspeed_ms in the airframe file, for roll rate and servo loads"

// shares are what kinds of surfaces add to the roll of the kind that leads: the
// ailerons where they roll the model, else the kind that rolls it most.
func (f *inFlight) shares(is, was []float64) []result.Share {
	byKind := map[string]float64{}
	var kinds []string
	for i := range is {
		kind := string(f.model.Setup.Parts[i].Kind)
		if !f.air.Counted(i) {
			continue
		}
		if !slices.Contains(kinds, kind) {
			kinds = append(kinds, kind)
		}
		byKind[kind] += is[i] - was[i]
	}
	lead := ""
	for _, kind := range kinds {
		if math.Abs(byKind[kind]) >= leastHelix && (lead == "" || kind == "aileron" || lead != "aileron" && math.Abs(byKind[kind]) > math.Abs(byKind[lead])) {
			lead = kind
		}
	}
	var shares []result.Share
	for _, kind := range kinds {
		if kind == lead || lead == "" || math.Abs(byKind[kind]) < leastHelix {
			continue
		}
		s := result.Share{Kind: kind, Of: lead, Percent: byKind[kind] / byKind[lead] * 100}
		verb, from := "add", "to"
		if s.Percent < 0 {
			verb, from = "take", "from"
		}
		s.Text = fmt.Sprintf("the %ss %s %.0f %% %s the roll of the %ss", kind, verb, math.Abs(s.Percent), from, lead)
		shares = append(shares, s)
	}
	return shares
}

// stops holds the roll against that of the same surfaces without stops.
func (f *inFlight) stops(r *result.Rolling, total, was float64) {
	free := mixcore.Output{Parts: slices.Clone(f.out.Parts)}
	var stopped []int
	for i := range free.Parts {
		if f.air.Counted(i) && f.out.Parts[i].Limits&mixcore.AtStop != 0 {
			free.Parts[i].Angle = mixcore.Degrees(f.trace.Parts[i].Wanted)
			stopped = append(stopped, i)
		}
	}
	is, _ := f.air.Helix(&free)
	without := is.Total - was
	if len(stopped) == 0 || math.Abs(without) < leastHelix {
		return
	}
	r.Lost = (1 - total/without) * 100
	if percent := fmt.Sprintf("%.0f", math.Abs(r.Lost)); percent != "0" {
		verb := "is lost to"
		if r.Lost < 0 {
			verb = "comes from"
		}
		r.Stops = fmt.Sprintf("%s %% of the roll %s the stop of %s: without it pb/2V would be %.3f",
			percent, verb, f.names(stopped), math.Abs(without))
	}
}

// uncounted are the parts that roll the model and that the estimate leaves out.
func (f *inFlight) uncounted() []int {
	var others []int
	for i, own := range f.change.Parts {
		if !f.air.Counted(i) && f.change.PartAnswer(i, mixcore.Roll) != effect.None && math.Abs(own.Roll) >= effect.Significant*math.Abs(f.change.Roll) {
			others = append(others, i)
		}
	}
	return others
}

// holds is true for a surface that the air pulls at: it stands off neutral.
func (f *inFlight) holds(part int) bool {
	return f.air.Acts(part) && math.Abs(float64(f.out.Parts[part].Angle)) >= float64(f.model.Still)
}

// roughly says how many times over, no finer than it is known.
func roughly(times float64) string {
	if times >= 10 {
		return strconv.FormatFloat(times, 'f', 0, 64)
	}
	return strconv.FormatFloat(times, 'f', 1, 64)
}

// leastTorque is the smallest torque that is said, in newton centimetres: less
// would read as 0.
const leastTorque = 0.05

// loads are what the servos hold.
func (f *inFlight) loads() {
	if f.speed <= 0 {
		for i := range f.out.Parts {
			if f.holds(i) {
				f.lacks(airspeed)
				return
			}
		}
		return
	}
	loads, missing := f.air.Loads(f.model.Plan, f.trace, f.speed)
	missing = slices.DeleteFunc(missing, func(i int) bool { return !f.holds(i) })
	if len(missing) > 0 {
		f.lacks("span_mm and chord_mm of " + f.names(missing) + " in the airframe file, for servo loads")
	}
	for _, l := range loads {
		p, at := &f.model.Setup.Parts[l.Part], f.out.Parts[l.Part]
		stalls := at.Limits&mixcore.AtStop != 0
		if !f.holds(l.Part) || !stalls && l.Needed.High < leastTorque {
			continue
		}
		name := p.Name + " servo"
		if len(p.Drives) > 1 {
			name += " " + strconv.Itoa(l.Drive+1)
		}
		load := result.Load{Servo: name, Low: l.Needed.Low, High: l.Needed.High, Has: l.Has, Stalls: stalls}
		band := wording.TorqueBand(l.Needed.Low, l.Needed.High)
		switch margin := l.Margin(); {
		case load.Stalls:
			load.Text = "driven against its stop, where it needs all the torque it has; the air adds " + band
		case l.Has <= 0:
			load.Text = "needs " + band + "; what it has is not said (torque_ncm)"
		default:
			load.Text = fmt.Sprintf("needs %s, has %s, %s to %s times", band, wording.Torque(l.Has), roughly(margin.Low), roughly(margin.High))
		}
		if l.Has > 0 && l.Has < l.Rule {
			load.Text += "; a rule quoted for large models (AMA 520-A) asks " + wording.Torque(l.Rule)
		}
		f.reported.Loads = append(f.reported.Loads, load)
	}
	if len(f.reported.Loads) > 0 {
		f.worth("Servo loads are estimates, from a flat plate to thin-aerofoil theory; raw moments may be up to 40 % too high. A sticking hinge, flutter or a gust is not in them.")
	}
}

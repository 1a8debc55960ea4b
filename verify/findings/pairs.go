package findings

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// How much the throws of port and starboard partners may differ: more than both
// is uneven. Common practice, no source.
const (
	unevenAngle mixcore.Degrees = 1
	unevenShare                 = 0.05 // of the larger throw
)

// pair is a port part and its starboard partner.
type pair struct{ port, starboard int }

// pairs are the hinged parts that have the same name but for the side and the
// same kind.
func (f *finder) pairs() []pair {
	var pairs []pair
	for i := range f.s.Parts {
		p := &f.s.Parts[i]
		if p.Side != mixcore.Port || !hinged(p) {
			continue
		}
		partner := slices.IndexFunc(f.s.Parts, func(q mixcore.Part) bool {
			return q.Side == mixcore.Starboard && q.Kind == p.Kind && withoutSide(q.Name) == withoutSide(p.Name)
		})
		if partner >= 0 {
			pairs = append(pairs, pair{port: i, starboard: partner})
		}
	}
	return pairs
}

func withoutSide(name string) string {
	words := strings.Fields(airframes.FoldName(name))
	words = slices.DeleteFunc(words, func(w string) bool {
		return w == "port" || w == "starboard" || w == "left" || w == "right"
	})
	return strings.Join(words, " ")
}

func (f *finder) pairFindings() {
	pairs := f.pairs()
	for i, p := range pairs {
		if !f.yLead(p) {
			f.uneven(p, f.left/(len(pairs)-i))
		}
	}
}

// yLead reports a pair that shares a channel and is asked for what one channel
// cannot do, and says whether it is one.
func (f *finder) yLead(p pair) bool {
	port, starboard := &f.s.Parts[p.port], &f.s.Parts[p.starboard]
	if port.Motion != mixcore.UpDown || len(port.Drives) != 1 || len(starboard.Drives) != 1 ||
		port.Drives[0].Channel != starboard.Drives[0].Channel {
		return false
	}
	channel := port.Drives[0].Channel
	low, high := f.atFullOutput(-200), f.atFullOutput(+200)
	if low == nil || high == nil {
		return false
	}
	turn := func(part int) float64 {
		return float64(high.Parts[part].Drives[0].Angle - low.Parts[part].Drives[0].Angle)
	}
	together := turn(p.port)*turn(p.starboard) > 0
	for i := range f.s.Channels[channel].Mix {
		line := &f.s.Channels[channel].Mix[i]
		if line.Op != mixcore.Add || line.Share == mixcore.Both(0) {
			continue
		}
		d := &f.s.Demands[line.Demand]
		if f.wantsOpposite(d, port.Kind) != together {
			continue // the Y-lead does what this demand wants
		}
		does, wants := "the same way", "opposite ways"
		if !together {
			does, wants = wants, does
		}
		f.warn(where.Line(f.m, channel, i), codeYLead,
			fmt.Sprintf("%s and %s share %s and move %s, but %s needs them to move %s",
				port.Name, starboard.Name, channelName(&f.s.Channels[channel]), does, d.Name, wants),
			"one channel cannot do both: give each of them a channel of its own")
		return true
	}
	return false
}

// wantsOpposite says whether a demand is there to move a pair of parts opposite
// ways: roll, and yaw on a V-tail.
func (f *finder) wantsOpposite(d *mixcore.Demand, kind mixcore.Kind) bool {
	switch c := &f.s.Controls[d.From]; c.Axis {
	case mixcore.Roll:
		return true
	case mixcore.Yaw:
		return kind == "v-tail"
	}
	return false
}

// mirrored is the pose with left and right exchanged: roll and yaw the other way.
func (f *finder) mirrored(in, into *mixcore.Input) {
	copy(into.Position, in.Position)
	for i := range into.Position {
		if axis := f.s.Controls[i].Axis; axis == mixcore.Roll || axis == mixcore.Yaw {
			into.Position[i] = -into.Position[i]
		}
	}
}

// uneven compares the port part at a pose with the starboard part at its mirror
// image. The throw of each is its movement from rest, so that a sub-trim counts
// for nothing. What several controls do together is looked at only where each
// of them alone is even.
func (f *finder) uneven(p pair, most int) {
	r := f.partReach(p.port)
	r.addAll(f.partReach(p.starboard))
	controls := r.controls()
	flip := 1.0 // the mirror image of UP is UP, of LEFT is RIGHT
	if f.s.Parts[p.port].Motion == mixcore.LeftRight {
		flip = -1
	}
	f.plan.Eval(&f.rest, f.out)
	rest := [2]mixcore.Degrees{f.out.Parts[p.port].Angle, f.out.Parts[p.starboard].Angle}
	mirror := f.rest.Clone()
	alone := make([]sighting, len(controls)) // by the control that is off rest
	var several sighting
	f.walk(controls, most/2, func(in *mixcore.Input, digits []int, moved int) {
		f.left -= 2
		f.plan.Eval(in, f.out)
		port := float64(f.out.Parts[p.port].Angle - rest[0])
		f.mirrored(in, &mirror)
		f.plan.Eval(&mirror, f.out)
		starboard := flip * float64(f.out.Parts[p.starboard].Angle-rest[1])
		apart := math.Abs(port - starboard)
		if apart <= float64(unevenAngle)+mixcore.Hair || apart <= unevenShare*max(math.Abs(port), math.Abs(starboard)) {
			return
		}
		if moved == 1 {
			alone[slices.IndexFunc(digits, func(d int) bool { return d > 0 })].offer(in, moved, apart)
			return
		}
		several.offer(in, moved, apart)
	})
	alone = slices.DeleteFunc(alone, func(s sighting) bool { return !s.seen })
	slices.SortStableFunc(alone, func(a, b sighting) int { return cmp.Compare(b.amount, a.amount) })
	switch {
	case len(alone) > 0:
		f.unevenThrows(p, alone)
	case several.seen:
		f.unevenThrows(p, []sighting{several})
	}
}

// unevenThrows says the numbers of the first pose, and only the poses of the
// rest.
func (f *finder) unevenThrows(p pair, at []sighting) {
	in := mixcore.Input{Position: at[0].position}
	mirror := in.Clone()
	f.mirrored(&in, &mirror)
	message := "throws differ left and right: " + f.with(in.Position) + " "
	if slices.Equal(in.Position, mirror.Position) {
		message += f.movement(p.port, &in) + " and " + f.movement(p.starboard, &in)
	} else {
		message += f.movement(p.port, &in) + " and " + f.movement(p.starboard, &in) + "; the other way " +
			f.movement(p.starboard, &mirror) + " and " + f.movement(p.port, &mirror)
	}
	for _, s := range at[1:] {
		message += "; also uneven " + f.with(s.position)
	}
	f.warn(where.Part(f.m, p.port), codeUneven, message,
		"compare their shares, end points and linkages or tables; measure both again if those are the same")
}

// movement says how a part moves from rest to a pose, without millimetres.
func (f *finder) movement(part int, to *mixcore.Input) string {
	bare := f.s.Parts[part]
	bare.Chord = 0
	f.plan.Eval(&f.rest, f.out)
	from := f.out.Parts[part]
	f.plan.Eval(to, f.out)
	return bare.Name + " " + wording.Movement(&bare, from, f.out.Parts[part], wording.NeutralBelow)
}

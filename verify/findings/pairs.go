package findings

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/wording"
)

// How much the throws of port and starboard partners may differ: more than both
// is uneven. Common practice, no source.
const (
	unevenAngle = mixcore.Degrees(1)
	unevenShare = 0.05 // of the larger throw
)

// pairs are the hinged parts that have a partner on the other side.
func (f *finder) pairs() []poses.Pair {
	return slices.DeleteFunc(poses.Pairs(f.s), func(p poses.Pair) bool { return !f.s.Parts[p.Port].Motion.Hinged() })
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
func (f *finder) yLead(p poses.Pair) bool {
	port, starboard := &f.s.Parts[p.Port], &f.s.Parts[p.Starboard]
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
	together := turn(p.Port)*turn(p.Starboard) > 0
	for i := range f.s.Channels[channel].Mix {
		line := &f.s.Channels[channel].Mix[i]
		if line.Op != mixcore.Add || line.Share == mixcore.Both(0) {
			continue
		}
		d := &f.s.Demands[line.Demand]
		if f.wantsOpposite(d, port.Motion) != together {
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
// ways: roll, and yaw unless they are rudders, which it moves the same way.
func (f *finder) wantsOpposite(d *mixcore.Demand, motion mixcore.Motion) bool {
	switch f.s.Controls[d.From].Axis {
	case mixcore.Roll:
		return true
	case mixcore.Yaw:
		return motion == mixcore.UpDown
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
func (f *finder) uneven(p poses.Pair, most int) {
	r := f.PartReach(p.Port)
	r.AddAll(f.PartReach(p.Starboard))
	controls := r.Controls()
	flip := 1.0 // the mirror image of UP is UP, of LEFT is RIGHT
	if f.s.Parts[p.Port].Motion == mixcore.LeftRight {
		flip = -1
	}
	f.plan.Eval(&f.rest, f.out)
	rest := [2]mixcore.Degrees{f.out.Parts[p.Port].Angle, f.out.Parts[p.Starboard].Angle}
	mirror := f.rest.Clone()
	alone := make([]sighting, len(controls)) // by the control that is off rest
	var several sighting
	f.Walk(controls, most/2, func(in *mixcore.Input, digits []int, moved int) {
		f.left -= 2
		f.plan.Eval(in, f.out)
		port := float64(f.out.Parts[p.Port].Angle - rest[0])
		f.mirrored(in, &mirror)
		f.plan.Eval(&mirror, f.out)
		starboard := flip * float64(f.out.Parts[p.Starboard].Angle-rest[1])
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
func (f *finder) unevenThrows(p poses.Pair, at []sighting) {
	in := mixcore.Input{Position: at[0].position}
	mirror := in.Clone()
	f.mirrored(&in, &mirror)
	message := "throws differ left and right: " + f.with(in.Position) + " "
	if slices.Equal(in.Position, mirror.Position) {
		message += f.movement(p.Port, &in) + " and " + f.movement(p.Starboard, &in)
	} else {
		message += f.movement(p.Port, &in) + " and " + f.movement(p.Starboard, &in) + "; the other way " +
			f.movement(p.Starboard, &mirror) + " and " + f.movement(p.Port, &mirror)
	}
	for _, s := range at[1:] {
		message += "; also uneven " + f.with(s.position)
	}
	f.warn(where.Part(f.m, p.Port), codeUneven, message,
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

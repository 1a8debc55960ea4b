package laws

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/wording"
)

var controlSense = law{Info{"control-sense", "Control sense",
	"Each stick and trim moves what turns the model only the right way, wherever everything else stands; and at full stick, with the other sticks and the trims at rest, the model turns that way."},
	func(mk *maker) {
		for i := range mk.s.Controls {
			switch mk.s.Controls[i].Kind {
			case mixcore.AxisControl:
				mk.turnsModel(i)
				mk.partsFollow(i)
			case mixcore.TrimControl:
				mk.trimFollows(i)
			case mixcore.LeverControl:
				mk.powerFollows(i)
			}
		}
		if len(mk.claims) == 0 {
			mk.none = "no stick bears on anything that turns the model"
		}
	}}

// follows is which way a part must go as a stick or trim goes its plus way: +1 as
// mixcore counts, −1 the other way, 0 where nothing is asked: the control does not
// bear on it, or it is not there for that axis. A rudder, fin or wheel that goes with
// the roll stick goes into the turn (common practice, no source); motors that do are
// left alone.
func (mk *maker) follows(part, control int) int {
	if !mk.bearsOn(control, part) {
		return 0
	}
	axis := mk.s.Controls[control].Axis
	if way := mk.air.Duty(part, axis); way != 0 {
		return way
	}
	if axis == mixcore.Roll && mk.s.Parts[part].Motion != mixcore.Power {
		return mk.air.Duty(part, mixcore.Yaw)
	}
	return 0
}

// partsFollow claims for each part that answers a stick that it never goes the wrong
// way, wherever anything else stands.
func (mk *maker) partsFollow(stick int) {
	c := &mk.s.Controls[stick]
	for part := range mk.s.Parts {
		way := mk.follows(part, stick)
		if way == 0 {
			continue
		}
		p := &mk.s.Parts[part]
		mk.add(claim{
			sentence: "the " + p.Name + " never " + verb(p.Motion, way < 0) + " as the " + c.Name + " moves " + wording.AxisSide(c.Axis, true),
			needs:    []prove.Claim{mk.rising(part, stick, way)},
			seen:     mk.backwards,
		})
	}
}

func (mk *maker) rising(part, control, way int) prove.Claim {
	return prove.Claim{Now: mk.everywhere(), Want: prove.Rising{Part: part, Control: control, Sign: float64(way)}}
}

// trimFollows claims of all parts that answer a trim at once that none goes the wrong
// way.
func (mk *maker) trimFollows(trim int) {
	c := claim{sentence: "the " + mk.s.Controls[trim].Name + " never moves anything the wrong way", seen: mk.backwards}
	for part := range mk.s.Parts {
		if way := mk.follows(part, trim); way != 0 {
			c.needs = append(c.needs, mk.rising(part, trim, way))
		}
	}
	if c.needs != nil {
		mk.add(c)
	}
}

// powerFollows claims of a lever that gives motors their power that more of it never
// means less.
func (mk *maker) powerFollows(lever int) {
	for part := range mk.s.Parts {
		p := &mk.s.Parts[part]
		if p.Motion == mixcore.Power && mk.givesPower(lever, part) {
			mk.add(claim{
				sentence: "more " + mk.s.Controls[lever].Name + " never means less power of the " + p.Name,
				needs:    []prove.Claim{mk.rising(part, lever, +1)},
				seen:     mk.backwards,
			})
		}
	}
}

// givesPower is true for a lever whose demand a motor's channel adds up, unless its
// name says that it is there for something else: a brake lever may well take power
// off.
func (mk *maker) givesPower(lever, motor int) bool {
	if mk.called(lever, brakeWords, flapWords, camberWords) {
		return false
	}
	for i := range mk.s.Parts[motor].Drives {
		for _, line := range mk.s.Channels[mk.s.Parts[motor].Drives[i].Channel].Mix {
			if line.Op == mixcore.Add && mk.s.Demands[line.Demand].From == lever {
				return true
			}
		}
	}
	return false
}

// backwards says how a part goes the wrong way between two places of a control.
func (mk *maker) backwards(v *view) sight {
	want := v.need.Want.(prove.Rising)
	p := &mk.s.Parts[want.Part]
	from, to := v.before.Output.Parts[want.Part], v.now.Output.Parts[want.Part]
	return sight{
		got:   moves(p, from, to, wording.NeutralBelow) + ", the wrong way",
		shows: []shown{showPart(want.Part, chain.Direction)},
	}
}

package laws

import (
	"math"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// view is a counterexample, looked at.
type view struct {
	need   *prove.Claim
	index  int // of need in its claim
	in     mixcore.Input
	now    *mixcore.Trace
	before *mixcore.Trace // of the pose that it is compared with; nil where there is none
}

func (mk *maker) view(need *prove.Claim, index int, at prove.Pose) *view {
	if want, ok := need.Want.(prove.Rising); ok {
		at = mk.fromRest(want, at)
	}
	v := &view{need: need, index: index, in: at.Now, now: mk.m.Plan.Trace(&at.Now)}
	if at.Other.Position != nil {
		v.before = mk.m.Plan.Trace(&at.Other)
	}
	return v
}

// fromRest is a pose of a control that moved the other way where that is easier to
// follow: away from rest.
func (mk *maker) fromRest(want prove.Rising, at prove.Pose) prove.Pose {
	rest := mk.rest.Position[want.Control]
	away := func(in *mixcore.Input) float64 { return math.Abs(in.Position[want.Control] - rest) }
	if at.Other.Position != nil && away(&at.Other) > away(&at.Now) {
		at.Now, at.Other = at.Other, at.Now
	}
	return at
}

// samePose says whether the two poses of a view are one.
func (mk *maker) samePose(v *view) bool {
	return slices.Equal(v.in.Position, v.before.Input.Position)
}

// counter puts a counterexample in words.
func (mk *maker) counter(c *claim, v *view, replay bool) (*result.Counter, []result.Place) {
	s := c.seen(v)
	at := prove.Pose{Now: v.in}
	if v.before != nil && !c.mirror {
		at.Other = v.before.Input
	}
	counter := wording.Counter(mk.s, &at)
	counter.Got = s.got
	var lookAt []result.Place
	for _, show := range s.shows {
		r := mk.reason(c, v, show)
		for _, p := range r.LookAt {
			known := slices.ContainsFunc(lookAt, func(q result.Place) bool { return q.File == p.File && q.Line == p.Line })
			if !known && len(lookAt) < chain.MaxLookAt {
				lookAt = append(lookAt, p)
			}
		}
		if replay {
			counter.Why = append(counter.Why, r)
		}
	}
	return counter, lookAt
}

// reason is the cause chain of a part or channel, and the lines to look at.
func (mk *maker) reason(c *claim, v *view, show shown) result.Reason {
	at := chain.Case{Now: v.now, Doubt: show.doubt}
	switch {
	case show.mirrored:
		at.Now = v.before
	case !c.mirror:
		at.Before = v.before
	}
	if show.part == none {
		return result.Reason{Of: channelName(&mk.s.Channels[show.channel]), Chain: chain.Channel(mk.m, at.Now, show.channel),
			LookAt: chain.LookAtChannel(mk.m, at, show.channel)}
	}
	return result.Reason{Of: mk.s.Parts[show.part].Name, Chain: chain.Part(mk.m, at.Now, show.part),
		LookAt: chain.LookAtPart(mk.m, at, show.part)}
}

package mistake

import (
	"fmt"
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/wording"
)

// eachRate visits every rate of every demand.
func (l *lister) eachRate(visit func(demand, rate int, d *mixcore.Demand, r *mixcore.Rate)) {
	for i := range l.s.Demands {
		for k := range l.s.Demands[i].Rates {
			visit(i, k, &l.s.Demands[i], &l.s.Demands[i].Rates[k])
		}
	}
}

// rateName names a rate: "roll", or of several "rate 2 of roll".
func rateName(d *mixcore.Demand, rate int) string {
	if len(d.Rates) == 1 {
		return d.Name
	}
	return fmt.Sprintf("rate %d of %s", rate+1, d.Name)
}

func swappedRates(l *lister) {
	for i := range l.s.Demands {
		d := &l.s.Demands[i]
		for k := 1; k < len(d.Rates); k++ {
			if d.Rates[k].Throw == d.Rates[k-1].Throw && d.Rates[k].Expo == d.Rates[k-1].Expo {
				continue
			}
			names := fmt.Sprintf("rates %d and %d of %s", k, k+1, d.Name)
			l.add(back(names+" are exchanged", "exchange "+names), where.Rate(l.m, i, k-1, "throw"), func(s *mixcore.Setup) {
				a, b := &s.Demands[i].Rates[k-1], &s.Demands[i].Rates[k]
				a.Throw, b.Throw, a.Expo, b.Expo = b.Throw, a.Throw, b.Expo, a.Expo
			})
		}
	}
}

// stuckRates keeps one rate for all: each has its throw and expo.
func stuckRates(l *lister) {
	l.eachRate(func(demand, rate int, d *mixcore.Demand, r *mixcore.Rate) {
		if len(d.Rates) == 1 {
			return
		}
		name := rateName(d, rate)
		l.add(words{name + " is always in force", "let " + name + " be in force always", "let the rates of " + d.Name + " change as they did"},
			where.Rate(l.m, demand, rate, "when"), func(s *mixcore.Setup) {
				rates := s.Demands[demand].Rates
				for k := range rates {
					rates[k].Throw, rates[k].Expo = r.Throw, r.Expo
				}
			})
	})
}

func halfThrows(l *lister) {
	l.eachRate(func(demand, rate int, d *mixcore.Demand, r *mixcore.Rate) {
		low, high := shapedEnds(d, &l.s.Controls[d.From])
		for _, plus := range []bool{true, false} {
			was := *sideOf(&r.Throw, plus)
			if was == 0 || plus && high <= 0 || !plus && low >= 0 {
				continue
			}
			name := "the throw of " + rateName(d, rate)
			if low < 0 && high > 0 {
				name += " " + l.sideWord(d.From, plus)
			}
			l.add(words{
				fmt.Sprintf("%s is %s instead of %s", name, wording.Percent(was/2), wording.Percent(was)),
				fmt.Sprintf("set %s to %s", name, wording.Percent(was/2)),
				fmt.Sprintf("set %s to %s", name, wording.Percent(was)),
			}, where.Rate(l.m, demand, rate, "throw"), func(s *mixcore.Setup) {
				*sideOf(&s.Demands[demand].Rates[rate].Throw, plus) /= 2
			})
		}
	})
}

// shapedEnds are the least and most that a demand comes to before its throw.
func shapedEnds(d *mixcore.Demand, control *mixcore.Control) (low, high float64) {
	var values []float64
	switch {
	case d.Curve != nil:
		for _, p := range d.Curve.Points {
			values = append(values, p.Y)
		}
	case d.Values != nil:
		for _, v := range d.Values {
			values = append(values, float64(v))
		}
	default:
		return control.Range()
	}
	return slices.Min(values), slices.Max(values)
}

func wrongExpos(l *lister) {
	l.eachRate(func(demand, rate int, d *mixcore.Demand, r *mixcore.Rate) {
		if r.Expo == 0 {
			return
		}
		name, was := "the expo of "+rateName(d, rate), wording.Percent(r.Expo)
		for _, to := range []mixcore.Percent{-r.Expo, 0} {
			l.add(words{
				fmt.Sprintf("%s is %s instead of %s", name, wording.Percent(to), was),
				fmt.Sprintf("set %s to %s", name, wording.Percent(to)),
				fmt.Sprintf("set %s to %s", name, was),
			}, where.Rate(l.m, demand, rate, "expo"), func(s *mixcore.Setup) { s.Demands[demand].Rates[rate].Expo = to })
		}
	})
}

func wrongCurves(l *lister) {
	for i := range l.s.Demands {
		d := &l.s.Demands[i]
		if d.Curve == nil {
			continue
		}
		name, place := "the curve of "+d.Name, where.Demand(l.m, i, "curve")
		l.add(back(name+" is upside down", "turn "+name+" upside down"), place,
			func(s *mixcore.Setup) { s.Demands[i].Curve = upsideDown(s.Demands[i].Curve) })
		l.add(words{name + " is missing", "take " + name + " out", "put " + name + " in"}, place,
			func(s *mixcore.Setup) { s.Demands[i].Curve = nil })
	}
}

// upsideDown turns a curve about: one that stays at 0 and above keeps to that. Where there
// is none, none is turned.
func upsideDown(c *mixcore.Curve) *mixcore.Curve {
	if c == nil {
		return nil
	}
	turned := *c
	turned.Points = slices.Clone(c.Points)
	top := 0.0
	if !slices.ContainsFunc(c.Points, func(p mixcore.Point) bool { return p.Y < 0 }) {
		top = 100
	}
	for i := range turned.Points {
		turned.Points[i].Y = top - turned.Points[i].Y
	}
	return &turned
}

// reversedControls reads a control from its other end: a stick by a curve that is
// mirrored, a switch by its values in the other order.
func reversedControls(l *lister) {
	for i := range l.s.Demands {
		d := &l.s.Demands[i]
		control := &l.s.Controls[d.From]
		name := "the " + control.Name + " is read the other way round for " + d.Name
		w := back(name, "read the "+control.Name+" the other way round for "+d.Name)
		if d.Values != nil {
			turned := slices.Clone(d.Values)
			slices.Reverse(turned)
			if !slices.Equal(turned, d.Values) {
				l.add(w, where.Demand(l.m, i, "values"), func(s *mixcore.Setup) { slices.Reverse(s.Demands[i].Values) })
			}
			continue
		}
		turned := mirrored(d.Curve, control)
		if sameCurve(turned, d.Curve) || sameCurve(turned, upsideDown(d.Curve)) { // a curve upside down, by another name
			continue
		}
		l.add(w, where.Demand(l.m, i, "from", "curve"), func(s *mixcore.Setup) {
			s.Demands[i].Curve = mirrored(s.Demands[i].Curve, control)
		})
	}
}

// sameCurve says whether two curves go through the same points in the same way.
func sameCurve(a, b *mixcore.Curve) bool {
	return a != nil && b != nil && a.Smooth == b.Smooth && slices.Equal(a.Points, b.Points)
}

// mirrored is a curve read from its control's other end. Without one it is the straight
// line from top to bottom.
func mirrored(c *mixcore.Curve, control *mixcore.Control) *mixcore.Curve {
	low, high := control.Range()
	if c == nil {
		return &mixcore.Curve{Points: []mixcore.Point{{X: low, Y: high}, {X: high, Y: low}}}
	}
	turned := *c
	turned.Points = slices.Clone(c.Points)
	slices.Reverse(turned.Points)
	for i := range turned.Points {
		turned.Points[i].X = low + high - turned.Points[i].X
	}
	return &turned
}

// swappedDetents exchanges the values of two positions of a switch, and of a lever
// without a curve what it does at two neighbouring detents.
func swappedDetents(l *lister) {
	for i := range l.s.Demands {
		d := &l.s.Demands[i]
		control := &l.s.Controls[d.From]
		add := func(a, b string, edit func(*mixcore.Demand)) {
			what := fmt.Sprintf("%s and %s of the %s", a, b, control.Name)
			l.add(back(what+" are exchanged for "+d.Name, "exchange "+what+" for "+d.Name), where.Demand(l.m, i, "values", "curve"),
				func(s *mixcore.Setup) { edit(&s.Demands[i]) })
		}
		for a := range d.Values {
			for b := a + 1; b < len(d.Values); b++ {
				if d.Values[a] != d.Values[b] && len(d.Values) != 2 { // of two it is a switch read the other way round
					add(control.Positions[a], control.Positions[b], func(d *mixcore.Demand) {
						d.Values[a], d.Values[b] = d.Values[b], d.Values[a]
					})
				}
			}
		}
		for a := 1; a < len(control.Detents) && d.Values == nil && d.Curve == nil; a++ {
			from, to := control.Detents[a-1], control.Detents[a]
			curve := exchanging(control, from.At, to.At)
			if sameCurve(curve, mirrored(nil, control)) { // of two at the ends it is a lever read the other way round
				continue
			}
			add(from.Name, to.Name, func(d *mixcore.Demand) { d.Curve = curve })
		}
	}
}

// exchanging is a lever's straight line with two places of it exchanged.
func exchanging(control *mixcore.Control, a, b mixcore.Percent) *mixcore.Curve {
	low, high := control.Range()
	at := []float64{low, high}
	for _, d := range control.Detents {
		at = append(at, float64(d.At))
	}
	slices.Sort(at)
	c := &mixcore.Curve{}
	for _, x := range slices.Compact(at) {
		y := x
		switch x {
		case float64(a):
			y = float64(b)
		case float64(b):
			y = float64(a)
		}
		c.Points = append(c.Points, mixcore.Point{X: x, Y: y})
	}
	return c
}

func reversedTrims(l *lister) {
	for i := range l.s.Demands {
		d := &l.s.Demands[i]
		if d.Trim == mixcore.NoTrim || d.TrimRange == 0 {
			continue
		}
		name := "the " + l.s.Controls[d.Trim].Name
		l.add(back(name+" is reversed for "+d.Name, "reverse "+name+" for "+d.Name), where.Demand(l.m, i, "trim"),
			func(s *mixcore.Setup) { s.Demands[i].TrimRange *= -1 })
	}
}

func missingTrims(l *lister) {
	for i := range l.s.Demands {
		d := &l.s.Demands[i]
		if d.Trim == mixcore.NoTrim || d.TrimRange == 0 {
			continue
		}
		name := "the " + l.s.Controls[d.Trim].Name
		l.add(words{name + " does nothing for " + d.Name, "take " + name + " off " + d.Name, "give " + d.Name + " " + name + " again"},
			where.Demand(l.m, i, "trim"), func(s *mixcore.Setup) { s.Demands[i].TrimRange = 0 })
	}
}

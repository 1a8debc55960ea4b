package bench

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/fit"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// When a correction is offered. Readings are good to half a degree, which leaves 0.3° over
// as a root mean square: a modelling choice, no source.
const (
	worthFrom   = 0.4 // degrees: less is left over as written, and nothing is to be corrected
	worthBetter = 0.7 // what is left over must fall to this much of it
	stopsNear   = 0.5 // degrees: a surface this close to its stop tells nothing about its linkage
)

// wayWrong says whether something went another way than it should, or not at all: then the
// set-up is not that of the model, and what channels put out is not known.
func (w *Walk) wayWrong(steps []stepState) bool {
	for i := range w.Steps {
		s, st := &w.Steps[i], &steps[i]
		for k := range s.Expect {
			e := &s.Expect[k]
			if !w.differs(s, e, st) {
				continue
			}
			switch st.saw[e.Part] {
			case TooLittle, TooMuch:
				continue
			}
			seen, _ := w.seen(s, e, st, false)
			p := &w.Model.Setup.Parts[e.Part]
			if p.Motion == mixcore.Power || seen.Early != nil && *seen.Early || seen.Way != sight.Unclear && w.Look.Ways(p, e.Move)&sight.Of(seen.Way) == 0 {
				return true
			}
		}
	}
	return false
}

// measurements are what was measured of a surface, in order of the steps, with what the
// channel of its first servo put out. Where it stands at its stop it tells nothing of what moves it.
func (w *Walk) measurements(steps []stepState, part int) (points []measurement) {
	p := &w.Model.Setup.Parts[part]
	out := w.Model.Plan.NewOutput()
	for i := range steps {
		for _, before := range []bool{true, false} {
			at, ok := steps[i].read[reading{part, before}]
			if !ok {
				continue
			}
			in := &w.Steps[i].To
			if before {
				in = &w.Steps[i].From
			}
			w.Model.Plan.Eval(in, out)
			if at >= float64(p.Stops.Plus)-stopsNear || at <= -float64(p.Stops.Minus)+stopsNear || out.Parts[part].Limits&mixcore.AtStop != 0 {
				continue
			}
			points = append(points, measurement{fit.Point{Output: out.Channels[p.Drives[0].Channel].Output, Angle: mixcore.Degrees(at)}, out.Parts[part].Angle})
		}
	}
	return points
}

// fits are what measurements offer to correct, part by part.
func (w *Walk) fits(steps []stepState) []result.BenchFit {
	list, _, _ := w.corrections(steps)
	return list
}

// corrections are what measurements offer, and what of it is to be written: as the file has
// it, or with measured tables in place of linkages.
func (w *Walk) corrections(steps []stepState) (list []result.BenchFit, write, tables []fit.Correction) {
	wrong := w.wayWrong(steps)
	for _, part := range w.numbers {
		p := &w.Model.Setup.Parts[part]
		if !p.Motion.Hinged() {
			continue
		}
		points := w.measurements(steps, part)
		if len(points) == 0 {
			continue
		}
		if len(p.Drives) > 1 {
			list = append(list, w.severalServos(part, points))
			continue
		}
		f, c := w.fit(part, pointsOf(points))
		if f == nil {
			continue
		}
		if wrong && (f.Offered || f.Table != "") {
			f.Offered, f.Changes, f.Table, f.TableAfter = false, nil, "", 0
			f.Note = "not offered: something goes another way than it should, so what the channels put out is not known. Put that right first, and measure again."
		}
		list = append(list, *f)
		if f.Offered {
			write = append(write, fit.Correction{Part: part, Linkage: c.Linkage, Table: c.Table})
		}
		switch {
		case f.Table != "":
			tables = append(tables, fit.Correction{Part: part, Table: c.instead})
		case f.Offered:
			tables = append(tables, fit.Correction{Part: part, Linkage: c.Linkage, Table: c.Table})
		}
	}
	return list, write, tables
}

// fit fits one part; nil where too little was measured to say anything.
func (w *Walk) fit(part int, points []fit.Point) (*result.BenchFit, *correction) {
	d := &w.Model.Setup.Parts[part].Drives[0]
	f := &result.BenchFit{Part: w.Model.Setup.Parts[part].Name, Kind: "measured"}
	c := &correction{}
	var before, after []float64
	var err error
	if d.Linkage != nil {
		f.Kind = "linkage"
		f.Place = placeOf(where.Drive(w.Model, part, 0, "linkage"))
		var fitted *fit.Fitted
		low, high := w.outputs(d.Channel)
		if fitted, err = fit.LinkageOver(d, points, low, high); err == nil {
			c.Linkage = &fitted.Geometry
			before, after = fitted.Before, fitted.After
			f.Changes = linkageChanges(d.Linkage, fitted)
			f.Note = linkageNote(fitted)
		}
	} else {
		f.Place = placeOf(where.Drive(w.Model, part, 0, "measured"))
		var tabled *fit.Tabled
		if tabled, err = fit.Table(d.Table, points); err == nil {
			c.Table = tabled.Table
			before, after = tabled.Before, tabled.After
			f.Changes = w.tableChanges(part, d.Table, tabled.Table)
		}
	}
	switch {
	case errors.Is(err, fit.ErrFewPoints):
		return nil, nil
	case err != nil:
		f.Note = "nothing is offered: " + err.Error()
		w.instead(f, c, part, points)
		return f, c
	}
	f.Before, f.After = round(fit.RMS(before)), round(fit.RMS(after))
	f.Points = w.fitPoints(part, fit.Merged(points), before, after)
	f.Offered = f.Before >= worthFrom && f.After <= worthBetter*f.Before && len(f.Changes) > 0
	w.instead(f, c, part, points)
	if !f.Offered {
		f.Changes, f.After = nil, f.Before
		for i := range f.Points {
			f.Points[i].After = f.Points[i].Before
		}
		f.Note = "what is written fits as well as can be told."
		if f.Before >= worthFrom {
			f.Note = "nothing that fits better was found: measure again, at more places of the control."
		}
	}
	return f, c
}

// outputs are the least and the most that a channel puts out at any step that is known.
func (w *Walk) outputs(channel int) (low, high mixcore.Percent) {
	out := w.Model.Plan.NewOutput()
	t := w.table()
	for i := range t.Steps {
		w.Model.Plan.Eval(&t.Steps[i].To, out)
		at := out.Channels[channel].Output
		low, high = min(low, at), max(high, at)
	}
	return low, high
}

func placeOf(p diag.Place) result.Place {
	return result.Place{File: p.File, Line: p.Line, Column: p.Column}
}

func linkageChanges(was *linkage.Geometry, f *fit.Fitted) (list []result.FitChange) {
	add := func(key string, was, is, within float64, unit string) {
		if math.Abs(was-is) < 1e-9 {
			return
		}
		c := result.FitChange{Key: key, Is: trimmed(is) + unit}
		if was != 0 {
			c.Was = trimmed(was) + unit
		} else {
			c.Was = "none"
		}
		if within > 0 {
			c.Within = "told to ± " + trimmed(math.Max(2*within, 0.01)) + unit
		}
		list = append(list, c)
	}
	add("arm_mm", was.Arm, f.Geometry.Arm, f.RatioOff*f.Geometry.Horn, " mm")
	add("arm_deg", was.ArmDeg, f.Geometry.ArmDeg, f.ArmOff, "°")
	add("pushrod_mm", was.Pushrod, f.Geometry.Pushrod, math.NaN(), " mm")
	return list
}

func trimmed(x float64) string {
	return fmt.Sprint(math.Round(x*100) / 100)
}

func linkageNote(f *fit.Fitted) string {
	note := fmt.Sprintf("The ratio of arm to horn is %s. How the horn leans shows as how the arm does, and is kept as written.", trimmed(f.Geometry.Arm/f.Geometry.Horn))
	if math.IsNaN(f.RatioOff) {
		note += " As many values were fitted as outputs measured: measure more to know how well."
	}
	return note
}

func (w *Walk) tableChanges(part int, was, is []mixcore.Point) (list []result.FitChange) {
	motion := w.Model.Setup.Parts[part].Motion
	angle := func(y float64) string {
		if y == 0 {
			return "0°"
		}
		return trimmed(math.Abs(y)) + "° " + wording.Direction(motion, y > 0)
	}
	for _, p := range is {
		c := result.FitChange{Key: "measured at " + trimmed(p.X) + " %", Is: angle(p.Y), Was: "none"}
		if i := slices.IndexFunc(was, func(o mixcore.Point) bool { return o.X == p.X }); i >= 0 {
			if c.Was = angle(was[i].Y); c.Was == c.Is {
				continue
			}
		}
		list = append(list, c)
	}
	return list
}

func (w *Walk) fitPoints(part int, points []fit.Point, before, after []float64) (list []result.FitPoint) {
	for i, p := range points {
		list = append(list, result.FitPoint{
			Output: shownOutput(p.Output), Measured: w.placeWords(part, float64(p.Angle)),
			Before: round(math.Abs(before[i])), After: round(math.Abs(after[i])),
		})
	}
	return list
}

// Corrected is the airframe file with what measurements offer. problem says why there is
// none; text is nil then.
func (g *Guide) Corrected() (text []byte, problem string) {
	_, write, _ := g.walk.corrections(g.steps)
	return g.rewritten(write)
}

// CorrectedAsTables is Corrected with a measured table in place of every linkage for which
// one is offered.
func (g *Guide) CorrectedAsTables() (text []byte, problem string) {
	_, _, tables := g.walk.corrections(g.steps)
	return g.rewritten(tables)
}

func (g *Guide) rewritten(write []fit.Correction) (text []byte, problem string) {
	if len(write) == 0 {
		return nil, "the measurements offer nothing to correct"
	}
	text, err := fit.Rewrite(g.walk.Model, write)
	if err != nil {
		return nil, err.Error()
	}
	return text, ""
}

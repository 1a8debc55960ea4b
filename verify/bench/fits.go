package bench

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/chain/where"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
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

// wrong says of the first thing that went another way than it should, or not at all, what
// that was: then the set-up is not that of the model, and what channels put out is not
// known. It is empty where nothing did. How far something goes, and how soon, tells nothing
// of that.
func (w *Walk) wrong(steps []stepState) string {
	for i := range w.Steps {
		s, st := &w.Steps[i], &steps[i]
		for k := range s.Expect {
			if did := w.astray(s, &s.Expect[k], st); did != "" {
				return fmt.Sprintf("the %s %s in step %d", w.Model.Setup.Parts[s.Expect[k].Part].Name, did, i+1)
			}
		}
	}
	return ""
}

// astray is what one part did instead of what it should, where that is no matter of size;
// else it is empty.
func (w *Walk) astray(s *Step, e *Expect, st *stepState) string {
	p := &w.Model.Setup.Parts[e.Part]
	saw := st.saw[e.Part]
	if saw == TooLittle || saw == TooMuch || saw == WrongTime {
		return ""
	}
	if p.Motion == mixcore.Power {
		if len(w.off(e, st)) == 0 && w.differs(s, e, st) {
			return "did not do what it should"
		}
		return ""
	}
	for r, at := range st.read {
		should := e.Move.To
		if r.before {
			should = e.Move.From
		}
		sure := visible(w.Look, p)
		if r.part == e.Part && at*should < 0 && math.Abs(at) >= sure && math.Abs(should) >= sure {
			return "was on the other side of neutral"
		}
	}
	seen, _ := w.seen(s, e, st, false)
	way := w.Look.Way(p, e.Move)
	switch {
	case seen.Way == sight.Unclear, w.Look.Ways(p, e.Move)&sight.Of(seen.Way) != 0:
		return ""
	case seen.Way == sight.Still:
		_, said := st.saw[e.Part]
		if !said { // measured before and after: it may go the right way by too little to be seen
			return ""
		}
		return "did not move"
	case way == sight.Plus, way == sight.Minus:
		return "went the other way"
	}
	if _, said := st.saw[e.Part]; !said {
		return ""
	}
	return "moved, and should not"
}

// measurements are what was measured of a surface, in order of the steps, with what the
// channel of its first servo put out and with what is computed. Where it stands at its stop
// it tells nothing of what moves it.
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

// outputs is from where to where each channel goes, of all that the walk and the steps that may
// be asked behind it do.
func (w *Walk) outputs() [][2]mixcore.Percent {
	list := make([][2]mixcore.Percent, len(w.Model.Setup.Channels))
	out := w.Model.Plan.NewOutput()
	add := func(in *mixcore.Input) {
		w.Model.Plan.Eval(in, out)
		for i := range list {
			at := out.Channels[i].Output
			list[i] = [2]mixcore.Percent{min(list[i][0], at), max(list[i][1], at)}
		}
	}
	for i := range w.Steps {
		add(&w.Steps[i].From)
		add(&w.Steps[i].To)
	}
	for _, s := range table.Steps(w.Model) {
		add(&s.To)
	}
	return list
}

// fits are what measurements offer to correct, part by part.
func (w *Walk) fits(steps []stepState) []result.BenchFit {
	list, _, _ := w.corrections(steps)
	return list
}

// corrections are what measurements offer, and what of it is to be written: as the file has
// it, or with measured tables in place of linkages.
func (w *Walk) corrections(steps []stepState) (list []result.BenchFit, write, tables []fit.Correction) {
	wrong := w.wrong(steps)
	outputs := sync.OnceValue(w.outputs)
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
		f, c := w.fit(part, points, func() [2]mixcore.Percent { return outputs()[p.Drives[0].Channel] })
		if f == nil {
			continue
		}
		if wrong != "" && (f.Offered || f.Table != "") {
			f.Table, f.TableAfter = "", 0
			withhold(f, "not offered: "+wrong+", so what the channels put out is not known. Put that right first, and measure again.")
		}
		as, table := fit.Correction{Part: part, Linkage: c.Linkage, Table: c.Table}, fit.Correction{Part: part, Table: c.instead}
		if f.Offered {
			if _, err := fit.Rewrite(w.Model, []fit.Correction{as}); err != nil {
				withhold(f, "not offered: the airframe file cannot be written so: "+err.Error())
			}
		}
		if f.Table != "" {
			if _, err := fit.Rewrite(w.Model, []fit.Correction{table}); err != nil {
				f.Table, f.TableAfter = "", 0
			}
		}
		if !f.Offered && f.Table != "" {
			f.Note = strings.TrimSuffix(f.Note, ".") + "; with --as-table a measured table is written in place of the linkage."
		}
		list = append(list, *f)
		if f.Offered {
			write = append(write, as)
		}
		switch {
		case f.Table != "":
			tables = append(tables, table)
		case f.Offered:
			tables = append(tables, as)
		}
	}
	return list, write, tables
}

// fit fits one part; nil where too little was measured to say anything. reach is from where
// to where its channel goes.
func (w *Walk) fit(part int, measured []measurement, reach func() [2]mixcore.Percent) (*result.BenchFit, *correction) {
	points, off := pointsOf(measured), residuals(measured)
	d := &w.Model.Setup.Parts[part].Drives[0]
	f := &result.BenchFit{Part: w.Model.Setup.Parts[part].Name, Kind: "measured"}
	c := &correction{}
	var before, after []float64
	var err error
	if d.Linkage != nil {
		f.Kind = "linkage"
		f.Place = placeOf(where.Drive(w.Model, part, 0, "linkage"))
		var fitted *fit.Fitted
		if fitted, err = fit.Linkage(d, points, reach()[0], reach()[1]); err == nil {
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
	case errors.Is(err, fit.ErrFewPoints) && fit.RMS(off) < worthFrom:
		return nil, nil
	case err != nil:
		f.Before = round(fit.RMS(off))
		f.After = f.Before
		f.Note = "nothing is offered: " + err.Error() + "."
		w.instead(f, c, part, points, reach)
		return f, c
	}
	f.Before, f.After = round(fit.RMS(before)), round(fit.RMS(after))
	f.Points = w.fitPoints(part, fit.Merged(points), before, after)
	f.Offered = f.Before >= worthFrom && f.After <= worthBetter*f.Before && len(f.Changes) > 0
	w.instead(f, c, part, points, reach)
	if !f.Offered {
		note := "what is written fits as well as can be told."
		if f.Before >= worthFrom {
			note = "nothing that fits better was found: measure again, at more places of the control."
		}
		withhold(f, note)
	}
	return f, c
}

// withhold takes an offer back, and says why.
func withhold(f *result.BenchFit, why string) {
	f.Offered, f.Changes, f.After, f.Note = false, nil, f.Before, why
	for i := range f.Points {
		f.Points[i].After = f.Points[i].Before
	}
}

func placeOf(p diag.Place) result.Place {
	return result.Place{File: p.File, Line: p.Line, Column: p.Column}
}

func linkageChanges(was *linkage.Geometry, f *fit.Fitted) (list []result.FitChange) {
	add := func(key string, was, is, within float64, unit string) {
		if trimmed(was) == trimmed(is) {
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
	add("pushrod_mm", was.Pushrod, f.Geometry.Pushrod, f.PushrodOff, " mm")
	return list
}

func trimmed(x float64) string {
	return fmt.Sprint(math.Round(x*100) / 100)
}

// angleWords is an angle of a table as a file has it, with the way it goes in large letters.
func angleWords(motion mixcore.Motion, y float64) string {
	if y == 0 {
		return "0°"
	}
	return trimmed(math.Abs(y)) + "° " + wording.Direction(motion, y > 0)
}

func linkageNote(f *fit.Fitted) string {
	return fmt.Sprintf("The ratio of arm to horn is %s. How the horn leans shows as how the arm does, and is kept as written.", trimmed(f.Geometry.Arm/f.Geometry.Horn))
}

func (w *Walk) tableChanges(part int, was, is []mixcore.Point) (list []result.FitChange) {
	motion := w.Model.Setup.Parts[part].Motion
	for _, p := range is {
		c := result.FitChange{Key: "measured at " + trimmed(p.X) + " %", Is: angleWords(motion, p.Y), Was: "none"}
		if i := slices.IndexFunc(was, func(o mixcore.Point) bool { return o.X == p.X }); i >= 0 {
			if c.Was = angleWords(motion, was[i].Y); c.Was == c.Is {
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
	list, write, _ := g.walk.corrections(g.steps)
	return g.rewritten(list, write)
}

// CorrectedAsTables is Corrected with a measured table in place of every linkage for which
// one is offered.
func (g *Guide) CorrectedAsTables() (text []byte, problem string) {
	list, _, tables := g.walk.corrections(g.steps)
	return g.rewritten(list, tables)
}

func (g *Guide) rewritten(list []result.BenchFit, write []fit.Correction) (text []byte, problem string) {
	if len(write) == 0 {
		return nil, nothingWritten(list)
	}
	text, err := fit.Rewrite(g.walk.Model, write)
	if err != nil {
		return nil, err.Error()
	}
	return text, ""
}

// nothingWritten is why no correction is written: where something is off, what speaks against
// correcting it.
func nothingWritten(list []result.BenchFit) string {
	var why []string
	for i := range list {
		if f := &list[i]; f.Before >= worthFrom {
			why = append(why, fmt.Sprintf("%s, off by %s° as written: %s", f.Part, trimmed(f.Before), strings.TrimSuffix(f.Note, ".")))
		}
	}
	if why == nil {
		return "the measurements offer nothing to correct"
	}
	return "what is off cannot be corrected so (" + strings.Join(why, "; ") + ")"
}

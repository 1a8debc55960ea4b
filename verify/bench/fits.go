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
	"example.com/hingeline/verify/chain/where"
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

// measurements are what was measured of a surface with one of its servos alone, from 1, or,
// where servo is 0, with all, in order of the steps, with what the channel of that servo, or
// of the first, put out and with what is computed. Where it stands at its stop it tells
// nothing of what moves it.
func (w *Walk) measurements(steps []stepState, part, servo int) (points []measurement) {
	p := &w.Model.Setup.Parts[part]
	atStop := func(at float64) bool {
		return at >= float64(p.Stops.Plus)-stopsNear || at <= -float64(p.Stops.Minus)+stopsNear
	}
	out := w.Model.Plan.NewOutput()
	for i := range steps {
		for _, before := range []bool{true, false} {
			at, ok := steps[i].read[reading{part, before, servo}]
			if !ok {
				continue
			}
			in := &w.Steps[i].To
			if before {
				in = &w.Steps[i].From
			}
			w.Model.Plan.Eval(in, out)
			computed, stopped := out.Parts[part].Angle, out.Parts[part].Limits&mixcore.AtStop != 0
			if servo > 0 {
				computed = mixcore.Degrees(w.byOne(part, servo-1, in))
				stopped = computed == p.Stops.Plus || computed == -p.Stops.Minus
			}
			if atStop(at) || stopped {
				continue
			}
			output := out.Channels[p.Drives[max(servo-1, 0)].Channel].Output
			points = append(points, measurement{fit.Point{Output: output, Angle: mixcore.Degrees(at)}, computed})
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
	return w.corrections(steps).list
}

// offers are what measurements offer, and what of it is to be written: as the file has it, or
// with measured tables in place of linkages.
type offers struct {
	list          []result.BenchFit
	write, tables []fit.Correction
}

// corrections are what measurements offer.
func (w *Walk) corrections(steps []stepState) offers {
	o := offers{}
	wrong := w.wrong(steps)
	outputs := sync.OnceValue(w.outputs)
	for _, part := range w.numbers {
		p := &w.Model.Setup.Parts[part]
		if !p.Motion.Hinged() {
			continue
		}
		first := len(o.list)
		if len(p.Drives) > 1 {
			if f := w.together(steps, part, outputs); f != nil {
				o.list = append(o.list, *f)
			}
		}
		for i := range p.Drives {
			s := servo{part, i, 0}
			if len(p.Drives) > 1 {
				s.number = i + 1
			}
			if points := w.measurements(steps, part, s.number); len(points) > 0 {
				w.offer(&o, s, points, outputs, wrong)
			}
		}
		if against := w.against(steps, part); against != "" && first < len(o.list) {
			note := &o.list[first].Note
			*note = strings.TrimSpace(*note + " " + against)
		}
	}
	return o
}

// servo is one that moves a part: its place among Drives, and its number where there are
// others, else 0.
type servo struct{ part, drive, number int }

// offer adds what was measured of one servo, and what is to be corrected of it.
func (w *Walk) offer(o *offers, s servo, points []measurement, outputs func() [][2]mixcore.Percent, wrong string) {
	f, c := w.fit(s, points, outputs)
	if f == nil {
		return
	}
	if wrong != "" && (f.Offered || f.Table != "") {
		f.Table, f.TableAfter = "", 0
		withhold(f, "not offered: "+wrong+", so what the channels put out is not known. Put that right first, and measure again.")
	}
	as := fit.Correction{Part: s.part, Servo: s.drive, Linkage: c.Linkage, Table: c.Table}
	table := fit.Correction{Part: s.part, Servo: s.drive, Table: c.instead}
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
	o.list = append(o.list, *f)
	if f.Offered {
		o.write = append(o.write, as)
	}
	switch {
	case f.Table != "":
		o.tables = append(o.tables, table)
	case f.Offered:
		o.tables = append(o.tables, as)
	}
}

// fit fits one servo; nil where too little was measured to say anything.
func (w *Walk) fit(s servo, measured []measurement, outputs func() [][2]mixcore.Percent) (*result.BenchFit, *correction) {
	points, off := pointsOf(measured), residuals(measured)
	d := &w.Model.Setup.Parts[s.part].Drives[s.drive]
	reach := func() [2]mixcore.Percent { return outputs()[d.Channel] }
	f := &result.BenchFit{Part: w.Model.Setup.Parts[s.part].Name, Servo: s.number, Kind: "measured"}
	c := &correction{}
	var before, after []float64
	var err error
	if d.Linkage != nil {
		f.Kind = "linkage"
		f.Place = placeOf(where.Drive(w.Model, s.part, s.drive, "linkage"))
		var fitted *fit.Fitted
		if fitted, err = fit.Linkage(d, points, reach()[0], reach()[1]); err == nil {
			c.Linkage = &fitted.Geometry
			before, after = fitted.Before, fitted.After
			f.Changes = linkageChanges(d.Linkage, fitted)
			f.Note = linkageNote(fitted)
		}
	} else {
		f.Place = placeOf(where.Drive(w.Model, s.part, s.drive, "measured"))
		var tabled *fit.Tabled
		if tabled, err = fit.Table(d.Table, points); err == nil {
			c.Table = tabled.Table
			before, after = tabled.Before, tabled.After
			f.Changes = w.tableChanges(s.part, d.Table, tabled.Table)
		}
	}
	switch {
	case errors.Is(err, fit.ErrFewPoints) && fit.RMS(off) < worthFrom && s.number == 0:
		return nil, nil
	case err != nil:
		f.Before = round(fit.RMS(off))
		f.After = f.Before
		f.Note = "nothing is offered: " + err.Error() + "."
		w.instead(f, c, s, points, reach)
		return f, c
	}
	f.Before, f.After = round(fit.RMS(before)), round(fit.RMS(after))
	f.Points = w.fitPoints(s.part, fit.Merged(points), before, after)
	f.Offered = f.Before >= worthFrom && f.After <= worthBetter*f.Before && len(f.Changes) > 0
	w.instead(f, c, s, points, reach)
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
	o := g.walk.corrections(g.steps)
	return g.rewritten(o.list, o.write)
}

// CorrectedAsTables is Corrected with a measured table in place of every linkage for which
// one is offered.
func (g *Guide) CorrectedAsTables() (text []byte, problem string) {
	o := g.walk.corrections(g.steps)
	return g.rewritten(o.list, o.tables)
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
			why = append(why, fmt.Sprintf("%s, off by %s° as written: %s", f.Name(), trimmed(f.Before), strings.TrimSuffix(f.Note, ".")))
		}
	}
	if why == nil {
		return "the measurements offer nothing to correct"
	}
	return "what is off cannot be corrected so (" + strings.Join(why, "; ") + ")"
}

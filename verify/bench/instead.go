package bench

import (
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/fit"
	"example.com/hingeline/verify/result"
)

// correction is what one servo may get.
type correction struct {
	Linkage *linkage.Geometry
	Table   []mixcore.Point
	instead []mixcore.Point // a table in place of a linkage
}

// instead works out a measured table in place of a linkage: what the linkage does as
// written, moved to what was measured. It goes through what was measured, with what was
// misread; so it is no better than a linkage that fits, but there may be one where no
// linkage does.
func (w *Walk) instead(f *result.BenchFit, c *correction, s servo, points []fit.Point, reach func() [2]mixcore.Percent) {
	p := &w.Model.Setup.Parts[s.part]
	d := &p.Drives[s.drive]
	if d.Linkage == nil {
		return
	}
	low, high := w.Model.Setup.Channels[d.Channel].Reach()
	was, err := fit.TableOf(d, low, high)
	if err != nil {
		return
	}
	tabled, err := fit.TableOver(was, points, reach()[0], reach()[1])
	if err != nil {
		return
	}
	before, after := fit.RMS(tabled.Before), fit.RMS(tabled.After)
	if before < worthFrom || after > worthBetter*before {
		return
	}
	if f.Points == nil {
		f.Before, f.After = round(before), round(before)
		f.Points = w.fitPoints(s.part, fit.Merged(points), tabled.Before, tabled.Before)
	}
	c.instead = tabled.Table
	f.TableAfter = round(after)
	var list []string
	for _, at := range tabled.Table {
		list = append(list, trimmed(at.X)+" %: "+angleWords(p.Motion, at.Y))
	}
	f.Table = strings.Join(list, ", ")
}

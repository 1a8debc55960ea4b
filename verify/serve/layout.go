package serve

import (
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/poses"
	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/sheet"
	"example.com/hingeline/verify/wording"
)

// subject is what is shown from one Show to the next. It never changes.
type subject struct {
	revision int
	since    string // when the model was read
	model    *airframes.Model
	shape    result.Shape
	live     *figure.Live
	probe    *poses.Probe
	layout   layout
	checks   checks
}

func newSubject(now Now, revision int) *subject {
	s := &subject{revision: revision, model: now.Model, shape: sheet.Shape(now.Model), probe: poses.New(now.Model.Plan)}
	s.layout = s.layOut()
	failed := failuresOf(now.Model, now.Report)
	number := func(part int) int { return s.layout.Parts[part].Number }
	s.checks = checksOf(&now, revision, failed, number)
	tags := make([]figure.Tag, len(s.layout.Parts))
	for i := range tags {
		tags[i].Number = number(i)
	}
	for _, one := range s.checks.Marks {
		tags[one.Part].Fails, tags[one.Part].Doubt = one.Fails, one.short
	}
	s.live = figure.NewLive(&s.shape, tags)
	return s
}

// layout is what a page needs to know of a model before anything moves.
type layout struct {
	Kind     string    `json:"kind"` // "layout"
	Revision int       `json:"revision"`
	Model    string    `json:"model"`
	Measured bool      `json:"measured"` // the wing's size is from the file
	Controls []control `json:"controls"`
	Parts    []part    `json:"parts"`
	Cautions []string  `json:"cautions"` // the dangerous part first
}

// control is how one control can be moved.
type control struct {
	Name     string   `json:"name"`
	Sort     string   `json:"sort"` // "stick", "trim", "lever" or "switch"
	Low      float64  `json:"low"`
	High     float64  `json:"high"`
	Rest     float64  `json:"rest"`
	Turned   bool     `json:"turned"`  // forward, its low end, is drawn as the high one
	Upright  bool     `json:"upright"` // it moves fore and aft: it is drawn upright, with forward at the top
	Says     []string `json:"says"`    // in words, at each whole number from low to high
	Detents  []detent `json:"detents"`
	LowWord  string   `json:"lowWord"`
	HighWord string   `json:"highWord"`
}

type detent struct {
	Name string  `json:"name"`
	At   float64 `json:"at"`
}

// part is one part that moves.
type part struct {
	Name    string `json:"name"`
	Number  int    `json:"number"` // on the way round the model, from 1, as at the bench
	Stage   string `json:"stage"`
	Motor   bool   `json:"motor"`
	Against []int  `json:"against"` // the controls without positions that bear on it
}

var sorts = map[mixcore.ControlKind]string{
	mixcore.AxisControl: "stick", mixcore.TrimControl: "trim", mixcore.LeverControl: "lever", mixcore.SwitchControl: "switch",
}

func (s *subject) layOut() layout {
	m := s.model
	l := layout{Kind: "layout", Revision: s.revision, Model: m.Name, Measured: s.shape.Measured, Cautions: verify.Cautions(m)}
	throttles := s.throttles()
	for i := range m.Setup.Controls {
		c := &m.Setup.Controls[i]
		low, high := c.Range()
		k := control{Name: c.Name, Sort: sorts[c.Kind], Low: low, High: high, Rest: c.Rest(), Turned: c.Axis == mixcore.Pitch}
		k.Upright = k.Turned || slices.Contains(throttles, i)
		for at := low; at <= high; at++ {
			k.Says = append(k.Says, wording.Stand(c, at))
		}
		for _, d := range c.Detents {
			k.Detents = append(k.Detents, detent{d.Name, float64(d.At)})
		}
		k.LowWord, k.HighWord = wording.Stand(c, low), wording.Stand(c, high)
		if c.Axis != mixcore.NoAxis {
			k.LowWord, k.HighWord = wording.AxisSide(c.Axis, false), wording.AxisSide(c.Axis, true)
		}
		l.Controls = append(l.Controls, k)
	}
	for i := range m.Setup.Parts {
		k := part{Name: m.Setup.Parts[i].Name, Number: s.shape.Parts[i].Number, Stage: string(s.shape.Parts[i].Stage), Motor: m.Setup.Parts[i].Motion == mixcore.Power}
		for _, c := range s.probe.PartReach(i).Controls() {
			if m.Setup.Controls[c].Kind != mixcore.SwitchControl {
				k.Against = append(k.Against, c)
			}
		}
		l.Parts = append(l.Parts, k)
	}
	return l
}

// throttles are the levers that a motor hears. Which way any other lever is pushed, no file
// says.
func (s *subject) throttles() (list []int) {
	setup := &s.model.Setup
	for i := range setup.Parts {
		if setup.Parts[i].Motion != mixcore.Power {
			continue
		}
		for _, c := range s.probe.PartReach(i).Controls() {
			if setup.Controls[c].Kind == mixcore.LeverControl {
				list = append(list, c)
			}
		}
	}
	return list
}

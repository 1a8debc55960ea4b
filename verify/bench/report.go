package bench

import (
	"context"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Report is what the walk has come to so far. Scripts, which may be none, are what causes
// are held against. Tool, file names, findings and cautions are left to who asked for it.
func (g *Guide) Report(ctx context.Context, files []script.File) *result.Bench {
	r := g.seenSoFar()
	w := g.walk
	r.Ratios = w.ratios(g.steps)
	r.Throws = w.throws(g.steps)
	r.Fits = w.fits(g.steps)
	for i := range g.steps {
		r.Sizes += w.sizes(&w.Steps[i], &g.steps[i])
	}
	if r.Verdict == result.SeenDiffers {
		r.Causes = g.causes(ctx, files)
	}
	return r
}

// seenSoFar is the report without what takes time.
func (g *Guide) seenSoFar() *result.Bench {
	w := g.walk
	r := &result.Bench{Model: result.Model{Name: w.Model.Name}, Ruler: w.Look.Ruler, Date: g.last}
	for i := range w.Steps {
		r.Steps = append(r.Steps, w.step(i, &g.steps[i]))
	}
	r.Unmoved = w.unmoved(r.Steps)
	r.Verdict = g.verdict(r.Steps)
	return r
}

// unmoved are the controls that stood at rest in every step that was looked at.
func (w *Walk) unmoved(steps []result.BenchStep) (names []string) {
	for i := range w.Model.Setup.Controls {
		c := &w.Model.Setup.Controls[i]
		moved := false
		for k := range steps {
			looked := steps[k].State != result.StepOpen && steps[k].State != result.StepSkipped
			s := &w.Steps[k]
			moved = moved || looked && (s.From.Position[i] != c.Rest() || s.To.Position[i] != c.Rest())
		}
		if !moved {
			names = append(names, c.Name)
		}
	}
	return names
}

func (g *Guide) verdict(steps []result.BenchStep) result.BenchVerdict {
	all, any := g.ended && len(steps) > 0, false
	for i := range steps {
		switch steps[i].State {
		case result.StepDiffers:
			return result.SeenDiffers
		case result.StepAsExpected:
			any = true
		case result.StepByEye:
			all, any = false, true
		default:
			all = false
		}
	}
	switch {
	case all:
		return result.SeenAsExpected
	case any:
		return result.NotFinished
	}
	return result.NothingSeen
}

// sizes is 1 of a step in which something moved too little or too much and was not measured.
func (w *Walk) sizes(s *Step, st *stepState) int {
	for i := range s.Expect {
		part := s.Expect[i].Part
		_, read := st.read[reading{part: part}]
		if saw := st.saw[part]; !read && (saw == TooLittle || saw == TooMuch) {
			return 1
		}
	}
	return 0
}

// causes is what explains what was seen. Where nothing does, and a surface goes to the same
// part of what is computed everywhere, it is what explains the rest.
func (g *Guide) causes(ctx context.Context, files []script.File) *result.Causes {
	all := g.inquiry(ctx, files, nil)
	if all.Left() == 0 {
		if rest := g.withoutSizes(ctx, files); rest != nil {
			if c := rest.Causes(); c.Verdict != result.NoCause || len(c.Near) > 0 {
				return c
			}
		}
	}
	return all.Causes()
}

package bench

import (
	"context"
	"slices"

	"example.com/hingeline/verify/faults/cause"
	"example.com/hingeline/verify/faults/sight"
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
	r.Verdict = g.verdict(r.Steps)
	return r
}

func (g *Guide) verdict(steps []result.BenchStep) result.BenchVerdict {
	all, any := g.ended && len(steps) > 0, false
	for i := range steps {
		switch steps[i].State {
		case result.StepDiffers:
			return result.SeenDiffers
		case result.StepAsExpected:
			any = true
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
		_, read := st.read[reading{part, false}]
		if saw := st.saw[part]; !read && (saw == TooLittle || saw == TooMuch) {
			return 1
		}
	}
	return 0
}

// causes is what explains what was seen. Where nothing does, and a surface goes to the same
// part of what is computed everywhere, it is what explains the rest.
func (g *Guide) causes(ctx context.Context, files []script.File) *result.Causes {
	all := g.inquiry(ctx, files, nil).Causes()
	ratios := g.walk.ratios(g.steps)
	if all.Verdict != result.NoCause || len(ratios) == 0 {
		return all
	}
	rest := g.inquiry(ctx, files, func(part int) bool {
		name := g.walk.Model.Setup.Parts[part].Name
		return slices.ContainsFunc(ratios, func(r result.BenchRatio) bool { return r.Part == name })
	}).Causes()
	if rest.Verdict == result.NoCause && len(rest.Near) == 0 {
		return all
	}
	return rest
}

// inquiry is what the answers leave in question; of parts that sized, which may be nil, says
// go wrong in how far and not in which way, it does not count where they were measured.
func (g *Guide) inquiry(ctx context.Context, files []script.File, sized func(part int) bool) *cause.Session {
	w := g.walk
	look, measured := w.Look, w.Look.Ruler
	for i := range g.steps {
		measured = measured || len(g.steps[i].read) > 0
	}
	if measured && !look.Ruler {
		look.Ruler, look.Accuracy = true, sight.UsualAccuracy
	}
	ask := cause.NewSession(ctx, w.table(), files, look)
	for i := range w.Steps {
		s, st := &w.Steps[i], &g.steps[i]
		if !st.touched() {
			continue
		}
		var list []cause.Seen
		for k := range s.Expect {
			seen, ok := w.seen(s, &s.Expect[k], st, measured)
			if ok && sized != nil && sized(seen.Part) {
				if _, said := st.saw[seen.Part]; !said && (seen.Before != nil || seen.After != nil) {
					seen.Way = sight.Unclear
				}
				seen.Before, seen.After = nil, nil
			}
			if ok {
				list = append(list, seen)
			}
		}
		ask.AnswerAs(i+1, i, list)
	}
	return ask
}

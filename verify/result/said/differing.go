package said

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/hingeline/verify/result"
)

// Difference is a part that differs in the same way in some steps.
type Difference struct {
	Part, How string
	Steps     []*result.BenchStep
	Of        int  // steps that were done and in which it should move
	Measured  bool // it was measured in one of them
}

// Differing are all differences of a walk, in the order in which they were first seen.
func Differing(r *result.Bench) (list []Difference) {
	should := map[string]int{}
	for i := range r.Steps {
		s := &r.Steps[i]
		for k := range s.Parts {
			part := &s.Parts[k]
			if part.Moves && s.State != result.StepOpen && s.State != result.StepSkipped {
				should[part.Name]++
			}
			if !part.Differs {
				continue
			}
			at := slices.IndexFunc(list, func(d Difference) bool { return d.Part == part.Name && d.How == part.How })
			if at < 0 {
				at = len(list)
				list = append(list, Difference{Part: part.Name, How: part.How})
			}
			d := &list[at]
			d.Steps = append(d.Steps, s)
			d.Measured = d.Measured || len(part.Reading) > 0
		}
	}
	for i := range list {
		list[i].Of = should[list[i].Part]
	}
	return list
}

// mostSteps is how many steps are named in a line.
const mostSteps = 12

// DifferenceOf is in a line what a part did and where.
func DifferenceOf(d *Difference) string {
	moves := !slices.ContainsFunc(d.Steps, func(s *result.BenchStep) bool { return !s.Part(d.Part).Moves })
	if moves && len(d.Steps) == d.Of && d.Of > 1 {
		return fmt.Sprintf("%s: %s at all %d steps where it should move", d.Part, d.How, d.Of)
	}
	var numbers []string
	for _, s := range d.Steps[:min(mostSteps, len(d.Steps))] {
		numbers = append(numbers, strconv.Itoa(s.Number))
	}
	text := fmt.Sprintf("%s: %s at %s %s", d.Part, d.How, Number(len(d.Steps), "step", "steps"), strings.Join(numbers, ", "))
	if left := len(d.Steps) - mostSteps; left > 0 {
		text += fmt.Sprintf(" and %d more", left)
	}
	return text
}

// mostParts is how many parts are named in a verdict.
const mostParts = 5

// DifferingParts are the parts that differ somewhere, by name.
func DifferingParts(r *result.Bench) string {
	var names []string
	for _, d := range Differing(r) {
		if !slices.Contains(names, d.Part) {
			names = append(names, d.Part)
		}
	}
	if left := len(names) - mostParts; left > 0 {
		return fmt.Sprintf("%s and %s", strings.Join(names[:mostParts], ", "), Count(left, "other"))
	}
	return strings.Join(names, ", ")
}

// LookFirst is the first cause to look at; empty where none is known.
func LookFirst(r *result.Bench) string {
	c := r.Causes
	switch {
	case c == nil:
		return ""
	case len(c.Suspects) > 0 && len(c.Repairs) > 0:
		text := "LOOK FIRST: " + c.Suspects[0].Text + "; " + AsTheFileSays(&c.Repairs[0])
		if c.Script.Failing > 0 {
			text += ", or the airframe file is wrong: its script fails on it as written"
		}
		return text
	case len(r.Ratios) > 0:
		return "LOOK FIRST: " + r.Ratios[0].Part + " " + RatioOf(&r.Ratios[0])
	case len(c.Near) > 0:
		n := &c.Near[0]
		return "LOOK FIRST: it may be that " + n.Text + ", which explains " + fmt.Sprintf("%d of %d; %s", n.Explains, n.Of, LookAgain(n))
	}
	return ""
}

// HowFar says of a walk by eye that it tells nothing of how far anything goes.
func HowFar(r *result.Bench) string {
	for i := range r.Steps {
		if r.Steps[i].Measured > 0 {
			return "how far was not measured everywhere"
		}
	}
	return "how far was not measured"
}

// ByEye says of a walk with a ruler in how many steps not all was measured; empty where
// there is none.
func ByEye(r *result.Bench) string {
	n, done, measured := 0, 0, 0
	for i := range r.Steps {
		s := &r.Steps[i]
		if s.State == result.StepByEye {
			n++
		}
		if s.State != result.StepOpen && s.State != result.StepSkipped {
			done++
		}
		measured += s.Measured
	}
	switch {
	case n == 0:
		return ""
	case measured == 0:
		return "nothing was measured, it was all seen by eye"
	}
	return fmt.Sprintf("in %d of %s not all was measured, and what was not was seen by eye", n, Count(done, "step"))
}

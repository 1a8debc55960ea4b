package serve

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// failures are the checks that failed, by the parts that they name.
type failures struct {
	report *result.Report // nil where nothing was checked
	of     [][]int        // by part: indices of Report.Checks, ascending
	parts  [][]int        // by check: the parts that it names, ascending; none of one that passed
}

func failuresOf(m *airframes.Model, r *result.Report) failures {
	f := failures{report: r, of: make([][]int, len(m.Setup.Parts))}
	if r == nil {
		return f
	}
	f.parts = make([][]int, len(r.Checks))
	for i := range r.Checks {
		if c := &r.Checks[i]; !c.Passed {
			f.parts[i] = partsOf(m, c)
			for _, part := range f.parts[i] {
				f.of[part] = append(f.of[part], i)
			}
		}
	}
	return f
}

// partsOf are the parts that a check names: those that its sentence is about, or that are
// behind what it got; of a channel those that it drives.
func partsOf(m *airframes.Model, c *result.Check) (list []int) {
	names := strings.Split(strings.ReplaceAll(c.Subject, " and ", ", "), ", ")
	for i := range c.Why {
		names = append(names, c.Why[i].Of)
	}
	for i := range m.Setup.Parts {
		p := &m.Setup.Parts[i]
		named := func(name string) bool {
			if name == p.Name || name == p.Name+" servo" || name == p.Name+" servos" {
				return true
			}
			for _, d := range p.Drives {
				channel := fmt.Sprintf("channel %d", m.Setup.Channels[d.Channel].Number)
				if name == channel || strings.HasPrefix(name, channel+" (") {
					return true
				}
			}
			return false
		}
		if slices.ContainsFunc(names, named) {
			list = append(list, i)
		}
	}
	return list
}

// mostNamed is how many parts are named in a line; of more, how many more there are.
const mostNamed = 3

// named names the parts of which checks fail, the one with most of them first.
func (f *failures) named(m *airframes.Model) string {
	var order []int
	for i := range f.of {
		if len(f.of[i]) > 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return len(f.of[b]) - len(f.of[a]) })
	var names []string
	for n, i := range order {
		if n == mostNamed {
			names = append(names, fmt.Sprintf("%d more", len(order)-n))
			break
		}
		names = append(names, m.Setup.Parts[i].Name)
	}
	return strings.Join(names, ", ")
}

// names are the parts that a check names, as words; what it says of itself where it names
// none.
func (f *failures) names(m *airframes.Model, check int) string {
	var names []string
	for _, i := range f.parts[check] {
		names = append(names, m.Setup.Parts[i].Name)
	}
	if len(names) == 0 {
		return f.report.Checks[check].Subject
	}
	return strings.Join(names, ", ")
}

// first is the first failure in words: which part, what it does, and when.
func (f *failures) first() string {
	if f.report == nil {
		return ""
	}
	i := slices.IndexFunc(f.report.Checks, func(c result.Check) bool { return !c.Passed })
	if i < 0 {
		return ""
	}
	c := &f.report.Checks[i]
	words := c.Subject + ": "
	switch {
	case c.Miss != "":
		words += c.Miss
	default:
		words += "wanted " + c.Wanted + ", got " + c.Got
	}
	if pose := said.PoseOf(c); pose != "" {
		words += " (" + pose + ")"
	}
	return words
}

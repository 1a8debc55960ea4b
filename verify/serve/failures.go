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
	of     [][]int        // by part: indices of Report.Checks that it alone can be blamed for, ascending
	passed []bool         // by part: a check of it alone passed
	asked  []asked        // by check; nothing of one that passed
}

// asked is whom a check that failed can be about.
type asked struct {
	about  []int // the parts that its sentence is about, ascending
	beside []int // the others that it names: what they are compared with, or what is behind it
	alone  bool  // one part, or one channel, and nothing else
}

// named are all the parts that it names.
func (a *asked) named() []int {
	list := slices.Concat(a.about, a.beside)
	slices.Sort(list)
	return list
}

// compares says whether two parts are held against each other, so that either may be wrong.
func (a *asked) compares() bool { return len(a.about) == 1 && len(a.beside) == 1 }

func failuresOf(m *airframes.Model, r *result.Report) failures {
	f := failures{report: r, of: make([][]int, len(m.Setup.Parts)), passed: make([]bool, len(m.Setup.Parts))}
	if r == nil {
		return f
	}
	f.asked = make([]asked, len(r.Checks))
	for i := range r.Checks {
		c := &r.Checks[i]
		a := askedBy(m, c)
		if !c.Passed {
			f.asked[i] = a
		}
		if !a.alone {
			continue
		}
		for _, part := range a.named() {
			if c.Passed {
				f.passed[part] = true
			} else {
				f.of[part] = append(f.of[part], i)
			}
		}
	}
	return f
}

// askedBy is whom a check is about and whom it only names. Of a check that was not
// explained, whom it compares with is known by what it wanted.
func askedBy(m *airframes.Model, c *result.Check) asked {
	subjects := strings.Split(strings.ReplaceAll(c.Subject, " and ", ", "), ", ")
	a := asked{about: partsCalled(m, subjects)}
	var behind []string
	for i := range c.Why {
		behind = append(behind, c.Why[i].Of)
	}
	a.beside = partsCalled(m, behind)
	if len(c.Why) == 0 && len(a.about) > 0 {
		a.beside = mentioned(m, c.Wanted)
	}
	a.beside = slices.DeleteFunc(a.beside, func(part int) bool { return slices.Contains(a.about, part) })
	a.alone = len(subjects) == 1 && len(a.beside) == 0 || len(a.about) == 0 && len(a.beside) == 1
	return a
}

// mentioned are the parts that are named in words. A longer name, also of a control, is no
// mention of a shorter one within it.
func mentioned(m *airframes.Model, words string) (list []int) {
	part := map[string]int{}
	var names []string
	for i := range m.Setup.Controls {
		names, part[m.Setup.Controls[i].Name] = append(names, m.Setup.Controls[i].Name), -1
	}
	for i := range m.Setup.Parts {
		names, part[m.Setup.Parts[i].Name] = append(names, m.Setup.Parts[i].Name), i
	}
	slices.SortStableFunc(names, func(a, b string) int { return len(b) - len(a) })
	for _, name := range names {
		if strings.Contains(words, name) {
			if part[name] >= 0 {
				list = append(list, part[name])
			}
			words = strings.ReplaceAll(words, name, "")
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// partsCalled are the parts that go by names as checks have them: their own or their
// servo's, or that of the channel that drives them.
func partsCalled(m *airframes.Model, names []string) (list []int) {
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

// named names the parts of which checks fail, the one with most of them first, and then
// those of which it is not known which is wrong.
func (f *failures) named(m *airframes.Model) string {
	order := f.marked(fails)
	slices.SortStableFunc(order, func(a, b int) int { return len(f.of[b]) - len(f.of[a]) })
	var list []string
	add := func(before string, parts []int) {
		if len(parts) > 0 {
			list = append(list, before+fewOf(partNames(m, parts)))
		}
	}
	add("", order)
	add("one of ", f.marked(oneOf))
	add("perhaps ", f.marked(perhaps))
	return strings.Join(list, "; ")
}

// fewOf are the first of some names, and how many more there are.
func fewOf(names []string) string {
	if more := len(names) - mostNamed; more > 0 {
		names = append(slices.Clone(names[:mostNamed]), fmt.Sprintf("%d more", more))
	}
	return strings.Join(names, ", ")
}

func partNames(m *airframes.Model, parts []int) []string {
	names := make([]string, len(parts))
	for k, i := range parts {
		names[k] = m.Setup.Parts[i].Name
	}
	return names
}

// names are the parts that a check names, as words: whom it is about, and whom it only
// compares that with; what it says of itself where it names none.
func (f *failures) names(m *airframes.Model, check int) string {
	a := &f.asked[check]
	all := a.named()
	guilty, other := f.apart(all)
	list := func(parts []int) string { return strings.Join(partNames(m, parts), ", ") }
	switch {
	case len(all) == 0:
		return f.report.Checks[check].Subject
	case a.alone || len(guilty) == len(all):
		return list(all)
	case len(guilty) == 0:
		return "one of " + list(all)
	case a.compares() && f.passed[other[0]]:
		return list(guilty) + ", compared with " + list(other)
	}
	return list(guilty) + ", perhaps " + list(other)
}

// first is the first failure in words: which part, what it does, and when.
func (f *failures) first(m *airframes.Model) string {
	if f.report == nil {
		return ""
	}
	i := slices.IndexFunc(f.report.Checks, func(c result.Check) bool { return !c.Passed })
	if i < 0 {
		return ""
	}
	c := &f.report.Checks[i]
	words := c.Subject + ": "
	if !f.asked[i].alone {
		words = f.names(m, i) + ": "
	}
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

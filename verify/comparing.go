package verify

import (
	"context"

	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify/compare"
	"example.com/hingeline/verify/result"
)

// Compare says what differs between two set-ups and their scripts. It returns every problem
// of the scripts; the comparison is nil if one of them is an error.
func Compare(ctx context.Context, old, new compare.Side, o compare.Options) (*result.Comparison, []diag.Problem) {
	c, problems := compare.Compare(ctx, old, new, o)
	if c == nil {
		return nil, problems
	}
	before, now := sourcesOf(old.Model, old.Scripts), sourcesOf(new.Model, new.Scripts)
	sources := append(now, before...)
	c.Tool, c.Old, c.New, c.Cautions = Version, modelOf(old.Model), modelOf(new.Model), cautions(new.Model)
	for _, f := range old.Scripts {
		c.OldScripts = append(c.OldScripts, f.Name)
	}
	for _, f := range new.Scripts {
		c.NewScripts = append(c.NewScripts, f.Name)
	}
	c.Findings = Findings(problems, sources...)
	for _, list := range [][]result.Change{c.SetUp, c.Asked} {
		for i := range list {
			quotePlace(&list[i].Place, sources)
		}
	}
	for i := range c.Checks {
		quotePlace(&c.Checks[i].Place, sources)
	}
	return c, problems
}

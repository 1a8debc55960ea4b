package compare

import (
	"context"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/beside"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Options say how long to search.
type Options struct {
	Boxes    int               // most boxes of one proof; 0 is UsualBoxes
	Progress func(part string) // called before each part; may be nil
}

// UsualBoxes is the limit of one proof that is not given one.
const UsualBoxes = 2000

// Side is one of the two that are compared. Scripts may be empty.
type Side struct {
	Model   *airframes.Model
	Scripts []script.File
}

// Compare compares an older set-up and its scripts with a newer one. It returns every
// problem of the scripts, each read for its own model; the comparison is nil if one of
// them is an error. If ctx is done, what was found until then stays and the rest says so.
func Compare(ctx context.Context, old, new Side, o Options) (*result.Comparison, []diag.Problem) {
	if o.Boxes == 0 {
		o.Boxes = UsualBoxes
	}
	c := &comparison{ctx: ctx, old: old, new: new, options: o, out: &result.Comparison{}}
	problems := c.asked()
	if diag.HasErrors(problems) {
		return nil, problems
	}
	changes := resolved.Differences(old.Model, new.Model)
	c.out.SetUp = changesOf(changes)
	if len(changes) > 0 {
		c.moved()
		c.notes()
	}
	for i := range new.Model.Setup.Parts {
		if len(changes) == 0 {
			c.out.Same = append(c.out.Same, new.Model.Setup.Parts[i].Name)
		}
	}
	c.judged()
	c.out.Verdict = c.verdict()
	return c.out, problems
}

// comparison is one comparison in the making.
type comparison struct {
	ctx      context.Context
	old, new Side
	options  Options
	out      *result.Comparison

	was    *airframes.Model // the older one in the newer one's words
	halves *beside.Halves
}

// asked compares the scripts.
func (c *comparison) asked() []diag.Problem {
	switch {
	case len(c.old.Scripts) == 0 && len(c.new.Scripts) == 0:
		return nil
	case len(c.old.Scripts) == 0:
		c.out.Notes = append(c.out.Notes, "the older set-up has no script")
		_, problems := resolved.Script(c.new.Model, c.new.Scripts)
		return problems
	case len(c.new.Scripts) == 0:
		c.out.Notes = append(c.out.Notes, "the newer set-up has no script")
		_, problems := resolved.Script(c.old.Model, c.old.Scripts)
		return problems
	}
	differences, problems := resolved.ScriptDifferences(c.old.Model, c.new.Model, c.old.Scripts, c.new.Scripts)
	c.out.Asked = changesOf(differences)
	return problems
}

func changesOf(differences []resolved.Difference) (list []result.Change) {
	for _, d := range differences {
		list = append(list, result.Change{Text: d.Text, Parts: d.Parts, Place: placeOf(d.Place)})
	}
	return list
}

func placeOf(p diag.Place) result.Place {
	return result.Place{File: p.File, Line: p.Line, Column: p.Column}
}

func (c *comparison) verdict() result.ComparisonVerdict {
	worse, _ := c.out.Counts()
	switch {
	case len(c.out.SetUp) == 0 && len(c.out.Asked) == 0 && len(c.old.Scripts) > 0 == (len(c.new.Scripts) > 0):
		return result.NoDifference
	case worse > 0:
		return result.SomeWorse
	case c.out.Both == 0:
		return result.NoneCompared
	}
	return result.NoneWorse
}

// moved finds how far each part is elsewhere.
func (c *comparison) moved() {
	c.was = resolved.InWordsOf(c.old.Model, c.new.Model)
	was, is := &c.was.Setup, &c.new.Model.Setup
	c.halves = &beside.Halves{Was: was, Is: is, Controls: beside.Match(was, is)}
	type walked struct {
		change result.PartChange
		same   bool
	}
	var all []walked
	add := func(p *mixcore.Part, change result.PartChange, same bool) {
		change.Name, change.Stage = p.Name, script.PartStage(p)
		all = append(all, walked{change, same})
	}
	for i := range is.Parts {
		p := &is.Parts[i]
		k := slices.IndexFunc(was.Parts, func(other mixcore.Part) bool {
			return airframes.FoldPart(other.Name) == airframes.FoldPart(p.Name)
		})
		switch {
		case k < 0:
			add(p, result.PartChange{Note: "only the newer set-up has it"}, false)
		case was.Parts[k].Motion != p.Motion:
			add(p, result.PartChange{Note: "it moves in another way now"}, false)
		default:
			change := c.part(k, i)
			add(p, change, change.With == nil && change.Lost == nil)
		}
	}
	for i := range was.Parts {
		p := &was.Parts[i]
		if !slices.ContainsFunc(is.Parts, func(other mixcore.Part) bool { return airframes.FoldPart(other.Name) == airframes.FoldPart(p.Name) }) {
			add(p, result.PartChange{Note: "only the older set-up has it"}, false)
		}
	}
	slices.SortStableFunc(all, func(a, b walked) int {
		return slices.Index(result.Stages, a.change.Stage) - slices.Index(result.Stages, b.change.Stage)
	})
	for _, w := range all {
		if w.same {
			c.out.Same = append(c.out.Same, w.change.Name)
		} else {
			c.out.Parts = append(c.out.Parts, w.change)
		}
	}
}

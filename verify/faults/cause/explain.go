package cause

import (
	"context"
	"fmt"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Options say how somebody looked, and what may have gone wrong.
type Options struct {
	mistake.Options
	Look sight.Look // the zero Look is sight.Eye
}

// Explain finds what explains the sentences of a script that says what was seen on the
// model. scripts are what the model should do: repairs are held against them. It returns
// every problem of all files, and nil where one is an error.
func Explain(ctx context.Context, m *airframes.Model, scripts []script.File, seen script.File, o Options) (*result.Causes, []diag.Problem) {
	watched, problems := script.NewTrial(m, []script.File{seen})
	trial, more := (*script.Trial)(nil), []diag.Problem(nil)
	if len(scripts) > 0 {
		trial, more = script.NewTrial(m, scripts)
		problems = append(problems, more...)
	}
	if watched != nil {
		problems = append(problems, everywhere(watched)...)
	}
	if diag.HasErrors(problems) {
		return nil, problems
	}
	c := newCase(ctx, m, trial, o)
	r := &result.Causes{Seen: watched.Len(), Tried: len(c.mistakes)}
	odd := c.odd(watched, m)
	for _, i := range odd {
		about, _ := watched.Check(i)
		r.Wrong = append(r.Wrong, result.SeenOdd{Sentence: about.Sentence, Place: about.Place, Got: watched.Got(i)})
	}
	var suspects []int
	var others []near
	for i := range c.mistakes {
		variant, faults := c.mistakes[i].Variant(m)
		if faults != nil {
			continue
		}
		if against := c.odd(watched, variant); len(against) > 0 {
			others = append(others, near{i, sentences(watched, against)})
		} else {
			suspects = append(suspects, i)
		}
	}
	if len(odd) == 0 {
		r.Verdict, r.Possible = result.AsItShould, len(suspects)
		return r, problems
	}
	c.report(r, suspects)
	others = c.nearly(others, sentences(watched, odd), r.Seen, c.commonest(suspects))
	r.Near = c.sayNear(others, r.Seen, func(i int) []int { return []int{i} })
	return r, problems
}

// sentences are sentences that speak against a mistake.
func sentences(watched *script.Trial, against []int) (list []result.Against) {
	for _, i := range against {
		about, _ := watched.Check(i)
		list = append(list, result.Against{What: []string{about.Sentence}, Place: about.Place})
	}
	return list
}

// CodeSeenEverywhere is the code of a sentence about every position in what was seen.
const CodeSeenEverywhere = "seen-everywhere"

// everywhere are the sentences that nobody can have seen, each once.
func everywhere(watched *script.Trial) (problems []diag.Problem) {
	told := map[result.Place]bool{}
	for i := range watched.Len() {
		about, _ := watched.Check(i)
		if !watched.Universal(i) || told[about.Place] {
			continue
		}
		told[about.Place] = true
		problems = append(problems, diag.Problem{
			Place: diag.Place{File: about.Place.File, Line: about.Place.Line, Column: about.Place.Column},
			Code:  CodeSeenEverywhere, Message: fmt.Sprintf("nobody can have seen %q at every position", about.Sentence),
			Hint: "write where the controls stood when you looked, and what the part did there",
		})
	}
	return problems
}

// inquiry is one model whose fault is looked for.
type inquiry struct {
	ctx      context.Context
	m        *airframes.Model
	trial    *script.Trial // nil without scripts
	o        Options
	mistakes []mistake.Mistake
	done     []int        // steps that were looked at: none of them tells more
	made     *table.Table // when it is needed

	held           *holding // when it is needed: see written
	claims, broken int      // that hold with it, and that do not
}

func newCase(ctx context.Context, m *airframes.Model, trial *script.Trial, o Options) *inquiry {
	if o.Look == (sight.Look{}) {
		o.Look = sight.Eye
	}
	return &inquiry{ctx: ctx, m: m, trial: trial, o: o, mistakes: mistake.All(m, o.Options)}
}

func (c *inquiry) table() *table.Table {
	if c.made == nil {
		c.made = table.New(c.m, c.mistakes, table.Steps(c.m))
	}
	return c.made
}

// odd are the sentences that somebody could not honestly have said of a variant. What a
// person calls still, or stopped, may have moved a little, and what a person calls a
// movement may have been small: a sentence stands if it holds with what counts as still by
// the model, by what is surely seen, or by half of that.
func (c *inquiry) odd(watched *script.Trial, variant *airframes.Model) []int {
	holds := map[int]bool{}
	tried := map[int]bool{}
	levels := []struct {
		still  mixcore.Degrees
		unseen mixcore.Percent
	}{{c.m.Still, 0}, {c.o.Look.Visible / 2, sight.VisibleAmount / 2}, {c.o.Look.Visible, sight.VisibleAmount}}
	for _, level := range levels {
		looked := *variant
		looked.Still = level.still
		watched.TryWatching(&looked, float64(level.unseen), func(i int, h phrase.Holding) bool {
			tried[i] = true
			holds[i] = holds[i] || h == phrase.Holds
			return true
		})
	}
	var list []int
	for i := range watched.Len() {
		if tried[i] && !holds[i] {
			list = append(list, i)
		}
	}
	return list
}

package html

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// failure is a failed check with what is needed to put it right.
type failure struct {
	Number             int
	ID, Sentence, Miss string
	Title              string // Sentence, and the position where another failure has the same
	Facts              []fact
	Picture            *shot
	Same               int // the failure before it with the same reasons, from 1; 0 for none
	Why                []reason
}

// fact is a label and its words.
type fact struct{ Label, Words string }

// reason is a cause chain as a table, with the lines to look at.
type reason struct {
	ID, Title string
	Rows      []step
	LookAt    []result.Place
}

// step is a row of a cause chain.
type step struct {
	result.Step
	Head string // the stage, where it is not that of the row above
}

func failureID(n int) string { return fmt.Sprintf("failure-%d", n) }

func (p *page) failures(d *drawer) {
	r := p.Report
	checks := said.ChecksOf(r)
	var before []int
	for i := range r.Checks {
		c := &r.Checks[i]
		if c.Passed {
			continue
		}
		f := failure{Number: len(before) + 1, ID: failureID(len(before) + 1), Sentence: c.Sentence, Title: titleOf(checks, r, i), Miss: c.Miss, Picture: d.wantedGot(i, c.Sentence)}
		decided, do := said.HowDecided(c.Proof)
		over, show := "", ""
		if proof := c.Proof; proof != nil && said.AnswerTo(proof) == result.Undecided {
			over = proof.Over
		} else if proof != nil && proof.Counter != nil && said.AnswerTo(proof) == result.Disproved {
			show = strings.Join(said.ShowCommand(proof.Counter, r.Model.File), " ")
		}
		for _, one := range []fact{
			{"check", fmt.Sprintf("%d, %s, %s", i+1, c.Stage, c.Scenario)},
			{"script", said.At(c.Place)},
			{"controls", checks.Pose(i)},
			{"WANTED", checks.Wanted(i)},
			{"GOT", checks.Got(i)},
			{"decided", decided},
			{"over", over},
			{"do", do},
			{"show it", show},
		} {
			if one.Words != "" {
				f.Facts = append(f.Facts, one)
			}
		}
		same := func(k int) bool { return len(c.Why) > 0 && reflect.DeepEqual(r.Checks[k].Why, c.Why) }
		if f.Same = slices.IndexFunc(before, same) + 1; f.Same == 0 {
			f.Why = reasonsOf(c, f.ID)
		}
		before = append(before, i)
		p.Failures = append(p.Failures, f)
	}
}

// titleOf is the sentence of a failure, with the position where it failed at several.
func titleOf(checks *said.Checks, r *result.Report, i int) string {
	c := &r.Checks[i]
	for k := range r.Checks {
		if other := &r.Checks[k]; k != i && !other.Passed && other.Sentence == c.Sentence && checks.Pose(i) != "" {
			return c.Sentence + " – " + checks.Pose(i)
		}
	}
	return c.Sentence
}

func reasonsOf(c *result.Check, id string) []reason {
	var all []reason
	for k := range c.Why {
		why := &c.Why[k]
		one := reason{ID: fmt.Sprintf("%s-why-%d", id, k+1), Title: said.Why(c, k), LookAt: said.MostTelling(why.LookAt)}
		for i, s := range why.Chain {
			row := step{s, s.Stage}
			if i > 0 && why.Chain[i-1].Stage == s.Stage {
				row.Head = ""
				if why.Chain[i-1].Name == s.Name {
					row.Name = ""
				}
			}
			one.Rows = append(one.Rows, row)
		}
		all = append(all, one)
	}
	return all
}

// offer is what would make a failed check pass.
type offer struct {
	Title   string
	List    []repair
	Open    string
	Which   string
	Beware  []string
	Set     string
	Move    string
	Answers []fact
}

type repair struct {
	Change, With string
	Place        result.Place
}

func offerOf(r *result.Repairs) *offer {
	o := &offer{Title: said.Offer(r), Open: said.NotTried(r)}
	for i := range r.List {
		one := &r.List[i]
		o.List = append(o.List, repair{said.RepairOf(one), said.WithRepair(one), one.Place})
	}
	if r.Apart == nil {
		return o
	}
	o.Which, o.Set, o.Move = said.WhichOfThem, strings.Join(r.Apart.Step.Ready, ", "), strings.Join(r.Apart.Step.Move, ", ")
	o.Beware = r.Apart.Step.Beware
	if o.Move == "" {
		o.Move = said.LookAsItStands
	}
	for _, a := range r.Apart.Answers {
		see := strings.Join(a.See, ", ")
		if see == "" {
			see = "nothing that tells"
		}
		o.Answers = append(o.Answers, fact{see, strings.Join(a.Suspects, "; ")})
	}
	return o
}

// NothingByItself comes after all changes that are offered.
func (o *offer) NothingByItself() string { return said.NothingByItself }

// scriptFinding is something odd about the script.
type scriptFinding struct {
	mark
	Text     string
	Place    result.Place
	Sentence string // where the excerpt does not show it
	Facts    []fact
}

func scriptFindingOf(f *result.ScriptFinding) scriptFinding {
	s := scriptFinding{mark: markOf(said.Heed), Text: said.ScriptFinding(f), Place: f.Place}
	switch {
	case f.Fails:
		s.mark = markOf(said.Bad)
	case f.OnPurpose:
		s.mark = mark{"plain", "·"}
	}
	if !strings.Contains(f.Place.Excerpt, f.Sentence) {
		s.Sentence = f.Sentence
	}
	hint := f.Hint
	if f.OnPurpose {
		hint = ""
	}
	for _, one := range []fact{{"why", f.Reason}, {"look", f.Picture}, {"do", hint}} {
		if one.Words != "" {
			s.Facts = append(s.Facts, one)
		}
	}
	return s
}

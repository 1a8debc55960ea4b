package serve

import (
	"fmt"
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// checks is what the script says of the set-up.
type checks struct {
	Kind     string     `json:"kind"` // "checks"
	Revision int        `json:"revision"`
	Since    string     `json:"since"`
	Changed  []string   `json:"changed"`
	Tone     string     `json:"tone"` // "good", "heed" or "bad"
	Word     string     `json:"word"` // the verdict
	Text     string     `json:"text"`
	Short    string     `json:"short"`    // the verdict where there is little room
	First    string     `json:"first"`    // the first failure, in words
	Marks    []markSaid `json:"marks"`    // the parts that checks which fail name
	OldSince string     `json:"oldSince"` // when what is shown was read, where the file can no longer be used: "15:04:05"; else empty
	Stages   []stage    `json:"stages"`
	Problems []problem  `json:"problems"` // errors and warnings about the files
}

// stage is the checks of one stage of the walk-around, those that failed first.
type stage struct {
	Name string    `json:"name"`
	List []checked `json:"list"`
}

// checked is one check.
type checked struct {
	Passed   bool   `json:"passed"`
	Of       string `json:"of"` // of one that failed: the parts that it names
	Sentence string `json:"sentence"`
	Pose     string `json:"pose"`
	Wanted   string `json:"wanted"`
	Got      string `json:"got"`
	Miss     string `json:"miss"`
	Place    string `json:"place"`
}

type problem struct {
	Warning bool   `json:"warning"`
	Place   string `json:"place"`
	Excerpt string `json:"excerpt"`
	Message string `json:"message"`
	Hint    string `json:"hint"`
}

var tones = map[said.Tone]string{said.Good: "good", said.Heed: "heed", said.Bad: "bad"}

func checksOf(now *Now, revision int, failed failures, number func(part int) int) checks {
	c := checks{Kind: "checks", Revision: revision, Since: now.Since, Changed: now.Changed}
	if now.Problems != nil {
		for i := range now.Problems.List {
			p := &now.Problems.List[i]
			c.Problems = append(c.Problems, problem{p.Warning, said.At(p.Place), p.Place.Excerpt, p.Message, p.Hint})
		}
	}
	r := now.Report
	switch {
	case now.Old:
		c.Tone, c.Word, c.Text = "bad", "THE AIRFRAME FILE CANNOT BE USED", ", so nothing was checked. What moves here is as it was before."
		c.Short = "DO NOT FLY: the airframe file cannot be used, so nothing was checked"
		return c
	case r == nil:
		c.Tone, c.Word, c.Text = "heed", "NOTHING WAS CHECKED", ": there is no script that can be used, so this says nothing about the model."
		c.Short = "NOTHING WAS CHECKED: no script that can be used"
		return c
	}
	v := said.VerdictOf(r)
	c.Tone, c.Word, c.Text, c.First = tones[v.Tone], v.Word, v.Text, failed.first(now.Model)
	c.Short = shortOf(v, now, &failed)
	c.Marks = failed.marks(now.Model, number)
	for i := range r.Findings {
		f := &r.Findings[i]
		c.Problems = append(c.Problems, problem{true, said.At(f.Place), f.Place.Excerpt, f.Message, f.Hint})
	}
	for _, f := range said.ScriptFindings(r) {
		c.Problems = append(c.Problems, problem{!f.Fails, said.At(f.Place), f.Place.Excerpt, said.ScriptFinding(f), ""})
	}
	c.Stages = stagesOf(now.Model, r, &failed)
	return c
}

// shortOf is the verdict where there is little room, with the parts that fail.
func shortOf(v said.Verdict, now *Now, of *failures) string {
	_, failed := now.Report.Counts()
	switch {
	case v.Tone != said.Bad:
		return v.OnEachPage()
	case failed == 0:
		return v.Word + ": the script is wrong, so it proves nothing"
	}
	words := fmt.Sprintf("%s: %d of %s failed", v.Word, failed, said.Count(len(now.Report.Checks), "check"))
	if named := of.named(now.Model); named != "" {
		words += ": " + named
	}
	return words
}

func stagesOf(m *airframes.Model, r *result.Report, failed *failures) []stage {
	var stages []stage
	all := said.ChecksOf(r)
	for _, name := range result.Stages {
		s := stage{Name: string(name)}
		for i := range r.Checks {
			k := &r.Checks[i]
			if k.Stage == name {
				one := checked{k.Passed, "", all.Sentence(i), all.Pose(i), all.Wanted(i), all.Got(i), k.Miss, said.At(k.Place)}
				if !k.Passed {
					one.Of = failed.names(m, i)
				}
				s.List = append(s.List, one)
			}
		}
		slices.SortStableFunc(s.List, func(a, b checked) int {
			switch {
			case a.Passed == b.Passed:
				return 0
			case a.Passed:
				return 1
			}
			return -1
		})
		if len(s.List) > 0 {
			stages = append(stages, s)
		}
	}
	return stages
}

package serve

import (
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
)

// checks is what the script says of the set-up.
type checks struct {
	Kind     string    `json:"kind"` // "checks"
	Revision int       `json:"revision"`
	Since    string    `json:"since"`
	Changed  []string  `json:"changed"`
	Tone     string    `json:"tone"` // "good", "heed" or "bad"
	Word     string    `json:"word"` // the verdict
	Text     string    `json:"text"`
	Stages   []stage   `json:"stages"`
	Problems []problem `json:"problems"` // errors and warnings about the files
}

// stage is the checks of one stage of the walk-around.
type stage struct {
	Name string    `json:"name"`
	List []checked `json:"list"`
}

// checked is one check.
type checked struct {
	Passed   bool   `json:"passed"`
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

func checksOf(now *Now, revision int) checks {
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
		return c
	case r == nil:
		c.Tone, c.Word, c.Text = "heed", "NOTHING WAS CHECKED", ": there is no script that can be used, so this says nothing about the model."
		return c
	}
	v := said.VerdictOf(r)
	c.Tone, c.Word, c.Text = tones[v.Tone], v.Word, v.Text
	for i := range r.Findings {
		f := &r.Findings[i]
		c.Problems = append(c.Problems, problem{true, said.At(f.Place), f.Place.Excerpt, f.Message, f.Hint})
	}
	for _, f := range said.ScriptFindings(r) {
		c.Problems = append(c.Problems, problem{!f.Fails, said.At(f.Place), f.Place.Excerpt, said.ScriptFinding(f), ""})
	}
	c.Stages = stagesOf(r)
	return c
}

func stagesOf(r *result.Report) []stage {
	var stages []stage
	all := said.ChecksOf(r)
	for _, name := range result.Stages {
		s := stage{Name: string(name)}
		for i := range r.Checks {
			k := &r.Checks[i]
			if k.Stage == name {
				s.List = append(s.List, checked{k.Passed, all.Sentence(i), all.Pose(i), all.Wanted(i), all.Got(i), k.Miss, said.At(k.Place)})
			}
		}
		if len(s.List) > 0 {
			stages = append(stages, s)
		}
	}
	return stages
}

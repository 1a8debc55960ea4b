package jsonout

import (
	"io"
	"math"

	"example.com/hingeline/verify/result"
)

type proofsJSON struct {
	Format   int             `json:"hingeline_proofs"`
	Tool     string          `json:"tool"`
	Model    modelJSON       `json:"model"`
	Verdict  string          `json:"verdict"`
	Stopped  string          `json:"stopped"`
	Counts   proofCountsJSON `json:"counts"`
	Laws     []lawJSON       `json:"laws"`
	Warnings []warningJSON   `json:"warnings"`
	Cautions []string        `json:"cautions"`
}

type proofCountsJSON struct {
	Laws      int `json:"laws"`
	LeftOut   int `json:"left_out"`
	Claims    int `json:"claims"`
	Proved    int `json:"proved"`
	Disproved int `json:"disproved"`
	Undecided int `json:"undecided"`
	Empty     int `json:"empty"`
	Warnings  int `json:"warnings"`
}

type lawJSON struct {
	Code   string      `json:"code"`
	Title  string      `json:"title"`
	Means  string      `json:"means"`
	None   string      `json:"none"`
	Claims []claimJSON `json:"claims"`
}

type claimJSON struct {
	Number int `json:"number"`
	proofJSON
}

type proofJSON struct {
	Claim   string       `json:"claim"`
	Answer  string       `json:"answer"`
	Over    string       `json:"over"`
	States  int          `json:"states"`
	Forms   int          `json:"forms"`
	Boxes   int          `json:"boxes"`
	Limit   int          `json:"limit"`
	Margin  *marginJSON  `json:"margin"`
	Assumes []string     `json:"assumes"`
	Counter *counterJSON `json:"counter"`
	LookAt  []lookJSON   `json:"look_at"`
}

type marginJSON struct {
	Text    string   `json:"text"`
	Value   *float64 `json:"value"`
	AtLeast *float64 `json:"at_least"`
	Unit    string   `json:"unit"`
	Pose    []string `json:"pose"`
}

type counterJSON struct {
	Pose counterPoseJSON `json:"pose"`
	Got  string          `json:"got"`
	Set  []string        `json:"set"`
	Why  []reasonJSON    `json:"why"`
}

type counterPoseJSON struct {
	Controls []string `json:"controls"`
	Before   []string `json:"before"`
	Moved    []string `json:"moved"`
}

// RenderProofs writes what holds at every position of the controls. A number that
// is not finite, which JSON cannot write, is null. The error is the writer's.
func RenderProofs(w io.Writer, p *result.Proofs) error {
	c := p.Counts()
	doc := proofsJSON{
		Format:  Format,
		Tool:    p.Tool,
		Model:   modelJSON(p.Model),
		Verdict: string(p.Verdict),
		Stopped: p.Stopped,
		Counts: proofCountsJSON{
			Laws: len(p.Laws), LeftOut: p.Left, Claims: c.Claims, Proved: c.Proved, Disproved: c.Disproved,
			Undecided: c.Undecided, Empty: c.Empty, Warnings: len(p.Findings),
		},
		Laws:     []lawJSON{},
		Warnings: warningsOf(p.Findings),
		Cautions: list(p.Cautions),
	}
	number := 0
	for i := range p.Laws {
		l := &p.Laws[i]
		law := lawJSON{Code: l.Code, Title: l.Title, Means: l.Means, None: l.None, Claims: []claimJSON{}}
		for k := range l.Claims {
			number++
			law.Claims = append(law.Claims, claimJSON{number, *proofOf(&l.Claims[k])})
		}
		doc.Laws = append(doc.Laws, law)
	}
	return write(w, doc)
}

func proofOf(p *result.Proof) *proofJSON {
	if p == nil {
		return nil
	}
	return &proofJSON{
		Claim: p.Claim, Answer: string(p.Answer), Over: p.Over, States: p.States, Forms: p.Forms, Boxes: p.Boxes,
		Limit: p.Limit, Margin: marginOf(p.Margin), Assumes: list(p.Assumes), Counter: counterOf(p.Counter), LookAt: looksOf(p.LookAt),
	}
}

func marginOf(m *result.Margin) *marginJSON {
	if m == nil {
		return nil
	}
	return &marginJSON{Text: m.Text, Value: finite(m.Value), AtLeast: finite(m.AtLeast), Unit: m.Unit, Pose: list(m.Pose)}
}

func counterOf(c *result.Counter) *counterJSON {
	if c == nil {
		return nil
	}
	return &counterJSON{
		Pose: counterPoseJSON{list(c.Pose), list(c.Before), list(c.Moved)}, Got: c.Got, Set: list(c.Set), Why: whyOf(c.Why),
	}
}

// finite is a number that JSON can write, else nil.
func finite(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}

package jsonout

import (
	"io"

	"example.com/hingeline/verify/result"
)

type walkJSON struct {
	Format   int            `json:"hingeline_walk"`
	Tool     string         `json:"tool"`
	Model    modelJSON      `json:"model"`
	Look     string         `json:"look"`
	Ruler    bool           `json:"ruler"`
	Stopped  string         `json:"stopped"`
	Counts   walkCountsJSON `json:"counts"`
	Steps    []walkStepJSON `json:"steps"`
	Unseen   []unseenJSON   `json:"unseen"`
	Warnings []warningJSON  `json:"warnings"`
	Cautions []string       `json:"cautions"`
}

type walkCountsJSON struct {
	Mistakes      int `json:"mistakes"`
	Steps         int `json:"steps"`
	StepsAtLeast  int `json:"steps_at_least"`
	StepsTried    int `json:"steps_tried"`
	Moves         int `json:"movements"`
	MovesAtLeast  int `json:"movements_at_least"`
	FurtherSteps  int `json:"steps_to_name"`
	KindsOfSights int `json:"told_apart"`
}

type walkStepJSON struct {
	Ready  []string       `json:"set"`
	Stand  []string       `json:"stand"`
	Move   []string       `json:"move"`
	Beware []string       `json:"beware"`
	Parts  []walkPartJSON `json:"parts"`
	Shows  int            `json:"shows"`
	First  int            `json:"shows_first"`
	Kinds  []string       `json:"mistakes"`
}

type walkPartJSON struct {
	Name  string `json:"name"`
	Stage string `json:"stage"`
	Way   string `json:"way"`
	Exact string `json:"exact"`
}

type unseenJSON struct {
	Kind  string     `json:"kind"`
	Text  string     `json:"text"`
	Place *placeJSON `json:"place"`
	Why   string     `json:"why"`
}

// RenderWalk writes the shortest walk-around. The error is the writer's.
func RenderWalk(w io.Writer, r *result.Walk) error {
	doc := walkJSON{
		Format: Format, Tool: r.Tool, Model: modelJSON(r.Model), Look: r.Look, Ruler: r.Ruler, Stopped: r.Stopped,
		Counts: walkCountsJSON{r.Mistakes, len(r.Steps), r.AtLeast, r.Tried, r.Moves, r.MovesMin, r.Further, r.Groups},
		Steps:  []walkStepJSON{}, Unseen: []unseenJSON{}, Warnings: warningsOf(r.Findings), Cautions: list(r.Cautions),
	}
	for i := range r.Steps {
		doc.Steps = append(doc.Steps, stepOf(&r.Steps[i]))
	}
	for _, u := range r.Unseen {
		doc.Unseen = append(doc.Unseen, unseenJSON{u.Kind, u.Text, placeOf(u.Place), u.Why})
	}
	return write(w, doc)
}

func stepOf(s *result.WalkStep) walkStepJSON {
	one := walkStepJSON{Ready: list(s.Ready), Stand: list(s.Stand), Move: list(s.Move), Beware: list(s.Beware), Parts: []walkPartJSON{},
		Shows: s.Shows, First: s.First, Kinds: list(s.Kinds)}
	for _, p := range s.Parts {
		one.Parts = append(one.Parts, walkPartJSON{p.Name, string(p.Stage), p.Way, p.Exact})
	}
	return one
}

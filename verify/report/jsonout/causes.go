package jsonout

import (
	"io"

	"example.com/hingeline/verify/result"
)

type causesJSON struct {
	Format   int           `json:"hingeline_causes"`
	Tool     string        `json:"tool"`
	Model    modelJSON     `json:"model"`
	Verdict  string        `json:"verdict"`
	Seen     int           `json:"seen"`
	Tried    int           `json:"tried"`
	Possible int           `json:"would_look_the_same"`
	Wrong    []oddJSON     `json:"not_as_it_should"`
	Suspects []suspectJSON `json:"suspects"`
	Near     []nearJSON    `json:"near"`
	Next     *nextJSON     `json:"next"`
	Script   askedJSON     `json:"script"`
	Repairs  []remedyJSON  `json:"repairs"`
	Edits    []editJSON    `json:"file_edits"`
	Warnings []warningJSON `json:"warnings"`
	Cautions []string      `json:"cautions"`
}

type oddJSON struct {
	Sentence string     `json:"sentence"`
	Place    *placeJSON `json:"place"`
	Should   string     `json:"should"`
}

type suspectJSON struct {
	Kind  string     `json:"kind"`
	Text  string     `json:"text"`
	Place *placeJSON `json:"place"`
	Made  string     `json:"made"`
	Alike []string   `json:"alike"`
}

type nextJSON struct {
	Step    walkStepJSON `json:"step"`
	Answers []answerJSON `json:"answers"`
	Left    int          `json:"steps_to_name"`
}

type answerJSON struct {
	See      []string `json:"see"`
	Suspects []string `json:"suspects"`
}

type nearJSON struct {
	suspectJSON
	Undo     string        `json:"undo"`
	OnModel  bool          `json:"on_model"`
	Explains int           `json:"explains"`
	Of       int           `json:"of"`
	Against  []againstJSON `json:"against"`
	Lost     bool          `json:"against_as_signal_lost"`
}

type againstJSON struct {
	Step  int        `json:"step"`
	What  []string   `json:"what"`
	Place *placeJSON `json:"place"`
}

type askedJSON struct {
	Checks  int `json:"checks"`
	Failing int `json:"fail_as_written"`
}

type remedyJSON struct {
	repairJSON
	AsFile bool `json:"as_file"`
}

type editJSON struct {
	Edit    string     `json:"edit"`
	Place   *placeJSON `json:"place"`
	Failing int        `json:"checks_fail"`
}

type repairJSON struct {
	Change  string     `json:"change"`
	OnModel bool       `json:"on_model"`
	Place   *placeJSON `json:"place"`
	Checks  int        `json:"checks"`
	Claims  int        `json:"claims"`
}

type repairsJSON struct {
	Tried   int          `json:"tried"`
	Changes []repairJSON `json:"changes"`
	Apart   *nextJSON    `json:"apart"`
}

// RenderCauses writes what explains what was seen on the model. The error is the writer's.
func RenderCauses(w io.Writer, r *result.Causes) error {
	doc := causesJSON{
		Format: Format, Tool: r.Tool, Model: modelJSON(r.Model), Verdict: string(r.Verdict), Seen: r.Seen, Tried: r.Tried, Possible: r.Possible,
		Wrong: []oddJSON{}, Suspects: []suspectJSON{}, Near: nearOf(r.Near), Next: nextOf(r.Next), Script: askedJSON(r.Script), Repairs: remediesOf(r.Repairs), Edits: editsOf(r.Edits),
		Warnings: warningsOf(r.Findings), Cautions: list(r.Cautions),
	}
	for _, s := range r.Wrong {
		doc.Wrong = append(doc.Wrong, oddJSON{s.Sentence, placeOf(s.Place), s.Got})
	}
	for i := range r.Suspects {
		doc.Suspects = append(doc.Suspects, suspectOf(&r.Suspects[i]))
	}
	return write(w, doc)
}

func suspectOf(s *result.Suspect) suspectJSON {
	return suspectJSON{s.Kind, s.Text, placeOf(s.Place), s.Odds, list(s.Alike)}
}

func nearOf(all []result.Near) []nearJSON {
	out := []nearJSON{}
	for i := range all {
		n := &all[i]
		one := nearJSON{suspectOf(&n.Suspect), n.Undo, n.OnModel, n.Explains, n.Of, []againstJSON{}, n.Lost}
		for _, a := range n.Against {
			one.Against = append(one.Against, againstJSON{a.Step, list(a.What), placeOf(a.Place)})
		}
		out = append(out, one)
	}
	return out
}

func remediesOf(all []result.Repair) []remedyJSON {
	out := []remedyJSON{}
	for i, r := range repairsOf(all) {
		out = append(out, remedyJSON{r, all[i].AsFile})
	}
	return out
}

func editsOf(all []result.FileEdit) []editJSON {
	out := []editJSON{}
	for _, e := range all {
		out = append(out, editJSON{e.Edit, placeOf(e.Place), e.Failing})
	}
	return out
}

func nextOf(n *result.NextStep) *nextJSON {
	if n == nil {
		return nil
	}
	out := &nextJSON{Step: stepOf(&n.Step), Answers: []answerJSON{}, Left: n.Left}
	for _, a := range n.Answers {
		out.Answers = append(out.Answers, answerJSON{list(a.See), list(a.Suspects)})
	}
	return out
}

func repairsOf(all []result.Repair) []repairJSON {
	out := []repairJSON{}
	for _, r := range all {
		out = append(out, repairJSON{r.Change, r.OnModel, placeOf(r.Place), r.Checks, r.Claims})
	}
	return out
}

func offerOf(r *result.Repairs) *repairsJSON {
	if r == nil {
		return nil
	}
	return &repairsJSON{r.Tried, repairsOf(r.List), nextOf(r.Apart)}
}

package serve

import (
	"encoding/json"
	"fmt"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/strictjson"
)

// mostMessage is how long a message of a page may be, in bytes: a hundred controls with
// all their digits take less.
const mostMessage = 16 << 10

// hand is what a page sends: where its controls stand, and what it looks at.
type hand struct {
	Number   int64  `json:"number"`   // counts up; the answer has it too
	Revision int    `json:"revision"` // of the model that it speaks of
	At       places `json:"at"`       // by control: percent, or the index of a switch position
	Held     places `json:"held"`     // where they stood when the signal went; none while it is there
	Part     int    `json:"part"`     // the part looked at
	Against  int    `json:"against"`  // the control whose travel curve is drawn; −1 for none
	Sentence bool   `json:"sentence"` // the pose is wanted as a scenario
}

// places are numbers. What is no number in a page comes as null, which is none here
// either, in place of 0.
type places []float64

func (p *places) UnmarshalJSON(text []byte) error {
	var list []*float64
	if err := json.Unmarshal(text, &list); err != nil {
		return err
	}
	for i, at := range list {
		if at == nil {
			return fmt.Errorf("place %d is no number", i)
		}
	}
	*p = nil
	if list != nil {
		*p = make(places, len(list))
	}
	for i, at := range list {
		(*p)[i] = *at
	}
	return nil
}

// readHand reads a message. Whether it fits the model is not looked at.
func readHand(text []byte) (hand, error) {
	var h hand
	if err := strictjson.Read(text, &h); err != nil {
		return h, err
	}
	if h.Number < 0 {
		return h, fmt.Errorf("number is %d, want 0 or more", h.Number)
	}
	return h, nil
}

// pose is the hand as a pose of the subject's model, or what is wrong with it.
func (s *subject) pose(h *hand) (phrase.Pose, error) {
	none := phrase.Pose{}
	if err := s.model.Plan.CheckInput(&mixcore.Input{Position: h.At}); err != nil {
		return none, err
	}
	if h.Part < 0 || h.Part >= len(s.model.Setup.Parts) {
		return none, fmt.Errorf("part is %d, want 0 to %d", h.Part, len(s.model.Setup.Parts)-1)
	}
	if h.Against < -1 || h.Against >= len(s.model.Setup.Controls) {
		return none, fmt.Errorf("against is %d, want -1 to %d", h.Against, len(s.model.Setup.Controls)-1)
	}
	p := phrase.RestPose(&s.model.Setup)
	if h.Held != nil {
		if err := s.model.Plan.CheckInput(&mixcore.Input{Position: h.Held}); err != nil {
			return none, fmt.Errorf("held: %w", err)
		}
		p = p.Take(&s.model.Setup, group(h.Held)).Take(&s.model.Setup, &phrase.Group{Signal: phrase.SignalLost})
	}
	return p.Take(&s.model.Setup, group(h.At)), nil
}

// group puts every control somewhere.
func group(at []float64) *phrase.Group {
	g := &phrase.Group{}
	for i, position := range at {
		g.Settings = append(g.Settings, phrase.Setting{Control: i, Position: position})
	}
	return g
}

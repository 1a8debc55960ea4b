package verify

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
)

// PoseError is a setting of a control that makes no sense for the model.
type PoseError struct {
	Setting string // as it was written
	Message string // lower case, got and wanted
	Hint    string // one line, may be empty
}

func (e *PoseError) Error() string { return e.Message }

// MoveTo is the pose after settings were made, one by one, from a start. A
// setting is CONTROL=PLACE, where the place is what a script says ("rate
// switch=high", "flap lever=landing", "roll stick=full right", "throttle=40%")
// or, for a stick or trim, a percent with plus right or back ("roll
// stick=-30%"); or it is a sentence that a script might have after Given
// ("rates are high", "the signal is lost"). The error is a *PoseError.
func MoveTo(m *airframes.Model, start phrase.Pose, settings []string) (phrase.Pose, error) {
	pose := start
	vocabulary := phrase.NewVocabulary(m)
	for _, written := range settings {
		group, err := settingOf(m, vocabulary, written)
		if err != nil {
			return start, err
		}
		pose = pose.Take(&m.Setup, group)
	}
	return pose, nil
}

func settingOf(m *airframes.Model, v *phrase.Vocabulary, written string) (*phrase.Group, error) {
	sentence := written
	if name, place, ok := strings.Cut(written, "="); ok {
		name, place = strings.TrimSpace(name), strings.TrimSpace(place)
		if control, found := axisCalled(m, name); found {
			if percent, plain := plainPercent(place); plain {
				return axisAt(m, written, control, percent)
			}
		}
		sentence = name + " is " + place
	}
	meaning, problem := v.Parse(phrase.Given, sentence)
	switch {
	case problem != nil && problem.Code != phrase.CodeUnknownSentence && problem.Code != phrase.CodeWrongPlace:
		return nil, &PoseError{Setting: written, Message: problem.Message, Hint: problem.Hint}
	case problem != nil || meaning.OneLine || meaning.Role != phrase.Given:
		return nil, &PoseError{
			Setting: written,
			Message: "does not put a control somewhere",
			Hint:    `wanted something like "rate switch=high" or "roll stick=full right"`,
		}
	}
	return &meaning.Settings, nil
}

// axisCalled finds the stick axis or trim of that name.
func axisCalled(m *airframes.Model, name string) (int, bool) {
	for i := range m.Setup.Controls {
		c := &m.Setup.Controls[i]
		if c.Kind != mixcore.AxisControl && c.Kind != mixcore.TrimControl {
			continue
		}
		if airframes.FoldName(c.Name) == airframes.FoldName(name) {
			return i, true
		}
		if i < len(m.ControlAka) {
			for _, aka := range m.ControlAka[i] {
				if airframes.FoldName(aka) == airframes.FoldName(name) {
					return i, true
				}
			}
		}
	}
	return 0, false
}

// plainPercent reads a percent without a direction word.
func plainPercent(text string) (float64, bool) {
	digits := strings.TrimSpace(strings.TrimSuffix(text, "%"))
	if strings.Trim(digits, "+-.0123456789") != "" {
		return 0, false
	}
	percent, err := strconv.ParseFloat(digits, 64)
	return percent, err == nil
}

// fullTravel is how far an axis moves either way, in percent.
const fullTravel = 100

func axisAt(m *airframes.Model, written string, control int, percent float64) (*phrase.Group, error) {
	if percent < -fullTravel || percent > fullTravel {
		return nil, &PoseError{
			Setting: written,
			Message: fmt.Sprintf("the %s goes from -100 %% to 100 %%, got %g %%", m.Setup.Controls[control].Name, percent),
			Hint:    "plus is right, or back for pitch",
		}
	}
	return &phrase.Group{Settings: []phrase.Setting{{Control: control, Position: percent}}}, nil
}

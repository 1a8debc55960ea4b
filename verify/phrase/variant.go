package phrase

import (
	"slices"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

// On is the vocabulary with the same names, judging another set-up of the same
// controls, parts and channels: what was read for one model is held against a
// variant of it.
func (v *Vocabulary) On(variant *airframes.Model) *Vocabulary {
	return &Vocabulary{
		model: variant, setup: &variant.Setup, air: effect.New(&variant.Setup),
		controls: v.controls, parts: v.parts, groups: v.groups, channels: v.channels, places: v.places,
	}
}

// Watching is the vocabulary as somebody uses it who only looks at a variant: what moves
// by less than unseen, in percent of a motor or extra, may be called still, an extra that
// near its end may be called there, and a motor that runs with half of that may be called
// stopped. What counts as still of hinged parts is the variant's own.
func (v *Vocabulary) Watching(variant *airframes.Model, unseen float64) *Vocabulary {
	looked := *variant
	looked.Setup.Parts = slices.Clone(variant.Setup.Parts)
	for i := range looked.Setup.Parts {
		if p := &looked.Setup.Parts[i]; p.Motor != nil {
			motor := *p.Motor
			motor.StoppedBelow += mixcore.Percent(unseen) / 2
			p.Motor = &motor
		}
	}
	w := v.On(&looked)
	w.unseen = unseen
	return w
}

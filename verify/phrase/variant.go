package phrase

import (
	"example.com/hingeline/airframes"
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

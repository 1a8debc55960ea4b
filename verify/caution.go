package verify

import (
	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
)

// cautions are what a check on paper cannot see: what is left to do with the
// model itself, the dangerous part first.
func cautions(m *airframes.Model) []string {
	first := "Restrain the model before you switch on."
	for i := range m.Setup.Parts {
		if m.Setup.Parts[i].Motion == mixcore.Power {
			first = "Take the propeller off, or restrain the model, before you switch on."
		}
	}
	const walk = "Put this set-up into the radio and walk around the model itself: see every surface move the way, and as far as, this report says."
	return append([]string{first, walk}, beyondTheWalk()...)
}

// lostSignal is the caution that a walk with the transmitter switched off answers in part.
const lostSignal = "Range check, and loss-of-signal check with the transmitter switched off."

// beyondTheWalk are the cautions that a walk around the model leaves.
func beyondTheWalk() []string {
	return []string{
		lostSignal,
		"Balance, loose linkages, free movement and batteries: no file knows about these.",
		"Local rules, your national association's safety code and, where one is needed, its licensed or appointed inspector come first.",
	}
}

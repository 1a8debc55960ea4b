package script

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/wording"
)

// movement says how the controls stood before a movement and what was moved,
// as it then stands; nothing if nothing was moved.
func movement(setup *mixcore.Setup, at phrase.Situation) (before, moved []string) {
	if !at.Moved {
		return nil, nil
	}
	from, to := at.Before.Shown(), at.Now.Shown()
	return wording.Moves(setup, &from, &to)
}

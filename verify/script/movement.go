package script

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/wording"
)

// signalBack is how a movement says that the signal returned.
const signalBack = "signal back"

// movement says how the controls stood before a movement and what was moved,
// as it then stands; nothing if nothing was moved.
func movement(setup *mixcore.Setup, at phrase.Situation) (before, moved []string) {
	if !at.Moved {
		return nil, nil
	}
	from, to := at.Before.Shown(), at.Now.Shown()
	for i := range to.Position {
		if from.Position[i] != to.Position[i] {
			moved = append(moved, wording.Setting(setup, i, to.Position[i]))
		}
	}
	switch {
	case to.SignalLost && !from.SignalLost:
		moved = append(moved, wording.SignalLost)
	case from.SignalLost && !to.SignalLost:
		moved = append(moved, signalBack)
	}
	return wording.Pose(setup, &from), moved
}

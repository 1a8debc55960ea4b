package bench

import (
	"slices"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/walk"
)

// Leave is what must be done before anybody goes away from the model as it stands now: at the
// step that is asked about, which may be set already, at the last that was looked at, or at
// one that was left since by going back or skipping, which may still be. It is empty where
// nothing is to do.
func (g *Guide) Leave() string {
	if g.refused || g.confirmed < len(Questions) {
		return ""
	}
	steps := slices.Clone(g.stood)
	if g.at < len(g.walk.Steps) {
		steps = append(steps, g.walk.Steps[g.at].Step)
	}
	var stands []*mixcore.Input
	for i := range steps {
		stands = append(stands, &steps[i].From, &steps[i].To)
	}
	text := walk.Left(g.walk.Model.Plan, &g.walk.Model.Setup, stands...)
	if text == "" {
		return ""
	}
	return "! Now " + text + "."
}

// leaving is a text with Leave behind it.
func (g *Guide) leaving(text string) string {
	switch leave := g.Leave(); {
	case leave == "":
		return text
	case text == "":
		return leave
	default:
		return text + "\n" + leave
	}
}

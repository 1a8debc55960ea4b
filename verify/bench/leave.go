package bench

import (
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/walk"
)

// Leave is what must be done before anybody goes away from the model as it stands now: at the
// step that is asked about, which may be set already, or at the one before it, which may
// still be. It is empty where nothing is to do.
func (g *Guide) Leave() string {
	if g.refused || g.confirmed < len(Questions) {
		return ""
	}
	var stands []*mixcore.Input
	for i := max(0, g.at-1); i <= g.at && i < len(g.walk.Steps); i++ {
		stands = append(stands, &g.walk.Steps[i].From, &g.walk.Steps[i].To)
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

package walk

import (
	"fmt"
	"math"
	"strconv"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/faults/table"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/wording"
)

// How finely a walk-around writes amounts: to readTo, and with as much less tolerance
// than the ruler's accuracy, so that whatever the ruler tells apart fails.
const (
	readDecimals = 1
	readTo       = 0.1
)

// timeMark stands between the time of a sentence and its verb.
const timeMark = "\x00"

// moves are sentences on what a part does in a step, the best first. They are about the
// part, without its name.
func (w *writer) moves(part, step int) []string {
	look, st := w.found.Look, &w.found.Table.Steps[step]
	p, m := &w.setup.Parts[part], w.found.Table.Move(table.None, step, part)
	if p.Motion == mixcore.Power {
		switch powerWay(look, p, st, m) {
		case "STOPPED":
			return []string{"stays stopped"}
		case "STOPS":
			return []string{"stops"}
		case "FASTER":
			return []string{"speeds up" + w.atLeast(part, step, m.By())}
		case "SLOWER":
			return []string{"slows down" + w.atLeast(part, step, m.By())}
		case "STAYS": // there is no sentence for a motor that runs on as it did
			return []string{"is at " + amount(p, m.To) + " ± " + amount(p, seenFrom(look, p)/2-readTo)}
		}
		return []string{"runs"}
	}
	verb := moveVerb(p.Motion, m.By() > 0)
	switch way := look.Way(p, m); {
	case look.Ruler:
		return []string{"stays still", verb + " " + w.about(p, m.By())}
	case way == sight.Unclear:
		return []string{verb + ", less than " + amount(p, seenFrom(look, p)), "stays still"}
	case way == sight.Still:
		return []string{"stays still", verb + ", less than " + amount(p, seenFrom(look, p)/2)}
	}
	return []string{verb + w.atLeast(part, step, m.By())}
}

// atLeast is by how much a part that clearly moves must do so, where that has to be said.
func (w *writer) atLeast(part, step int, by float64) string {
	if !w.lessIsSeen(part, step, by) {
		return ""
	}
	return ", at least " + amount(&w.setup.Parts[part], seenFrom(w.found.Look, &w.setup.Parts[part])/2)
}

// lessIsSeen says whether some mistake makes a part that clearly moves in a step move by
// so little, the same way, that an eye says it stands still, and a script that it moves.
func (w *writer) lessIsSeen(part, step int, by float64) bool {
	t, look := w.found.Table, w.found.Look
	p := &w.setup.Parts[part]
	for m := range t.Mistakes {
		if less := t.Move(m, step, part); less.By() != 0 && less.By() > 0 == (by > 0) && look.Way(p, less) == sight.Still {
			return true
		}
	}
	return false
}

func moveVerb(m mixcore.Motion, plus bool) string {
	switch wording.Direction(m, plus) {
	case "UP":
		return "rises"
	case "DOWN":
		return "drops"
	case "LEFT":
		return "moves left"
	case "RIGHT":
		return "moves right"
	case "OUT":
		return "extends"
	}
	return "retracts"
}

// stands are sentences on where a part is.
func (w *writer) stands(p *mixcore.Part, at float64) []string {
	look := w.found.Look
	if p.Motion == mixcore.Power {
		power := "is at " + w.about(p, at)
		switch stopped := p.Motor.Stopped(mixcore.Percent(at)); {
		case look.Ruler:
			return []string{power}
		case stopped:
			return []string{"is stopped"}
		}
		return []string{"runs"}
	}
	if p.Motion == mixcore.OutIn {
		if look.Ruler {
			return []string{"is in", "is out", "is " + w.about(p, at) + " out"}
		}
		some := amount(p, seenFrom(look, p)/2)
		switch look.Way(p, sight.Move{To: at}) {
		case sight.Still:
			return []string{"is in", "is out less than " + some}
		case sight.Unclear:
			return []string{"is out less than " + amount(p, seenFrom(look, p))}
		}
		return []string{"is out", "is out at least " + some}
	}
	stand := map[string]string{"UP": "up", "DOWN": "down", "LEFT": "left", "RIGHT": "right"}[wording.Direction(p.Motion, at > 0)]
	switch way := look.Way(p, sight.Move{To: at}); {
	case look.Ruler:
		return []string{"is at neutral", "is " + amount(p, at) + " " + stand + " ± " + w.tolerance(p)}
	case way == sight.Unclear:
		return []string{"is " + stand + ", less than " + amount(p, seenFrom(look, p)), "is at neutral"}
	case way == sight.Still:
		return []string{"is at neutral", "is " + stand + ", less than " + amount(p, seenFrom(look, p)/2)}
	}
	return []string{"is " + stand}
}

// standsFar says of a part that clearly stands to one side that it does so by as much as
// an eye must see.
func (w *writer) standsFar(p *mixcore.Part, at float64) string {
	stand := map[string]string{"UP": "up", "DOWN": "down", "LEFT": "left", "RIGHT": "right"}[wording.Direction(p.Motion, at > 0)]
	return "is " + stand + ", at least " + amount(p, seenFrom(w.found.Look, p)/2)
}

// mayStop says whether a motor runs on in a step, no faster than before: of one that stops
// instead it is true too that it slows down, and may be that it is about where it was.
func (w *writer) mayStop(part, step int) bool {
	p := &w.setup.Parts[part]
	if p.Motion != mixcore.Power {
		return false
	}
	way := powerWay(w.found.Look, p, &w.found.Table.Steps[step], w.found.Table.Move(table.None, step, part))
	return way == "SLOWER" || way == "STAYS"
}

// seenFrom is from how much on a movement is seen.
func seenFrom(look sight.Look, p *mixcore.Part) float64 {
	if p.Motion.Hinged() {
		return float64(look.Visible)
	}
	return float64(sight.VisibleAmount)
}

// about is an amount with its tolerance.
func (w *writer) about(p *mixcore.Part, size float64) string {
	return amount(p, size) + " ± " + w.tolerance(p)
}

// tolerance is what may be read beside an amount: of an eye that is asked where
// something is on the way, what it sees.
func (w *writer) tolerance(p *mixcore.Part) string {
	look := w.found.Look
	apart := seenFrom(look, p)
	if look.Ruler {
		apart = float64(sight.AccuracyAmount)
		if p.Motion.Hinged() {
			apart = float64(look.Accuracy)
		}
	}
	return amount(p, math.Max(apart-readTo, readTo))
}

// amount is a size with its unit: "18.4°", "50%".
func amount(p *mixcore.Part, size float64) string {
	unit := "%"
	if p.Motion.Hinged() {
		unit = "°"
	}
	scale := math.Pow10(readDecimals)
	return strconv.FormatFloat(math.Round(math.Abs(size)*scale)/scale, 'f', -1, 64) + unit
}

// onTheWay are sentences on where parts are before they come to rest, in a step that
// shows a mistake in time.
func (w *writer) onTheWay(step int, at phrase.Situation) (sentences []string) {
	t := w.found.Table
	for _, i := range script.PartOrder(w.setup) {
		p := &w.setup.Parts[i]
		when, ok := t.Moment(w.found.Look, step, i)
		if !ok {
			continue
		}
		out := t.Model.Plan.NewOutput()
		st := &t.Steps[step]
		t.Model.Plan.EvalAfter(&st.From, &st.To, when, out)
		where := out.Parts[i].Place()
		var verbs []string
		for _, verb := range w.standsClose(p, where) {
			verbs = append(verbs, fmt.Sprintf("after %s, %s%s", wording.Time(when), timeMark, verb))
		}
		sentences = append(sentences, w.true(at, p, verbs)...)
	}
	return sentences
}

// standsClose is where a part is, as closely as the look tells.
func (w *writer) standsClose(p *mixcore.Part, at float64) []string {
	switch {
	case p.Motion == mixcore.Power:
		return []string{"is at " + w.about(p, at)}
	case p.Motion == mixcore.OutIn:
		return []string{"is " + w.about(p, at) + " out"}
	}
	stand := map[string]string{"UP": "up", "DOWN": "down", "LEFT": "left", "RIGHT": "right"}[wording.Direction(p.Motion, at > 0)]
	return []string{"is " + amount(p, at) + " " + stand + " ± " + w.tolerance(p), "is at neutral"}
}

package sense

import (
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"example.com/hingeline/verify/phrase"
)

// doesWords are what a part does, as a script says it.
var doesWords = map[phrase.Way]string{
	phrase.Up: "rises", phrase.Down: "drops", phrase.Left: "moves left", phrase.Right: "moves right",
	phrase.Faster: "speeds up", phrase.Slower: "slows down", phrase.Out: "extends", phrase.In: "retracts",
}

// isWords are where a part stands, as a script says it.
var isWords = map[phrase.Way]string{
	phrase.Up: "up", phrase.Down: "down", phrase.Left: "left", phrase.Right: "right", phrase.Out: "out", phrase.In: "in",
}

// axisNames are the words of the axes: as a noun, and for what the model does.
var axisNames = map[mixcore.Axis]string{mixcore.Roll: "roll", mixcore.Pitch: "pitch", mixcore.Yaw: "yaw"}

func turnVerb(axis mixcore.Axis) string {
	return map[mixcore.Axis]string{mixcore.Roll: "rolls", mixcore.Pitch: "pitches", mixcore.Yaw: "yaws"}[axis]
}

func turnSide(axis mixcore.Axis, plus bool) string {
	switch {
	case axis == mixcore.Pitch && plus:
		return "up"
	case axis == mixcore.Pitch:
		return "down"
	case plus:
		return "right"
	}
	return "left"
}

// should is what the hand asks: "the roll stick to the right should roll it
// RIGHT".
func (l *looker) should(c cue) string {
	return "the " + l.s.Controls[c.control].Name + " " + c.side + " should " + axisNames[c.axis] + " it " + strings.ToUpper(turnSide(c.axis, c.plus))
}

// moving is a part that moves one way: "a rising port flap".
func (l *looker) moving(part int, way phrase.Way) string {
	name := l.s.Parts[part].Name
	switch way {
	case phrase.Up:
		return "a rising " + name
	case phrase.Down:
		return "a dropping " + name
	case phrase.Faster:
		return "more power on the " + name
	case phrase.Slower:
		return "less power on the " + name
	case phrase.Out:
		return "an opening " + name
	case phrase.In:
		return "a closing " + name
	case phrase.Left:
		return "the " + name + " moving left"
	}
	return "the " + name + " moving right"
}

// pushes is what a part does to the model as it moves against what the hand
// asks: "a rising port flap pushes the port wing DOWN and rolls the model LEFT".
func (l *looker) pushes(part int, way phrase.Way, c cue) string {
	return l.moving(part, way) + " " + l.push(part, way, c) + " and " + turnVerb(c.axis) + " the model " +
		strings.ToUpper(turnSide(c.axis, !c.plus))
}

// push is where a part that turns the model against what the hand asks takes
// the place where it sits.
func (l *looker) push(part int, way phrase.Way, c cue) string {
	p := &l.s.Parts[part]
	side := map[mixcore.Side]string{mixcore.Port: "port", mixcore.Starboard: "starboard"}[p.Side]
	turnsPlus := !c.plus
	switch {
	case effect.Steers(p.Kind):
		return "steers the nose round"
	case way == phrase.Faster:
		return "pulls the " + side + " wing FORWARD"
	case way == phrase.Slower:
		return "lets the " + side + " wing fall BACK"
	case way == phrase.Out:
		return "holds the " + side + " wing BACK"
	case way == phrase.In:
		return "lets the " + side + " wing go FORWARD"
	case c.axis == mixcore.Roll:
		down := turnsPlus == (p.Side == mixcore.Starboard)
		return "pushes the " + side + " " + bearer(p) + " " + either(down, "DOWN", "UP")
	}
	where, plus, minus := "tail", "DOWN", "UP"
	if c.axis == mixcore.Yaw {
		plus, minus = "LEFT", "RIGHT"
	}
	switch {
	case l.ahead(part):
		where, plus, minus = "nose", minus, plus
	case p.Kind == "elevon":
		where = "back of the wing"
	}
	return "pushes the " + where + " " + either(turnsPlus, plus, minus)
}

func either(first bool, a, b string) string {
	if first {
		return a
	}
	return b
}

// bearer is what carries a part that rolls the model.
func bearer(p *mixcore.Part) string {
	if info, _ := p.Kind.Info(); info.Tail {
		return "side of the tail"
	}
	return "wing"
}

// ahead is true for a part ahead of the balance point.
func (l *looker) ahead(part int) bool {
	placed, ok := l.air.Placed(part)
	return ok && placed.Aft < 0
}

// picture is what a movement against the hand looks like, in words.
func (l *looker) picture(part int, way phrase.Way, c cue) string {
	p := &l.s.Parts[part]
	what := "the " + p.Name + " " + doesWords[way]
	switch p.Motion {
	case mixcore.UpDown:
		what = "trailing edge of the " + p.Name + " " + strings.ToUpper(isWords[way])
	case mixcore.LeftRight:
		what = "the " + p.Name + " to the " + strings.ToUpper(isWords[way])
	}
	from, rest, _ := strings.Cut(turnPicture(c.axis, !c.plus), ": ")
	return from + ": " + what + ", " + rest
}

// turnPicture is what a turn looks like, in words.
func turnPicture(axis mixcore.Axis, plus bool) string {
	switch {
	case axis == mixcore.Roll && plus:
		return "seen from behind: starboard wing DOWN, port wing UP"
	case axis == mixcore.Roll:
		return "seen from behind: port wing DOWN, starboard wing UP"
	case axis == mixcore.Pitch && plus:
		return "seen from the side: nose UP, tail DOWN"
	case axis == mixcore.Pitch:
		return "seen from the side: nose DOWN, tail UP"
	case plus:
		return "seen from above: nose to the RIGHT, tail to the LEFT"
	}
	return "seen from above: nose to the LEFT, tail to the RIGHT"
}

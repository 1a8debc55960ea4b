package draft

import (
	"math"
	"strings"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/purpose"
)

// heading writes what the script is.
func (d *drafter) heading() {
	d.line(0, "Feature: %s", strings.Join(strings.Fields(d.m.Name), " "))
	for _, text := range strings.Split(headText, "\n") {
		d.line(1, "%s", text)
	}
}

const headText = `A first script, drafted from where each part is on the model and what it is for,
not from what the set-up does: if a check fails, look at the set-up first. It
says which way; add how far (rises 20° ± 2°). Some things only you can know: a
line that is marked "you decide" says what the set-up does. Take the mark away
if that is right, or write what is.`

// neutralWords, and the words for a part that stands off neutral at rest.
var (
	neutralWords = does{"is at neutral", "are at neutral"}
	stoppedWords = does{"is stopped", "are stopped"}
	standWords   = map[phrase.Way]does{
		phrase.Down: {"is down", "are down"}, phrase.Up: {"is up", "are up"},
		phrase.Left: {"is left", "are left"}, phrase.Right: {"is right", "are right"},
		phrase.Out: {"is out", "are out"}, phrase.In: {"is in", "are in"},
	}
)

// rest writes how everything stands before anything is moved. A surface stands
// at neutral unless the mix itself asks for something else there.
func (d *drafter) rest() {
	in := d.plan.Rest()
	d.plan.Eval(&in, d.after)
	var neutral, stopped []int
	stands := map[phrase.Way][]int{}
	off := map[phrase.Way][]int{}
	for i := range d.s.Parts {
		p, at := &d.s.Parts[i], d.after.Parts[i]
		switch {
		case p.Motion == mixcore.Power:
			stopped = append(stopped, i)
		case p.Motion == mixcore.OutIn:
			if way := d.restingWay(i); way != phrase.NoWay {
				stands[way] = append(stands[way], i)
			}
		case math.Abs(float64(at.Angle)) >= float64(d.m.Still) && d.mixAsks(p):
			way := phrase.WayOf(p.Motion, at.Angle > 0)
			off[way] = append(off[way], i)
		default:
			neutral = append(neutral, i)
		}
	}
	var lines []line
	add := func(parts []int, words does, open bool) {
		if len(parts) > 0 {
			lines = append(lines, line{d.sentence(parts, words), open})
		}
	}
	add(neutral, neutralWords, false)
	add(stopped, stoppedWords, false)
	for way := phrase.NoWay; way <= phrase.In; way++ {
		add(stands[way], standWords[way], false)
		add(off[way], standWords[way], true)
	}
	d.gap()
	if len(settled(lines)) == 0 {
		for _, l := range lines {
			d.decide(1, "* "+l.text)
		}
		return
	}
	d.line(1, "Scenario: At rest")
	d.outcomes(2, lines)
}

// mixAsks is true if the mix of a part's channel comes to something.
func (d *drafter) mixAsks(p *mixcore.Part) bool {
	for i := range p.Drives {
		if d.after.Channels[p.Drives[i].Channel].Sum != 0 {
			return true
		}
	}
	return false
}

// restingWay is where an extra stands at rest, by the name of the position of
// the switch or lever that it answers.
func (d *drafter) restingWay(part int) phrase.Way {
	if d.s.Parts[part].Kind == "drag rudder" {
		return phrase.In // shut, until somebody asks for drag
	}
	for _, c := range d.reach[part].Controls() {
		if d.places[c] == nil {
			continue
		}
		control := &d.s.Controls[c]
		if out, known := purpose.Outward.IsOut(purpose.PlaceName(control, control.Rest())); known {
			return phrase.WayOf(mixcore.OutIn, out)
		}
	}
	return phrase.NoWay
}

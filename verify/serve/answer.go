package serve

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/phrase"
	"example.com/hingeline/verify/report/figure"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/result/said"
	"example.com/hingeline/verify/sentence"
	"example.com/hingeline/verify/sheet"
	"example.com/hingeline/verify/wording"
)

// answer is what everything does at one pose.
type answer struct {
	Kind     string            `json:"kind"` // "answer"
	Number   int64             `json:"number"`
	Revision int               `json:"revision"`
	Pose     string            `json:"pose"`
	Parts    []partAt          `json:"parts"`
	Motors   []string          `json:"motors"`   // that run: "MOTOR RUNS at 40 %"
	Lost     string            `json:"lost"`     // what that the signal is lost means; empty while it is there
	Turns    []string          `json:"turns"`    // which way that turns the model, about each axis
	Drawings map[string]string `json:"drawings"` // SVG, by id: those that changed
	Part     int               `json:"part"`
	Why      []step            `json:"why"` // of the part looked at
	Curve    *curve            `json:"curve,omitempty"`
	Here     *figure.Point     `json:"here,omitempty"` // in the curve's drawing: where the part stands
	Sentence *scenario         `json:"sentence,omitempty"`
}

// partAt is what one part does.
type partAt struct {
	Says     string      `json:"says"`
	Short    string      `json:"short"` // "UP 14.2°", "RUNS at 40 %"
	Way      string      `json:"way"`   // as result.Stand; none for what is at neutral, or nearly
	Limits   []string    `json:"limits"`
	Channels []channelAt `json:"channels"`
}

type channelAt struct {
	Name    string `json:"name"`
	Percent string `json:"percent"`
	Pulse   string `json:"pulse"`
}

// step is one step of the cause chain.
type step struct {
	Words   string `json:"words"`
	Limit   string `json:"limit"`
	Place   string `json:"place"`
	Excerpt string `json:"excerpt"`
}

type scenario struct {
	Text    string   `json:"text"`
	LeftOut []string `json:"leftOut"`
}

func (p *page) answerTo(s *subject, h *hand, at phrase.Pose) *answer {
	in := at.Input()
	shown := verify.Show(s.model, verify.View{To: at})
	a := &answer{
		Kind: "answer", Number: h.Number, Revision: s.revision, Part: h.Part,
		Pose: poseWords(shown), Parts: s.parts(&in), Turns: turns(shown), Drawings: p.draw(s, &in),
	}
	if looked := partNamed(shown, s.model.Setup.Parts[h.Part].Name); looked != nil {
		for _, st := range looked.Chain {
			a.Why = append(a.Why, step{said.StepWords(st), st.Limit, said.At(st.Place), st.Place.Excerpt})
		}
	}
	a.Motors = motorsAt(&s.model.Setup, a.Parts)
	if in.SignalLost {
		a.Lost = signalLost
	}
	a.Curve, a.Here = p.curveAt(s, h, &in)
	if h.Sentence {
		w := sentence.Scenario(s.model, &in, nil)
		a.Sentence = &scenario{asComputed + w.Text, w.LeftOut}
	}
	return a
}

// signalLost is said while the signal is lost: the controls then move and the model does not,
// which would look as if the page were broken.
const signalLost = "SIGNAL LOST: what holds stays where it was; the controls move nothing"

// asComputed goes with a scenario wherever it is copied to.
const asComputed = "# As computed at this pose, not as wanted: correct it before it counts.\n"

func poseWords(shown *result.Shown) string {
	if len(shown.Pose) == 0 {
		return "everything rests"
	}
	return wording.Listed(shown.Pose) + "; everything else rests"
}

// parts are what all parts do, in the file's order.
func (s *subject) parts(in *mixcore.Input) []partAt {
	out := s.model.Plan.NewOutput()
	s.model.Plan.Eval(in, out)
	list := make([]partAt, len(s.model.Setup.Parts))
	for i := range list {
		p := &s.model.Setup.Parts[i]
		list[i] = standing(p, out.Parts[i])
		list[i].Limits = wording.Limits(bites(p, i, out))
		told := map[int]bool{}
		for _, d := range p.Drives {
			if told[d.Channel] {
				continue
			}
			told[d.Channel] = true
			c, o := &s.model.Setup.Channels[d.Channel], out.Channels[d.Channel]
			list[i].Channels = append(list[i].Channels, channelAt{fmt.Sprint("channel ", c.Number), wording.Percent(o.Output), wording.Pulse(o.Pulse)})
		}
	}
	return list
}

// nearNeutral is the angle below which a part that is not at neutral is still said to be:
// nobody sees less on a model.
const nearNeutral mixcore.Degrees = 0.5

// runsAt begins what is said of a motor that runs.
const runsAt = "RUNS at "

// standing is where a part stands, in words.
func standing(p *mixcore.Part, o mixcore.PartOutput) partAt {
	at := partAt{Says: wording.Position(p, o)}
	at.Short = at.Says
	switch {
	case p.Motion == mixcore.Power:
		if power, runs := strings.CutPrefix(at.Says, "power "); runs {
			at.Short = runsAt + power
		}
		return at
	case !p.Motion.Hinged():
		if at.Says != wording.Direction(p.Motion, false) {
			at.Way = wording.Direction(p.Motion, true)
		}
		return at
	}
	angle := mixcore.Degrees(math.Abs(float64(o.Angle)))
	switch {
	case angle < wording.NeutralBelow:
	case angle < nearNeutral:
		at.Says = "neutral (" + wording.Angle(angle) + " " + wording.Direction(p.Motion, o.Angle > 0) + ")"
		at.Short = at.Says
	default:
		at.Way, at.Short = wording.Direction(p.Motion, o.Angle > 0), wording.Turn(p.Motion, o.Angle)
	}
	return at
}

// bites are the limits that bite on the way to a part: of its channels, its servos and
// itself.
func bites(p *mixcore.Part, part int, out *mixcore.Output) mixcore.Limit {
	limits := out.Parts[part].Limits
	for _, d := range p.Drives {
		limits |= out.Channels[d.Channel].Limits
	}
	return limits
}

// partNamed is one part of what is shown; names are unique within a model.
func partNamed(shown *result.Shown, name string) *result.ShownPart {
	for i := range shown.Parts {
		if shown.Parts[i].Name == name {
			return &shown.Parts[i]
		}
	}
	return nil
}

// turns are a sentence about each axis.
func turns(shown *result.Shown) []string {
	var words []string
	if shown.Effect == nil {
		return nil
	}
	for _, t := range shown.Effect.Turns {
		words = append(words, "It "+t.Text+".")
	}
	return words
}

// draw draws the model, and gives the drawings of what does not stand as the page has it.
func (p *page) draw(s *subject, in *mixcore.Input) map[string]string {
	drawings := map[string]string{}
	keep := func(id string, d figure.Drawing) { drawings[id] = svgOf(&d, id) }
	picture := sheet.Stands(s.model, in)
	if slices.Equal(p.stands, picture.Stands) {
		return drawings
	}
	seen := neared(s.model, &picture)
	keep("behind", s.live.Behind(&seen, "The model from behind"))
	keep("above", s.live.Above(&seen, "The model from above"))
	for i := range s.shape.Parts {
		if p.stands == nil || p.stands[i] != picture.Stands[i] {
			o := &s.shape.Parts[i]
			keep(fmt.Sprint("part-", i), figure.Section(o, &picture.Stands[i], nil, o.Name))
		}
	}
	p.stands = picture.Stands
	return drawings
}

// neared is a picture in which what is nearly at neutral is at neutral.
func neared(m *airframes.Model, p *result.Picture) result.Picture {
	near := result.Picture{Stands: slices.Clone(p.Stands)}
	for i := range near.Stands {
		st := &near.Stands[i]
		if m.Setup.Parts[i].Motion.Hinged() && math.Abs(st.At) < float64(nearNeutral) {
			*st = result.Stand{Says: "neutral"}
		}
	}
	return near
}

// svgOf is a drawing as an svg element, in which parts can be pointed at; of one that cannot be written a line that says so.
func svgOf(d *figure.Drawing, id string) string {
	var b bytes.Buffer
	if err := figure.SVG(&b, d, figure.SVGOptions{ID: id, Parts: true}); err != nil {
		none := figure.Drawing{Width: 40, Height: 8, Title: d.Title, Description: "It cannot be drawn.",
			Items: []figure.Item{figure.Text{At: figure.Point{X: 1, Y: 5}, Size: 3, Words: "cannot be drawn"}}}
		b.Reset()
		figure.SVG(&b, &none, figure.SVGOptions{ID: id})
	}
	return b.String()
}

package sheet

import (
	"math"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/airframestest"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
	"pgregory.net/rapid"
)

// Every part can be drawn, on its side of the model, and what nobody has placed lies over
// nothing else.
func drawable(t fatal, m *airframes.Model) {
	t.Helper()
	shape := Shape(m)
	if !(shape.Semispan > 0 && shape.Chords[0] > 0 && shape.Chords[1] > 0) || shape.Measured != (m.Setup.Wing != nil) || len(shape.Parts) != len(m.Setup.Parts) {
		t.Fatalf("%+v", shape)
	}
	for i := range shape.Parts {
		o, p := &shape.Parts[i], &m.Setup.Parts[i]
		for _, x := range []float64{o.Inner.Out, o.Inner.Aft, o.Inner.Up, o.Outer.Out, o.Outer.Aft, o.Outer.Up, o.Chord, o.Tilt, o.Most} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatalf("%+v", *o)
			}
		}
		info, _ := p.Kind.Info()
		surface := (info.Motion == mixcore.UpDown || info.Kind == "rudder")
		if surface != (o.Inner != o.Outer) || surface && !(o.Chord > 0) || math.Abs(o.Tilt) > 90 || o.Most < 0 || o.Stage == "" || o.Side == "" || o.Motion == "" {
			t.Fatalf("%+v", *o)
		}
		if (o.Most > 0) && !p.Motion.Hinged() {
			t.Fatalf("%+v turns", *o)
		}
		if side := outward(p.Side); side != 0 && (side*o.Inner.Out < 0 || side*o.Outer.Out < -1e-9) {
			t.Fatalf("%+v is on the other side", *o)
		}
		for k := range i {
			q := &shape.Parts[k]
			if o.PlaceSaid && q.PlaceSaid {
				continue
			}
			if o.Inner == q.Inner && o.Outer == q.Outer {
				t.Fatalf("%+v and %+v are drawn over each other", *o, *q)
			}
		}
	}
}

func TestShapeCanBeDrawn(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m, _ := shipped(t, name)
		drawable(t, m)
	}
	rapid.Check(t, func(t *rapid.T) {
		m, problems := airframes.Load("drawn.yaml", airframestest.Generate(t))
		if m == nil {
			t.Fatalf("%+v", problems)
		}
		drawable(t, m)
	})
}

// crowd is a model of which nothing is measured, with several parts of a kind.
const crowd = `hingeline: 1
name: Crowd
controls: {roll stick: roll}
demands: {roll: roll stick}
channels: {1: roll, 2: {name: gear, mix: roll}}
surfaces:
  port aileron: {channel: 1, measured: {100%: 20° up}}
  port outer flap: {channel: 1, measured: {100%: 20° up}}
  port inner flap: {channel: 1, measured: {100%: 20° up}}
  port spoiler: {channel: 1, measured: {100%: 20° up}}
  starboard aileron: {channel: 1, measured: {100%: 20° up}}
  starboard outer aileron: {channel: 1, measured: {100%: 20° up}}
  starboard flap: {channel: 1, span_mm: [100, 500], measured: {100%: 20° up}}
  elevator: {channel: 1, measured: {100%: 20° up}}
  port rudder: {channel: 1, measured: {100%: 20° right}}
  starboard rudder: {channel: 1, measured: {100%: 20° right}}
  upper rudder: {channel: 1, measured: {100%: 20° right}}
  lower rudder: {channel: 1, measured: {100%: 20° right}}
wheels:
  nose wheel: {channel: 1, measured: {100%: 20° right}}
  tail wheel: {channel: 1, measured: {100%: 20° right}}
motors:
  front motor: {channel: 1}
  rear motor: {channel: 1}
extras:
  nose retract: {channel: 2}
  port retract: {channel: 2}
  starboard retract: {channel: 2}
  first hook: {kind: hook, channel: 2}
  second hook: {kind: hook, channel: 2}
  port drag rudder: {channel: 2}
`

func TestShapeLaysPartsOfAKindSideBySide(t *testing.T) {
	m, problems := airframes.Load("crowd.yaml", []byte(crowd))
	if m == nil {
		t.Fatal(problems)
	}
	drawable(t, m)
	shape := Shape(m)
	at := map[string]*result.Outline{}
	for i := range shape.Parts {
		at[shape.Parts[i].Name] = &shape.Parts[i]
	}
	for _, order := range []string{
		"port inner flap < port outer flap < port aileron",
		"starboard flap < starboard aileron < starboard outer aileron",
		"lower rudder < upper rudder",
	} {
		names := strings.Split(order, " < ")
		for i := range names[1:] {
			inner, outer := along(at[names[i]]), along(at[names[i+1]])
			if !(inner.from < inner.to && inner.to <= outer.from && outer.from < outer.to) {
				t.Errorf("%s from %v and %s from %v: want one beside the other", names[i], inner, names[i+1], outer)
			}
		}
	}
	if f := at["starboard flap"]; f.Inner.Out != 100 || f.Outer.Out != 500 {
		t.Errorf("%+v", *f)
	}
	if !(at["port spoiler"].Inner.Aft < at["port inner flap"].Inner.Aft) {
		t.Error("the spoiler is at the trailing edge")
	}
	if e := at["elevator"]; !(e.Inner.Out < 0 && e.Outer.Out > 0) {
		t.Errorf("%+v", *e)
	}
	if !(at["nose wheel"].Inner.Aft < 0 && at["tail wheel"].Inner.Aft > 0 && at["nose retract"].Inner.Aft < 0 && at["port retract"].Inner.Up < 0 && at["first hook"].Inner.Up < 0) {
		t.Error("wheels, retracts and hooks are not where they usually are")
	}
	if p, s := at["port rudder"], at["starboard rudder"]; !(p.Inner.Out < 0 && s.Inner.Out > 0 && p.Inner.Up < p.Outer.Up) {
		t.Errorf("%+v %+v", *p, *s)
	}
}

// What the file says is drawn as it says it.
func TestShapeKeepsWhatIsSaid(t *testing.T) {
	m, _ := shipped(t, "skerry")
	shape := Shape(m)
	if shape.Semispan != 1530 || shape.Chords != [2]float64{235, 130} || !shape.Measured {
		t.Errorf("%+v", shape)
	}
	for _, o := range shape.Parts {
		if o.Name != "starboard v-tail" {
			continue
		}
		// From 15 to 330 mm along a panel that rises 38°, its middle 120 mm up.
		cos, sin := math.Cos(38*math.Pi/180), math.Sin(38*math.Pi/180)
		if abs(o.Inner.Out-15*cos) > 1e-6 || abs(o.Outer.Out-330*cos) > 1e-6 || abs(o.Outer.Up-o.Inner.Up-315*sin) > 1e-6 || abs(o.Inner.Up+o.Outer.Up-240) > 1e-6 ||
			o.Inner.Aft != 1010 || o.Chord != 39 || !o.ChordSaid || !o.PlaceSaid || abs(o.Tilt-38) > 1e-9 {
			t.Errorf("%+v", o)
		}
	}
	// The furthest that a surface reaches is where its channel ends or its stop is.
	bracken, _ := shipped(t, "bracken-20")
	for _, o := range Shape(bracken).Parts {
		if o.Name == "port flap" && o.Most != 54 {
			t.Errorf("%+v", o)
		}
	}
}

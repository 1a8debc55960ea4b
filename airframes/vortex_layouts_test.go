//go:build vortex

package airframes_test

import (
	"strings"

	"example.com/hingeline/mixcore"
)

// latticeLayouts are layouts with nothing said but kind and side, and a few that
// are measured, so that every kind of part meets the lattice whatever ships.
func latticeLayouts() map[string]*mixcore.Setup {
	layout := func(names ...string) *mixcore.Setup {
		s := &mixcore.Setup{}
		for _, name := range names {
			s.Parts = append(s.Parts, namedPart(name))
		}
		return s
	}
	layouts := map[string]*mixcore.Setup{
		"sport":        layout("port aileron", "starboard aileron", "elevator", "rudder", "motor"),
		"flaperons":    layout("port flaperon", "starboard flaperon", "port elevator", "starboard elevator", "rudder"),
		"v-tail":       layout("port aileron", "starboard aileron", "port flap", "starboard flap", "port v-tail", "starboard v-tail"),
		"elevons":      layout("port elevon", "starboard elevon", "airbrake"),
		"canard":       layout("port aileron", "starboard aileron", "canard", "port rudder", "starboard rudder"),
		"two canards":  layout("port aileron", "starboard aileron", "port canard", "starboard canard", "rudder"),
		"tailerons":    layout("port taileron", "starboard taileron", "port rudder", "starboard rudder"),
		"twin":         layout("port aileron", "starboard aileron", "elevator", "rudder", "port motor", "starboard motor"),
		"spoilers":     layout("port spoiler", "starboard spoiler", "port airbrake", "starboard airbrake", "elevator", "rudder"),
		"drag rudders": layout("port elevon", "starboard elevon", "port drag rudder", "starboard drag rudder"),
		"inner and outer": layout("port outer aileron", "port inner aileron", "starboard inner aileron",
			"starboard outer aileron", "elevator", "rudder"),
	}

	inverted := layout("port flaperon", "starboard flaperon", "port v-tail", "starboard v-tail")
	tilt(inverted, "v-tail", -38)
	layouts["inverted v-tail"] = inverted

	under := layout("port aileron", "starboard aileron", "elevator", "rudder")
	place(under, "rudder", 800, -80)
	tilt(under, "rudder", -90)
	layouts["rudder under the tail"] = under

	splayed := layout("port aileron", "starboard aileron", "elevator", "port rudder", "starboard rudder")
	tilt(splayed, "rudder", 65)
	layouts["splayed fins"] = splayed

	hanging := layout("port elevon", "starboard elevon", "port rudder", "starboard rudder")
	tilt(hanging, "rudder", -60)
	layouts["splayed fins under the wing"] = hanging

	tall := layout("port aileron", "starboard aileron", "elevator", "rudder", "motor")
	place(tall, "elevator", 800, 280)
	place(tall, "rudder", 780, 200)
	place(tall, "motor", 100, 150)
	layouts["T-tail with a motor on a pylon"] = tall

	measured := layout("port aileron", "starboard aileron", "port flap", "starboard flap", "elevator", "rudder")
	measured.Wing = &mixcore.Wing{Span: 2000, RootChord: 300, TipChord: 180}
	stations(measured, "aileron", 45, 550, 960)
	stations(measured, "flap", 60, 120, 540)
	layouts["measured trainer"] = measured

	rectangle := layout("port flaperon", "starboard flaperon", "elevator", "rudder")
	rectangle.Wing = &mixcore.Wing{Span: 1500, RootChord: 250, TipChord: 250}
	stations(rectangle, "flaperon", 50, 80, 740)
	layouts["measured rectangle"] = rectangle

	delta := layout("port elevon", "starboard elevon", "rudder")
	delta.Wing = &mixcore.Wing{Span: 1000, RootChord: 560, TipChord: 160}
	stations(delta, "elevon", 60, 100, 470)
	place(delta, "elevon", 210, 0)
	layouts["measured delta"] = delta

	swept := layout("port elevon", "starboard elevon", "port flap", "starboard flap",
		"port drag rudder", "starboard drag rudder")
	swept.Wing = &mixcore.Wing{Span: 2400, RootChord: 300, TipChord: 180}
	stations(swept, "elevon", 50, 560, 1120)
	stations(swept, "flap", 60, 150, 540)
	place(swept, "elevon", 330, 0)
	place(swept, "flap", 120, 0)
	layouts["measured flying wing"] = swept
	return layouts
}

// namedPart is a part with kind and side by its name, at 1 m of semispan.
func namedPart(name string) mixcore.Part {
	p := mixcore.Part{Name: name}
	switch {
	case strings.HasPrefix(name, "port "):
		p.Side = mixcore.Port
	case strings.HasPrefix(name, "starboard "):
		p.Side = mixcore.Starboard
	}
	for _, info := range mixcore.Kinds {
		// "drag rudder" comes after "rudder": the longest kind wins.
		if strings.HasSuffix(name, string(info.Kind)) && len(info.Kind) > len(p.Kind) {
			p.Kind, p.Motion = info.Kind, info.Motion
		}
	}
	return p
}

// ofKind calls change for each part of a kind.
func ofKind(s *mixcore.Setup, kind mixcore.Kind, change func(*mixcore.Part)) {
	for i := range s.Parts {
		if s.Parts[i].Kind == kind {
			change(&s.Parts[i])
		}
	}
}

func tilt(s *mixcore.Setup, kind mixcore.Kind, degrees mixcore.Degrees) {
	ofKind(s, kind, func(p *mixcore.Part) { p.Place.Tilt, p.Place.TiltSaid = degrees, true })
}

func place(s *mixcore.Setup, kind mixcore.Kind, aft, up mixcore.Millimetres) {
	ofKind(s, kind, func(p *mixcore.Part) {
		p.Place.Aft, p.Place.AftSaid = aft, true
		p.Place.Up, p.Place.UpSaid = up, true
	})
}

func stations(s *mixcore.Setup, kind mixcore.Kind, chord, from, to mixcore.Millimetres) {
	ofKind(s, kind, func(p *mixcore.Part) { p.Chord, p.Span = chord, [2]mixcore.Millimetres{from, to} })
}

package prove_test

import (
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/prove"
)

// Two drives count as one function, or as each other turned about, only where nothing at
// all differs: what is proved of their difference rests on it.
func TestTailsAreTheSameOnlyIfNothingDiffers(t *testing.T) {
	geometry := func(edit func(*linkage.Geometry)) func(*mixcore.Channel, *mixcore.Part) {
		return func(_ *mixcore.Channel, p *mixcore.Part) {
			g := *p.Drives[0].Linkage
			edit(&g)
			p.Drives[0].Linkage = &g
		}
	}
	for name, edit := range map[string]func(*mixcore.Channel, *mixcore.Part){
		"swing":          func(_ *mixcore.Channel, p *mixcore.Part) { p.Drives[0].Servo.Swing = 45.001 },
		"maximum":        func(_ *mixcore.Channel, p *mixcore.Part) { p.Drives[0].Servo.Max = 180 },
		"way it swings":  func(_ *mixcore.Channel, p *mixcore.Part) { p.Drives[0].Servo.PlusAft = !p.Drives[0].Servo.PlusAft },
		"sign":           func(_ *mixcore.Channel, p *mixcore.Part) { p.Drives[0].Sign = -p.Drives[0].Sign },
		"arm":            geometry(func(g *linkage.Geometry) { g.Arm += 0.001 }),
		"horn":           geometry(func(g *linkage.Geometry) { g.Horn += 0.001 }),
		"pivots":         geometry(func(g *linkage.Geometry) { g.Pivots += 0.001 }),
		"offset":         geometry(func(g *linkage.Geometry) { g.Offset += 0.001 }),
		"pushrod":        geometry(func(g *linkage.Geometry) { g.Pushrod = 58 }),
		"arm angle":      geometry(func(g *linkage.Geometry) { g.ArmDeg += 0.001 }),
		"horn angle":     geometry(func(g *linkage.Geometry) { g.HornDeg += 0.001 }),
		"arm's side":     geometry(func(g *linkage.Geometry) { g.Crossed = true }),
		"stop down":      func(_ *mixcore.Channel, p *mixcore.Part) { p.Stops.Plus = 60 },
		"stop up":        func(_ *mixcore.Channel, p *mixcore.Part) { p.Stops.Minus = 60 },
		"travel limit":   func(c *mixcore.Channel, _ *mixcore.Part) { c.Limit = 99.999 },
		"reverse":        func(c *mixcore.Channel, _ *mixcore.Part) { c.Reversed = !c.Reversed },
		"plus end":       func(c *mixcore.Channel, _ *mixcore.Part) { c.EndPoints.Plus += 0.001 },
		"minus end":      func(c *mixcore.Channel, _ *mixcore.Part) { c.EndPoints.Minus += 0.001 },
		"sub-trim":       func(c *mixcore.Channel, _ *mixcore.Part) { c.SubTrim += 0.001 },
		"shortest pulse": func(c *mixcore.Channel, _ *mixcore.Part) { c.PulseMin += 0.005 },
		"longest pulse":  func(c *mixcore.Channel, _ *mixcore.Part) { c.PulseMax -= 0.005 },
	} {
		for _, c := range []struct {
			what       string
			turn, side float64
			mirror     func(*mixcore.Channel, *mixcore.Part)
		}{
			{"the same", 1, 1, func(*mixcore.Channel, *mixcore.Part) {}},
			{"the channel turned about", -1, 1, func(c *mixcore.Channel, p *mixcore.Part) {
				c.EndPoints = mixcore.Sides{Plus: c.EndPoints.Minus, Minus: c.EndPoints.Plus}
				c.SubTrim, c.PulseMin, c.PulseMax = -c.SubTrim, 3000-c.PulseMax, 3000-c.PulseMin
				p.Drives[0].Servo.PlusAft = !p.Drives[0].Servo.PlusAft
			}},
			{"the surface turned about", 1, -1, func(_ *mixcore.Channel, p *mixcore.Part) {
				p.Drives[0].Sign = -p.Drives[0].Sign
				p.Stops.Plus, p.Stops.Minus = p.Stops.Minus, p.Stops.Plus
			}},
		} {
			s := ailerons()
			s.Channels[0].EndPoints, s.Channels[0].SubTrim = mixcore.Sides{Plus: 91, Minus: 83}, 3
			s.Channels[0].PulseMin, s.Channels[0].PulseMax = 1050, 1970
			s.Parts[0].Stops = mixcore.Stops{Plus: 25, Minus: 28}
			s.Channels[1] = s.Channels[0]
			s.Parts[1].Drives[0] = linked(1, true, -1)
			s.Parts[1].Stops = s.Parts[0].Stops
			c.mirror(&s.Channels[1], &s.Parts[1])
			if !sameDrives(t, s, c.turn, c.side) {
				t.Fatalf("%s: not the same", c.what)
			}
			edit(&s.Channels[1], &s.Parts[1])
			if sameDrives(t, s, c.turn, c.side) {
				t.Errorf("%s but for the %s: the same", c.what, name)
			}
		}
	}
}

func sameDrives(t *testing.T, s mixcore.Setup, turn, side float64) bool {
	p := prove.New(compile(t, s))
	return prove.TailOf(p, 0, 0, false).Same(prove.TailOf(p, 1, 0, false), turn, side)
}

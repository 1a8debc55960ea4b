package effect_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
	"pgregory.net/rapid"
)

// A change is the sum of what each part's influence says of its movement: of parts of
// every kind, on every side, tilted and placed.
func TestInfluenceAddsUpToChange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var s mixcore.Setup
		if rapid.Bool().Draw(t, "wing") {
			s.Wing = &mixcore.Wing{Span: 1400, RootChord: 240, TipChord: 160}
		}
		length := func(low, high int, what string) mixcore.Millimetres {
			return mixcore.Millimetres(rapid.IntRange(low, high).Draw(t, what))
		}
		for range rapid.IntRange(1, 6).Draw(t, "parts") {
			info := rapid.SampledFrom(mixcore.Kinds).Draw(t, "kind")
			p := mixcore.Part{Kind: info.Kind, Motion: info.Motion, Side: mixcore.Side(rapid.IntRange(0, 2).Draw(t, "side"))}
			p.Place = mixcore.Placement{Out: length(0, 600, "out"), Aft: length(-500, 900, "aft"), Up: length(-90, 90, "up"), Tilt: mixcore.Degrees(length(-90, 90, "tilt")),
				OutSaid: rapid.Bool().Draw(t, "out said"), AftSaid: rapid.Bool().Draw(t, "aft said"), UpSaid: rapid.Bool().Draw(t, "up said"), TiltSaid: rapid.Bool().Draw(t, "tilt said")}
			if rapid.Bool().Draw(t, "measured") {
				p.Chord, p.Span = length(20, 90, "chord"), [2]mixcore.Millimetres{length(50, 200, "from"), length(300, 650, "to")}
			}
			s.Parts = append(s.Parts, p)
		}
		air := effect.New(&s)
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "random"), 0))
		for range 20 {
			was, is := &mixcore.Output{}, &mixcore.Output{}
			var want effect.Moment
			unplaced := 0.0
			for i := range s.Parts {
				a, b := place(&s.Parts[i], random), place(&s.Parts[i], random)
				was.Parts, is.Parts = append(was.Parts, output(&s.Parts[i], a)), append(is.Parts, output(&s.Parts[i], b))
				in := air.Influence(i)
				if !air.Acts(i) && in != (effect.Influence{}) {
					t.Fatalf("a %s has an influence of %+v", s.Parts[i].Kind, in)
				}
				by, size := b-a, math.Abs(b)-math.Abs(a)
				want.Roll += in.Each.Roll*by + in.Size.Roll*size
				want.Pitch += in.Each.Pitch*by + in.Size.Pitch*size
				want.Yaw += in.Each.Yaw*by + in.Size.Yaw*size
				unplaced += in.Unplaced * by
			}
			got := air.Change(was, is)
			for _, c := range []struct {
				what      string
				got, want float64
			}{{"roll", got.Roll, want.Roll}, {"pitch", got.Pitch, want.Pitch}, {"yaw", got.Yaw, want.Yaw},
				{"unsure pitch", got.PitchUnsure, math.Abs(unplaced) * effect.UnplacedArm}} {
				if !(math.Abs(c.got-c.want) < 1e-9) {
					t.Fatalf("%s: got %v, want %v", c.what, c.got, c.want)
				}
			}
		}
	})
}

// place is degrees or percent, as a part moves.
func place(p *mixcore.Part, random *rand.Rand) float64 {
	if p.Motion == mixcore.Power || p.Motion == mixcore.OutIn {
		return random.Float64() * 100
	}
	return random.Float64()*80 - 40
}

func output(p *mixcore.Part, at float64) mixcore.PartOutput {
	if p.Motion == mixcore.Power || p.Motion == mixcore.OutIn {
		return mixcore.PartOutput{Amount: mixcore.Percent(at)}
	}
	return mixcore.PartOutput{Angle: mixcore.Degrees(at)}
}

package mixcore_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
)

// byHand is the set-up of sport as a programmer would write it out for this one
// model: the baseline of BenchmarkEval, and a second opinion on Eval.
func byHand(in []float64, angle *[6]float64, power *float64) {
	high := in[rateSwitch] == 1
	stick := func(x, throw, expo float64) float64 {
		if !high {
			throw, expo = throw/2, expo/2
		}
		x /= 100
		return ((1-expo)*x + expo*x*x*x) * throw
	}
	limit := func(v, low, high float64) float64 { return math.Min(math.Max(v, low), high) }
	roll := stick(in[rollStick], 90, 0.30) + in[rollTrim]*0.10
	pitch := stick(in[pitchStick], 80, 0.25) + in[pitchTrim]*0.10
	yaw := stick(in[yawStick], 95, 0.20) + in[yawTrim]*0.05
	flap := in[flapLever] * 0.45

	starboard, port := roll*1.0, roll*0.7
	if roll < 0 {
		starboard, port = roll*0.7, roll*1.0
	}
	starboardFlap, portFlap := flap, -flap
	if high {
		starboardFlap -= roll * 0.55
		portFlap -= roll * 0.55
	}
	portFlap = -limit(portFlap, -100, 100)
	starboardFlap = limit(starboardFlap, -100, 100)
	if starboardFlap < 0 {
		starboardFlap *= 0.95
	}
	starboardFlap = limit(starboardFlap+2, -100, 100)
	motor := in[throttle]
	if in[motorSwitch] == 0 {
		motor = 0
	}
	wing := func(output, side float64) float64 {
		return -swing(11, 15, 58, 3, 90, 95, output*0.45*side)
	}
	angle[0] = wing(limit(starboard, -100, 100), 1)
	angle[1] = wing(limit(port, -100, 100), -1)
	angle[2] = limit(wing(starboardFlap, -1), -18, 45)
	angle[3] = limit(wing(limit(portFlap, -100, 100), 1), -18, 45)
	angle[4] = swing(10, 15, 60, 0, 90, 90, -limit(pitch, -100, 100)*0.45)
	angle[5] = swing(10, 15, 60, 0, 90, 90, -limit(yaw, -100, 100)*0.45)
	*power = motor
}

// swing is a four-bar by circle intersection with an arc cosine.
func swing(arm, horn, pivots, offset, armDeg, hornDeg, turn float64) float64 {
	const rad = math.Pi / 180
	dx := pivots + horn*math.Cos(hornDeg*rad) - arm*math.Cos(armDeg*rad)
	dy := offset + horn*math.Sin(hornDeg*rad) - arm*math.Sin(armDeg*rad)
	rod2 := dx*dx + dy*dy
	ax, ay := arm*math.Cos((armDeg-turn)*rad)-pivots, arm*math.Sin((armDeg-turn)*rad)-offset
	d2 := ax*ax + ay*ay
	between := math.Acos((d2 + horn*horn - rod2) / (2 * math.Sqrt(d2) * horn))
	return hornDeg - (math.Atan2(ay, ax)-between)/rad
}

func randomPoses(p *mixcore.Plan, n int) []mixcore.Input {
	random := rand.New(rand.NewPCG(7, 11))
	poses := make([]mixcore.Input, n)
	for i := range poses {
		poses[i] = p.Rest()
		for c := range poses[i].Position {
			control := &p.Setup().Controls[c]
			low, high := control.Range()
			if control.Kind == mixcore.SwitchControl {
				poses[i].Position[c] = float64(random.IntN(int(high) + 1))
				continue
			}
			poses[i].Position[c] = low + (high-low)*random.Float64()
		}
	}
	return poses
}

func TestEvalAgreesWithStraightLineCode(t *testing.T) {
	p := mustCompile(t, sport())
	out := p.NewOutput()
	var angle [6]float64
	var power float64
	for _, in := range randomPoses(p, 5000) {
		p.Eval(&in, out)
		byHand(in.Position, &angle, &power)
		for i, want := range angle {
			if got := float64(out.Parts[i].Angle); math.Abs(got-want) > 1e-8 {
				t.Fatalf("%s at %v: %v°, by hand %v°", p.Setup().Parts[i].Name, in.Position, got, want)
			}
		}
		if got := float64(out.Parts[6].Amount); math.Abs(got-power) > 1e-9 {
			t.Fatalf("motor at %v: %v %%, by hand %v %%", in.Position, got, power)
		}
	}
}

// BenchmarkEval is Plan.Eval against the same set-up written out by hand; the
// goal is at most 2.5 times as long, without allocation.
func BenchmarkEval(b *testing.B) {
	p := mustCompile(b, sport())
	poses := randomPoses(p, 1024)
	b.Run("plan", func(b *testing.B) {
		b.ReportAllocs()
		out := p.NewOutput()
		for i := range b.N {
			p.Eval(&poses[i%len(poses)], out)
		}
	})
	b.Run("by hand", func(b *testing.B) {
		b.ReportAllocs()
		var angle [6]float64
		var power float64
		for i := range b.N {
			byHand(poses[i%len(poses)].Position, &angle, &power)
		}
	})
}

func BenchmarkTrace(b *testing.B) {
	p := mustCompile(b, sport())
	in := p.Rest()
	b.ReportAllocs()
	for range b.N {
		p.Trace(&in)
	}
}

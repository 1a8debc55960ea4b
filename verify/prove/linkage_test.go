package prove_test

import (
	"math/rand/v2"
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/linkage"
	"example.com/hingeline/verify/prove"
	"example.com/hingeline/verify/prove/provetest"
)

// A horn that turns past half a turn is no surface's, and its angle jumps by a whole turn.
// Either nobody can have such a set-up, or nothing false is proved of it.
func TestDecideHornPastHalfATurn(t *testing.T) {
	s := plain(lines(add(rollDemand, 100)))
	s.Channels[0].EndPoints = mixcore.Sides{Plus: 0, Minus: 107}
	s.Parts[0].Drives = []mixcore.Drive{{Sign: 1, Servo: mixcore.Servo{Swing: 90, Max: 180, PlusAft: true},
		Linkage: &linkage.Geometry{Arm: 7.4, Horn: 5, Pivots: 15, Offset: 5.6, ArmDeg: 20.4, HornDeg: 20}}}
	plan, faults := mixcore.Compile(s)
	if faults != nil {
		return
	}
	claim := everywhere(&s, prove.Place{Part: 0, Low: -inf, High: 100})
	p := prove.New(plan)
	if d := p.Decide(t.Context(), claim, prove.Options{}); d.Answer == prove.Proved {
		at := prove.Pose{Now: plan.Rest()}
		at.Now.Position[roll] = -80
		t.Errorf("never above 100° is proved; with the stick at -80 there are %v° to spare", p.Margin(claim, at))
	}
}

// A linkage driven to a hair before it locks: the slope there is as good as infinite.
func TestDecideNearALock(t *testing.T) {
	g := linkage.Geometry{Arm: 20, Horn: 12, Pivots: 60, ArmDeg: 90, HornDeg: 90}
	l, err := linkage.New(g)
	if err != nil {
		t.Fatal(err)
	}
	fore, aft := l.Range()
	if fore.Kind != linkage.Locks || -fore.Swing > aft.Swing {
		t.Fatalf("ends at %+v and %+v, want a lock fore", fore, aft)
	}
	for _, part := range []float64{0.9, 0.999, 0.999999, 0.999999999} {
		s := plain(lines(add(rollDemand, 100)), lines(add(rollDemand, 100)))
		for i := range s.Parts {
			s.Parts[i].Drives = []mixcore.Drive{{Channel: i, Sign: 1, Linkage: &g, Servo: mixcore.Servo{Swing: 60, Max: mixcore.Degrees(-fore.Swing * part), PlusAft: true}}}
		}
		least := l.Swing(fore.Swing * part)
		claim := everywhere(&s, prove.Place{Part: 0, Low: least - 1, High: inf})
		wantProved(t, decide(t, s, claim), 1)
		claim.Want = prove.Place{Part: 0, Low: least + 1e-3, High: inf}
		wantAnswer(t, decide(t, s, claim), prove.Disproved)
		same := everywhere(&s, prove.Differ{A: 0, B: 1, Sign: 1, Low: -1e-3, High: 1e-3})
		same.Other = prove.Beside(&s)
		wantAnswer(t, decide(t, s, same), prove.Proved)
		p := prove.New(compile(t, s))
		poses := provetest.Poses(compile(t, s), same, rand.New(rand.NewPCG(1, 1)))
		for range 200 {
			if at, _ := poses.Draw(); p.Margin(same, at) < 0 {
				t.Fatalf("margin %v at %+v", p.Margin(same, at), at)
			}
		}
	}
}

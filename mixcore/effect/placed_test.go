package effect_test

import (
	"testing"

	"example.com/hingeline/mixcore"
	"example.com/hingeline/mixcore/effect"
)

func TestPlacedSaysWhatTheBuilderSaid(t *testing.T) {
	tail := surface("v-tail", mixcore.Port)
	tail.Place = mixcore.Placement{Aft: 900, AftSaid: true, Up: 50, UpSaid: true, Tilt: -40, TiltSaid: true}
	aileron := surface("aileron", mixcore.Starboard)
	aileron.Span = [2]mixcore.Millimetres{500, 900}
	a := effect.New(&mixcore.Setup{
		Wing:  &mixcore.Wing{Span: 2000, RootChord: 300, TipChord: 200},
		Parts: []mixcore.Part{tail, aileron, surface("nose wheel", mixcore.Centre)},
	})
	near(t, "semispan", float64(a.Semispan()), 1000, 0)
	got, ok := a.Placed(0)
	if !ok || !got.AftKnown || got.Out >= 0 {
		t.Errorf("port v-tail: got %+v, %v; want a known place at port", got, ok)
	}
	near(t, "v-tail aft", got.Aft, 0.9, 1e-12)
	near(t, "v-tail up", got.Up, 0.05, 1e-12)
	near(t, "v-tail tilt", float64(got.Tilt), -40, 1e-9)
	got, ok = a.Placed(1)
	if !ok || got.AftKnown {
		t.Errorf("aileron: got %+v, %v; want no known place fore and aft", got, ok)
	}
	near(t, "aileron out", got.Out, 0.7, 1e-12)
	near(t, "aileron length", got.Length, 0.4, 1e-12)
	near(t, "aileron wing chord", got.Chord, 0.23, 1e-12)
	if got, ok := a.Placed(2); ok {
		t.Errorf("nose wheel: got %+v, want no place in the air", got)
	}
}

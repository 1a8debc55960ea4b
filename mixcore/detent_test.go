package mixcore_test

import (
	"testing"

	"example.com/hingeline/mixcore"
)

// A lever counts as standing at a detent from 1 % below to 1 % above, counted in decimals:
// 8.999 − 1 is 7.999, although the nearest binary fractions differ by one in the last place.
func TestLeverStandsAtADetentWithinOnePercentInDecimals(t *testing.T) {
	for _, test := range []struct{ at, low, high mixcore.Percent }{
		{8.999, 7.999, 9.999}, {0, 0, 1}, {0.4, 0, 1.4}, {40, 39, 41}, {99.3, 98.3, 100}, {100, 99, 100}, {33.3, 32.3, 34.3},
	} {
		c := mixcore.Control{Name: "flap lever", Kind: mixcore.LeverControl, Detents: []mixcore.Detent{{Name: "landing", At: test.at}}}
		if low, high := c.Detents[0].Stretch(); low != test.low || high != test.high {
			t.Errorf("at %v: got %v to %v, want %v to %v", test.at, low, high, test.low, test.high)
		}
		for _, at := range []mixcore.Percent{test.low, test.at, test.high} {
			if c.DetentAt(float64(at)) != 0 {
				t.Errorf("a lever at %v does not stand at its detent at %v", at, test.at)
			}
		}
		for _, at := range []mixcore.Percent{test.low - 0.001, test.high + 0.001} {
			if c.DetentAt(float64(at)) != -1 {
				t.Errorf("a lever at %v stands at its detent at %v", at, test.at)
			}
		}
	}
}

// Of every detent that a setting of three decimals can name, the ends of its stretch are
// the settings 1 % beside it.
func TestDetentStretchEndsAreSettings(t *testing.T) {
	for thousandths := 1000; thousandths <= 99_000; thousandths++ {
		d := mixcore.Detent{At: mixcore.Percent(float64(thousandths) / 1000)}
		low, high := d.Stretch()
		if want := mixcore.Percent(float64(thousandths-1000) / 1000); low != want {
			t.Fatalf("%v begins at %v, want %v", d.At, low, want)
		}
		if want := mixcore.Percent(float64(thousandths+1000) / 1000); high != want {
			t.Fatalf("%v ends at %v, want %v", d.At, high, want)
		}
	}
}

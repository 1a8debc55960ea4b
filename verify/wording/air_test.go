package wording

import "testing"

func TestAirIsSaidWithUnits(t *testing.T) {
	for _, row := range []struct{ got, want string }{
		{Torque(32), "32 N·cm"},
		{Torque(13.449), "13.4 N·cm"},
		{TorqueBand(13.449, 27), "13.4 to 27 N·cm"},
		{Times(2), "2 times"},
		{Times(1.125), "1.125 times"},
		{TimesBeside(2.04, 3), "2 times"},
		{TimesBeside(1.99, 2), "1.99 times"},
		{Speed(30), "30 m/s"},
		{Speed(8.5), "8.5 m/s"},
	} {
		if row.got != row.want {
			t.Errorf("got %q, want %q", row.got, row.want)
		}
	}
}

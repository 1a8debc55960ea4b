package mixcore_test

import (
	"reflect"
	"testing"
)

func TestCloneSharesNoSettings(t *testing.T) {
	s, untouched := sport(), sport()
	c := s.Clone()
	if !reflect.DeepEqual(c, s) {
		t.Fatal("the clone differs")
	}
	c.Controls[0].Name = "another"
	c.Demands[0].Rates[0].Expo++
	c.Channels[0].Mix[0].Share.Plus++
	c.Channels[0].Reversed = true
	c.Parts[0].Drives[0].Sign *= -1
	c.Parts[0].Drives[0].Linkage.Arm++
	c.Parts[6].Motor.Idle++
	if !reflect.DeepEqual(s, untouched) {
		t.Error("changing the clone changed the set-up")
	}
}

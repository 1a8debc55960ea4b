package result

import (
	"slices"
	"testing"
)

func TestViewsShareAPictureWhereEveryPartStandsAlike(t *testing.T) {
	up, down := []Stand{{At: -10}, {At: 0}}, []Stand{{At: 10}, {At: 0}}
	p := &Paper{Pictures: []Picture{
		{Stands: up, Of: []int{0}, Want: &Want{Low: -11, High: -9}},
		{Stands: up, Of: []int{1, 0}, Moves: true},
		{Stands: down, Of: []int{0}, Want: &Want{Low: 9, High: 11}},
		{Stands: up},
	}}
	views := p.Views([]int{0, 1, 2, 3, 9})
	if len(views) != 2 {
		t.Fatalf("%d pictures, wanted 2: no check 9, and check 3 is about no part", len(views))
	}
	if v := views[0]; !slices.Equal(v.Of, []int{0, 1}) || !v.Moves || v.Want != nil {
		t.Errorf("the shared picture is %+v, wanted one about parts 0 and 1, of a movement, with nothing wanted", v)
	}
	if v := views[1]; v.Want == nil {
		t.Error("the picture of one check lost what is wanted")
	}
	if got := p.Pictures[0]; len(got.Of) != 1 || got.Want == nil {
		t.Error("the pictures themselves were changed")
	}
}

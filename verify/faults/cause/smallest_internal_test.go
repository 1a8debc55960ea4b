package cause

import (
	"context"
	"slices"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/verifytest"
)

// What is turned about comes before what becomes another number, and the settings of
// another model last; of equals the catalogue's order stays. Each kind that is taken for a
// number is one of the catalogue.
func TestSmallestFirst(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	list := mistake.All(m, mistake.Options{})
	before := slices.Clone(list)
	smallestFirst(list)
	at := func(code string) (first, last int) {
		first = slices.IndexFunc(list, func(c mistake.Mistake) bool { return c.Kind.Code == code })
		for i := range list {
			if list[i].Kind.Code == code {
				last = i
			}
		}
		return first, last
	}
	_, reversed := at("channel-reversed")
	_, horn := at("horn-side")
	ends, endsLast := at("end-point-cut")
	others, _ := at("other-model")
	if max(reversed, horn) >= ends || endsLast >= others || others < 0 || len(list) != len(before) {
		t.Errorf("reversed to %d, horn to %d, end points %d to %d, other models from %d", reversed, horn, ends, endsLast, others)
	}
	for _, code := range sized {
		if !slices.ContainsFunc(mistake.Kinds(), func(k *mistake.Kind) bool { return k.Code == code }) {
			t.Errorf("the catalogue has no kind %q", code)
		}
	}
}

// Where the laws would cost too much nothing more is tried, what was not tried is counted,
// and none of it is offered.
func TestRepairsStopAtTheirLimit(t *testing.T) {
	m := verifytest.Shipped(t, "bracken-20")
	h := newHolding(context.Background(), m)
	if h.spent() {
		t.Error("spent before anything is tried")
	}
	claims, failing := h.kept(m)
	if claims < 50 || failing > 0 || h.boxes == 0 {
		t.Errorf("of itself %d claims hold, %d fail, %d boxes", claims, failing, h.boxes)
	}
	h.boxes = mostBoxes
	if !h.spent() {
		t.Error("not spent at the limit")
	}
	wrong, _ := mistakeNamed(t, m, "channel 5 (starboard aileron) is reversed").Variant(m)
	r := repairs(context.Background(), wrong, verifytest.Scripts(t, "bracken-20"), func(*holding) bool { return true })
	if r == nil || r.Tried > 0 || len(r.List) > 0 || r.Open < 200 {
		t.Errorf("at the limit: %+v", r)
	}
}

func mistakeNamed(t *testing.T, m *airframes.Model, text string) *mistake.Mistake {
	t.Helper()
	all := mistake.All(m, mistake.Options{})
	for i := range all {
		if all[i].Text == text {
			return &all[i]
		}
	}
	t.Fatalf("the catalogue has no %q", text)
	return nil
}

package mistake_test

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/faults/mistake"
	"example.com/hingeline/verify/verifytest"
)

// everything writes down all that a set-up says but its names.
func everything(s *mixcore.Setup) string {
	var b strings.Builder
	write(&b, reflect.ValueOf(*s))
	return b.String()
}

func write(b *strings.Builder, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if b.WriteByte('&'); !v.IsNil() {
			write(b, v.Elem())
		}
	case reflect.Struct:
		b.WriteByte('{')
		for i := range v.NumField() {
			if v.Type().Field(i).Name != "Name" {
				write(b, v.Field(i))
			}
		}
	case reflect.Slice, reflect.Array:
		fmt.Fprintf(b, "[%d:", v.Len())
		for i := range v.Len() {
			write(b, v.Index(i))
		}
	case reflect.Float64:
		fmt.Fprintf(b, "%v;", v.Float()+0) // −0 is 0
	default:
		fmt.Fprintf(b, "%v;", v)
	}
}

// No two mistakes are the same edit by different names, and none is no edit; nor is a
// pair one of its two.
func TestEachMistakeIsMadeOnce(t *testing.T) {
	pairs := 0
	for _, m := range append(verifytest.EveryShipped(t), verifytest.Model(t, "wheatear.yaml", small)) {
		edits := map[string]string{everything(&m.Setup): "the model"}
		for _, wrong := range mistake.All(m, mistake.Options{Others: []*airframes.Model{m}, Pairs: len(m.Setup.Channels) < 7}) {
			s := m.Setup.Clone()
			wrong.Edit(&s)
			now := everything(&s)
			if other, ok := edits[now]; ok {
				t.Errorf("%s: %q [%s] is %q by another name", m.Name, wrong.Text, wrong.Kind.Code, other)
			}
			edits[now] = wrong.Text
			if wrong.Kind == mistake.Pair() {
				pairs++
			}
		}
	}
	if pairs < 100 {
		t.Errorf("only %d pairs were looked at", pairs)
	}
}

package resolved_test

import (
	"strings"
	"testing"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/resolved"
)

// swap is a text with one piece of it replaced, which must be there just once.
func swap(t testing.TB, text, old, new string) string {
	t.Helper()
	if n := strings.Count(text, old); n != 1 {
		t.Fatalf("%q stands %d times", old, n)
	}
	return strings.Replace(text, old, new, 1)
}

func texts(list []resolved.Difference) []string {
	all := make([]string, len(list))
	for i, d := range list {
		all[i] = d.Text
	}
	return all
}

func digest(m *airframes.Model) string { return resolved.Digest(resolved.SetUp(m)) }

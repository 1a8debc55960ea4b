package features_test

import (
	"bytes"
	"slices"
	"testing"

	"example.com/hingeline/features"
)

func TestReadTakesTheNameWithOrWithoutItsEnding(t *testing.T) {
	names := features.Names()
	if !slices.Contains(names, "bracken-20") || !slices.IsSorted(names) {
		t.Errorf("Names() is %v, want a sorted list with bracken-20", names)
	}
	for _, name := range names {
		plain, ok := features.Read(name)
		long, okLong := features.Read(name + ".feature")
		if !ok || !okLong || len(plain) == 0 || !bytes.Equal(plain, long) {
			t.Errorf("%s: read %d and %d bytes, want the same text", name, len(plain), len(long))
		}
	}
	for _, name := range []string{"", "no-such-script", "../features/bracken-20", "features.go"} {
		if _, ok := features.Read(name); ok {
			t.Errorf("Read(%q) finds a script, want none", name)
		}
	}
}

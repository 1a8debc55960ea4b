package laws

import (
	"testing"

	"example.com/hingeline/verify/phrase"
)

// TestLeastIsThatOfTheSentences holds what counts here to what counts in a script.
func TestLeastIsThatOfTheSentences(t *testing.T) {
	for _, c := range []struct {
		what       string
		here, says float64
	}{
		{"clearly more", clearly, phrase.ClearlyMore},
		{"at a stop", stopReach, phrase.StopReach}, {"rounding", rounding, phrase.Rounding},
	} {
		if c.here != c.says {
			t.Errorf("%s: %v, a script says %v", c.what, c.here, c.says)
		}
	}
}

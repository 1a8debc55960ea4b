package chain

import (
	"strings"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/wording"
)

// Limits is every limit that bit between the controls and one part, in the order
// of the chain, each with what was asked and what came out: "beyond the channel's
// travel limit: -162 % asked of channel 3, -100 % came out". It is nil if none
// did. The steps of [Part] have the same limits at the same places. part is an
// index into Setup.Parts.
func Limits(m *airframes.Model, t *mixcore.Trace, part int) []string {
	return ofPart(m, t, part).limits
}

// bite names a limit at the step where it bit. of is what was asked for too much,
// with its preposition, or empty for the part itself.
func (b *builder) bite(s *result.Step, limit mixcore.Limit, of, asked, out string) {
	words := strings.Join(wording.Limits(limit), ", ")
	if s.Limit != "" {
		s.Limit += ", "
	}
	s.Limit += words
	b.limits = append(b.limits, words+": "+asked+" asked"+of+", "+out+" came out")
}

package said

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hingeline/verify/result"
)

// StandingOf is what the signatures of a model are worth, in large letters, and how it is
// meant.
func StandingOf(s *result.Standing) (Tone, string) {
	switch {
	case len(s.Signatures) == 0 && len(s.Troubles) == 0:
		return Heed, "NOT SIGNED"
	case len(s.Troubles) > 0:
		return Bad, "NOT TO BE TRUSTED"
	case s.Since != "":
		return Bad, "DO NOT FLY"
	case s.Stands() && differsOnTheModel(s):
		return Heed, "SIGNED AND CURRENT, BUT NOT ALL WAS AS EXPECTED ON THE MODEL"
	case s.Stands():
		return Good, "SIGNED AND CURRENT"
	case len(s.Changes) > 0:
		return Bad, "OUT OF DATE"
	}
	return Heed, "NO SIGNATURE COUNTS"
}

// differsOnTheModel says whether somebody whose signature stands has signed in spite of
// something that was not as expected.
func differsOnTheModel(s *result.Standing) bool {
	return slices.ContainsFunc(s.Signatures, func(g result.Signature) bool {
		return g.Stands() && g.Seen != nil && g.Seen.Differ > 0
	})
}

// OnTheModel is what a signature says of the model itself, and how it is meant.
func OnTheModel(s *result.Signature) (Tone, string) {
	seen := s.Seen
	switch {
	case seen == nil:
		return Heed, result.OnlySetUp
	case seen.Differ > 0:
		return Bad, inSpite(seen)
	case seen.Skipped+seen.Unseen > 0:
		return Heed, inSpite(seen)
	}
	return Good, inSpite(seen)
}

// inSpite is what was seen, with why it is signed all the same.
func inSpite(seen *result.Seen) string {
	words := seen.Summary
	if seen.Reason != "" {
		words += "; signed all the same: " + seen.Reason
	}
	if seen.ReasonUnseen != "" {
		words += "; signed though not all was seen: " + seen.ReasonUnseen
	}
	return fmt.Sprintf("%s (%s)", words, seen.Record)
}

// SignatureOf is what one signature is worth.
func SignatureOf(s *result.Signature) (Tone, string) {
	switch {
	case s.Stands():
		return Good, "genuine, and stands"
	case !s.Genuine:
		return Bad, "NOT GENUINE"
	}
	return Heed, "genuine, but does NOT STAND"
}

// SignedBy is who signed, as what and when.
func SignedBy(s *result.Signature) string {
	if s.Name == "" {
		return "a record that cannot be read"
	}
	return s.Name + ", " + result.RoleWords(s.Role) + ", " + When(s.Date)
}

// Key is what is known of the key of a signature.
func Key(s *result.Signature) string {
	switch {
	case s.Key == "":
		return "without a key: this shows accidents, but not who wrote it"
	case s.Vouched != "":
		return "key " + s.Key + ", that of " + s.Vouched
	}
	return "key " + s.Key + ", which no allowed-signers file vouches for"
}

// When is a date for people: "2026-11-25 20:15 UTC".
func When(date string) string {
	day, clock, ok := strings.Cut(strings.TrimSuffix(date, "Z"), "T")
	if !ok || len(clock) < 5 {
		return date
	}
	return day + " " + clock[:5] + " UTC"
}

package said

import (
	"strings"

	"example.com/hingeline/verify/result"
)

// Statement is what a signature under a report says, and what it does not.
type Statement struct {
	Tone      Tone
	Title     string // "What is signed"; of a report that cannot be signed, why
	Text      string // empty where there is nothing to sign
	Condition string // what is signed besides, in spite of a warning; else empty
}

// ShortPrint is the beginning of a fingerprint, enough to tell two papers apart at a
// glance: "0123abcd 4567cdef"; empty for none.
func ShortPrint(digest string) string {
	const group = 8
	digest = strings.TrimPrefix(digest, "sha256:")
	if len(digest) <= group {
		return digest
	}
	return digest[:group] + " " + digest[group:min(len(digest), 2*group)]
}

// StatementOf is the statement of a report.
func StatementOf(r *result.Report) Statement {
	v := VerdictOf(r)
	switch {
	case len(r.Checks) == 0:
		return Statement{Heed, v.Word + ": there is nothing to sign.", "", ""}
	case unlikeItsModel(r):
		return Statement{Bad, v.Word + ": the model is not as its set-up is written.",
			"A signature here says only that this report was read. It does not release the model: put it right, walk around it anew, and sign then.", ""}
	case v.Tone == Bad:
		return Statement{Bad, v.Word + ": this check failed.",
			"A signature here says only that this report was read. It does not release the model: put right what failed, check again, and sign that report.", ""}
	case r.Verdict == result.PassedInPart:
		return Statement{Heed, v.Word + ": only a part was checked.",
			"A signature here says only that this part was read. It does not release the model: check the whole script, and sign that report.", ""}
	}
	print := ""
	if digest := ShortPrint(r.SetUp); digest != "" {
		print = ", with the fingerprint " + digest
	}
	s := Statement{v.Tone, "What is signed",
		"What is ticked in this report was seen on the model named here as it stands here, by who signs; what was seen instead is written beside it. " +
			"The set-up in the transmitter is the one that this report was made from" + print + ". " +
			"Throws, loss of signal and range are covered only where they are filled in or ticked; what is under “Not covered” is not. " +
			StillToSee + " This is said of the controls on this day; it does not say that the model is fit to fly.", ""}
	if v.Tone == Heed {
		s.Condition = v.Word + ": I have read why, and accept it for the reason under “Remarks”."
	}
	return s
}

// Did is what somebody states who signs in a role; empty for an unknown one.
func Did(role string) string {
	switch role {
	case "builder":
		return "I set this model up, and compared the airframe file with the model and its transmitter."
	case "second":
		return "I did not set this model up. I went through its set-up and its report as a second pair of eyes."
	case "inspector":
		return "I looked at this model as an inspector, and went through its set-up and its report."
	}
	return ""
}

// StillToSee is what no signature under a check of the set-up speaks for.
const StillToSee = "What a check of the set-up cannot see is still to be looked at on the model, before every flight."

// Signer is who signs a report: About says who that is, Did what they state besides.
type Signer struct{ Who, About, Did string }

// Signers are those who sign, in their order. Under a report that releases nothing they
// state nothing.
func Signers(r *result.Report) []Signer {
	mass, p := "for a model of this mass", r.Paper
	if p != nil && p.MassKg > 0 {
		mass += " (" + Kilograms(p.MassKg) + ")"
	}
	signers := []Signer{
		{"Builder", "", Did("builder")},
		{"Second person", "somebody else", Did("second") + " What I ticked I saw myself, on the model."},
		{"Inspector", "where local rules or the national association ask for one " + mass, Did("inspector")},
	}
	if len(r.Checks) == 0 || VerdictOf(r).Tone == Bad {
		for i := range signers {
			signers[i].Did = ""
		}
	}
	return signers
}

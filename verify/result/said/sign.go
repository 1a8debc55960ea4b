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

// shortPrint is how much of a fingerprint a sentence names.
const shortPrint = 12

// StatementOf is the statement of a report.
func StatementOf(r *result.Report) Statement {
	v := VerdictOf(r)
	switch {
	case len(r.Checks) == 0:
		return Statement{Heed, v.Word + ": there is nothing to sign.", "", ""}
	case v.Tone == Bad:
		return Statement{Bad, v.Word + ": this check failed.",
			"A signature here says only that this report was read. It does not release the model: put right what failed, check again, and sign that report.", ""}
	}
	print := ""
	if digest := strings.TrimPrefix(r.SetUp, "sha256:"); digest != "" {
		print = ", with the fingerprint " + digest[:min(len(digest), shortPrint)]
	}
	s := Statement{v.Tone, "What is signed",
		"I have gone through the walk-around of this report with the model named here in front of me. Every row was seen as it stands here, or what was seen " +
			"instead is written beside it. The set-up in the transmitter is the one that this report was made from" + print + ". " +
			"What is under “Not covered” was not checked by this report. This is said of the controls on this day; it does not say that the model is fit to fly.", ""}
	if v.Tone == Heed {
		s.Condition = v.Word + ": I have read why, and accept it for the reason under “Remarks”."
	}
	return s
}

// Signer is who signs a report.
type Signer struct{ Who, About string }

// Signers are those who sign, in their order.
func Signers(p *result.Paper) []Signer {
	mass := "for a model of this mass"
	if p != nil && p.MassKg > 0 {
		mass += " (" + Kilograms(p.MassKg) + ")"
	}
	return []Signer{
		{"Builder", ""},
		{"Second person", "not the builder: somebody else who has seen every row"},
		{"Inspector", "an inspector where local rules or the national association ask for one " + mass},
	}
}

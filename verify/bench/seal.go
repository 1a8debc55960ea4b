package bench

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"time"

	"example.com/hingeline/verify/result"
)

// Seal is what a signature binds of a record.
type Seal struct {
	Digest     string // of its bytes: "sha256:" and 64 digits
	Summary    string // "seen on the model: 14 of 14 steps as expected, 2026-11-25"
	Model      string
	SetUp      string // digests of what the model was held against
	Asked      string
	Date       string // of the last answer, RFC 3339
	AsExpected bool   // every step was seen, and all was as expected
}

// SealOf reads a record and says what a signature binds of it. The error says why a record
// cannot be used: it is judged anew from what was said, with the airframe file that it
// holds.
func SealOf(text []byte) (*Seal, error) {
	r, err := Read(text)
	if err != nil {
		return nil, err
	}
	if r.Whole < len(text) {
		return nil, fmt.Errorf("its last line is cut off")
	}
	w, err := r.Header.Walk()
	if err != nil {
		return nil, err
	}
	g := NewGuide(w, nil, nil)
	if err := g.Replay(r.Events); err != nil {
		return nil, err
	}
	seen := g.seenSoFar()
	sum := sha256.Sum256(text)
	s := &Seal{
		Digest: "sha256:" + hex.EncodeToString(sum[:]), Model: w.Model.Name, SetUp: r.Header.SetUp, Asked: r.Header.Asked,
		Date: g.last, AsExpected: seen.Verdict == result.SeenAsExpected,
	}
	s.Summary = summary(seen)
	return s, nil
}

// summary is one line.
func summary(r *result.Bench) string {
	right, wrong := 0, 0
	for i := range r.Steps {
		switch r.Steps[i].State {
		case result.StepAsExpected:
			right++
		case result.StepDiffers:
			wrong++
		}
	}
	line := fmt.Sprintf("seen on the model: %d of %d steps as expected", right, len(r.Steps))
	if wrong > 0 {
		line += fmt.Sprintf(", %d not", wrong)
	}
	if r.Verdict == result.NotFinished || r.Verdict == result.NothingSeen {
		line += ", not finished"
	}
	if t, err := time.Parse(time.RFC3339, r.Date); err == nil {
		line += ", " + t.UTC().Format(time.DateOnly)
	}
	return line
}

package signoff

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"time"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/result"
)

// MaxBenchBytes is the most that the record of a walk-around at the bench may hold: many
// times the longest airframe file with its scripts and thousands of answers.
const MaxBenchBytes = 64 << 20

// Differs is the name by which somebody takes it on themselves that something was not as
// expected on the model, in the way of a warning of the report.
const Differs = "not-as-expected"

// NotAllSeen is the name by which somebody takes it on themselves that a step was skipped,
// or not seen, in the same way.
const NotAllSeen = "not-all-seen"

// Bench is the record of a walk-around at the bench that is signed as well.
type Bench struct {
	File string // as it is named; it must be in the directory of the airframe file, or below
	Text []byte
}

// Seen is what was seen on the model, as a record has it. The walk-around's own record
// stays where it is; a fingerprint holds it.
type Seen struct {
	File       string `json:"file"` // from the directory of the airframe file, with slashes
	SHA256     string `json:"sha256"`
	Date       string `json:"date"`
	Summary    string `json:"summary"`
	Steps      int    `json:"steps"`
	AsExpected int    `json:"as_expected"`
	Differ     int    `json:"not_as_expected"`
	Skipped    int    `json:"skipped"`
	Unseen     int    `json:"not_seen"`
	Reason     string `json:"reason"` // why it is signed although something was not as expected; else empty

	ReasonUnseen string `json:"reason_not_all_seen,omitempty"` // why it is signed although not every step was seen; else empty
}

// sealed is what a record of a walk-around comes to. The reason is not in it.
func sealed(file string, text []byte) (*Seen, *bench.Seal, error) {
	seal, err := bench.SealOf(text)
	if err != nil {
		return nil, nil, err
	}
	return seenOf(file, text, seal), seal, nil
}

func seenOf(file string, text []byte, seal *bench.Seal) *Seen {
	n := seal.Steps
	return &Seen{
		File: file, SHA256: hexDigest(text), Date: seal.Date, Summary: seal.Summary,
		Steps: n.All, AsExpected: n.AsExpected, Differ: n.Differ, Skipped: n.Skipped, Unseen: n.Unseen,
	}
}

// look is what a signature says of the model, nil where nobody says anything of it, or why
// it may not. Beside are the walk-arounds beside the airframe file in which something was
// not as expected and in place of which no later one holds, the newest first. That is what
// is signed where none is named.
func (req *Request) look(r *Record, beside []*walked, date time.Time) (*Seen, error) {
	switch {
	case req.Bench != nil:
		return req.seen(r, req.Bench, beside, date)
	case len(beside) == 0:
		return nil, nil
	}
	newest := beside[0]
	for _, a := range req.Accept {
		if a.Code == newest.inSpite() {
			return req.seen(r, newest.named(req.Airframe), beside, date)
		}
	}
	return nil, newest.differs("")
}

// seen is what the record of a walk-around says of the model, or why it may not be signed.
func (req *Request) seen(r *Record, b *Bench, beside []*walked, date time.Time) (*Seen, error) {
	const anew = "walk around the model with \"hingeline bench\", and sign with that record"
	file, err := below(req.Airframe, b.File)
	if err != nil {
		return nil, refuse("the record of bench is kept beside the airframe file; put it there", "%s %v", b.File, err)
	}
	if len(b.Text) > MaxBenchBytes {
		return nil, refuse("", "%s is far too large for a record of bench", b.File)
	}
	s, seal, err := sealed(file, b.Text)
	if err != nil {
		return nil, refuse(anew, "%s cannot be signed: %v", b.File, err)
	}
	last, _ := time.Parse(time.RFC3339, seal.Date) // SealOf has read it
	switch {
	case seal.Model != r.Model:
		return nil, refuse(anew, "%s is about another model, %s", b.File, seal.Model)
	case seal.SetUp != r.SetUp:
		return nil, refuse(anew, "%s is about another set-up than is signed: since then the airframe file has been changed", b.File)
	case !seal.Ended:
		return nil, refuse("go on with it: hingeline bench --resume", "%s is not finished: %s", b.File, seal.Summary)
	case s.AsExpected+s.Differ == 0:
		return nil, refuse(anew, "nothing was seen on the model in %s", b.File)
	case date.Before(last.Truncate(time.Second)):
		return nil, refuse("is the clock right?", "the date %s is before that of the last answer at the bench, %s", r.Date, seal.Date)
	}
	for _, w := range beside {
		if w.seen.SHA256 != s.SHA256 {
			return nil, w.differs(file)
		}
	}
	if s.Reason, err = req.reasonFor(Differs, s, s.Differ); err != nil {
		return nil, err
	}
	s.ReasonUnseen, err = req.reasonFor(NotAllSeen, s, s.Skipped+s.Unseen)
	return s, err
}

// reasonFor is why somebody signs although so many steps were not as expected, or not seen.
func (req *Request) reasonFor(code string, s *Seen, steps int) (string, error) {
	reason := ""
	for _, a := range req.Accept {
		switch {
		case a.Code != code:
		case reason != "":
			return "", refuse("accept it once", "%s is accepted twice", code)
		default:
			reason = a.Reason
		}
	}
	switch {
	case steps > 0 && reason == "":
		refusal := refuse("put it right and walk around anew, or say why it is signed all the same", "not all was as expected on the model, so nothing is signed: DO NOT FLY")
		if code == NotAllSeen {
			refusal = refuse("walk around anew, or say why it is signed all the same", "not all was seen on the model, which is no yes, so nothing is signed")
		}
		refusal.Details = []string{fmt.Sprintf("record %s: %s", s.File, s.Summary), "--accept " + code + "=\"why it is all right\""}
		return "", refusal
	case steps == 0 && reason != "":
		return "", refuse("", "there is nothing %s in %s to accept", code, s.File)
	}
	return reason, nil
}

// acceptedOfReport are the acceptances that are about the report. Where the bench is signed
// as well some are about that.
func (req *Request) acceptedOfReport(benchToo bool) (list []Acceptance) {
	for _, a := range req.Accept {
		if !benchToo || a.Code != Differs && a.Code != NotAllSeen {
			list = append(list, a)
		}
	}
	return list
}

// below is a file as it is seen from the directory of an airframe file, with slashes.
func below(airframe, file string) (string, error) {
	dir, err := filepath.Abs(filepath.Dir(airframe))
	if err != nil {
		return "", err
	}
	if file, err = filepath.Abs(file); err != nil {
		return "", err
	}
	if file, err = filepath.Rel(dir, file); err != nil || !filepath.IsLocal(file) {
		return "", errors.New("is not in the directory of the airframe file, nor below it")
	}
	return filepath.ToSlash(file), nil
}

// check finds what a record that this package writes never holds.
func (s *Seen) check(signed time.Time) error {
	last, err := time.Parse(time.RFC3339, s.Date)
	switch {
	case !filepath.IsLocal(filepath.FromSlash(s.File)):
		return errors.New("its record of the bench is not beside the airframe file")
	case !isHex(s.SHA256):
		return errors.New("a digest in it is none")
	case err != nil:
		return fmt.Errorf("what was seen on the model has the date %q, which is none", s.Date)
	case signed.Before(last.Truncate(time.Second)):
		return errors.New("it is dated before the last answer at the bench")
	case s.AsExpected+s.Differ == 0 || s.AsExpected < 0 || s.Differ < 0 || s.Skipped < 0 || s.Unseen < 0 || s.AsExpected+s.Differ+s.Skipped+s.Unseen != s.Steps:
		return errors.New("the steps that were seen on the model do not add up")
	case (s.Differ > 0) != (s.Reason != ""):
		return errors.New("it does not say why it was signed although something was not as expected, or says why and nothing was")
	case s.ReasonUnseen != "" && s.Skipped+s.Unseen == 0:
		return errors.New("it says why it was signed although not all was seen, and all was")
	}
	for _, given := range []struct{ code, reason string }{{Differs, s.Reason}, {NotAllSeen, s.ReasonUnseen}} {
		if given.reason == "" {
			continue
		}
		if _, err := cleanReason(given.reason); err != nil {
			return fmt.Errorf("it accepts %s without a reason", given.code)
		}
	}
	return nil
}

// Result is what was seen as renderers have it; nil of nothing.
func (s *Seen) Result() *result.Seen {
	if s == nil {
		return nil
	}
	return &result.Seen{
		Record: s.File, Date: s.Date, Summary: s.Summary, Steps: s.Steps,
		AsExpected: s.AsExpected, Differ: s.Differ, Skipped: s.Skipped, Unseen: s.Unseen, Reason: s.Reason, ReasonUnseen: s.ReasonUnseen,
	}
}

// lookAtBench holds a record against the walk-around that it says was made. wrong is why it
// is not genuine; gone is why what it says cannot be looked at any more.
func (j *judging) lookAtBench(r *Record) (wrong, gone string) {
	text, err := readSome(filepath.Join(filepath.Dir(j.airframe), filepath.FromSlash(r.Seen.File)), MaxBenchBytes)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", fmt.Sprintf("%s, the record of what was seen on the model, is missing", r.Seen.File)
	case err != nil:
		return "", fmt.Sprintf("%s, the record of what was seen on the model, cannot be read: %v", r.Seen.File, err)
	case hexDigest(text) != r.Seen.SHA256:
		return fmt.Sprintf("%s, the record of what was seen on the model, is not as it was when it was signed", r.Seen.File), ""
	case r.Tool != j.now.Tool || j.now.Rewrite == nil: // another version may judge otherwise
		return "", ""
	}
	again, seal, err := sealed(r.Seen.File, text)
	if err != nil {
		return fmt.Sprintf("%s, the record of what was seen on the model, cannot be used: %v", r.Seen.File, err), ""
	}
	again.Reason, again.ReasonUnseen = r.Seen.Reason, r.Seen.ReasonUnseen
	if *again != *r.Seen || seal.SetUp != r.SetUp || !seal.Ended {
		return "what it says was seen on the model is not what " + r.Seen.File + " says", ""
	}
	return "", ""
}

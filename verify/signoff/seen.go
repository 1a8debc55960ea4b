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
}

// sealed is what a record of a walk-around comes to. The reason is not in it.
func sealed(file string, text []byte) (*Seen, *bench.Seal, error) {
	seal, err := bench.SealOf(text)
	if err != nil {
		return nil, nil, err
	}
	n := seal.Steps
	return &Seen{
		File: file, SHA256: hexDigest(text), Date: seal.Date, Summary: seal.Summary,
		Steps: n.All, AsExpected: n.AsExpected, Differ: n.Differ, Skipped: n.Skipped, Unseen: n.Unseen,
	}, seal, nil
}

// seen is what a signature says of the model, or why it may not.
func (req *Request) seen(r *Record, date time.Time) (*Seen, error) {
	b := req.Bench
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
	s.Reason, err = req.reasonFor(s)
	return s, err
}

// reasonFor is why somebody signs although something was not as expected.
func (req *Request) reasonFor(s *Seen) (string, error) {
	reason := ""
	for _, a := range req.Accept {
		switch {
		case a.Code != Differs:
		case reason != "":
			return "", refuse("accept it once", "%s is accepted twice", Differs)
		default:
			reason = a.Reason
		}
	}
	switch {
	case s.Differ > 0 && reason == "":
		refusal := refuse("put it right and walk around anew, or say why it is signed all the same", "not all was as expected on the model, so nothing is signed: DO NOT FLY")
		refusal.Details = []string{s.Summary, "--accept " + Differs + "=\"why it is all right\""}
		return "", refusal
	case s.Differ == 0 && reason != "":
		return "", refuse("", "there is nothing %s in %s to accept", Differs, s.File)
	}
	return reason, nil
}

// acceptedOfReport are the acceptances that are about the report. Where the bench is signed
// as well one is about that.
func (req *Request) acceptedOfReport() (list []Acceptance) {
	for _, a := range req.Accept {
		if req.Bench == nil || a.Code != Differs {
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
	}
	if s.Reason != "" {
		if _, err := cleanReason(s.Reason); err != nil {
			return fmt.Errorf("it accepts %s without a reason", Differs)
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
		AsExpected: s.AsExpected, Differ: s.Differ, Skipped: s.Skipped, Unseen: s.Unseen, Reason: s.Reason,
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
	if again.Reason = r.Seen.Reason; *again != *r.Seen || seal.SetUp != r.SetUp || !seal.Ended {
		return "what it says was seen on the model is not what " + r.Seen.File + " says", ""
	}
	return "", ""
}

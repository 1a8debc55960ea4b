package signoff

import (
	"errors"
	"fmt"
	"path/filepath"
	"time"

	"github.com/rogpeppe/go-internal/lockedfile"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Request is what somebody wants to sign.
type Request struct {
	Airframe string // the airframe file on disk, beside which the record goes
	Report   []byte // as it was handed in
	Checked  Checked

	Name           string
	Role           Role
	Date           func() time.Time // asked again where somebody else signs first
	Place, Remarks string
	Accept         []Acceptance
	Key            *Key   // nil: without a key
	Bench          *Bench // the record of what was seen on the model; nil: only the set-up is signed, unless one beside the airframe file says that the model differs
}

// Checked is the check that is signed, run again on the files as they are now.
type Checked struct {
	Model    *airframes.Model
	Scripts  []script.File
	Report   *result.Report
	Rendered []byte // Report as check writes it
}

// Refusal is why something is not signed.
type Refusal struct {
	Message string // a line
	Details []string
	Hint    string // may be empty
}

func (r *Refusal) Error() string { return r.Message }

func refuse(hint, format string, args ...any) *Refusal {
	return &Refusal{Message: fmt.Sprintf(format, args...), Hint: hint}
}

// Signed is a record that was written.
type Signed struct {
	File   string
	Record *Record
}

// ErrMayNotLast is that a record was written, but the file system does not say that it
// will still be there if the power fails.
var ErrMayNotLast = errors.New("the record is written, but the file system does not say that it lasts")

// Sign writes a record of a passed check. The error is a [Refusal] where the check, the
// report or an earlier record does not allow it; else it is the key's or the file
// system's. Where there is one, nothing was written, [ErrMayNotLast] aside.
func Sign(req Request) (*Signed, error) { return signOn(realDisk{}, req) }

func signOn(d disk, req Request) (*Signed, error) {
	record, err := req.record()
	if err != nil {
		return nil, err
	}
	dir := Directory(req.Airframe)
	if _, err := behind(dir, record); err != nil { // before anything is made
		return nil, err
	}
	if err := d.makeDir(dir); err != nil {
		return nil, err
	}
	if err := d.settle(filepath.Dir(dir)); err != nil {
		return nil, err
	}
	unlock, err := lockedfile.MutexAt(filepath.Join(dir, ".lock")).Lock()
	if err != nil {
		return nil, err
	}
	defer unlock()
	if err := tidy(d, dir); err != nil {
		return nil, err
	}
	now := req.Date() // the lock may have taken its time, and somebody else have signed
	if err := record.dated(now); err != nil {
		return nil, err
	}
	last, err := behind(dir, record)
	if err != nil {
		return nil, err
	}
	if err := record.follows(last); err != nil {
		return nil, err
	}
	text, err := record.encode()
	if err != nil {
		return nil, err
	}
	if _, err := decode(text); err != nil {
		return nil, refuse("", "the record could not be read again: %v", err)
	}
	armoured, err := req.signature(text)
	if err != nil {
		return nil, err
	}
	if err := appendRecord(d, dir, record.Number, text, armoured); err != nil {
		return nil, err
	}
	return &Signed{filepath.Join(dir, nameOf(record.Number)), record}, nil
}

// record is the record that is asked for, without what follows from those before it.
func (req *Request) record() (*Record, error) {
	c := &req.Checked
	if r := c.Report; r.Verdict != result.Passed {
		return nil, notPassed(r)
	}
	if err := SameReport(req.Report, c.Rendered); err != nil {
		return nil, err
	}
	setUp, asked, err := digests(c.Model, c.Scripts)
	if err != nil {
		return nil, err
	}
	beside, err := benchBeside(req.Airframe, setUp)
	if err != nil {
		return nil, err
	}
	accepted, err := accept(c.Report, req.acceptedOfReport(req.Bench != nil || len(beside) > 0))
	if err != nil {
		return nil, err
	}
	r := &Record{
		Format: Format, Role: req.Role, Statement: req.Role.Statement(),
		Tool: c.Report.Tool, Model: c.Model.Name, Airframe: fileOf(c.Model.Source.Name, c.Model.Source.Text), Scripts: []File{},
		SetUp: setUp, Asked: asked,
		Verdict: string(c.Report.Verdict),
		Counts:  countsOf(c.Report),
		Report:  Report{Date: c.Report.Date, SHA256: hexDigest(c.Rendered)}, Accepted: accepted,
	}
	if err := r.dated(req.Date()); err != nil {
		return nil, err
	}
	if !r.Role.known() {
		return nil, refuse("there are: builder, second, inspector", "there is no role %q", r.Role)
	}
	for _, f := range c.Scripts {
		r.Scripts = append(r.Scripts, fileOf(f.Name, f.Text))
	}
	for _, text := range []struct {
		to         *string
		what, from string
		clean      func(what, text string) (string, error)
	}{
		{&r.Name, "", req.Name, func(_, text string) (string, error) { return CleanName(text) }},
		{&r.Place, "the place", req.Place, func(what, text string) (string, error) { return cleanText(what, text, maxPlace) }},
		{&r.Remarks, "the remarks", req.Remarks, func(what, text string) (string, error) { return cleanText(what, text, maxRemarks) }},
	} {
		if *text.to, err = text.clean(text.what, text.from); err != nil {
			return nil, refuse("", "%v", err)
		}
	}
	if req.Key != nil {
		r.Key = req.Key.Fingerprint
	}
	r.Seen, err = req.look(r, beside, req.Date())
	return r, err
}

// dated gives a record its date, which may not be before that of its check.
func (r *Record) dated(date time.Time) error {
	r.Date = formatDate(date)
	if isBefore(date.Truncate(time.Second), r.Report.Date) {
		return refuse("is the clock right?", "the date %s is before that of the check, %s", r.Date, r.Report.Date)
	}
	return nil
}

func countsOf(r *result.Report) Counts {
	return Counts{Checks: len(r.Checks), Proofs: r.Proofs(), Warnings: len(warningsOf(r))}
}

func notPassed(r *result.Report) *Refusal {
	passed, failed := r.Counts()
	switch r.Verdict {
	case result.Failed:
		if failed == 0 {
			return refuse("put the script right, check again, and sign that report", "the check FAILED for its script: DO NOT FLY; nothing is signed")
		}
		return refuse("put it right, check again, and sign that report", "%d of %d checks FAILED: DO NOT FLY; nothing is signed", failed, passed+failed)
	case result.PassedInPart:
		return refuse("check without --only", "only a part was checked: %d checks were left out; nothing is signed", r.NotSelected)
	}
	return refuse("", "nothing was checked, so nothing is signed")
}

// behind puts a record behind those that are there, of which it gives the last, nil for
// none; or says why it may not. It does not look at dates: before the lock is held,
// whoever has it may write a record that is younger than the clock was.
func behind(dir string, r *Record) (last *Record, err error) {
	all, err := readAll(dir)
	if err != nil {
		return nil, err
	}
	r.Number, r.Previous = 1, ""
	var records []*Record
	for i := range all {
		if e := &all[i]; !e.genuine() {
			return nil, refuse("look at it with \"hingeline verify\"; to begin anew, move the whole directory "+dir+" away and keep it",
				"record %d in %s is not to be trusted, so nothing is put behind it: %s", e.number, dir, e.wrong)
		}
		records = append(records, all[i].record)
	}
	if n := len(all); n > 0 {
		end := &all[n-1]
		if end.number == maxRecords {
			return nil, refuse("move the directory away and keep it", "%s is full: %d records", dir, maxRecords)
		}
		last, r.Number, r.Previous = end.record, end.number+1, digestOf(end.text)
	}
	return last, r.otherPerson(records)
}

// follows refuses a date before that of the last record, if there is one.
func (r *Record) follows(last *Record) error {
	if last != nil && r.Date < last.Date {
		return refuse("is the clock right?", "the date %s is before that of record %d, %s", r.Date, last.Number, last.Date)
	}
	return nil
}

// otherPerson refuses a second signature by one person in another role.
func (r *Record) otherPerson(before []*Record) error {
	people := peopleOf(before)
	people.meet(r.Name, r.Key)
	works := works{}
	for _, b := range before {
		if works.of(b).same(works.of(r)) && b.Role != r.Role && people.same(b.Name, r.Name) {
			why := "two signatures by one person do not count as two"
			if foldName(b.Name) != foldName(r.Name) {
				why = "it is the same person by the key; " + why
			}
			return refuse(why, "%s has signed this set-up already as %s (record %d), and cannot sign it as %s as well",
				b.Name, b.Role.Says(), b.Number, r.Role.Says())
		}
	}
	return nil
}

// signature has the key sign a record, and holds the signature against it; nil without
// a key.
func (req *Request) signature(text []byte) ([]byte, error) {
	if req.Key == nil {
		return nil, nil
	}
	armoured, err := req.Key.Sign(text)
	if err != nil {
		return nil, err
	}
	if _, err := checkSignature(armoured, text, req.Key.Fingerprint); err != nil {
		return nil, fmt.Errorf("what the key made is no signature of the record: %w", err)
	}
	return armoured, nil
}

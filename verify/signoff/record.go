package signoff

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"example.com/hingeline/verify/result"
)

// Format is the number of the shape of records that this package writes.
const Format = 1

// maxRecordBytes is the most that a record may hold: many times the longest airframe
// file with all its scripts.
const maxRecordBytes = 16 << 20

// Record is one signature: everything that was signed, and by whom.
type Record struct {
	Format    int        `json:"hingeline_record"`
	Number    int        `json:"number"`   // from 1
	Previous  string     `json:"previous"` // digest of the bytes of the record before it; empty of the first
	Name      string     `json:"name"`
	Role      Role       `json:"role"`
	Date      string     `json:"date"`    // RFC 3339, UTC, to the second
	Place     string     `json:"place"`   // may be empty
	Remarks   string     `json:"remarks"` // may be empty
	Statement string     `json:"statement"`
	Tool      string     `json:"tool"` // version of Hingeline that checked
	Model     string     `json:"model"`
	Airframe  File       `json:"airframe"`
	Scripts   []File     `json:"scripts"`
	SetUp     string     `json:"set_up"` // digest of the resolved set-up
	Asked     string     `json:"asked"`  // digest of the resolved scripts
	Verdict   string     `json:"verdict"`
	Counts    Counts     `json:"counts"`
	Report    Report     `json:"report"`
	Accepted  []Accepted `json:"accepted"`
	Seen      *Seen      `json:"seen_on_the_model,omitempty"` // nil: only the set-up is signed
	Key       string     `json:"key"`                         // fingerprint of the key that signs the record, "SHA256:…"; empty for none
}

// File is a file as it was when it was checked.
type File struct {
	File   string `json:"file"`   // its name as the report has it
	SHA256 string `json:"sha256"` // of its bytes, in hexadecimal
	Text   string `json:"text"`
}

// Counts are those of the report.
type Counts struct {
	Checks   int `json:"checks"`
	Proofs   int `json:"proofs"`
	Warnings int `json:"warnings"`
}

// Report is the report that was signed: it can be written again from the files.
type Report struct {
	Date   string `json:"date"`   // as check was given it, may be empty
	SHA256 string `json:"sha256"` // of its bytes, in hexadecimal
}

// Accepted is a warning that somebody signed in spite of.
type Accepted struct {
	Code    string `json:"code"`
	Message string `json:"message"`
	File    string `json:"file"`
	Line    int    `json:"line"`
	Reason  string `json:"reason"`
}

// sumLine begins the last line but one of a record. The sum is over all bytes before
// that line, so that it can be made again with common tools:
// head -n -2 0001.json | sha256sum.
const sumLine = `  "sum": "sha256:`

// encode is the record as it is written.
func (r *Record) encode() ([]byte, error) {
	if !r.isText() {
		return nil, errors.New("a file or a name is not UTF-8 text")
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(r); err != nil {
		return nil, err
	}
	body := append(bytes.TrimSuffix(b.Bytes(), []byte("\n}\n")), ",\n"...)
	text := fmt.Appendf(body, "%s%s\"\n}\n", sumLine, hexDigest(body))
	if len(text) > maxRecordBytes {
		return nil, fmt.Errorf("the record would hold %d bytes, and may hold %d", len(text), maxRecordBytes)
	}
	return text, nil
}

func (r *Record) isText() bool {
	parts := []string{r.Name, r.Place, r.Remarks, r.Model, r.Airframe.File, r.Airframe.Text}
	for _, f := range r.Scripts {
		parts = append(parts, f.File, f.Text)
	}
	for _, a := range r.Accepted {
		parts = append(parts, a.Message, a.File, a.Reason)
	}
	if r.Seen != nil {
		parts = append(parts, r.Seen.File, r.Seen.Reason, r.Seen.ReasonUnseen)
	}
	for _, p := range parts {
		if !utf8.ValidString(p) {
			return false
		}
	}
	return true
}

// decode reads a record, strictly. The error says in words what is wrong with it.
func decode(text []byte) (*Record, error) {
	end := bytes.LastIndex(text, []byte("\n"+sumLine)) + 1
	if end == 0 || string(text[end:]) != sumLine+hexDigest(text[:end])+"\"\n}\n" {
		if end == 0 || !bytes.HasSuffix(text, []byte("\"\n}\n")) {
			return nil, errors.New("it is cut short, or no record")
		}
		return nil, errors.New("it is not as it was written: its sum is another")
	}
	var whole struct {
		Record
		Sum string `json:"sum"`
	}
	if err := strictly(text, &whole); err != nil {
		return nil, err
	}
	r := &whole.Record
	return r, r.check()
}

// check finds what a record that this package writes never holds.
func (r *Record) check() error {
	switch {
	case r.Format != Format:
		return fmt.Errorf("it is of format %d, and this version reads format %d", r.Format, Format)
	case r.Number < 1 || r.Number > maxRecords:
		return fmt.Errorf("its number is %d", r.Number)
	case (r.Number == 1) != (r.Previous == "") || r.Previous != "" && !isDigest(r.Previous):
		return errors.New("it does not say which record is before it")
	case !r.Role.known():
		return fmt.Errorf("it has the role %q, which there is not", r.Role)
	case r.Statement != r.Role.Statement():
		return errors.New("its statement is not the one that is signed")
	case r.Verdict != string(result.Passed):
		return fmt.Errorf("its verdict is %q, and only a passed check is signed", r.Verdict)
	case !isDigest(r.SetUp) || !isDigest(r.Asked) || !isHex(r.Report.SHA256):
		return errors.New("a digest in it is none")
	case len(r.Scripts) == 0:
		return errors.New("it has no script")
	case r.Key != "" && !isFingerprint(r.Key):
		return fmt.Errorf("its key is %q, which is no fingerprint", r.Key)
	}
	date, err := parseDate(r.Date)
	if err != nil {
		return err
	}
	if isBefore(date, r.Report.Date) {
		return errors.New("it is dated before its check")
	}
	if name, err := CleanName(r.Name); err != nil || name != r.Name {
		return fmt.Errorf("its name is %q, which nobody can sign with", r.Name)
	}
	for _, f := range append([]File{r.Airframe}, r.Scripts...) {
		if f.SHA256 != hexDigest([]byte(f.Text)) {
			return fmt.Errorf("the text of %s in it is not the one that its fingerprint is of", f.File)
		}
	}
	if r.Seen != nil {
		if err := r.Seen.check(date); err != nil {
			return err
		}
	}
	for _, a := range r.Accepted {
		if _, err := cleanReason(a.Reason); err != nil {
			return fmt.Errorf("it accepts %s without a reason", a.Code)
		}
	}
	return nil
}

// parseDate reads a date as records have it.
func parseDate(text string) (time.Time, error) {
	t, err := time.Parse(time.RFC3339, text)
	if err != nil || text != formatDate(t) {
		return time.Time{}, fmt.Errorf("its date is %q, wanted one such as 2026-11-25T20:15:00Z", text)
	}
	return t, nil
}

// isBefore says whether a moment is before the date of a check. Of a date without a time
// nobody knows where on Earth it was that day already.
func isBefore(t time.Time, check string) bool {
	if at, err := time.Parse(time.RFC3339, check); err == nil {
		return t.Before(at.Truncate(time.Second))
	}
	const farthestEast = 14 * time.Hour // the earliest of all times of day, UTC+14
	day, err := time.Parse(time.DateOnly, check)
	return err == nil && t.Before(day.Add(-farthestEast))
}

func formatDate(t time.Time) string { return t.UTC().Truncate(time.Second).Format(time.RFC3339) }

// hexDigest is the SHA-256 of bytes in hexadecimal.
func hexDigest(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

func digestOf(text []byte) string { return "sha256:" + hexDigest(text) }

func isDigest(text string) bool {
	digits, ok := strings.CutPrefix(text, "sha256:")
	return ok && isHex(digits)
}

func isHex(text string) bool {
	return len(text) == 2*sha256.Size && strings.Trim(text, "0123456789abcdef") == ""
}

// fileOf is a file as a record has it.
func fileOf(name string, text []byte) File {
	return File{File: name, SHA256: hexDigest(text), Text: string(text)}
}

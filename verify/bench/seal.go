package bench

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"time"

	"example.com/hingeline/verify/faults/sight"
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
	Ended      bool   // it was gone through to its end
	AsExpected bool   // every step was seen, and all was as expected
	Steps      SealCounts

	found []found // not as expected, now or before something was changed and not looked at since
	looks map[string]map[int]looked
}

// SealCounts is how many steps there are, and what became of them.
type SealCounts struct {
	All, AsExpected, Differ, Skipped int
	Unseen                           int // of a part it could not be said what it did, or how far it went was not measured, or the step was not come to
	ByEye                            int // of Unseen: all that is wanting is how far
	Before                           int // parts that were not as expected before something was changed, and were not looked at since
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
		return nil, errors.New("its last line is cut off")
	}
	return r.Seal()
}

// Seal is what a record comes to as far as its lines are whole, as SealOf has it.
func (r *Record) Seal() (*Seal, error) {
	w, err := r.Header.Walk()
	if err != nil {
		return nil, err
	}
	g := NewGuide(w, nil, nil)
	if err := g.Replay(r.Events); err != nil {
		return nil, err
	}
	if len(r.Events) == 0 {
		return nil, errors.New("nobody has said anything in it")
	}
	date, err := r.lastDate()
	if err != nil {
		return nil, err
	}
	seen := g.seenSoFar()
	sum := sha256.Sum256(r.Text)
	s := &Seal{
		Digest: "sha256:" + hex.EncodeToString(sum[:]), Model: w.Model.Name, SetUp: r.Header.SetUp, Asked: r.Header.Asked,
		Date: g.last, Ended: g.ended, AsExpected: seen.Verdict == result.SeenAsExpected, Steps: countSteps(seen.Steps),
	}
	s.looks = g.walk.looks(g.steps)
	before := notAgain(g.repaired, s.looks)
	s.found, s.Steps.Before = append(g.walk.found(g.steps), before...), len(before)
	s.Summary = s.summary(date, w.Look)
	return s, nil
}

func countSteps(steps []result.BenchStep) SealCounts {
	n := SealCounts{All: len(steps)}
	for i := range steps {
		switch steps[i].State {
		case result.StepAsExpected:
			n.AsExpected++
		case result.StepDiffers:
			n.Differ++
		case result.StepSkipped:
			n.Skipped++
		case result.StepByEye:
			n.Unseen++
			n.ByEye++
		default:
			n.Unseen++
		}
	}
	return n
}

// lastDate is when the last thing was said. The error says where a date is before one that
// stands before it: then a clock was put back, and none of them is to be trusted.
func (r *Record) lastDate() (last time.Time, err error) {
	if last, err = time.Parse(time.RFC3339, r.Header.Date); err != nil {
		return last, err
	}
	for i := range r.Events {
		at, err := time.Parse(time.RFC3339, r.Events[i].At)
		switch {
		case err != nil:
			return last, err
		case at.Before(last):
			return last, fmt.Errorf("line %d of it is of %s, and the one before it of %s: a clock was put back, or it was edited", i+2, at.Format(time.RFC3339), last.Format(time.RFC3339))
		}
		last = at
	}
	return last, nil
}

// summary is one line. What differs comes in large letters.
func (s *Seal) summary(date time.Time, look sight.Look) string {
	n := s.Steps
	line := fmt.Sprintf("seen on the model: %d of %d steps as expected", n.AsExpected, n.All)
	if !look.Ruler {
		line += " as far as can be seen by eye"
	}
	if look.Visible > sight.Eye.Visible {
		line += fmt.Sprintf(" from %v° on", float64(look.Visible))
	}
	for _, also := range []struct {
		n    int
		what string
	}{{n.Differ, "NOT AS EXPECTED"}, {n.Skipped, "skipped"}, {n.ByEye, "by eye and not measured"}, {n.Unseen - n.ByEye, "not seen"}} {
		if also.n > 0 {
			line += fmt.Sprintf(", %d %s", also.n, also.what)
		}
	}
	if n.Before > 0 {
		line += fmt.Sprintf(", %d NOT AS EXPECTED before a change and not seen since", n.Before)
	}
	if !s.Ended {
		line += ", not finished"
	}
	return line + ", " + date.UTC().Format(time.DateOnly)
}

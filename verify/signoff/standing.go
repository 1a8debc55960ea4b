package signoff

import (
	"fmt"
	"slices"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// Now is what there is now, to hold signatures against.
type Now struct {
	Model   *airframes.Model
	Scripts []script.File
	Tool    string    // version of Hingeline
	Time    time.Time // for "2 days ago"

	Allowed *Allowed // whose keys count; nil: every key does, and no key does too
	Report  []byte   // a report that should be one that was signed; nil for none

	// Rewrite checks a record's files again and writes the report, of the date given. Where
	// it is nil, reports are not looked at, nor is which checks a change bears on.
	Rewrite func(m *airframes.Model, scripts []script.File, date string) (*result.Report, []byte, error)
}

// Standing is what has been signed about the model of an airframe file, and what of it
// stands. The error is that of a file that cannot be read.
func Standing(airframe string, now Now) (*result.Standing, error) {
	entries, err := readAll(Directory(airframe))
	if err != nil {
		return nil, err
	}
	j := &judging{airframe: airframe, now: &now, works: works{}, vouched: map[*Record]string{}, unvouched: map[*Record]string{}, unseen: map[*Record]string{},
		unproved: map[*Record]string{}, rewritten: map[string]*rewritten{}}
	if len(entries) == 0 {
		return j.standing(nil), nil
	}
	if j.present, err = workOf(now.Model, now.Scripts); err != nil {
		return nil, err
	}
	for i := range entries {
		j.lookInto(&entries[i])
	}
	return j.standing(entries), nil
}

// judging is one look at all records.
type judging struct {
	airframe  string
	now       *Now
	present   *work
	works     works
	vouched   map[*Record]string // the principal that an allowed-signers file gives
	unvouched map[*Record]string // why it gives none
	unseen    map[*Record]string // why what it says was seen on the model cannot be looked at any more
	unproved  map[*Record]string // why the check of one by another version does not hold in this one
	rewritten map[string]*rewritten
}

// work is what a record is about. Of the same texts as now it is what is there now.
func (j *judging) work(r *Record) *work {
	if r.sameTexts(j.present) {
		return j.present
	}
	return j.works.of(r)
}

// lookInto finds records that are whole but not true: whose digests, report or warnings
// are not those of their files.
func (j *judging) lookInto(e *entry) {
	if !e.genuine() {
		return
	}
	if e.record.Seen != nil {
		e.wrong, j.unseen[e.record] = j.lookAtBench(e.record)
		if !e.genuine() {
			return
		}
	}
	if e.record.Tool == j.now.Tool {
		e.wrong = j.untrue(e.record)
	} else if why := j.again(e.record).why; why != "" {
		j.unproved[e.record] = why
	}
	if j.now.Allowed != nil && e.genuine() {
		j.lookUp(e)
	}
}

// untrue says what in a record is not so, as the version that wrote it can tell.
func (j *judging) untrue(r *Record) string {
	w := j.work(r)
	switch {
	case w == nil:
		return "this version cannot read the files that it says this version checked"
	case w.setUp != r.SetUp || w.asked != r.Asked:
		return "its digests are not those of its files"
	case w.model.Name != r.Model:
		return fmt.Sprintf("its model is called %s and not %s", w.model.Name, r.Model)
	}
	again := j.again(r)
	switch {
	case again.why != "":
		return again.why
	case again.report == nil:
		return ""
	case again.sum != r.Report.SHA256:
		return "its report is not the one that check writes for its files"
	}
	return r.unlike(again.report)
}

// unlike says what a record says otherwise than the report that it signs.
func (r *Record) unlike(report *result.Report) string {
	warnings := warningsOf(report)
	if r.Counts != countsOf(report) || len(r.Accepted) != len(warnings) {
		return "its counts are not those of its report"
	}
	for i, w := range warnings {
		w.Reason = r.Accepted[i].Reason
		if w.Accepted != r.Accepted[i] {
			return "the warnings accepted in it are not those of its report"
		}
	}
	return ""
}

// lookUp finds out whether the allowed-signers file vouches for a record's key.
func (j *judging) lookUp(e *entry) {
	r, allowed := e.record, j.now.Allowed
	if e.by == nil {
		j.unvouched[r] = "it was signed without a key, so " + allowed.Name + " vouches for nobody"
		return
	}
	date, err := parseDate(r.Date)
	if err == nil {
		j.vouched[r], err = allowed.vouches(e.by.key, r.Name, date)
	}
	if err != nil {
		j.unvouched[r] = err.Error()
	}
}

// rewritten is a check run again: its report and the digest of that, or why it does not
// pass. Where nobody wants it run there is neither.
type rewritten struct {
	report   *result.Report
	sum, why string
}

// again runs the check of a record again, those of the same files once.
func (j *judging) again(r *Record) *rewritten {
	if j.now.Rewrite == nil {
		return &rewritten{}
	}
	of := fmt.Sprintf("%q %q %q %q", r.Airframe.File, r.Airframe.SHA256, r.Report.Date, r.Scripts)
	if done, ok := j.rewritten[of]; ok {
		return done
	}
	a := &rewritten{}
	if model, _ := airframes.Load(r.Airframe.File, []byte(r.Airframe.Text)); model == nil {
		a.why = errUnreadable.Error()
	} else if report, text, err := j.now.Rewrite(model, r.files(), r.Report.Date); err != nil {
		a.why = "run again, its check does not pass: " + err.Error()
	} else {
		a.report, a.sum = report, hexDigest(text)
	}
	j.rewritten[of] = a
	return a
}

func (j *judging) standing(entries []entry) *result.Standing {
	s := &result.Standing{}
	var genuine []*Record
	for i := range entries {
		e := &entries[i]
		if e.genuine() {
			genuine = append(genuine, e.record)
		} else {
			s.Troubles = append(s.Troubles, fmt.Sprintf("record %d: %s", e.number, e.wrong))
		}
	}
	people := peopleOf(genuine)
	for i := range entries {
		e := &entries[i]
		sig := result.Signature{Number: e.number, Note: e.wrong}
		if r := e.record; r != nil {
			sig.Name, sig.Role, sig.Date, sig.Key, sig.Place, sig.Remarks = r.Name, string(r.Role), r.Date, r.Key, r.Place, r.Remarks
			sig.Seen = r.Seen.Result()
			if r.Tool != j.now.Tool {
				sig.Tool = r.Tool
			}
			for _, a := range r.Accepted {
				sig.Accepted = append(sig.Accepted, fmt.Sprintf("%s [%s]: %s", a.Message, a.Code, a.Reason))
			}
		}
		if e.genuine() {
			j.judge(&sig, e.record, genuine, people)
			if sig.Current && !sig.Genuine {
				s.Troubles = append(s.Troubles, fmt.Sprintf("record %d: %s", e.number, sig.Note))
			}
		}
		s.Signatures = append(s.Signatures, sig)
	}
	last := j.decisive(genuine)
	if last != nil && !j.work(last).same(j.present) {
		s.Changes = j.changes(last)
	}
	j.lookAtReport(s, genuine)
	together := j.together(last, genuine)
	s.Seen = seen(s, together)
	since, trouble := j.lookSince(genuine)
	if since != "" && s.Seen == result.OnlySetUp { // it was looked at, and differs
		s.Seen = ""
	}
	if s.Since = since; trouble != "" {
		s.Troubles = append(s.Troubles, trouble)
	}
	s.Summary = summary(s, together, j.seenBefore(together, genuine), j.now.Time)
	for i := range s.Signatures {
		if sig := &s.Signatures[i]; since != "" && sig.Stands() {
			sig.Counts, sig.Note = false, since
		}
	}
	return s
}

// decisive is the newest record of what is there now, or where there is none the newest
// of all: a set-up that was changed and changed back is what was signed.
func (j *judging) decisive(genuine []*Record) *Record {
	var last *Record
	for _, r := range slices.Backward(genuine) {
		if j.work(r).same(j.present) {
			return r
		}
		if last == nil {
			last = r
		}
	}
	return last
}

// together are the numbers of the records about the same work as the last.
func (j *judging) together(last *Record, genuine []*Record) map[int]bool {
	numbers := map[int]bool{}
	for _, r := range genuine {
		if r == last || j.work(r).same(j.work(last)) {
			numbers[r.Number] = true
		}
	}
	return numbers
}

// seenBefore says whether one of some records tells what was seen on the model when its
// set-up was another. Where only the script has changed since, the model is still the one
// that was looked at.
func (j *judging) seenBefore(numbers map[int]bool, genuine []*Record) bool {
	return slices.ContainsFunc(genuine, func(r *Record) bool {
		w := j.work(r)
		return numbers[r.Number] && r.Seen != nil && w != nil && w.setUp != j.present.setUp
	})
}

// judge says of a record that is whole whether it stands.
func (j *judging) judge(sig *result.Signature, r *Record, genuine []*Record, people people) {
	w := j.work(r)
	sig.Genuine, sig.Current, sig.Counts = true, w.same(j.present), true
	sig.Vouched = j.vouched[r]
	switch why := j.unvouched[r]; {
	case why != "":
		sig.Genuine, sig.Counts, sig.Note = false, false, why
		return
	case j.unproved[r] != "":
		sig.Counts, sig.Note = false, fmt.Sprintf("it was checked by Hingeline %s; with %s: %s", r.Tool, j.now.Tool, j.unproved[r])
	case j.unseen[r] != "":
		sig.Counts, sig.Note = false, j.unseen[r]
	case w == nil:
		sig.Note = errUnreadable.Error()
	case !sig.Current:
		sig.Note = "the set-up or the script has changed since"
	}
	for _, b := range genuine {
		if b.Number >= r.Number {
			break
		}
		if !j.work(b).same(w) || !people.same(b.Name, r.Name) || j.unvouched[b] != "" {
			continue
		}
		sig.Counts = false
		if sig.Note == "" {
			sig.Note = fmt.Sprintf("it is by the same person as signature %d, so it does not count as another", b.Number)
		}
		break
	}
}

// lookAtReport finds the record of a report that was handed in.
func (j *judging) lookAtReport(s *result.Standing, genuine []*Record) {
	if j.now.Report == nil {
		return
	}
	sum := hexDigest(j.now.Report)
	signed := slices.ContainsFunc(genuine, func(r *Record) bool { return r.Report.SHA256 == sum })
	if !signed && len(s.Signatures) > 0 {
		s.Troubles = append(s.Troubles, "the report is not one that was signed: it, or the records, have been changed")
	}
}

// changes is what is different now from what a record signed. There is at least one.
func (j *judging) changes(r *Record) []result.Change {
	old := j.work(r)
	if old == nil {
		return []result.Change{{Text: errUnreadable.Error()}}
	}
	all := changesBetween(old, j.present, j.now.Rewrite != nil)
	if len(all) == 0 {
		panic("signoff: digests differ and nothing else does")
	}
	return all
}

package signoff

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/hingeline/verify/result"
)

// refused wants a refusal that says so, and that nothing was written.
func refused(t *testing.T, req Request, want string) {
	t.Helper()
	before, _ := os.ReadDir(Directory(req.Airframe))
	_, err := Sign(req)
	var refusal *Refusal
	if !errors.As(err, &refusal) {
		t.Errorf("got %v, want a refusal with %q", err, want)
		return
	}
	contains(t, strings.Join(append([]string{refusal.Message, refusal.Hint}, refusal.Details...), "\n"), want)
	if after, _ := os.ReadDir(Directory(req.Airframe)); len(after) != len(before) {
		t.Errorf("%q: refused, and yet something was written", want)
	}
}

func TestSignWritesWhatWasChecked(t *testing.T) {
	airframe := newAirframe(t)
	req := request(t, airframe)
	req.Name, req.Place, req.Remarks = "  Ada   Crane ", "Long  Mead", "first of two"
	s := mustSign(t, req)
	r := s.Record
	if s.File != filepath.Join(filepath.Dir(airframe), "wren.signed", "0001.json") {
		t.Errorf("written to %s", s.File)
	}
	if r.Name != "Ada Crane" || r.Place != "Long Mead" || r.Remarks != "first of two" || r.Date != "2026-11-25T20:15:00Z" {
		t.Errorf("%+v", r)
	}
	if r.Airframe.Text != wren || len(r.Scripts) != 1 || r.Scripts[0].Text != wrenScript || r.Report.SHA256 != hexDigest(req.Report) {
		t.Error("the record does not hold what was checked")
	}
	if r.Counts.Checks != 4 || r.Verdict != "passed" || r.Model != "Wren" {
		t.Errorf("%+v", r)
	}
	second := mustSign(t, request(t, airframe).by("Ben Poole", Second, nil)).Record
	if second.Number != 2 || second.Previous != digestOf(read(t, s.File)) {
		t.Errorf("the second does not follow the first: %+v", second)
	}
}

func TestSignRefusesWhatDidNotPass(t *testing.T) {
	airframe := newAirframe(t)
	failing := check(t, strings.Replace(wren, "{name: rudder, mix: yaw}", "{name: rudder, mix: yaw, reversed: true}", 1), wrenScript)
	req := request(t, airframe)
	req.Report, req.Checked = failing.Rendered, failing
	refused(t, req, "2 of 4 checks FAILED: DO NOT FLY")
	part := request(t, airframe)
	part.Checked.Report.Verdict, part.Checked.Report.NotSelected = result.PassedInPart, 3
	refused(t, part, "3 checks were left out")
	none := request(t, airframe)
	none.Checked.Report.Verdict = result.NothingChecked
	refused(t, none, "nothing was checked")
}

func TestSignRefusesFlippedBytesOfAReport(t *testing.T) {
	req := request(t, newAirframe(t))
	ours := req.Checked.Rendered
	const stride = 11 // of the bytes that are flipped: each costs reading the whole report
	for i := 0; i < len(ours); i += stride {
		bad := bytes.Clone(ours)
		bad[i] ^= 1
		if SameReport(bad, ours) == nil {
			t.Fatalf("byte %d of %d was flipped and accepted", i, len(ours))
		}
	}
	req.Report = bytes.Replace(ours, []byte(`"passed": true`), []byte(`"passed": false`), 1)
	refused(t, req, "at checks[0].passed it says false, and it is true")
}

func TestSameReportSaysWhatDiffers(t *testing.T) {
	ours := []byte(`{"model": {"name": "Wren"}, "checks": [{"got": "UP 10°"}, {"got": "DOWN"}], "paper": null}`)
	for _, c := range []struct{ from, to, want string }{
		{`UP 10°`, `UP 12°`, `at checks[0].got it says "UP 12°", and it is "UP 10°"`},
		{`, {"got": "DOWN"}`, ``, `at checks[1] it says nothing, and it is settings`},
		{`null`, `[1]`, `at paper it says a list of 1, and it is null`},
		{`"name": "Wren"`, `"name": "Wren", "safe": true`, `at model.safe it says true, and it is nothing`},
		{`"Wren"`, `"` + strings.Repeat("W", 70) + `"`, strings.Repeat("W", 60) + `…"`},
		{`: null`, `:null`, `not byte for byte`},
		{`"paper": null`, `"paper": null, "paper": null`, `the key "paper" is there twice`},
		{`null}`, `null`, `no JSON`},
		{`null}`, `null} {}`, `something stands behind it`},
	} {
		bad := bytes.Replace(ours, []byte(c.from), []byte(c.to), 1)
		err := SameReport(bad, ours)
		if err == nil {
			t.Errorf("%s: accepted", c.to)
			continue
		}
		contains(t, err.Error(), c.want)
	}
}

// warned is a request about a check with three warnings.
func warned(t *testing.T, airframe string) Request {
	req := request(t, airframe)
	r := req.Checked.Report
	line := func(line int) result.Place { return result.Place{File: "wren.yaml", Line: line} }
	r.Findings = []result.Finding{
		{Code: "low-rates", Message: "rates are low", Place: line(3)},
		{Code: "idle", Message: "one idles", Place: line(5)},
		{Code: "idle", Message: "another idles", Place: line(9)},
	}
	r.Script = []result.ScriptFinding{{Code: "odd", Message: "is meant so", OnPurpose: true, Place: line(2)}}
	req.Checked.Rendered = render(t, req.Checked)
	req.Report = req.Checked.Rendered
	return req
}

func TestSignWantsEveryWarningAcceptedByName(t *testing.T) {
	const why = "it is a trainer and flies slowly"
	all := []Acceptance{{"low-rates", why}, {"idle:5", why}, {"idle:9", why}}
	for _, c := range []struct {
		accept []Acceptance
		want   string
	}{
		{nil, "3 warnings are not decided"},
		{nil, `rates are low (wren.yaml:3): --accept low-rates="why`},
		{nil, `another idles (wren.yaml:9): --accept idle:9="why`},
		{all[:2], "a warning is not decided"},
		{[]Acceptance{all[0], {"idle", why}}, "2 warnings are not decided"},
		{append(all[:3:3], Acceptance{"odd", why}), "there is no warning odd to accept"},
		{append(all[:3:3], Acceptance{"idle", why}), "there is no warning idle to accept"},
		{append(all[:3:3], all[0]), "low-rates is accepted twice"},
	} {
		req := warned(t, newAirframe(t))
		req.Accept = c.accept
		refused(t, req, c.want)
	}
	req := warned(t, newAirframe(t))
	req.Accept = all
	r := mustSign(t, req).Record
	if len(r.Accepted) != 3 || r.Accepted[1] != (Accepted{"idle", "one idles", "wren.yaml", 5, why}) || r.Counts.Warnings != 3 {
		t.Errorf("%+v", r.Accepted)
	}
}

func TestParseAcceptanceWantsAReason(t *testing.T) {
	for text, want := range map[string]Acceptance{
		`low-rates=it is a trainer`:         {"low-rates", "it is a trainer"},
		`low-rates="it is  a trainer"`:      {"low-rates", "it is a trainer"},
		` idle:5 = a = b, as on the sheet `: {"idle:5", "a = b, as on the sheet"},
	} {
		if got, err := ParseAcceptance(text); err != nil || got != want {
			t.Errorf("%s: %+v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "low-rates", "low-rates=", "low-rates=ok", `low-rates="    short    "`, "=it is a trainer", "low-rates=it is\x1b a trainer"} {
		if a, err := ParseAcceptance(text); err == nil {
			t.Errorf("%q: accepted as %+v", text, a)
		}
	}
}

func TestOnePersonDoesNotSignInTwoRoles(t *testing.T) {
	key, other := quickKey(t), quickKey(t)
	for _, name := range []string{"Ada Crane", "ADA  CRANE", "ada-crane", "Ada Crane.", "Ａda Crane"} {
		airframe := newAirframe(t)
		mustSign(t, request(t, airframe))
		refused(t, request(t, airframe).by(name, Second, nil), "Ada Crane has signed this set-up already as builder (record 1)")
		refused(t, request(t, airframe).by(name, Inspector, other), "cannot sign it as inspector")
		mustSign(t, request(t, airframe).by(name, Builder, nil)) // anew, as the same
	}
	airframe := newAirframe(t)
	mustSign(t, request(t, airframe).by("Ada Crane", Builder, key))
	refused(t, request(t, airframe).by("Ben Poole", Second, key), "it is the same person by the key")
	mustSign(t, request(t, airframe).by("Ben Poole", Second, other))
	// Who has the key of one and the name of another is both.
	refused(t, request(t, airframe).by("Ada Crane", Inspector, other), "cannot sign it as inspector")
	mustSign(t, request(t, airframe).by("Cy Lund", Inspector, nil))
}

// After a change everybody begins anew.
func TestOnePersonMaySignAnotherSetUpInAnotherRole(t *testing.T) {
	airframe := newAirframe(t)
	mustSign(t, request(t, airframe))
	req := request(t, airframe).by("Ada Crane", Second, nil)
	req.Checked = check(t, strings.Replace(wren, "throw: 80%", "throw: 81%", 1), wrenScript)
	req.Report = req.Checked.Rendered
	mustSign(t, req)
}

func TestSignRefusesNamesThatAreNone(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"", "no letter"},
		{" .- ", "no letter"},
		{"Ada\x00Crane", "cannot be seen"},
		{"Ada\u200bCrane", "cannot be seen"},
		{"Ada\u202eCrane", "cannot be seen"},
		{"Ada\nCrane", "cannot be seen"},
		{"\xff", "not UTF-8"},
		{"Аda Crane", "mixes"},
		{strings.Repeat("a", 81), "81 characters"},
	} {
		if got, err := CleanName(c.name); err == nil {
			t.Errorf("%q: accepted as %q", c.name, got)
			continue
		}
		refused(t, request(t, newAirframe(t)).by(c.name, Builder, nil), c.want)
	}
	for name, want := range map[string]string{
		"Ame\u0301lie O’Dell-Ruiz": "Amélie O’Dell-Ruiz", "王 小明": "王 小明", "Анна Журавль": "Анна Журавль", strings.Repeat("a", 80): strings.Repeat("a", 80),
	} {
		if got, err := CleanName(name); err != nil || got != want {
			t.Errorf("%q: got %q, %v", name, got, err)
		}
	}
}

func TestSignRefusesWhatComesBefore(t *testing.T) {
	airframe := newAirframe(t)
	file := mustSign(t, request(t, airframe)).File
	early := request(t, airframe).by("Ben Poole", Second, nil)
	early.Date = at(evening.Add(-time.Minute))
	refused(t, early, "is before that of record 1")
	unknown := request(t, airframe).by("Ben Poole", "pilot", nil)
	refused(t, unknown, `no role "pilot"`)
	write(t, file, bytes.Replace(read(t, file), []byte("Ada"), []byte("Eve"), 1))
	refused(t, request(t, airframe).by("Ben Poole", Second, nil), "record 1 in "+Directory(airframe)+" is not to be trusted")
}

// arriving is a quick disk that tells when somebody has come as far as the lock.
type arriving struct {
	quick
	there chan<- bool
}

func (a arriving) makeDir(name string) error {
	close(a.there)
	return a.quick.makeDir(name)
}

// Somebody who waits for the lock signs when they have it: a key may ask for a passphrase.
func TestSignAsksTheClockWhenItIsItsTurn(t *testing.T) {
	airframe := newAirframe(t)
	waiting := make(chan error, 1)
	slow := quickKey(t)
	sign, now := slow.Sign, evening
	var clock sync.Mutex
	tick := func() time.Time {
		clock.Lock()
		defer clock.Unlock()
		return now
	}
	slow.Sign = func(message []byte) ([]byte, error) {
		began := make(chan bool)
		go func() {
			req := request(t, airframe).by("Ben Poole", Second, nil)
			req.Date = tick
			_, err := signOn(arriving{there: began}, req)
			waiting <- err
		}()
		<-began
		clock.Lock()
		now = now.Add(time.Minute)
		clock.Unlock()
		return sign(message)
	}
	first := request(t, airframe).by("Ada Crane", Builder, slow)
	first.Date = func() time.Time { return tick().Add(30 * time.Second) }
	mustSign(t, first)
	if err := <-waiting; err != nil {
		t.Fatal(err)
	}
	if all := entries(t, airframe); len(all) != 2 || !all[0].genuine() || !all[1].genuine() || all[1].record.Name != "Ben Poole" {
		t.Errorf("%+v", all)
	}
}

// Somebody else may sign between the first look at the clock and the lock: their record
// is younger than that look, and none of a wrong clock.
func TestSignJudgesNoDateBeforeItIsItsTurn(t *testing.T) {
	airframe := newAirframe(t)
	first := request(t, airframe)
	first.Date = at(evening.Add(time.Minute))
	mustSign(t, first)
	ben := func(dates ...time.Duration) Request {
		req := request(t, airframe).by("Ben Poole", Second, nil)
		req.Date = func() time.Time {
			date := evening.Add(dates[0])
			dates = dates[min(1, len(dates)-1):]
			return date
		}
		return req
	}
	if r := mustSign(t, ben(0, 2*time.Minute)).Record; r.Number != 2 || r.Date != "2026-11-25T20:17:00Z" {
		t.Errorf("record %d of %s, want 2 of 20:17", r.Number, r.Date)
	}
	// The clock goes back while Ben waits.
	refused(t, ben(3*time.Minute, time.Minute), "the date 2026-11-25T20:16:00Z is before that of record 2, 2026-11-25T20:17:00Z")
	set := ben(3*time.Minute, -48*time.Hour)
	set.Checked.Report.Date = "2026-11-25T20:14:00Z"
	set.Checked.Rendered = render(t, set.Checked)
	set.Report = set.Checked.Rendered
	refused(t, set, "the date 2026-11-23T20:15:00Z is before that of the check, 2026-11-25T20:14:00Z")
	if got := wrongs(t, airframe); len(got) != 2 {
		t.Errorf("%q", got)
	}
}

func TestSignRefusesADateBeforeTheCheck(t *testing.T) {
	for date, before := range map[string]bool{
		"": false, "2026-11-25": false, "2026-11-26": false, "2026-11-27": true,
		"2026-11-25T20:15:00Z": false, "2026-11-25T21:15:00+01:00": false, "2026-11-25T20:15:01Z": true, "2027-01-01T00:00:00Z": true,
	} {
		req := request(t, newAirframe(t))
		req.Checked.Report.Date = date
		req.Checked.Rendered = render(t, req.Checked)
		req.Report = req.Checked.Rendered
		if before {
			refused(t, req, "is before that of the check, "+date)
			continue
		}
		if r := mustSign(t, req).Record; r.Report.Date != date {
			t.Errorf("%s: the record says %s", date, r.Report.Date)
		}
	}
}

func TestSignWritesNothingWhereTheKeyDoesNotSign(t *testing.T) {
	airframe := newAirframe(t)
	mustSign(t, request(t, airframe))
	broken := errors.New("the passphrase is wrong")
	key := &Key{Fingerprint: "SHA256:" + strings.Repeat("A", 43), Sign: func([]byte) ([]byte, error) { return nil, broken }}
	if _, err := Sign(request(t, airframe).by("Ben Poole", Second, key)); !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
	if got := wrongs(t, airframe); len(got) != 1 || got[0] != "" {
		t.Errorf("%q", got)
	}
}

func TestDirectoryIsBesideTheAirframe(t *testing.T) {
	for name, want := range map[string]string{
		"a/wren.yaml": "a/wren.signed", "wren.yml": "wren.signed", "wren": "wren.signed", "a.b/wren.txt": "a.b/wren.txt.signed", ".yaml": ".yaml.signed",
	} {
		if got := Directory(name); got != want {
			t.Errorf("%s: got %s, want %s", name, got, want)
		}
	}
}

package signoff

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// page is a record of the bench in memory.
type page struct{ bytes.Buffer }

func (p *page) Append(line []byte) error {
	p.Write(line)
	return nil
}

// afternoon is when the model was walked around, before it is signed in the evening.
const afternoon = "2026-11-25T16:00:00Z"

// benchOf is the record of a walk-around of three steps: the turn stick right, then left,
// then the pitch stick back, with the lines that were said after the questions.
func benchOf(t testing.TB, airframe string, lines ...string) []byte {
	return benchAt(t, afternoon, airframe, lines...)
}

// benchAt is benchOf at another time.
func benchAt(t testing.TB, when, airframe string, lines ...string) []byte {
	t.Helper()
	return benchBy(t, when, airframe, sight.Eye, []int{1, 2, 3}, lines)
}

// benchBy is benchAt with other eyes and other steps, by number.
func benchBy(t testing.TB, when, airframe string, look sight.Look, steps []int, lines []string) []byte {
	t.Helper()
	m, problems := airframes.Load("wren.yaml", []byte(airframe))
	if m == nil {
		t.Fatalf("%v", problems)
	}
	moves := []struct {
		control int
		to      float64
	}{{0, -100}, {0, 100}, {1, 100}}
	c := bench.Chosen{How: "by hand", Watch: make([][]int, len(steps))}
	for _, n := range steps {
		move := moves[n-1]
		s := sight.Step{From: m.Plan.Rest(), To: m.Plan.Rest()}
		s.To.Position[move.control] = move.to
		c.Steps = append(c.Steps, s)
	}
	w := bench.NewWalk(m, c, look)
	p, now := &page{}, func() string { return when }
	if err := bench.NewHeader(verify.Version, when, w, nil, c.How).Begin(p); err != nil {
		t.Fatal(err)
	}
	g := bench.NewGuide(w, p, now)
	for _, line := range append([]string{"yes", "yes", "yes"}, lines...) {
		if line == resumes {
			if err := g.Resume(); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if r, err := g.Take(line); err != nil || !r.Understood {
			t.Fatalf("%q: %+v, %v", line, r, err)
		}
	}
	if err := g.Stop(); err != nil {
		t.Fatal(err)
	}
	return p.Bytes()
}

// withBench is a request that signs a record of the bench as well, which is put beside the
// airframe file.
func withBench(t testing.TB, text []byte) (Request, string) {
	t.Helper()
	airframe := newAirframe(t)
	name := filepath.Join(filepath.Dir(airframe), "wren.bench", "0001.jsonl")
	if err := errors.Join(os.Mkdir(filepath.Dir(name), 0o755), os.WriteFile(name, text, 0o644)); err != nil {
		t.Fatal(err)
	}
	req := request(t, airframe)
	req.Bench = &Bench{File: name, Text: text}
	return req, name
}

func TestSignedAsSeenOnTheModel(t *testing.T) {
	for _, c := range []struct {
		lines  []string
		accept []Acceptance
		want   Seen
	}{
		{[]string{"y", "y", "y", "y"}, nil, Seen{Steps: 3, AsExpected: 3, Summary: "seen on the model: 3 of 3 steps as expected as far as can be seen by eye, 2026-11-25"}},
		{[]string{"y", "s no time left", "y", "y"}, []Acceptance{{NotAllSeen, "it was seen this morning"}}, Seen{Steps: 3, AsExpected: 2, Skipped: 1, ReasonUnseen: "it was seen this morning", Summary: "seen on the model: 2 of 3 steps as expected as far as can be seen by eye, 1 skipped, 2026-11-25"}},
		{[]string{"y", "rudder u", "y", "y", "y"}, []Acceptance{{NotAllSeen, "it was seen this morning"}}, Seen{Steps: 3, AsExpected: 2, Unseen: 1, ReasonUnseen: "it was seen this morning", Summary: "seen on the model: 2 of 3 steps as expected as far as can be seen by eye, 1 not seen, 2026-11-25"}},
		{[]string{"rudder o", "y", "y", "y", "y"}, []Acceptance{{Differs, "its arm is turned round tomorrow"}}, Seen{Steps: 3, AsExpected: 2, Differ: 1,
			Reason: "its arm is turned round tomorrow", Summary: "seen on the model: 2 of 3 steps as expected as far as can be seen by eye, 1 NOT AS EXPECTED, 2026-11-25"}},
	} {
		text := benchOf(t, wren, c.lines...)
		req, _ := withBench(t, text)
		req.Accept = c.accept
		signed := mustSign(t, req)
		c.want.File, c.want.Date, c.want.SHA256 = "wren.bench/0001.jsonl", afternoon, hexDigest(text)
		if *signed.Record.Seen != c.want {
			t.Errorf("%q: got %+v, wanted %+v", c.lines, *signed.Record.Seen, c.want)
		}
		for _, shallow := range []bool{false, true} {
			s := standing(t, req.Airframe, wren, wrenScript, func(n *Now) {
				if shallow {
					n.Rewrite = nil
				}
			})
			if !s.Stands() || stands(s) != "GC1" || s.Seen != c.want.Summary || !strings.HasSuffix(s.Summary, "; "+c.want.Summary) || s.Signatures[0].Seen.Reason != c.want.Reason {
				t.Errorf("%q: %s %+v", c.lines, stands(s), s)
			}
		}
	}
}

// A record without the bench is written as it always was, says so, and stays valid; the
// newest walk-around that somebody signed is the one that is told.
func TestSignedWithoutTheBench(t *testing.T) {
	req, _ := withBench(t, benchOf(t, wren, "y", "y", "y", "y"))
	seen := req.Bench
	req.Bench = nil
	first := mustSign(t, req)
	if text, err := os.ReadFile(first.File); err != nil || bytes.Contains(text, []byte("seen_on")) {
		t.Errorf("%v: %s", err, text)
	}
	if s := standing(t, req.Airframe, wren, wrenScript); !s.Stands() || s.Seen != result.OnlySetUp || !strings.HasSuffix(s.Summary, result.OnlySetUp) {
		t.Errorf("%+v", s)
	}
	second := req.by("Ben Poole", Second, nil)
	second.Bench = seen
	mustSign(t, second)
	if s := standing(t, req.Airframe, wren, wrenScript); stands(s) != "GC1 GC1" || s.Seen != s.Signatures[1].Seen.Summary || s.Signatures[0].Seen != nil {
		t.Errorf("%+v", s)
	}
	changed := strings.Replace(wren, "throw: 80%", "throw: 85%", 1)
	if s := standing(t, req.Airframe, changed, wrenScript); s.Seen != "" || strings.Contains(s.Summary, "seen on the model:") {
		t.Errorf("out of date: %+v", s)
	}
}

// A walk-around is of the set-up that it was walked with: a change of the set-up makes it void,
// one of the script alone does not.
func TestWhatWasSeenIsOfTheSetUpBefore(t *testing.T) {
	req, _ := withBench(t, benchOf(t, wren, "y", "y", "y", "y"))
	mustSign(t, req)
	changed := strings.Replace(wren, "throw: 80%", "throw: 85%", 1)
	lessAsked := wrenScript[:strings.LastIndex(wrenScript, "    * ")]
	for _, c := range []struct {
		name, airframe, script string
		void                   bool
	}{{"nothing changed", wren, wrenScript, false}, {"another set-up", changed, wrenScript, true},
		{"another script", wren, lessAsked, false}, {"both", changed, lessAsked, true}} {
		s := standing(t, req.Airframe, c.airframe, c.script)
		if got := strings.HasSuffix(s.Summary, "; "+seenBefore); got != c.void || s.Stands() != (c.name == "nothing changed") {
			t.Errorf("%s: void %v, want %v: %s", c.name, got, c.void, s.Summary)
		}
	}
	alone, _ := withBench(t, benchOf(t, wren, "y", "y", "y", "y"))
	alone.Bench = nil
	mustSign(t, alone)
	if s := standing(t, alone.Airframe, changed, wrenScript); strings.Contains(s.Summary, seenBefore) {
		t.Errorf("only the set-up was signed, and it says what was seen: %s", s.Summary)
	}
}

// What may not be signed as seen.
func TestBenchIsRefused(t *testing.T) {
	whole := []string{"y", "y", "y", "y"}
	right := benchOf(t, wren, whole...)
	// Another airframe file and its digest are put into a record that is otherwise right.
	otherSetUp := benchOf(t, strings.Replace(wren, "throw: 80%", "throw: 85%", 1), whole...)
	long := bytes.Replace(right, []byte(`"event":"end"`), []byte(`"event":"mend"`), 1)
	early := bytes.Replace(right, []byte(`"at":"`+afternoon+`"}`+"\n"), []byte(`"at":"then"}`+"\n"), -1)
	for _, c := range []struct {
		name   string
		text   []byte
		accept []Acceptance
		change func(*Request)
		want   string
	}{
		{name: "another model", text: benchOf(t, strings.Replace(wren, "name: Wren", "name: Dunnock", 1), whole...), want: "is about another model, Dunnock"},
		{name: "another set-up", text: otherSetUp, want: "is about another set-up"},
		{name: "unfinished", text: benchOf(t, wren, "y", "y"), want: "is not finished: seen on the model: 2 of 3 steps as expected as far as can be seen by eye, 1 not seen, not finished"},
		{name: "nothing seen", text: benchOf(t, wren, "s far too windy", "s far too windy", "s far too windy", "y"), want: "nothing was seen"},
		{name: "a failure", text: benchOf(t, wren, "rudder o", "y", "y", "y", "y"), want: "not all was as expected on the model, so nothing is signed: DO NOT FLY"},
		{name: "a failure, two reasons", text: benchOf(t, wren, "rudder o", "y", "y", "y", "y"),
			accept: []Acceptance{{Differs, "its arm is turned round"}, {Differs, "and turned once more"}}, want: "accepted twice"},
		{name: "a step skipped", text: benchOf(t, wren, "y", "s no time left", "y", "y"), want: "not all was seen on the model, which is no yes, so nothing is signed"},
		{name: "a step not seen", text: benchOf(t, wren, "y", "rudder u", "y", "y", "y"), want: "not all was seen on the model"},
		{name: "a failure and a step skipped", text: benchOf(t, wren, "rudder o", "y", "s no time left", "y", "y", "y"), accept: []Acceptance{{Differs, "its arm is turned round"}}, want: "not all was seen on the model"},
		{name: "a reason for all seen", text: right, accept: []Acceptance{{NotAllSeen, "it was too windy"}}, want: "there is nothing not-all-seen"},
		{name: "a reason for nothing", text: right, accept: []Acceptance{{Differs, "its arm is turned round"}}, want: "there is nothing not-as-expected"},
		{name: "cut off", text: right[:len(right)-1], want: "its last line is cut off"},
		{name: "not a record", text: []byte("{}\n"), want: "cannot be used, and it may say DO NOT FLY"},
		{name: "an event there is not", text: long, want: "there is no event"},
		{name: "no dates", text: early, want: `has the date "then"`},
		{name: "another airframe file in it", text: bytes.Replace(right, []byte("throw: 80%"), []byte("throw: 81%"), 1), want: "not the one that its digest is of"},
		{name: "elsewhere", text: right, change: func(r *Request) { r.Bench.File = filepath.Join(t.TempDir(), "0001.jsonl") }, want: "is not in the directory of the airframe file"},
		{name: "signed before it was seen", text: right, change: func(r *Request) { r.Date = at(evening.Add(-12 * time.Hour)) }, want: "is before that of the last answer at the bench"},
	} {
		req, _ := withBench(t, c.text)
		req.Accept = c.accept
		if c.change != nil {
			c.change(&req)
		}
		_, err := signOn(quick{}, req)
		var refusal *Refusal
		if !errors.As(err, &refusal) || !strings.Contains(refusal.Message, c.want) {
			t.Errorf("%s: got %v, wanted %q", c.name, err, c.want)
		}
		if _, err := os.Stat(Directory(req.Airframe)); err == nil {
			t.Errorf("%s: something was written", c.name)
		}
	}
	// A reason for the bench is none where the bench is not signed.
	req := request(t, newAirframe(t))
	req.Accept = []Acceptance{{Differs, "its arm is turned round"}}
	if _, err := signOn(quick{}, req); err == nil {
		t.Error("a reason for a bench that is not signed is taken")
	}
}

// Each byte of the bench's record, and the record itself, are held by the signature.
func TestChangedBenchIsFound(t *testing.T) {
	text := benchOf(t, wren, "y", "y", "y", "y")
	req, name := withBench(t, text)
	mustSign(t, req)
	change := func(what string, to []byte, genuine bool) {
		t.Helper()
		if err := os.WriteFile(name, to, 0o644); err != nil {
			t.Fatal(err)
		}
		s := standing(t, req.Airframe, wren, wrenScript, func(n *Now) { n.Rewrite = nil })
		if s.Stands() != genuine || genuine != (len(s.Troubles) == 0) || !genuine && !strings.Contains(s.Summary, "wren.bench/0001.jsonl, the record of what was seen on the model, is not as it was") {
			t.Errorf("%s: %s %+v", what, stands(s), s)
		}
	}
	change("nothing", text, true)
	for i := range text {
		if i%17 == 0 || i >= len(text)-3 {
			other := bytes.Clone(text)
			other[i] ^= 1
			change("a byte", other, false)
		}
	}
	change("cut off", text[:len(text)-1], false)
	change("longer", append(bytes.Clone(text), '\n'), false)
	change("another walk-around", benchOf(t, wren, "y", "rudder o", "y", "y", "y"), false)

	if err := os.Remove(name); err != nil {
		t.Fatal(err)
	}
	s := standing(t, req.Airframe, wren, wrenScript)
	if s.Stands() || stands(s) != "GC-" || !strings.Contains(s.Signatures[0].Note, "is missing") || s.Seen != "" {
		t.Errorf("missing: %s %+v", stands(s), s)
	}
	if err := os.Mkdir(name, 0o755); err != nil {
		t.Fatal(err)
	}
	if s := standing(t, req.Airframe, wren, wrenScript); s.Stands() || !strings.Contains(s.Signatures[0].Note, "cannot be read") {
		t.Errorf("a directory: %s %+v", stands(s), s)
	}
}

// A record that says more than its walk-around, which whoever can write files can make.
func TestSeenSaysNoMoreThanTheBench(t *testing.T) {
	for _, c := range []struct {
		change func(*Seen)
		want   string
	}{
		{func(s *Seen) { s.AsExpected, s.Skipped = 3, 0 }, "says why it was signed although not all was seen"},
		{func(s *Seen) { s.AsExpected, s.Skipped, s.ReasonUnseen = 3, 0, "" }, "what it says was seen on the model is not what wren.bench/0001.jsonl says"},
		{func(s *Seen) { s.Summary = "seen on the model: 3 of 3 steps as expected" }, "is not what wren.bench/0001.jsonl says"},
		{func(s *Seen) { s.Steps = 4 }, "do not add up"},
		{func(s *Seen) { s.AsExpected, s.Skipped = 0, 3 }, "do not add up"},
		{func(s *Seen) { s.Reason = "it is quite all right" }, "does not say why"},
		{func(s *Seen) { s.AsExpected, s.Differ = 1, 1 }, "does not say why"},
		{func(s *Seen) { s.File = "../elsewhere.jsonl" }, "not beside the airframe file"},
		{func(s *Seen) { s.SHA256 = "no" }, "a digest in it is none"},
		{func(s *Seen) { s.Date = "soon" }, `the date "soon"`},
		{func(s *Seen) { s.Date = "2026-11-26T16:00:00Z" }, "dated before the last answer at the bench"},
	} {
		req, _ := withBench(t, benchOf(t, wren, "y", "s no time left", "y", "y"))
		req.Accept = []Acceptance{{NotAllSeen, "it was seen this morning"}}
		signed := mustSign(t, req)
		c.change(signed.Record.Seen)
		text, err := signed.Record.encode()
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(signed.File, text, 0o644); err != nil {
			t.Fatal(err)
		}
		s := standing(t, req.Airframe, wren, wrenScript)
		if s.Stands() || len(s.Troubles) != 1 || !strings.Contains(s.Troubles[0], c.want) {
			t.Errorf("wanted %q: %+v", c.want, s)
		}
	}
}

package signoff

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hingeline/verify/faults/sight"
)

const (
	beforeNoon = "2026-11-25T09:00:00Z"
	midnight   = "2026-11-25T23:59:00Z" // behind the signature of the evening
)

var (
	good    = []string{"y", "y", "y", "y"}
	wrong   = []string{"rudder o", "y", "y", "y", "y"}
	begun   = []string{"y", "y"}
	skipped = []string{"y", "s no time left", "y", "y"}
	paused  = []string{"rudder o", "y"} // with something wrong
	short   = append([]string{"rudder 12 left sure"}, good...)

	repaired = append(paused[:2:2], "p", resumes, "y", "y", "y", "y") // and gone on with, from the first step
)

// resumes is no line: the walk is gone on with.
const resumes = "--resume"

// walkedAround puts records of the bench beside an airframe file, from number 1, and
// returns their names.
func walkedAround(t testing.TB, airframe string, records ...[]byte) (names []string) {
	t.Helper()
	dir := BenchDirectory(airframe)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	for i, text := range records {
		names = append(names, filepath.Join(dir, fmt.Sprintf("%04d.jsonl", i+1)))
		write(t, names[i], text)
	}
	return names
}

// Nothing is signed over a walk-around of the very same set-up in which something was not
// as expected, whether a record is named or not, until a later one shows it put right.
func TestNothingIsSignedOverAWalkAroundThatDiffers(t *testing.T) {
	other := strings.Replace(wren, "throw: 80%", "throw: 85%", 1)
	for _, c := range []struct {
		name    string
		records [][]byte
		bench   int // that is named, from 1; 0 for none
		refused string
		names   string // the record that the message names
	}{
		{"it differs", [][]byte{benchOf(t, wren, wrong...)}, 0, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"it differs and was paused", [][]byte{benchOf(t, wren, paused...)}, 0, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"an older one is named", [][]byte{benchAt(t, beforeNoon, wren, good...), benchOf(t, wren, wrong...)}, 1, "DO NOT FLY", "wren.bench/0002.jsonl"},
		{"an older one was all right", [][]byte{benchAt(t, beforeNoon, wren, good...), benchOf(t, wren, wrong...)}, 0, "DO NOT FLY", "wren.bench/0002.jsonl"},
		{"a newer one is only begun", [][]byte{benchAt(t, beforeNoon, wren, wrong...), benchOf(t, wren, begun...)}, 0, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"a newer one was skipped through", [][]byte{benchAt(t, beforeNoon, wren, wrong...), benchOf(t, wren, skipped...)}, 0, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"one begun before it was ended behind it", [][]byte{benchOf(t, wren, good...), benchAt(t, beforeNoon, wren, wrong...)}, 0, "DO NOT FLY", "wren.bench/0002.jsonl"},
		{"gone on with behind the good one", [][]byte{benchOf(t, wren, wrong...), benchAt(t, beforeNoon, wren, good...)}, 2, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"the newest of two", [][]byte{benchAt(t, beforeNoon, wren, wrong...), benchOf(t, wren, wrong...)}, 1, "DO NOT FLY", "wren.bench/0002.jsonl"},
		{"its last line is cut off", [][]byte{append(benchOf(t, wren, paused...), `{"event":`...)}, 0, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"it cannot be read", [][]byte{[]byte("nothing\n")}, 0, "wren.bench/0001.jsonl, a record of the bench, cannot be used", ""},
		{"it cannot be read, behind a good one", [][]byte{benchOf(t, wren, good...), []byte("nothing\n")}, 1, "wren.bench/0002.jsonl, a record of the bench, cannot be used", ""},

		{"a shorter one was all right", [][]byte{benchAt(t, beforeNoon, wren, wrong...), benchBy(t, afternoon, wren, sight.Eye, []int{2, 3}, []string{"y", "y", "f"})}, 0, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"a shorter one was all right, and is named", [][]byte{benchAt(t, beforeNoon, wren, wrong...), benchBy(t, afternoon, wren, sight.Eye, []int{2, 3}, []string{"y", "y", "f"})}, 2, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"a blind one was all right", [][]byte{benchAt(t, beforeNoon, wren, wrong...), benchBy(t, afternoon, wren, sight.Look{Visible: 90}, []int{1, 2, 3}, good)}, 0, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"short by a ruler, and all right by eye", [][]byte{benchAt(t, beforeNoon, wren, short...), benchOf(t, wren, good...)}, 2, "DO NOT FLY", "wren.bench/0001.jsonl"},
		{"repaired while it was paused, and not looked at since", [][]byte{benchOf(t, wren, repaired...)}, 0, "DO NOT FLY", "1 NOT AS EXPECTED before a change and not seen since"},
		{"repaired, and skipped since", [][]byte{benchOf(t, wren, append(repaired, "s no time", "y", "y", "f")...)}, 0, "DO NOT FLY", "--accept not-all-seen="},
		{"another was not as expected, and this one was skipped", [][]byte{benchAt(t, beforeNoon, wren, wrong...), benchOf(t, wren, "s no time", "y", "elevator o", "y", "f")}, 2, "DO NOT FLY", "wren.bench/0001.jsonl"},

		{"all of its steps and no more", [][]byte{benchBy(t, beforeNoon, wren, sight.Eye, []int{1}, []string{"rudder o", "y", "f"}), benchOf(t, wren, good...)}, 2, "", ""},
		{"short by a ruler, and measured since", [][]byte{benchAt(t, beforeNoon, wren, short...), benchOf(t, wren, append([]string{"rudder 24 left"}, good...)...)}, 2, "", ""},
		{"the wrong way by a ruler, and all right by eye", [][]byte{benchAt(t, beforeNoon, wren, append([]string{"rudder 24 right sure"}, good...)...), benchOf(t, wren, good...)}, 2, "", ""},
		{"repaired while it was paused, and looked at since", [][]byte{benchOf(t, wren, append(repaired, good...)...)}, 1, "", ""},
		{"put right since", [][]byte{benchAt(t, beforeNoon, wren, wrong...), benchOf(t, wren, good...)}, 0, "", ""},
		{"put right since, and named", [][]byte{benchAt(t, beforeNoon, wren, wrong...), benchOf(t, wren, good...)}, 2, "", ""},
		{"unreadable, and walked around since", [][]byte{[]byte("nothing\n"), benchOf(t, wren, good...)}, 2, "", ""},
		{"another set-up", [][]byte{benchOf(t, other, wrong...)}, 0, "", ""},
		{"only begun", [][]byte{benchAt(t, beforeNoon, wren, good...), benchOf(t, wren, begun...)}, 1, "", ""},
		{"nothing written", [][]byte{{}}, 0, "", ""},
	} {
		airframe := newAirframe(t)
		names := walkedAround(t, airframe, c.records...)
		req := request(t, airframe)
		if c.bench > 0 {
			req.Bench = &Bench{File: names[c.bench-1], Text: c.records[c.bench-1]}
		}
		_, err := signOn(quick{}, req)
		if c.refused == "" {
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		var refusal *Refusal
		if !errors.As(err, &refusal) || !strings.Contains(refusal.Message, c.refused) || !strings.Contains(strings.Join(refusal.Details, "\n"), c.names) {
			t.Errorf("%s: got %+v, wanted %q and %q", c.name, err, c.refused, c.names)
		}
		if _, err := os.Stat(Directory(airframe)); err == nil {
			t.Errorf("%s: something was written", c.name)
		}
	}
}

// Who says why signs that walk-around, so that the signature does not say that the model
// was not looked at.
func TestAcceptedWithoutNamingTheBench(t *testing.T) {
	airframe := newAirframe(t)
	text := benchOf(t, wren, wrong...)
	walkedAround(t, airframe, text)
	req := request(t, airframe)
	req.Accept = []Acceptance{{Differs, "its arm is turned round tomorrow"}}
	signed := mustSign(t, req)
	if seen := signed.Record.Seen; seen == nil || seen.File != "wren.bench/0001.jsonl" || seen.Differ != 1 || seen.Reason != "its arm is turned round tomorrow" {
		t.Fatalf("got %+v", seen)
	}
	s := standing(t, airframe, wren, wrenScript)
	if !s.Stands() || s.Since != "" || !strings.Contains(s.Summary, "1 NOT AS EXPECTED") {
		t.Errorf("%+v", s)
	}
	// One that is still to be gone on with is not bound: it may get longer.
	airframe = newAirframe(t)
	walkedAround(t, airframe, benchOf(t, wren, paused...))
	req.Airframe = airframe
	if _, err := signOn(quick{}, req); err == nil || !strings.Contains(err.Error(), "is not finished") {
		t.Errorf("paused: %v", err)
	}
}

// A walk-around behind the signature in which something was not as expected takes it down,
// until a later one shows it put right or somebody signs in spite of it.
func TestNoSignatureStandsOverAWalkAroundThatDiffers(t *testing.T) {
	first := benchOf(t, wren, good...)
	sign := func() (string, Request) {
		airframe := newAirframe(t)
		names := walkedAround(t, airframe, first)
		req := request(t, airframe)
		req.Bench = &Bench{File: names[0], Text: first}
		mustSign(t, req)
		return airframe, req
	}
	const since = "since then seen on the model: NOT AS EXPECTED, record wren.bench/0002.jsonl: DO NOT FLY"
	for _, lines := range [][]string{wrong, paused} {
		airframe, _ := sign()
		walkedAround(t, airframe, first, benchAt(t, midnight, wren, lines...))
		for _, shallow := range []bool{false, true} {
			s := standing(t, airframe, wren, wrenScript, func(n *Now) {
				if shallow {
					n.Rewrite = nil
				}
			})
			if s.Stands() || s.Since != since || !strings.HasSuffix(s.Summary, since) || stands(s) != "GC-" || s.Signatures[0].Note != since || len(s.Troubles) > 0 {
				t.Errorf("%q: %s %+v", lines, stands(s), s)
			}
		}
		walkedAround(t, airframe, first, benchAt(t, midnight, wren, lines...), benchAt(t, midnight, wren, good...))
		if s := standing(t, airframe, wren, wrenScript); !s.Stands() || s.Since != "" {
			t.Errorf("put right: %+v", s)
		}
		shorter := benchBy(t, midnight, wren, sight.Eye, []int{2, 3}, []string{"y", "y", "f"})
		walkedAround(t, airframe, first, benchAt(t, midnight, wren, lines...), shorter)
		if s := standing(t, airframe, wren, wrenScript); s.Stands() || s.Since != since {
			t.Errorf("only the other steps were gone through since: %+v", s)
		}
	}

	airframe, _ := sign()
	walkedAround(t, airframe, first, benchAt(t, midnight, wren, begun...))
	if s := standing(t, airframe, wren, wrenScript); !s.Stands() {
		t.Errorf("only begun: %+v", s)
	}

	airframe, req := sign()
	walkedAround(t, airframe, first, benchOf(t, wren, wrong...)) // of before the signature: copied there, or a clock was wrong
	if s := standing(t, airframe, wren, wrenScript); s.Stands() || !strings.Contains(s.Since, "0002.jsonl, of which no signature speaks: DO NOT FLY") {
		t.Errorf("older than the signature: %+v", s)
	}
	second := req.by("Ben Poole", Second, nil)
	second.Bench, second.Accept = nil, []Acceptance{{Differs, "its arm is turned round"}}
	mustSign(t, second)
	if s := standing(t, airframe, wren, wrenScript); !s.Stands() || stands(s) != "GC1 GC1" || s.Since != "" {
		t.Errorf("signed in spite of it: %+v", s)
	}

	// Of one who only signed the set-up it is not said that nobody looked.
	airframe = newAirframe(t)
	mustSign(t, request(t, airframe))
	walkedAround(t, airframe, benchOf(t, wren, wrong...))
	if s := standing(t, airframe, wren, wrenScript); s.Stands() || s.Since == "" || s.Seen != "" || strings.Contains(s.Summary, "not looked at") {
		t.Errorf("only the set-up was signed: %+v", s)
	}

	airframe, _ = sign()
	walkedAround(t, airframe, first, []byte("nothing\n"))
	if s := standing(t, airframe, wren, wrenScript); s.Stands() || len(s.Troubles) != 1 || !strings.Contains(s.Troubles[0], "wren.bench/0002.jsonl") {
		t.Errorf("unreadable: %+v", s)
	}
}

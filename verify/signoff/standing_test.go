package signoff

import (
	"bytes"
	"errors"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/script"
)

// standing is that of an airframe and script, two days later.
func standing(t testing.TB, airframe, text, sentences string, with ...func(*Now)) *result.Standing {
	t.Helper()
	c := check(t, text, sentences)
	now := Now{Model: c.Model, Scripts: c.Scripts, Tool: verify.Version, Time: evening.Add(50 * time.Hour),
		Rewrite: func(m *airframes.Model, scripts []script.File, _ string) (*result.Report, []byte, error) {
			c := check(t, string(m.Source.Text), string(scripts[0].Text))
			if c.Report.Verdict != result.Passed {
				return nil, nil, errors.New("FAILED and not passed")
			}
			return c.Report, c.Rendered, nil
		}}
	for _, f := range with {
		f(&now)
	}
	s, err := Standing(airframe, now)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// stands is which signatures stand, as letters: G genuine, C current, 1 counts.
func stands(s *result.Standing) string {
	var all []string
	for _, sig := range s.Signatures {
		word := ""
		for _, l := range []struct {
			holds bool
			is    string
		}{{sig.Genuine, "G"}, {sig.Current, "C"}, {sig.Counts, "1"}} {
			if l.holds {
				word += l.is
			} else {
				word += "-"
			}
		}
		all = append(all, word)
	}
	return strings.Join(all, " ")
}

func TestStandingOfWhatIsCurrent(t *testing.T) {
	airframe := newAirframe(t)
	if s := standing(t, airframe, wren, wrenScript); s.Stands() || len(s.Signatures)+len(s.Troubles)+len(s.Changes) > 0 || s.Summary != "nothing is signed" {
		t.Errorf("of nothing: %+v", s)
	}
	mustSign(t, request(t, airframe))
	later := request(t, airframe).by("Ben Poole", Second, nil)
	later.Date = at(evening.Add(24 * time.Hour))
	mustSign(t, later)
	s := standing(t, airframe, wren, wrenScript)
	if !s.Stands() || stands(s) != "GC1 GC1" || s.Summary != "signed 2 days ago by Ada Crane (builder) and 1 day ago by Ben Poole (second person); "+result.OnlySetUp {
		t.Errorf("%s %+v", stands(s), s)
	}
	// Without looking deep it is the same.
	if shallow := standing(t, airframe, wren, wrenScript, func(n *Now) { n.Rewrite = nil }); shallow.Summary != s.Summary {
		t.Errorf("%+v", shallow)
	}
}

// Comments and order do not matter.
func TestStandingIsKeptByRemarksAndOrder(t *testing.T) {
	airframe := newAirframe(t)
	mustSign(t, request(t, airframe))
	other := "# weathered\n" + strings.Replace(wren, "  turn stick: {axis: yaw}\n  pitch stick: {axis: pitch}\n", "  pitch stick: {axis: pitch}\n  turn stick: {axis: yaw}  # first\n", 1)
	lines := strings.Split(strings.TrimSuffix(wrenScript, "\n"), "\n")
	slices.Reverse(lines[2:])
	script := "# as we fly it\n" + strings.Join(lines, "\n") + "\n"
	if other == wren || script == wrenScript {
		t.Fatal("nothing is changed: this test proves nothing")
	}
	if s := standing(t, airframe, other, script); !s.Stands() || stands(s) != "GC1" {
		t.Errorf("%s %+v", stands(s), s)
	}
}

func TestStandingSaysWhatChanged(t *testing.T) {
	airframe := newAirframe(t)
	mustSign(t, request(t, airframe))
	for _, c := range []struct {
		in, from, to, want string
		parts              []string
		line               int
	}{
		{"airframe", "throw: 80%", "throw: 85%", "demand yaw: throw 80 → 85 %", []string{"rudder"}, 7},
		{"airframe", "mix: pitch}", "mix: pitch, reversed: true}", "channel 2 (elevator) is reversed", []string{"elevator"}, 11},
		{"airframe", "20° up", "21° up", "DOWN 20 → DOWN 21°", []string{"elevator"}, 14},
		{"script", "the rudder moves left\n", "the rudder moves left 24°\n", `check changed: "with the turn stick full left, the rudder moves left" → "with the turn stick full left, the rudder moves left 24°"`, nil, 4},
		{"script", "    * with the pitch stick full forward, the elevator drops\n", "", `check gone: "with the pitch stick full forward, the elevator drops"`, nil, 6},
	} {
		text, sentences := wren, wrenScript
		if c.in == "airframe" {
			text = strings.Replace(wren, c.from, c.to, 1)
		} else {
			sentences = strings.Replace(wrenScript, c.from, c.to, 1)
		}
		if text == wren && sentences == wrenScript {
			t.Fatalf("%q is not there", c.from)
		}
		s := standing(t, airframe, text, sentences)
		if s.Stands() || stands(s) != "G-1" || len(s.Changes) == 0 || len(s.Troubles) > 0 {
			t.Errorf("%s: %s %+v", c.to, stands(s), s)
			continue
		}
		got := s.Changes[0]
		contains(t, got.Text, c.want)
		contains(t, s.Summary, "signed 2 days ago by Ada Crane (builder); out of date: "+got.Text)
		if !slices.Equal(got.Parts, c.parts) || got.Place.Line != c.line || got.Place.Excerpt == "" {
			t.Errorf("%s: %+v", c.to, got)
		}
		if len(c.parts) > 0 && (len(got.Checks) != 2 || !strings.Contains(got.Checks[0], c.parts[0])) {
			t.Errorf("%s bears on the sentences %q", c.to, got.Checks)
		}
		contains(t, s.Signatures[0].Note, "changed since")
	}
}

// A set-up that was changed, signed, and changed back is the one that was signed first.
func TestStandingOfWhatWasChangedBack(t *testing.T) {
	airframe := newAirframe(t)
	mustSign(t, request(t, airframe))
	other := strings.Replace(wren, "throw: 80%", "throw: 81%", 1)
	req := request(t, airframe)
	req.Checked = check(t, other, wrenScript)
	req.Report = req.Checked.Rendered
	mustSign(t, req)
	if s := standing(t, airframe, wren, wrenScript); !s.Stands() || stands(s) != "GC1 G-1" {
		t.Errorf("%s %+v", stands(s), s)
	}
	if s := standing(t, airframe, other, wrenScript); !s.Stands() || stands(s) != "G-1 GC1" {
		t.Errorf("%s %+v", stands(s), s)
	}
}

func TestStandingOfAReport(t *testing.T) {
	airframe := newAirframe(t)
	req := request(t, airframe)
	mustSign(t, req)
	given := func(text []byte) func(*Now) { return func(n *Now) { n.Report = text } }
	if s := standing(t, airframe, wren, wrenScript, given(req.Report)); !s.Stands() {
		t.Errorf("%+v", s)
	}
	bad := bytes.Clone(req.Report)
	bad[len(bad)/2] ^= 1
	s := standing(t, airframe, wren, wrenScript, given(bad))
	if s.Stands() || len(s.Troubles) != 1 {
		t.Fatalf("%+v", s)
	}
	contains(t, s.Troubles[0], "the report is not one that was signed")
}

func TestStandingWithAllowedSigners(t *testing.T) {
	file, stranger := newKey(t, "ed25519"), newKey(t, "ed25519")
	airframe := newAirframe(t)
	mustSign(t, request(t, airframe).by("Ada Crane", Builder, keyOf(t, file)))
	mustSign(t, request(t, airframe).by("Ben Poole", Second, keyOf(t, stranger)))
	mustSign(t, request(t, airframe).by("Cy Lund", Inspector, nil))
	allowed, err := ReadAllowed("club", []byte("ada.crane@club.example "+string(read(t, file+".pub"))))
	if err != nil {
		t.Fatal(err)
	}
	s := standing(t, airframe, wren, wrenScript, func(n *Now) { n.Allowed = allowed })
	if stands(s) != "GC1 -C- -C-" || s.Stands() || len(s.Troubles) != 2 {
		t.Fatalf("%s %+v", stands(s), s)
	}
	if s.Signatures[0].Vouched != "ada.crane@club.example" {
		t.Errorf("%+v", s.Signatures[0])
	}
	contains(t, s.Signatures[1].Note, "the key is not in club")
	contains(t, s.Signatures[2].Note, "without a key")
}

func TestStandingSaysWhenInWords(t *testing.T) {
	for ahead, want := range map[time.Duration]string{
		0: "today", 23 * time.Hour: "today", 24 * time.Hour: "1 day ago", 50 * time.Hour: "2 days ago", -time.Hour: "today",
		-72 * time.Hour: "with the date 2026-11-25, which is still to come,",
	} {
		if got := ago(formatDate(evening), evening.Add(ahead)); got != want {
			t.Errorf("%v: got %q, want %q", ahead, got, want)
		}
	}
}

func TestStandingOfADirectoryThatCannotBeRead(t *testing.T) {
	airframe := newAirframe(t)
	write(t, Directory(airframe), []byte("a file, where a directory should be"))
	c := check(t, wren, wrenScript)
	if _, err := Standing(airframe, Now{Model: c.Model, Scripts: c.Scripts, Tool: verify.Version, Time: evening}); err == nil {
		t.Error("no error")
	}
}

func TestScriptsSignedAreBesideTheAirframe(t *testing.T) {
	airframe := newAirframe(t)
	if got := ScriptsSigned(airframe); got != nil {
		t.Errorf("%q", got)
	}
	mustSign(t, request(t, airframe))
	if got := ScriptsSigned(airframe); len(got) != 1 || got[0] != filepath.Join(filepath.Dir(airframe), "wren.feature") {
		t.Errorf("%q", got)
	}
	if got := Beside("b/models/w.yaml", "a/models/w.yaml", "a/features/w.feature"); got != filepath.Join("b", "features", "w.feature") {
		t.Error(got)
	}
}

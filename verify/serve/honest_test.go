package serve

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/verifytest"
)

// switchedSubject is a model of one aileron and some switches, with what the channel's mix
// makes of each, and rates before the full one.
func switchedSubject(t *testing.T, switches, positions int, line func(i int) string, rates string) *subject {
	t.Helper()
	var b strings.Builder
	b.WriteString("hingeline: 1\nname: Switched\ncontrols:\n  roll stick: roll\n")
	for i := range switches {
		fmt.Fprintf(&b, "  s%d switch: {switch: [%s]}\n", i, strings.Join(strings.Split("abc", "")[:positions], ", "))
	}
	b.WriteString("demands:\n  roll:\n    from: roll stick\n    rates:\n" + rates + "      - {throw: 100%}\nchannels:\n  1:\n    mix:\n      - {add: roll}\n")
	for i := range switches {
		b.WriteString(line(i))
	}
	b.WriteString("surfaces:\n  aileron: {channel: 1, measured: {-120%: 24° up, 0%: 0°, 120%: 24° down}}\n")
	m := verifytest.Model(t, "switched.yaml", b.String())
	return newSubject(Now{Model: m}, 1)
}

// TestTravelNeverSpeaksOfWhatWasNotLookedAt has five switches that do something only all
// together: 32 positions, of which six are looked at.
func TestTravelNeverSpeaksOfWhatWasNotLookedAt(t *testing.T) {
	var all []string
	for i := range 5 {
		all = append(all, fmt.Sprintf("s%d switch is b", i))
	}
	s := switchedSubject(t, 5, 2, func(int) string { return "" }, "      - {when: "+strings.Join(all, " and ")+", throw: 10%}\n")
	in := s.model.Plan.Rest()
	c := s.curve(0, 0, &in)
	if strings.Contains(c.Heads[1], "every switch position") {
		t.Errorf("the column is headed %q, and with all switches at b the throw is a tenth of it", c.Heads[1])
	}
	if words := strings.Join(c.Dead, " "); !strings.Contains(words, "NOT EVERY SWITCH POSITION IS HERE: 5 switches") || !strings.Contains(c.SVG, "NOT EVERY") {
		t.Errorf("%q does not say what was left out, or the drawing does not", words)
	}
}

func TestEveryWayHasItsOwnName(t *testing.T) {
	s := switchedSubject(t, 14, 3, func(i int) string {
		return fmt.Sprintf("      - {fixed: %d%%, when: s%d switch is b}\n      - {fixed: -%d%%, when: s%d switch is c}\n", i+1, i, i+1, i)
	}, "")
	in := s.model.Plan.Rest()
	c := s.curve(0, 0, &in)
	names := map[string]bool{}
	for _, head := range c.Heads[1:] {
		name, _, _ := strings.Cut(head, ":")
		names[name] = true
	}
	if want := 1 + 14*2; len(c.Heads) != want+1 || len(names) != want {
		t.Errorf("%d columns with %d names, wanted %d of either: %q", len(c.Heads)-1, len(names), want, c.Heads)
	}
}

// TestTravelIsDeadWithTheSignalLost moves every control after the signal is lost.
func TestTravelIsDeadWithTheSignalLost(t *testing.T) {
	for _, name := range airframes.Shipped() {
		s, p := newSubject(Now{Model: verifytest.Shipped(t, name)}, 1), &page{}
		rest := s.model.Plan.Rest().Position
		for part := range s.model.Setup.Parts {
			for _, against := range s.layout.Parts[part].Against {
				h := &hand{Revision: 1, At: append(places(nil), rest...), Held: rest, Part: part, Against: against}
				_, h.At[against] = s.model.Setup.Controls[against].Range()
				at, err := s.pose(h)
				if err != nil {
					t.Fatal(err)
				}
				a := p.answerTo(s, h, at)
				if a.Curve == nil {
					t.Fatalf("%s: no curve", name)
				}
				if got := strings.Join(a.Curve.Dead, " "); !strings.Contains(got, "all of it (the signal is lost)") {
					t.Errorf("%s: the signal is lost, and of the %s: %s", name, a.Curve.Caption, got)
				}
				if a.Here.X != p.curve.plot.x(h.At[against]) {
					t.Errorf("%s: %s: the mark is at %g, wanted where the hand is, %g", name, a.Curve.Caption, a.Here.X, p.curve.plot.x(h.At[against]))
				}
			}
		}
	}
}

func TestTravelTableIsThePlan(t *testing.T) {
	var subjects []*subject
	for _, name := range airframes.Shipped() {
		subjects = append(subjects, newSubject(Now{Model: verifytest.Shipped(t, name)}, 1))
	}
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(subjects).Draw(t, "model")
		in := s.model.Plan.Rest()
		for i := range in.Position {
			c := &s.model.Setup.Controls[i]
			low, high := c.Range()
			in.Position[i] = float64(rapid.IntRange(int(low), int(high)).Draw(t, c.Name))
		}
		part := rapid.IntRange(0, len(s.layout.Parts)-1).Draw(t, "part")
		if len(s.layout.Parts[part].Against) == 0 {
			return
		}
		against := rapid.SampledFrom(s.layout.Parts[part].Against).Draw(t, "against")
		c, out := s.curve(part, against, &in), s.model.Plan.NewOutput()
		for i, x := range s.told(against) {
			at := in.Clone()
			at.Position[against] = x
			s.model.Plan.Eval(&at, out)
			if want := s.placeWords(part, out.Parts[part].Place()); c.Rows[i][1] != want {
				t.Fatalf("%s: %s at %v: the table says %q, computed is %q", s.model.Name, c.Caption, x, c.Rows[i][1], want)
			}
		}
	})
}

func TestHandRefusesWhatIsNoNumber(t *testing.T) {
	for _, text := range []string{`{"at":[0,null]}`, `{"at":[0],"held":[null]}`, `{"at":["0"]}`, `{"at":{}}`} {
		if h, err := readHand([]byte(text)); err == nil {
			t.Errorf("%s is read as %v", text, h)
		}
	}
	h, err := readHand([]byte(`{"at":[1,-2.5],"held":null}`))
	if err != nil || len(h.At) != 2 || h.At[1] != -2.5 || h.Held != nil {
		t.Errorf("read %v, %v", h, err)
	}
}

func TestTokenIsNeverLogged(t *testing.T) {
	var lines []string
	s := New(8020, func(line string) { lines = append(lines, line) })
	q := httptest.NewRequest("GET", socketPath+s.token, nil)
	q.Host, q.RemoteAddr = "localhost:8020", "127.0.0.1:5000"
	q.Header.Set("Origin", "http://elsewhere.example")
	s.ServeHTTP(httptest.NewRecorder(), q)
	if len(lines) != 1 || strings.Contains(lines[0], s.token) {
		t.Errorf("logged %q, wanted one line without the token", lines)
	}
}

// TestPortThatBrowsersLeaveOut asks as a browser does for port 80.
func TestPortThatBrowsersLeaveOut(t *testing.T) {
	for port, want := range map[int]int{80: http.StatusOK, 8020: http.StatusMisdirectedRequest} {
		s := New(port, func(string) {})
		q := httptest.NewRequest("GET", "/", nil)
		q.Host, q.RemoteAddr = "localhost", "127.0.0.1:5000"
		w := httptest.NewRecorder()
		s.ServeHTTP(w, q)
		if w.Code != want {
			t.Errorf("port %d: status %d, wanted %d", port, w.Code, want)
		}
	}
}

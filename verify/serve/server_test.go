package serve

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"net"
	"net/http"
	"net/http/httptest"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/coder/websocket"

	"example.com/hingeline/airframes"
	"example.com/hingeline/mixcore"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/verifytest"
)

// shipping is what there is to show of a built-in model.
func shipping(t testing.TB, name string) Now {
	t.Helper()
	return checkedBy(t, verifytest.Shipped(t, name), name)
}

// checkedBy is a model as the script of a built-in one checks it.
func checkedBy(t testing.TB, m *airframes.Model, name string) Now {
	t.Helper()
	report, problems := verify.Check(m, verifytest.Scripts(t, name), script.Selection{})
	if report == nil {
		t.Fatal(problems)
	}
	return Now{Model: m, Report: report, Since: "12:00:00"}
}

// running is a server that runs, and what it logged.
type running struct {
	t    testing.TB
	s    *Server
	host string
	mu   sync.Mutex
	log  []string
}

func run(t testing.TB, now Now) *running {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	r := &running{t: t, host: listener.Addr().String()}
	r.s = New(listener.Addr().(*net.TCPAddr).Port, func(line string) {
		r.mu.Lock()
		defer r.mu.Unlock()
		r.log = append(r.log, line)
	})
	r.s.Show(now)
	web := httptest.NewUnstartedServer(r.s)
	web.Listener.Close()
	web.Listener = listener
	web.Start()
	t.Cleanup(func() {
		r.s.Close()
		web.CloseClientConnections()
		web.Close()
		select {
		case bug := <-r.s.Bugs():
			t.Errorf("a bug: %v at %s", bug.What, bug.Stack)
		default:
		}
	})
	return r
}

// logged waits until a line with these words was logged.
func (r *running) logged(words string) {
	r.t.Helper()
	for range 200 {
		r.mu.Lock()
		found := slices.ContainsFunc(r.log, func(l string) bool { return strings.Contains(l, words) })
		r.mu.Unlock()
		if found {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	r.t.Errorf("%q was not logged; logged: %q", words, r.log)
}

// ask makes a request, its path as it is written, and gives the answer.
func (r *running) ask(method, path string, head map[string]string) (*http.Response, string) {
	r.t.Helper()
	conn, err := net.Dial("tcp", r.host)
	if err != nil {
		r.t.Fatal(err)
	}
	defer conn.Close()
	host := r.host
	if h, ok := head["Host"]; ok {
		host = h
	}
	fmt.Fprintf(conn, "%s %s HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n", method, path, host)
	for k, v := range head {
		if k != "Host" {
			fmt.Fprintf(conn, "%s: %s\r\n", k, v)
		}
	}
	fmt.Fprint(conn, "\r\n")
	answer, err := http.ReadResponse(bufio.NewReader(conn), &http.Request{Method: method})
	if err != nil {
		r.t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil {
		r.t.Fatal(err)
	}
	return answer, string(text)
}

// socket opens a page's socket.
func (r *running) socket(path string, head map[string]string) (*websocket.Conn, error) {
	h := http.Header{}
	for k, v := range head {
		h.Set(k, v)
	}
	host := h.Get("Host")
	h.Del("Host")
	c, _, err := websocket.Dial(context.Background(), "ws://"+r.host+path, &websocket.DialOptions{HTTPHeader: h, Host: host})
	if err == nil {
		c.SetReadLimit(4 << 20)
		r.t.Cleanup(func() { c.CloseNow() })
	}
	return c, err
}

// open opens a page as a browser does.
func (r *running) open() *websocket.Conn {
	r.t.Helper()
	c, err := r.socket(socketPath+r.s.token, map[string]string{"Origin": "http://" + r.host})
	if err != nil {
		r.t.Fatal(err)
	}
	return c
}

func send(t testing.TB, c *websocket.Conn, text string) {
	t.Helper()
	if err := c.Write(context.Background(), websocket.MessageText, []byte(text)); err != nil {
		t.Fatal(err)
	}
}

// message is any message of a server.
type message struct {
	kind     string
	revision int
	answer   answer
	layout   layout
	checks   checks
	bench    benchView
	text     string
}

func next(t testing.TB, c *websocket.Conn) message {
	t.Helper()
	_, text, err := c.Read(t.Context()) // however slow the machine is: the test as a whole has its time
	if err != nil {
		t.Fatal(err)
	}
	m := message{text: string(text)}
	var kind struct {
		Kind     string `json:"kind"`
		Revision int    `json:"revision"`
	}
	if err := json.Unmarshal(text, &kind); err != nil {
		t.Fatal(err)
	}
	m.kind, m.revision = kind.Kind, kind.Revision
	var into any = &m.answer
	switch kind.Kind {
	case "layout":
		into = &m.layout
	case "checks":
		into = &m.checks
	case "bench":
		into = &m.bench
	case "door":
		return m
	}
	if err := json.Unmarshal(text, into); err != nil {
		t.Fatal(err)
	}
	return m
}

// until reads on to a message of a kind.
func until(t testing.TB, c *websocket.Conn, kind string) message {
	t.Helper()
	for {
		if m := next(t, c); m.kind == kind {
			return m
		}
	}
}

// positions are those of a model at rest, with some moved.
func positions(m *airframes.Model, moved map[string]float64) string {
	in := m.Plan.Rest()
	for i := range m.Setup.Controls {
		if at, ok := moved[m.Setup.Controls[i].Name]; ok {
			in.Position[i] = at
		}
	}
	text, _ := json.Marshal(in.Position)
	return string(text)
}

func partCalled(m *airframes.Model, name string) int {
	return slices.IndexFunc(m.Setup.Parts, func(p mixcore.Part) bool { return p.Name == name })
}

func handOf(number, revision int, at string, more string) string {
	return fmt.Sprintf(`{"number":%d,"revision":%d,"at":%s,"part":0,"against":0,"sentence":false%s}`, number, revision, at, more)
}

func TestAnswerIsWhatThePlanComputes(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	c := r.open()
	l := until(t, c, "layout")
	if l.layout.Model != "Bracken 20" || len(l.layout.Controls) != len(now.Model.Setup.Controls) || !strings.Contains(l.layout.Cautions[0], "propeller") {
		t.Fatalf("layout: %s", l.text)
	}
	if k := until(t, c, "checks"); k.checks.Tone == "bad" || len(k.checks.Stages) == 0 {
		t.Errorf("checks: %s", k.text)
	}
	send(t, c, handOf(1, l.revision, positions(now.Model, map[string]float64{"roll stick": 100, "rate switch": 1}), ""))
	a := until(t, c, "answer")
	port := partCalled(now.Model, "port aileron")
	if got := a.answer.Parts[port].Says; !strings.HasPrefix(got, "trailing edge DOWN 16") {
		t.Errorf("port aileron %q, wanted DOWN 16 degrees and a bit as the script has it", got)
	}
	if !strings.Contains(strings.Join(a.answer.Turns, ";"), "rolls RIGHT") {
		t.Errorf("turns %q", a.answer.Turns)
	}
	if a.answer.Drawings["behind"] == "" || a.answer.Drawings[fmt.Sprint("part-", port)] == "" || len(a.answer.Why) == 0 || a.answer.Curve == nil {
		t.Error("a drawing, the reasons or the curve are missing")
	}
	send(t, c, handOf(2, l.revision, positions(now.Model, map[string]float64{"roll stick": 100, "rate switch": 1}), ""))
	if again := until(t, c, "answer"); len(again.answer.Drawings) > 0 || again.answer.Curve != nil {
		t.Error("what did not change is sent again")
	}
}

func TestLostSignalHoldsWhatWasPutOut(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	c := r.open()
	l := until(t, c, "layout")
	held := positions(now.Model, map[string]float64{"flap lever": 100})
	send(t, c, handOf(1, l.revision, positions(now.Model, nil), `,"held":`+held))
	a := until(t, c, "answer")
	if got := a.answer.Parts[partCalled(now.Model, "port flap")].Says; !strings.Contains(got, "DOWN") {
		t.Errorf("the port flap holds %q, wanted DOWN, as when the signal went", got)
	}
	if !strings.Contains(a.answer.Pose, "signal lost") {
		t.Errorf("pose %q", a.answer.Pose)
	}
}

func TestEveryPageHasItsOwnPoseAndSeesTheFilesChange(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	one, two := r.open(), r.open()
	l := until(t, one, "layout")
	until(t, two, "layout")
	send(t, one, handOf(1, l.revision, positions(now.Model, map[string]float64{"roll stick": 100}), ""))
	send(t, two, handOf(1, l.revision, positions(now.Model, map[string]float64{"roll stick": -100}), ""))
	a, b := until(t, one, "answer"), until(t, two, "answer")
	port := partCalled(now.Model, "port aileron")
	if !strings.Contains(a.answer.Parts[port].Says, "DOWN") || !strings.Contains(b.answer.Parts[port].Says, "UP") {
		t.Errorf("port aileron %q and %q, wanted DOWN and UP", a.answer.Parts[port].Says, b.answer.Parts[port].Says)
	}
	now.Report, now.Old, now.Changed = nil, true, []string{"bracken-20.yaml"}
	r.s.Show(now)
	for _, c := range []*websocket.Conn{one, two} {
		if k := until(t, c, "checks"); k.checks.Tone != "bad" || !strings.Contains(k.checks.Word, "CANNOT BE USED") || k.revision != 2 {
			t.Errorf("checks: %s", k.text)
		}
	}
	send(t, one, handOf(2, 1, positions(now.Model, nil), "")) // of the model before: not answered
	send(t, one, handOf(3, 2, positions(now.Model, nil), ""))
	if a := until(t, one, "answer"); a.answer.Number != 3 {
		t.Errorf("message %d was answered, wanted 3", a.answer.Number)
	}
}

func TestSentenceOfAPoseIsGiven(t *testing.T) {
	now := shipping(t, "bracken-20")
	r := run(t, now)
	c := r.open()
	l := until(t, c, "layout")
	send(t, c, strings.Replace(handOf(1, l.revision, positions(now.Model, map[string]float64{"roll stick": 30}), ""), `"sentence":false`, `"sentence":true`, 1))
	a := until(t, c, "answer")
	if a.answer.Sentence == nil || !strings.Contains(a.answer.Sentence.Text, "And the roll stick is 30% right\n") || len(a.answer.Sentence.LeftOut) > 0 {
		t.Errorf("%+v", a.answer.Sentence)
	}
}

var ids = regexp.MustCompile(`id="([^"]*)"`)

// TestEveryModelIsAnsweredAtItsEnds opens every built-in model and moves every control to
// its ends: every drawing is there, and its ids are used once.
func TestEveryModelIsAnsweredAtItsEnds(t *testing.T) {
	for _, name := range airframes.Shipped() {
		m := verifytest.Shipped(t, name)
		s := newSubject(Now{Model: m}, 1)
		p, drawings := &page{}, map[string]string{}
		for control := range m.Setup.Controls {
			low, high := m.Setup.Controls[control].Range()
			for _, position := range []float64{low, high} {
				at := m.Plan.Rest().Position
				at[control] = position
				h := hand{At: at, Part: control % len(m.Setup.Parts), Against: control}
				pose, err := s.pose(&h)
				if err != nil {
					t.Fatal(err)
				}
				a := p.answerTo(s, &h, pose)
				if text, err := json.Marshal(a); err != nil || strings.Contains(string(text), "NaN") {
					t.Fatalf("%s: %v", name, err)
				}
				maps.Copy(drawings, a.Drawings)
				if a.Curve != nil && strings.Contains(a.Curve.SVG, "cannot be drawn") {
					t.Errorf("%s: the curve of %d against %d cannot be drawn", name, h.Part, control)
				}
			}
		}
		if want := len(m.Setup.Parts) + 2; len(drawings) != want {
			t.Errorf("%s: %d drawings, wanted %d", name, len(drawings), want)
		}
		seen := map[string]bool{}
		for _, text := range drawings {
			if strings.Contains(text, "cannot be drawn") {
				t.Errorf("%s: a drawing cannot be drawn", name)
			}
			for _, id := range ids.FindAllStringSubmatch(text, -1) {
				if seen[id[1]] {
					t.Errorf("%s: id %q is there twice", name, id[1])
				}
				seen[id[1]] = true
			}
		}
	}
}

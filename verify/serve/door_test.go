package serve

import (
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"
)

// clock is a clock that stands until it is put on.
type clock struct{ at time.Time }

func (c *clock) now() time.Time { return c.at }

func TestCodeOpensOnce(t *testing.T) {
	c := &clock{time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC)}
	told := 0
	d := newDoor([]string{"192.168.7.7:8020"}, c.now, func() { told++ })
	said, _ := d.say()
	if len(strings.ReplaceAll(said.Code, " ", "")) != codeDigits || said.Addresses[0] != "http://192.168.7.7:8020/" {
		t.Fatalf("%+v", said)
	}
	key, no := d.try(said.Code)
	if no != nil || !d.lets(key) || d.lets("") || d.lets(key+"x") || d.lets(said.Code) {
		t.Fatalf("let in: %q, %+v", key, no)
	}
	if _, no := d.try(said.Code); no == nil {
		t.Error("the code opens twice")
	}
	if again, _ := d.say(); again.Code == said.Code || again.Devices != 1 || told != 1 {
		t.Errorf("after a device came in: %+v, said %d times", again, told)
	}
}

func TestCodeGoesOutOfDate(t *testing.T) {
	c := &clock{time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC)}
	d := newDoor(nil, c.now, func() {})
	old, _ := d.say()
	c.at = c.at.Add(codeLasts)
	if key, no := d.try(old.Code); no == nil || key != "" || !strings.Contains(no.page, "out of date") {
		t.Errorf("a code that is out of date: %q, %+v", key, no)
	}
	if now, _ := d.say(); now.Code == old.Code || d.wrong != 0 {
		t.Errorf("%+v; %d wrong tries", now, d.wrong)
	}
}

func TestWrongCodesAreSlowedAndThenShutOut(t *testing.T) {
	c := &clock{time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC)}
	d := newDoor(nil, c.now, func() {})
	pause, codes := firstPause, map[string]bool{}
	for n := 1; n <= mostWrong; n++ {
		now, _ := d.say()
		codes[now.Code] = true
		if _, no := d.try("1"); no == nil || !strings.Contains(no.log, fmt.Sprintf("the %d. of %d", n, mostWrong)) {
			t.Fatalf("try %d: %+v", n, no)
		}
		if n == mostWrong {
			break
		}
		now, _ = d.say()
		c.at = c.at.Add(pause - time.Millisecond)
		if key, no := d.try(now.Code); no == nil || key != "" || !strings.Contains(no.log, "too soon") {
			t.Fatalf("try %d is not slowed: %q, %+v", n, key, no)
		}
		c.at = c.at.Add(time.Millisecond)
		pause = min(2*pause, longestPause)
	}
	if want := (mostWrong + voidAfter - 1) / voidAfter; len(codes) != want {
		t.Errorf("%d codes for %d wrong tries, wanted %d", len(codes), mostWrong, want)
	}
	c.at = c.at.Add(24 * time.Hour)
	now, _ := d.say()
	if _, no := d.try(now.Code); !now.Shut || now.Code != "" || no == nil || !strings.Contains(no.log, "too many wrong") {
		t.Errorf("after %d wrong codes: %+v, %+v", mostWrong, now, no)
	}
}

// TestWrongCodeIsLoggedHoweverMuchWasRefused knocks until nothing more is logged: a wrong code
// still is, and one that is not looked at is not.
func TestWrongCodeIsLoggedHoweverMuchWasRefused(t *testing.T) {
	n := onNetwork(t)
	for range mostRefusals + 1 {
		n.asked(phone, "GET", "/page.js", nil, "")
	}
	n.asked(phone, "POST", "/enter", formHead, "code=1")
	n.asked(phone, "POST", "/enter", formHead, "code=2")
	n.mu.Lock()
	defer n.mu.Unlock()
	if last := n.log[len(n.log)-1]; len(n.log) != mostRefusals+1 || last != "refused: a wrong code, the 1. of 10 (192.168.7.31:50000)" {
		t.Errorf("%d lines, the last %q; wanted %d and the wrong code", len(n.log), last, mostRefusals+1)
	}
}

func TestDevicesAreCounted(t *testing.T) {
	c := &clock{time.Now()}
	d := newDoor(nil, c.now, func() {})
	for range mostDevices {
		now, _ := d.say()
		if _, no := d.try(now.Code); no != nil {
			t.Fatal(no)
		}
	}
	if now, _ := d.say(); now.Code != "" {
		t.Error("there is a code for one device more")
	}
	if _, no := d.try(""); no == nil || !strings.Contains(no.log, "beside 8 others") {
		t.Errorf("one device more: %+v", no)
	}
}

// network is a running server that is asked from other addresses, as devices of a network
// do.
type network struct {
	*running
	said []Door
}

const lanHost = "192.168.7.7:8020"

func onNetwork(t *testing.T) *network {
	n := &network{running: run(t, shipping(t, "pellin-park"))}
	n.s.OpenTo([]string{lanHost}, func(d Door) { n.said = append(n.said, d) })
	return n
}

// asked is a request of a device.
func (n *network) asked(from, method, path string, head map[string]string, body string) *http.Response {
	q := httptest.NewRequest(method, path, strings.NewReader(body))
	q.Host, q.RemoteAddr = lanHost, from
	for k, v := range head {
		if k == "Host" {
			q.Host = v
		}
		q.Header.Set(k, v)
	}
	w := httptest.NewRecorder()
	n.s.ServeHTTP(w, q)
	return w.Result()
}

const phone = "192.168.7.31:50000"

var formHead = map[string]string{"Origin": "http://" + lanHost, "Content-Type": "application/x-www-form-urlencoded"}

func TestDeviceIsLetInByItsCodeAlone(t *testing.T) {
	n := onNetwork(t)
	for path, status := range map[string]int{"/": 200, "/bench": 200, "/style.css": 200, "/page.js": 403, "/socket/" + n.s.token: 403} {
		answer := n.asked(phone, "GET", path, nil, "")
		text, _ := io.ReadAll(answer.Body)
		if answer.StatusCode != status || strings.Contains(string(text), n.s.token) || strings.Contains(string(text), n.said[0].Code) {
			t.Errorf("%s before it is let in: status %d, wanted %d: %.60q", path, answer.StatusCode, status, text)
		}
	}
	wrong := n.asked(phone, "POST", "/enter", formHead, "code=1")
	text, _ := io.ReadAll(wrong.Body)
	if wrong.StatusCode != 403 || !strings.Contains(string(text), "That is not the code.") || len(wrong.Cookies()) != 0 {
		t.Errorf("a wrong code: status %d, %q", wrong.StatusCode, text)
	}
	n.logged("a wrong code, the 1. of 10 (192.168.7.31:50000)")
	soon := n.asked(phone, "POST", "/enter", formHead, url.Values{"code": {n.said[0].Code}}.Encode())
	if soon.StatusCode != 403 {
		t.Errorf("a code right after a wrong one: status %d", soon.StatusCode)
	}
	n.logged("too soon")
	n.s.door.next = time.Time{}
	in := n.asked(phone, "POST", "/enter", formHead, url.Values{"code": {n.said[0].Code}}.Encode())
	if in.StatusCode != 303 || len(in.Cookies()) != 1 || !in.Cookies()[0].HttpOnly || in.Cookies()[0].SameSite != http.SameSiteStrictMode {
		t.Fatalf("the code: status %d, cookies %v", in.StatusCode, in.Cookies())
	}
	if len(n.said) != 2 || n.said[1].Code == n.said[0].Code {
		t.Errorf("said %+v, wanted a new code", n.said)
	}
	with := map[string]string{"Cookie": in.Cookies()[0].String()}
	page := n.asked(phone, "GET", "/", with, "")
	if text, _ := io.ReadAll(page.Body); page.StatusCode != 200 || !strings.Contains(string(text), n.s.token) {
		t.Errorf("with its key: status %d, %.60q", page.StatusCode, text)
	}
	for name, head := range map[string]map[string]string{
		"no key":         {},
		"a guessed key":  {"Cookie": cookie + "=AAAAAAAAAAAAAAAAAAAAAAAAAA"},
		"an empty key":   {"Cookie": cookie + "="},
		"the code as it": {"Cookie": cookie + "=" + strings.ReplaceAll(n.said[1].Code, " ", "")},
	} {
		if answer := n.asked(phone, "GET", "/page.js", head, ""); answer.StatusCode != 403 {
			t.Errorf("%s: status %d, wanted 403", name, answer.StatusCode)
		}
	}
	n.logged(`"/page.js" asked for by a device that was not let in`)
}

func TestNetworkRefusesWhatThisMachineDoes(t *testing.T) {
	n := onNetwork(t)
	_, port, _ := net.SplitHostPort(n.host)
	in := n.asked(phone, "POST", "/enter", formHead, url.Values{"code": {n.said[0].Code}}.Encode())
	key := in.Cookies()[0].String()
	for _, c := range []struct {
		name, method, path string
		head               map[string]string
		body               string
		status             int
		logged             string
	}{
		{"another host name", "GET", "/", map[string]string{"Host": "evil.example:8020"}, "", 421, "evil.example"},
		{"a device that says it is this machine", "GET", "/", map[string]string{"Host": "127.0.0.1:" + port}, "", 421, "127.0.0.1"},
		{"the same with a key", "GET", "/page.js", map[string]string{"Host": "localhost:" + port, "Cookie": key}, "", 421, "localhost"},
		{"another origin", "POST", "/enter", map[string]string{"Origin": "http://evil.example"}, "code=1", 403, "somebody else"},
		{"an origin that is not said", "POST", "/enter", map[string]string{"Origin": "null"}, "code=1", 403, "somebody else"},
		{"no origin", "POST", "/enter", nil, "code=1", 403, "does not say from which page"},
		{"a form without end", "POST", "/enter", formHead, "code=" + strings.Repeat("1", mostForm), 400, "a form"},
		{"a form that is none", "POST", "/enter", formHead, "code=%zz", 400, "a form"},
		{"another method", "POST", "/", map[string]string{"Origin": "http://" + lanHost, "Cookie": key}, "", 405, `"POST"`},
		{"a path", "GET", "/../../etc/passwd", map[string]string{"Cookie": key}, "", 404, "etc/passwd"},
		{"the page asked for by another site", "GET", "/page.js", map[string]string{"Cookie": key, "Sec-Fetch-Site": "cross-site"}, "", 403, "somebody else"},
		{"a socket with a key but no token", "GET", "/socket/AAAA", map[string]string{"Cookie": key}, "", 403, "wrong token"},
	} {
		t.Run(c.name, func(t *testing.T) {
			n.t = t
			if answer := n.asked(phone, c.method, c.path, c.head, c.body); answer.StatusCode != c.status {
				t.Errorf("status %d, wanted %d", answer.StatusCode, c.status)
			}
			n.logged(c.logged)
		})
	}
}

// TestWithoutADoorThereIsNone is what loopback only means.
// TestDefaultPortIsLeftOut asks as browsers do where the port is that of http.
func TestDefaultPortIsLeftOut(t *testing.T) {
	d := newDoor([]string{"192.168.7.7:80", "[fd00::7]:80", "192.168.7.8:8080"}, time.Now, func() {})
	for host, want := range map[string]bool{
		"192.168.7.7": true, "192.168.7.7:80": true, "[fd00::7]": true, "192.168.7.8": false, "192.168.7.8:80": false, "192.168.7.8:8080": true,
	} {
		if d.hosts[host] != want {
			t.Errorf("asked by %s: %v, wanted %v", host, d.hosts[host], want)
		}
	}
}

func TestWithoutADoorThereIsNone(t *testing.T) {
	n := &network{running: run(t, shipping(t, "pellin-park"))}
	for _, host := range []string{lanHost, n.host} {
		for _, c := range [][2]string{{"GET", "/"}, {"POST", "/enter"}} {
			head := map[string]string{"Host": host, "Origin": "http://" + host}
			if answer := n.asked(phone, c[0], c[1], head, "code=1"); answer.StatusCode != 421 {
				t.Errorf("%s %s as %s from another device: status %d, wanted 421", c[0], c[1], host, answer.StatusCode)
			}
		}
	}
	if answer := n.asked("127.0.0.1:50000", "POST", "/enter", map[string]string{"Host": n.host, "Origin": "http://" + n.host}, "code=1"); answer.StatusCode != 405 {
		t.Errorf("a code on this machine: status %d, wanted 405", answer.StatusCode)
	}
}

// TestPageHereIsToldTheCode and a page on a device is not.
func TestPageHereIsToldTheCode(t *testing.T) {
	n := onNetwork(t)
	c := n.open()
	m := until(t, c, "door")
	if !strings.Contains(m.text, n.said[0].Code) || !strings.Contains(m.text, lanHost) {
		t.Errorf("a page here is told %s", m.text)
	}
	n.asked(phone, "POST", "/enter", formHead, url.Values{"code": {n.said[0].Code}}.Encode())
	if m := until(t, c, "door"); !strings.Contains(m.text, n.said[1].Code) || !strings.Contains(m.text, `"devices":1`) {
		t.Errorf("after a device came in a page here is told %s", m.text)
	}
}

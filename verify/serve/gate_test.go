package serve

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/coder/websocket"
)

func TestPageIsGivenWithItsPolicy(t *testing.T) {
	r := run(t, shipping(t, "pellin-park"))
	for _, path := range []string{"/", "/bench", "/bench.js", "/style.css", "/page.js", "/link.js", "/hands.js", "/sight.js", "/icon.svg"} {
		answer, text := r.ask("GET", path, nil)
		if answer.StatusCode != http.StatusOK || len(text) < 100 {
			t.Errorf("%s: status %d, %d bytes", path, answer.StatusCode, len(text))
		}
		for name, want := range map[string]string{
			"Content-Security-Policy": "default-src 'none'", "X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer",
			"Cache-Control": "no-store", "X-Frame-Options": "DENY", "Cross-Origin-Resource-Policy": "same-origin",
		} {
			if got := answer.Header.Get(name); !strings.HasPrefix(got, want) {
				t.Errorf("%s: %s is %q, wanted %q", path, name, got, want)
			}
		}
		if strings.Contains(answer.Header.Get("Content-Security-Policy"), "unsafe") {
			t.Errorf("%s: the policy lets anything in", path)
		}
		if strings.HasPrefix(text, "<!doctype") && !strings.Contains(text, "<noscript>") {
			t.Errorf("%s: says nothing to a browser without scripts", path)
		}
		for _, mark := range []string{"http://", "https://", "//cdn", "{{"} {
			rest := strings.ReplaceAll(text, "http://www.w3.org/2000/svg", "")
			if strings.Contains(rest, mark) {
				t.Errorf("%s: holds %q", path, mark)
			}
		}
	}
	if answer, text := r.ask("HEAD", "/", nil); answer.StatusCode != http.StatusOK || text != "" {
		t.Errorf("HEAD: status %d, %q", answer.StatusCode, text)
	}
}

// TestEveryAssetIsGiven finds one that was forgotten in the list.
func TestEveryAssetIsGiven(t *testing.T) {
	r := run(t, shipping(t, "pellin-park"))
	fs.WalkDir(assets, "assets", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			t.Fatal(err)
		}
		path := "/" + strings.TrimPrefix(name, "assets/")
		switch path {
		case "/page.html":
			path = "/"
		case "/bench.html":
			path = benchPath
		}
		if d.IsDir() || path == "/enter.html" { // which devices are given that were not let in
			return nil
		}
		if answer, _ := r.ask("GET", path, nil); answer.StatusCode != http.StatusOK {
			t.Errorf("%s: status %d", path, answer.StatusCode)
		}
		return nil
	})
}

func TestStrangersAreRefusedAndLogged(t *testing.T) {
	r := run(t, shipping(t, "pellin-park"))
	_, port, _ := strings.Cut(r.host, ":")
	secret := filepath.Join(t.TempDir(), "secret")
	if err := os.WriteFile(secret, []byte("a secret on this disk"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		method, path string
		head         map[string]string
		status       int
		logged       string
	}{
		{"GET", "/", map[string]string{"Host": "evil.example"}, 421, `host "evil.example"`},
		{"GET", "/", map[string]string{"Host": "evil.example:" + port}, 421, "evil.example:" + port},
		{"GET", "/", map[string]string{"Host": "127.0.0.1.evil.example:" + port}, 421, "127.0.0.1.evil"},
		{"GET", "http://evil.example/", nil, 421, `host "evil.example"`},
		{"GET", "/", map[string]string{"Host": "127.0.0.1:1"}, 421, `"127.0.0.1:1"`},
		{"GET", "/", map[string]string{"Host": "127.0.0.1"}, 421, `"127.0.0.1"`},
		{"GET", "/", map[string]string{"Host": "localhost:" + port}, 200, ""},
		{"GET", "/", map[string]string{"Host": "LOCALHOST:" + port}, 200, ""},
		{"GET", "/", map[string]string{"Host": "[::1]:" + port}, 200, ""},
		{"GET", "/", map[string]string{"Origin": "http://evil.example"}, 403, "a page of somebody else"},
		{"GET", "/", map[string]string{"Origin": "null"}, 403, "a page of somebody else"},
		{"GET", "/page.js", map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors", "Sec-Fetch-Dest": "script"}, 403, `"/page.js"`},
		{"GET", "/", map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors", "Sec-Fetch-Dest": "image"}, 403, "a page of somebody else"},
		{"GET", "/", map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "iframe"}, 403, "a page of somebody else"},
		{"GET", "/", map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "document"}, 200, ""},
		{"POST", "/", nil, 405, `method "POST"`},
		{"PUT", "/page.js", nil, 405, `method "PUT"`},
		{"DELETE", "/", nil, 405, `method "DELETE"`},
		{"OPTIONS", "/", nil, 405, `method "OPTIONS"`},
		{"GET", "/server.go", nil, 404, `"/server.go"`},
		{"GET", "/pellin-park.yaml", nil, 404, "pellin-park.yaml"},
		{"GET", "/assets/", nil, 404, `"/assets/"`},
		{"GET", "/../../../../../../../.." + secret, nil, 404, "/../../../../"},
		{"GET", "/..%2f..%2f..%2fetc/passwd", nil, 404, "etc/passwd"},
		{"GET", "/%2e%2e/%2e%2e/etc/passwd", nil, 404, "etc/passwd"},
		{"GET", "//etc/passwd", nil, 404, "etc/passwd"},
		{"GET", "/page.js/../../gate.go", nil, 404, "gate.go"},
		{"GET", "/socket/", nil, 403, "wrong token"},
		{"GET", "/socket/" + strings.Repeat("A", len(r.s.token)), nil, 403, "wrong token"},
		{"GET", "/socket/" + r.s.token + "x", nil, 403, "wrong token"},
		{"GET", "/socket/" + r.s.token, nil, 403, "which page it belongs to"},
	} {
		t.Run(fmt.Sprint(c.method, " ", c.path, " ", c.head), func(t *testing.T) {
			answer, text := r.ask(c.method, c.path, c.head)
			if answer.StatusCode != c.status {
				t.Errorf("status %d, wanted %d: %.100q", answer.StatusCode, c.status, text)
			}
			if strings.Contains(text, "a secret") || strings.Contains(text, "root:") {
				t.Error("a file of this disk was given out")
			}
			if c.logged != "" {
				r.t = t
				r.logged(c.logged)
			}
		})
	}
}

func TestSocketsOfOthersAreRefused(t *testing.T) {
	r := run(t, shipping(t, "pellin-park"))
	_, port, _ := strings.Cut(r.host, ":")
	right := socketPath + r.s.token
	for _, c := range []struct {
		name, path string
		head       map[string]string
	}{
		{"another origin", right, map[string]string{"Origin": "http://evil.example"}},
		{"another port", right, map[string]string{"Origin": "http://127.0.0.1:1"}},
		{"a file", right, map[string]string{"Origin": "null"}},
		{"another scheme", right, map[string]string{"Origin": "https://" + r.host}},
		{"no origin", right, nil},
		{"another host", right, map[string]string{"Origin": "http://evil.example:" + port, "Host": "evil.example:" + port}},
		{"a wrong token", socketPath + "AAAA", map[string]string{"Origin": "http://" + r.host}},
		{"the token of another run", socketPath + New(1, func(string) {}).token, map[string]string{"Origin": "http://" + r.host}},
	} {
		if _, err := r.socket(c.path, c.head); err == nil {
			t.Errorf("%s: let in", c.name)
		}
	}
	r.mu.Lock()
	if len(r.log) != 8 {
		t.Errorf("%d refusals logged, wanted 8: %q", len(r.log), r.log)
	}
	r.mu.Unlock()
	if _, err := r.socket(right, map[string]string{"Origin": "http://" + r.host}); err != nil {
		t.Errorf("the page itself is refused: %v", err)
	}
}

func TestMessagesThatMakeNoSenseAreRefusedAndLogged(t *testing.T) {
	now := shipping(t, "pellin-park")
	r := run(t, now)
	rest := positions(now.Model, nil)
	for _, c := range []struct{ message, logged string }{
		{"", "EOF"},
		{"{", "unexpected EOF"},
		{"[]", "cannot unmarshal array"},
		{"null null", "something follows"},
		{handOf(1, 1, rest, `,"file":"/etc/passwd"`), "unknown field"},
		{handOf(1, 1, rest, "") + handOf(2, 1, rest, ""), "something follows"},
		{handOf(1, 1, "[]", ""), "positions of 0 controls"},
		{handOf(1, 1, strings.Replace(rest, "0", "1e999", 1), ""), "cannot unmarshal number"},
		{handOf(1, 1, strings.Replace(rest, "0", "101", 1), ""), "is at 101"},
		{handOf(1, 1, strings.Replace(rest, "0", `"0"`, 1), ""), "cannot unmarshal string"},
		{handOf(1, 1, rest, `,"held":[1]`), "held"},
		{strings.Replace(handOf(1, 1, rest, ""), `"part":0`, `"part":99`, 1), "part is 99"},
		{strings.Replace(handOf(1, 1, rest, ""), `"part":0`, `"part":-1`, 1), "part is -1"},
		{strings.Replace(handOf(1, 1, rest, ""), `"against":0`, `"against":99`, 1), "against is 99"},
		{strings.Replace(handOf(1, 1, rest, ""), `"number":1`, `"number":-1`, 1), "number is -1"},
	} {
		conn := r.open()
		l := until(t, conn, "layout")
		send(t, conn, c.message)
		r.logged(c.logged)
		send(t, conn, handOf(7, l.revision, rest, ""))
		if a := until(t, conn, "answer"); a.answer.Number != 7 {
			t.Errorf("after %q: message %d was answered, wanted 7", c.message, a.answer.Number)
		}
		conn.CloseNow()
	}
}

func TestTooLargeAndTooManyMessagesEndThePage(t *testing.T) {
	now := shipping(t, "pellin-park")
	r := run(t, now)
	large := r.open()
	// It may be sent away before all was written.
	large.Write(context.Background(), websocket.MessageText, []byte(`{"number":1,"at":[`+strings.Repeat("0,", mostMessage)+`0]}`))
	ends(t, large)
	r.logged("more than 16384 bytes")
	binary := r.open()
	if err := binary.Write(context.Background(), websocket.MessageBinary, []byte(handOf(1, 1, positions(now.Model, nil), ""))); err != nil {
		t.Fatal(err)
	}
	r.logged("not text")
	many := r.open()
	for range mostRefused {
		if many.Write(context.Background(), websocket.MessageText, []byte("nonsense")) != nil {
			break
		}
	}
	ends(t, many)
	r.logged("which make no sense")
}

// ends sees a page sent away; what is under way then may hide the reason, which is logged.
func ends(t *testing.T, c *websocket.Conn) {
	t.Helper()
	ctx, stop := context.WithTimeout(context.Background(), 10*time.Second)
	defer stop()
	for {
		if _, _, err := c.Read(ctx); err != nil {
			if ctx.Err() != nil {
				t.Error("the page was not sent away")
			}
			return
		}
	}
}

// TestTenThousandMessagesQueueNothing sends as fast as it can: the last is answered soon
// after it was sent, and only some of the others.
func TestTenThousandMessagesQueueNothing(t *testing.T) {
	now := shipping(t, "pellin-park")
	r := run(t, now)
	c := r.open()
	l := until(t, c, "layout")
	const all = 10_000
	answers := make(chan int64, all)
	go func() {
		defer close(answers)
		for {
			_, text, err := c.Read(t.Context())
			var m struct {
				Kind   string `json:"kind"`
				Number int64  `json:"number"`
			}
			if err != nil || json.Unmarshal(text, &m) != nil {
				return
			}
			if m.Kind == "answer" {
				answers <- m.Number
			}
			if m.Number == all {
				return
			}
		}
	}()
	for n := 1; n <= all; n++ {
		send(t, c, handOf(n, l.revision, positions(now.Model, map[string]float64{now.Model.Setup.Controls[0].Name: float64(n%201 - 100)}), ""))
	}
	count, last := 0, int64(0)
	for n := range answers {
		if n <= last {
			t.Errorf("%d was answered after %d", n, last)
		}
		count, last = count+1, n
	}
	if last != all || count >= all {
		t.Errorf("%d answers, the last to %d; wanted fewer than %d and the last to %d", count, last, all, all)
	}
	t.Logf("%d messages, %d answers", all, count)
}

func TestTooManyPagesAreRefused(t *testing.T) {
	r := run(t, shipping(t, "pellin-park"))
	for range mostPages {
		until(t, r.open(), "layout")
	}
	if _, err := r.socket(socketPath+r.s.token, map[string]string{"Origin": "http://" + r.host}); err == nil {
		t.Error("one page more is let in")
	}
	r.logged("beside 32 others")
}

func TestLogIsBounded(t *testing.T) {
	var lines []string
	r := refusals{write: func(line string) { lines = append(lines, line) }}
	for range 10 * mostRefusals {
		r.add("a %s", "stranger")
	}
	if len(lines) != mostRefusals || !strings.Contains(lines[len(lines)-1], "no further line about it in this run, but") {
		t.Errorf("%d lines, the last %q", len(lines), lines[len(lines)-1])
	}
}

package serve

import (
	"bufio"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"
)

// TestStrangersHoldABoundedNumberOfConnections knocks with one connection more than may be:
// the oldest ends, that of a device that was let in does not.
func TestStrangersHoldABoundedNumberOfConnections(t *testing.T) {
	s := New(1, func(string) {})
	s.Show(shipping(t, "pellin-park"))
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	host := listener.Addr().String()
	var said Door
	s.OpenTo([]string{host}, func(d Door) { said = d })
	key, no := s.door.try(said.Code)
	if no != nil {
		t.Fatal(no)
	}
	web := &http.Server{Handler: s, ConnContext: s.Connected}
	defer web.Close()
	go web.Serve(s.Network(listener))
	knock := func() net.Conn {
		c, err := net.Dial("tcp", host)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { c.Close() })
		return c
	}
	// page asks for the page and says whether it, or the question for the code, was given.
	page := func(c net.Conn, cookies string) string {
		t.Helper()
		c.SetDeadline(time.Now().Add(10 * time.Second))
		fmt.Fprintf(c, "GET / HTTP/1.1\r\nHost: %s\r\n%s\r\n", host, cookies)
		answer, err := http.ReadResponse(bufio.NewReader(c), nil)
		if err != nil {
			return err.Error()
		}
		text, err := io.ReadAll(answer.Body)
		if err != nil {
			return err.Error()
		}
		for _, kind := range []string{"hingeline-token", "hingeline-enter"} {
			if strings.Contains(string(text), kind) {
				return kind
			}
		}
		return string(text)
	}
	cookies := "Cookie: " + cookie + "=" + key + "\r\n"
	guest, oldest := knock(), knock()
	for name, c := range map[string]net.Conn{cookies: guest, "": oldest} {
		want := map[string]string{cookies: "hingeline-token", "": "hingeline-enter"}[name]
		if got := page(c, name); got != want {
			t.Fatalf("%q, wanted %q", got, want)
		}
	}
	var newest net.Conn
	for range mostStrangers {
		newest = knock()
		if got := page(newest, ""); got != "hingeline-enter" {
			t.Fatalf("a stranger is given %q", got)
		}
	}
	if got := page(oldest, ""); got == "hingeline-enter" {
		t.Errorf("the oldest of %d connections of strangers is still open", mostStrangers+1)
	}
	if got := page(guest, cookies); got != "hingeline-token" {
		t.Errorf("the device that was let in is given %q", got)
	}
	if got := page(knock(), cookies); got != "hingeline-token" {
		t.Errorf("a new connection of the device that was let in is given %q", got)
	}
	newest.Close()
	s.strangers.mu.Lock()
	defer s.strangers.mu.Unlock()
	if len(s.strangers.list) > mostStrangers {
		t.Errorf("%d connections of strangers, wanted at most %d", len(s.strangers.list), mostStrangers)
	}
}

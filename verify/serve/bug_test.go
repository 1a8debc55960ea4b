package serve

import (
	"context"
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/coder/websocket"
)

// brokenWalks are walks with a bug.
type brokenWalks struct{ unfinished bool }

func (b brokenWalks) Unfinished() int {
	if b.unfinished {
		panic("planted in Unfinished")
	}
	return 0
}
func (brokenWalks) Begin(context.Context) (*Walk, error) { panic("planted in Begin") }
func (brokenWalks) Resume(int) (*Walk, error)            { panic("planted in Resume") }

// TestBugsComeOut plants a panic in each goroutine of the server.
func TestBugsComeOut(t *testing.T) {
	caught := func(t *testing.T, r *running, planted string) {
		t.Helper()
		select {
		case bug := <-r.s.Bugs():
			if bug.What != planted || !strings.Contains(string(bug.Stack), "bug_test.go") {
				t.Errorf("%v at %s; wanted %q at where it was planted", bug.What, bug.Stack, planted)
			}
		case <-time.After(10 * time.Second):
			t.Errorf("%q never came out", planted)
		}
		r.s.Close() // holds no lock for ever
	}
	loud := func(r *running) *running {
		r.s.log.mu.Lock()
		defer r.s.log.mu.Unlock()
		r.s.log.write = func(string) { panic("planted in the log") }
		return r
	}
	t.Run("a request", func(t *testing.T) {
		r := loud(run(t, shipping(t, "pellin-park")))
		if answer, err := http.Get("http://" + r.host + "/nothing"); err == nil {
			answer.Body.Close()
			t.Errorf("status %d, wanted no answer", answer.StatusCode)
		}
		caught(t, r, "planted in the log")
	})
	t.Run("what a page sends", func(t *testing.T) {
		r := run(t, shipping(t, "pellin-park"))
		c := r.open()
		until(t, c, "checks")
		loud(r)
		send(t, c, "nonsense")
		caught(t, r, "planted in the log")
	})
	for _, one := range []struct {
		name, planted string
		walks         brokenWalks
	}{
		{"what a page is shown", "planted in Unfinished", brokenWalks{unfinished: true}},
		{"the bench", "planted in Begin", brokenWalks{}},
	} {
		t.Run(one.name, func(t *testing.T) {
			r := run(t, shipping(t, "pellin-park"))
			r.s.LeadThrough(one.walks)
			c, err := r.socket(benchSocketPath+r.s.token, map[string]string{"Origin": "http://" + r.host})
			if err != nil {
				t.Fatal(err)
			}
			if !one.walks.unfinished {
				until(t, c, "bench")
				send(t, c, `{"turn": 0, "do": "begin", "part": 0, "text": ""}`)
			}
			caught(t, r, one.planted)
		})
	}
}

// TestPageSaysThatItIsCheckedAgain holds the order: until what was checked comes, a page is
// told that it is on its way, also one that is opened meanwhile.
func TestPageSaysThatItIsCheckedAgain(t *testing.T) {
	now := shipping(t, "pellin-park")
	r := run(t, now)
	one := r.open()
	until(t, one, "checks")
	r.s.Checking()
	until(t, one, "checking")
	two := r.open()
	until(t, two, "checks")
	until(t, two, "checking")
	r.s.Show(now)
	for _, c := range []*websocket.Conn{one, two} {
		if got := until(t, c, "checks").revision; got != 2 {
			t.Errorf("revision %d, wanted 2", got)
		}
	}
	three := r.open()
	until(t, three, "checks")
	send(t, three, fmt.Sprintf(`{"number": 1, "revision": 2, "at": %s, "part": 0, "against": -1, "sentence": false}`, positions(now.Model, nil)))
	if got := next(t, three).kind; got != "answer" {
		t.Errorf("behind what was checked comes %q, wanted an answer", got)
	}
}

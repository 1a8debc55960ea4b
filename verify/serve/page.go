package serve

import (
	"context"
	"encoding/json"
	"errors"
	"net/http"
	"strings"
	"sync"
	"time"

	"github.com/coder/websocket"

	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/strictjson"
)

const (
	// slowest is how long a page may take to receive one answer.
	slowest = 10 * time.Second
	// mostRefused is how many messages that make no sense a page may send before it is
	// sent away.
	mostRefused = 20
)

// page is one open page.
type page struct {
	server *Server
	here   bool // on this machine, not on a device of the network
	bench  bool // it is the page of the bench
	socket *websocket.Conn
	woken  chan struct{} // holds one: there is something new

	mu     sync.Mutex
	newest *hand // not yet answered

	// What the page was sent last, so that only what changed is sent again.
	shown    int            // revision
	checking bool           // that the checks are made again
	door     int            // saying of the door
	stands   []result.Stand // by part: as it was drawn
	curve    *curve
	curveOf  string // what the curve was drawn for
}

// serveSocket answers a page for as long as it is open.
func (s *Server) serveSocket(w http.ResponseWriter, q *http.Request, here bool) {
	switch {
	case !s.known(q.URL.Path):
		s.refuse(w, http.StatusForbidden, "a socket with a wrong token")
		return
	case q.Header.Get("Origin") == "":
		s.refuse(w, http.StatusForbidden, "a socket that does not say which page it belongs to")
		return
	}
	if strings.HasPrefix(q.URL.Path, benchSocketPath) && s.bench == nil {
		s.refuse(w, http.StatusNotFound, "a bench where there is none")
		return
	}
	p := &page{server: s, here: here, bench: strings.HasPrefix(q.URL.Path, benchSocketPath), woken: make(chan struct{}, 1)}
	if !s.enter(p) {
		s.refuse(w, http.StatusServiceUnavailable, "a page beside %d others", mostPages)
		return
	}
	defer s.leave(p)
	socket, err := websocket.Accept(w, q, nil)
	if err != nil {
		s.log.add("a socket: %.200q", err)
		return
	}
	p.socket = socket
	defer socket.CloseNow()
	socket.SetReadLimit(mostMessage)
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	go func() {
		defer stop()
		defer s.Catch()
		p.read(ctx)
	}()
	p.wake()
	p.answer(ctx)
}

// wake tells the page's answerer that there is something new.
func (p *page) wake() {
	select {
	case p.woken <- struct{}{}:
	default:
	}
}

// read keeps the newest message, until the page is gone or has sent too much nonsense.
func (p *page) read(ctx context.Context) {
	refused := 0
	for {
		kind, text, err := p.socket.Read(ctx)
		if err != nil {
			if errors.Is(err, websocket.ErrMessageTooBig) {
				p.server.log.add("a message of more than %d bytes", mostMessage)
			}
			return
		}
		wrong := errors.New("it is not text")
		if kind == websocket.MessageText {
			wrong = p.hear(text)
		}
		if wrong != nil {
			p.server.log.add("a message: %.200q", wrong)
			if refused++; refused >= mostRefused {
				p.server.log.add("a page that sent %d messages which make no sense", refused)
				p.socket.Close(websocket.StatusPolicyViolation, "too many messages make no sense")
				return
			}
		}
	}
}

// hear takes a message: at the bench it is heard at once, else the newest is kept.
func (p *page) hear(text []byte) error {
	if p.bench {
		var s spoken
		if err := strictjson.Read(text, &s); err != nil {
			return err
		}
		return p.server.bench.hear(&s)
	}
	h, err := readHand(text)
	if err != nil {
		return err
	}
	p.mu.Lock()
	p.newest = &h
	p.mu.Unlock()
	p.wake()
	return nil
}

// take is the newest message, once.
func (p *page) take() *hand {
	p.mu.Lock()
	defer p.mu.Unlock()
	h := p.newest
	p.newest = nil
	return h
}

// answer sends what there is to show, and the answer to the newest message.
func (p *page) answer(ctx context.Context) {
	for {
		select {
		case <-ctx.Done():
			return
		case <-p.server.closed:
			p.socket.Close(websocket.StatusGoingAway, "the program ends")
			return
		case <-p.woken:
		}
		if !p.sendDoor(ctx) {
			return
		}
		subject, checking := p.server.current()
		if subject == nil {
			continue
		}
		if p.bench {
			if !p.send(ctx, p.server.bench.view(subject)) {
				return
			}
			continue
		}
		if subject.revision != p.shown {
			p.shown, p.checking, p.stands, p.curve = subject.revision, false, nil, nil
			if !p.send(ctx, subject.layout) || !p.send(ctx, subject.checks) {
				return
			}
		}
		if checking && !p.checking {
			p.checking = true
			if !p.send(ctx, checkingSaid{Kind: "checking"}) {
				return
			}
		}
		h := p.take()
		if h == nil || h.Revision != subject.revision {
			continue // of another model: the page sends again once it has the new one
		}
		at, err := subject.pose(h)
		if err != nil {
			p.server.log.add("a message: %.200q", err)
			continue
		}
		if !p.send(ctx, p.answerTo(subject, h, at)) {
			return
		}
	}
}

func (p *page) send(ctx context.Context, message any) bool {
	text, err := json.Marshal(message)
	if err != nil {
		p.server.log.add("an answer of our own: %.200q", err)
		return false
	}
	within, stop := context.WithTimeout(ctx, slowest)
	defer stop()
	return p.socket.Write(within, websocket.MessageText, text) == nil
}

// checkingSaid tells a page that a file changed and what it shows is of before.
type checkingSaid struct {
	Kind string `json:"kind"` // "checking"
}

// doorSaid is what a page says of other devices of the network.
type doorSaid struct {
	Kind      string   `json:"kind"` // "door"
	Here      bool     `json:"here"` // false on a device that was let in; it is told no code
	Addresses []string `json:"addresses"`
	Code      string   `json:"code"`
	Until     string   `json:"until"` // "15:04"
	Devices   int      `json:"devices"`
	Shut      bool     `json:"shut"`
}

// sendDoor tells a page of the door, if there is one and it was not told so already.
func (p *page) sendDoor(ctx context.Context) bool {
	if p.server.door == nil {
		return true
	}
	now, version := p.server.door.say()
	if version == p.door {
		return true
	}
	p.door = version
	said := doorSaid{Kind: "door", Here: p.here, Devices: now.Devices, Shut: now.Shut}
	if p.here {
		said.Addresses, said.Code, said.Until = now.Addresses, now.Code, now.Until.Format("15:04")
	}
	return p.send(ctx, said)
}

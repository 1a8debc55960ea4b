package serve

import (
	"crypto/rand"
	"fmt"
	"net/http"
	"sync"
	"time"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/result"
)

// Now is what there is to show.
type Now struct {
	Model    *airframes.Model // never nil; of a file that can no longer be used the last that could
	Report   *result.Report   // of the script's checks; nil where there was none
	Problems *result.Problems // what is wrong with the files; nil for nothing
	Since    string           // when it was read: "15:04:05"
	Old      bool             // the airframe file can no longer be used, and Model is as it was before
	Changed  []string         // the files whose change led to it; none the first time
}

// Server answers the pages of one model. It is an http.Handler.
type Server struct {
	hosts map[string]bool // the names that it goes by, with the port
	token string          // that a socket must know, new for each run
	log   *refusals
	door  *door  // nil where this machine alone is let in
	bench *table // nil where there is no page of the bench

	mu      sync.Mutex
	subject *subject
	pages   map[*page]bool
	closed  chan struct{}
}

// defaultPort is that of http, which browsers leave out.
const defaultPort = 80

// New is a server that listens on a port of this machine and shows nothing yet. log is
// called with a line for everything that is refused, from any goroutine.
func New(port int, log func(line string)) *Server {
	s := &Server{hosts: map[string]bool{}, token: rand.Text(), log: &refusals{write: log}, pages: map[*page]bool{}, closed: make(chan struct{})}
	for _, name := range []string{"127.0.0.1", "localhost", "[::1]"} {
		s.hosts[fmt.Sprintf("%s:%d", name, port)] = true
		if port == defaultPort {
			s.hosts[name] = true
		}
	}
	return s
}

// OpenTo lets devices of the network in, each once with a code, that ask by an address
// ("192.168.1.20:8020") of this machine. said is called with what is to be said out loud,
// now and whenever it changes, from any goroutine. It is called before the server is used.
func (s *Server) OpenTo(addresses []string, said func(Door)) {
	s.door = newDoor(addresses, time.Now, func() {
		now, _ := s.door.say()
		said(now)
		s.wake()
	})
	now, _ := s.door.say()
	said(now)
}

// wake tells every page that there is something new.
func (s *Server) wake() {
	s.mu.Lock()
	defer s.mu.Unlock()
	for p := range s.pages {
		p.wake()
	}
}

// LeadThrough adds the page of the bench, for the walks of somebody who knows where their
// records are. It is called before the server is used.
func (s *Server) LeadThrough(walks Walks) {
	s.bench = &table{walks: walks, log: s.log, wake: s.wake, clock: time.Now, look: shortestLook, sent: -1}
}

// Show tells every page what there is to show from now on.
func (s *Server) Show(now Now) {
	s.mu.Lock()
	revision := 1
	if s.subject != nil {
		revision = s.subject.revision + 1
	}
	next := newSubject(now, revision)
	next.since = now.Since
	if now.Old && s.subject != nil {
		next.since = s.subject.since
		next.checks.OldSince = next.since
	}
	s.subject = next
	s.mu.Unlock()
	if s.bench != nil {
		s.bench.held(resolved.Digest(resolved.SetUp(now.Model)))
	}
	s.wake()
}

// Close ends every open page. Those that are opened afterwards end at once.
func (s *Server) Close() {
	s.mu.Lock()
	select {
	case <-s.closed:
	default:
		close(s.closed)
	}
	s.mu.Unlock()
	if s.bench != nil {
		s.bench.close()
	}
}

func (s *Server) current() *subject {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.subject
}

// mostPages is how many pages may be open at once.
const mostPages = 32

// enter takes up a page, unless there are too many.
func (s *Server) enter(p *page) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.pages) >= mostPages {
		return false
	}
	s.pages[p] = true
	return true
}

func (s *Server) leave(p *page) {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.pages, p)
}

// refusals logs what was refused, and after a while only that there is more.
type refusals struct {
	write func(line string)
	mu    sync.Mutex
	lines int
}

// mostRefusals is how many lines are logged in one run: whoever knocks for hours fills no
// disk.
const mostRefusals = 500

func (r *refusals) add(format string, values ...any) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.lines++
	switch {
	case r.lines < mostRefusals:
		r.write("refused: " + fmt.Sprintf(format, values...))
	case r.lines == mostRefusals:
		r.write("refused more; no further line about it in this run")
	}
}

// refuse answers a request that is not let in.
func (s *Server) refuse(w http.ResponseWriter, status int, format string, values ...any) {
	s.log.add(format, values...)
	http.Error(w, "refused: "+http.StatusText(status), status)
}

package serve

import (
	"net/http"
	"runtime/debug"
)

// Bug is a panic in a goroutine of the server, where it can be no answer to anybody.
type Bug struct {
	What  any
	Stack []byte
}

// bugs holds the first bug until it is taken.
type bugs chan Bug

func (b bugs) keep(what any) {
	select {
	case b <- Bug{what, debug.Stack()}:
	default:
	}
}

// abort is deferred in what answers a request: no half an answer goes out.
func (b bugs) abort() {
	if what := recover(); what != nil {
		b.keep(what)
		panic(http.ErrAbortHandler)
	}
}

// Bugs gives the first panic of ours. Nothing that the pages show after it is to be
// trusted: who started the server is to say so and to end it.
func (s *Server) Bugs() <-chan Bug { return s.bugs }

// Catch is deferred in every goroutine that works for the server, so that a panic there
// comes out at [Server.Bugs].
func (s *Server) Catch() {
	if what := recover(); what != nil {
		s.bugs.keep(what)
	}
}

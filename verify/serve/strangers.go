package serve

import (
	"context"
	"net"
	"slices"
	"sync"
)

// mostStrangers is how many connections there may be at once of devices that were not let
// in. One more ends the oldest of them, so that whoever holds them all keeps nobody out.
const mostStrangers = 32

// strangers are the connections of the network over which nobody who was let in has asked
// for anything, the oldest first.
type strangers struct {
	mu   sync.Mutex
	list []*connection
}

// connection is one of the network.
type connection struct {
	net.Conn
	among *strangers
}

func (c *connection) Close() error {
	c.among.forget(c)
	return c.Conn.Close()
}

// take counts a connection as one of a stranger.
func (s *strangers) take(conn net.Conn) *connection {
	c := &connection{conn, s}
	s.mu.Lock()
	var oldest *connection
	if s.list = append(s.list, c); len(s.list) > mostStrangers {
		oldest = s.list[0]
	}
	s.mu.Unlock()
	if oldest != nil {
		oldest.Close()
	}
	return c
}

// forget counts a connection no more: it has ended, or is one of a device that was let in.
func (s *strangers) forget(c *connection) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if i := slices.Index(s.list, c); i >= 0 {
		s.list = slices.Delete(s.list, i, i+1)
	}
}

// outside is a listener whose connections are those of strangers at first.
type outside struct {
	net.Listener
	among *strangers
}

func (n *outside) Accept() (net.Conn, error) {
	conn, err := n.Listener.Accept()
	if err != nil {
		return nil, err
	}
	return n.among.take(conn), nil
}

// Network is a listener of the network, of which devices that were not let in hold a
// bounded number of connections. Its http.Server must have [Server.Connected] as
// ConnContext.
func (s *Server) Network(l net.Listener) net.Listener { return &outside{l, &s.strangers} }

type connectionKey struct{}

// Connected remembers the connection of a request.
func (s *Server) Connected(ctx context.Context, c net.Conn) context.Context {
	return context.WithValue(ctx, connectionKey{}, c)
}

// letIn is told that a device that was let in asks over the connection of a request.
func (s *strangers) letIn(ctx context.Context) {
	if c, ok := ctx.Value(connectionKey{}).(*connection); ok {
		s.forget(c)
	}
}

package main

import (
	"context"
	"net"
	"net/http"
	"strings"
	"testing"
)

// TestServeWhosePageCannotBeGivenOutSaysSo closes what it listens on under its hands, as
// a machine that runs out of something may: the command line was right, and so were the files.
func TestServeWhosePageCannotBeGivenOutSaysSo(t *testing.T) {
	var listeners []net.Listener
	for range 2 {
		l, err := net.Listen("tcp", "127.0.0.1:0")
		if err != nil {
			t.Fatal(err)
		}
		listeners = append(listeners, l)
	}
	web := &http.Server{}
	defer web.Close()
	listeners[1].Close()
	err := giveOut(t.Context(), web, nil, listeners)
	var said strings.Builder
	if got := (&session{stderr: &said}).report(err); got != statusNotGiven || !strings.HasPrefix(said.String(), "hingeline: the page cannot be given out any more: ") {
		t.Errorf("exit status %d, wanted %d: %s", got, statusNotGiven, said.String())
	}
	ctx, end := context.WithCancel(t.Context())
	end()
	if err := giveOut(ctx, web, nil, listeners[:1]); err != nil {
		t.Errorf("ended by its user it says %v", err)
	}
}

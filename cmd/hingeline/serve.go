package main

import (
	"context"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"os"
	"os/signal"
	"runtime/debug"
	"sync"
	"syscall"
	"time"

	"github.com/spf13/cobra"

	"example.com/hingeline/airframes"
	"example.com/hingeline/airframes/diag"
	"example.com/hingeline/verify"
	"example.com/hingeline/verify/script"
	"example.com/hingeline/verify/serve"
)

func (s *session) serveCommand() *cobra.Command {
	var port int
	var lan bool
	c := &cobra.Command{
		Use:   "serve AIRFRAME [SCRIPT...]",
		Short: "a page on this machine where you move the controls and see the surfaces move",
		Long: `Serve gives out a page, on this machine only, on which the sticks, levers, switches
and trims of the model are moved with mouse, touch or keyboard, and the model moves
with them: from behind, from above and at every hinge, with degrees, millimetres,
channel percent and pulse, the limits that bite, and why. The script's checks stand
beside it and are made again whenever a file changes. Open the address that it prints
in a browser; Ctrl-C ends it. It moves pictures and nothing else: no radio and no
servo is told anything.

A second page leads through the walk-around of bench, one step at a time, and keeps
the record that bench keeps: either goes on where the other stopped. To hold it on a
phone beside the model, --lan lets devices of the private network in, each by a code
that is said here and on the page here. The line to them is not encrypted.

The script is found as check finds it; without one there are no checks. A built-in
model goes by its name: serve bracken-20.`,
		Example: `  hingeline serve bracken-20
  hingeline serve my-model.yaml --port 8020
  hingeline serve my-model.yaml --lan`,
		ValidArgsFunction: completing(1),
		RunE:              func(c *cobra.Command, args []string) error { return s.serve(c, args, port, lan) },
	}
	c.Flags().IntVar(&port, "port", 0, "the `PORT` to listen on, 1 to 65535; 0 is one that is free")
	c.Flags().BoolVar(&lan, "lan", false, "let devices of the private network in too, each with a code that is said here; the line to them is not encrypted")
	return c
}

const (
	headTime  = 5 * time.Second  // for the head of a request
	bodyTime  = 15 * time.Second // for all of a request
	idleTime  = time.Minute
	mostHead  = 16 << 10 // bytes of a request's head
	heapGrows = 100      // percent that the heap may grow before rubbish is collected: this runs for hours
)

func (s *session) serve(c *cobra.Command, args []string, port int, lan bool) error {
	switch {
	case len(args) == 0:
		return withoutAirframe(c)
	case port < 0 || port > 65535:
		return &usageError{message: fmt.Sprintf("--port is %d, wanted 1 to 65535, or 0 for one that is free", port), usage: usageOf(c)}
	}
	for _, a := range args {
		if a == "-" {
			return &usageError{message: `serve looks at files for changes, so it cannot read "-"`, usage: usageOf(c)}
		}
	}
	s.follows = true
	first := s.gather(args[0], args[1:])
	if first.model == nil {
		return &inputError{first.problems, first.sources}
	}
	w, err := newWatcher()
	if err != nil {
		return &outputError{fmt.Errorf("files cannot be watched here: %w", err)}
	}
	defer w.close()
	listener, err := listenHere(port)
	if err != nil {
		return &usageError{message: "cannot listen: " + err.Error(), hint: "choose another --port, or leave it out for one that is free"}
	}
	defer listener.Close()
	var others []net.Listener // of the network
	var addresses []string
	if lan {
		if others, err = listenPrivately(listener.Addr().(*net.TCPAddr).Port); err != nil {
			return err
		}
		for _, l := range others {
			defer l.Close()
			addresses = append(addresses, l.Addr().String())
		}
	}
	debug.SetGCPercent(heapGrows)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	var one sync.Mutex
	said := func(line string) {
		one.Lock()
		defer one.Unlock()
		fmt.Fprintln(s.stderr, time.Now().Format("15:04:05"), line)
	}
	server := serve.New(listener.Addr().(*net.TCPAddr).Port, said)
	server.LeadThrough(&benchWalks{s, args})
	s.showOn(server, first, first.model, nil)
	if lan {
		fmt.Fprint(s.stderr, lanWarning)
		server.OpenTo(addresses, func(d serve.Door) { said(doorWords(d)) })
	}
	web := &http.Server{Handler: server, ConnContext: server.Connected, ReadHeaderTimeout: headTime, ReadTimeout: bodyTime, IdleTimeout: idleTime, MaxHeaderBytes: mostHead, ErrorLog: log.New(io.Discard, "", 0)}
	defer web.Close()
	defer server.Close()
	if _, err := fmt.Fprintf(s.results(), "http://%s/\n", listener.Addr()); err != nil {
		return written(err)
	}
	fmt.Fprintln(s.stderr, "open this address in a browser on this machine; Ctrl-C ends it\nit moves pictures only: no radio and no servo is told anything")
	listeners := []net.Listener{listener}
	for _, l := range others {
		listeners = append(listeners, server.Network(l))
	}
	go func() {
		defer server.Catch()
		s.follow(ctx, server, w, args, first)
	}()
	return giveOut(ctx, web, server.Bugs(), listeners)
}

// giveOut gives the page out until the context ends, or one of the listeners by itself. A
// bug comes out of it as a panic.
func giveOut(ctx context.Context, web *http.Server, bugs <-chan serve.Bug, listeners []net.Listener) error {
	ended := make(chan error, len(listeners))
	for _, l := range listeners {
		go func() { ended <- web.Serve(l) }()
	}
	select {
	case bug := <-bugs:
		panic(bug)
	case <-ctx.Done():
		return nil
	case err := <-ended:
		return &outputError{fmt.Errorf("the page cannot be given out any more: %w", err)}
	}
}

// listenHere listens on this machine alone: at 127.0.0.1, or where there is no such thing
// at ::1. A port that is taken there is never shared by way of the other: both would be
// localhost.
func listenHere(port int) (net.Listener, error) {
	listener, err := net.Listen("tcp4", fmt.Sprintf("127.0.0.1:%d", port))
	if err == nil {
		return listener, nil
	}
	if other, wrong := net.Listen("tcp4", "127.0.0.1:0"); wrong == nil {
		other.Close()
		return nil, err
	}
	if six, errSix := net.Listen("tcp6", fmt.Sprintf("[::1]:%d", port)); errSix == nil {
		return six, nil
	}
	return nil, err
}

// follow shows the files again whenever they change.
func (s *session) follow(ctx context.Context, server *serve.Server, w *watcher, args []string, in *inputs) {
	last := in.model
	for {
		w.follow(in.disk)
		changed := w.changed(ctx, nil)
		if changed == nil {
			return
		}
		server.Checking()
		in = s.gather(args[0], args[1:])
		if in.model != nil {
			last = in.model
		}
		s.showOn(server, in, last, changed)
	}
}

// showOn checks what was read and shows it.
func (s *session) showOn(server *serve.Server, in *inputs, model *airframes.Model, changed []string) {
	now := serve.Now{Model: model, Since: time.Now().Format("15:04:05"), Changed: changed, Old: in.model == nil}
	problems := in.problems
	if in.model != nil && !diag.HasErrors(problems) {
		report, wrong := verify.Check(in.model, in.scripts, script.Selection{})
		problems = append(problems, wrong...)
		now.Report = report
	}
	if len(problems) > 0 {
		diag.Sort(problems)
		now.Problems = verify.Problems(problems, in.sources...)
	}
	server.Show(now)
}

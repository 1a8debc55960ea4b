package serve

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"sync"
	"testing"
	"time"

	"github.com/coder/websocket"

	"example.com/hingeline/airframes"
	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/result"
)

// memory is records that are kept in memory, for tests.
type memory struct {
	m    *airframes.Model
	mu   sync.Mutex
	text []byte
	full bool // nothing more can be kept
}

func (k *memory) Append(line []byte) error {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.full {
		return errors.New("no room on this disk")
	}
	k.text = append(k.text, line...)
	return nil
}

func (k *memory) record() *bench.Record {
	k.mu.Lock()
	defer k.mu.Unlock()
	r, err := bench.Read(bytes.Clone(k.text))
	if err != nil {
		return nil
	}
	return r
}

func (k *memory) Unfinished() int {
	if r := k.record(); r != nil && r.Events[len(r.Events)-1].Kind != bench.End {
		return 1
	}
	return 0
}

func now() string { return "2026-11-25T20:00:00Z" }

func (k *memory) Begin(ctx context.Context) (*Walk, error) {
	chosen := bench.Shortest(ctx, k.m, sight.Eye, func(string) {})
	w := bench.NewWalk(k.m, chosen, sight.Eye)
	k.text = nil
	if err := bench.NewHeader("test", now(), w, nil, chosen.How).Begin(k); err != nil {
		return nil, err
	}
	return k.walk(w, bench.NewGuide(w, k, now)), nil
}

func (k *memory) Resume(int) (*Walk, error) {
	r := k.record()
	w, err := r.Header.Walk()
	if err != nil {
		return nil, err
	}
	g := bench.NewGuide(w, k, now)
	if err := errors.Join(g.Replay(r.Events), g.Resume()); err != nil {
		return nil, err
	}
	return k.walk(w, g), nil
}

func (k *memory) walk(w *bench.Walk, g *bench.Guide) *Walk {
	return &Walk{
		Steps: w, Guide: g, How: "test", Record: func() string { return "test.bench/0001.jsonl" }, Close: func() error { return nil },
		Report: func(ctx context.Context) (*result.Bench, string) {
			r := g.Report(ctx, nil)
			text := string(r.Verdict)
			if r.Causes != nil {
				for _, s := range r.Causes.Suspects {
					text += "\n" + s.Text
				}
			}
			return r, text
		},
	}
}

// atBench is a server with a page of the bench.
func atBench(t *testing.T, name string) (*running, *memory) {
	t.Helper()
	shown := shipping(t, name)
	k := &memory{m: shown.Model}
	r := run(t, shown)
	r.s.LeadThrough(k)
	r.s.bench.clock = slow()
	r.s.Show(shown)
	return r, k
}

// slow is a clock that always says that long enough was looked.
func slow() func() time.Time {
	at := time.Time{}
	return func() time.Time {
		at = at.Add(bench.ShortestLook)
		return at
	}
}

// benchHand is a page of the bench in a test.
type benchHand struct {
	t *testing.T
	c *websocket.Conn
	v benchView
}

func (r *running) openBench(t *testing.T) *benchHand {
	t.Helper()
	c, err := r.socket(benchSocketPath+r.s.token, map[string]string{"Origin": "http://" + r.host})
	if err != nil {
		t.Fatal(err)
	}
	h := &benchHand{t: t, c: c}
	h.v = until(t, c, "bench").bench
	return h
}

// does says something and waits until there is something to say again.
func (h *benchHand) does(what string, part int, text string) *benchView {
	h.t.Helper()
	turn := h.v.Turn
	send(h.t, h.c, fmt.Sprintf(`{"turn":%d,"do":%q,"part":%d,"text":%q}`, turn, what, part, text))
	for h.v.Turn <= turn || h.v.Phase == "working" {
		h.v = until(h.t, h.c, "bench").bench
	}
	return &h.v
}

// expected says that a step is as expected, and once more where that is asked.
func (h *benchHand) expected() *benchView {
	h.t.Helper()
	if v := h.does("all", 0, ""); v.Phase != "again" {
		return v
	}
	return h.does("seen", 0, "")
}

func (h *benchHand) begins() {
	h.t.Helper()
	h.does("begin", 0, "")
	for range bench.Questions {
		if h.v.Phase != "question" {
			h.t.Fatalf("%+v, wanted a question", h.v)
		}
		h.does("yes", 0, "")
	}
}

// kinds are the events of a record, without when they were.
func events(r *bench.Record) (list []string) {
	for _, e := range r.Events {
		list = append(list, fmt.Sprintf("%s %d %s %s %s %v", e.Kind, e.Step, e.What, e.Part, e.Saw, e.Degrees != nil))
	}
	return list
}

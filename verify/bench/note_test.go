package bench

import (
	"context"
	"errors"
	"reflect"
	"slices"
	"testing"

	"example.com/hingeline/verify/faults/sight"
	"example.com/hingeline/verify/strictjson"
	"example.com/hingeline/verify/verifytest"
)

// fullable is a journal that keeps nothing while it is full.
type fullable struct {
	lines [][]byte
	full  bool
}

var errFull = errors.New("the disk is full")

func (f *fullable) Append(line []byte) error {
	if f.full {
		return errFull
	}
	f.lines = append(f.lines, slices.Clone(line))
	return nil
}

func newGuide(t *testing.T) (*Guide, *fullable) {
	t.Helper()
	m := verifytest.Shipped(t, "pellin-park")
	journal := &fullable{}
	w := NewWalk(m, Shortest(context.Background(), m, sight.Eye, nil), sight.Eye)
	return NewGuide(w, journal, func() string { return "2026-11-25T12:00:00Z" }), journal
}

// What could not be kept was not said: nothing of it is left in the guide. What is kept
// afterwards is what a record is gone on with.
func TestAnswerThatCannotBeKeptChangesNothing(t *testing.T) {
	g, journal := newGuide(t)
	could := 0
	lines := []string{"y", "y", "y", "1 left", "undo", "1 left", "b", "y", "s no time", "b", "1 still", "y"}
	for len(lines) > 0 {
		was, steps := g.state.clone(), len(g.walk.Steps)
		journal.full = true
		if _, err := g.Take(lines[0]); err != nil {
			could++
			if !errors.Is(err, errFull) || !reflect.DeepEqual(g.state, was) || len(g.walk.Steps) != steps {
				t.Errorf("%q could not be kept (%v), and of it is left %+v, wanted %+v", lines[0], err, g.state, was)
			}
		}
		journal.full = false
		if r, err := g.Take(lines[0]); err != nil || !r.Understood {
			t.Fatalf("%q: %+v, %v", lines[0], r, err)
		}
		if lines = lines[1:]; len(lines) > 0 {
			continue
		}
		switch { // on to the end, a step that decides among them
		case g.at < len(g.steps):
			lines = []string{"y"}
		case g.decides().step != nil:
			lines = []string{"y", "1 still", "y"}
		case !g.Over():
			lines = []string{"f"}
		}
	}
	if could < len(journal.lines) {
		t.Errorf("%d lines were kept, and only %d could not be", len(journal.lines), could)
	}
	if !slices.ContainsFunc(eventsOf(t, journal.lines), func(e Event) bool { return e.Kind == Further }) {
		t.Error("no step decided")
	}
	again, _ := newGuide(t)
	if err := again.Replay(eventsOf(t, journal.lines)); err != nil || !reflect.DeepEqual(again.state, g.state) {
		t.Errorf("gone on with: %v, %+v, wanted %+v", err, again.state, g.state)
	}
}

func eventsOf(t *testing.T, lines [][]byte) []Event {
	t.Helper()
	events := make([]Event, len(lines))
	for i, line := range lines {
		if err := strictjson.Read(line, &events[i]); err != nil {
			t.Fatal(err)
		}
	}
	return events
}

// An event that nobody could go on with behind is a bug, and is not written: the record
// without it is still of use.
func TestEventThatCannotBeIsNotWritten(t *testing.T) {
	g, journal := newGuide(t)
	defer func() {
		if recover() == nil || len(journal.lines) > 0 {
			t.Errorf("written: %s", journal.lines)
		}
	}()
	g.note(Event{Kind: End})
}

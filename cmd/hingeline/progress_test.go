package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

// ticking is a clock that a test sets.
type ticking struct{ at time.Time }

func (c *ticking) now() time.Time { return c.at }

func (c *ticking) pass(d time.Duration) { c.at = c.at.Add(d) }

func TestProgressIsOneLineThatIsTakenAway(t *testing.T) {
	t.Setenv("LC_ALL", "C.UTF-8")
	var out bytes.Buffer
	clock := &ticking{at: time.Unix(0, 0)}
	p := newProgressLine(&out, 60, clock.now)
	p.show(2, 38, "too soon", 10)
	p.erase()
	if out.Len() > 0 {
		t.Errorf("a search that is over at once says %q", out.String())
	}
	clock.pass(progressAfter)
	p.show(13, 38, "the flaps mirror each other", 120000)
	// the claim is cut so that the whole takes less than the width
	if want := "proving 14 of 38: the flaps mirror each oth…, 120,000 boxes"; out.String() != want {
		t.Errorf("got %q, wanted %q", out.String(), want)
	}
	before := out.Len()
	p.show(13, 38, "the flaps mirror each other", 130000)
	if out.Len() != before {
		t.Error("it is written again at once")
	}
	p.erase()
	if want := "\r" + strings.Repeat(" ", 59) + "\r"; !strings.HasSuffix(out.String(), want) {
		t.Errorf("%q does not end in an empty line", out.String())
	}
	before = out.Len()
	p.erase()
	if out.Len() != before {
		t.Error("it is erased twice")
	}
}

// On a narrow terminal the claim is cut, and never the numbers; no line is as
// wide as the terminal, for some then go on to the next.
func TestProgressFitsTheTerminal(t *testing.T) {
	t.Setenv("LC_ALL", "C.UTF-8")
	for _, columns := range []int{0, 20, 30, 40, 80} {
		var out bytes.Buffer
		clock := &ticking{at: time.Unix(0, 0)}
		p := newProgressLine(&out, columns, clock.now)
		clock.pass(progressAfter)
		p.show(13, 38, "the starboard aileron never\ndrops as the roll stick moves right, whatever else moves", 120000)
		line := out.String()
		limit := columns
		if columns == 0 {
			limit = 80
		}
		if n := len([]rune(line)); n >= limit {
			t.Errorf("%d columns: %q has %d", columns, line, n)
		}
		if strings.ContainsAny(line, "\n\r") {
			t.Errorf("%d columns: %q is more than a line", columns, line)
		}
		if limit >= 40 && !strings.HasSuffix(line, "…, 120,000 boxes") {
			t.Errorf("%d columns: %q lacks the boxes", columns, line)
		}
	}
}

func TestNoProgressWithoutATerminal(t *testing.T) {
	s := &session{stderr: &bytes.Buffer{}}
	if s.progress() != nil {
		t.Error("a line of progress into a pipe")
	}
	s.progress().erase()
}

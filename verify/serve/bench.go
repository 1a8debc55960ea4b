package serve

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"time"

	"example.com/hingeline/verify/bench"
	"example.com/hingeline/verify/resolved"
	"example.com/hingeline/verify/result"
	"example.com/hingeline/verify/sheet"
)

// Walks are the walk-arounds with the model in hand that the bench page can lead through:
// who starts the server knows where their records are.
type Walks interface {
	// Unfinished is the number of the record that can be gone on with; 0 for none.
	Unfinished() int
	// Begin chooses the steps of a new walk; nothing is written before its first answer.
	// The error is said to whoever asked.
	Begin(context.Context) (*Walk, error)
	// Resume goes on with a record.
	Resume(number int) (*Walk, error)
}

// Walk is one walk that is under way.
type Walk struct {
	Steps  *bench.Walk
	Guide  *bench.Guide
	How    string        // the steps were chosen, in words
	Record func() string // the file that holds every answer; empty before the first
	// Report is what it has come to, and all of it as plain text.
	Report func(ctx context.Context) (*result.Bench, string)
	Close  func() error
}

// table is where the model lies: one walk at a time, whichever page is held beside it.
type table struct {
	walks Walks
	log   *refusals
	catch func()          // is deferred in every goroutine
	wake  func()          // every page is told that there is something new
	ctx   context.Context // is done at the end of the server
	end   context.CancelFunc
	clock func() time.Time
	look  time.Duration // how long a question stands there before it can be answered

	mu      sync.Mutex
	turn    int // counts up with all that happens, so that what was said to an older question is no answer to the next
	walk    *Walk
	shape   result.Shape // of the walk's model
	setUp   string       // digest of the set-up that the walk is of
	now     string       // digest of the set-up as it is written now
	working string       // what is under way: nothing can be said meanwhile
	said    string       // what came of what was said last
	amiss   bool         // it was not taken
	report  string       // of a walk that is over
	outcome *outcome     // of a walk that is over
	again   bool         // a step was said to be as expected, which is to be said once more
	sent    int          // the turn that was sent last; -1 before the first
	since   time.Time    // when it was sent first
}

func newTable(walks Walks, s *Server) *table {
	ctx, end := context.WithCancel(context.Background())
	return &table{walks: walks, log: s.log, wake: s.wake, catch: s.Catch, ctx: ctx, end: end, clock: time.Now, look: bench.ShortestLook, sent: -1}
}

// held is told what the set-up is now.
func (b *table) held(setUp string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.now = setUp
}

// close is the end of the server: the record of a walk stays as it is.
func (b *table) close() {
	b.end()
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.walk != nil {
		b.leave()
	}
}

// spoken is what a page says.
type spoken struct {
	Turn int    `json:"turn"`
	Do   string `json:"do"`
	Part int    `json:"part"` // by number from 1
	Text string `json:"text"`
}

// longestSpoken is how many bytes a text in it may have: more than any reason.
const longestSpoken = 1000

// hear takes what a page says. The error is for what no page of ours says.
func (b *table) hear(s *spoken) error {
	if len(s.Text) > longestSpoken || s.Part < 0 {
		return fmt.Errorf("%q with %d bytes about part %d", s.Do, len(s.Text), s.Part)
	}
	if !deeds[s.Do] {
		return fmt.Errorf("%.40q is nothing to do at the bench", s.Do)
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	defer b.wake()
	if s.Turn != b.turn || b.working != "" {
		return nil // another page, or a second tap, was first: this page is told where it stands
	}
	early := answers[s.Do] && !b.lookedAt()
	b.turn++
	b.said, b.amiss = "", false
	switch {
	case early && b.walk != nil: // and it must be looked at from now on: a burst of taps is no answer
		b.said, b.amiss = tooSoon, true
	case b.walk == nil:
		b.open(s)
	case s.Do == "leave":
		b.leave()
	case b.walk.Guide.Over(): // its report stays until the walk is put away
	case b.setUp != b.now:
		b.said, b.amiss = "Not taken: the airframe file is no longer what this walk is of.", true
	default:
		b.take(s)
	}
	return nil
}

var deeds = map[string]bool{
	"begin": true, "resume": true, "yes": true, "no": true, "all": true, "seen": true, "say": true, "measure": true,
	"back": true, "skip": true, "pause": true, "finish": true, "leave": true,
}

// open begins a walk, or goes on with one, beside whatever else is done.
func (b *table) open(s *spoken) {
	var open func() (*Walk, error)
	switch s.Do {
	case "begin":
		b.working = "Choosing the steps of the walk-around …"
		open = func() (*Walk, error) { return b.walks.Begin(b.ctx) }
	case "resume":
		b.working = "Reading the record …"
		number := b.walks.Unfinished()
		open = func() (*Walk, error) { return b.walks.Resume(number) }
	default:
		return
	}
	go func() {
		defer b.catch()
		walk, err := open()
		b.mu.Lock()
		defer b.mu.Unlock()
		defer b.wake()
		b.turn++
		b.working = ""
		if err != nil {
			b.said, b.amiss = err.Error(), true
			return
		}
		b.walk, b.shape = walk, sheet.Shape(walk.Steps.Model)
		if b.ctx.Err() != nil {
			b.leave()
			return
		}
		b.setUp = resolved.Digest(resolved.SetUp(walk.Steps.Model))
	}()
}

// leave puts the walk away; its record stays as it is.
func (b *table) leave() {
	if err := b.walk.Close(); err != nil {
		b.said, b.amiss = "The record could not be closed: "+err.Error(), true
	}
	b.walk, b.report, b.outcome, b.again = nil, "", nil, false
}

// take gives the walk an answer.
func (b *table) take(s *spoken) {
	reply, err := b.answer(s)
	b.said, b.amiss = reply.Text, !reply.Understood && reply.Text != ""
	if err != nil {
		b.leave()
		b.said, b.amiss = "THE LAST ANSWER WAS NOT KEPT: "+err.Error(), true
		b.log.add("at the bench: the last answer was not kept: %.200q", err)
		return
	}
	switch {
	case b.walk.Guide.Ended():
		b.working = "Looking for what explains what was seen …"
		walk := b.walk
		go func() {
			defer b.catch()
			report, text := walk.Report(b.ctx)
			b.mu.Lock()
			defer b.mu.Unlock()
			defer b.wake()
			b.turn++
			b.report, b.outcome, b.working = text, outcomeOf(report), ""
		}()
	case b.walk.Guide.Over():
		safe := b.walk.Guide.Leave()
		b.leave()
		if b.said == "" || s.Do == "pause" {
			b.said = strings.TrimSpace("Paused. Every answer so far is kept. " + safe)
		}
	}
}

// answer is what a page said as the walk takes it.
func (b *table) answer(s *spoken) (bench.Reply, error) {
	g := b.walk.Guide
	at := g.Present()
	text := strings.Join(strings.Fields(s.Text), " ")
	again := b.again
	b.again = false
	switch {
	case again && s.Do == "back":
		return bench.Reply{}, nil
	case s.Do == "pause":
		return g.Take("pause")
	case at.Question != nil && (s.Do == "yes" || s.Do == "no"):
		return g.Take(s.Do)
	case s.Do == "back":
		return g.Take("back")
	case at.Last && s.Do == "finish":
		return g.Take("finish")
	case at.Step == nil:
		return bench.Reply{}, nil
	case s.Do == "all" && len(bench.OnceMore(at.Step)) > 0:
		b.again = true
		return bench.Reply{}, nil
	case s.Do == "all" || again && s.Do == "seen":
		return g.Take("all")
	case s.Do == "say":
		return g.Say(s.Part, bench.Saw(s.Text))
	case s.Do == "measure" && text != "":
		return g.Take(fmt.Sprintf("#%d %s", s.Part, text))
	case s.Do == "skip" && text == "":
		return bench.Reply{Text: "A step is skipped for a reason: write it down."}, nil
	case s.Do == "skip":
		return g.Take("skip " + text)
	}
	return bench.Reply{}, nil
}

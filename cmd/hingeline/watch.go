package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"github.com/fsnotify/fsnotify"

	"example.com/hingeline/verify/result"
)

const (
	// settleTime is how long the files must lie still before they are read
	// again: editors write in several steps.
	settleTime = 80 * time.Millisecond
	// vanishedTries is how many times settleTime a file that was there may be
	// gone before that counts: editors put a new file in the place of the old.
	vanishedTries = 10
	// lookAgain is how often files are looked at though nothing was heard of them.
	lookAgain = 500 * time.Millisecond
)

// watch checks, and checks again whenever a file changes, until q, Ctrl-C or
// the end of the input. The exit status is that of the last check.
func (s *session) watch(check func() ([]diskFile, error)) error {
	w, err := newWatcher()
	if err != nil {
		return &outputError{fmt.Errorf("files cannot be watched here: %w", err)}
	}
	defer w.close()
	s.follows = true
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	keys, restore := s.keys()
	defer restore()
	var changed []string
	var last result.Verdict // the last answer there was
	for first := true; ; first = false {
		s.clear()
		s.status = statusYes
		files, err := check()
		if err != nil {
			s.status = s.report(err)
		}
		how := "checked"
		if !first {
			how = "checked again"
		}
		how += time.Now().Format(" 15:04:05")
		if !first {
			how += " after " + strings.Join(changed, ", ") + " changed"
		}
		fmt.Fprintf(s.stderr, "%s: %s\nwatching for changes; q quits\n", how, outcome(last, s.verdict))
		if s.verdict != "" {
			last = s.verdict
		}
		w.follow(files)
		if changed = w.changed(ctx, keys); changed == nil {
			return nil
		}
	}
}

// outcome is the answer of a check in two words, beside the last answer before;
// an empty verdict is none.
func outcome(before, now result.Verdict) string {
	passed := func(v result.Verdict) bool { return v == result.Passed || v == result.PassedInPart }
	switch {
	case now == "":
		return "nothing was checked, a file cannot be used"
	case now == result.NothingChecked:
		return "nothing was checked"
	case passed(now) && before != "" && !passed(before):
		return "now " + string(now)
	case passed(now):
		return string(now)
	case before == result.Failed:
		return "still failing"
	case passed(before):
		return "now failing"
	}
	return "failing"
}

// clear empties the screen, if there is one.
func (s *session) clear() {
	if s.onScreen {
		fmt.Fprint(s.results(), "\x1b[H\x1b[2J")
	}
}

// watcher waits for changes of files. It watches their directories, since an
// editor may put a new file in the place of the old one.
type watcher struct {
	events *fsnotify.Watcher
	files  []diskFile
	dirs   map[string]bool // watched now
}

func newWatcher() (*watcher, error) {
	events, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	return &watcher{events: events, dirs: map[string]bool{}}, nil
}

func (w *watcher) close() { w.events.Close() }

// follow sets the files to wait for.
func (w *watcher) follow(files []diskFile) {
	w.files = files
	w.watchDirs()
}

// watchDirs watches every directory that holds one of the files, or the file
// that a link there leads to.
func (w *watcher) watchDirs() {
	wanted := map[string]bool{}
	for _, f := range w.files {
		wanted[filepath.Dir(f.name)] = true
		if target, err := filepath.EvalSymlinks(f.name); err == nil {
			wanted[filepath.Dir(target)] = true
		}
	}
	for dir := range w.dirs {
		if !wanted[dir] {
			w.events.Remove(dir)
			delete(w.dirs, dir)
		}
	}
	for dir := range wanted {
		if err := w.events.Add(dir); err != nil {
			delete(w.dirs, dir)
		} else {
			w.dirs[dir] = true
		}
	}
}

// changed waits until files are no longer as they were read and have come to
// rest, and names them; nil if it is time to quit.
func (w *watcher) changed(ctx context.Context, keys <-chan key) []string {
	settled := time.NewTimer(settleTime) // a change may have come before follow
	defer settled.Stop()
	again := time.NewTicker(lookAgain)
	defer again.Stop()
	tries := 0
	for {
		select {
		case <-ctx.Done():
			return nil
		case <-keys:
			return nil
		case _, open := <-w.events.Events:
			if !open {
				return nil
			}
			settled.Reset(settleTime)
		case <-w.events.Errors:
			settled.Reset(settleTime) // events were lost: look for ourselves
		case <-again.C:
			w.watchDirs() // of a directory that was moved and put back no word comes
			settled.Reset(settleTime)
		case <-settled.C:
			switch names := stale(w.files); {
			case names == nil:
			case w.vanished() && tries < vanishedTries:
				tries++
				settled.Reset(settleTime)
			default:
				return names
			}
		}
	}
}

// vanished is true if a file that was read is gone.
func (w *watcher) vanished() bool {
	for _, f := range w.files {
		if f.stamp.exists && !stampOf(f.name).stamp.exists {
			return true
		}
	}
	return false
}

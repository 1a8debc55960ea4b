package main

import (
	"bufio"
	"bytes"
	"io"
	"net/http"
	"strings"
	"sync"
	"testing"
)

// planting is where messages go; one that has certain words in it is a bug.
type planting struct {
	words string
	mu    sync.Mutex
	text  strings.Builder
}

func (p *planting) Write(text []byte) (int, error) {
	if bytes.Contains(text, []byte(p.words)) {
		panic("planted")
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.text.Write(text)
}

// TestServeEndsWithWordsAtABugOfAPage plants a bug where a request is answered, which the
// library that answers would keep to itself.
func TestServeEndsWithWordsAtABugOfAPage(t *testing.T) {
	t.Setenv(debugVariable, "1")
	out, to := io.Pipe()
	said := &planting{words: "refused:"}
	status := make(chan int)
	go func() { status <- run([]string{"serve", "pellin-park"}, strings.NewReader(""), to, said) }()
	lines := bufio.NewScanner(out)
	if !lines.Scan() {
		t.Fatal("no address is printed")
	}
	if answer, err := http.Get(lines.Text() + "nothing"); err == nil {
		answer.Body.Close()
		t.Errorf("status %d, wanted no answer", answer.StatusCode)
	}
	if got := <-status; got != statusOurBug {
		t.Errorf("exit status %d, wanted %d", got, statusOurBug)
	}
	text := said.text.String()
	for _, want := range []string{"this is a bug in Hingeline, not in your files: planted", "servebug_test.go"} {
		if !strings.Contains(text, want) {
			t.Errorf("stderr %q lacks %q", text, want)
		}
	}
}

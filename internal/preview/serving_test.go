package preview

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// lanterns is a small layout with bands, floats and two borders.
const lanterns = `title   "Harbour lanterns"
strip   4
fabric  cream  #f4ead7  "cream crackle"
fabric  navy   #1f3350
fabric  rust   #b5532a
fabric  teal   #2f7d83

strip-set  shore  rust 1 3/4  cream 1 1/2  teal 1 3/4
webs       shore / reversed shore

block  W  web       kites navy
block  F  floating  background cream

grid
  F F F F
  F W W F
  F W W F
  F F F F

border  1 1/2  rust
border  4      cream
`

// running is a preview that a test has started on a file of its own.
type running struct {
	t       testing.TB
	file    string
	address string
	shows   chan shown
	end     func() error // ends the preview and gives what Run said
	output  *lockedBuffer
}

// shown is one publication.
type shown struct {
	*snapshot
	timings
}

type lockedBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (l *lockedBuffer) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(p)
}

func (l *lockedBuffer) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.String()
}

// start follows a new file with the given text.
func start(t testing.TB, text string, o Options) *running {
	t.Helper()
	file := filepath.Join(t.TempDir(), "quilt.quilt")
	put(t, file, text)
	return startOn(t, file, o)
}

// startOn follows a file that is there, or not there yet.
func startOn(t testing.TB, file string, o Options) *running {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	r := &running{t: t, file: file, shows: make(chan shown, 10_000), output: &lockedBuffer{}}
	addresses := make(chan string, 1)
	o.NoOpen, o.Output = true, r.output
	o.opened = func(a string) { addresses <- a }
	o.published = func(s *snapshot, times timings) { r.shows <- shown{s, times} }
	result := make(chan error, 1)
	go func() { result <- Run(ctx, file, o) }()
	once := sync.OnceValue(func() error {
		cancel()
		select {
		case err := <-result:
			return err
		case <-time.After(time.Minute):
			t.Error("the preview did not end within a minute")
			return nil
		}
	})
	r.end = once
	t.Cleanup(func() { _ = once() })
	select {
	case r.address = <-addresses:
	case err := <-result:
		result <- err
		t.Fatalf("the preview did not begin: %v", err)
	case <-time.After(time.Minute):
		t.Fatal("the preview did not begin within a minute")
	}
	return r
}

// next is the next publication.
func (r *running) next() shown {
	r.t.Helper()
	select {
	case s := <-r.shows:
		return s
	case <-time.After(time.Minute):
		r.t.Fatal("nothing was shown for a minute")
		return shown{}
	}
}

// nothing makes sure that nothing is published for a while.
func (r *running) nothing(within time.Duration) {
	r.t.Helper()
	select {
	case s := <-r.shows:
		r.t.Fatalf("revision %d was shown where nothing had changed: %s", s.revision, s.line(s.timings))
	case <-time.After(within):
	}
}

// put writes a file in place, as many editors do.
func put(t testing.TB, file, text string) {
	t.Helper()
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// titled is the small layout under another title.
func titled(title string) string {
	return strings.Replace(lanterns, "Harbour lanterns", title, 1)
}

// shows says whether just this text is shown, without a fault.
func (s shown) shows(text string) bool {
	return s.picture != nil && s.picture.source.Text == text && s.problem == "" && s.errors == 0
}

// titleShown is the title of what is shown.
func (s shown) titleShown() string {
	if s.picture == nil {
		return ""
	}
	return s.picture.top.Title
}

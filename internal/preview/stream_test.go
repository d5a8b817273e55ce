package preview

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"regexp"
	"strings"
	"testing"
	"time"
)

// listening is a client of the stream.
type listening struct {
	lines *bufio.Scanner
	end   func()
}

func listenTo(t *testing.T, address string) *listening {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, address+"events", nil)
	must(t, err)
	c := &http.Client{Transport: &http.Transport{}}
	answer, err := c.Do(r)
	must(t, err)
	for key, want := range map[string]string{"X-Accel-Buffering": "no", "Cache-Control": "no-store, no-transform", "Content-Encoding": ""} {
		if got := answer.Header.Get(key); got != want { // else a program in between may hold events back
			t.Errorf("the stream's %s is %q", key, got)
		}
	}
	end := func() { cancel(); answer.Body.Close(); c.CloseIdleConnections() }
	t.Cleanup(end)
	return &listening{bufio.NewScanner(answer.Body), end}
}

// next is the revision of the next event, -1 at the end.
func (l *listening) next(t *testing.T) int {
	t.Helper()
	text := l.nextText(t)
	if text == "" {
		return -1
	}
	var event struct{ Revision int }
	must(t, json.Unmarshal([]byte(text), &event))
	return event.Revision
}

// nextText is what the next event says, "" at the end.
func (l *listening) nextText(t *testing.T) string {
	t.Helper()
	for l.lines.Scan() {
		if l.lines.Text() == "" {
			continue
		}
		text, ok := strings.CutPrefix(l.lines.Text(), "data: ")
		if !ok {
			t.Fatalf("the stream says %q", l.lines.Text())
		}
		return text
	}
	return ""
}

// TestStream: an event at once with the instance and the revision and nothing else, then one for each publication with what a page that
// heard the one before would fetch, whatever stands in the file; those that come late are told the number alone.
func TestStream(t *testing.T) {
	t.Parallel()
	r := start(t, titled("a\rb"), Options{})
	r.next()
	l := listenTo(t, r.address)
	first := regexp.MustCompile(`^\{"instance":"([0-9a-f]{32})","revision":1\}$`).FindStringSubmatch(l.nextText(t))
	if first == nil {
		t.Fatal("at first the stream says something else")
	}
	have := 1
	for n, text := range []string{titled("save\u2028 1"), strings.Replace(lanterns, "#b5532a", "#b5532b", 1), lanterns + "nonsense\n", strings.Replace(lanterns, "F W W F", "F W F F", 1)} {
		put(t, r.file, text)
		now := r.next()
		answer, err := http.Get(fmt.Sprintf("%sstate?instance=%s&have=%d", r.address, first[1], have))
		must(t, err)
		if want, got := body(answer), l.nextText(t); got != want {
			t.Errorf("after save %d the stream says %s, fetched is %s", n+1, got, want)
		}
		have = now.pictureRevision()
	}
	if text := listenTo(t, r.address).nextText(t); !strings.HasSuffix(text, `,"revision":5}`) {
		t.Errorf("one that comes late is told %s", text)
	}
}

// TestBeats: the stream is heard again and again though nothing happens.
func TestBeats(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	s.beat = 30 * time.Millisecond
	address, _ := serving(t, s)
	l := listenTo(t, address)
	for range 20 {
		if n := l.next(t); n != 1 {
			t.Fatalf("revision %d", n)
		}
	}
}

// serving puts a site on the network.
func serving(t *testing.T, s *site) (address string, end func() error) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	l, err := listen(0)
	must(t, err)
	ended := make(chan error, 1)
	go func() { ended <- s.serve(ctx, l) }()
	done := false
	end = func() error {
		if done {
			return nil
		}
		done = true
		cancel()
		return <-ended
	}
	t.Cleanup(func() { _ = end() })
	return "http://" + l.Addr().String() + "/", end
}

// TestEndsAtOnce: with streams open, the end takes less than a second and is no error.
func TestEndsAtOnce(t *testing.T) {
	t.Parallel()
	r := start(t, lanterns, Options{})
	r.next()
	var streams []*listening
	for range 3 {
		l := listenTo(t, r.address)
		l.next(t)
		streams = append(streams, l)
	}
	began := time.Now()
	if err := r.end(); err != nil {
		t.Errorf("the end is an error: %v", err)
	}
	if took := time.Since(began); took > time.Second {
		t.Errorf("the end took %v", took)
	}
	for _, l := range streams {
		if n := l.next(t); n != -1 {
			t.Errorf("a stream goes on with revision %d", n)
		}
	}
}

// TestTooManyStreams: beyond the limit one is sent away, and there is room again afterwards.
func TestTooManyStreams(t *testing.T) {
	t.Parallel()
	s := aSite(t, Options{})
	address, _ := serving(t, s)
	var open []*listening
	for range maxStreams {
		l := listenTo(t, address)
		l.next(t)
		open = append(open, l)
	}
	answer, err := http.Get(address + "events")
	must(t, err)
	answer.Body.Close()
	if answer.StatusCode != http.StatusServiceUnavailable {
		t.Errorf("one stream too many: %d", answer.StatusCode)
	}
	for _, l := range open {
		l.end()
	}
	for deadline := time.Now().Add(5 * time.Second); s.streams.Load() > 0; time.Sleep(5 * time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatalf("%d streams are still open", s.streams.Load())
		}
	}
	if n := listenTo(t, address).next(t); n != 1 {
		t.Errorf("afterwards: %d", n)
	}
}

// TestDribble: one who sends a header byte by byte is cut off.
func TestDribble(t *testing.T) {
	t.Parallel()
	r := start(t, lanterns, Options{})
	c, err := net.Dial("tcp", strings.TrimSuffix(strings.TrimPrefix(r.address, "http://"), "/"))
	must(t, err)
	defer c.Close()
	began := time.Now()
	go func() {
		for range 100 {
			if _, err := c.Write([]byte("G")); err != nil {
				return
			}
			time.Sleep(100 * time.Millisecond)
		}
	}()
	_ = c.SetReadDeadline(time.Now().Add(2 * headerTimeout)) // a connection of this machine takes deadlines
	_, _ = bufio.NewReader(c).ReadString(0)                  // whatever it says at the end
	if took := time.Since(began); took > headerTimeout+2*time.Second {
		t.Errorf("it was cut off after %v", took)
	}
}

// TestIdleConnections: many silent connections are bounded and let others in again.
func TestIdleConnections(t *testing.T) {
	t.Parallel()
	l, err := listen(0)
	must(t, err)
	bounded := limited(l, 4)
	defer bounded.Close()
	var held []net.Conn
	for range 6 {
		c, err := net.Dial("tcp", l.Addr().String())
		must(t, err)
		defer c.Close()
	}
	for range 4 {
		c, err := bounded.Accept()
		must(t, err)
		held = append(held, c)
	}
	next := make(chan error, 1)
	go func() {
		_, err := bounded.Accept()
		next <- err
	}()
	select {
	case <-next:
		t.Fatal("a fifth connection was taken")
	case <-time.After(50 * time.Millisecond):
	}
	held[0].Close()
	held[0].Close() // twice counts once
	must(t, <-next)
}

// TestPortInUse: a wanted port that is taken is an error that names it.
func TestPortInUse(t *testing.T) {
	t.Parallel()
	l, err := listen(0)
	must(t, err)
	defer l.Close()
	port := l.Addr().(*net.TCPAddr).Port
	err = Run(context.Background(), "a.quilt", Options{Port: port, NoOpen: true})
	var p *PortError
	if !errors.As(err, &p) || p.Port != port || !strings.Contains(err.Error(), fmt.Sprintf("port %d is in use", port)) {
		t.Errorf("a port in use: %v", err)
	}
	if err := Run(context.Background(), "a.quilt", Options{Port: 70_000, NoOpen: true}); !errors.As(err, &p) {
		t.Errorf("a port that is none: %v", err)
	}
}

// TestSelfCheck: a preview knows itself at its address, and no other.
func TestSelfCheck(t *testing.T) {
	t.Parallel()
	a, b := aSite(t, Options{}), aSite(t, Options{})
	address, _ := serving(t, a)
	at := strings.TrimSuffix(strings.TrimPrefix(address, "http://"), "/")
	if !a.answers(at) || b.answers(at) {
		t.Error("a preview does not know itself")
	}
}

// TestMessageSizes: what a page is sent depends on what it has.
func TestMessageSizes(t *testing.T) {
	s := newState("i", "a.quilt", "l")
	text := quiltOf(30, 30, false)
	publish := func(text string) message {
		t.Helper()
		snap := s.publish(reading{text: text}, draw(text, drawing{}))
		if snap.errors > 0 {
			t.Fatal(snap.faults)
		}
		var m message
		must(t, json.Unmarshal(s.answer(snap.revision-1), &m))
		return m
	}
	publish(text)
	if m := publish(edits[0].edit(text, 1)); m.Fabrics == nil || m.Grid != nil || m.Cells != nil || m.Looks != nil || len(m.Changed) != 0 || m.Loose != nil {
		t.Errorf("a change of colour sends %s", encoded(m))
	}
	publish(text)
	if m := publish(edits[1].edit(text, 1)); m.Cells != nil || len(m.Changed) != 2 || m.Grid != nil {
		t.Errorf("a change of one block sends %s", encoded(m))
	}
	faulty := strings.Replace(text, "strip", "stripe", 1)
	s.publish(reading{text: faulty}, draw(faulty, drawing{}))
	if n := len(s.answer(4)); n > 2000 {
		t.Errorf("a fault sends %d bytes", n)
	}
	if len(s.answer(-5)) < 10_000 || len(s.answer(0)) < 10_000 {
		t.Error("a page with nothing is not sent everything")
	}
}

// TestIdleConnectionGivesWay: where kept-alive connections that ask for nothing take all places, a new request is answered
// at once and the one that has been idle longest is closed.
func TestIdleConnectionGivesWay(t *testing.T) {
	t.Parallel()
	l, err := listen(0)
	must(t, err)
	bounded := limited(l, 3)
	server := &http.Server{ConnState: bounded.follow, ReadHeaderTimeout: headerTimeout, Handler: http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		_, _ = io.WriteString(w, "here")
	})}
	defer server.Close()
	go func() { _ = server.Serve(bounded) }()
	ask := func(c net.Conn) error {
		_ = c.SetDeadline(time.Now().Add(2 * time.Second)) // a connection of this machine takes deadlines
		if _, err := io.WriteString(c, "GET / HTTP/1.1\r\nHost: a\r\n\r\n"); err != nil {
			return err
		}
		r, err := http.ReadResponse(bufio.NewReader(c), nil)
		if err != nil {
			return err
		}
		defer r.Body.Close()
		_, err = io.Copy(io.Discard, r.Body)
		return err
	}
	for range 8 { // each is kept
		c, err := net.Dial("tcp", l.Addr().String())
		must(t, err)
		defer c.Close()
		must(t, ask(c))
	}
}

package preview

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"
)

// unbuffered is a network without buffers: what one side writes waits until the other side reads it.
type unbuffered struct {
	dialled chan net.Conn
	closed  chan struct{}
}

func (u *unbuffered) Accept() (net.Conn, error) {
	select {
	case c := <-u.dialled:
		return c, nil
	case <-u.closed:
		return nil, net.ErrClosed
	}
}

func (u *unbuffered) Close() error   { close(u.closed); return nil }
func (u *unbuffered) Addr() net.Addr { return &net.TCPAddr{IP: net.IPv4(127, 0, 0, 1), Port: 8000} }

// servingSlow puts a site with little patience on a network without buffers.
func servingSlow(t *testing.T) (*site, *unbuffered) {
	s := aSite(t, Options{})
	s.writeTimeout = 400 * time.Millisecond
	u := &unbuffered{make(chan net.Conn), make(chan struct{})}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- s.serve(ctx, u) }()
	t.Cleanup(func() {
		cancel()
		must(t, <-ended)
	})
	return s, u
}

// ask sends a request for a path and reads nothing.
func (u *unbuffered) ask(t *testing.T, path string) net.Conn {
	t.Helper()
	mine, theirs := net.Pipe()
	t.Cleanup(func() { mine.Close() })
	u.dialled <- theirs
	_, err := fmt.Fprintf(mine, "GET %s HTTP/1.1\r\nHost: localhost\r\n\r\n", path)
	must(t, err)
	return mine
}

// within waits for something to be so.
func within(t *testing.T, limit time.Duration, what string, so func() bool) {
	t.Helper()
	for deadline := time.Now().Add(limit); !so(); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatalf("after %v it is still not so: %s", limit, what)
		}
	}
}

// TestSlowClient: one who does not read events is dropped after a while, and the publisher is never held up; one who reads
// hears everything for longer than that.
func TestSlowClient(t *testing.T) {
	t.Parallel()
	s, u := servingSlow(t)
	c := u.ask(t, "/events")
	answer, err := http.ReadResponse(bufio.NewReader(c), nil)
	must(t, err)
	l := &listening{lines: bufio.NewScanner(answer.Body)}
	d := draw(lanterns, drawing{})
	for began, n := time.Now(), l.next(t); time.Since(began) < 3*s.writeTimeout; time.Sleep(s.writeTimeout / 5) {
		s.state.publish(reading{text: lanterns}, d)
		next := l.next(t)
		if next <= n {
			t.Fatalf("one who reads was dropped after %v", time.Since(began))
		}
		n = next
	}
	for range 100 {
		began := time.Now()
		s.state.publish(reading{text: lanterns}, d)
		if took := time.Since(began); took > s.writeTimeout/2 {
			t.Fatalf("a publication took %v", took)
		}
	}
	within(t, 20*s.writeTimeout, "one who does not read is dropped", func() bool { return s.streams.Load() == 0 })
}

// TestSlowReader: one who asks for the page, or for what it shows, and does not read the answer is dropped after a while.
func TestSlowReader(t *testing.T) {
	t.Parallel()
	s, u := servingSlow(t)
	for _, path := range []string{"/", "/state"} {
		quick, slow := u.ask(t, path), u.ask(t, path)
		must(t, slow.SetReadDeadline(time.Now().Add(8*s.writeTimeout)))
		answer, err := http.ReadResponse(bufio.NewReader(quick), nil)
		must(t, err)
		whole, err := io.ReadAll(answer.Body)
		if err != nil || answer.StatusCode != http.StatusOK || len(whole) < 500 {
			t.Errorf("%s: one who reads gets %d and %d bytes, %v", path, answer.StatusCode, len(whole), err)
		}
		time.Sleep(3 * s.writeTimeout)
		if late, err := io.ReadAll(slow); err != nil || strings.Contains(string(late), string(whole)) {
			t.Errorf("%s: one who reads late still gets all %d bytes, %v", path, len(late), err)
		}
	}
}

package preview

import (
	"fmt"
	"net/http"
	"time"
)

const (
	heartbeatEvery      = 15 * time.Second
	defaultWriteTimeout = 8 * time.Second // else the client is dropped
	maxStreams          = 64
)

// serveEvents tells a page the newest revision: at once, at every publication, and as a beat
// in between, by which a page that slept or whose connection died finds out. It carries the
// instance and the revision and nothing else; a page that misses some loses nothing.
func (s *site) serveEvents(w http.ResponseWriter, r *http.Request) {
	if r.Method == http.MethodHead {
		return
	}
	if s.streams.Add(1) > maxStreams {
		s.streams.Add(-1)
		w.Header().Set("Retry-After", "5")
		http.Error(w, "Too many pages are open.", http.StatusServiceUnavailable)
		return
	}
	defer s.streams.Add(-1)
	sign, end := s.state.wait()
	defer end()
	w.Header().Set("X-Accel-Buffering", "no")
	beat := time.NewTicker(s.beat)
	defer beat.Stop()
	for s.sendEvent(w) == nil {
		select {
		case <-r.Context().Done():
			return
		case <-s.ending:
			return
		case <-sign:
		case <-beat.C:
		}
	}
}

// sendEvent writes one event. Only the flush tells whether it went out.
func (s *site) sendEvent(w http.ResponseWriter) error {
	c := http.NewResponseController(w)
	if err := c.SetWriteDeadline(time.Now().Add(s.writeTimeout)); err != nil {
		return err
	}
	if _, err := fmt.Fprintf(w, "data: {\"instance\":%q,\"revision\":%d}\n\n", s.state.instance, s.state.current().revision); err != nil {
		return err
	}
	return c.Flush()
}

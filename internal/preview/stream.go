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
// in between, by which a page that slept or whose connection died finds out. At a publication the
// event is the message for a page that has the picture of the event before, which spares it to ask; a page
// that misses some loses nothing.
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
	var told *snapshot
	for {
		now, err := s.sendEvent(w, told)
		if err != nil {
			return
		}
		told = now
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

// sendEvent writes one event to a page that was told of a snapshot, nil for none, and gives the one that it tells of. Only the flush tells
// whether it went out.
func (s *site) sendEvent(w http.ResponseWriter, told *snapshot) (*snapshot, error) {
	c := http.NewResponseController(w)
	if err := c.SetWriteDeadline(time.Now().Add(s.writeTimeout)); err != nil {
		return nil, err
	}
	now := s.state.current()
	event := fmt.Appendf(nil, "{\"instance\":%q,\"revision\":%d}", s.state.instance, now.revision)
	if told != nil && told != now {
		event = s.state.answer(told.pictureRevision())
	}
	if _, err := fmt.Fprintf(w, "data: %s\n\n", event); err != nil {
		return nil, err
	}
	return now, c.Flush()
}

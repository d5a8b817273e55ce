package preview

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"net/http"
	"runtime/debug"
	"strconv"
	"sync"
	"sync/atomic"
	"time"

	"eighthturn/internal/measure"
	"eighthturn/internal/render/pixels"
	"eighthturn/layout"
)

// resources are what is worked out of the newest picture when a page asks for it, which it
// does after it has shown the picture. They are kept until the top changes, one at a time is
// worked on, and no save waits for them.
type resources struct {
	mu      sync.Mutex
	waiting atomic.Int32
	name    string             // of the layout's file, without folder and ending
	of      *picture           // whose top the rest was made of; nil for none
	plans   *plans             // of that top; nil until asked for
	numbers *pageNumbers       // of that picture; nil until asked for
	reports map[int]*cachedTab // by tab, those that were asked for
	squint  []byte             // a PNG file, nil until asked for
}

// cachedTab is a tab as it is sent.
type cachedTab struct {
	reportTab
	key  string // of its content
	sent json.RawMessage
}

// tabMessage is what a page is sent that asks for a report of a picture. Without Report it holds
// that already.
type tabMessage struct {
	Instance string          `json:"instance"`
	Picture  int             `json:"picture"`
	Key      string          `json:"key"`
	Report   json.RawMessage `json:"report,omitempty"`
}

// setPicture makes room for the resources of a picture. What was made of the same top, counted the
// same way, stays, unless it names lines of the layout.
func (s *resources) setPicture(p *picture) {
	switch {
	case s.of == p:
		return
	case s.of == nil || s.of.epoch != p.epoch || !alike(s.of.top, p.top):
		s.plans, s.numbers, s.reports, s.squint = nil, nil, map[int]*cachedTab{}, nil
	case s.plans != nil && s.plans.placed():
		s.plans = nil
		maps.DeleteFunc(s.reports, func(_ int, w *cachedTab) bool { return w.Placed })
	}
	s.of = p
}

// squintPixels is how many pixels the longer side of a squint picture has. It is drawn in a
// few steps, whose edges a finer one shows no better.
const squintPixels = 1200

// viewedFrom is how far away the quilt is squinted at and studied from.
const viewedFrom = 10 * 12 * measure.Inch

func (s *resources) squintPNG(p *picture) ([]byte, error) {
	if s.squint != nil {
		return s.squint, nil
	}
	size, err := pixels.SizeOf(p.top, squintPixels)
	if err != nil {
		return nil, err
	}
	picture, err := pixels.Squinting(p.top, size, pixels.Squint{Distance: viewedFrom})
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	if err := pixels.WritePNG(&b, p.top, picture.Picture); err != nil {
		return nil, err
	}
	s.squint = b.Bytes()
	return s.squint, nil
}

// planned are the plans of the picture that the resources are of.
func (s *resources) planned(p *picture) *plans {
	if s.plans == nil {
		s.plans = newPlans(p.top, p.source, s.name)
	}
	return s.plans
}

// tab is a tab with its report.
func (s *resources) tab(p *picture, tab int) *cachedTab {
	if w := s.reports[tab]; w != nil {
		return w
	}
	if s.numbers == nil {
		s.numbers = p.pageNumbers()
	}
	r := makeTabSafely(s.planned(p), tabSources()[tab])
	r.fillHighlights(s.numbers)
	w := &cachedTab{reportTab: r, sent: encoded(&r)}
	sum := sha256.Sum256(w.sent)
	w.key = hex.EncodeToString(sum[:8])
	s.reports[tab] = w
	return w
}

// makeTabSafely makes a report, or one that tells of the panic.
func makeTabSafely(p *plans, by tabSource) (r reportTab) {
	defer func() {
		if broke := recover(); broke != nil {
			says := layoutVisible(fmt.Sprint(broke) + "\n" + ownCalls(string(debug.Stack())))
			r = reportTab{Name: by.Name, Sections: []tabSection{{Title: "Something broke inside eighthturn", Rows: []tabRow{
				{Cells: []string{"Please report it with the layout."}, Under: []string{says}, Tone: wrong}}}}}
		}
	}()
	return by.make(p)
}

// maxWaiting is how many requests for resources and files may wait for their turn.
const maxWaiting = 16

// errNothing says that a request asks for something that a report does not have.
var errNothing = errors.New("there is no such part")

// serveOf works on the newest picture, if a page asks for that one. Whoever asks for another,
// or whose picture is overtaken meanwhile, is told so and will hear of the newer one.
func (s *site) serveOf(w http.ResponseWriter, r *http.Request, work func(p *picture) ([]byte, error)) {
	s.inTurn(w, r, func(p *picture) ([]byte, error) {
		content, err := work(p)
		if err == nil && s.state.current().picture != p {
			return nil, errOvertaken
		}
		return content, err
	})
}

var errOvertaken = errors.New("a newer picture is there")

// inTurn works on the newest picture, one request at a time.
func (s *site) inTurn(w http.ResponseWriter, r *http.Request, work func(p *picture) ([]byte, error)) {
	if s.resources.waiting.Add(1) > maxWaiting {
		s.resources.waiting.Add(-1)
		w.Header().Set("Retry-After", "5")
		http.Error(w, "Too much is being made at once.", http.StatusServiceUnavailable)
		return
	}
	defer s.resources.waiting.Add(-1)
	content, status, why := s.worked(r, work)
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(s.writeTimeout)) // as in ServeHTTP
	if status != http.StatusOK {
		w.Header().Del("Content-Disposition")
		http.Error(w, why, status)
		return
	}
	respond(w, content)
}

// worked is what work makes of the newest picture, or a status and a sentence.
func (s *site) worked(r *http.Request, work func(p *picture) ([]byte, error)) (content []byte, status int, why string) {
	s.resources.mu.Lock()
	defer s.resources.mu.Unlock()
	p := s.state.current().picture
	switch {
	case p == nil:
		return nil, http.StatusNotFound, "There is no picture yet."
	case !s.asksFor(p, r):
		return nil, http.StatusConflict, "That picture is not the newest."
	}
	s.resources.setPicture(p)
	content, err := workSafely(p, work)
	var cannot *cannotBeMade
	switch {
	case err == nil:
		return content, http.StatusOK, ""
	case errors.Is(err, errOvertaken):
		return nil, http.StatusConflict, "That picture is not the newest."
	case errors.Is(err, errNothing):
		return nil, http.StatusNotFound, "There is nothing here."
	case errors.As(err, &cannot):
		return nil, http.StatusUnprocessableEntity, cannot.Error()
	}
	return nil, http.StatusInternalServerError, "This cannot be made."
}

// cannotBeMade says in a sentence why a layout gives no file of a kind.
type cannotBeMade struct{ why string }

func (e *cannotBeMade) Error() string { return e.why }

// workSafely turns a panic into an error.
func workSafely(p *picture, work func(p *picture) ([]byte, error)) (content []byte, err error) {
	defer func() {
		if broke := recover(); broke != nil {
			err = fmt.Errorf("something broke: %v", broke)
		}
	}()
	return work(p)
}

// asksFor says whether a request is about a picture. One that names none is about any.
func (s *site) asksFor(p *picture, r *http.Request) bool {
	q := r.URL.Query()
	wanted, instance := q.Get("picture"), q.Get("instance")
	return (wanted == "" || wanted == strconv.Itoa(p.revision)) && (instance == "" || instance == s.state.instance)
}

// tabOf is the number of the tab that a request is about, 0 if it names none, -1 for one that
// there is not.
func tabOf(r *http.Request) int {
	text := r.URL.Query().Get("tab")
	if text == "" {
		return 0
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 0 || n >= len(tabSources()) {
		return -1
	}
	return n
}

// serveReport answers with a report of the newest picture.
func (s *site) serveReport(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(p *picture) ([]byte, error) {
		tab := tabOf(r)
		if tab < 0 {
			return nil, errNothing
		}
		made := s.resources.tab(p, tab)
		l := tabMessage{Instance: s.state.instance, Picture: p.revision, Key: made.key}
		if r.URL.Query().Get("key") != made.key {
			l.Report = made.sent
		}
		return encoded(l), nil
	})
}

// serveSquint answers with the newest picture as half-shut eyes see it.
func (s *site) serveSquint(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, s.resources.squintPNG)
}

// visible makes a list of texts safe to show.
func visible(list ...string) []string {
	for i := range list {
		list[i] = layout.Visible(list[i])
	}
	return list
}

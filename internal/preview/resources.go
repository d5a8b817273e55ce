package preview

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"runtime/debug"
	"strconv"
	"sync/atomic"
	"time"

	"eighthturn/internal/stop"
	"eighthturn/layout"
)

// tabMessage is what a page is sent that asks for a report of a picture. Without Report it holds
// that already.
type tabMessage struct {
	Instance string          `json:"instance"`
	Picture  int             `json:"picture"`
	Key      string          `json:"key"`
	Report   json.RawMessage `json:"report,omitempty"`
}

const (
	maxWaiting = 16 // requests for resources and files at a time
	maxMaking  = 2  // files that are made at a time; the others wait for their turn
)

// desk is where requests for what takes long are answered.
type desk struct {
	asked  atomic.Int32
	making chan struct{} // holds an entry a file that is made
}

func newDesk() desk { return desk{making: make(chan struct{}, maxMaking)} }

// work makes what a request asks for, of a study. It ends early when the sign says so.
type work func(s *study, sign *stop.Sign) ([]byte, error)

// errNothing says that a request asks for something that a report does not have.
var errNothing = errors.New("there is no such part")

var errOvertaken = errors.New("a newer picture is there")

// cannotBeMade says in a sentence why a layout gives no file of a kind.
type cannotBeMade struct{ why string }

func (e *cannotBeMade) Error() string { return e.why }

// makeTabSafely makes a report, or one that tells of the panic.
func makeTabSafely(p *plans, by tabSource) (r reportTab) {
	defer func() {
		if broke := recover(); broke != nil {
			if stop.Ended(broke) {
				panic(broke)
			}
			says := layoutVisible(fmt.Sprint(broke) + "\n" + ownCalls(string(debug.Stack())))
			r = reportTab{Name: by.Name, Sections: []tabSection{{Title: "Something broke inside eighthturn", Rows: []tabRow{
				{Cells: []string{"Please report it with the layout."}, Under: []string{says}, Tone: wrong}}}}}
		}
	}()
	return by.make(p)
}

// serveOf answers with what work makes of the newest picture, if a page asks for that one. Whoever asks for another, or
// whose picture is overtaken meanwhile, is told so and will hear of the newer one.
func (s *site) serveOf(w http.ResponseWriter, r *http.Request, work work) {
	if s.desk.asked.Add(1) > maxWaiting {
		s.desk.asked.Add(-1)
		w.Header().Set("Retry-After", "5")
		http.Error(w, "Too much is being made at once.", http.StatusServiceUnavailable)
		return
	}
	defer s.desk.asked.Add(-1)
	content, err := s.made(r, work)
	for errors.Is(err, errOvertaken) && r.URL.Query().Get("picture") == "" && r.Context().Err() == nil { // any picture will do
		content, err = s.made(r, work)
	}
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(s.writeTimeout)) // as in ServeHTTP
	if status, why := statusOf(err); status != http.StatusOK {
		w.Header().Del("Content-Disposition")
		http.Error(w, why, status)
		return
	}
	respond(w, content)
}

// serveFile answers with a file that work makes of the newest picture, a few at a time.
func (s *site) serveFile(w http.ResponseWriter, r *http.Request, work work) {
	s.serveOf(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		select {
		case s.desk.making <- struct{}{}:
			defer func() { <-s.desk.making }()
		case <-sign.Done():
			sign.Look()
		}
		return work(of, sign)
	})
}

// errNoPicture says that there is nothing to work on yet.
var errNoPicture = errors.New("there is no picture yet")

// made is what work makes of the newest picture. It ends when the request does, or when another top is shown.
func (s *site) made(r *http.Request, work work) ([]byte, error) {
	p := s.state.current().picture
	if p == nil {
		return nil, errNoPicture
	}
	if !s.asksFor(p, r) {
		return nil, errOvertaken
	}
	of, err := s.studyOf(p, r)
	if err == nil {
		of, err = of.wearing(r)
	}
	if err != nil {
		return nil, err
	}
	ctx, end := context.WithCancel(r.Context())
	defer end()
	defer context.AfterFunc(of, end)()
	var content []byte
	if ended := workSafely(ctx, func(sign *stop.Sign) { content, err = work(of, sign) }); ended != nil {
		err = ended
	}
	if s.state.current().picture != p {
		return nil, errOvertaken
	}
	return content, err
}

// workSafely turns a panic into an error.
func workSafely(ctx context.Context, work func(*stop.Sign)) (err error) {
	defer func() {
		if broke := recover(); broke != nil {
			err = fmt.Errorf("something broke: %v", broke)
		}
	}()
	return stop.Do(ctx, work)
}

// statusOf is how an error is told: a status and a sentence.
func statusOf(err error) (status int, why string) {
	var cannot *cannotBeMade
	switch {
	case err == nil:
		return http.StatusOK, ""
	case errors.Is(err, errNoPicture):
		return http.StatusNotFound, "There is no picture yet."
	case errors.Is(err, errOvertaken):
		return http.StatusConflict, "That picture is not the newest."
	case errors.Is(err, errNothing):
		return http.StatusNotFound, "There is nothing here."
	case errors.As(err, &cannot):
		return http.StatusUnprocessableEntity, cannot.Error()
	}
	return http.StatusInternalServerError, "This cannot be made."
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
	s.serveOf(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		tab := tabOf(r)
		if tab < 0 {
			return nil, errNothing
		}
		of, err := of.asked(r)
		if err != nil {
			return nil, err
		}
		made := of.tab(sign, tab)
		l := tabMessage{Instance: s.state.instance, Picture: s.state.current().picture.revision, Key: made.key}
		if r.URL.Query().Get("key") != made.key {
			l.Report = made.sent
		}
		return encoded(l), nil
	})
}

// serveSquint answers with the newest picture as half-shut eyes see it.
func (s *site) serveSquint(w http.ResponseWriter, r *http.Request) {
	s.serveOf(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		if top, ok, err := s.auditioned(of, r, sign); ok || err != nil {
			if err != nil {
				return nil, err
			}
			return (&picture{top: top}).squint(sign)
		}
		of, err := of.asked(r)
		if err != nil {
			return nil, err
		}
		return of.squintPNG(sign)
	})
}

// visible makes a list of texts safe to show.
func visible(list ...string) []string {
	for i := range list {
		list[i] = layout.Visible(list[i])
	}
	return list
}

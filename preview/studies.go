package preview

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"net/http"
	"runtime/debug"
	"strconv"
	"sync"
	"time"

	"eighthturn/layout"
	"eighthturn/measure"
	"eighthturn/patchwork"
	"eighthturn/pixels"
)

// studies are what is worked out of the newest picture when a page asks for it, which it
// does after it has shown the picture. They are kept until the top changes, one at a time is
// worked on, and no save waits for them.
type studies struct {
	mu      sync.Mutex
	of      *picture // whose top the rest was made of; nil for none
	reports *reports // nil until asked for
	squint  []byte   // a PNG file, nil until asked for
}

// reports are all reports of a top as they are sent.
type reports struct {
	key  string // of their content
	sent json.RawMessage
}

// letter is what a page is sent that asks for the reports of a picture. Without Reports it
// holds them already.
type letter struct {
	Instance string          `json:"instance"`
	Picture  int             `json:"picture"`
	Key      string          `json:"key"`
	Reports  json.RawMessage `json:"reports,omitempty"`
}

// turnTo makes room for the studies of a picture. What was made of the same top, counted the
// same way, stays.
func (s *studies) turnTo(p *picture) {
	if s.of != p && (s.of == nil || s.of.epoch != p.epoch || !alike(s.of.top, p.top)) {
		s.reports, s.squint = nil, nil
	}
	s.of = p
}

// squintPixels is how many pixels the longer side of a squint picture has. It is drawn in a
// few steps, whose edges a finer one shows no better.
const squintPixels = 1200

// viewedFrom is how far away the quilt is squinted at and studied from.
const viewedFrom = 10 * 12 * measure.Inch

func (s *studies) squinted(p *picture) ([]byte, error) {
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

func (s *studies) reported(p *picture) *reports {
	if s.reports != nil {
		return s.reports
	}
	numbers := p.pageNumbers()
	list := []report{}
	for _, one := range reporters() {
		r := reportSafely(p.top, one)
		r.light(numbers)
		list = append(list, r)
	}
	sent := encoded(list)
	sum := sha256.Sum256(sent)
	s.reports = &reports{hex.EncodeToString(sum[:8]), sent}
	return s.reports
}

// reportSafely makes a report, or one that tells of the panic.
func reportSafely(t *patchwork.Top, make reporter) (r report) {
	defer func() {
		if broke := recover(); broke != nil {
			says := layoutVisible(fmt.Sprint(broke) + "\n" + ownCalls(string(debug.Stack())))
			r = report{Name: "Report", Sections: []section{{Title: "Something broke inside eighthturn", Rows: []row{
				{Cells: []string{"Please report it with the layout."}, Under: []string{says}, Tone: wrong}}}}}
		}
	}()
	return make(t)
}

// study works on the newest picture, if a page asks for that one. Whoever asks for another,
// or whose picture is overtaken meanwhile, is told so and will hear of the newer one.
func (s *site) study(w http.ResponseWriter, r *http.Request, work func(p *picture) ([]byte, error)) {
	s.studies.mu.Lock()
	defer s.studies.mu.Unlock()
	p := s.state.current().picture
	switch {
	case p == nil:
		http.Error(w, "There is no picture yet.", http.StatusNotFound)
		return
	case !s.asksFor(p, r):
		http.Error(w, "That picture is not the newest.", http.StatusConflict)
		return
	}
	s.studies.turnTo(p)
	content, err := work(p)
	switch {
	case err != nil:
		http.Error(w, "This cannot be made.", http.StatusInternalServerError)
		return
	case s.state.current().picture != p:
		http.Error(w, "That picture is not the newest.", http.StatusConflict)
		return
	}
	_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(s.patience)) // as in ServeHTTP
	give(w, content)
}

// asksFor says whether a request is about a picture. One that names none is about any.
func (s *site) asksFor(p *picture, r *http.Request) bool {
	q := r.URL.Query()
	wanted, instance := q.Get("picture"), q.Get("instance")
	return (wanted == "" || wanted == strconv.Itoa(p.revision)) && (instance == "" || instance == s.state.instance)
}

// giveReports answers with the reports of the newest picture.
func (s *site) giveReports(w http.ResponseWriter, r *http.Request) {
	s.study(w, r, func(p *picture) ([]byte, error) {
		made := s.studies.reported(p)
		l := letter{Instance: s.state.instance, Picture: p.revision, Key: made.key}
		if r.URL.Query().Get("key") != made.key {
			l.Reports = made.sent
		}
		return encoded(l), nil
	})
}

// giveSquint answers with the newest picture as half-shut eyes see it.
func (s *site) giveSquint(w http.ResponseWriter, r *http.Request) { s.study(w, r, s.studies.squinted) }

// visible makes a list of texts safe to show.
func visible(list ...string) []string {
	for i := range list {
		list[i] = layout.Visible(list[i])
	}
	return list
}

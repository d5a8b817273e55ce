package preview

import (
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"os"
	"strings"
	"sync"
	"syscall"
	"time"
	"unicode/utf8"

	"eighthturn/internal/files"
	"eighthturn/internal/lsp"
	"eighthturn/internal/measure"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// With the option to edit, the page may write the one file that it follows: it asks for a color, for what a hint says to type, for
// tidy, or types the text itself. A request carries the run's own token and what the page last saw of the file. The file is written
// whole or not at all, and only if it still says that; what is typed meanwhile by somebody else is merged where the lines differ, and
// told where they do not. The page keeps what it could not write.

// maxEditBytes is how large a request to write may be: a layout before and after, with room for what JSON escapes.
const maxEditBytes = 3 * layout.MaxBytes

// editor writes the file of a preview.
type editor struct {
	shelf Shelf
	path  string
	token string
	write func(path, from, to string) error // stands in for the disk in tests
	typed *lsp.Typed                        // what is typed on the page
	calm  time.Duration                     // how long a text that looks cut off must stay the same; quietBroken but in tests

	lock   sync.Mutex // one write at a time
	done   []step     // newest last
	undone []step
}

// step is one thing that was done on the page: the plain text before and after.
type step struct{ before, after string }

// Steps are kept for undoing as long as they are few and small.
const (
	maxSteps     = 200
	maxStepBytes = 64 << 20
)

func newEditor(shelf Shelf, path string) *editor {
	return &editor{shelf: shelf, path: path, token: random(), write: shelf.Update, typed: lsp.NewTyped(path, shelf.Album(path)), calm: quietBroken}
}

// mayEdit lets the page write the file.
func (s *site) mayEdit(shelf Shelf, path string) {
	s.editor = newEditor(shelf, path)
	s.state.edit = s.editor.token
	s.posts = map[string]route{}
	for _, r := range postRoutes() {
		s.posts[r.path] = r
	}
}

// postRoutes is every address that takes what the page posts.
func postRoutes() []route {
	return []route{
		{"/edit", "application/json; charset=utf-8", (*site).serveEdit},
		{"/typed", "application/json; charset=utf-8", (*site).serveTyped},
	}
}

// tokenHeader is the header in which a page gives the run's token. Another site's page cannot set it without asking, and does not
// know the token.
const tokenHeader = "X-Edit-Token"

// servePost answers what the page posts, if it gives the token.
func (s *site) servePost(w http.ResponseWriter, r *http.Request, by route) {
	if subtle.ConstantTimeCompare([]byte(r.Header.Get(tokenHeader)), []byte(s.token())) != 1 {
		http.Error(w, "This page is of another run of the preview. Load it again.", http.StatusForbidden)
		return
	}
	w.Header().Set("Content-Type", by.contentType)
	by.serve(s, w, r)
}

// token is what a page must know that posts something.
func (s *site) token() string {
	if s.folder != nil {
		return s.folder.token
	}
	return s.editor.token
}

// editRequest is what a page wants done. Seen is the mark of the text that it saw, as in message; for what is typed there is that
// text itself, plain, and what was made of it.
type editRequest struct {
	Do     string `json:"do"`
	Seen   string `json:"seen,omitempty"`
	Base   string `json:"base,omitempty"`
	Text   string `json:"text,omitempty"`
	Fabric string `json:"fabric,omitempty"`
	Color  string `json:"color,omitempty"`
	Fault  int    `json:"fault,omitempty"`

	Colorway string `json:"colorway,omitempty"` // in which the fabric has the color

	Role        string `json:"role,omitempty"` // of an audition, as layout.AuditionOf has it
	Of          string `json:"of,omitempty"`
	Alternative string `json:"alternative,omitempty"`

	Motif    string     `json:"motif,omitempty"` // that is to lie on the fabric, there
	Across   measure.NM `json:"across,omitempty"`
	Down     measure.NM `json:"down,omitempty"`
	Pointing int        `json:"pointing,omitempty"`
}

// editReply is how it went.
type editReply struct {
	Why  string  `json:"why,omitempty"`  // nothing was written; "" if all is well
	Mark string  `json:"mark"`           // of the text that is there now
	Line int     `json:"line,omitempty"` // the first that was changed
	Text *string `json:"text,omitempty"` // that is there now, plain, for a page that types
	Undo int     `json:"undo"`           // steps that can be undone
	Redo int     `json:"redo"`
}

// editError says why nothing was written.
type editError struct {
	status int
	why    string
}

func (e *editError) Error() string { return e.why }

func refused(format string, args ...any) error {
	return &editError{http.StatusConflict, fmt.Sprintf(format, args...)}
}

// markOf is the same for texts that are the same.
func markOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:12])
}

// serveEdit does what a page wants done with the file.
func (s *site) serveEdit(w http.ResponseWriter, r *http.Request) {
	var q editRequest
	if !readRequest(w, r, &q) {
		return
	}
	reply, err := s.edit(q)
	var no *editError
	if errors.As(err, &no) {
		reply.Why = no.why
		w.WriteHeader(no.status)
	}
	send(w, encoded(reply))
}

// readRequest reads what a page posts, and answers itself where that is nothing it would post.
func readRequest(w http.ResponseWriter, r *http.Request, into any) bool {
	in := json.NewDecoder(http.MaxBytesReader(w, r.Body, maxEditBytes))
	in.DisallowUnknownFields()
	err := in.Decode(into)
	if err == nil {
		if _, more := in.Token(); more != io.EOF {
			err = errors.New("more than one request")
		}
	}
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		http.Error(w, "This is more than a layout may have.", http.StatusRequestEntityTooLarge)
	case err != nil:
		http.Error(w, "This is no request that the page makes.", http.StatusBadRequest)
	}
	return err == nil
}

// send writes content behind a status.
func send(w http.ResponseWriter, content []byte) { _, _ = w.Write(content) }

// edit does one thing. Of what fails, too, the reply says what the file says now.
func (s *site) edit(q editRequest) (reply editReply, err error) {
	e := s.editor
	e.lock.Lock()
	defer e.lock.Unlock()
	now := ""
	for range maxAttempts {
		if now, err = e.read(s.state.current().mark); err != nil {
			break
		}
		var next string
		if next, err = s.changed(q, now); err != nil {
			break
		}
		if next != now {
			if err = e.put(now, next); errors.Is(err, files.ErrChanged) {
				err = refused("the layout was saved elsewhere just now")
				continue
			}
		}
		if err != nil {
			break
		}
		e.remember(q.Do, now, next)
		reply.Line = firstChanged(now, next)
		now = next
		break
	}
	reply.Mark, reply.Undo, reply.Redo = markOf(now), len(e.done), len(e.undone)
	if q.Do == "read" || q.Do == "text" {
		text := plain(now)
		reply.Text = &text
	}
	return reply, err
}

// maxAttempts is how often a write is begun anew because somebody saves again and again.
const maxAttempts = 5

// How long a text that is new must stay the same before something is written over it: longer where it looks cut off, since an
// editor may be in the midst of saving.
const (
	settledAfter = 5 * time.Millisecond
	settledUntil = 2 * time.Second
)

// settled is what the file says once it stands still. What is shown already has been waited for.
func (e *editor) settled(shown string) reading {
	r := read(e.shelf, e.path)
	for began := time.Now(); markOf(r.text) != shown && time.Since(began) < settledUntil; {
		if strings.TrimSpace(r.text) == "" || !strings.HasSuffix(r.text, "\n") {
			time.Sleep(e.calm)
		} else {
			time.Sleep(settledAfter)
		}
		again := read(e.shelf, e.path)
		if again.same(&r) {
			break
		}
		r = again
	}
	return r
}

// read is the layout as it is, if it can be written without losing anything of it. Shown is the mark of the text that pages show.
func (e *editor) read(shown string) (string, error) {
	r := e.settled(shown)
	switch {
	case r.problem != "":
		return "", &editError{http.StatusConflict, layout.Visible(r.problem)}
	case !utf8.ValidString(r.text) || strings.ContainsRune(r.text, 0):
		return "", &editError{http.StatusConflict, "the file is not plain UTF-8 text; save it as that in a text editor first"}
	}
	return r.text, nil
}

// put writes a text over the one that is there, and says why if it cannot.
func (e *editor) put(from, to string) error {
	if len(to) > layout.MaxBytes {
		return &editError{http.StatusRequestEntityTooLarge, "this is more than a layout may have"}
	}
	err := e.write(e.path, from, to)
	var not *files.Refusal
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case err == nil, errors.Is(err, files.ErrChanged):
		return err
	case errors.As(err, &not):
		return &editError{http.StatusConflict, "the file cannot be written: " + not.Reason.String()}
	case errors.Is(err, fs.ErrNotExist):
		return &editError{http.StatusConflict, "the file is not there any more"}
	case errors.Is(err, syscall.ENOSPC):
		return &editError{http.StatusInsufficientStorage, "the disk is full"}
	case errors.As(err, &path):
		err = path.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return &editError{http.StatusConflict, "the file cannot be written: " + layout.Visible(err.Error())}
}

// changed is the layout with what a page wants done.
func (s *site) changed(q editRequest, now string) (string, error) {
	switch q.Do {
	case "read":
		return now, nil
	case "text":
		return q.typed(now)
	case "undo":
		return s.editor.back(now)
	case "redo":
		return s.editor.again(now)
	}
	if q.Seen != markOf(now) {
		return "", refused("the layout was saved elsewhere; look at it again")
	}
	switch q.Do {
	case "color":
		return q.recolored(now)
	case "audition":
		return q.auditioned(now, s.studies.cloth)
	case "motif":
		return q.moved(now, s.studies.cloth)
	case "hint":
		return s.hinted(q, now)
	case "tidy":
		tidy, faults := layout.Tidy(now)
		if errors, _ := layout.Count(faults); errors > 0 {
			return "", refused("a layout with errors is not tidied")
		}
		return tidy, nil
	}
	return "", &editError{http.StatusBadRequest, "there is nothing like that to do"}
}

// typed is what was typed, with what somebody else has changed since the page began.
func (q *editRequest) typed(now string) (string, error) {
	text, ok := merged(q.Base, q.Text, plain(now))
	if !ok {
		return "", refused("the same lines were changed elsewhere")
	}
	return like(text, now), nil
}

func (q *editRequest) recolored(now string) (string, error) {
	color, err := palettes.Parse(q.Color)
	if err != nil {
		return "", &editError{http.StatusBadRequest, err.Error()}
	}
	read := layout.Inspect(now, nil)
	edits := recolored(&read, q.Colorway, q.Fabric, color)
	if edits == nil {
		return "", refused("no fabric of the layout is called %q", layout.Visible(q.Fabric))
	}
	return layout.Apply(now, edits), nil
}

// auditioned is the layout with an alternative written into it.
func (q *editRequest) auditioned(now string, photos func(string) (palettes.PhotoSample, error)) (string, error) {
	read := layout.Inspect(now, photos)
	if read.Design == nil {
		return "", refused("the layout has errors now")
	}
	trial, err := read.Trial(layout.AuditionOf{Role: q.Role, Of: q.Of, Colorway: q.Colorway}, q.Alternative)
	if err != nil {
		return "", refused("%s", layout.Visible(err.Error()))
	}
	return trial.Text, nil
}

// moved is the layout with a motif somewhere else, or with one that is new.
func (q *editRequest) moved(now string, photos func(string) (palettes.PhotoSample, error)) (string, error) {
	at := layout.MotifAt{Name: q.Motif, Fabric: q.Fabric, Across: q.Across, Down: q.Down, Pointing: q.Pointing}
	if !at.Sound() {
		return "", &editError{http.StatusBadRequest, "there is no such place on a print"}
	}
	read := layout.Inspect(now, photos)
	if read.Design == nil {
		return "", refused("the layout has errors now")
	}
	edits := read.Moved(at)
	if edits == nil {
		return "", refused("the layout has no such fabric now, or has the name %q for something else", layout.Visible(q.Motif))
	}
	next := layout.Apply(now, edits)
	if layout.Inspect(next, photos).Design == nil {
		return "", refused("the layout would have an error")
	}
	return next, nil
}

// hinted is the layout with what the hint of a fault says to type.
func (s *site) hinted(q editRequest, now string) (string, error) {
	snap := s.state.current()
	if snap.mark != markOf(now) || q.Fault < 0 || q.Fault >= len(snap.faults) || len(snap.faults[q.Fault].edits) == 0 {
		return "", refused("the layout was saved elsewhere; look at it again")
	}
	return layout.Apply(now, snap.faults[q.Fault].edits), nil
}

// back is the layout without the last step.
func (e *editor) back(now string) (string, error) {
	if len(e.done) == 0 {
		return "", refused("there is nothing to undo")
	}
	last := e.done[len(e.done)-1]
	return e.turned(last.after, last.before, now)
}

// again is the layout with the step that was undone last.
func (e *editor) again(now string) (string, error) {
	if len(e.undone) == 0 {
		return "", refused("there is nothing to redo")
	}
	last := e.undone[len(e.undone)-1]
	return e.turned(last.before, last.after, now)
}

func (e *editor) turned(from, to, now string) (string, error) {
	text, ok := merged(from, to, plain(now))
	if !ok {
		return "", refused("the same lines were changed elsewhere since")
	}
	return like(text, now), nil
}

// remember notes what was done, so that it can be undone.
func (e *editor) remember(do, before, after string) {
	switch {
	case do == "undo":
		last := len(e.done) - 1
		e.done, e.undone = e.done[:last], append(e.undone, e.done[last])
		return
	case do == "redo":
		last := len(e.undone) - 1
		e.undone, e.done = e.undone[:last], append(e.done, e.undone[last])
		return
	case before == after:
		return
	}
	e.undone = nil
	e.done = append(e.done, step{plain(before), plain(after)})
	size := 0
	for i := len(e.done) - 1; i >= 0; i-- {
		if size += len(e.done[i].before) + len(e.done[i].after); size > maxStepBytes || len(e.done)-i > maxSteps {
			e.done = append([]step(nil), e.done[i+1:]...)
			break
		}
	}
}

// firstChanged is the first line, from 1, in which two texts differ; 0 for none.
func firstChanged(before, after string) int {
	if before == after {
		return 0
	}
	n := 0
	for n < len(before) && n < len(after) && before[n] == after[n] {
		n++
	}
	return 1 + strings.Count(plain(after[:n]), "\n")
}

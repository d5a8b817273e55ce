package preview

import (
	"cmp"
	"context"
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"net"
	"net/http"
	"path/filepath"
	"strings"
	"sync/atomic"
	"time"
	"unicode"

	"eighthturn/internal/files"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// policy is what the page may load and run: its own files and nothing else.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; " +
	"frame-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

const (
	headerTimeout   = 5 * time.Second
	bodyTimeout     = 10 * time.Second
	idleTimeout     = 60 * time.Second
	shutdownTimeout = 100 * time.Millisecond
	maxHeaderBytes  = 16 << 10 // bytes
	maxClients      = 256      // connections at a time
)

// site is the server of one preview.
type site struct {
	state        *state
	studies      *studies
	sizes        *sizes
	desk         desk
	routes       map[string]route
	posts        map[string]route // that take what the page posts; none if it may not write
	editor       *editor          // nil if it may not
	hosts        hosts
	key          string // "" if none is asked for
	streams      atomic.Int32
	beat         time.Duration
	writeTimeout time.Duration
	ending       chan struct{}
	folder       *folder // whose gallery it is; nil for a layout's
	beside       bool    // it is a layout's that has others beside it
}

func newSite(path string, o Options) *site {
	shelf := cmp.Or[Shelf](o.shelf, disk{})
	sum := sha256.Sum256([]byte(path))
	s := &site{
		state:  newState(random(), layout.Visible(filepath.Base(path)), hex.EncodeToString(sum[:8])),
		routes: map[string]route{}, hosts: newHosts(o.Hosts),
		studies: &studies{name: stem(path), cutting: o.Cutting, cloth: clothOf(o.album, shelf.Album(path))}, desk: newDesk(),
		beat: heartbeatEvery, writeTimeout: defaultWriteTimeout, ending: make(chan struct{}),
	}
	s.state.editor = editorAddress(o.Editor, path)
	s.state.beforeShown = s.studies.follow
	s.state.numbers.cutting = o.Cutting
	s.sizes = &sizes{from: s.studies, of: map[string]*sized{}}
	for _, r := range routes() {
		s.routes[r.path] = r
	}
	if o.Edit {
		s.mayEdit(shelf, path)
	}
	if o.Secret {
		s.key = random()
	}
	return s
}

// clothOf looks at photos as the pictures that are shown have them: at what the album that they are drawn from keeps, which takes no time. Others
// are read in an album of their own, since whoever draws must notice for itself what has changed.
func clothOf(drawn, other *files.Album) func(photo string) (palettes.PhotoSample, error) {
	return func(photo string) (palettes.PhotoSample, error) {
		if drawn != nil {
			if cloth, known, fault := drawn.Kept(photo); known {
				return cloth, fault
			}
		}
		return other.Cloth(photo)
	}
}

// random is 128 bits that nobody can guess, as letters and digits.
func random() string {
	var b [16]byte
	_, _ = rand.Read(b[:]) // it never fails
	return hex.EncodeToString(b[:])
}

// ServeHTTP lets in who may come in, before it looks at what is asked for.
func (s *site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Cache-Control", "no-store, no-transform")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("X-Frame-Options", "DENY")
	h.Set("Content-Security-Policy", policy)
	c := http.NewResponseController(w)
	_ = c.SetWriteDeadline(time.Now().Add(s.writeTimeout)) // where it cannot be set, nothing is written to a network
	post, posts := s.posts[r.URL.Path]
	posts = posts || s.folder != nil && r.Method == http.MethodPost && strings.HasPrefix(r.URL.Path, quiltPrefix)
	if status, why := s.hosts.refuse(r, posts); status != 0 {
		if status == http.StatusMethodNotAllowed {
			h.Set("Allow", map[bool]string{true: "POST", false: "GET, HEAD"}[posts])
		}
		_ = c.SetReadDeadline(time.Now()) // what else it would send is not waited for
		http.Error(w, why, status)
		return
	}
	h.Set("X-Instance", s.state.instance)
	if !s.admit(w, r) {
		return
	}
	if s.folder != nil && s.folder.serveRoom(w, r) {
		return
	}
	if posts && r.URL.RawPath == "" {
		_ = c.SetReadDeadline(time.Now().Add(bodyTimeout))
		s.servePost(w, r, post)
		return
	}
	route, ok := s.routes[r.URL.Path]
	if !ok || r.URL.RawPath != "" {
		http.Error(w, "There is nothing here.", http.StatusNotFound)
		return
	}
	h.Set("Content-Type", route.contentType)
	route.serve(s, w, r)
}

// serve answers until the context ends, and then ends at once: open streams are told first,
// since a polite shut-down would wait for them.
func (s *site) serve(ctx context.Context, l net.Listener) error {
	bounded := limited(l, maxClients)
	server := &http.Server{
		Handler: s, ConnState: bounded.follow, ReadHeaderTimeout: headerTimeout, IdleTimeout: idleTimeout, MaxHeaderBytes: maxHeaderBytes,
		BaseContext: func(net.Listener) context.Context { return ctx }, DisableGeneralOptionsHandler: true,
	}
	server.ErrorLog = silent()
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		<-ctx.Done()
		close(s.ending)
		within, stop := context.WithTimeout(context.Background(), shutdownTimeout)
		defer stop()
		if server.Shutdown(within) != nil {
			server.Close()
		}
	}()
	err := server.Serve(bounded)
	if ctx.Err() == nil {
		return err
	}
	<-ended
	return nil
}

// stem is the name that files made of a layout begin with: the layout's own, without its
// ending and without what a file system or a header may take otherwise.
func stem(path string) string {
	base := filepath.Base(path)
	name := strings.Map(func(r rune) rune {
		switch {
		case unicode.IsLetter(r), unicode.IsDigit(r), unicode.IsMark(r), strings.ContainsRune("-_ ", r):
			return r
		}
		return '-'
	}, strings.TrimSuffix(base, filepath.Ext(base)))
	if name = strings.Trim(name, " -"); name == "" {
		return "quilt"
	}
	return name
}

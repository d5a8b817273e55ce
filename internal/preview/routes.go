package preview

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"net/http"
	"strconv"
	"strings"
	"sync"

	"eighthturn/internal/stop"
	"eighthturn/svgout"
)

// The page's files. Nothing else is ever served, and nothing from the disk.
//
//go:embed page
var page embed.FS

// route is one address of the preview.
type route struct {
	path        string // exactly
	contentType string
	serve       func(*site, http.ResponseWriter, *http.Request)
}

// routes is every address that there is.
func routes() []route {
	list := []route{
		{"/", "text/html; charset=utf-8", (*site).serveIndex},
		{"/state", "application/json; charset=utf-8", (*site).serveState},
		{"/events", "text/event-stream; charset=utf-8", (*site).serveEvents},
		{"/picture.svg", "image/svg+xml; charset=utf-8", (*site).servePicture},
		{"/line", "text/plain; charset=utf-8", (*site).serveLine},
		{"/squint.png", "image/png", (*site).serveSquint},
		{"/prints.png", "image/png", (*site).servePrints},
		{"/report", "application/json; charset=utf-8", (*site).serveReport},
		{"/color", "application/json; charset=utf-8", (*site).serveColor},
		{"/auditions", "application/json; charset=utf-8", (*site).serveAuditions},
		{"/audition", "application/json; charset=utf-8", (*site).serveAudition},
		{"/cloth.png", "image/png", (*site).serveCloth},
		{"/fussy", "application/json; charset=utf-8", (*site).serveFussy},
		{"/centers", "application/json; charset=utf-8", (*site).serveCenters},
		{"/motif", "application/json; charset=utf-8", (*site).serveMotif},
		{"/diagram", "application/json; charset=utf-8", (*site).serveDiagram},
		{patternPage, "text/html; charset=utf-8", (*site).servePattern},
	}
	for _, f := range savedFiles() {
		list = append(list, route{f.path, f.contentType, f.serve})
	}
	for _, name := range assets() {
		list = append(list, route{"/" + name, contentTypeOf(name), serveAsset(name)})
	}
	return list
}

// assets are the names of the page's files but for the page itself, which is filled in.
func assets() []string {
	entries, err := page.ReadDir("page")
	if err != nil {
		panic("preview: " + err.Error())
	}
	var list []string
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".html") { // pages are filled in
			list = append(list, e.Name())
		}
	}
	return list
}

func asset(name string) []byte {
	b, err := page.ReadFile("page/" + name)
	if err != nil {
		panic("preview: " + err.Error())
	}
	return b
}

// assetsKey changes with any of the page's files.
var assetsKey = sync.OnceValue(func() string {
	sum := sha256.New()
	for _, name := range append(assets(), "index.html", "gallery.html") {
		_, _ = sum.Write(asset(name)) // a hash takes everything
	}
	return hex.EncodeToString(sum.Sum(nil)[:8])
})

func contentTypeOf(name string) string {
	switch {
	case strings.HasSuffix(name, ".js"):
		return "text/javascript; charset=utf-8"
	case strings.HasSuffix(name, ".css"):
		return "text/css; charset=utf-8"
	}
	return "image/svg+xml; charset=utf-8"
}

func serveAsset(name string) func(*site, http.ResponseWriter, *http.Request) {
	content := asset(name)
	if whole, ok := bundles()[name]; ok {
		content = whole
	}
	return func(_ *site, w http.ResponseWriter, _ *http.Request) { respond(w, content) }
}

// respond answers with content; a client that went away is no concern of ours.
func respond(w http.ResponseWriter, content []byte) {
	w.Header().Set("Content-Length", strconv.Itoa(len(content)))
	_, _ = w.Write(content)
}

// servePicture answers with the picture as a file of its own.
func (s *site) servePicture(w http.ResponseWriter, r *http.Request) {
	q := r.URL.Query()
	o := svgout.Options{ByFabric: q.Get("patches") == "", SeamLines: svgout.SeamsLeftOut, Legend: q.Get("legend") != "", Prints: q.Get("prints") != ""}
	if q.Get("seams") != "" {
		o.SeamLines = svgout.SeamsDrawn
	}
	w.Header().Set("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'; sandbox")
	s.serveFile(w, r, func(of *study, sign *stop.Sign) ([]byte, error) {
		top, ok, err := s.auditioned(of, r, sign)
		if err != nil {
			return nil, err
		}
		if !ok {
			top = of.plans.Top
		}
		var b bytes.Buffer
		err = drawView(sign.Writer(&b), top, q.Get("view"), o)
		return b.Bytes(), err
	})
}

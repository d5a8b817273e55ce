//go:build judges

package preview

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// webHost is a web host that holds the folder of `site`, and nothing else: it knows no kinds of files but by their endings, and notes what it is
// asked for.
type webHost struct {
	*httptest.Server
	mutex sync.Mutex
	files map[string][]byte
	asked []string // that it does not have, and reports of what pages may not do
}

// strict is what the host says that pages may do: no more than the pages say themselves.
const strict = sitePolicy + "; frame-ancestors 'none'; report-uri /report"

func (h *webHost) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimPrefix(r.URL.Path, "/")
	if name == "" {
		name = "index.html"
	}
	h.mutex.Lock()
	defer h.mutex.Unlock()
	content, ok := h.files[name]
	if !ok {
		var b bytes.Buffer
		_, _ = b.ReadFrom(r.Body)
		h.asked = append(h.asked, r.Method+" "+r.URL.String()+" "+b.String())
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Security-Policy", strict)
	w.Header().Set("Content-Type", map[string]string{".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml", ".gz": "application/gzip"}[filepath.Ext(name)])
	w.Header().Set("ETag", fmt.Sprintf("%q", fmt.Sprint(len(content)))) // nothing changes while a test runs
	http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(content))
}

var builtOnce struct {
	sync.Once
	engine Engine
	err    error
}

// engineForTests is the engine, built once.
func engineForTests(t testing.TB) Engine {
	t.Helper()
	builtOnce.Do(func() {
		if builtOnce.err = buildEngine(&builtOnce.engine); builtOnce.err != nil {
			return
		}
	})
	must(t, builtOnce.err)
	return builtOnce.engine
}

func buildEngine(e *Engine) error {
	folder, err := os.MkdirTemp("", "engine")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	made := filepath.Join(folder, "engine.wasm")
	build := exec.Command("go", "build", "-trimpath", "-gcflags", "all=-l", "-ldflags", "-s -w", "-o", made, "eighthturn/cmd/engine")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		return &exec.Error{Name: string(out), Err: err}
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	if e.Start, err = os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js")); err != nil {
		return err
	}
	plain, err := os.ReadFile(made)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestSpeed)
	if err != nil {
		return err
	}
	if _, err := w.Write(plain); err != nil {
		return err
	}
	err = w.Close()
	e.Packed = b.Bytes()
	return err
}

// newHost serves the folder of `site`.
func newHost(t testing.TB) *webHost {
	t.Helper()
	h := &webHost{files: map[string][]byte{}}
	for _, f := range Static(engineForTests(t), "https://example.com/eighthturn") {
		var b bytes.Buffer
		must(t, f.Write(&b))
		h.files[f.Name] = b.Bytes()
	}
	h.Server = httptest.NewServer(h)
	t.Cleanup(h.Close)
	return h
}

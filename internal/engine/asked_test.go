package engine

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"

	"eighthturn/layout"
	"eighthturn/palettes"
)

// TestPagesAskForFiles: a page puts files in, is told what became of each, gets every file back as it was, alone and all together, and
// takes them away; all that is not about files is for the preview.
func TestPagesAskForFiles(t *testing.T) {
	kept := newStore()
	h, _ := kept.page()
	served := h.Handler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { fmt.Fprint(w, "the preview's ", r.URL.Path) }))
	ask := func(method, address, body string) (int, string, string) {
		w := httptest.NewRecorder()
		served.ServeHTTP(w, httptest.NewRequest(method, address, strings.NewReader(body)))
		return w.Code, w.Header().Get("Content-Type"), strings.TrimSpace(w.Body.String())
	}
	const data = "application/json; charset=utf-8"
	for _, c := range []struct {
		method, address, body string
		status                int
		kind, says            string
	}{
		{"POST", "/take?name=harbor.quilt", "side 6", 200, data, `{"taken":["harbor.quilt"],"left":[]}`},
		{"POST", "/take?name=blue.png", photo(t), 200, data, `{"taken":["blue.png"],"left":[]}`},
		{"POST", "/take?name=notes.doc", "", 200, data, `{"taken":[],"left":[{"name":"notes.doc","why":"Only layouts (.quilt), photos (.jpg, .png) and zip files of them can be added."}]}`},
		{"GET", "/photos", "", 200, data, `["blue.png"]`},
		{"GET", "/file?name=harbor.quilt", "", 200, "application/octet-stream", "side 6"},
		{"GET", "/file?name=none.quilt", "", 404, "text/plain; charset=utf-8", "There is no such file here."},
		{"POST", "/remove?name=none.quilt", "", 200, data, "true"},
		{"POST", "/remove?name=blue.png", "", 200, data, "true"},
		{"GET", "/photos", "", 200, data, "[]"},
		{"GET", "/remove?name=harbor.quilt", "", 200, "text/plain; charset=utf-8", "the preview's /remove"},
		{"GET", "/elsewhere", "", 200, "text/plain; charset=utf-8", "the preview's /elsewhere"},
	} {
		if status, kind, says := ask(c.method, c.address, c.body); status != c.status || kind != c.kind || says != c.says {
			t.Errorf("%s %s: %d, %s, %q; wanted %d, %s, %q", c.method, c.address, status, kind, says, c.status, c.kind, c.says)
		}
	}
	status, kind, all := ask("GET", "/all.zip", "")
	list, err := zip.NewReader(strings.NewReader(all), int64(len(all)))
	if status != 200 || kind != "application/zip" || err != nil || len(list.File) != 1 || list.File[0].Name != "harbor.quilt" {
		t.Errorf("all files are %d, %s, %q: %v", status, kind, all, err)
	}
	kept.files["harbor.quilt"] = Changed{[]byte("side 7"), "another page's"}
	if status, _, says := ask("POST", "/remove?name=harbor.quilt", ""); status != 409 || says != "It was changed meanwhile, and stays." {
		t.Errorf("what another page has changed is taken away: %d, %q", status, says)
	}
	if _, _, says := ask("GET", "/file?name=harbor.quilt", ""); says != "side 7" {
		t.Errorf("then it says %q", says)
	}
}

// TestFilesAreAsOnADisk: what is asked of files and their names has the answers that a disk would give.
func TestFilesAreAsOnADisk(t *testing.T) {
	h, _ := newStore().page()
	for name, text := range map[string]string{"b.quilt": "side 6", "a.quilt": ""} {
		if err := h.Create(name, text); err != nil {
			t.Fatal(err)
		}
	}
	info, err := h.Stat("./b.quilt")
	if err != nil || info.Name() != "b.quilt" || info.Size() != 6 || info.IsDir() || !info.Mode().IsRegular() || info.Sys() != nil {
		t.Errorf("of a file it is said: %v, %v", info, err)
	}
	if _, err := h.Stat("c.quilt"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("of no file: %v", err)
	}
	var names []string
	for _, e := range h.List("") {
		names = append(names, e.Name())
	}
	if !slices.Equal(names, []string{"a.quilt", "b.quilt"}) {
		t.Errorf("listed: %q", names)
	}
	if err := h.Create("b.quilt", "other"); !errors.Is(err, fs.ErrExist) || says(h, "b.quilt") != "side 6" {
		t.Errorf("made anew: %v", err)
	}
	if err := h.Update("c.quilt", "", "x"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("changed where there is none: %v", err)
	}
	if err := h.Remove("c.quilt"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("taken away where there is none: %v", err)
	}
}

// TestTakenUpToTheLimits: the last file of a zip file and the last byte of a layout that may be are taken, the next are left and told.
func TestTakenUpToTheLimits(t *testing.T) {
	h, _ := newStore().page()
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for i := range maxTaken + 2 {
		if _, err := w.Create(fmt.Sprintf("%04d.quilt", i)); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	got := h.Take("many.zip", b.Bytes())
	if want := []Left{{"many.zip", "Only its first 1000 files were added."}}; len(got.Taken) != maxTaken || !slices.Equal(got.Left, want) {
		t.Errorf("%d are taken, left %q", len(got.Taken), got.Left)
	}
	for name, c := range map[string]struct{ text, why string }{
		"just.quilt":                        {strings.Repeat("#", layout.MaxBytes), ""},
		"over.quilt":                        {strings.Repeat("#", layout.MaxBytes+1), fmt.Sprintf("It has %d bytes; a layout may have at most %d.", layout.MaxBytes+1, layout.MaxBytes)},
		"over.jpg":                          {strings.Repeat("#", palettes.MaxPhotoBytes+1), "It is too large: the photo has 65 MB, expected up to 64."},
		strings.Repeat("a", 114) + ".quilt": {"", ""},
		strings.Repeat("a", 115) + ".quilt": {"", "Give it a name of letters, digits, blanks and hyphens."},
		"a\u202eb.quilt":                    {"", "Give it a name of letters, digits, blanks and hyphens."},
	} {
		var why string
		got := h.Take(name, []byte(c.text))
		if len(got.Left) > 0 {
			why = got.Left[0].Why
		}
		if why != c.why || (len(got.Taken) == 1) != (c.why == "") {
			t.Errorf("%.20s…: taken %d, left for %q, wanted %q", name, len(got.Taken), why, c.why)
		}
	}
	if b, err := json.Marshal(h.Take("none.zip", zipped(t, nil))); err != nil || string(b) != `{"taken":[],"left":[]}` {
		t.Errorf("of an empty zip file: %s", b)
	}
}

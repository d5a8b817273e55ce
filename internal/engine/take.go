package engine

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"net/http"
	"path"
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/files"
	"eighthturn/internal/preview"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// Limits of what is taken in at once. A layout and a photo have their own, as on a disk.
const (
	maxTaken = 1_000     // files
	maxBytes = 200 << 20 // together
)

// photoEndings are those of photos that a layout may name.
var photoEndings = []string{".jpg", ".jpeg", ".png"}

// Left is a file that was not taken in, and why: a sentence.
type Left struct {
	Name string `json:"name"`
	Why  string `json:"why"`
}

// Taken is what became of files that were handed over.
type Taken struct {
	Taken []string `json:"taken"` // the names that they have here
	Left  []Left   `json:"left"`
}

// Take takes in a layout, a photo, or a zip file of them. Nothing is replaced: a layout whose name another has gets a new one.
func (h *Held) Take(name string, content []byte) Taken {
	t := Taken{[]string{}, []Left{}}
	if !strings.EqualFold(path.Ext(name), ".zip") {
		t.take(h, name, content)
		return t
	}
	list, err := zip.NewReader(bytes.NewReader(content), int64(len(content)))
	if err != nil {
		t.leave(name, "This is no zip file, or only a part of one.")
		return t
	}
	room := int64(maxBytes)
	for i, f := range list.File {
		switch {
		case f.FileInfo().IsDir() || strings.HasPrefix(path.Base(f.Name), "."):
			continue
		case i >= maxTaken:
			t.leave(name, fmt.Sprintf("Only its first %d files were added.", maxTaken))
			return t
		}
		b, why := unzipped(f, min(room, max(layout.MaxBytes, palettes.MaxPhotoBytes)))
		if room -= int64(len(b)); why != "" {
			t.leave(f.Name, why)
			continue
		}
		t.take(h, f.Name, b)
	}
	return t
}

// unzipped is a file of a zip file, if its head says that it has no more than so many bytes, and it has no more than that; else what was
// read of it, and why it is left, in a sentence.
func unzipped(f *zip.File, most int64) (content []byte, why string) {
	if most < 0 || f.UncompressedSize64 > uint64(most) {
		return nil, "It is too large."
	}
	r, err := f.Open()
	if err == nil {
		defer r.Close()
		content, err = io.ReadAll(r) // which ends where the head says, with an error if there is more
	}
	if err != nil {
		return content, "It cannot be read: the zip file is damaged, or locked by a password."
	}
	return content, ""
}

func (t *Taken) leave(name, why string) { t.Left = append(t.Left, Left{layout.Visible(name), why}) }

// take takes in one file under its name without folders.
func (t *Taken) take(h *Held, name string, content []byte) {
	base := path.Base(strings.ReplaceAll(name, `\`, "/"))
	ending := strings.ToLower(path.Ext(base))
	isPhoto := slices.Contains(photoEndings, ending)
	switch {
	case ending != preview.Ending && !isPhoto:
		t.leave(name, "Only layouts ("+preview.Ending+"), photos (.jpg, .png) and zip files of them can be added.")
		return
	case !files.IsFileName(base) || strings.HasPrefix(base, ".") || len(base) > 120 || layout.Visible(base) != base:
		t.leave(name, "Give it a name of letters, digits, blanks and hyphens.")
		return
	case !isPhoto && len(content) > layout.MaxBytes:
		t.leave(name, fmt.Sprintf("It has %d bytes; a layout may have at most %d.", len(content), layout.MaxBytes))
		return
	case isPhoto && len(content) > palettes.MaxPhotoBytes:
		t.leave(name, "It is too large: "+palettes.TooLarge(int64(len(content))).Error()+".")
		return
	}
	if isPhoto {
		if _, err := palettes.ReadSwatch(nil, content); err != nil {
			t.leave(name, "It is no photo that can be read: "+err.Error()+".")
			return
		}
	}
	if content == nil {
		content = []byte{}
	}
	stem := strings.TrimSuffix(base, path.Ext(base))
	for n := 2; ; n++ {
		there := h.file(base)
		if there != nil && bytes.Equal(there.content, content) || there == nil && h.add(base, content) == nil {
			t.Taken = append(t.Taken, base)
			return
		}
		if isPhoto {
			t.leave(name, "Another photo of this name is here already. Remove that one first, or give this one another name.")
			return
		}
		base = stem + "-" + strconv.Itoa(n) + path.Ext(base)
	}
}

// Zip is all files as one zip file.
func (h *Held) Zip() ([]byte, error) {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for _, e := range h.List("") {
		f, err := w.Create(e.Name())
		if err == nil {
			_, err = f.Write(h.content(e.Name()))
		}
		if err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func (h *Held) content(name string) []byte {
	if f := h.file(name); f != nil {
		return f.content
	}
	return nil
}

// Handler is all that pages may ask for: the preview's own addresses, and those by which files come in and go out.
func (h *Held) Handler(within http.Handler) http.Handler {
	own := map[string]http.HandlerFunc{
		"GET /all.zip": h.serveZip, "GET /file": h.serveFile, "GET /photos": func(w http.ResponseWriter, _ *http.Request) { sent(w, h.listPhotos()) },
		"POST /take": h.serveTake, "POST /remove": h.serveRemove,
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if serve := own[r.Method+" "+r.URL.Path]; serve != nil {
			serve(w, r)
			return
		}
		within.ServeHTTP(w, r)
	})
}

func (h *Held) serveZip(w http.ResponseWriter, _ *http.Request) {
	b, err := h.Zip()
	if err != nil {
		http.Error(w, "This cannot be made.", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/zip")
	_, _ = w.Write(b)
}

func (h *Held) serveFile(w http.ResponseWriter, r *http.Request) {
	f := h.file(r.URL.Query().Get("name"))
	if f == nil {
		http.Error(w, "There is no such file here.", http.StatusNotFound)
		return
	}
	w.Header().Set("Content-Type", "application/octet-stream")
	_, _ = w.Write(f.content)
}

func (h *Held) serveTake(w http.ResponseWriter, r *http.Request) {
	name := r.URL.Query().Get("name")
	b, err := io.ReadAll(io.LimitReader(r.Body, maxBytes+1))
	if err != nil || len(b) > maxBytes {
		sent(w, Taken{[]string{}, []Left{{layout.Visible(name), "It is too large."}}})
		return
	}
	sent(w, h.Take(name, b))
}

func (h *Held) serveRemove(w http.ResponseWriter, r *http.Request) {
	err := h.Remove(r.URL.Query().Get("name"))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		http.Error(w, "It was changed meanwhile, and stays.", http.StatusConflict)
		return
	}
	sent(w, true)
}

// listPhotos are the names of all photos.
func (h *Held) listPhotos() []string {
	list := []string{}
	for _, e := range h.List("") {
		if !strings.EqualFold(path.Ext(e.Name()), preview.Ending) {
			list = append(list, e.Name())
		}
	}
	return list
}

func sent(w http.ResponseWriter, v any) {
	b, err := json.Marshal(v)
	if err != nil {
		http.Error(w, "This cannot be made.", http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	_, _ = w.Write(b)
}

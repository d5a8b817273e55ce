package preview

import (
	"encoding/json"
	"errors"
	"html"
	"io"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"eighthturn/internal/files"
	"eighthturn/layout"
)

// galleryRoutes are the addresses of a folder, but for those of its layouts.
func (f *folder) galleryRoutes() []route {
	list := []route{
		{"/", "text/html; charset=utf-8", func(_ *site, w http.ResponseWriter, _ *http.Request) {
			respond(w, []byte(strings.NewReplacer("{{folder}}", html.EscapeString(f.state.file), "{{about}}", "", "{{shelf}}", "").Replace(string(asset("gallery.html")))))
		}},
		{"/layouts", "application/json; charset=utf-8", func(_ *site, w http.ResponseWriter, _ *http.Request) { respond(w, encoded(f.listing())) }},
		{"/thumbnail.png", "image/png", func(_ *site, w http.ResponseWriter, r *http.Request) { f.serveThumbnail(w, r) }},
	}
	for _, name := range assets() {
		list = append(list, route{"/" + name, contentTypeOf(name), serveAsset(name)})
	}
	return list
}

// beginPath is the one address that writes: a copy of a beginning, into the folder.
const beginPath = "/begin"

const maxBeginBytes = 4 << 10

// wish is what a page sends that asks for a copy.
type wish struct {
	Begin string `json:"begin"` // name of the beginning
	File  string `json:"file"`  // name of the copy
}

// serveBegin writes a copy of a beginning under a name that no file has yet.
func (f *folder) serveBegin(w http.ResponseWriter, r *http.Request) {
	var wanted wish
	body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, maxBeginBytes))
	if err != nil || json.Unmarshal(body, &wanted) != nil {
		http.Error(w, "This is no request for a copy.", http.StatusBadRequest)
		return
	}
	at := slices.IndexFunc(f.beginnings, func(b Beginning) bool { return b.Name == wanted.Begin })
	if at < 0 {
		http.Error(w, "There is no such layout to begin with.", http.StatusNotFound)
		return
	}
	name, why := copyName(wanted.File)
	if why != "" {
		http.Error(w, why, http.StatusUnprocessableEntity)
		return
	}
	switch err := f.options.shelf.Create(filepath.Join(f.path, name), f.beginnings[at].Text); {
	case errors.Is(err, fs.ErrExist):
		http.Error(w, "A file called "+name+" is already there. Choose another name.", http.StatusConflict)
	case err != nil:
		http.Error(w, "The layout cannot be written: "+layout.Visible(err.Error()), http.StatusInternalServerError)
	default:
		respond(w, encoded(map[string]string{"address": addressOf(name)}))
	}
}

// copyName is a file's name with its ending, or a sentence that says why it is none.
func copyName(text string) (name, why string) {
	name = strings.TrimSpace(text)
	if !strings.EqualFold(filepath.Ext(name), Ending) {
		name += Ending
	}
	base := strings.TrimSuffix(name, filepath.Ext(name))
	switch {
	case base == "" || len(name) > 120:
		return "", "Give the layout a name of 1 to 100 letters."
	case stem(name) != base || strings.HasPrefix(name, ".") || !files.IsFileName(name):
		return "", "Use letters, digits, blanks and hyphens in the name."
	}
	return name, ""
}

// writeCopy writes a file where none stands, whole or not at all. The name is taken first, so that nothing is ever replaced.
func writeCopy(path, text string) error {
	claimed, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o666)
	if err != nil {
		return err
	}
	if err := claimed.Close(); err != nil {
		return err
	}
	empty := func(head []byte) bool { return len(head) == 0 }
	err = files.Write(path, files.Options{Ours: empty}, func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	})
	if info, stat := os.Lstat(path); err != nil && stat == nil && info.Size() == 0 {
		_ = os.Remove(path) // the name was only taken
	}
	return err
}

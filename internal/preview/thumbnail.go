package preview

import (
	"bytes"
	"context"
	"net/http"
	"sync"

	"eighthturn/internal/files"
	"eighthturn/internal/quilt"
	"eighthturn/internal/render/pixels"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// thumbnailPixels is how many pixels the longer side of a small picture has: two for each that most screens show of it.
const thumbnailPixels = 480

// looked is what the gallery knows of a layout's text. Each part is made once.
type looked struct {
	text   string
	album  *files.Album
	once   sync.Once
	title  string
	size   string // finished, in words
	errors int

	top   *quilt.Top // until it is painted; nil for none
	paint sync.Once
	png   []byte
}

// look reads the layout.
func (l *looked) look() {
	l.once.Do(func() {
		d, err := drawWith(l.album, variant{})(context.Background(), l.text, drawing{})
		l.errors, _ = layout.Count(d.faults)
		if err != nil || d.top == nil {
			l.errors = max(l.errors, 1)
			return
		}
		l.title, l.size, l.top = d.top.Title, inWords(d.top.Outer, d.top.Units), d.top
	})
}

// picture is the layout as a small picture, painted when it is first asked for; nil for none.
func (l *looked) picture() []byte {
	l.look()
	l.paint.Do(func() {
		top := l.top
		if l.top = nil; top == nil {
			return
		}
		size, err := pixels.SizeOf(top, thumbnailPixels)
		if err != nil {
			return
		}
		var b bytes.Buffer
		if pixels.WritePNG(&b, top, pixels.Paint(top, size, func(f int) palettes.Colour { return top.Fabrics[f].Colour })) == nil {
			l.png = b.Bytes()
		}
	})
	return l.png
}

// serveThumbnail answers with the small picture of a layout that the gallery has listed.
func (f *folder) serveThumbnail(w http.ResponseWriter, r *http.Request) {
	f.mu.Lock()
	of := f.looked[r.URL.Query().Get("of")]
	f.mu.Unlock()
	if of == nil {
		http.Error(w, "There is nothing here.", http.StatusNotFound)
		return
	}
	picture := of.picture()
	if picture == nil {
		http.Error(w, "This cannot be made.", http.StatusNotFound)
		return
	}
	w.Header().Set("Cache-Control", "private, max-age=86400") // the address changes with the text
	respond(w, picture)
}

package preview

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"eighthturn/internal/files"
	"eighthturn/layout"
)

// Ending is how the names of the layouts end that a folder is looked through for.
const Ending = ".quilt"

// Beginning is a layout that somebody may begin a copy of.
type Beginning struct {
	Name  string // of the copy's file, without its ending
	About string // what it makes
	Text  string
}

const (
	maxListed   = 500 // layouts of a folder
	maxFollowed = 6   // at a time; a page of one that is followed no longer takes it up again
)

// folder is a preview of the layouts in a folder: a gallery of them, and a site for each that is being looked at, under an address
// of its own.
type folder struct {
	*site      // the gallery's
	path       string
	beginnings []Beginning // empty where nothing is written
	token      string      // that a page must know which asks for a file to be written
	options    Options
	running    context.Context // what follows layouts ends with it

	mu     sync.Mutex
	rooms  map[string]*room
	looked map[string]*looked // at layouts, by what they were made of
}

// room is the site of one layout of a folder.
type room struct {
	*site
	end   func()
	asked time.Time
}

// RunFolder shows the layouts of a folder until the context ends, which is no error. Where there are beginnings, the gallery shows them
// too, and writes a copy of one into the folder when somebody asks for it. A PortError says that the port cannot be had.
func RunFolder(ctx context.Context, path string, beginnings []Beginning, o Options) error {
	path, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	l, err := listen(o.Port)
	if err != nil {
		return err
	}
	f := newFolder(ctx, path, beginnings, o)
	served := make(chan error, 1)
	go func() { served <- f.serve(ctx, l) }()
	f.announce(l.Addr().String(), f.options)
	return <-served
}

func newFolder(ctx context.Context, path string, beginnings []Beginning, o Options) *folder {
	if o.Output == nil {
		o.Output = io.Discard
	}
	gallery := o
	gallery.Edit, gallery.Editor = false, "" // of layouts alone
	o.shelf = cmp.Or[Shelf](o.shelf, disk{})
	f := &folder{site: newSite(path, gallery), path: path, beginnings: beginnings, token: random(), options: o, running: ctx,
		rooms: map[string]*room{}, looked: map[string]*looked{}}
	f.options.Secret = false // the gallery's site asks for the key, and tells it
	f.site.routes = map[string]route{}
	for _, r := range f.galleryRoutes() {
		f.site.routes[r.path] = r
	}
	if len(beginnings) > 0 {
		f.site.posts = map[string]route{beginPath: {beginPath, "application/json; charset=utf-8", func(_ *site, w http.ResponseWriter, r *http.Request) { f.serveBegin(w, r) }}}
	}
	f.site.folder = f
	return f
}

// names are the layouts in the folder now, in the order of the alphabet.
func (f *folder) names() []string {
	list := f.options.shelf.List(f.path)
	var names []string
	for _, e := range list {
		name := e.Name()
		if !strings.EqualFold(filepath.Ext(name), Ending) || strings.HasPrefix(name, ".") || len(names) == maxListed {
			continue
		}
		if info, err := f.options.shelf.Stat(filepath.Join(f.path, name)); err == nil && info.Mode().IsRegular() {
			names = append(names, name)
		}
	}
	return names
}

// quiltPrefix begins the addresses of layouts: behind it stand the file's name, escaped, and what a site of its own has at its root.
const quiltPrefix = "/quilt/"

func addressOf(name string) string { return quiltPrefix[1:] + url.PathEscape(name) + "/" }

// serveRoom hands a request for a layout on to its site, and says whether it was one.
func (f *folder) serveRoom(w http.ResponseWriter, r *http.Request) bool {
	rest, ok := strings.CutPrefix(r.URL.EscapedPath(), quiltPrefix)
	if !ok {
		return false
	}
	escaped, path, ok := strings.Cut(rest, "/")
	name, err := url.PathUnescape(escaped)
	if err != nil || !ok {
		http.Error(w, "There is nothing here.", http.StatusNotFound)
		return true
	}
	site := f.room(name)
	if site == nil {
		http.Error(w, "There is no such layout in this folder.", http.StatusNotFound)
		return true
	}
	own := r.Clone(r.Context())
	own.URL.Path, own.URL.RawPath = "/"+path, ""
	site.ServeHTTP(w, own)
	return true
}

// room is the site of a layout, which is followed from now on; nil if the folder has none of that name, and no page knows it.
func (f *folder) room(name string) *site {
	f.mu.Lock()
	defer f.mu.Unlock()
	if r := f.rooms[name]; r != nil {
		r.asked = time.Now()
		return r.site
	}
	if !slices.Contains(f.names(), name) {
		return nil
	}
	for len(f.rooms) >= maxFollowed {
		f.endLongestUnasked()
	}
	ctx, end := context.WithCancel(f.running)
	r := &room{site: f.follow(ctx, filepath.Join(f.path, name)), asked: time.Now()}
	r.end = func() { close(r.site.ending); end() }
	f.rooms[name] = r
	return r.site
}

func (f *folder) endLongestUnasked() {
	oldest := ""
	for name, r := range f.rooms {
		if oldest == "" || r.asked.Before(f.rooms[oldest].asked) {
			oldest = name
		}
	}
	f.rooms[oldest].end()
	delete(f.rooms, oldest)
}

// follow begins to follow a layout of the folder.
func (f *folder) follow(ctx context.Context, path string) *site {
	o := f.options
	o.Output = named{o.Output, layout.Visible(filepath.Base(path)) + ": "}
	album := o.shelf.Album(path)
	if o.draw == nil {
		o.draw = drawWith(album, variant{o.Size, o.Colorway}, o.Tries...)
	}
	o.album = album
	s := newSite(path, o)
	s.beside = true
	go (&follower{shelf: o.shelf, path: path, draw: o.draw, album: album}).follow(ctx, &o, s)
	return s
}

// named writes lines with a name before each.
type named struct {
	io.Writer
	name string
}

func (n named) Write(line []byte) (int, error) {
	if _, err := fmt.Fprintf(n.Writer, "%s%s", n.name, line); err != nil {
		return 0, err
	}
	return len(line), nil
}

// listed is a layout as the gallery shows it.
type listed struct {
	File    string `json:"file,omitempty"`
	Begin   string `json:"begin,omitempty"` // name of a beginning
	Title   string `json:"title"`
	Size    string `json:"size,omitempty"`
	About   string `json:"about,omitempty"`
	Address string `json:"address,omitempty"`
	Picture string `json:"picture"` // address of a small picture, "" for none
}

// listing is all that the gallery shows.
type listing struct {
	Folder     string   `json:"folder"`
	Layouts    []listed `json:"layouts"`
	Beginnings []listed `json:"beginnings"`
	Token      string   `json:"token,omitempty"`
}

func (f *folder) listing() listing {
	l := listing{Folder: layout.Visible(filepath.Base(f.path)), Layouts: []listed{}, Beginnings: []listed{}}
	used := map[string]bool{}
	for _, name := range f.names() {
		r := read(f.options.shelf, filepath.Join(f.path, name))
		item := listed{File: name, Title: layout.Visible(name), Address: addressOf(name), About: r.problem}
		if r.problem == "" {
			f.describe(&item, used, r.text, f.options.shelf.Album(filepath.Join(f.path, name)))
		}
		l.Layouts = append(l.Layouts, item)
	}
	for _, b := range f.beginnings {
		item := listed{Begin: b.Name, About: b.About}
		f.describe(&item, used, b.Text, nil)
		l.Beginnings = append(l.Beginnings, item)
		l.Token = f.token
	}
	f.forget(used)
	return l
}

// describe fills in what a layout's text says.
func (f *folder) describe(item *listed, used map[string]bool, text string, album *files.Album) {
	sum := sha256.Sum256([]byte(text))
	key := hex.EncodeToString(sum[:8])
	used[key] = true
	f.mu.Lock()
	of := f.looked[key]
	if of == nil {
		of = &looked{text: text, album: album}
		f.looked[key] = of
	}
	f.mu.Unlock()
	of.look()
	if of.errors > 0 {
		item.About = faultCount(of.errors, 0)
		return
	}
	item.Title, item.Size, item.Picture = cmp.Or(of.title, item.Title, item.Begin), of.size, "thumbnail.png?of="+key
}

// forget drops what was made of layouts that are no longer so.
func (f *folder) forget(used map[string]bool) {
	f.mu.Lock()
	defer f.mu.Unlock()
	for key := range f.looked {
		if !used[key] {
			delete(f.looked, key)
		}
	}
}

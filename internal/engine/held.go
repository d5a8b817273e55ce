// Package engine turns what a page of a browser asks for into answers of a preview that runs in the same browser: layouts and photos are
// held in memory, and a keeper, the browser's own storage, is told of each change before it counts.
package engine

import (
	"bytes"
	"errors"
	"io/fs"
	"maps"
	"path"
	"slices"
	"sync"
	"time"

	"eighthturn/internal/files"
)

// Keeper keeps files for the next time. Several pages may share one, so a file is kept only over the version that it was made of.
type Keeper interface {
	// Keep keeps content in place of a version, "" where there is to be no file of that name yet. Nil content takes the file away. A
	// *Changed says that another version is there.
	Keep(name string, content []byte, over string) (version string, err error)
}

// Changed says what a keeper has in place of the version that was expected.
type Changed struct {
	Content []byte // nil where there is no such file
	Version string
}

// Error says that.
func (c *Changed) Error() string { return "it was changed meanwhile" }

// Held is a folder in memory. It may be used by several at once.
type Held struct {
	keeper Keeper
	trust  func(name string, content []byte, why error) // is told what could not be kept and is held here alone; a nil error ends that

	mutex     sync.Mutex
	files     map[string]*held
	followers map[*follower]bool
	ticks     int64
}

// held is a file: its content is never written to.
type held struct {
	name    string
	content []byte
	version string // of the keeper
	unkept  bool
	changed time.Time // differs whenever the content does
}

type follower struct {
	name    string
	changed func()
}

// NewHeld is an empty folder. What cannot be kept is held even so, and told to trust.
func NewHeld(keeper Keeper, trust func(name string, content []byte, why error)) *Held {
	return &Held{keeper: keeper, trust: trust, files: map[string]*held{}, followers: map[*follower]bool{}}
}

// Hold takes over what the keeper has under a name, nil for nothing, at the start or when another page has changed it. What could not be
// kept stays.
func (h *Held) Hold(name string, content []byte, version string) {
	h.mutex.Lock()
	defer h.mutex.Unlock()
	if f := h.files[name]; f != nil && (f.unkept || f.version == version) {
		return
	}
	h.put(name, content, version, false)
}

// put is called with the lock held.
func (h *Held) put(name string, content []byte, version string, unkept bool) {
	if content == nil {
		delete(h.files, name)
	} else {
		h.ticks++
		h.files[name] = &held{name, content, version, unkept, time.Unix(h.ticks, 0)}
	}
	for f := range h.followers {
		if f.name == name {
			f.changed()
		}
	}
}

// change has a file kept in place of the one that is held, nil for none, and holds it. Where the keeper has another version, that is held
// instead, and the error is files.ErrChanged.
func (h *Held) change(name string, content []byte, there *held) error {
	over, unkept := "", false
	if there != nil {
		over, unkept = there.version, there.unkept
	}
	version, err := h.keeper.Keep(name, content, over)
	h.mutex.Lock()
	defer h.mutex.Unlock()
	if h.files[name] != there {
		return files.ErrChanged
	}
	var other *Changed
	switch {
	case errors.As(err, &other) && unkept && other.Content == nil:
		err = nil // nothing was kept that could have been changed
		version = over
	case errors.As(err, &other):
		h.put(name, other.Content, other.Version, false)
		return files.ErrChanged
	}
	if err != nil {
		version = over
	}
	h.put(name, content, version, err != nil)
	if err != nil || unkept {
		h.trust(name, content, err)
	}
	return nil
}

// Rescue holds what could not be kept the last time; it is tried again at the next change.
func (h *Held) Rescue(name string, content []byte) {
	h.mutex.Lock()
	defer h.mutex.Unlock()
	version := ""
	if f := h.files[name]; f != nil {
		version = f.version
	}
	h.put(name, content, version, true)
}

func (h *Held) file(name string) *held {
	h.mutex.Lock()
	defer h.mutex.Unlock()
	return h.files[path.Clean(name)]
}

// Open opens a file to be read.
func (h *Held) Open(name string) (fs.File, error) {
	if f := h.file(name); f != nil {
		return &reader{f, bytes.NewReader(f.content)}, nil
	}
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
}

// Stat says what there is to say of a file.
func (h *Held) Stat(name string) (fs.FileInfo, error) {
	if f := h.file(name); f != nil {
		return f, nil
	}
	return nil, &fs.PathError{Op: "stat", Path: name, Err: fs.ErrNotExist}
}

// List is all files, by their names.
func (h *Held) List(string) []fs.DirEntry {
	h.mutex.Lock()
	defer h.mutex.Unlock()
	var list []fs.DirEntry
	for _, name := range slices.Sorted(maps.Keys(h.files)) {
		list = append(list, fs.FileInfoToDirEntry(h.files[name]))
	}
	return list
}

// Update makes a layout say something else, if it still says what it did.
func (h *Held) Update(name, from, to string) error {
	f := h.file(name)
	switch {
	case f == nil:
		return fs.ErrNotExist
	case string(f.content) != from:
		return files.ErrChanged
	}
	return h.change(f.name, []byte(to), f)
}

// Create writes a layout where none stands.
func (h *Held) Create(name, text string) error { return h.add(path.Clean(name), []byte(text)) }

func (h *Held) add(name string, content []byte) error {
	if h.file(name) != nil {
		return fs.ErrExist
	}
	if err := h.change(name, content, nil); errors.Is(err, files.ErrChanged) {
		return fs.ErrExist
	} else {
		return err
	}
}

// Remove takes a file away.
func (h *Held) Remove(name string) error {
	f := h.file(name)
	if f == nil {
		return fs.ErrNotExist
	}
	return h.change(name, nil, f)
}

// Album is the photos that layouts may name: all that are held. There are no folders here, so one that a layout names is passed over.
func (h *Held) Album(string) *files.Album { return files.Of(photos{h}) }

type photos struct{ *Held }

func (p photos) Open(name string) (fs.File, error) { return p.Held.Open(path.Base(name)) }

// Follow has changed called whenever a file changes.
func (h *Held) Follow(name string, changed func()) (end func()) {
	f := &follower{path.Clean(name), changed}
	h.mutex.Lock()
	defer h.mutex.Unlock()
	h.followers[f] = true
	return func() {
		h.mutex.Lock()
		defer h.mutex.Unlock()
		delete(h.followers, f)
	}
}

func (f *held) Name() string       { return f.name }
func (f *held) Size() int64        { return int64(len(f.content)) }
func (f *held) Mode() fs.FileMode  { return 0o644 }
func (f *held) ModTime() time.Time { return f.changed }
func (f *held) IsDir() bool        { return false }
func (f *held) Sys() any           { return nil }

// reader is a file that is read.
type reader struct {
	*held
	*bytes.Reader
}

func (o *reader) Stat() (fs.FileInfo, error) { return o.held, nil }
func (o *reader) Size() int64                { return o.held.Size() }
func (o *reader) Close() error               { return nil }

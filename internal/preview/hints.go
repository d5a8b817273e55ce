package preview

import (
	"os"
	"path/filepath"
	"sync"

	"github.com/fsnotify/fsnotify"
)

// hints tell that the file may have changed. They are never believed and may all be missed:
// the file's content decides, and a clock looks at it too. What is watched is the folder of
// the file and of each link that leads to it, since a watch on the file itself dies with the
// first save that puts a new file in its place.
type hints struct {
	C       chan struct{} // holds one hint at the most
	trouble error         // why there are none
	watcher *fsnotify.Watcher
	folders map[string]os.FileInfo

	mu    sync.Mutex
	names map[string]bool // full names that matter
}

// newHints gives hints as far as the system lets it; notify is nil for none.
func newHints(notify func() (*fsnotify.Watcher, error)) *hints {
	h := &hints{C: make(chan struct{}, 1), folders: map[string]os.FileInfo{}}
	if notify == nil {
		return h
	}
	h.watcher, h.trouble = notify()
	if h.trouble != nil {
		h.watcher = nil
	} else {
		go h.listen()
	}
	return h
}

func (h *hints) close() {
	if h.watcher != nil {
		h.watcher.Close()
	}
}

// listen empties the watcher's channels at all times, so that a long drawing never holds
// them up.
func (h *hints) listen() {
	for {
		select {
		case e, ok := <-h.watcher.Events:
			if !ok {
				return
			}
			if h.matters(e.Name) {
				h.give()
			}
		case _, ok := <-h.watcher.Errors: // most likely that events were lost
			if !ok {
				return
			}
			h.give()
		}
	}
}

func (h *hints) matters(name string) bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.names[name]
}

func (h *hints) give() {
	select {
	case h.C <- struct{}{}:
	default:
	}
}

// aim watches the folders that a path leads through now. It is called at every look at the
// file, since folders are moved and links are turned without notice.
func (h *hints) aim(path string) {
	if h.watcher == nil {
		return
	}
	names, wanted := map[string]bool{}, map[string]bool{}
	for _, place := range places(path) {
		names[place] = true
		folder := filepath.Dir(place)
		names[folder] = true
		wanted[folder] = true
	}
	h.mu.Lock()
	h.names = names
	h.mu.Unlock()
	for folder := range h.folders {
		if !wanted[folder] {
			h.drop(folder)
		}
	}
	for folder := range wanted {
		h.watch(folder)
	}
}

func (h *hints) drop(folder string) {
	_ = h.watcher.Remove(folder) // it may be gone already
	delete(h.folders, folder)
}

// watch adds a folder, again if another one stands under its name now.
func (h *hints) watch(folder string) {
	info, err := os.Stat(folder)
	old, watched := h.folders[folder]
	switch {
	case err != nil:
		if watched {
			h.drop(folder)
		}
		return
	case watched && os.SameFile(old, info):
		return
	case watched:
		h.drop(folder)
	}
	if h.watcher.Add(folder) == nil { // otherwise the clock alone looks, and this is tried again
		h.folders[folder] = info
		h.give()
	}
}

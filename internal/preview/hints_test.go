package preview

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/fsnotify/fsnotify"
)

// TestEventsOfOtherSystems: what Windows and macOS tell of a save gives a hint, and what concerns other files gives none. The events are
// put in by hand, as fsnotify's backends for those systems give them.
func TestEventsOfOtherSystems(t *testing.T) {
	path := filepath.Join(t.TempDir(), "harbor.quilt")
	if err := os.WriteFile(path, []byte("strip 4\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	watcher, err := fsnotify.NewWatcher()
	if err != nil {
		t.Fatal(err)
	}
	h := newHints(func() (*fsnotify.Watcher, error) { return watcher, nil })
	defer h.close()
	h.aim(path)
	beside, folder := filepath.Join(filepath.Dir(path), "harbor.tmp"), filepath.Dir(path)
	for _, c := range []struct {
		name   string
		events []fsnotify.Event
		lost   bool
		want   bool
	}{
		{name: "Windows, in place: two changes", events: []fsnotify.Event{{Name: path, Op: fsnotify.Write}, {Name: path, Op: fsnotify.Write}}, want: true},
		{name: "Windows, by renaming over it", events: []fsnotify.Event{{Name: beside, Op: fsnotify.Create}, {Name: path, Op: fsnotify.Remove}, {Name: beside, Op: fsnotify.Rename}, {Name: path, Op: fsnotify.Create}}, want: true},
		{name: "Windows, more changes than its buffer holds", lost: true, want: true},
		{name: "macOS, by renaming over it", events: []fsnotify.Event{{Name: path, Op: fsnotify.Remove}, {Name: path, Op: fsnotify.Create}}, want: true},
		{name: "macOS, in place, with its rights touched", events: []fsnotify.Event{{Name: path, Op: fsnotify.Write | fsnotify.Chmod}}, want: true},
		{name: "macOS, the folder is moved away", events: []fsnotify.Event{{Name: folder, Op: fsnotify.Rename}}, want: true},
		{name: "another file", events: []fsnotify.Event{{Name: beside, Op: fsnotify.Create}, {Name: beside, Op: fsnotify.Write}}},
	} {
		for given := true; given; {
			given = hinted(h, 20*time.Millisecond) // what stood before
		}
		for _, e := range c.events {
			watcher.Events <- e
		}
		if c.lost {
			watcher.Errors <- fsnotify.ErrEventOverflow
		}
		wait := 5 * time.Second
		if !c.want {
			wait = 50 * time.Millisecond
		}
		if got := hinted(h, wait); got != c.want {
			t.Errorf("%s: a hint is given: %v", c.name, got)
		}
	}
}

func hinted(h *hints, within time.Duration) bool {
	select {
	case <-h.C:
		return true
	case <-time.After(within):
		return false
	}
}

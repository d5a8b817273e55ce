package preview

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"
	"syscall"
	"time"

	"eighthturn/layout"
)

// reading is what the file said at one moment: its text, or why there is none.
type reading struct {
	text    string
	problem string // "" for a text; a sentence without its full stop
	missing bool   // the problem is that there is no such file
	size    int64
	changed time.Time // as the file system says, which proves nothing
}

// same says whether two readings would be drawn alike.
func (r *reading) same(other *reading) bool {
	return r.problem == other.problem && r.text == other.text
}

// read reads the file if it can be a layout. Only regular files are opened, so that a pipe
// or a device cannot hold the preview up, and no more is read than a layout may have.
func read(shelf Shelf, path string) reading {
	info, err := shelf.Stat(path)
	if err != nil {
		return unreadable(err)
	}
	if problem := unfit(info); problem != "" {
		return reading{problem: problem}
	}
	file, err := shelf.Open(path)
	if err != nil {
		return unreadable(err)
	}
	defer file.Close()
	if info, err = file.Stat(); err != nil {
		return unreadable(err)
	}
	if problem := unfit(info); problem != "" {
		return reading{problem: problem}
	}
	var text strings.Builder
	text.Grow(int(info.Size()))
	if _, err := io.Copy(&text, io.LimitReader(file, layout.MaxBytes+1)); err != nil {
		return unreadable(err)
	}
	return reading{text: text.String(), size: info.Size(), changed: info.ModTime()}
}

// unmoved says whether the file has the size and the date that it had at a reading.
func (r *reading) unmoved(shelf Shelf, path string) bool {
	info, err := shelf.Stat(path)
	return err == nil && info.Size() == r.size && info.ModTime().Equal(r.changed)
}

// unfit says why something that is there is no layout, "" if it may be one.
func unfit(info fs.FileInfo) string {
	switch {
	case info.IsDir():
		return "this is a folder, a layout is a file"
	case !info.Mode().IsRegular():
		return "this is not an ordinary file"
	case info.Size() > layout.MaxBytes:
		return fmt.Sprintf("this file has %d bytes, a layout may have at most %d", info.Size(), layout.MaxBytes)
	}
	return ""
}

func unreadable(err error) reading {
	if errors.Is(err, fs.ErrNotExist) {
		return reading{problem: "the file does not exist yet; waiting for it", missing: true}
	}
	if errors.Is(err, syscall.ELOOP) {
		return reading{problem: "the file is a link that leads back to itself"}
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		err = path.Err
	}
	return reading{problem: "the file cannot be read: " + err.Error()}
}

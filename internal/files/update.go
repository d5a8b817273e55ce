package files

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"
)

// ErrChanged says that a file no longer says what it was thought to say.
var ErrChanged = errors.New("it was changed meanwhile")

// errNoExchange says that two files cannot change names in one step here.
var errNoExchange = errors.New("files cannot be exchanged here")

// Update makes a file say something else, if it still says what it did; ErrChanged says that it does not. Somebody who writes
// the file at the same time loses nothing: the new file and the old one change names in one step, the old one is looked at twice
// more, and if it says something else by now it gets its name back. Where the system has no such step the file is looked at just
// before the new one takes its name. A file that is not there, a link and what may only be read are refused, as by Write.
func Update(path, from, to string) error {
	o := Options{Ours: func([]byte) bool { return true }}
	there, err := o.allowed(path)
	if err != nil {
		return err
	}
	if there == nil {
		return fs.ErrNotExist
	}
	if !says(path, from) {
		return ErrChanged
	}
	folder := filepath.Dir(path)
	sweep(folder)
	f, err := create(folder)
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // the old text by then, or what was not to be
	if err := fill(f, there, func(w io.Writer) error { _, err := io.WriteString(w, to); return err }); err != nil {
		return err
	}
	if err := takeName(f.Name(), path, from, to, exchange); err != nil {
		return err
	}
	syncFolder(folder)
	return nil
}

// settling is how long the old file is left before it is looked at for the last time: whoever had found it by its name, and not yet
// opened it, writes into it.
const settling = 5 * time.Millisecond

// takeName gives a new file, which says to, the name of one that says from.
func takeName(fresh, path, from, to string, exchange func(a, b string) error) error {
	own, err := os.Lstat(fresh)
	if err != nil {
		return err
	}
	placed, before := standing{own, to}, standing{} // what is about to stand at path, and what stood there by our doing
	for first := true; ; first = false {
		err := exchange(fresh, path)
		if first && errors.Is(err, errNoExchange) {
			if !says(path, from) {
				return ErrChanged
			}
			return renamed(path, own, os.Rename(fresh, path))
		}
		if err != nil {
			return renamed(path, own, err)
		}
		out, err := stoodAt(fresh)
		switch {
		case err != nil:
			return err
		case first && out.text == from:
			time.Sleep(settling)
			if out, err = stoodAt(fresh); err != nil || out.text == from {
				return nil
			}
		case before.info != nil && os.SameFile(out.info, before.info) && out.text == before.text:
			return ErrChanged // what somebody wrote has its name again, and nobody wrote anything since
		}
		placed, before = out, placed
	}
}

// standing is a file and what it says, "" if it cannot be read.
type standing struct {
	info os.FileInfo
	text string
}

func stoodAt(path string) (standing, error) {
	info, err := os.Lstat(path)
	if err != nil || !info.Mode().IsRegular() {
		return standing{info: info}, err
	}
	b, _ := os.ReadFile(path) // what cannot be read gets its name back
	return standing{info, string(b)}, nil
}

// says says whether a file can be read and has just this text.
func says(path, text string) bool {
	info, err := os.Lstat(path)
	if err != nil || !info.Mode().IsRegular() || info.Size() != int64(len(text)) {
		return false
	}
	b, err := os.ReadFile(path)
	return err == nil && string(b) == text
}

// renamed is the error of a file that took another's name, if there is one.
func renamed(path string, there os.FileInfo, err error) error {
	if err == nil {
		return nil
	}
	return notRenamed(path, there, err)
}

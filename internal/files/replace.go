package files

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// unfinished begins the names of files that are still being written.
const unfinished = ".eighthturn-"

// file is what fill asks of the file that it writes.
type file interface {
	io.Writer
	Chmod(fs.FileMode) error
	Sync() error
	Close() error
}

// replace writes a new file beside path and gives it path's name. There is the file that stands there, nil for none.
func (o Options) replace(path string, there os.FileInfo, write func(io.Writer) error) (err error) {
	sweep(filepath.Dir(path))
	f, err := o.Unfinished.begin(func() (*os.File, error) { return create(filepath.Dir(path)) })
	if err != nil {
		return err
	}
	done := false
	defer func() {
		if !done { // also where write panics
			err = errors.Join(err, o.Unfinished.remove(f.Name(), os.Remove))
		}
	}()
	if err := fill(f, there, write); err != nil {
		return err
	}
	if err := o.Unfinished.finish(f.Name(), func() error { return os.Rename(f.Name(), path) }); err != nil {
		return notRenamed(path, there, err)
	}
	done = true
	syncFolder(filepath.Dir(path))
	return nil
}

// notRenamed says why a file did not take the place of the one that is there.
func notRenamed(path string, there os.FileInfo, err error) error {
	if there == nil || !errors.Is(err, fs.ErrPermission) {
		return err
	}
	folder, statErr := os.Stat(filepath.Dir(path))
	if statErr != nil || folder.Mode()&fs.ModeSticky == 0 {
		return err
	}
	return &Refusal{path, IsOthers}
}

// newFileMode is what a new file may be, before the umask takes its part.
const newFileMode fs.FileMode = 0o666

// newFolderMode is the same of a new folder.
const newFolderMode fs.FileMode = 0o777

// fill writes a file and sees it safely on the disk; it takes over the permissions of the one that is there. It is closed
// in any case.
func fill(f file, there os.FileInfo, write func(io.Writer) error) (err error) {
	defer func() {
		if closing := f.Close(); err == nil {
			err = closing
		}
	}()
	if there != nil {
		if err := f.Chmod(there.Mode().Perm()); err != nil {
			return err
		}
	}
	w := &watched{w: f}
	if err := write(w); err != nil {
		return err
	}
	if w.err != nil {
		return w.err
	}
	return f.Sync()
}

// watched keeps the first error of a writer, for callers of it who drop theirs.
type watched struct {
	w   io.Writer
	err error
}

func (w *watched) Write(p []byte) (int, error) {
	if w.err != nil {
		return 0, w.err
	}
	n, err := w.w.Write(p)
	if err == nil && n < len(p) {
		err = io.ErrShortWrite
	}
	w.err = err
	return n, err
}

// syncFolder makes the new name last through a power cut, where folders can be synced; the file is whole without it.
func syncFolder(folder string) {
	if f, err := os.Open(folder); err == nil {
		_ = f.Sync()
		_ = f.Close()
	}
}

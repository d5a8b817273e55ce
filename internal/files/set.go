package files

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// File is one of a set: its name without folders, and what writes it.
type File struct {
	Name  string
	Write func(io.Writer) error
}

// NotWritten is why a set was not written: an error that one of its files met.
type NotWritten struct {
	Path string // of the file, or of the folder where that is what failed
	Err  error
}

// Error names the path.
func (e *NotWritten) Error() string { return e.Path + ": " + e.Err.Error() }

// Unwrap is what was met.
func (e *NotWritten) Unwrap() error { return e.Err }

// WriteSet writes files into a folder, all of them or none; the folder is made if it is not there, what else lies in it
// stays. Each is written whole beside its place, and only once all of them are on the disk do they take their names: a new
// folder at a stroke, in one that is there file by file, and if one of those cannot be, the old files come back. Where a
// stop without warning comes in just that moment, the next run that writes there gives the rest of the files their names.
// The error is a *NotWritten, in it a *Refusal where a file may not be replaced.
func WriteSet(folder string, o Options, list []File) error {
	s := &set{unfinished: o.Unfinished, folder: filepath.Clean(folder), there: make([]os.FileInfo, len(list)), list: list}
	sweep(filepath.Dir(s.folder))
	info, err := os.Stat(s.folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		s.isNew = true
	case err != nil:
		return &NotWritten{s.folder, err}
	case !info.IsDir():
		return &NotWritten{s.folder, &Refusal{s.folder, NotFolder}}
	default:
		sweep(s.folder)
		if err := s.allowed(o); err != nil {
			return err
		}
	}
	return s.write()
}

// oldFile begins the second names of files that are replaced.
const oldFile = unfinished + "old-"

// isOwnName says whether a file in a folder of unfinished files is none of the set.
func isOwnName(name string) bool { return name == journal || strings.HasPrefix(name, oldFile) }

// set is a set of files on its way into a folder.
type set struct {
	unfinished *Unfinished
	folder     string
	isNew      bool // the folder is not there
	list       []File
	there      []os.FileInfo // in the place of each file, nil for none
	beside     string        // the folder in which they are written
}

// allowed sees that every file may be written.
func (s *set) allowed(o Options) (err error) {
	for i, f := range s.list {
		path := filepath.Join(s.folder, f.Name)
		if s.there[i], err = o.allowed(path); err != nil {
			return &NotWritten{path, err}
		}
	}
	return nil
}

// write writes the files beside their place and moves them there.
func (s *set) write() error {
	within := s.folder
	if s.isNew {
		within = filepath.Dir(s.folder)
	}
	beside, err := s.unfinished.begin(func() (*os.File, error) { return createFolder(within) })
	if err != nil {
		return &NotWritten{s.folder, err}
	}
	s.beside = beside.Name()
	defer func() { // also where a file's write panics
		_ = beside.Close()
		_ = s.unfinished.remove(s.beside, removeFolder) // not there once it has become the new folder
	}()
	for i, f := range s.list {
		if err := s.fill(i); err != nil {
			return &NotWritten{filepath.Join(s.folder, f.Name), err}
		}
	}
	syncFolder(s.beside)
	if err := s.unfinished.finish(s.beside, s.place); err != nil {
		return err
	}
	syncFolder(within)
	return nil
}

// fill writes one file beside its place.
func (s *set) fill(i int) error {
	f, err := s.unfinished.within(func() (*os.File, error) {
		return os.OpenFile(filepath.Join(s.beside, s.list[i].Name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, newFileMode)
	})
	if err != nil {
		return err
	}
	return fill(f, s.there[i], s.list[i].Write)
}

// place gives all files their names, or leaves all as they were.
func (s *set) place() error {
	if s.isNew {
		if err := os.Rename(s.beside, s.folder); err != nil {
			return &NotWritten{s.folder, err}
		}
		return nil
	}
	for i, f := range s.list {
		if s.there[i] != nil {
			_ = os.Link(filepath.Join(s.folder, f.Name), s.old(i)) // a disk without links keeps no old files; each is whole even so
		}
	}
	if err := s.begin(); err != nil {
		return &NotWritten{s.folder, err}
	}
	for i, f := range s.list {
		path := filepath.Join(s.folder, f.Name)
		if err := os.Rename(filepath.Join(s.beside, f.Name), path); err != nil {
			_ = os.Remove(s.journal())
			s.putBack(i)
			return &NotWritten{path, notRenamed(path, s.there[i], err)}
		}
	}
	return nil
}

// journal is the file that says that all files are there.
func (s *set) journal() string { return filepath.Join(s.beside, journal) }

// begin notes, safely on the disk, that all files are there and take their names from now on.
func (s *set) begin() error {
	f, err := os.OpenFile(s.journal(), os.O_WRONLY|os.O_CREATE|os.O_EXCL, newFileMode)
	if err != nil {
		return err
	}
	return fill(f, nil, func(io.Writer) error { return nil })
}

// old is the second name of a file that is replaced.
func (s *set) old(i int) string { return filepath.Join(s.beside, oldFile+strconv.Itoa(i)) }

// putBack takes the first files of the set away again and gives the old ones their places.
func (s *set) putBack(files int) {
	for i, f := range s.list[:files] {
		path := filepath.Join(s.folder, f.Name)
		if s.there[i] == nil {
			_ = os.Remove(path)
			continue
		}
		_ = os.Rename(s.old(i), path)
	}
}

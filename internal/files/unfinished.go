package files

import (
	"errors"
	"os"
	"path/filepath"
	"sync"
)

// Unfinished is what a program has begun to write and not finished, for one that is told to end in the midst of it. The
// zero value is ready, nil notes nothing.
type Unfinished struct {
	lock  sync.Mutex // held while something is made or takes its name, and for good once Abandon was called
	paths map[string]bool
}

// Abandon removes what is unfinished. What is just taking its name takes it first; nothing else is begun or finished
// afterwards: whoever tries waits for the program's end.
func (u *Unfinished) Abandon() {
	u.lock.Lock()
	for path := range u.paths {
		if info, err := os.Lstat(path); err == nil && info.IsDir() {
			_ = removeFolder(path)
		} else {
			_ = os.Remove(path)
		}
	}
}

// begin makes something unfinished.
func (u *Unfinished) begin(make func() (*os.File, error)) (*os.File, error) {
	if u == nil {
		return make()
	}
	u.lock.Lock()
	defer u.lock.Unlock()
	f, err := make()
	if err == nil {
		if u.paths == nil {
			u.paths = map[string]bool{}
		}
		u.paths[f.Name()] = true
	}
	return f, err
}

// within makes a file in a folder that is unfinished, which Abandon empties: none is begun there afterwards.
func (u *Unfinished) within(make func() (*os.File, error)) (*os.File, error) {
	if u == nil {
		return make()
	}
	u.lock.Lock()
	defer u.lock.Unlock()
	return make()
}

// finish gives what is unfinished its names, all at once as far as Abandon sees.
func (u *Unfinished) finish(path string, rename func() error) error {
	if u == nil {
		return rename()
	}
	u.lock.Lock()
	defer u.lock.Unlock()
	err := rename()
	if err == nil {
		delete(u.paths, path)
	}
	return err
}

// remove removes what stays unfinished.
func (u *Unfinished) remove(path string, remove func(string) error) error {
	return u.finish(path, func() error { return remove(path) })
}

// journal is the name of the file that says of a folder of unfinished files that all of them are there and are just taking their names.
const journal = unfinished + "complete"

// complete gives the files of a set their names where a run was killed while it did so. It says whether the folder is one
// that was. A file that somebody has changed since then stays as it is.
func complete(beside string) bool {
	begun, err := os.Lstat(filepath.Join(beside, journal))
	if err != nil {
		return false
	}
	list, err := os.ReadDir(beside)
	if err != nil {
		return false
	}
	for _, e := range list {
		path := filepath.Join(filepath.Dir(beside), e.Name())
		there, err := os.Lstat(path)
		mayTake := errors.Is(err, os.ErrNotExist) || err == nil && there.Mode().IsRegular() && !there.ModTime().After(begun.ModTime())
		if e.Type().IsRegular() && !isOwnName(e.Name()) && mayTake {
			_ = os.Rename(filepath.Join(beside, e.Name()), path)
		}
	}
	return true
}

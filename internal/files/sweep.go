package files

import (
	"crypto/rand"
	"encoding/hex"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// randomBytes is how many bytes make the name of an unfinished file.
const randomBytes = 8

// unfinishedName is a name that nobody can foresee.
func unfinishedName() string {
	random := make([]byte, randomBytes)
	_, _ = rand.Read(random) // it never fails
	return unfinished + hex.EncodeToString(random)
}

// isUnfinished says whether unfinishedName gives such names.
func isUnfinished(name string) bool {
	random, ok := strings.CutPrefix(name, unfinished)
	b, err := hex.DecodeString(random)
	return ok && err == nil && len(b) == randomBytes && strings.ToLower(random) == random
}

// sweep removes what a run that was killed left unfinished in a folder. What a run is still writing stays, and so does
// what cannot be removed.
func sweep(folder string) {
	f, err := os.Open(folder)
	if err != nil {
		return
	}
	names, _ := f.Readdirnames(-1) // those that were read
	_ = f.Close()
	for _, name := range names {
		if isUnfinished(name) {
			sweepOne(filepath.Join(folder, name))
		}
	}
}

// sweepOne removes an unfinished file or folder that nobody writes any more.
func sweepOne(path string) {
	info, err := os.Lstat(path)
	if err != nil || !info.IsDir() && !info.Mode().IsRegular() {
		return
	}
	f, err := os.Open(path)
	if err != nil {
		return
	}
	defer f.Close()
	switch {
	case !abandoned(f):
	case info.IsDir():
		complete(path)
		_ = removeFolder(path)
	default:
		_ = os.Remove(path)
	}
}

// removeFolder removes a folder of unfinished files. It stays where there is a folder in it, which none of ours holds.
func removeFolder(path string) error {
	list, err := os.ReadDir(path)
	if err != nil {
		return err
	}
	for _, e := range list {
		if !e.IsDir() {
			_ = os.Remove(filepath.Join(path, e.Name()))
		}
	}
	return os.Remove(path)
}

// maxTries is how often a new name is tried where another run takes the file away before it is known to be in use.
const maxTries = 100

// create makes an unfinished file that no sweep takes.
func create(folder string) (*os.File, error) {
	return inUse(folder, func(path string) (*os.File, error) {
		return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, newFileMode)
	})
}

// createFolder makes a folder for unfinished files that no sweep takes; it is open, and in use until it is closed.
func createFolder(folder string) (*os.File, error) {
	return inUse(folder, func(path string) (*os.File, error) {
		if err := os.Mkdir(path, newFolderMode); err != nil {
			return nil, err
		}
		return os.Open(path)
	})
}

// inUse makes something unfinished and marks it as being written.
func inUse(folder string, make func(path string) (*os.File, error)) (*os.File, error) {
	for range maxTries {
		path := filepath.Join(folder, unfinishedName())
		f, err := make(path)
		if err != nil {
			return nil, err
		}
		if claim(f) && isThere(f) {
			return f, nil
		}
		_ = f.Close()
		_ = os.Remove(path)
	}
	return nil, fs.ErrExist
}

// isThere says whether a file still has its name.
func isThere(f *os.File) bool {
	open, err := f.Stat()
	if err != nil {
		return false
	}
	named, err := os.Lstat(f.Name())
	return err == nil && os.SameFile(open, named)
}

// Package files turns what is written to it into a file that is there whole or not at all.
//
// A file that is replaced is never opened for writing: what is new goes into a file of its own in the same folder, is on
// the disk before it takes the name, and until then the old file is as it was. Stopped at any moment, even without
// warning, there is either the old file or the new one; a stop without warning may leave the unfinished one beside it,
// whose name begins with ".eighthturn-", and which the next run in that folder removes.
package files

import (
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
)

// headBytes is how much of a file that is there Options.Ours is shown.
const headBytes = 1000

// Options say what may be replaced. The zero value replaces nothing.
type Options struct {
	// Force replaces any regular file, whoever wrote it, but Never.
	Force bool
	// Ours says of a file that is there, by its first headBytes bytes, whether it may be replaced; nil replaces none.
	Ours func(head []byte) bool
	// Never are files that are not replaced under any of their names.
	Never []os.FileInfo
	// Unfinished notes what is being written; nil for nowhere.
	Unfinished *Unfinished
}

// Write makes the file at path from what write writes, or replaces it. A file that is there keeps its permissions, a new
// one has 0666 less the umask. The error is a *Refusal where the file may not be replaced, write's own error where it
// failed, else that of the operating system; after any error the file at path is as it was.
func Write(path string, o Options, write func(io.Writer) error) error {
	there, err := o.allowed(path)
	if err != nil {
		return err
	}
	return o.replace(path, there, write)
}

// Check says whether Write would be refused, without writing anything: nil or the error.
func Check(path string, o Options) error {
	_, err := o.allowed(path)
	return err
}

// allowed sees that the file at path may be written, and gives the file that is there, nil for none.
func (o Options) allowed(path string) (os.FileInfo, error) {
	if runtime.GOOS == "windows" && !IsFileName(strings.TrimPrefix(path, filepath.VolumeName(path))) {
		return nil, &Refusal{path, NotFileName}
	}
	if path != "" && os.IsPathSeparator(path[len(path)-1]) {
		if there, err := os.Stat(path); err != nil || !there.IsDir() {
			return nil, &Refusal{path, NoFolder}
		}
		return nil, &Refusal{path, IsFolder}
	}
	there, err := os.Lstat(path)
	if err != nil {
		if wrong := folderIsThere(path); wrong != nil || os.IsNotExist(err) {
			return nil, wrong
		}
		return nil, err
	}
	if reason := o.against(path, there); reason != None {
		return nil, &Refusal{path, reason}
	}
	return there, nil
}

// against is the reason why a file that is there is not replaced.
func (o Options) against(path string, there os.FileInfo) Reason {
	mode := there.Mode()
	switch {
	case mode&fs.ModeSymlink != 0:
		return IsLink
	case mode.IsDir():
		return IsFolder
	case !mode.IsRegular():
		return IsDevice
	case slices.ContainsFunc(o.Never, func(n os.FileInfo) bool { return os.SameFile(n, there) }):
		return IsSource
	case keptForItsOwner(path, there):
		return IsOthers
	case o.Force:
		return None
	case mode.Perm()&0o200 == 0:
		return IsReadOnly
	case o.Ours == nil || !o.Ours(head(path)):
		return NotOurs
	}
	return None
}

// head is the first bytes of a file, none if it cannot be read.
func head(path string) []byte {
	f, err := os.Open(path)
	if err != nil {
		return nil
	}
	defer f.Close()
	b := make([]byte, headBytes)
	n, _ := io.ReadFull(f, b) // fewer bytes are a shorter file
	return b[:n]
}

// folderIsThere sees that the folder of a file to be made is one.
func folderIsThere(path string) error {
	folder := filepath.Dir(path)
	there, err := os.Stat(folder)
	switch {
	case os.IsNotExist(err):
		return &Refusal{folder, NoFolder}
	case err != nil:
		return err
	case !there.IsDir():
		return &Refusal{folder, NotFolder}
	}
	return nil
}

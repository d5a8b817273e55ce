package preview

import (
	"io/fs"
	"os"

	"eighthturn/internal/files"
)

// Shelf is where layouts and their photos lie: folders on the disk, or what stands for one of them. Paths are those of the system.
type Shelf interface {
	fs.StatFS                                        // of any file; what is opened may be a pipe, and is not waited for
	List(folder string) []fs.DirEntry                // in the order of names; of a folder that is gone nothing
	Update(path, from, to string) error              // as files.Update
	Create(path, text string) error                  // where nothing stands, else fs.ErrExist; whole or not at all
	Album(layoutFile string) *files.Album            // the photos that a layout may name
	Follow(path string, changed func()) (end func()) // changed is called when a file may have changed, and need not be
}

// disk is the shelf that a preview has if no other is named. Its changes are told by the system (hints), not by Follow.
type disk struct{}

func (disk) Open(path string) (fs.File, error) {
	return os.OpenFile(path, os.O_RDONLY|files.Unblocked, 0)
}

func (disk) Stat(path string) (fs.FileInfo, error) { return os.Stat(path) }

func (disk) List(folder string) []fs.DirEntry {
	list, _ := os.ReadDir(folder)
	return list
}

func (disk) Update(path, from, to string) error { return files.Update(path, from, to) }

func (disk) Create(path, text string) error { return writeCopy(path, text) }

func (disk) Album(layoutFile string) *files.Album { return files.Beside(layoutFile) }

func (disk) Follow(string, func()) (end func()) { return func() {} }

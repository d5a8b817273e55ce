//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package files

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// superuser may replace every file.
const superuser = 0

// keptForItsOwner says whether a file stands in a folder where only its owner, the folder's or the superuser may replace it, and this
// program runs as none of them (POSIX.1-2024, rename: EPERM or EACCES where S_ISVTX is set).
func keptForItsOwner(path string, file os.FileInfo) bool {
	folder, err := os.Stat(filepath.Dir(path))
	if err != nil || folder.Mode()&fs.ModeSticky == 0 {
		return false
	}
	return !mayReplace(uint32(os.Geteuid()), owner(file), owner(folder))
}

// mayReplace says whether a user may replace a file in a sticky folder.
func mayReplace(user, file, folder uint32) bool {
	return user == superuser || user == file || user == folder
}

func owner(of os.FileInfo) uint32 { return of.Sys().(*syscall.Stat_t).Uid }

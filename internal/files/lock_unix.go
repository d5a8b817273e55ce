//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package files

import (
	"errors"
	"os"
	"syscall"
)

// claim marks a file as being written, until it is closed or its program ends. It is false where a sweep has it already.
func claim(f *os.File) bool {
	return !errors.Is(syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB), syscall.EWOULDBLOCK)
}

// abandoned says whether nobody writes a file any more. On a disk that cannot tell, everything is being written.
func abandoned(f *os.File) bool {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil
}

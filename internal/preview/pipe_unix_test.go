//go:build unix

package preview

import "syscall"

func makePipe(file string) error { return syscall.Mkfifo(file, 0o644) }

package files

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

func TestDevicesArePassedBy(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{os.DevNull, "/dev/full", pipe} {
		for _, force := range []bool{false, true} {
			wantReason(t, Write(path, Options{Force: force}, text("new")), IsDevice)
		}
	}
}

// A folder in which nothing may be made.
func TestFolderThatTakesNoFiles(t *testing.T) {
	if err := Write("/proc/self/new.svg", Options{}, text("new")); err == nil {
		t.Error("a file was made there")
	}
}

package files

import (
	"errors"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
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

// A file that the system stops halfway, as a full disk does: the old one is kept, and nothing is left beside it. Here any
// user's own limit on the size of files stops it.
func TestFileThatIsStoppedHalfway(t *testing.T) {
	var usual syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &usual); err != nil {
		t.Fatal(err)
	}
	signal.Ignore(syscall.SIGXFSZ) // which ends a program at the limit, else its writes fail
	folder := t.TempDir()
	old := strings.Repeat("made here\n", 2_000)
	path := put(t, folder, "old.svg", old)
	limit := func(bytes uint64) {
		if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: bytes, Max: usual.Max}); err != nil {
			t.Fatal(err)
		}
	}
	defer func() {
		limit(usual.Cur)
		signal.Reset(syscall.SIGXFSZ)
	}()
	limit(100_000)
	for _, path := range []string{path, filepath.Join(folder, "new.svg")} {
		err := Write(path, Options{Ours: ours}, text(strings.Repeat("new", 100_000)))
		if !errors.Is(err, syscall.EFBIG) {
			t.Errorf("%s: got %v, want that the file is too large", filepath.Base(path), err)
		}
	}
	wantContent(t, path, old)
	if list, err := os.ReadDir(folder); err != nil || len(list) != 1 {
		t.Errorf("%d files are there, want the old one alone: %v", len(list), err)
	}
	if err := Write(path, Options{Ours: ours}, text("new")); err != nil {
		t.Errorf("a file that fits: %v", err)
	}
}

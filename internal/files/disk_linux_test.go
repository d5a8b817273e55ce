package files

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A disk that is too small for the new file keeps the old one.
func TestFullDisk(t *testing.T) {
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=100k"); err != nil {
		t.Skip("a small disk can only be made by a user who may mount one: ", err)
	}
	defer func() {
		if err := syscall.Unmount(disk, 0); err != nil {
			t.Error(err)
		}
	}()
	old := strings.Repeat("made here\n", 2_000)
	path := put(t, disk, "old.svg", old)
	err := Write(path, Options{Ours: ours}, text(strings.Repeat("new", 100_000)))
	if !errors.Is(err, syscall.ENOSPC) {
		t.Errorf("got %v, want no space left", err)
	}
	wantContent(t, path, old)
	wantNothingUnfinished(t, disk)
	if err := Write(path, Options{Ours: ours}, text("new")); err != nil {
		t.Errorf("a file that fits: %v", err)
	}
}

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
	for _, c := range []struct {
		folder string
		want   error
	}{{"/proc/self", nil}, {readOnlyDisk(t), syscall.EROFS}} {
		if c.folder == "" {
			continue
		}
		err := Write(filepath.Join(c.folder, "new.svg"), Options{}, text("new"))
		if err == nil || c.want != nil && !errors.Is(err, c.want) {
			t.Errorf("%s: got %v, want %v", c.folder, err, c.want)
		}
	}
}

// readOnlyDisk is a disk that may only be read, "" where none can be made.
func readOnlyDisk(t *testing.T) string {
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", syscall.MS_RDONLY, "size=100k"); err != nil {
		t.Log("no disk that may only be read: ", err)
		return ""
	}
	t.Cleanup(func() { _ = syscall.Unmount(disk, 0) })
	return disk
}

//go:build judges && linux

package files

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// mayMount says whether this process may mount disks. Where it may not, the test is run again in a namespace in which it is
// root, and fails if that cannot be had or the test fails there.
func mayMount(t *testing.T) bool {
	t.Helper()
	if os.Geteuid() == 0 {
		return true
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	again := exec.Command(self, "-test.run=^"+t.Name()+"$")
	again.SysProcAttr = &syscall.SysProcAttr{
		Cloneflags:  syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
		UidMappings: []syscall.SysProcIDMap{{HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{HostID: os.Getgid(), Size: 1}},
	}
	if out, err := again.CombinedOutput(); err != nil {
		t.Fatalf("a disk is mounted by root, or in a user namespace: %v\n%s", err, out)
	}
	return false
}

// mounted is a disk of 100 KB.
func mounted(t *testing.T, flags uintptr) string {
	t.Helper()
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", flags, "size=100k"); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(disk, 0); err != nil {
			t.Error(err)
		}
	})
	return disk
}

// A disk that is too small for the new file keeps the old one.
func TestFullDisk(t *testing.T) {
	if !mayMount(t) {
		return
	}
	disk := mounted(t, 0)
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

// A disk that may only be read takes no file.
func TestDiskThatMayOnlyBeRead(t *testing.T) {
	if !mayMount(t) {
		return
	}
	if err := Write(filepath.Join(mounted(t, syscall.MS_RDONLY), "new.svg"), Options{}, text("new")); !errors.Is(err, syscall.EROFS) {
		t.Errorf("got %v, want a disk that may only be read", err)
	}
}

// A disk that is too small for a new set keeps the old one whole, and no new folder is there.
func TestFullDiskKeepsTheOldSet(t *testing.T) {
	if !mayMount(t) {
		return
	}
	disk := mounted(t, 0)
	old, large := setOf("old", "a.svg", "b.svg"), setOf(strings.Repeat("new", 20_000), "a.svg", "b.svg")
	folder := filepath.Join(disk, "maps")
	if err := WriteSet(folder, Options{}, old); err != nil {
		t.Fatal(err)
	}
	for _, into := range []string{folder, filepath.Join(disk, "others")} {
		if err := WriteSet(into, Options{Ours: ours}, large); !errors.Is(err, syscall.ENOSPC) {
			t.Errorf("got %v, want no space left", err)
		}
	}
	wantSet(t, folder, "old", "a.svg", "b.svg")
	if list, _ := os.ReadDir(disk); len(list) != 1 {
		t.Errorf("%d things are on the disk, want the old folder alone", len(list))
	}
}

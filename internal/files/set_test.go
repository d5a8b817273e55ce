package files

import (
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// setOf is files of one content.
func setOf(content string, names ...string) []File {
	var list []File
	for _, name := range names {
		list = append(list, File{name, text("made here " + content)})
	}
	return list
}

func wantSet(t *testing.T, folder, content string, names ...string) {
	t.Helper()
	for _, name := range names {
		wantContent(t, filepath.Join(folder, name), "made here "+content)
	}
	wantNothingUnfinished(t, folder)
	wantNothingUnfinished(t, filepath.Dir(folder))
}

func TestSetIsMadeAndReplaced(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "maps")
	for _, content := range []string{"one", "two"} {
		if err := WriteSet(folder+"/", Options{Ours: ours}, setOf(content, "a.svg", "b.svg")); err != nil {
			t.Fatal(err)
		}
		wantSet(t, folder, content, "a.svg", "b.svg")
	}
	letter := put(t, folder, "letter", "Dear Ottoline")
	if err := WriteSet(folder, Options{Ours: ours}, setOf("three", "a.svg", "c.svg")); err != nil {
		t.Fatal(err)
	}
	wantSet(t, folder, "three", "a.svg", "c.svg")
	wantContent(t, letter, "Dear Ottoline")
}

// Whatever file of a set fails, and however, the old set is there and nothing else.
func TestFailureLeavesTheOldSet(t *testing.T) {
	names := []string{"a.svg", "b.svg", "c.svg"}
	for _, there := range []bool{true, false} {
		for at := range names {
			folder := filepath.Join(t.TempDir(), "maps")
			if there {
				if err := WriteSet(folder, Options{}, setOf("old", names...)); err != nil {
					t.Fatal(err)
				}
			}
			list := setOf("new", names...)
			list[at].Write = func(w io.Writer) error {
				_, _ = io.WriteString(w, "made here")
				return errBroken
			}
			err := WriteSet(folder, Options{Ours: ours}, list)
			var failed *NotWritten
			if !errors.Is(err, errBroken) || !errors.As(err, &failed) || failed.Path != filepath.Join(folder, names[at]) {
				t.Errorf("got %v", err)
			}
			if there {
				wantSet(t, folder, "old", names...)
			} else if _, err := os.Stat(folder); !os.IsNotExist(err) {
				t.Errorf("a folder is there: %v", err)
			}
			wantNothingUnfinished(t, filepath.Dir(folder))
		}
	}
}

// Where the last file cannot take its name, the ones before it go back.
func TestSetGoesBack(t *testing.T) {
	folder := t.TempDir()
	old := put(t, folder, "a.svg", "made here old")
	s := &set{folder: folder, list: setOf("new", "a.svg", "b.svg", "c.svg"), there: []os.FileInfo{info(t, old), nil, nil}}
	if err := os.MkdirAll(filepath.Join(folder, "c.svg", "full"), 0o755); err != nil { // made between the check and the end
		t.Fatal(err)
	}
	var failed *NotWritten
	if err := s.write(); !errors.As(err, &failed) || filepath.Base(failed.Path) != "c.svg" {
		t.Errorf("got %v", err)
	}
	wantContent(t, old, "made here old")
	if _, err := os.Stat(filepath.Join(folder, "b.svg")); !os.IsNotExist(err) {
		t.Errorf("a file of the new set is there: %v", err)
	}
	wantNothingUnfinished(t, folder)
}

// A file that may not be replaced keeps the whole set away.
func TestSetIsRefusedWhole(t *testing.T) {
	folder := t.TempDir()
	put(t, folder, "b.svg", "Dear Ottoline")
	err := WriteSet(folder, Options{Ours: ours}, setOf("new", "a.svg", "b.svg"))
	wantReason(t, err, NotOurs)
	if list, _ := os.ReadDir(folder); len(list) != 1 {
		t.Errorf("%d files are there, want the letter alone", len(list))
	}
	wantReason(t, WriteSet(filepath.Join(folder, "b.svg"), Options{}, nil), NotFolder)
}

// What a killed run left is removed by the next one; what a run is writing, what another program's name is, and what has
// something of somebody else's in it stay.
func TestSweep(t *testing.T) {
	folder := t.TempDir()
	path := put(t, folder, "old.svg", oldContent())
	killed(t, path, 2, 0)
	killed(t, path, 3, 0)
	left, err := createFolder(folder)
	if err != nil {
		t.Fatal(err)
	}
	put(t, left.Name(), "a.svg", "half")
	live, err := create(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer live.Close()
	sweep(folder)
	if !isThere(live) || !isThere(left) {
		t.Error("what is being written was removed")
	}
	_ = left.Close()
	others := []string{unfinished, unfinished + "notes", unfinished + "0123456789abcde", unfinished + "0123456789ABCDEF", ".other-0123456789abcdef"}
	for _, name := range others {
		put(t, folder, name, "")
	}
	if err := WriteSet(folder, Options{Ours: ours}, setOf("new", "a.svg")); err != nil {
		t.Fatal(err)
	}
	list, _ := os.ReadDir(folder)
	if want := len(others) + 3; len(list) != want { // the old file, the set and the live one
		t.Errorf("%d files are there, want %d: %v", len(list), want, list)
	}
}

// childSet tells a copy of the test program to write sets into the folder of that name.
const childSet = "OUTFILE_SET"

func writeSets(folder string) {
	for {
		for _, content := range []string{"one", "two"} {
			var list []File
			for _, name := range setNames() {
				list = append(list, File{name, text("made here " + strings.Repeat(content, 10_000))})
			}
			if err := WriteSet(folder, Options{Ours: ours}, list); err != nil {
				panic(err)
			}
		}
	}
}

func setNames() []string { return []string{"a.svg", "b.svg", "c.svg", "d.svg"} }

// Whenever the writer is killed, every file is whole, and after the next run nothing is left beside them.
func TestSetKilledAtAnyMoment(t *testing.T) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(t.TempDir(), "maps")
	for n := range 20 {
		child := exec.Command(self)
		child.Env = append(os.Environ(), childSet+"="+folder)
		if err := child.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(3+n%7) * time.Millisecond)
		_ = child.Process.Kill()
		_ = child.Wait()
		for _, name := range setNames() {
			content, err := os.ReadFile(filepath.Join(folder, name))
			if err == nil && len(content) != len("made here ")+30_000 {
				t.Errorf("%s has %d bytes", name, len(content))
			}
		}
	}
	if err := WriteSet(folder, Options{Ours: ours}, setOf("three", setNames()...)); err != nil {
		t.Fatal(err)
	}
	wantSet(t, folder, "three", setNames()...)
}

package files

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"eighthturn/internal/quilttest/judges"
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

// halfPlaced is a folder with an old set in which a run was killed when it had given the first of its files its name.
func halfPlaced(t *testing.T, names ...string) (folder string, s *set) {
	folder = filepath.Join(t.TempDir(), "maps")
	if err := WriteSet(folder, Options{}, setOf("old", names[1:]...)); err != nil {
		t.Fatal(err)
	}
	beside, err := createFolder(folder)
	if err != nil {
		t.Fatal(err)
	}
	s = &set{folder: folder, beside: beside.Name(), list: setOf("new", names...), there: make([]os.FileInfo, len(names))}
	for i := range names {
		if err := s.fill(i); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.begin(); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(filepath.Join(s.beside, names[0]), filepath.Join(folder, names[0])); err != nil {
		t.Fatal(err)
	}
	_ = beside.Close() // it is killed
	return folder, s
}

// A run that was killed while its files took their names is completed by the next one in that folder, whatever that writes; a file that
// somebody has changed since then stays.
func TestKilledSetIsCompleted(t *testing.T) {
	names := []string{"a.svg", "b.svg", "c.svg"}
	next := func(folder string) {
		if err := Write(filepath.Join(folder, "other.svg"), Options{Ours: ours}, text("made here other")); err != nil {
			t.Fatal(err)
		}
	}
	folder, _ := halfPlaced(t, names...)
	next(folder)
	wantSet(t, folder, "new", names...)

	folder, s := halfPlaced(t, names...)
	if err := os.Remove(s.journal()); err != nil { // killed before
		t.Fatal(err)
	}
	next(folder)
	wantSet(t, folder, "old", names[1:]...)

	folder, _ = halfPlaced(t, names...)
	changed := put(t, folder, "b.svg", "Dear Ottoline")
	later := time.Now().Add(time.Second)
	if err := os.Chtimes(changed, later, later); err != nil {
		t.Fatal(err)
	}
	next(folder)
	wantContent(t, changed, "Dear Ottoline")
	wantSet(t, folder, "new", "a.svg", "c.svg")
}

// A program that is told to end removes what it has begun, and finishes nothing any more.
func TestAbandoned(t *testing.T) {
	for _, isNew := range []bool{false, true} {
		folder := t.TempDir()
		into := folder
		if isNew {
			into = filepath.Join(folder, "maps")
		}
		for name, write := range map[string]func(Options, func(io.Writer) error) error{
			"a file": func(o Options, w func(io.Writer) error) error { return Write(filepath.Join(folder, "a.svg"), o, w) },
			"a set":  func(o Options, w func(io.Writer) error) error { return WriteSet(into, o, []File{{"b.svg", w}}) },
		} {
			u := &Unfinished{}
			begun, goOn, ended := make(chan bool), make(chan bool), make(chan bool)
			go func() {
				_ = write(Options{Unfinished: u}, func(w io.Writer) error {
					close(begun)
					<-goOn
					return nil
				})
				close(ended)
			}()
			<-begun
			u.Abandon()
			close(goOn)
			select {
			case <-ended:
				t.Errorf("%s went on to its end", name)
			case <-time.After(20 * time.Millisecond):
			}
			if list, _ := os.ReadDir(folder); len(list) != 0 {
				t.Errorf("%s: %d files are there, want none: %v", name, len(list), list)
			}
		}
	}
}

// childSet tells a copy of the test program to write sets into the folder of that name.
const childSet = "OUTFILE_SET"

func writeSets(folder string) {
	for {
		for _, content := range setContents() {
			var list []File
			for _, name := range setNames() {
				list = append(list, File{name, text("made here " + strings.Repeat(content, 100))})
			}
			last := &list[len(list)-1]
			write := last.Write
			last.Write = func(w io.Writer) error {
				fmt.Println("the last file")
				return write(w)
			}
			if err := WriteSet(folder, Options{Ours: ours}, list); err != nil {
				panic(err)
			}
		}
	}
}

func setContents() []string { return []string{"one", "two"} }

func setNames() []string {
	var list []string
	for n := range 40 {
		list = append(list, string(rune('a'+n%26))+string(rune('0'+n/26))+".svg")
	}
	return list
}

// parts are how many files of the set have each content.
func parts(t *testing.T, folder string) map[string]int {
	found := map[string]int{}
	for _, name := range setNames() {
		content, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			found["none"]++
			continue
		}
		whole := false
		for _, c := range setContents() {
			if string(content) == "made here "+strings.Repeat(c, 100) {
				found[c]++
				whole = true
			}
		}
		if !whole {
			t.Fatalf("%s is torn", name)
		}
	}
	return found
}

// killWriters kills so many writers of sets at random moments. Every file is whole then; and after the next run in that folder
// no set is mixed and nothing is left beside it. It says how many were caught while files took their names.
func killWriters(t *testing.T, kills int) (caught int) {
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(t.TempDir(), "maps")
	random := rand.New(rand.NewPCG(1, 2))
	for range kills {
		child := exec.Command(self)
		child.Env = append(os.Environ(), childSet+"="+folder)
		out, err := child.StdoutPipe()
		if err != nil || child.Start() != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(out)
		for range 2 + random.IntN(2) {
			lines.Scan()
		}
		time.Sleep(time.Duration(random.IntN(4000)) * time.Microsecond)
		_ = child.Process.Kill()
		_ = child.Wait()
		if _, err := os.Stat(folder); err != nil {
			continue
		}
		if len(parts(t, folder)) > 1 {
			caught++
		}
		if err := WriteSet(folder, Options{}, nil); err != nil { // the next run
			t.Fatal(err)
		}
		if found := parts(t, folder); len(found) > 1 {
			t.Fatalf("the set is mixed: %v", found)
		}
		wantNothingUnfinished(t, folder)
		wantNothingUnfinished(t, filepath.Dir(folder))
	}
	return caught
}

func TestSetKilledAtAnyMoment(t *testing.T) {
	kills := judges.Of(8, 16)
	t.Logf("%d kills, %d of them while files took their names", kills, killWriters(t, kills))
}

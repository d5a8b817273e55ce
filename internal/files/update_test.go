package files

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"eighthturn/internal/quilttest/judges"
)

// TestUpdate: a file that says what it said says the new text, with its permissions; any other stays as it is, and nothing is left beside it.
func TestUpdate(t *testing.T) {
	folder := t.TempDir()
	path := put(t, folder, "a.quilt", "old\n")
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	if err := Update(path, "old\n", "new\n"); err != nil {
		t.Fatal(err)
	}
	wantContent(t, path, "new\n")
	if mode := info(t, path).Mode().Perm(); runtime.GOOS != "windows" && mode != 0o640 {
		t.Errorf("the mode is %v", mode)
	}
	if err := Update(path, "old\n", "newer\n"); !errors.Is(err, ErrChanged) {
		t.Errorf("a file that says something else: %v", err)
	}
	wantContent(t, path, "new\n")
	if err := Update(filepath.Join(folder, "b.quilt"), "", "x"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
	link := filepath.Join(folder, "link.quilt")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	wantReason(t, Update(link, "new\n", "x"), IsLink)
	wantReason(t, Update(folder, "", "x"), IsFolder)
	if err := os.Chmod(path, 0o440); err != nil {
		t.Fatal(err)
	}
	wantReason(t, Update(path, "new\n", "x"), IsReadOnly)
	wantContent(t, path, "new\n")
	wantNothingUnfinished(t, folder)
}

// TestUpdateLosesNothing: whatever somebody else does to the file just before or after any step, what they wrote stands there in the
// end, whole, and Update says so.
func TestUpdateLosesNothing(t *testing.T) {
	inPlace := func(path, text string) { _ = os.WriteFile(path, []byte(text), 0o644) }
	renamedOver := func(path, text string) {
		_ = os.WriteFile(path+".new", []byte(text), 0o644)
		_ = os.Rename(path+".new", path)
	}
	for style, save := range map[string]func(path, text string){"in place": inPlace, "renamed over": renamedOver} {
		for _, when := range [][]bool{{true}, {false, true}, {true, true}, {true, false, true}, {false, false, true}, {true, true, true, true}} {
			path := put(t, t.TempDir(), "a.quilt", "old\n")
			fresh := put(t, filepath.Dir(path), "fresh", "new\n")
			turn, last := 0, ""
			err := takeName(fresh, path, "old\n", "new\n", func(a, b string) error {
				if turn < len(when) && when[turn] {
					last = fmt.Sprintf("theirs %d\n", turn)
					save(path, last)
				}
				turn++
				return exchange(a, b)
			})
			got, _ := os.ReadFile(path)
			switch {
			case err == nil && last != "":
				t.Errorf("%s, %v: written over %q", style, when, last)
			case err == nil && string(got) != "new\n", last != "" && string(got) != last:
				t.Errorf("%s, %v: the file says %q, last saved was %q, %v", style, when, got, last, err)
			}
		}
	}
}

// TestUpdateAmongSaves: in hundreds of interleavings with saves in both styles none of
// theirs is lost: Update either came first, and they wrote over it, or it was told that the file had changed.
func TestUpdateAmongSaves(t *testing.T) {
	if exchange("", "") == errNoExchange {
		t.Skip("files cannot be exchanged in one step here")
	}
	path := put(t, t.TempDir(), "a.quilt", "")
	for round := range judges.Of(100, 500) {
		if err := os.WriteFile(path, []byte("begun\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		var all sync.WaitGroup
		theirs := fmt.Sprintf("begun\ntheirs %d\n", round)
		var err error
		all.Add(2)
		go func() {
			defer all.Done()
			time.Sleep(time.Duration(rand.IntN(120)) * time.Microsecond)
			if round%2 == 0 {
				_ = os.WriteFile(path, []byte(theirs), 0o644)
				return
			}
			_ = os.WriteFile(path+".new", []byte(theirs), 0o644)
			_ = os.Rename(path+".new", path)
		}()
		go func() {
			defer all.Done()
			err = Update(path, "begun\n", "begun\nours\n")
		}()
		all.Wait()
		got, _ := os.ReadFile(path)
		if string(got) != theirs {
			t.Fatalf("round %d: the file says %q, they saved %q, %v", round, got, theirs, err)
		}
	}
	left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), ".*"))
	if len(left) > 0 {
		t.Errorf("left beside it: %s", strings.Join(left, " "))
	}
}

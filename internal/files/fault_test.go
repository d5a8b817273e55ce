package files

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// broken is a file that fails at one step, and counts.
type broken struct {
	at             string
	synced, closed int
}

var errBroken = errors.New("broken on purpose")

func (b *broken) step(name string) error {
	if b.at == name {
		return errBroken
	}
	return nil
}

func (b *broken) Write(p []byte) (int, error) {
	if b.at == "short write" {
		return len(p) - 1, nil
	}
	return len(p), b.step("write")
}
func (b *broken) Chmod(fs.FileMode) error { return b.step("chmod") }
func (b *broken) Sync() error             { b.synced++; return b.step("sync") }
func (b *broken) Close() error            { b.closed++; return b.step("close") }

func TestEveryStepIsChecked(t *testing.T) {
	there, err := os.Stat(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range []string{"chmod", "write", "short write", "sync", "close", "none"} {
		b := &broken{at: at}
		err := fill(b, there, text("new"))
		if (err != nil) != (at != "none") {
			t.Errorf("broken at %s: %v", at, err)
		}
		if b.closed != 1 {
			t.Errorf("broken at %s: closed %d times", at, b.closed)
		}
		if at == "none" && b.synced != 1 {
			t.Error("the file was not synced")
		}
	}
}

// A caller that drops the errors of its writes loses no file by it.
func TestDroppedErrorsAreKept(t *testing.T) {
	careless := func(w io.Writer) error {
		for range 3 {
			_, _ = io.WriteString(w, "new")
		}
		return nil
	}
	if err := fill(&broken{at: "write"}, nil, careless); !errors.Is(err, errBroken) {
		t.Errorf("got %v", err)
	}
	if err := fill(&broken{at: "short write"}, nil, careless); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("got %v", err)
	}
}

// After an error, even a panic, the old file is as it was and nothing is left beside it.
func TestFailureLeavesTheOldFile(t *testing.T) {
	for name, write := range map[string]func(io.Writer) error{
		"at once": func(io.Writer) error { return errBroken },
		"half way": func(w io.Writer) error {
			_, _ = io.WriteString(w, strings.Repeat("new", 100_000))
			return errBroken
		},
		"panic": func(w io.Writer) error {
			_, _ = io.WriteString(w, "new")
			panic(errBroken)
		},
	} {
		folder := t.TempDir()
		old := put(t, folder, "old.svg", "made here")
		for _, path := range []string{old, filepath.Join(folder, "new.svg")} {
			if err := caught(path, write); !errors.Is(err, errBroken) {
				t.Errorf("%s: got %v", name, err)
			}
		}
		wantContent(t, old, "made here")
		if list, _ := os.ReadDir(folder); len(list) != 1 {
			t.Errorf("%s: %d files are there, want the old one alone", name, len(list))
		}
	}
}

// caught is Write with a panic as its error.
func caught(path string, write func(io.Writer) error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = p.(error)
		}
	}()
	return Write(path, Options{Ours: ours}, write)
}

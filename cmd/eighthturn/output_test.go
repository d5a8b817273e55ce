package main

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"eighthturn/outfile"
)

// Asked to stop in the middle, a command leaves the old file, nothing unfinished, and says so; whether or not what draws
// the picture heeds the errors of its writes.
func TestStoppedWhileWriting(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("a program cannot interrupt itself there")
	}
	for name, heeds := range map[string]bool{"heedful": true, "heedless": false} {
		folder := t.TempDir()
		path := filepath.Join(folder, "quilt.svg")
		if err := os.WriteFile(path, []byte("old"), 0o644); err != nil {
			t.Fatal(err)
		}
		err := testConsole().write(target{path: path, options: outfile.Options{Force: true}}, func(w io.Writer) error {
			err := interrupted(w)
			if !heeds {
				return nil
			}
			return err
		})
		var p *problem
		if !errors.As(err, &p) || p.code != faulty || p.message != "stopped before it was written" {
			t.Errorf("%s: got %v", name, err)
		}
		if text, _ := os.ReadFile(path); string(text) != "old" {
			t.Errorf("%s: the old file became %.20q", name, text)
		}
		if list, _ := os.ReadDir(folder); len(list) != 1 {
			t.Errorf("%s: %d files are there, want one", name, len(list))
		}
	}
}

// interrupted writes until the interruption that it sends has come, two seconds at the most.
func interrupted(w io.Writer) error {
	self, err := os.FindProcess(os.Getpid())
	if err != nil {
		return err
	}
	if err := self.Signal(os.Interrupt); err != nil {
		return err
	}
	for until := time.Now().Add(2 * time.Second); time.Now().Before(until); time.Sleep(time.Millisecond) {
		if _, err := io.WriteString(w, "new"); err != nil {
			return err
		}
	}
	return nil
}

//go:build unix

package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// begun starts the program in a folder.
func begun(t *testing.T, folder string, args ...string) (*exec.Cmd, *lineBuffer) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	said := &lineBuffer{first: make(chan string, 1)}
	cmd := &exec.Cmd{Path: self, Args: append([]string{"eighthturn"}, args...), Dir: folder, Stdout: said, Stderr: said,
		Env: append(os.Environ(), fmt.Sprint("GOMAXPROCS=", processors))}
	if in, err := cmd.StdinPipe(); err != nil || in == nil || cmd.Start() != nil { // the pipe stays open
		t.Fatal(err)
	}
	return cmd, said
}

// codeOf is the exit code of a program that has ended, -1 where the system ended it.
func codeOf(err error) int {
	var ended *exec.ExitError
	if errors.As(err, &ended) {
		return ended.ExitCode()
	}
	return 0
}

const (
	processors = 2                // that the program may use
	latest     = 10 * time.Second // that the program begins to listen
	enough     = time.Minute      // for anything, on any machine
	tooLong    = time.Second      // of processor time beyond what the program had before it was told; the large picture takes twice that
)

// Asked to end, every command ends at once with the exit code that says so, whatever it does; the old file is there or the
// new one, and nothing unfinished. One that comes to its end by itself does so.
func TestToldToEnd(t *testing.T) {
	folder := t.TempDir()
	large := "strip 4\nfabric navy #1f3350\nfabric cream #f4ead7\nblock W web wedges navy cream kites cream\ngrid\n W W W W W\n W W W W W\nrepeat across 14 down 14\n"
	for name, text := range map[string]string{"large.quilt": large, "large.pdf": "old", "large.png": "old"} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		sign  syscall.Signal
		after time.Duration // 0 for once it has said a line
		want  int
		args  string
	}{
		{syscall.SIGINT, 300 * time.Millisecond, 130, "check -"},
		{syscall.SIGTERM, 300 * time.Millisecond, 143, "check -"},
		{syscall.SIGINT, 0, 0, "preview large.quilt --no-open"},
		{syscall.SIGINT, 200 * time.Millisecond, 130, "booklet large.quilt --force"},
		{syscall.SIGINT, 400 * time.Millisecond, 130, "booklet large.quilt --force"},
		{syscall.SIGINT, 300 * time.Millisecond, 130, "booklet large.quilt -o pattern/"},
		{syscall.SIGINT, 200 * time.Millisecond, 130, "draw large.quilt --force --longest 20000px -o large.png"},
	} {
		got, said := told(t, folder, c.args, c.sign, c.after)
		for after := 2 * c.after; got < 0 && after < latest; after *= 2 {
			got, said = told(t, folder, c.args, c.sign, after) // it did not listen yet
		}
		if got != c.want && (got != 0 || !strings.Contains(said, "made:") && !strings.Contains(said, "drawn:")) {
			t.Errorf("%s: exit code %d, want %d: %s", c.args, got, c.want, said)
		}
		list, _ := os.ReadDir(folder)
		for _, e := range list {
			if strings.HasPrefix(e.Name(), ".eighthturn-") {
				t.Errorf("%s: %s is left", c.args, e.Name())
			}
		}
	}
	for _, name := range []string{"large.pdf", "large.png"} {
		if text, err := os.ReadFile(filepath.Join(folder, name)); err != nil || string(text) != "old" && len(text) < 1000 {
			t.Errorf("%s: %.20q, %v", name, text, err)
		}
	}
}

// told starts the program and sends it a signal, after a time or, for none, once it has said a line. It gives the exit code and what was said.
func told(t *testing.T, folder, args string, sign os.Signal, after time.Duration) (code int, said string) {
	t.Helper()
	cmd, output := begun(t, folder, strings.Fields(args)...)
	if after > 0 {
		time.Sleep(after)
	} else if !within(func() { <-output.first }) {
		t.Errorf("%s: it says nothing", args)
	}
	_ = cmd.Process.Signal(sign)
	if !within(func() { code = codeOf(cmd.Wait()) }) {
		_ = cmd.Process.Kill()
		t.Fatalf("%s: it did not end", args)
	}
	if took := cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime(); took > processors*after+tooLong {
		t.Errorf("%s: it went on until it had worked for %v", args, took)
	}
	return code, output.text
}

// within says whether something ended in time.
func within(do func()) bool {
	ended := make(chan bool)
	go func() { do(); close(ended) }()
	select {
	case <-ended:
		return true
	case <-time.After(enough):
		return false
	}
}

//go:build unix

package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// begun starts the program in a folder.
func begun(t *testing.T, folder string, args ...string) (*exec.Cmd, *bytes.Buffer) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	var said bytes.Buffer
	cmd := &exec.Cmd{Path: self, Args: append([]string{"eighthturn"}, args...), Dir: folder, Stdout: &said, Stderr: &said, Env: os.Environ()}
	if in, err := cmd.StdinPipe(); err != nil || in == nil || cmd.Start() != nil { // the pipe stays open
		t.Fatal(err)
	}
	return cmd, &said
}

// codeOf is the exit code of a program that has ended.
func codeOf(err error) int {
	var ended *exec.ExitError
	if errors.As(err, &ended) {
		return ended.ExitCode()
	}
	return 0
}

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
		after time.Duration
		want  int
		args  string
	}{
		{syscall.SIGINT, 300 * time.Millisecond, 130, "check -"},
		{syscall.SIGTERM, 300 * time.Millisecond, 143, "check -"},
		{syscall.SIGINT, 300 * time.Millisecond, 0, "preview large.quilt --no-open"},
		{syscall.SIGINT, 200 * time.Millisecond, 130, "booklet large.quilt --force"},
		{syscall.SIGINT, 400 * time.Millisecond, 130, "booklet large.quilt --force"},
		{syscall.SIGINT, 300 * time.Millisecond, 130, "booklet large.quilt -o pattern/"},
		{syscall.SIGINT, 200 * time.Millisecond, 130, "draw large.quilt --force --longest 6000px -o large.png"},
	} {
		cmd, said := begun(t, folder, strings.Fields(c.args)...)
		time.Sleep(c.after)
		began := time.Now()
		_ = cmd.Process.Signal(c.sign)
		got := codeOf(cmd.Wait())
		if took := time.Since(began); took > time.Second { // half a second, and a busy machine
			t.Errorf("%s: it ended after %v", c.args, took)
		}
		if got != c.want && (got != 0 || !strings.Contains(said.String(), "made:") && !strings.Contains(said.String(), "drawn:")) {
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

package files

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// childPath tells a copy of the test program to write the file of that name and be killed.
const childPath = "OUTFILE_CHILD"

const stages = 6 // of the child, each a line on its standard output

func oldContent() string { return "made here, old\n" + strings.Repeat("old ", 300_000) }
func newContent() string { return "made here, new\n" + strings.Repeat("new ", 400_000) }

func TestMain(m *testing.M) {
	if path := os.Getenv(childPath); path != "" {
		child(path)
		return
	}
	if folder := os.Getenv(childSet); folder != "" {
		writeSets(folder)
		return
	}
	os.Exit(m.Run())
}

// child writes the new content in pieces and says how far it is.
func child(path string) {
	err := Write(path, Options{Ours: ours}, func(w io.Writer) error {
		content := newContent()
		for n := range stages - 1 {
			fmt.Println("stage")
			from, to := len(content)*n/(stages-1), len(content)*(n+1)/(stages-1)
			if _, err := io.WriteString(w, content[from:to]); err != nil {
				return err
			}
		}
		fmt.Println("stage") // what follows: sync, close, rename
		return nil
	})
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// killed runs the child, kills it a while after a stage, and says whether it was stopped in time.
func killed(t *testing.T, path string, stage int, after time.Duration) bool {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), childPath+"="+path)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	for range stage {
		lines.Scan()
	}
	time.Sleep(after)
	_ = cmd.Process.Kill() // it may have come to its end
	_, _ = io.Copy(io.Discard, out)
	return cmd.Wait() != nil
}

// Whenever the writer is killed, the old file is there whole, or the new one is.
func TestKilledAtAnyMoment(t *testing.T) {
	stopped, kept := 0, 0
	for stage := 1; stage <= stages; stage++ {
		for _, after := range []time.Duration{0, 300 * time.Microsecond, time.Millisecond, 3 * time.Millisecond} {
			path := put(t, t.TempDir(), "old.svg", oldContent())
			if killed(t, path, stage, after) {
				stopped++
			}
			got, err := os.ReadFile(path)
			switch {
			case err != nil:
				t.Fatal(err)
			case string(got) == oldContent():
				kept++
			case string(got) != newContent():
				t.Fatalf("killed %v after stage %d: %d bytes are neither the old file nor the new one", after, stage, len(got))
			}
		}
	}
	if stopped == 0 || kept == 0 {
		t.Errorf("nothing was tried: stopped %d times, the old file kept %d times", stopped, kept)
	}
	t.Logf("stopped in time %d times, the old file kept %d times of %d", stopped, kept, 4*stages)
}

// A file opened for writing in its place is destroyed by the same kill; so the test above can fail.
func TestPlainWritingWouldLoseTheFile(t *testing.T) {
	path := put(t, t.TempDir(), "old.svg", oldContent())
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	_, _ = io.WriteString(f, newContent()[:100])
	if got, _ := os.ReadFile(path); string(got) == oldContent() || string(got) == newContent() {
		t.Errorf("%s is whole", filepath.Base(path))
	}
}

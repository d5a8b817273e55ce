package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// double is a double-click: what is typed into the window, what is shown there, and what is run.
func double(t *testing.T, home, typed string, code int, args ...string) (shown string, ran []string, exit int) {
	t.Helper()
	in, out := filepath.Join(t.TempDir(), "in"), filepath.Join(t.TempDir(), "out")
	if err := os.WriteFile(in, []byte(typed), 0o600); err != nil {
		t.Fatal(err)
	}
	keys, err := os.Open(in)
	if err != nil {
		t.Fatal(err)
	}
	defer keys.Close()
	window, err := os.Create(out)
	if err != nil {
		t.Fatal(err)
	}
	defer window.Close()
	c := &console{in: keys, out: window, err: window}
	exit = c.opened(args, home, func(a []string, _ *console) int {
		ran = a
		return code
	})
	text, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return string(text), ran, exit
}

// A double-click says what to do, waits, and opens a first layout, which it never replaces.
func TestDoubleClick(t *testing.T) {
	home := t.TempDir()
	first := filepath.Join(home, firstLayout)
	shown, ran, code := double(t, home, "", done)
	if !strings.Contains(shown, "Press Enter") || !strings.Contains(shown, first) || ran != nil || code != done {
		t.Errorf("with the window closed %v is run, exit %d, shown:\n%s", ran, code, shown)
	}
	if _, err := os.Stat(first); err == nil {
		t.Error("a layout is written before anybody asked for it")
	}
	if _, ran, _ = double(t, home, "\n", done); !slices.Equal(ran, []string{"preview", first}) {
		t.Errorf("after Enter %v is run", ran)
	}
	text, err := os.ReadFile(first)
	if err != nil || !strings.Contains(string(text), "grid") {
		t.Fatalf("%v, the first layout is %q", err, text)
	}
	if err := os.WriteFile(first, []byte("# mine\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	double(t, home, "\n", done)
	if text, _ = os.ReadFile(first); string(text) != "# mine\n" {
		t.Errorf("the layout was replaced by %q", text)
	}
}

// A layout that is dropped on the program is followed; a window with an error waits to be read.
func TestDroppedLayout(t *testing.T) {
	if shown, ran, code := double(t, t.TempDir(), "", done, "harbor.quilt"); !slices.Equal(ran, []string{"preview", "harbor.quilt"}) || shown != "" || code != done {
		t.Errorf("%v is run, exit %d, shown: %s", ran, code, shown)
	}
	shown, ran, code := double(t, t.TempDir(), "", faulty, "check", "harbor.quilt")
	if !slices.Equal(ran, []string{"check", "harbor.quilt"}) || code != faulty || !strings.Contains(shown, "Press Enter to close") {
		t.Errorf("%v is run, exit %d, shown: %s", ran, code, shown)
	}
}

func TestOpenedByFinder(t *testing.T) {
	terminal := func(level string) func(string) string {
		return func(name string) string {
			return map[string]string{"SHLVL": level, "TERM_PROGRAM": "Apple_Terminal"}[name]
		}
	}
	program := filepath.Join(t.TempDir(), "eighthturn")
	for name, c := range map[string]struct {
		program, folder, level string
		want                   bool
	}{
		"double-click":     {program, "/Users/ann", "1", true},
		"typed":            {"eighthturn", "/Users/ann", "1", false},
		"another folder":   {program, "/Users/ann/quilts", "1", false},
		"in a shell again": {program, "/Users/ann", "2", false},
	} {
		if got := openedByFinder(c.program, c.folder, "/Users/ann", terminal(c.level)); got != c.want {
			t.Errorf("%s: %v", name, got)
		}
	}
	if openedByFinder(program, "/Users/ann", "/Users/ann", func(string) string { return "" }) {
		t.Error("a program without a terminal counts as double-clicked")
	}
}

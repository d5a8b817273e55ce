// Package golden compares what tests make with files that somebody has looked at. One option of go test, -update, writes
// those that differ: the run then ends red and lists what it wrote, so that it is looked at before it is kept.
package golden

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"unicode/utf8"
)

var update = flag.Bool("update", false, "write the golden files that differ; the run ends red, and is refused where CI is set")

// Updating says whether -update was given. A machine that only tests must not write what it is to test, so where CI is
// set the test fails.
func Updating(t testing.TB) bool {
	t.Helper()
	return allowed(t, *update, os.Getenv("CI"))
}

func allowed(t testing.TB, update bool, ci string) bool {
	t.Helper()
	if update && ci != "" {
		t.Fatal("-update is for a person who looks at what it writes, not for where CI is set")
	}
	return update
}

// Text compares what was made with a file, byte by byte.
func Text(t testing.TB, file string, made []byte) {
	t.Helper()
	Compare(t, file, made, func(kept []byte) error {
		if !bytes.Equal(kept, made) {
			return errors.New(firstDifference(kept, made))
		}
		return nil
	})
}

// Compare compares what was made with a file; same says in what way the file's content is not the same.
func Compare(t testing.TB, file string, made []byte, same func(kept []byte) error) {
	t.Helper()
	compare(t, Updating(t), file, made, same)
}

func compare(t testing.TB, update bool, file string, made []byte, same func(kept []byte) error) {
	t.Helper()
	kept, err := os.ReadFile(file)
	missing := errors.Is(err, fs.ErrNotExist)
	if err != nil && !missing {
		t.Fatal(err)
	}
	differs := err
	if !missing {
		differs = same(kept)
	}
	switch {
	case update && differs == nil:
		t.Errorf("-update: %s is as it was", file)
	case update:
		if err := write(file, made); err != nil {
			t.Fatal(err)
		}
		t.Errorf("-update: %s was written: look at it", file)
	case missing:
		t.Errorf("%s is missing; look at what was made, then run this test with -update:\n%s", file, shown(t, file, made))
	case differs != nil:
		t.Errorf("%s: %v\nlook at what was made; where it is right, run this test with -update:\n%s", file, differs, shown(t, file, made))
	}
}

func write(file string, made []byte) error {
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		return err
	}
	return os.WriteFile(file, made, 0o644)
}

// shown is what was made: text as it is, up to some length, anything else as the place of a file.
func shown(t testing.TB, file string, made []byte) string {
	const most = 4000
	if utf8.Valid(made) && len(made) <= most {
		return string(made)
	}
	path := filepath.Join(os.TempDir(), "eighthturn-made-"+filepath.Base(file))
	if err := os.WriteFile(path, made, 0o644); err != nil {
		t.Error(err)
	}
	return path
}

func firstDifference(kept, made []byte) string {
	a, b := bytes.Split(kept, []byte("\n")), bytes.Split(made, []byte("\n"))
	for i := range min(len(a), len(b)) {
		if !bytes.Equal(a[i], b[i]) {
			return fmt.Sprintf("line %d is %.300q, what was made has %.300q", i+1, a[i], b[i])
		}
	}
	return fmt.Sprintf("it has %d lines, what was made %d", len(a), len(b))
}

// Unused fails for every file of a folder that is not among the golden ones.
func Unused(t testing.TB, folder string, used []string) {
	t.Helper()
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if !slices.Contains(used, file.Name()) {
			t.Errorf("%s is the golden of nothing: delete it", filepath.Join(folder, file.Name()))
		}
	}
}

// Watch is for tools that write goldens themselves: at the end of a test that was given -update, it fails with the names
// of the folder's files that were written.
func Watch(t testing.TB, folder string) {
	t.Helper()
	if Updating(t) {
		watch(t, folder)
	}
}

func watch(t testing.TB, folder string) {
	t.Helper()
	before := contents(t, folder)
	t.Cleanup(func() {
		for name, text := range contents(t, folder) {
			if old, ok := before[name]; !ok || old != text {
				t.Errorf("-update: %s was written: look at it", filepath.Join(folder, name))
			}
		}
		t.Errorf("-update: run the test again without it")
	})
}

func contents(t testing.TB, folder string) map[string]string {
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for _, file := range files {
		text, err := os.ReadFile(filepath.Join(folder, file.Name()))
		if err != nil {
			t.Fatal(err)
		}
		all[file.Name()] = string(text)
	}
	return all
}

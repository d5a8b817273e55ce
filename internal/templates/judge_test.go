//go:build judges

package templates

import (
	"eighthturn/internal/quilttest/judges"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// Judges from outside: librsvg, ezdxf.

// program is the path of a program that judges; what is how to have it.
func program(t testing.TB, name, what string) string {
	t.Helper()
	return judges.Program(t, what, name)
}

// output is what a program says, which must end well.
func output(t testing.TB, name string, arguments ...string) string {
	t.Helper()
	out, err := exec.Command(name, arguments...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %s: %v\n%s", filepath.Base(name), strings.Join(arguments, " "), err, out)
	}
	return string(out)
}

// saved is a file of a test's.
func saved(t testing.TB, name string, content []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

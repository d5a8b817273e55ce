//go:build judges

package lsp

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// TestNeovim writes a layout in Neovim (0.7 or later, as Debian has it), where it is installed: an error is seen, its hint applied, words are
// completed and explained, a fabric is renamed, the text is tidied, and the server ends with the editor.
func TestNeovim(t *testing.T) {
	nvim, err := exec.LookPath("nvim")
	if err != nil {
		t.Skip("Neovim is not installed")
	}
	server, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	script, err := filepath.Abs("testdata/neovim.lua")
	if err != nil {
		t.Fatal(err)
	}
	file, out := filepath.Join(folder, "a.quilt"), filepath.Join(folder, "out")
	text := "strip 4\nfabric cream #f4ead7\nfabric navy #1f3350\nblock W web wedges nvay kites cream\ngrid\n  W W\n  W W\n"
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute) // a stop for what hangs, no measure
	defer cancel()
	cmd := exec.CommandContext(ctx, nvim, "--headless", "--clean", "-c", "luafile "+script)
	cmd.Dir = folder
	cmd.Env = append(os.Environ(), "HOME="+folder, "XDG_STATE_HOME="+folder, "XDG_CACHE_HOME="+folder, "EIGHTHTURN_SERVES=1", "SERVER="+server, "FILE="+file, "OUT="+out)
	said, err := cmd.CombinedOutput()
	got, _ := os.ReadFile(out)
	const want = `error no fabric, pool or strip set is called "nvay" | did you mean "navy"?
mended block W web wedges navy kites cream
offered true true nil
hover **navy** #1f3350, value L* 21 | Used for wedges of block W and border
line strip   4
line fabric  cream  #f4ead7
line fabric  dusk   #1f3350  "night 🌙 sky"  on-hand 1 yd
line block   W  web  wedges dusk  kites cream
line grid
line   W W
line   W W
line border  2  dusk
ended
`
	if err != nil || string(got) != want {
		t.Errorf("%v %s\n%s\nwant\n%s", err, said, got, want)
	}
}

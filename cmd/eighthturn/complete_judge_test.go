//go:build judges

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// TestFishCompletes: fish itself, given our script, offers commands, options without quotes, the words of options, and palettes; and files
// where no palette begins so.
func TestFishCompletes(t *testing.T) {
	fish := judges.Program(t, "Debian's fish", "fish")
	folder, bin := t.TempDir(), t.TempDir()
	own, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(own, filepath.Join(bin, "eighthturn")); err != nil { // under this name the test program is the program
		t.Fatal(err)
	}
	script := filepath.Join(bin, "eighthturn.fish")
	if err := os.WriteFile(script, []byte(runIn(t, "completion", "fish").out), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"harbor.quilt", "zinnia.gpl"} {
		if err := os.WriteFile(filepath.Join(folder, name), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for typed, want := range map[string]string{
		"eighthturn dr":                "draw\ta picture of the quilt",
		"eighthturn draw --marg":       "--margin\tfor all but SVG: a margin of this LENGTH, or of pixels like 60px, on every side, in addition to --longest",
		"eighthturn draw --view val":   "value",
		"eighthturn palette tide":      "tidewater\t",
		"eighthturn palette zin":       "zinnia.gpl",
		"eighthturn palette --hues op": "opposite",
		"eighthturn draw har":          "harbor.quilt",
	} {
		cmd := exec.Command(fish, "--no-config", "-c", "source '"+script+"'; complete -C '"+typed+"'")
		cmd.Dir = folder
		cmd.Env = append(os.Environ(), "PATH="+bin+":"+os.Getenv("PATH"), "HOME="+bin, "XDG_DATA_HOME="+bin, "XDG_CONFIG_HOME="+bin)
		out, err := cmd.CombinedOutput()
		if err != nil || !strings.HasPrefix(string(out), want) || strings.Count(string(out), "\n") != 1 || strings.Contains(string(out), "`") {
			t.Errorf("%s: %s, %v; expected %q", typed, out, err, want)
		}
	}
}

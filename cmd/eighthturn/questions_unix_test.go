//go:build linux || darwin

package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/creack/pty"

	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples/starters"
)

// inTerminal runs the program in a terminal, in a folder, and types an answer whenever it has shown what stands before it. It gives all that
// was shown.
func inTerminal(t *testing.T, folder string, args []string, exchange ...[2]string) string {
	t.Helper()
	program, err := exec.LookPath("eighthturn") // this test program, as scripts start it
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(t.Context(), program, args...)
	cmd.Dir = folder
	cmd.Env = append(os.Environ(), "TERM=dumb", "DISPLAY=", "WAYLAND_DISPLAY=", "HOME="+folder)
	terminal, err := pty.Start(cmd)
	if err != nil {
		t.Skip("there are no terminals here: ", err)
	}
	defer terminal.Close()
	var shown strings.Builder
	at := 0
	one := make([]byte, 1)
	for _, e := range exchange {
		for !strings.Contains(shown.String()[at:], e[0]) {
			if _, err := terminal.Read(one); err != nil {
				_ = cmd.Wait()
				t.Fatalf("before %q it ends, shown:\n%s", e[0], shown.String())
			}
			shown.Write(one)
		}
		at = shown.Len()
		if _, err := io.WriteString(terminal, e[1]); err != nil {
			t.Fatal(err)
		}
	}
	rest, _ := io.ReadAll(terminal) // a terminal whose program is gone ends with an error
	shown.Write(rest)
	if err := cmd.Wait(); err != nil {
		var code *exec.ExitError
		if !asExit(err, &code) || code.ExitCode() > done && !strings.Contains(shown.String(), "http://") {
			t.Errorf("%v: %v, shown:\n%s", args, err, shown.String())
		}
	}
	return strings.ReplaceAll(shown.String(), "\r\n", "\n")
}

func asExit(err error, to **exec.ExitError) bool {
	e, ok := err.(*exec.ExitError)
	*to = e
	return ok
}

const controlC, endOfInput = "\x03", "\x04"

// TestNewAsks: each question has an answer that Enter takes; what is no answer is asked again; the layout is the kind, the size and the
// palette that were asked for, and nothing is replaced.
func TestNewAsks(t *testing.T) {
	folder := t.TempDir()
	inTerminal(t, folder, []string{"new", "--no-open"}, [2]string{"stars: ", "\n"}, [2]string{"Or Enter for ", "\n"}, [2]string{"it has: ", "\n"})
	first := starters.All()[0]
	if text, err := os.ReadFile(filepath.Join(folder, first.Name+".quilt")); err != nil || string(text) != first.Text {
		t.Errorf("three times Enter: %v, %s", err, text)
	}
	shown := inTerminal(t, folder, []string{"new", "--no-open"}, [2]string{"stars: ", "wabs\n"}, [2]string{`did you mean "webs"?`, "floating-stars\n"},
		[2]string{"Or Enter for ", "large\n"}, [2]string{`"large" is no bed`, "60 by 75\n"}, [2]string{"it has: ", "tidewater\n"})
	text, err := os.ReadFile(filepath.Join(folder, first.Name+"-2.quilt"))
	if err != nil || !strings.Contains(shown, "written: "+first.Name+"-2.quilt") {
		t.Fatalf("%v, shown:\n%s", err, shown)
	}
	d, _, faults := layout.Read(string(text))
	if d == nil || len(faults) > 0 {
		t.Fatalf("%v\n%s", faults, text)
	}
	p, _ := palettes.Find("tidewater")
	for _, f := range d.Fabrics {
		if !strings.Contains(f.Colour.Hex(), "#") || !inPalette(p, f.Colour) {
			t.Errorf("%s is %s, which tidewater has not", f.Name, f.Colour.Hex())
		}
	}
	shown = inTerminal(t, folder, []string{"new"}, [2]string{"stars: ", "rings\n"}, [2]string{"Or Enter for ", "crib\n"}, [2]string{"it has: ", "1\n"}, [2]string{"http://127.0.0.1", controlC})
	if _, err := os.Stat(filepath.Join(folder, "rings.quilt")); err != nil {
		t.Errorf("%v, shown:\n%s", err, shown)
	}
	inTerminal(t, folder, []string{"new"}, [2]string{"stars: ", endOfInput}, [2]string{"Layouts to start from", ""})
}

func inPalette(p palettes.Palette, c palettes.Colour) bool {
	for _, s := range p.Fabrics {
		if s.Colour == c {
			return true
		}
	}
	return false
}

// TestNameAloneOffers: in a terminal and a folder without layouts a first one is offered; with n, or where there is one, help is shown.
func TestNameAloneOffers(t *testing.T) {
	folder := t.TempDir()
	if shown := inTerminal(t, folder, nil, [2]string{"n for no: ", "n\n"}); !strings.Contains(shown, "To begin") {
		t.Errorf("no is no:\n%s", shown)
	}
	if shown := inTerminal(t, folder, nil, [2]string{"n for no: ", endOfInput}); strings.Contains(shown, "Which kind") {
		t.Errorf("asked without anybody there:\n%s", shown)
	}
	inTerminal(t, folder, nil, [2]string{"n for no: ", "\n"}, [2]string{"stars: ", "stars\n"}, [2]string{"Or Enter for ", "\n"}, [2]string{"it has: ", "\n"}, [2]string{"http://127.0.0.1", controlC})
	if _, err := os.Stat(filepath.Join(folder, "stars.quilt")); err != nil {
		t.Error(err)
	}
	if shown := inTerminal(t, folder, nil); strings.Contains(shown, "n for no") || !strings.Contains(shown, "To begin") {
		t.Errorf("with a layout there:\n%s", shown)
	}
}

// TestRecolored: every starter in every palette is a layout without errors, and no darker fabric becomes lighter than another.
func TestRecolored(t *testing.T) {
	for _, s := range starters.All() {
		before, _, _ := layout.Read(s.Text)
		for _, p := range palettes.All() {
			text := recolored(s.Text, p)
			after, _, faults := layout.Read(text)
			if after == nil || len(faults) > 0 || len(after.Fabrics) != len(before.Fabrics) {
				t.Errorf("%s in %s: %v\n%s", s.Name, p.Name, faults, text)
				continue
			}
			for i, f := range after.Fabrics {
				if !inPalette(p, f.Colour) {
					t.Errorf("%s in %s: %s is %s", s.Name, p.Name, f.Name, f.Colour.Hex())
				}
				for j, g := range after.Fabrics {
					if before.Fabrics[i].Colour.Lightness() < before.Fabrics[j].Colour.Lightness() && f.Colour.Lightness() > g.Colour.Lightness() {
						t.Errorf("%s in %s: %s and %s change places", s.Name, p.Name, f.Name, g.Name)
					}
				}
			}
		}
	}
}

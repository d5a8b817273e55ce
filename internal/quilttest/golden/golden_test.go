package golden

import (
	"fmt"
	"image"
	"image/color"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// heard is a test that only notes what it is told.
type heard struct {
	testing.TB
	said []string
	ends []func()
}

func (h *heard) Helper()                        {}
func (h *heard) Errorf(form string, all ...any) { h.said = append(h.said, fmt.Sprintf(form, all...)) }
func (h *heard) Error(all ...any)               { h.said = append(h.said, fmt.Sprint(all...)) }
func (h *heard) Fatal(all ...any)               { h.said = append(h.said, fmt.Sprint(all...)) }
func (h *heard) Cleanup(end func())             { h.ends = append(h.ends, end) }

// wants says that a test failed once, with these words, or not at all where there are none.
func (h *heard) wants(t *testing.T, what string, words ...string) {
	t.Helper()
	all := strings.Join(h.said, "\n")
	if len(words) == 0 && all != "" {
		t.Errorf("%s: failed with %q", what, all)
	}
	for _, w := range words {
		if !strings.Contains(all, w) {
			t.Errorf("%s: failed with %q, want %q", what, all, w)
		}
	}
}

func TestGoldens(t *testing.T) {
	file := filepath.Join(t.TempDir(), "in", "look.txt")
	try := func(update bool, made string) *heard {
		h := &heard{}
		compare(h, update, file, []byte(made), func(kept []byte) error {
			if string(kept) != made {
				return fmt.Errorf("it is %q", kept)
			}
			return nil
		})
		return h
	}
	try(false, "a star").wants(t, "missing", "is missing", "a star")
	if _, err := os.Stat(file); err == nil {
		t.Error("a missing golden was written without being asked for")
	}
	try(true, "a star").wants(t, "written", "look.txt was written")
	try(false, "a star").wants(t, "the same")
	try(false, "a kite").wants(t, "another", `it is "a star"`, "a kite")
	try(true, "a star").wants(t, "the same, written", "is as it was")
	try(true, "a kite").wants(t, "another, written", "was written")
	try(false, "a kite").wants(t, "the same again")
	try(false, "\xff").wants(t, "no text", "eighthturn-made-look.txt")
}

func TestUpdateIsRefused(t *testing.T) {
	for _, c := range []struct {
		update bool
		ci     string
		words  []string
	}{{true, "", nil}, {false, "true", nil}, {false, "", nil}, {true, "true", []string{"CI"}}} {
		h := &heard{}
		if allowed(h, c.update, c.ci) != c.update {
			t.Errorf("%+v: the option was not taken", c)
		}
		h.wants(t, fmt.Sprintf("%+v", c), c.words...)
	}
}

func TestUnused(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"a.png", "b.png"} {
		if err := write(filepath.Join(folder, name), nil); err != nil {
			t.Fatal(err)
		}
	}
	h := &heard{}
	Unused(h, folder, []string{"a.png", "b.png"})
	h.wants(t, "all used")
	Unused(h, folder, []string{"a.png"})
	h.wants(t, "one unused", "b.png is the golden of nothing")
}

func TestWatch(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"a.txt", "b.txt"} {
		if err := write(filepath.Join(folder, name), []byte(name)); err != nil {
			t.Fatal(err)
		}
	}
	h := &heard{}
	watch(h, folder)
	if err := write(filepath.Join(folder, "b.txt"), []byte("another")); err != nil {
		t.Fatal(err)
	}
	for _, end := range h.ends {
		end()
	}
	h.wants(t, "one was written", "b.txt was written", "run the test again")
	if strings.Contains(strings.Join(h.said, "\n"), "a.txt") {
		t.Errorf("a file that stayed is listed: %q", h.said)
	}
}

func TestPictures(t *testing.T) {
	file := filepath.Join(t.TempDir(), "a.png")
	m := image.NewNRGBA(image.Rect(0, 0, 20, 10))
	draw := func(s Slack) *heard {
		h := &heard{}
		Picture(h, file, m, s)
		return h
	}
	draw(Slack{}).wants(t, "missing", "is missing", "eighthturn-made-a.png")
	if err := write(file, nil); err != nil {
		t.Fatal(err)
	}
	draw(Slack{}).wants(t, "no picture", "a.png")
	made, err := os.ReadFile(filepath.Join(os.TempDir(), "eighthturn-made-a.png"))
	if err != nil {
		t.Fatal(err)
	}
	if err := write(file, made); err != nil {
		t.Fatal(err)
	}
	draw(Slack{}).wants(t, "the same")
	m.Set(3, 3, color.White)
	draw(Slack{}).wants(t, "a pixel", "0.5 % of the pixels", "eighthturn-a.png")
	draw(Slack{StrongShare: 0.006, MeanLevels: 2}).wants(t, "a pixel that may differ")
	m = image.NewNRGBA(image.Rect(0, 0, 21, 10))
	draw(Slack{1, 255}).wants(t, "another size", "(21,10) pixels")
}

//go:build unix

package files

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

func plain(t testing.TB, c color.Color) []byte {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, 30, 30))
	for y := range 30 {
		for x := range 30 {
			picture.Set(x, y, c)
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, picture); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func write(t testing.TB, path string, bytes []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, bytes, 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestCloth(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "cloth", "sea.png"), plain(t, color.RGBA{47, 125, 131, 255}))
	a := Beside(filepath.Join(folder, "harbour.quilt"))
	cloth, err := a.Cloth("cloth/sea.png")
	if err != nil || cloth.Colour.Hex() != "#2f7d83" {
		t.Fatalf("%s, %v", cloth.Colour.Hex(), err)
	}
	if a.Changed() {
		t.Error("nothing changed")
	}
	write(t, filepath.Join(folder, "cloth", "sea.png"), plain(t, color.RGBA{200, 125, 131, 255}))
	if err := os.Chtimes(filepath.Join(folder, "cloth", "sea.png"), time.Time{}, time.Unix(1_700_000_000, 0)); err != nil {
		t.Fatal(err)
	}
	if !a.Changed() {
		t.Error("the change was not seen")
	}
	if cloth, err := a.Cloth("cloth/sea.png"); err != nil || cloth.Colour.Hex() != "#c87d83" {
		t.Errorf("%s, %v", cloth.Colour.Hex(), err)
	}
}

// TestPhotoRefused: nothing outside the folder is read, nothing that is no photo, and a pipe holds
// nothing up.
func TestPhotoRefused(t *testing.T) {
	outside, folder := t.TempDir(), t.TempDir()
	secret := filepath.Join(outside, "secret.png")
	write(t, secret, plain(t, color.White))
	write(t, filepath.Join(folder, "text.png"), []byte("no photo"))
	for name, to := range map[string]string{"link.png": secret, "up.png": "../" + filepath.Base(outside) + "/secret.png"} {
		if err := os.Symlink(to, filepath.Join(folder, name)); err != nil {
			t.Fatal(err)
		}
	}
	if err := syscall.Mkfifo(filepath.Join(folder, "pipe.png"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(folder, "folder.png"), 0o700); err != nil {
		t.Fatal(err)
	}
	a := In(folder)
	for name, want := range map[string]string{
		"link.png": "cannot be read", "up.png": "cannot be read", "pipe.png": "not an ordinary file", "folder.png": "a folder",
		"text.png": "no photo that can be read", "none.png": "no such photo", "../" + filepath.Base(outside) + "/secret.png": "leads out of the layout's folder",
	} {
		if _, err := a.Cloth(name); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", name, err, want)
		}
	}
	write(t, filepath.Join(folder, "none.png"), plain(t, color.Black))
	if !a.Changed() {
		t.Error("a photo that came was not seen")
	}
	a.Forget(map[string]bool{"none.png": true})
	if len(a.pages) != 1 {
		t.Errorf("%d photos are remembered", len(a.pages))
	}
}

// TestPhotosAreKept: what was read of a photo is known without its file, until it is forgotten; that another is there now is still noticed.
func TestPhotosAreKept(t *testing.T) {
	folder := t.TempDir()
	at := filepath.Join(folder, "sea.png")
	if err := os.WriteFile(at, []byte("no photo"), 0o600); err != nil {
		t.Fatal(err)
	}
	a := In(folder)
	if _, known, _ := a.Kept("sea.png"); known {
		t.Error("known before it was read")
	}
	_, wrong := a.Cloth("sea.png")
	if err := os.Remove(at); err != nil {
		t.Fatal(err)
	}
	if _, known, fault := a.Kept("sea.png"); !known || fault != wrong || wrong == nil {
		t.Errorf("kept is %v, known %v, read was %v", fault, known, wrong)
	}
	if !a.Changed() {
		t.Error("that it is gone is not noticed")
	}
	a.Forget(nil)
	if _, known, _ := a.Kept("sea.png"); known {
		t.Error("known when it was forgotten")
	}
}

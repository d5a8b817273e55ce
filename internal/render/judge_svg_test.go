//go:build judges

package render

import (
	"bytes"
	"fmt"
	"image/png"
	"os/exec"
	"testing"

	"eighthturn/internal/quilttest/judges"
	"eighthturn/palettes"
)

// whole says whether a picture file, drawn by another program, has the four corners of the n-th
// illustration.
func whole(t *testing.T, svg []byte, n int) bool {
	t.Helper()
	run := exec.Command(judges.Program(t, "Debian's librsvg2-bin", "rsvg-convert"), "--width", "200", "--background-color", "white")
	run.Stdin = bytes.NewReader(svg)
	out, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	seen := map[palettes.Colour]bool{}
	b := picture.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			r, g, bl, _ := picture.At(x, y).RGBA()
			seen[palettes.Colour{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(bl >> 8)}] = true
		}
	}
	all := true
	for _, c := range corners(n) {
		all = all && seen[c]
	}
	return all
}

func TestSVGShowsAll(t *testing.T) {
	for seed := range uint64(3) {
		d, v := invent(seed)
		files, err := Markdown(d, "law", Options{})
		if err != nil {
			t.Fatal(err)
		}
		for n := range min(v.figures, 8) {
			svg := files[fmt.Sprintf("law-%d.svg", n+1)]
			if !whole(t, svg, n) {
				t.Errorf("seed %d: picture %d is not shown whole", seed, n+1)
			}
			if whole(t, svg, n+1) {
				t.Errorf("seed %d: picture %d is taken for another", seed, n+1)
			}
		}
	}
}

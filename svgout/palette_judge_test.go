//go:build judges

package svgout

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/draw"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"testing"

	"eighthturn/internal/quilttest/judges"
)

// A fabric that is given another color in one place has it everywhere, beneath the seams and in the legend too: no pixel of the old
// color is left, as librsvg, Chromium and, where it is installed, Inkscape draw it. Paints change no pixel by themselves.
func TestOnePaintRecolorsAFabric(t *testing.T) {
	for _, by := range []struct {
		name   string
		levels int // by which pictures with paints differ: Chromium smooths edges at the sides of its tiles in other ways
		render func(t *testing.T, pictures [][]byte) []*image.NRGBA
	}{{"librsvg", 0, small}, {"Chromium", 60, withChromium}, {"Inkscape", 0, withInkscape}} {
		t.Run(by.name, func(t *testing.T) {
			recolored(t, Options{Legend: true}, by.levels, by.render)
			if by.name == "librsvg" {
				recolored(t, Options{SeamLines: SeamsLeftOut, ByFabric: true}, by.levels, by.render)
			}
		})
	}
}

func recolored(t *testing.T, o Options, levels int, render func(t *testing.T, pictures [][]byte) []*image.NRGBA) {
	top := lapTop(t)
	plain := drawn(t, top, o)
	o.OnePaint = true
	svg := drawn(t, top, o)
	pictures := [][]byte{plain, svg}
	for f := range top.Fabrics {
		one := regexp.MustCompile(fmt.Sprintf(`(id="paint-%d"[^>]*><stop offset="0" stop-color=")#[0-9a-f]{6}`, f+1))
		other := one.ReplaceAll(svg, []byte("${1}#00ff00"))
		part := regexp.MustCompile(fmt.Sprintf(`(id="(?:fabric|border-cloth)-%d"[^>]*fill=")[^"]*"`, f+1))
		half := part.ReplaceAll(other, []byte(`${1}`+top.Fabrics[f].Colour.Hex()+`"`))
		if bytes.Equal(half, other) {
			t.Fatalf("%s has no part", top.Fabrics[f].Name)
		}
		pictures = append(pictures, other, half)
	}
	m := render(t, pictures)
	if by := mostApart(m[0], m[1]); by > levels {
		t.Errorf("%+v: paints change pixels by %d levels", o, by)
	}
	for f := range top.Fabrics {
		old := top.Fabrics[f].Colour.Hex()
		law := func(picture *image.NRGBA) error {
			if n := colored(picture, old); n > 0 {
				return fmt.Errorf("%d pixels still have %s", n, old)
			}
			if colored(picture, "#00ff00") == 0 {
				return errors.New("no pixel has the new color")
			}
			return nil
		}
		if err := law(m[2+2*f]); err != nil {
			t.Errorf("%+v, %s: %v", o, top.Fabrics[f].Name, err)
		}
		if law(m[1]) == nil || law(m[3+2*f]) == nil {
			t.Errorf("%s: a part that keeps its color is not noticed", top.Fabrics[f].Name)
		}
	}
}

func small(t *testing.T, pictures [][]byte) []*image.NRGBA {
	var jobs []job
	for _, p := range pictures {
		jobs = append(jobs, job{p, goldenZoom(t, p), "#ffffff"})
	}
	return withLibrsvg(t, jobs)
}

// acrossPage is how wide pictures stand on Chromium's page, in pixels.
const acrossPage = 300

// withChromium has Chromium show pictures side by side on one page.
func withChromium(t *testing.T, pictures [][]byte) []*image.NRGBA {
	chromium := judges.Program(t, "Debian's chromium", "chromium", "chromium-browser", "google-chrome")
	dir := t.TempDir()
	page := fmt.Sprintf("<!doctype html><style>body{margin:0}img{float:left;width:%dpx;height:%[1]dpx}</style>", acrossPage)
	for i, p := range pictures {
		name := fmt.Sprintf("%d.svg", i)
		if err := os.WriteFile(filepath.Join(dir, name), p, 0o600); err != nil {
			t.Fatal(err)
		}
		page += `<img src="` + name + `">`
	}
	if err := os.WriteFile(filepath.Join(dir, "page.html"), []byte(page), 0o600); err != nil {
		t.Fatal(err)
	}
	shot := filepath.Join(dir, "page.png")
	if said, err := exec.Command(chromium, "--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--force-color-profile=srgb", "--user-data-dir="+filepath.Join(dir, "profile"),
		fmt.Sprintf("--window-size=%d,%d", acrossPage*len(pictures), acrossPage), "--screenshot="+shot, filepath.Join(dir, "page.html")).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	whole := read(t, shot)
	var list []*image.NRGBA
	for i := range pictures {
		one := image.NewNRGBA(image.Rect(0, 0, acrossPage, acrossPage))
		draw.Draw(one, one.Bounds(), whole, image.Pt(i*acrossPage, 0), draw.Src)
		list = append(list, one)
	}
	return list
}

// withInkscape has Inkscape open pictures and export them.
func withInkscape(t *testing.T, pictures [][]byte) []*image.NRGBA {
	inkscape, err := exec.LookPath("inkscape")
	if err != nil {
		t.Skip("Inkscape is not installed: it does not judge")
	}
	var list []*image.NRGBA
	for _, p := range pictures {
		in, out := filepath.Join(t.TempDir(), "in.svg"), filepath.Join(t.TempDir(), "out.png")
		if err := os.WriteFile(in, p, 0o600); err != nil {
			t.Fatal(err)
		}
		if said, err := exec.Command(inkscape, in, "--export-type=png", fmt.Sprintf("--export-width=%d", acrossPage), "--export-filename="+out).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, said)
		}
		list = append(list, read(t, out))
	}
	return list
}

// read is a picture of a file.
func read(t *testing.T, path string) *image.NRGBA {
	t.Helper()
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return decoded(t, file)
}

// mostApart is by how many levels of a channel two pictures differ at the most.
func mostApart(a, b *image.NRGBA) int {
	most := 0
	for i := range a.Pix {
		most = max(most, int(a.Pix[i])-int(b.Pix[i]), int(b.Pix[i])-int(a.Pix[i]))
	}
	return most
}

// colored counts the pixels of a color.
func colored(m *image.NRGBA, hex string) int {
	n := 0
	for i := 0; i < len(m.Pix); i += 4 {
		if fmt.Sprintf("#%02x%02x%02x", m.Pix[i], m.Pix[i+1], m.Pix[i+2]) == hex {
			n++
		}
	}
	return n
}

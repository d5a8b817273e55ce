//go:build judges

package svgout

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"eighthturn/internal/quilttest/golden"
)

const goldenFolder = "../testdata/golden"

// look is a picture whose looks are kept.
type look struct {
	layout string // of layouts
	Options
}

// looks are few, for one of each look: the laws and judges say what a picture must be,
// these only that it still looks as it did when somebody looked at it.
func looks() map[string]look {
	return map[string]look{
		"lap-colour":  {"lap", Options{Legend: true}},
		"lap-seams":   {"lap", Options{Legend: true, SeamLines: true, ByFabric: true}},
		"lap-line":    {"lap", Options{View: Line, Legend: true}},
		"holes-value": {"holes", Options{View: Value, Legend: true}},
		"mixed-line":  {"mixed", Options{View: Line, Legend: true, ByFabric: true}},
		"tall-colour": {"tall", Options{Legend: true, ByFabric: true}},
		"one-line":    {"one", Options{View: Line, Legend: true}},
	}
}

func TestLooks(t *testing.T) {
	list := looks()
	var files []string
	for name, g := range list {
		files = append(files, name+".png")
		t.Run(name, func(t *testing.T) {
			top := lay(t, layouts()[g.layout])
			svg := drawn(t, top, g.Options)
			compareLooks(t, filepath.Join(goldenFolder, name+".png"), withLibrsvg(t, []job{{svg, goldenZoom(t, svg), "#ffffff"}})[0])
		})
	}
	golden.Unused(t, goldenFolder, files)
}

// goldenZoom is the zoom at which the longer side of a picture has some 420 pixels.
func goldenZoom(t *testing.T, svg []byte) float64 {
	root, err := parse(svg)
	if err != nil {
		t.Fatal(err)
	}
	var width, height float64
	if _, err := fmt.Sscanf(root.attr("viewBox"), "0 0 %g %g", &width, &height); err != nil {
		t.Fatal(err)
	}
	return 420 / max(width, height)
}

// compareLooks compares a picture with its golden.
func compareLooks(t *testing.T, file string, got *image.NRGBA) {
	t.Helper()
	golden.Compare(t, file, encoded(t, got), func(kept []byte) error {
		want := decoded(t, kept)
		err := alike(want, got)
		if err == nil {
			return nil
		}
		panels := filepath.Join(os.TempDir(), "eighthturn-"+filepath.Base(file))
		if err := os.WriteFile(panels, encoded(t, threePanels(want, got)), 0o644); err != nil {
			t.Error(err)
		}
		return fmt.Errorf("%w; want, got and the difference are in %s", err, panels)
	})
}

// Releases of a renderer differ in how they smooth edges, and machines in the face that
// stands for Helvetica: another plain face changes up to half a percent of the pixels here
// strongly, a legend that is missing seven tenths.
const (
	strongLevels = 80    // a pixel that differs by more in a channel is another colour
	strongShare  = 0.006 // of all pixels may be
	meanLevels   = 1.6   // the mean difference of all channels may have
)

// alike says whether two pictures look the same.
func alike(want, got *image.NRGBA) error {
	if want.Rect != got.Rect {
		return fmt.Errorf("the picture has %v pixels, expected %v", got.Rect.Size(), want.Rect.Size())
	}
	strong, sum := 0, 0
	for i := 0; i < len(want.Pix); i += 4 {
		most := 0
		for c := range 4 {
			d := int(want.Pix[i+c]) - int(got.Pix[i+c])
			most = max(most, d, -d)
			sum += max(d, -d)
		}
		if most > strongLevels {
			strong++
		}
	}
	pixels := len(want.Pix) / 4
	if share, mean := float64(strong)/float64(pixels), float64(sum)/float64(3*pixels); share > strongShare || mean > meanLevels {
		return fmt.Errorf("%.2f %% of the pixels differ strongly, and all by %.2f levels in the mean", 100*share, mean)
	}
	return nil
}

// threePanels is what was wanted, what came, and where they differ, side by side.
func threePanels(want, got *image.NRGBA) *image.NRGBA {
	size := image.Pt(max(want.Rect.Dx(), got.Rect.Dx()), max(want.Rect.Dy(), got.Rect.Dy()))
	all := image.NewNRGBA(image.Rect(0, 0, 3*size.X, size.Y))
	draw.Draw(all, want.Rect, want, image.Point{}, draw.Src)
	draw.Draw(all, got.Rect.Add(image.Pt(size.X, 0)), got, image.Point{}, draw.Src)
	for y := range size.Y {
		for x := range size.X {
			a, b := want.NRGBAAt(x, y), got.NRGBAAt(x, y)
			level := func(p, q uint8) uint8 { return max(p, q) - min(p, q) }
			all.SetNRGBA(2*size.X+x, y, color.NRGBA{level(a.R, b.R), level(a.G, b.G), level(a.B, b.B), 255})
		}
	}
	return all
}

func encoded(t *testing.T, m image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestPicturesThatDifferAreNotAlike(t *testing.T) {
	top := lapTop(t)
	svg := drawn(t, top, Options{Legend: true})
	zoom := goldenZoom(t, svg)
	law := func(bad []byte) error {
		m := withLibrsvg(t, []job{{svg, zoom, "#ffffff"}, {bad, zoom, "#ffffff"}})
		return alike(m[0], m[1])
	}
	if err := law(svg); err != nil {
		t.Fatal(err)
	}
	broken(t, law, svg, `(fabric-2"[^>]*fill="#)b5`, "${1}20")
	broken(t, law, svg, `(viewBox="0 0 )31`, "${1}30")
	broken(t, law, svg, `(?s)<g id="legend".*</g>`, "")
}

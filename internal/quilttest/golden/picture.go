package golden

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
)

// Slack is how far a picture may lie from its golden: renderers and browsers smooth edges and letters in their own ways.
// Its zero value asks for the same pixels.
type Slack struct {
	StrongShare float64 // of the pixels may differ by more than strongLevels in a channel
	MeanLevels  float64 // the mean difference of all channels may have
}

const strongLevels = 80 // a pixel that differs by more is another colour

// Picture compares a picture with a PNG file. Where they differ a file is written that shows what was wanted, what came
// and the difference side by side.
func Picture(t testing.TB, file string, got image.Image, s Slack) {
	t.Helper()
	if kept, err := os.ReadFile(file); err == nil && !Updating(t) {
		if want, err := png.Decode(bytes.NewReader(kept)); err == nil && Alike(want, got, s) == nil {
			return // nothing is to be encoded
		}
	}
	var made bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&made, got); err != nil {
		t.Fatal(err)
	}
	Compare(t, file, made.Bytes(), func(kept []byte) error {
		want, err := png.Decode(bytes.NewReader(kept))
		if err != nil {
			return err
		}
		wrong := Alike(want, got, s)
		if wrong == nil {
			return nil
		}
		var b bytes.Buffer
		panels := filepath.Join(os.TempDir(), "eighthturn-"+filepath.Base(file))
		if err := png.Encode(&b, threePanels(plain(want), plain(got))); err != nil {
			t.Error(err)
		}
		if err := os.WriteFile(panels, b.Bytes(), 0o644); err != nil {
			t.Error(err)
		}
		return fmt.Errorf("%w; want, got and the difference are in %s", wrong, panels)
	})
}

// plain is a picture in four bytes a pixel.
func plain(m image.Image) *image.RGBA {
	p := image.NewRGBA(image.Rect(0, 0, m.Bounds().Dx(), m.Bounds().Dy()))
	draw.Draw(p, p.Rect, m, m.Bounds().Min, draw.Src)
	return p
}

// Alike says in what way two pictures do not look the same.
func Alike(want, got image.Image, s Slack) error {
	a, b := plain(want), plain(got)
	if a.Rect != b.Rect {
		return fmt.Errorf("the picture has %v pixels, expected %v", b.Rect.Size(), a.Rect.Size())
	}
	strong, sum := 0, 0
	for i := 0; i < len(a.Pix); i += 4 {
		most := 0
		for c := range 4 {
			d := int(a.Pix[i+c]) - int(b.Pix[i+c])
			most = max(most, d, -d)
			sum += max(d, -d)
		}
		if most > strongLevels {
			strong++
		}
	}
	pixels := float64(len(a.Pix) / 4)
	if share, mean := float64(strong)/pixels, float64(sum)/(3*pixels); share > s.StrongShare || mean > s.MeanLevels {
		return fmt.Errorf("%.2g %% of the pixels differ strongly, and all by %.2g levels in the mean", 100*share, mean)
	}
	return nil
}

// threePanels is what was wanted, what came, and where they differ, side by side.
func threePanels(want, got *image.RGBA) *image.RGBA {
	size := image.Pt(max(want.Rect.Dx(), got.Rect.Dx()), max(want.Rect.Dy(), got.Rect.Dy()))
	all := image.NewRGBA(image.Rect(0, 0, 3*size.X, size.Y))
	draw.Draw(all, want.Rect, want, image.Point{}, draw.Src)
	draw.Draw(all, got.Rect.Add(image.Pt(size.X, 0)), got, image.Point{}, draw.Src)
	level := func(p, q uint8) uint8 { return max(p, q) - min(p, q) }
	for y := range size.Y {
		for x := range size.X {
			a, b := want.RGBAAt(x, y), got.RGBAAt(x, y)
			all.SetRGBA(2*size.X+x, y, color.RGBA{level(a.R, b.R), level(a.G, b.G), level(a.B, b.B), 255})
		}
	}
	return all
}

package report

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"testing"

	"eighthturn/internal/diagram"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/palettes"
)

// photographed is a layout's top whose striped fabric shows a photo in place of its stripes: 90 by 60 pixels, each of its own color.
func photographed(t *testing.T, text string) *quilt.Top {
	top := lay.Top(t, text)
	picture := image.NewRGBA(image.Rect(0, 0, 90, 60))
	for i := range picture.Pix {
		picture.Pix[i] = uint8(i * 7)
		if i%4 == 3 {
			picture.Pix[i] = 255
		}
	}
	for i := range top.Fabrics {
		if top.Fabrics[i].Cloth != nil {
			top.Fabrics[i].Cloth = &quilt.Cloth{Across: 9 * measure.Inch, Down: 6 * measure.Inch, PhotoSample: palettes.PhotoSample{Tile: picture}}
		}
	}
	return top
}

const photographedText = "side 6\nfabric navy #1f3350\nfabric garden stripes navy 3 white 3\nmotif rose garden across 4 down 3\nmotif bud garden across 7 down 5 pointing 45\n" +
	"block A ring wedges rose corners navy\nblock B ring wedges bud corners garden\ngrid\n A B A\n B A B\n"

// misplacedPrint says which piece of a map does not show the place of its print that the plan cuts it from.
func misplacedPrint(c *cuts, figure *diagram.Figure) error {
	for _, f := range c.Fabrics {
		for i := range f.FromPrint {
			p := &f.FromPrint[i]
			shown := map[int]int{}
			for _, m := range figure.Marks {
				if m.Area == nil || len(m.Lit) != 1 || c.Lines[m.Lit[0]].PrintPlace < 0 {
					continue
				}
				if m.Area.Print == nil {
					return fmt.Errorf("a piece of line %d shows no print", m.Lit[0])
				}
				outline := p.Outline(m.Lit[0])
				x, y := m.Area.Outline[0].X-m.Area.Repeat.X-outline[0].X, m.Area.Outline[0].Y-m.Area.Repeat.Y-outline[0].Y
				if x%m.Area.Print.Across != 0 || y%m.Area.Print.Down != 0 {
					return fmt.Errorf("a piece of line %d shows a place %d, %d beside its own", m.Lit[0], x, y)
				}
				shown[m.Lit[0]]++
			}
			if len(shown) != len(p.Lines) {
				return fmt.Errorf("%d of %d lines are shown", len(shown), len(p.Lines))
			}
		}
	}
	return nil
}

// TestMapsShowThePrint: on a map every piece shows its place of the print, and an SVG file holds the picture of the cloth twice, for pieces
// and for cloth that is not used, however many there are.
func TestMapsShowThePrint(t *testing.T) {
	c := newCuts(&Plans{Top: photographed(t, photographedText)})
	for i := range c.Fabrics {
		if len(c.Fabrics[i].FromPrint) == 0 {
			continue
		}
		figure := c.fabricMap(i)
		if err := misplacedPrint(c, figure); err != nil {
			t.Error(err)
		}
		var file bytes.Buffer
		if err := diagram.SVG(&file, figure, diagram.Options{}); err != nil {
			t.Fatal(err)
		}
		if n := bytes.Count(file.Bytes(), []byte("<image")); n != 2 {
			t.Errorf("%d pictures in a map", n)
		}
		for m := range figure.Marks {
			if a := figure.Marks[m].Area; a != nil && a.Print != nil && len(figure.Marks[m].Lit) > 0 {
				a.Repeat.X += measure.Inch
			}
		}
		if misplacedPrint(c, figure) == nil {
			t.Error("a print an inch aside is not noticed")
		}
		return
	}
	t.Error("no pieces from a print")
}

// TestPrintsAreSmallAndPale: pictures in maps have so many pixels at the most, and are paler where cloth is not used.
func TestPrintsAreSmallAndPale(t *testing.T) {
	c := newCuts(&Plans{Top: photographed(t, photographedText)})
	for i := range c.Fabrics {
		made := c.clothPrint(&c.Fabrics[i])
		if (made.pieces != nil) != (c.print(&c.Fabrics[i]) != nil) {
			t.Fatalf("%s: %v", c.Fabrics[i].Name, made)
		}
		if made.pieces == nil {
			continue
		}
		sums := [2]int{}
		for n, p := range []*diagram.Print{made.pieces, made.unused} {
			picture, err := png.Decode(bytes.NewReader(p.File))
			if err != nil {
				t.Fatal(err)
			}
			if b := picture.Bounds(); max(b.Dx(), b.Dy()) > mapPixels+2 || p.Margin.X != p.Across/measure.NM(b.Dx()-2) { // a pixel of the repeat beside it on each side
				t.Errorf("%v, a margin of %v", b, p.Margin)
			}
			for y := range picture.Bounds().Dy() {
				r, g, b, _ := picture.At(5, y).RGBA()
				sums[n] += int(r+g+b) / 3
			}
		}
		if sums[1] <= sums[0] {
			t.Errorf("unused cloth is no paler: %v", sums)
		}
	}
}

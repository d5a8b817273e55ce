package picture

import (
	"fmt"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"eighthturn/internal/diagram"
	"eighthturn/svgout"
)

// glyphs cuts words into outlines, in the Go fonts.
type glyphs struct {
	letters *diagram.Lettering
	faces   map[bool]*sfnt.Font // by whether bold
	buffer  sfnt.Buffer
	known   map[glyph][][]xy // of size 1
}

type glyph struct {
	rune
	bold bool
}

func newGlyphs() *glyphs {
	return &glyphs{diagram.NewLettering(), map[bool]*sfnt.Font{false: parsed(goregular.TTF), true: parsed(gobold.TTF)}, sfnt.Buffer{}, map[glyph][][]xy{}}
}

func parsed(file []byte) *sfnt.Font {
	face, err := sfnt.Parse(file)
	if err != nil {
		panic(fmt.Sprintf("a font within the program cannot be read: %v", err))
	}
	return face
}

// text is the outlines of words at their place.
func (g *glyphs) text(t *svgout.Text, middle bool) [][]xy {
	var list [][]xy
	at := xy{t.X, t.Y}
	if middle {
		at.x -= g.letters.Width(t.Text, t.Size, t.Bold) / 2
	}
	for _, r := range t.Text {
		for _, contour := range g.contours(glyph{r, t.Bold}) {
			placed := make([]xy, len(contour))
			for i, p := range contour {
				placed[i] = xy{at.x + float64(p.x*t.Size), at.y + float64(p.y*t.Size)}
			}
			list = append(list, placed)
		}
		at.x += g.letters.Width(string(r), t.Size, t.Bold)
	}
	return list
}

// fontUnit is the size at which outlines are asked for.
const fontUnit = 1 << 11

// contours are the outlines of a letter of size 1, none for one that the fonts lack.
func (g *glyphs) contours(r glyph) [][]xy {
	if known, ok := g.known[r]; ok {
		return known
	}
	var list [][]xy
	face := g.faces[r.bold]
	index, err := face.GlyphIndex(&g.buffer, r.rune)
	if err == nil && index != 0 {
		if segments, err := face.LoadGlyph(&g.buffer, index, fixed.I(fontUnit), nil); err == nil {
			list = flattened(segments)
		}
	}
	g.known[r] = list
	return list
}

// flattened is a glyph's outlines with its curves as straight stretches. Each begins with a move, and the Go fonts have no cubic curves.
func flattened(segments sfnt.Segments) [][]xy {
	var list [][]xy
	place := func(p fixed.Point26_6) xy { return xy{float64(p.X) / (64 * fontUnit), float64(p.Y) / (64 * fontUnit)} }
	for _, s := range segments {
		if s.Op == sfnt.SegmentOpMoveTo {
			list = append(list, []xy{place(s.Args[0])})
			continue
		}
		last := &list[len(list)-1]
		from := (*last)[len(*last)-1]
		if s.Op == sfnt.SegmentOpLineTo {
			*last = append(*last, place(s.Args[0]))
		} else {
			*last = appendCurve(*last, from, place(s.Args[0]), place(s.Args[1]))
		}
	}
	return list
}

// curveSteps is how many stretches stand for a curve of a letter.
const curveSteps = 6

func appendCurve(list []xy, a, b, c xy) []xy {
	for n := 1; n <= curveSteps; n++ {
		t := float64(n) / curveSteps
		u := 1 - t
		list = append(list, xy{float64(u*u*a.x) + float64(2*u*t*b.x) + float64(t*t*c.x), float64(u*u*a.y) + float64(2*u*t*b.y) + float64(t*t*c.y)})
	}
	return list
}

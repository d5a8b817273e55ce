// Package paper turns tops, their pictures and their pieces into what is printed: PNG and PDF
// pictures, and templates at true size.
package paper

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// Picture is a picture of a top, as package svgout draws it. The PNG and the PDF show the
// same: cloth from the top's own patches, all else from what svgout writes.
type Picture struct {
	Top    *quilt.Top
	Colour func(fabric int) palettes.Colour // of the cloth; nil for each fabric's own
	SVG    func(io.Writer) error            // writes the picture
	Prints bool                             // fabrics that have a photo are painted with it, as the SVG has them
	Bare   bool                             // it shows cloth and nothing else; a PNG is then made without the SVG
	read   *drawn                           // what a PNG takes from the SVG, once it is read
}

// Frame says how large a picture is on paper and what is round it. The zero value is the
// picture at the top's true size and nothing round it.
type Frame struct {
	Longest    measure.NM       // the longer side of the picture, without what is round it; 0 for true size
	Pixels     int              // the same in pixels, for a PNG; 0 for what Longest and PerInch give
	PerInch    float64          // pixels an inch of paper, for a PNG; 0 for 300, or with Pixels and no Longest for what gives true size
	Margin     measure.NM       // of background on every side, on paper; 0 for none
	Bleed      measure.NM       // beyond that on every side, to be trimmed off: background, or where there is no margin the cloth running on; 0 for none
	Background *palettes.Colour // nil for white
	Clear      bool             // no background: a PNG is see-through beside the cloth, a PDF has none
}

// UsualPerInch is the pixels an inch of what is printed at its best.
const UsualPerInch = 300

// TooLarge says that a picture would have more pixels than can be had, and what can.
type TooLarge struct {
	Width, Height int // pixels
	Reason        string
	PerInch       int // the most that can be had at this size, 0 for none
	Longest       int // the same as pixels of the picture's longer side
}

func (e *TooLarge) Error() string {
	return fmt.Sprintf("the picture would be %d by %d pixels, %s", e.Width, e.Height, e.Reason)
}

// side is the measures of a picture along one axis. Those of the picture are user units of
// svgout's, 96 an inch of the quilt.
type side struct{ whole, quilt float64 }

// sides are a picture's measures.
type sides struct{ across, down side }

// unitsPerInch is svgout's.
const unitsPerInch = 96

// sidesOf are those of a picture; d is nil for one that is the quilt alone.
func (p *Picture) sidesOf(d *drawn) sides {
	across, down := userUnits(p.Top.Outer.Width()), userUnits(p.Top.Outer.Height())
	s := sides{side{across, across}, side{down, down}}
	if d != nil {
		s.across.whole, s.down.whole = d.width, d.height
	}
	return s
}

func userUnits(nm measure.NM) float64 { return float64(nm) * unitsPerInch / float64(measure.Inch) }

func inches(nm measure.NM) float64 { return float64(nm) / float64(measure.Inch) }

// longest is the longer side in inches of the quilt.
func (s sides) longest() float64 { return max(s.across.whole, s.down.whole) / unitsPerInch }

// perInch is the pixels an inch of paper.
func (f *Frame) perInch(s sides) float64 {
	switch {
	case f.PerInch > 0:
		return f.PerInch
	case f.Pixels > 0 && f.Longest > 0:
		return float64(f.Pixels) / inches(f.Longest)
	case f.Pixels > 0:
		return float64(f.Pixels) / s.longest()
	}
	return UsualPerInch
}

// scale is how many pixels a user unit of the picture has.
func (f *Frame) scale(s sides) float64 {
	switch {
	case f.Pixels > 0:
		return float64(f.Pixels) / (s.longest() * unitsPerInch)
	case f.Longest > 0:
		return inches(f.Longest) * f.perInch(s) / (s.longest() * unitsPerInch)
	}
	return f.perInch(s) / unitsPerInch
}

// background is the colour beside the cloth.
func (f *Frame) background() palettes.Colour {
	if f.Background != nil {
		return *f.Background
	}
	return palettes.Colour{R: 255, G: 255, B: 255}
}

// drawing is what svgout draws, read back.
func (p *Picture) drawing() (*drawn, error) { return p.readBack(wholeDrawing) }

// readBack reads what svgout draws while it is drawn, so that no picture has to be held as text.
func (p *Picture) readBack(what reading) (*drawn, error) {
	from, to := io.Pipe()
	go func() {
		w := bufio.NewWriterSize(to, 1<<16)
		to.CloseWithError(errors.Join(p.SVG(w), w.Flush()))
	}()
	d, err := readDrawn(from, what)
	from.CloseWithError(err) // ends the drawing where the reading failed
	return d, err
}

// overCloth is what svgout draws over the cloth, read back once; nil for a picture of cloth alone.
func (p *Picture) overCloth() (*drawn, error) {
	if p.Bare || p.read != nil {
		return p.read, nil
	}
	d, err := p.readBack(withoutCloth)
	p.read = d
	return d, err
}

// whole is a number of pixels, 1 at least. What is beyond all bounds becomes a number that
// is too, and not a small one.
func whole(pixels float64) int { return int(max(1, math.Round(min(pixels, 1e8)))) }

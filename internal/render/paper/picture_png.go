package paper

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"io"
	"math"

	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
)

// PNGMarker stands near the beginning of every PNG file that this package writes.
const PNGMarker = pixels.Marker

// PNG writes the picture as a PNG file that says how many pixels an inch it has. A picture
// that is too large is refused, by a *TooLarge, before anything is drawn.
func (p *Picture) PNG(w io.Writer, f Frame) error {
	job, err := p.print(f)
	if err != nil {
		return err
	}
	return job.WritePNG(w)
}

// PNGSize is how large PNG makes the picture: its pixels, and how many an inch has.
func (p *Picture) PNGSize(f Frame) (size pixels.Size, perInch float64, err error) {
	d, err := p.overCloth()
	if err != nil {
		return size, 0, err
	}
	job, err := p.sized(f, d)
	if err != nil {
		return size, 0, err
	}
	return job.Size, job.PerInch, nil
}

// print is the picture ready to be drawn.
func (p *Picture) print(f Frame) (*pixels.Print, error) {
	d, err := p.overCloth()
	if err != nil {
		return nil, err
	}
	job, err := p.sized(f, d)
	if err != nil || d == nil {
		return job, err
	}
	s := p.sidesOf(d)
	place := placing{
		x: float64(job.Quilt.Min.X), y: float64(job.Quilt.Min.Y),
		across: float64(job.Quilt.Dx()) / s.across.quilt, down: float64(job.Quilt.Dy()) / s.down.quilt,
	}
	return job, p.over(job, d, place)
}

// sized is a print of the right size without anything in it.
func (p *Picture) sized(f Frame, d *drawn) (*pixels.Print, error) {
	s := p.sidesOf(d)
	scale, perInch := f.scale(s), f.perInch(s)
	margin, bleed := framing(inches(f.Margin)*perInch), framing(inches(f.Bleed)*perInch)
	round := margin + bleed
	job := &pixels.Print{
		Top: p.Top, Colour: p.Colour, PerInch: perInch, Background: f.background(), Clear: f.Clear,
		Size:  pixels.Size{Width: whole(s.across.whole*scale) + 2*round, Height: whole(s.down.whole*scale) + 2*round},
		Quilt: image.Rect(round, round, round+whole(s.across.quilt*scale), round+whole(s.down.quilt*scale)),
	}
	if margin == 0 {
		job.RunOn = bleed
	}
	job.Tiles = p.tiles(float64(job.Quilt.Dx())/s.across.quilt, float64(job.Quilt.Dy())/s.down.quilt)
	if err := job.Check(); err != nil {
		return nil, tooLarge(job.Size, f, s)
	}
	return job, nil
}

func framing(pixels float64) int { return int(math.Round(min(max(pixels, 0), 1e8))) }

// tooLarge says what can be had instead: the pixels an inch, or in all, by which the picture
// with its margins keeps to the limits.
func tooLarge(size pixels.Size, f Frame, s sides) *TooLarge {
	width, height := float64(size.Width), float64(size.Height)
	part := min(1, pixels.MostPrintedASide/max(width, height), math.Sqrt(pixels.MostPrintedInAll/(width*height)))
	return &TooLarge{
		Width: size.Width, Height: size.Height, Reason: "more than can be made",
		PerInch: int(part * f.perInch(s) * 0.999), Longest: int(part * f.scale(s) * s.longest() * unitsPerInch * 0.999),
	}
}

// placing puts user units into pixels.
type placing struct{ x, y, across, down float64 }

func (p placing) at(q xy) pixels.Place {
	return pixels.Place{X: p.x + float64(q.x*p.across), Y: p.y + float64(q.y*p.down)}
}

// over adds to a print what is drawn over the cloth, or in its place.
func (p *Picture) over(job *pixels.Print, d *drawn, place placing) error {
	cut := newGlyphs()
	for i := range d.marks {
		m := &d.marks[i]
		switch {
		case m.image != nil:
			picture, err := png.Decode(bytes.NewReader(m.image))
			if err != nil {
				return err
			}
			if job.Image != nil {
				return errors.New("the picture has two images")
			}
			job.Image = picture
		default:
			if m.print > 0 && m.print <= len(p.Top.Fabrics) {
				m.fill = &p.Top.Fabrics[m.print-1].Colour
			}
			p.layers(job, cut.outlines(m), place)
		}
	}
	return nil
}

// layer is outlines in user units, to be painted in one colour.
type layer struct {
	outlines [][]xy
	colour   palettes.Colour
	opacity  float64
}

// layers adds layers to a print; one that is painted like the last is joined to it.
func (p *Picture) layers(job *pixels.Print, list []layer, place placing) {
	for _, l := range list {
		n := len(job.Over)
		if n == 0 || l.opacity < 1 || job.Over[n-1].Opacity < 1 || job.Over[n-1].Colour != l.colour {
			job.Over = append(job.Over, pixels.Layer{Colour: l.colour, Opacity: l.opacity})
			n++
		}
		for _, outline := range l.outlines {
			placed := make([]pixels.Place, len(outline))
			for i, q := range outline {
				placed[i] = place.at(q)
			}
			job.Over[n-1].Outlines = append(job.Over[n-1].Outlines, placed)
		}
	}
}

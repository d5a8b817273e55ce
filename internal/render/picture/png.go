package picture

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"io"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// PNG writes a scene as a PNG file that says how many pixels an inch it has. A picture that is
// too large is refused, by a *TooLarge, before anything is drawn.
//
// Cloth is not drawn layer by layer: its pixels are made of all faces at once, so that what
// covers a pixel adds up to the whole of it and nothing needs to lie beneath the seams.
func PNG(w io.Writer, s *svgout.Scene, f Frame) error {
	job, err := printOf(s, f)
	if err != nil {
		return err
	}
	return job.WritePNG(w)
}

// JPEG writes a scene as a JPEG file like PNG does.
func JPEG(w io.Writer, s *svgout.Scene, f Frame) error {
	job, err := printOf(s, f)
	if err != nil {
		return err
	}
	if err := job.CheckJPEG(); err != nil {
		large := tooLarge(job.Size, f, sidesOf(s), pixels.MostJPEGASide, pixels.MostJPEGInAll)
		large.Reason = "more than are made as a JPEG; a PNG may be larger"
		return large
	}
	quality := f.Quality
	if quality == 0 {
		quality = UsualQuality
	}
	return job.WriteJPEG(w, quality)
}

// WebP writes a scene as a WebP file without loss like PNG does.
func WebP(w io.Writer, s *svgout.Scene, f Frame) error {
	job, err := printOf(s, f)
	if err != nil {
		return err
	}
	if job.CheckWebP() != nil {
		large := tooLarge(job.Size, f, sidesOf(s), pixels.MostWebPASide, pixels.MostWebPInAll)
		large.Reason = "more than are made as a WebP; a PNG may be larger"
		return large
	}
	return job.WriteWebP(w)
}

// PNGSize is how large PNG, JPEG and WebP make a picture: its pixels, and how many an inch has.
func PNGSize(s *svgout.Scene, f Frame) (size pixels.Size, perInch float64, err error) {
	job, err := sized(s, f)
	if err != nil {
		return size, 0, err
	}
	return job.Size, job.PerInch, nil
}

// sized is a print of the right size without anything over its cloth.
func sized(scene *svgout.Scene, f Frame) (*pixels.Print, error) {
	s := sidesOf(scene)
	scale, perInch := f.scale(s), f.perInch(s)
	margin, bleed := framing(inches(f.Margin)*perInch), framing(inches(f.Bleed)*perInch)
	if f.MarginPixels > 0 {
		margin = f.MarginPixels
	}
	round := margin + bleed
	job := &pixels.Print{
		Top: scene.Top, Colour: func(f int) palettes.Colour { return scene.Paints[f].Colour }, PerInch: perInch, Background: f.background(), Clear: f.Clear,
		TrueColour: f.TrueColour, Credits: scene.Credits,
		Size:  pixels.Size{Width: whole(s.across.whole*scale) + 2*round, Height: whole(s.down.whole*scale) + 2*round},
		Quilt: image.Rect(round, round, round+whole(s.across.quilt*scale), round+whole(s.down.quilt*scale)),
	}
	if margin == 0 {
		job.RunOn = bleed
	}
	job.Tiles, job.Places = tiles(scene), scene.Places
	if err := job.Check(); err != nil {
		return nil, tooLarge(job.Size, f, s, pixels.MostPrintedASide, pixels.MostPrintedInAll)
	}
	return job, nil
}

func framing(pixels float64) int { return int(math.Round(min(max(pixels, 0), 1e8))) }

// tooLarge says what can be had instead: the pixels an inch, or in all, by which the picture
// with its margins keeps to the limits.
func tooLarge(size pixels.Size, f Frame, s sides, aSide, inAll float64) *TooLarge {
	width, height := float64(size.Width), float64(size.Height)
	part := min(1, aSide/max(width, height), math.Sqrt(inAll/(width*height)))
	return &TooLarge{
		Width: size.Width, Height: size.Height, Reason: "more than can be made",
		PerInch: int(part * f.perInch(s) * 0.999), Longest: int(part * f.scale(s) * s.longest() * unitsPerInch * 0.999),
	}
}

// printOf is a scene ready to be drawn in pixels.
func printOf(scene *svgout.Scene, f Frame) (*pixels.Print, error) {
	job, err := sized(scene, f)
	if err != nil {
		return nil, err
	}
	return job, drawnOver(scene, job)
}

// drawnOver adds to a print what a scene shows over its cloth.
func drawnOver(scene *svgout.Scene, job *pixels.Print) error {
	if scene.ClothAlone() {
		return nil
	}
	s := sidesOf(scene)
	o := &over{scene: scene, job: job, glyphs: newGlyphs(), place: placing{
		x: float64(job.Quilt.Min.X), y: float64(job.Quilt.Min.Y),
		across: float64(job.Quilt.Dx()) / s.across.quilt, down: float64(job.Quilt.Dy()) / s.down.quilt,
	}}
	for i := range scene.Layers {
		l := &scene.Layers[i]
		if l.Part != svgout.Over {
			continue
		}
		for n := range l.Items {
			if err := o.add(&l.Items[n], l.Styled(&l.Items[n])); err != nil {
				return err
			}
		}
	}
	return nil
}

// placing puts user units into pixels.
type placing struct{ x, y, across, down float64 }

func (p placing) at(q xy) pixels.Place {
	return pixels.Place{X: p.x + float64(q.x*p.across), Y: p.y + float64(q.y*p.down)}
}

// over adds to a print what is drawn over the cloth, or in its place.
type over struct {
	scene  *svgout.Scene
	job    *pixels.Print
	glyphs *glyphs
	place  placing
}

func (o *over) add(i *svgout.Item, s svgout.Style) error {
	fill, filled := o.scene.Colour(s.Fill)
	switch {
	case i.Picture != nil:
		return o.image(i.Picture)
	case i.Text != nil:
		o.layer(o.glyphs.text(i.Text, s.Middle), fill, 1)
	case i.Texts != nil:
		for t := range i.Texts {
			o.layer(o.glyphs.text(&t, s.Middle), fill, 1)
		}
	default:
		list := pathsOf(i)
		if filled {
			o.layer(filledOf(list), fill, 1)
		}
		if s.Line != nil && s.Width > 0 {
			o.layer(stroked(list, s), *s.Line, s.Opacity)
		}
	}
	return nil
}

func (o *over) image(file []byte) error {
	picture, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		return err
	}
	if o.job.Image != nil {
		return errors.New("the picture has two images")
	}
	o.job.Image = picture
	return nil
}

// layer adds outlines in one colour; a layer that is painted like the last is joined to it.
func (o *over) layer(outlines [][]xy, colour palettes.Colour, opacity float64) {
	n := len(o.job.Over)
	if n == 0 || opacity < 1 || o.job.Over[n-1].Opacity < 1 || o.job.Over[n-1].Colour != colour {
		o.job.Over = append(o.job.Over, pixels.Layer{Colour: colour, Opacity: opacity})
		n++
	}
	for _, outline := range outlines {
		placed := make([]pixels.Place, len(outline))
		for i, q := range outline {
			placed[i] = o.place.at(q)
		}
		o.job.Over[n-1].Outlines = append(o.job.Over[n-1].Outlines, placed)
	}
}

// path is an outline or a line in user units.
type path struct {
	points []xy
	closed bool
}

// pathsOf are the outlines of an item, or its box.
func pathsOf(i *svgout.Item) []path {
	if b := i.Box; b != nil {
		return []path{{[]xy{{b.X, b.Y}, {b.X + b.Width, b.Y}, {b.X + b.Width, b.Y + b.Height}, {b.X, b.Y + b.Height}}, true}}
	}
	var list []path
	for outline := range i.Outlines {
		list = append(list, path{placed(outline), !i.Open})
	}
	return list
}

func placed(outline []measure.Point) []xy {
	points := make([]xy, len(outline))
	for i, q := range outline {
		points[i] = xy{userUnits(q.X), userUnits(q.Y)}
	}
	return points
}

package picture

import (
	"image"
	"image/draw"
	"io"
	"math"

	"eighthturn/internal/render/pixels"
	"eighthturn/palettes"
	"eighthturn/svgout"
)

// PNG writes a canvas as a PNG file in full color that says how many pixels an inch it has, that its colors are sRGB, and its
// credits. The same canvas gives the same bytes.
func (c *Canvas) PNG(w io.Writer) error {
	job, err := c.print()
	if err != nil {
		return err
	}
	return job.WritePNG(w)
}

// JPEG is PNG as a JPEG file of a quality from 1 to 100, 0 for UsualQuality.
func (c *Canvas) JPEG(w io.Writer, quality int) error {
	job, err := c.print()
	if err != nil {
		return err
	}
	if quality == 0 {
		quality = UsualQuality
	}
	return job.WriteJPEG(w, quality)
}

// WebP is PNG as a WebP file without loss.
func (c *Canvas) WebP(w io.Writer) error {
	job, err := c.print()
	if err != nil {
		return err
	}
	return job.WriteWebP(w)
}

// print is the canvas with its words, ready to be written.
func (c *Canvas) print() (*pixels.Print, error) {
	whole := image.NewRGBA(image.Rectangle{Max: image.Pt(c.Width, c.Height)}) // see-through, and so the ground, beside the pictures
	for i := range c.Panels {
		p := &c.Panels[i]
		job, err := c.panel(p)
		if err != nil {
			return nil, err
		}
		draw.Draw(whole, p.At, job.Picture(), image.Point{}, draw.Src)
	}
	job := &pixels.Print{
		Top: c.Panels[0].Scene.Top, Image: whole, Size: pixels.Size{Width: c.Width, Height: c.Height}, Quilt: whole.Bounds(),
		Background: c.Ground, PerInch: c.PerInch, TrueColour: true, Credits: c.Credits,
	}
	o := &over{scene: c.Panels[0].Scene, job: job, glyphs: newGlyphs(), place: placing{across: 1, down: 1}}
	for i := range c.Panels {
		o.layer(stroked([]path{boxPath(c.rim(c.Panels[i].At))}, svgout.Style{Width: c.hairline()}), c.Ink, rimOpacity)
	}
	for i := range c.Words {
		o.layer(o.glyphs.text(&c.Words[i].Text, false), c.Ink, 1)
	}
	return job, nil
}

// rimOpacity is how dark the thin line round a picture is, so that pale cloth ends somewhere on a pale ground.
const rimOpacity = 0.3

// hairline is the width of that line, in pixels.
func (c *Canvas) hairline() float64 { return max(1, math.Round(c.unit/1000)) }

// rim is the middle of the line round a picture, which it touches from outside.
func (c *Canvas) rim(at image.Rectangle) svgout.Box {
	half := c.hairline() / 2
	return svgout.Box{X: float64(at.Min.X) - half, Y: float64(at.Min.Y) - half, Width: float64(at.Dx()) + 2*half, Height: float64(at.Dy()) + 2*half}
}

func boxPath(b svgout.Box) path {
	return path{[]xy{{b.X, b.Y}, {b.X + b.Width, b.Y}, {b.X + b.Width, b.Y + b.Height}, {b.X, b.Y + b.Height}}, true}
}

// panel is one picture as a print of its own.
func (c *Canvas) panel(p *Panel) (*pixels.Print, error) {
	s := sidesOf(p.Scene)
	across, down := float64(p.At.Dx())/s.across.whole, float64(p.At.Dy())/s.down.whole
	job := &pixels.Print{
		Top: p.Scene.Top, Colour: func(f int) palettes.Colour { return p.Scene.Paints[f].Colour }, PerInch: c.PerInch, Background: c.Ground, TrueColour: true,
		Size:  pixels.Size{Width: p.At.Dx(), Height: p.At.Dy()},
		Quilt: image.Rect(0, 0, whole(s.across.quilt*across), whole(s.down.quilt*down)),
	}
	job.Tiles, job.Places = tiles(p.Scene), p.Scene.Places
	return job, drawnOver(p.Scene, job)
}

package quilt

import (
	"image"
	"math"

	"eighthturn/internal/measure"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// Cloth is what a fabric shows that is no plain color: one repeat of it, over and over. Places on it are counted from the upper
// left corner of a repeat as the fabric lies with its selvages on the left and on the right, across and down.
type Cloth struct {
	Across, Down measure.NM // after how much of it the cloth comes again
	Repeats      bool       // as it is printed or woven; else the one place that a photo shows is laid over and over, joined softly
	Stripes      *layout.Stripes
	palettes.PhotoSample
	photo *layout.Photo
}

// clothOf is what a fabric of a design shows, nil for a plain color.
func clothOf(f *layout.Fabric) *Cloth {
	switch {
	case f.Stripes != nil:
		return striped(f.Stripes)
	case f.Photo != nil:
		c := &Cloth{PhotoSample: f.Photo.PhotoSample, photo: f.Photo}
		c.Across, c.Down = f.Photo.Shows()
		if r := f.Photo.Repeat; r != nil {
			c.Across, c.Down, c.Repeats = r.Across, r.Down, true
		} else {
			joined := func(nm measure.NM) measure.NM { return measure.NM(math.Round(float64(nm) * palettes.JoinedPart)) }
			c.Across, c.Down = joined(c.Across), joined(c.Down)
		}
		return c
	}
	return nil
}

func striped(s *layout.Stripes) *Cloth {
	repeat := s.Repeat()
	return &Cloth{Across: repeat, Down: repeat, Repeats: true, Stripes: s, PhotoSample: s.Sample()}
}

// RecolorStripes gives stripes the colors that the top's fabrics have, where they have them from those.
func (t *Top) RecolorStripes() {
	for i := range t.Fabrics {
		if f := &t.Fabrics[i]; f.Cloth != nil && f.Cloth.Stripes != nil {
			if s := f.Cloth.Stripes.Recolored(func(of int) palettes.Colour { return t.Fabrics[of].Colour }); s != f.Cloth.Stripes {
				f.Cloth = striped(s)
				f.Colour = f.Cloth.Colour
			}
		}
	}
}

// Picture is one repeat as pixels, opaque; nil where there is no photo to show. It is made anew each time.
func (c *Cloth) Picture() *image.RGBA {
	switch {
	case c.Stripes != nil:
		return c.stripes()
	case c.Tile == nil:
		return nil
	case c.Repeats:
		across, down := c.photo.Shows()
		return palettes.FirstPart(c.Tile, float64(c.Across)/float64(across), float64(c.Down)/float64(down))
	}
	return palettes.JoinedSoftly(c.Tile)
}

// stripePixels is how many pixels show a repeat of stripes.
const stripePixels = 1024

// stripes is one repeat of stripes: a row or a column of pixels, each of the colors that cover it.
func (c *Cloth) stripes() *image.RGBA {
	return palettes.StripesPicture(c.Stripes.Parts(), stripePixels, c.Stripes.Crosswise)
}

// ClothPlace says which place of its cloth a face of a top shows: the one at Cloth lies at Top, and the cloth is turned round it by
// Turn. It is a motion and nothing else, so that no cloth is stretched or seen from its wrong side.
type ClothPlace struct {
	Top, Cloth measure.Point
	Turn       float64 // degrees clockwise on screen, 0 up to 360
}

// Directions are the cosine and the sine of the turn, exact for every half of a right angle.
func (p *ClothPlace) Directions() (cos, sin float64) { return directions(p.Turn) }

// OnCloth is the place of the cloth that a place of the top shows, both in nanometers.
func (p *ClothPlace) OnCloth(x, y float64) (across, down float64) {
	cos, sin := p.Directions()
	x, y = x-float64(p.Top.X), y-float64(p.Top.Y)
	return float64(p.Cloth.X) + float64(x*cos) + float64(y*sin), float64(p.Cloth.Y) - float64(x*sin) + float64(y*cos)
}

// directions are the cosine and the sine of degrees.
func directions(turn float64) (cos, sin float64) {
	turn = math.Mod(math.Mod(turn, 360)+360, 360)
	switch eighths := math.Floor(turn / 45); {
	case turn == eighths*45:
		const half = math.Sqrt2 / 2
		eight := [8]float64{1, half, 0, -half, -1, -half, 0, half}
		return eight[int(eighths)], eight[(int(eighths)+6)%8]
	default:
		sin, cos = math.Sincos(turn * math.Pi / 180)
		return cos, sin
	}
}

// Cut is where on its cloth a piece is cut, as the layout says it: at a motif, or so that its stripes lie as they do in all its like.
type Cut struct {
	Motif     string        // its name, "" for none
	Place     measure.Point // of a motif, on the cloth: where the middle of a piece lies, its center of gravity
	Pointing  int           // of a motif: degrees clockwise by which the piece is turned on the cloth; at 0 it points up
	Mirrored  bool          // of a motif: it is the place mirrored at a line of the print, from which every other piece is cut
	Crosswise bool          // without a motif: strips are cut across the cloth, else along it
	Alike     bool          // all pieces have the stripes at one place, From
	From      measure.NM    // how far within the repeat the wide end lies, or the middle of a piece that stripes run along
}

// Name is what is cut there is called: by the motif, mirrored or not; "" where the layout names none.
func (c *Cut) Name() string {
	if c.Mirrored {
		return c.Motif + " mirrored"
	}
	return c.Motif
}

// MirrorLines are where the cloth is its own mirror image.
func (c *Cloth) MirrorLines() layout.MirrorLines {
	switch {
	case c.Stripes != nil:
		return c.Stripes.MirrorLines()
	case c.photo != nil:
		return c.photo.MirrorLines()
	}
	return layout.MirrorLines{}
}

// NameOf is what pieces of a fabric go by that are cut so: the motif, or the fabric and which way its strips run; the fabric alone for nil.
func (c *Cut) NameOf(fabric string) string {
	switch {
	case c == nil:
		return fabric
	case c.Motif != "":
		return c.Name()
	case c.Crosswise:
		return fabric + " crosswise"
	}
	return fabric + " lengthwise"
}

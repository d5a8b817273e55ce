package pixels

import (
	"image"
	"math"

	"eighthturn/palettes"
)

// Tile is a picture of cloth that is laid over and over from the quilt's corner.
type Tile struct {
	Picture       *image.RGBA // opaque, with at least one pixel
	Width, Height float64     // of one laying, in pixels of the print, above 0
}

// Mirrored is a picture with its mirror images beside and below it, so that it can be laid
// over and over and no edge shows.
func Mirrored(picture *image.RGBA) *image.RGBA {
	b := picture.Bounds()
	out := image.NewRGBA(image.Rect(0, 0, 2*b.Dx(), 2*b.Dy()))
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			out.SetRGBA(x, y, picture.RGBAAt(b.Min.X+min(x, 2*b.Dx()-1-x), b.Min.Y+min(y, 2*b.Dy()-1-y)))
		}
	}
	return out
}

// at is the colour of a tile at a place of the print, from the quilt's corner.
func (t *Tile) at(x, y float64) palettes.Colour {
	b := t.Picture.Bounds()
	pick := func(v, laying float64, n int) int {
		part := v/laying - math.Floor(v/laying)
		return min(int(part*float64(n)), n-1)
	}
	c := t.Picture.RGBAAt(b.Min.X+pick(x, t.Width, b.Dx()), b.Min.Y+pick(y, t.Height, b.Dy()))
	return palettes.Colour{R: c.R, G: c.G, B: c.B}
}

// tile is the tile of a paint, nil where it is one colour.
func (p *Print) tile(paint int32) *Tile {
	if int(paint) >= len(p.Tiles) {
		return nil
	}
	return p.Tiles[paint]
}

func (p *Print) tiled(list shares) bool {
	for _, s := range list {
		if p.tile(s.paint) != nil {
			return true
		}
	}
	return false
}

// tilesRun paints a run of pixels of a row of which all are covered alike, by cloth that a
// tile shows.
func (b *brush) tilesRun(line []byte, from, to int32, list shares, y int) {
	size := b.depth.bytes()
	list = b.inks.completed(list)
	for x := from; x < to; x++ {
		for _, s := range list {
			if t := b.tile(s.paint); t != nil {
				c := t.at(float64(x)+0.5-float64(b.Quilt.Min.X), float64(y)+0.5-float64(b.Quilt.Min.Y))
				b.mix.linear[s.paint] = [3]uint32{b.light[c.R], b.light[c.G], b.light[c.B]}
			}
		}
		c, alpha := b.mix.mixed(list)
		copy(line[int(x)*size:], b.pixel(c, alpha))
	}
}

// mixing is inks of the brush's own, whose colours change from pixel to pixel, and the light
// of every byte.
func (b *brush) mixing() {
	own := *b.inks
	own.linear = append([][3]uint32(nil), b.inks.linear...)
	b.mix = &own
	for i := range b.light {
		v := uint8(i)
		b.light[i] = light(palettes.Colour{R: v, G: v, B: v}.Linear().R)
	}
}

package palettes

import (
	"image"
	"image/color"
	"math"
)

// maxTilePixels is how many pixels a tile has on its longer side at the most.
const maxTilePixels = 240

// tilePoints is how many points of the photo, across and down, make one pixel of a tile.
const tilePoints = 3

// tile is the part of a photo that was looked at, made small: each pixel is the mean of some
// points in linear light. Points that are see-through are white.
func tile(picture image.Image) *image.RGBA {
	inner := innerPart(picture.Bounds())
	longer := max(inner.Dx(), inner.Dy())
	scale := max(1, float64(longer)/maxTilePixels)
	width, height := max(1, int(float64(inner.Dx())/scale)), max(1, int(float64(inner.Dy())/scale))
	out := image.NewRGBA(image.Rect(0, 0, width, height))
	t := tiler{picture: picture, part: inner, size: image.Pt(width, height), decode: decoding()}
	for y := range height {
		for x := range width {
			out.SetRGBA(x, y, t.pixel(x, y))
		}
	}
	return out
}

// innerPart is the inner four fifths of a picture.
func innerPart(b image.Rectangle) image.Rectangle {
	return image.Rect(b.Min.X+b.Dx()/10, b.Min.Y+b.Dy()/10, b.Max.X-b.Dx()/10, b.Max.Y-b.Dy()/10)
}

// tiler makes a tile of a size, in pixels, of a part of a picture.
type tiler struct {
	picture image.Image
	part    image.Rectangle
	size    image.Point
	decode  [256]float64 // sRGB bytes to linear light
}

// pixel is the mean colour of what a pixel of the tile shows.
func (t *tiler) pixel(atX, atY int) color.RGBA {
	part, size, decode := t.part, t.size, &t.decode
	var sum Linear
	for j := range tilePoints {
		y := part.Min.Y + int((float64(atY)+(float64(j)+0.5)/tilePoints)*float64(part.Dy())/float64(size.Y))
		for i := range tilePoints {
			x := part.Min.X + int((float64(atX)+(float64(i)+0.5)/tilePoints)*float64(part.Dx())/float64(size.X))
			r, g, b, a := t.picture.At(x, y).RGBA()
			if a < 0xff00 {
				r, g, b = 0xffff, 0xffff, 0xffff
			}
			sum.R, sum.G, sum.B = sum.R+decode[r>>8], sum.G+decode[g>>8], sum.B+decode[b>>8]
		}
	}
	const n = tilePoints * tilePoints
	c := Linear{math.Min(sum.R/n, 1), math.Min(sum.G/n, 1), math.Min(sum.B/n, 1)}.Colour()
	return color.RGBA{c.R, c.G, c.B, 255}
}

// JoinedPart is the part of a photo, across and down, that JoinedSoftly shows once.
const JoinedPart = 0.9

// FirstPart is the upper left part of a picture, each side 0 to 1; beyond 1 the whole.
func FirstPart(picture *image.RGBA, across, down float64) *image.RGBA {
	b := picture.Bounds()
	width := max(1, min(b.Dx(), int(math.Round(float64(b.Dx())*across))))
	height := max(1, min(b.Dy(), int(math.Round(float64(b.Dy())*down))))
	return picture.SubImage(image.Rect(b.Min.X, b.Min.Y, b.Min.X+width, b.Min.Y+height)).(*image.RGBA)
}

// JoinedSoftly is a picture that can be laid over and over: what its right and lower edges show goes over into what the left and
// the upper ones do, so that no edge is seen. It is no mirror image anywhere.
func JoinedSoftly(picture *image.RGBA) *image.RGBA {
	b := picture.Bounds()
	width, height := max(1, int(math.Round(float64(b.Dx())*JoinedPart))), max(1, int(math.Round(float64(b.Dy())*JoinedPart)))
	out := image.NewRGBA(image.Rect(0, 0, width, height))
	decode := decoding()
	left, upper := float64(b.Dx()-width), float64(b.Dy()-height)
	for y := range height {
		down := math.Min(1, (float64(y)+0.5)/math.Max(upper, 0.5))
		for x := range width {
			across := math.Min(1, (float64(x)+0.5)/math.Max(left, 0.5))
			if across == 1 && down == 1 {
				out.SetRGBA(x, y, picture.RGBAAt(b.Min.X+x, b.Min.Y+y))
				continue
			}
			var sum Linear
			for _, from := range [4]struct{ x, y, part float64 }{{0, 0, across * down}, {1, 0, (1 - across) * down}, {0, 1, across * (1 - down)}, {1, 1, (1 - across) * (1 - down)}} {
				atX, atY := x+int(from.x)*width, y+int(from.y)*height
				if atX >= b.Dx() || atY >= b.Dy() {
					continue
				}
				c := picture.RGBAAt(b.Min.X+atX, b.Min.Y+atY)
				sum.R, sum.G, sum.B = sum.R+float64(from.part*decode[c.R]), sum.G+float64(from.part*decode[c.G]), sum.B+float64(from.part*decode[c.B])
			}
			c := Linear{math.Min(sum.R, 1), math.Min(sum.G, 1), math.Min(sum.B, 1)}.Colour()
			out.SetRGBA(x, y, color.RGBA{c.R, c.G, c.B, 255})
		}
	}
	return out
}

package palettes

import (
	"image"
	"image/color"
	"math"
	"sync"

	"eighthturn/internal/stop"
)

// maxTilePixels is how many pixels a tile has on its longer side at the most.
const maxTilePixels = 1000

// tilePoints is how many points of the photo, across and down, make one pixel of a tile.
const tilePoints = 2

// tile is a photo made small: each pixel is the mean of some points in linear light. Points that are see-through are white.
func tile(sign *stop.Sign, picture image.Image) *image.RGBA {
	size := picture.Bounds().Size()
	scale := max(1, float64(max(size.X, size.Y))/maxTilePixels)
	width, height := max(1, int(float64(size.X)/scale)), max(1, int(float64(size.Y)/scale))
	out := image.NewRGBA(image.Rect(0, 0, width, height))
	t := newTiler(picture, image.Pt(width, height))
	for y := range height {
		sign.Look()
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

// tiler makes a tile of a size, in pixels, of a picture.
type tiler struct {
	part   image.Rectangle
	size   image.Point
	at     func(x, y int) color.RGBA // of the picture as it was taken
	place  func(x, y int) (int, int) // where a pixel of the upright picture lies in it; nil for where it is
	colour *profileCube              // of its profile, nil for none
	decode [256]float64              // sRGB bytes to linear light
	encode []uint8                   // and back, in steps
}

func newTiler(picture image.Image, size image.Point) *tiler {
	t := &tiler{part: picture.Bounds(), size: size, decode: decoding(), encode: encoding()}
	if v, ok := picture.(view); ok {
		picture, t.place = v.Image, v.place
		if v.srgb != nil {
			t.colour = newProfileCube(v.colour)
		}
	}
	t.at = bytesAt(picture)
	return t
}

// bytesAt gives the colors of a picture's pixels, those that photos have quicker than the picture itself does.
func bytesAt(picture image.Image) func(x, y int) color.RGBA {
	switch m := picture.(type) {
	case *image.YCbCr:
		return func(x, y int) color.RGBA {
			c := m.COffset(x, y)
			r, g, b := color.YCbCrToRGB(m.Y[m.YOffset(x, y)], m.Cb[c], m.Cr[c])
			return color.RGBA{r, g, b, 255}
		}
	case *image.RGBA:
		return m.RGBAAt
	}
	return func(x, y int) color.RGBA {
		r, g, b, a := picture.At(x, y).RGBA()
		return color.RGBA{uint8(r >> 8), uint8(g >> 8), uint8(b >> 8), uint8(a >> 8)}
	}
}

// encodingSteps is how many steps of linear light are told apart.
const encodingSteps = 1 << 15

// encoding is the sRGB byte of each step of linear light.
var encoding = sync.OnceValue(func() []uint8 {
	table := make([]uint8, encodingSteps+1)
	for i := range table {
		table[i] = Linear{R: float64(i) / encodingSteps}.Colour().R
	}
	return table
})

// pixel is the mean colour of what a pixel of the tile shows.
func (t *tiler) pixel(atX, atY int) color.RGBA {
	var sum [3]float64
	for j := range tilePoints {
		down := t.part.Min.Y + ((2*(atY*tilePoints+j)+1)*t.part.Dy())/(2*tilePoints*t.size.Y)
		for i := range tilePoints {
			x, y := t.part.Min.X+((2*(atX*tilePoints+i)+1)*t.part.Dx())/(2*tilePoints*t.size.X), down
			if t.place != nil {
				x, y = t.place(x, y)
			}
			c := t.at(x, y)
			if c.A < 0xff {
				c = color.RGBA{255, 255, 255, 255}
			}
			sum[0], sum[1], sum[2] = sum[0]+t.decode[c.R], sum[1]+t.decode[c.G], sum[2]+t.decode[c.B]
		}
	}
	part := func(v float64) uint8 { return t.encode[int(v/(tilePoints*tilePoints)*encodingSteps+0.5)] }
	mean := color.RGBA{part(sum[0]), part(sum[1]), part(sum[2]), 255}
	if t.colour == nil {
		return mean
	}
	return t.colour.at(mean)
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
	decode, encode := decoding(), encoding()
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
			for _, from := range [4]struct {
				x, y int
				part float64
			}{{0, 0, across * down}, {1, 0, (1 - across) * down}, {0, 1, across * (1 - down)}, {1, 1, (1 - across) * (1 - down)}} {
				atX, atY := x+from.x*width, y+from.y*height
				if atX >= b.Dx() || atY >= b.Dy() {
					continue
				}
				c := picture.RGBAAt(b.Min.X+atX, b.Min.Y+atY)
				sum.R, sum.G, sum.B = sum.R+float64(from.part*decode[c.R]), sum.G+float64(from.part*decode[c.G]), sum.B+float64(from.part*decode[c.B])
			}
			byteOf := func(v float64) uint8 { return encode[int(math.Min(v, 1)*encodingSteps+0.5)] }
			out.SetRGBA(x, y, color.RGBA{byteOf(sum.R), byteOf(sum.G), byteOf(sum.B), 255})
		}
	}
	return out
}

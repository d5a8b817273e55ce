package palettes

import "image"

// Coarser is a picture with no more than so many pixels on its longer side, each the mean of as many pixels across as down.
func Coarser(picture *image.RGBA, most int) *image.RGBA {
	b := picture.Bounds()
	step := (max(b.Dx(), b.Dy()) + most - 1) / most
	out := image.NewRGBA(image.Rect(0, 0, (b.Dx()+step-1)/step, (b.Dy()+step-1)/step))
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			var sum [3]int
			n := 0
			for v := b.Min.Y + y*step; v < min(b.Max.Y, b.Min.Y+(y+1)*step); v++ {
				for u := b.Min.X + x*step; u < min(b.Max.X, b.Min.X+(x+1)*step); u++ {
					p := picture.Pix[picture.PixOffset(u, v):]
					sum[0], sum[1], sum[2], n = sum[0]+int(p[0]), sum[1]+int(p[1]), sum[2]+int(p[2]), n+1
				}
			}
			p := out.Pix[out.PixOffset(x, y):]
			p[0], p[1], p[2], p[3] = uint8((sum[0]+n/2)/n), uint8((sum[1]+n/2)/n), uint8((sum[2]+n/2)/n), 255
		}
	}
	return out
}

// Paler is a picture mixed with white, so many parts of a hundred.
func Paler(picture *image.RGBA, white int) *image.RGBA {
	out := image.NewRGBA(picture.Rect)
	row := 4 * picture.Rect.Dx()
	for y := range picture.Rect.Dy() {
		from := picture.Pix[y*picture.Stride:][:row] // the rows of a part of a picture do not follow each other
		for i, v := range from {
			if i%4 != 3 {
				v = uint8((int(v)*(100-white) + 255*white + 50) / 100)
			}
			out.Pix[y*row+i] = v
		}
	}
	return out
}

// Margined is a picture with so many pixels of the repeats beside it on every side.
func Margined(picture *image.RGBA, margin int) *image.RGBA {
	b := picture.Bounds()
	out := image.NewRGBA(image.Rect(0, 0, b.Dx()+2*margin, b.Dy()+2*margin))
	wrapped := func(v, size int) int { return ((v-margin)%size + size) % size }
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			out.SetRGBA(x, y, picture.RGBAAt(b.Min.X+wrapped(x, b.Dx()), b.Min.Y+wrapped(y, b.Dy())))
		}
	}
	return out
}

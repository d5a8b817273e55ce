package palettes

import "image"

// Squares are the means, in linear light, of a picture's squares of so many pixels a side, row by row; those at its right and its lower
// edge may be less than whole.
func Squares(picture *image.RGBA, side int) (list []Linear) {
	b, linear := picture.Bounds(), decoding()
	for y := b.Min.Y; y < b.Max.Y; y += side {
		for x := b.Min.X; x < b.Max.X; x += side {
			list = append(list, meanOfPart(picture, image.Rect(x, y, x+side, y+side).Intersect(b), &linear))
		}
	}
	return list
}

// meanOfPart is the mean light of a part of a picture (sRGB: IEC 61966-2-1).
func meanOfPart(picture *image.RGBA, part image.Rectangle, linear *[256]float64) Linear {
	var sum Linear
	for y := part.Min.Y; y < part.Max.Y; y++ {
		row := picture.Pix[picture.PixOffset(part.Min.X, y):][:4*part.Dx()]
		for at := 0; at < len(row); at += 4 {
			sum.R, sum.G, sum.B = sum.R+linear[row[at]], sum.G+linear[row[at+1]], sum.B+linear[row[at+2]]
		}
	}
	n := float64(part.Dx() * part.Dy())
	return Linear{R: sum.R / n, G: sum.G / n, B: sum.B / n}
}

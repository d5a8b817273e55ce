package palettes

import (
	"cmp"
	"image"
	"image/color"
	"math"
	"slices"
)

// StripesSample is what a photo of stripes would tell of a fabric; the parts are its stripes with their share of the cloth, in
// order, shares that add up to 1.
func StripesSample(list []Part) PhotoSample {
	c := PhotoSample{Colours: byColour(list)}
	if len(list) == 0 {
		return c
	}
	var mean Linear
	values := slices.Clone(list)
	slices.SortStableFunc(values, func(a, b Part) int { return cmp.Compare(a.Colour.Lightness(), b.Colour.Lightness()) })
	for _, p := range values {
		l := p.Colour.Linear()
		mean.R, mean.G, mean.B = mean.R+float64(p.Share*l.R), mean.G+float64(p.Share*l.G), mean.B+float64(p.Share*l.B)
	}
	c.Colour, c.Lightness = mean.Colour(), LightnessOf(mean.Luminance())
	c.Darkest, c.Lightest = shareBelow(values, tail), shareBelow(values, 1-tail)
	c.Spread = spread(values)
	return c
}

// byColour is the parts of one color put together, the largest first, as many as a print has at the most.
func byColour(list []Part) (parts []Part) {
	for _, p := range list {
		if at := slices.IndexFunc(parts, func(q Part) bool { return q.Colour == p.Colour }); at >= 0 {
			parts[at].Share += p.Share
		} else {
			parts = append(parts, p)
		}
	}
	slices.SortStableFunc(parts, func(a, b Part) int { return -cmp.Compare(a.Share, b.Share) })
	return parts[:min(len(parts), mostParts)]
}

// shareBelow is the L* that a share of the cloth lies below; the parts go from dark to light.
func shareBelow(values []Part, share float64) float64 {
	sum, last := 0.0, len(values)-1
	for _, p := range values[:last] {
		if sum += p.Share; sum > share {
			return p.Colour.Lightness()
		}
	}
	return values[last].Colour.Lightness()
}

// spread is the standard deviation of the L* of parts.
func spread(values []Part) float64 {
	mean, squares := 0.0, 0.0
	for _, p := range values {
		mean += float64(p.Share * p.Colour.Lightness())
	}
	for _, p := range values {
		squares += float64(p.Share * float64((p.Colour.Lightness()-mean)*(p.Colour.Lightness()-mean)))
	}
	return math.Sqrt(squares)
}

// StripesPicture is stripes, one repeat of them, as so many pixels side by side, or one below the other: each pixel is a mixture, in
// linear light, of what covers it.
func StripesPicture(list []Part, pixels int, down bool) *image.RGBA {
	size := image.Rect(0, 0, pixels, 1)
	if down {
		size = image.Rect(0, 0, 1, pixels)
	}
	out := image.NewRGBA(size)
	begin, at := 0.0, 0
	for i := range pixels {
		var sum Linear
		from, to := float64(i)/float64(pixels), float64(i+1)/float64(pixels)
		for at < len(list) {
			end := begin + list[at].Share
			if at == len(list)-1 {
				end = 1
			}
			part := float64((math.Min(to, end) - math.Max(from, begin)) * float64(pixels))
			l := list[at].Colour.Linear()
			sum.R, sum.G, sum.B = sum.R+float64(part*l.R), sum.G+float64(part*l.G), sum.B+float64(part*l.B)
			if end >= to {
				break
			}
			begin, at = end, at+1
		}
		c := sum.Colour()
		if down {
			out.SetRGBA(0, i, color.RGBA{c.R, c.G, c.B, 255})
		} else {
			out.SetRGBA(i, 0, color.RGBA{c.R, c.G, c.B, 255})
		}
	}
	return out
}

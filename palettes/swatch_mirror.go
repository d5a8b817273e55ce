package palettes

import (
	"cmp"
	"image"
	"math"
	"slices"
)

// What of a print counts for its mirror lines: waves down to a part of its repeat, so that neither the threads of the cloth nor the noise of
// a camera do, in so many rows. Our choices.
const (
	mirrorWaves = 32
	mirrorRows  = 64
)

// LeastMirrored is how much a print must be like its mirror image to have a mirror line: the part of its variation that the two share,
// 1 where they are the same and near 0 where they have nothing in common. JPEG and a camera's noise take up to a tenth of it; a
// print that only resembles its mirror image is seen to be another below it. Our choice.
const LeastMirrored = 0.85

// sameAlong is the root mean square, in CIELAB units, below which a print counts as the same all along one way.
const sameAlong = 1.5

// MirrorLines are where a picture that is laid over and over is its own mirror image: lines that run down it, each as a part of its width
// from the left, 0 up to 1/2, the clearest first. Each comes again half a picture further on. Where the picture is the same all across,
// any line is one, and 0 stands for all.
func MirrorLines(picture *image.RGBA) []float64 {
	waves, energy := wavesAcross(picture)
	if energy <= sameAlong*sameAlong {
		return []float64{0}
	}
	type line struct{ at, like float64 }
	like := func(at float64) float64 {
		sum := 0.0
		for k, w := range waves {
			sin, cos := math.Sincos(4 * math.Pi * float64(k+1) * at)
			sum += float64(real(w)*cos) - float64(imag(w)*sin)
		}
		return sum
	}
	const steps = 16 * mirrorWaves
	var likes [steps]float64
	for i := range likes {
		likes[i] = like(float64(i) / (2 * steps))
	}
	var list []line
	for i, here := range likes {
		before, behind := likes[(i+steps-1)%steps], likes[(i+1)%steps]
		if here < LeastMirrored || here <= before || here < behind {
			continue
		}
		top := (float64(i) + (before-behind)/(2*(before+behind-2*here))) / (2 * steps) // of a parabola through the three
		list = append(list, line{math.Mod(top+0.5, 0.5), here})
	}
	const alike = 1e-6 // what rounding may change
	slices.SortFunc(list, func(a, b line) int {
		return cmp.Or(-cmp.Compare(math.Round(a.like/alike), math.Round(b.like/alike)), cmp.Compare(a.at, b.at))
	})
	places := make([]float64, len(list))
	for i := range list {
		places[i] = list[i].at
	}
	return places
}

// wavesAcross are the sums, over all rows and the three parts of CIELAB, of the squares of a picture's Fourier coefficients across it, each
// as a part of their energy, and that energy, the mean square of what varies across. A picture is its own mirror image about a place where
// every coefficient, seen from there, is real: where its square is all of its energy.
func wavesAcross(picture *image.RGBA) (waves [mirrorWaves]complex128, energy float64) {
	labs, columns := rowsOf(picture)
	turns := make([]complex128, 2*columns) // of half a pixel each
	for i := range turns {
		sin, cos := math.Sincos(-math.Pi * float64(i) / float64(columns))
		turns[i] = complex(cos, sin)
	}
	count := min(mirrorWaves, (columns-1)/2)
	for row := range slices.Chunk(labs, columns) {
		for k := range count {
			var l, a, b complex128
			at, step := k+1, 2*(k+1)
			for _, p := range row {
				turn := turns[at]
				l, a, b = l+times(turn, p.L), a+times(turn, p.A), b+times(turn, p.B)
				if at += step; at >= len(turns) {
					at -= len(turns)
				}
			}
			for _, c := range [3]complex128{l, a, b} {
				re, im := real(c), imag(c)
				waves[k] += complex(float64(re*re)-float64(im*im), 2*float64(re*im))
				energy += float64(re*re) + float64(im*im)
			}
		}
	}
	for k := range waves {
		waves[k] = times(waves[k], 1/max(energy, math.SmallestNonzeroFloat32))
	}
	return waves, 2 * energy / (float64(columns) * float64(len(labs)))
}

// times is a complex number times a real one.
func times(c complex128, r float64) complex128 {
	return complex(float64(real(c)*r), float64(imag(c)*r))
}

// rowsOf are the mean colors of a picture's columns in up to mirrorRows rows, one behind the other.
func rowsOf(picture *image.RGBA) (labs []Lab, columns int) {
	b := picture.Bounds()
	columns = b.Dx()
	rows, decode := min(b.Dy(), mirrorRows), decoding()
	sums := make([]Linear, columns)
	for row := range rows {
		clear(sums)
		from, to := row*b.Dy()/rows, (row+1)*b.Dy()/rows
		for y := from; y < to; y++ {
			for x := range sums {
				c := picture.RGBAAt(b.Min.X+x, b.Min.Y+y)
				sums[x] = Linear{sums[x].R + decode[c.R], sums[x].G + decode[c.G], sums[x].B + decode[c.B]}
			}
		}
		for _, s := range sums {
			count := float64(to - from)
			labs = append(labs, Linear{s.R / count, s.G / count, s.B / count}.Colour().Lab())
		}
	}
	return labs, columns
}

// OnItsSide is a picture whose columns are the rows of another: turned over its diagonal.
func OnItsSide(picture *image.RGBA) *image.RGBA {
	b := picture.Bounds()
	out := image.NewRGBA(image.Rect(0, 0, b.Dy(), b.Dx()))
	for y := range b.Dy() {
		for x := range b.Dx() {
			out.SetRGBA(y, x, picture.RGBAAt(b.Min.X+x, b.Min.Y+y))
		}
	}
	return out
}

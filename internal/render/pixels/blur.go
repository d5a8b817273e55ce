package pixels

import (
	"math"
	"runtime"
	"sync"
)

// blurred is the plane seen through a Gaussian with a standard deviation of sigma pixels,
// cut off at three of them. What lies beyond the edge, or in a place where nothing is, adds
// nothing: every pixel is the mean of the cloth about it. A sigma of 0 leaves the plane as
// it is.
func (p *Plane) blurred(sigma float64) *Plane {
	kernel := gaussian(sigma)
	if len(kernel) == 1 {
		return p
	}
	if p.Covered == nil {
		return &Plane{Size: p.Size, Luminance: p.Size.blur(p.Luminance, kernel)}
	}
	light := make([]float32, len(p.Luminance))
	for i := range light {
		light[i] = p.Luminance[i] * p.Covered[i]
	}
	light = p.Size.blur(light, kernel)
	weight := p.Size.blur(p.Covered, kernel)
	for i := range light {
		if weight[i] > 0 {
			light[i] /= weight[i]
		}
	}
	return &Plane{p.Size, light, p.Covered}
}

// gaussian is the middle weight and those to one side; all weights together make 1.
func gaussian(sigma float64) []float32 {
	if sigma < 0.2 {
		return []float32{1}
	}
	radius := int(math.Ceil(3 * sigma))
	weights := make([]float64, radius+1)
	sum := 0.0
	for i := range weights {
		x := float64(i)
		weights[i] = math.Exp(-x * x / (2 * sigma * sigma))
		sum += weights[i]
		if i > 0 {
			sum += weights[i]
		}
	}
	kernel := make([]float32, radius+1)
	for i := range kernel {
		kernel[i] = float32(weights[i] / sum)
	}
	return kernel
}

// blur blurs across, then down.
func (s Size) blur(from []float32, kernel []float32) []float32 {
	between, to := make([]float32, len(from)), make([]float32, len(from))
	inShares(s.Height, pass{s, between, from, kernel}.across)
	inShares(s.Height, pass{s, to, between, kernel}.down)
	return to
}

// pass is a blur in one direction.
type pass struct {
	Size
	to, from, kernel []float32
}

// inShares does the rows of a picture in a few shares at a time.
func inShares(rows int, do func(from, to int)) {
	shares := min(runtime.GOMAXPROCS(0), max(1, rows/64))
	var wait sync.WaitGroup
	for n := range shares {
		wait.Go(func() { do(rows*n/shares, rows*(n+1)/shares) })
	}
	wait.Wait()
}

// across blurs rows y0 to y1 from left to right. Each product is rounded by itself, so that
// no machine fuses it with the sum.
func (s pass) across(y0, y1 int) {
	kernel := s.kernel
	radius := len(kernel) - 1
	scale := edgeScale(s.Width, kernel)
	padded := make([]float32, s.Width+2*radius)
	for y := y0; y < y1; y++ {
		copy(padded[radius:], s.from[y*s.Width:][:s.Width])
		line := s.to[y*s.Width:][:s.Width]
		for x := range line {
			window := padded[x : x+2*radius+1]
			sum := float32(kernel[0] * window[radius])
			for i := 1; i <= radius; i++ {
				sum += float32(kernel[i] * (window[radius-i] + window[radius+i]))
			}
			line[x] = float32(sum * scale[x])
		}
	}
}

// down blurs rows y0 to y1 from above to below.
func (s pass) down(y0, y1 int) {
	kernel := s.kernel
	radius := len(kernel) - 1
	scale := edgeScale(s.Height, kernel)
	nothing := make([]float32, s.Width)
	row := func(y int) []float32 {
		if y < 0 || y >= s.Height {
			return nothing
		}
		return s.from[y*s.Width:][:s.Width]
	}
	for y := y0; y < y1; y++ {
		line := s.to[y*s.Width:][:s.Width]
		for x, v := range row(y) {
			line[x] = float32(kernel[0] * v)
		}
		for i := 1; i <= radius; i++ {
			addRows(line, row(y-i), row(y+i), kernel[i])
		}
		for x := range line {
			line[x] = float32(line[x] * scale[y])
		}
	}
}

func addRows(line, above, below []float32, weight float32) {
	above, below = above[:len(line)], below[:len(line)]
	for x := range line {
		line[x] += float32(weight * (above[x] + below[x]))
	}
}

// edgeScale is what makes up, at each place of a line, for the weights that fall outside.
func edgeScale(length int, kernel []float32) []float32 {
	scale := make([]float32, length)
	for x := range scale {
		sum := float64(kernel[0])
		for i := 1; i < len(kernel); i++ {
			for _, at := range [2]int{x - i, x + i} {
				if at >= 0 && at < length {
					sum += float64(kernel[i])
				}
			}
		}
		scale[x] = float32(1 / sum)
	}
	return scale
}

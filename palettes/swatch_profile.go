package palettes

import "image/color"

// profileSteps is how many steps a profileCube has along each of its edges.
const profileSteps = 32

// profileCube is what a color profile makes of colors, known at the corners of small cubes and mixed between them: a profile takes a
// microsecond for one color, and a photo has many.
type profileCube struct {
	corners [(profileSteps + 1) * (profileSteps + 1) * (profileSteps + 1)][3]float32
}

func newProfileCube(to func(color.Color) color.Color) *profileCube {
	c := &profileCube{}
	level := func(i int) uint8 { return uint8((i*255 + profileSteps/2) / profileSteps) }
	at := 0
	for r := range profileSteps + 1 {
		for g := range profileSteps + 1 {
			for b := range profileSteps + 1 {
				x, y, z, _ := to(color.RGBA{level(r), level(g), level(b), 255}).RGBA()
				c.corners[at] = [3]float32{float32(x >> 8), float32(y >> 8), float32(z >> 8)}
				at++
			}
		}
	}
	return c
}

// at is what becomes of a color.
func (c *profileCube) at(of color.RGBA) color.RGBA {
	var begin [3]int
	var part [3]float32
	for i, v := range [3]uint8{of.R, of.G, of.B} {
		begin[i] = min(int(v)*profileSteps/255, profileSteps-1)
		part[i] = float32(v)*profileSteps/255 - float32(begin[i])
	}
	var sum [3]float32
	for corner := range 8 {
		at, weight := 0, float32(1)
		for i := range 3 {
			far := corner >> i & 1
			at = at*(profileSteps+1) + begin[i] + far
			if far == 1 {
				weight *= part[i]
			} else {
				weight *= 1 - part[i]
			}
		}
		for i := range sum {
			sum[i] += float32(weight * c.corners[at][i])
		}
	}
	return color.RGBA{uint8(sum[0] + 0.5), uint8(sum[1] + 0.5), uint8(sum[2] + 0.5), 255}
}

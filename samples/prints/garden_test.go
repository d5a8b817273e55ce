package prints_test

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"

	"eighthturn/palettes"
)

// The print garden: blossoms, leaves and berries over a dark ground, one repeat of it. It is drawn here and nowhere else, so that it may
// be given away with the layout.
const (
	gardenAcross = 960 // pixels, 24 in of fabric
	gardenDown   = 480 // 12 in
)

// shape is something of a print: what color it has at a place, and none where the place lies beyond it.
type shape interface {
	at(x, y float64) (c palettes.Linear, there bool)
	reach() (x, y, r float64) // a circle that it lies in
}

// blossom is rings of petals, one over the other.
type blossom struct {
	x, y, r, turn float64
	petals        int
	colours       []palettes.Linear // from the outside in, and the eye last
}

func (b *blossom) reach() (x, y, r float64) { return b.x, b.y, b.r }

func (b *blossom) at(x, y float64) (palettes.Linear, bool) {
	dx, dy := apart(x-b.x, gardenAcross), apart(y-b.y, gardenDown)
	r := math.Hypot(dx, dy)
	if r > b.r {
		return palettes.Linear{}, false
	}
	angle := math.Atan2(dy, dx) + b.turn
	rings := len(b.colours) - 1
	if r < 0.16*b.r {
		if math.Mod(r*9/b.r+3*angle/math.Pi, 1) < 0.3 {
			return b.colours[0], true
		}
		return b.colours[rings], true
	}
	for i := rings - 1; i >= 0; i-- { // the innermost ring lies on top
		size := b.r * (1 - 0.26*float64(i))
		lobe := math.Abs(math.Cos(float64(b.petals) / 2 * (angle + float64(i)*math.Pi/float64(b.petals))))
		edge := size * (0.62 + 0.38*math.Sqrt(lobe))
		if r < edge {
			c := b.colours[i]
			if r > 0.86*edge || lobe < 0.16 {
				c = shaded(c, 0.62)
			}
			return c, true
		}
	}
	return palettes.Linear{}, false
}

// leaf is a pointed oval with a rib.
type leaf struct {
	x, y, long, wide, turn float64
	colour                 palettes.Linear
}

func (l *leaf) reach() (x, y, r float64) { return l.x, l.y, 1.1 * l.long }

func (l *leaf) at(x, y float64) (palettes.Linear, bool) {
	dx, dy := apart(x-l.x, gardenAcross), apart(y-l.y, gardenDown)
	along := (dx*math.Cos(l.turn) + dy*math.Sin(l.turn)) / l.long
	beside := (dy*math.Cos(l.turn) - dx*math.Sin(l.turn)) / l.wide
	if along < 0 || along > 1 || math.Abs(beside) > math.Sin(math.Pi*math.Pow(along, 0.8)) {
		return palettes.Linear{}, false
	}
	rib := math.Abs(beside) < 0.09 || math.Mod(along*7+math.Abs(beside)*1.4, 1) < 0.12
	if rib {
		return shaded(l.colour, 1.7), true
	}
	if beside > 0 {
		return shaded(l.colour, 0.72), true
	}
	return l.colour, true
}

// apart is the shorter way round between two places of a print that comes again.
func apart(d, repeat float64) float64 { return d - repeat*math.Round(d/repeat) }

func shaded(c palettes.Linear, by float64) palettes.Linear {
	return palettes.Linear{R: min(1, c.R*by), G: min(1, c.G*by), B: min(1, c.B*by)}
}

func linear(hex string) palettes.Linear {
	c, err := palettes.Parse(hex)
	if err != nil {
		panic(err)
	}
	return c.Linear()
}

// garden is one repeat of the print.
func garden() *image.RGBA {
	near := byPlace(gardenShapes())
	out := image.NewRGBA(image.Rect(0, 0, gardenAcross, gardenDown))
	ground := linear("#1d3b3f")
	const fine = 3
	for y := range gardenDown {
		for x := range gardenAcross {
			var sum palettes.Linear
			for n := range fine * fine {
				c := gardenAt(near[y/plot][x/plot], ground, float64(x)+(float64(n%fine)+0.5)/fine, float64(y)+(float64(n/fine)+0.5)/fine)
				sum.R, sum.G, sum.B = sum.R+c.R/(fine*fine), sum.G+c.G/(fine*fine), sum.B+c.B/(fine*fine)
			}
			c := palettes.Linear{R: min(1, sum.R), G: min(1, sum.G), B: min(1, sum.B)}.Colour()
			out.SetRGBA(x, y, color.RGBA{R: c.R, G: c.G, B: c.B, A: 255})
		}
	}
	return out
}

// plot is the side of the squares that the print is looked at in, in pixels.
const plot = 40

// byPlace are the shapes that may be seen in each square of the print.
func byPlace(shapes []shape) (near [gardenDown / plot][gardenAcross / plot][]shape) {
	for _, s := range shapes {
		x, y, r := s.reach()
		for j := range near {
			for i := range near[j] {
				if math.Hypot(apart(float64(i*plot)+plot/2-x, gardenAcross), apart(float64(j*plot)+plot/2-y, gardenDown)) < r+plot {
					near[j][i] = append(near[j][i], s)
				}
			}
		}
	}
	return near
}

func gardenAt(shapes []shape, ground palettes.Linear, x, y float64) palettes.Linear {
	for i := len(shapes) - 1; i >= 0; i-- {
		if c, there := shapes[i].at(x, y); there {
			return c
		}
	}
	return ground
}

// bloom is a sort of blossom: its petals, and its colors from the outside in with its eye last.
type bloom struct {
	petals  int
	colours []string
}

func gardenBlossoms() []bloom {
	return []bloom{
		{7, []string{"#b8324a", "#d9596b", "#f0a3a0", "#f3d98a"}},
		{5, []string{"#e9d7c1", "#f7efe2", "#d98a4b"}},
		{9, []string{"#d9803a", "#efb04f", "#f6dc8c", "#7a2e2a"}},
		{6, []string{"#7a5aa0", "#a88cc8", "#d8c8e6", "#f3d98a"}},
	}
}

// gardenShapes are the leaves, berries and blossoms, the lowest first; large blossoms keep away from each other.
func gardenShapes() []shape {
	dice := rand.New(rand.NewPCG(24, 12))
	kinds := gardenBlossoms()
	var leaves, blossoms, berries []shape
	var taken [][3]float64
	free := func(x, y, r float64) bool {
		for _, t := range taken {
			if math.Hypot(apart(x-t[0], gardenAcross), apart(y-t[1], gardenDown)) < r+t[2] {
				return false
			}
		}
		return true
	}
	for tries := range 4000 {
		r := 74.0 - 60*math.Pow(float64(tries)/4000, 0.6)
		x, y := dice.Float64()*gardenAcross, dice.Float64()*gardenDown
		if !free(x, y, r*1.05) {
			continue
		}
		taken = append(taken, [3]float64{x, y, r})
		turn := dice.Float64() * 2 * math.Pi
		if r < 17 {
			berries = append(berries, &blossom{x, y, r * 0.6, turn, 1, []palettes.Linear{linear("#c7d3b0"), linear("#e7c66a")}})
			continue
		}
		kind := kinds[len(blossoms)%len(kinds)]
		b := &blossom{x: x, y: y, r: r, turn: turn, petals: kind.petals}
		for _, c := range kind.colours {
			b.colours = append(b.colours, linear(c))
		}
		blossoms = append(blossoms, b)
		for n := range 3 {
			green := []string{"#4f7d4a", "#7fa05a", "#35604f"}[dice.IntN(3)]
			leaves = append(leaves, &leaf{x, y, r * (1.5 + 0.4*dice.Float64()), r * 0.34, turn + float64(n)*2.1 + 0.5*dice.Float64(), linear(green)})
		}
	}
	return append(append(leaves, berries...), blossoms...)
}

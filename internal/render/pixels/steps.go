package pixels

import (
	"math"

	"eighthturn/palettes"
)

// fixedCuts are the CIE L* at which steps part whatever the quilt: for three the borders of
// the families, for five those of the neutrals of the ISCC-NBS system (NBS Special
// Publication 440, Munsell values 2.5, 4.5, 6.5 and 8.5).
func fixedCuts(steps int) []float64 {
	switch steps {
	case 3:
		return []float64{palettes.MediumFrom, palettes.LightFrom}
	case 5:
		return []float64{25, palettes.MediumFrom, palettes.LightFrom, 85}
	}
	return nil
}

// classes finds the step of each fine step of luminance, and what each step holds. Steps
// that hold nothing are left out.
func classes(counts []int, q Squint) (of []uint8, steps []Step) {
	wanted := q.Steps
	if wanted == 0 {
		wanted = usualSteps
	}
	cuts := fixedCuts(wanted)
	if q.Relative || cuts == nil {
		cuts = ownCuts(counts, wanted)
	}
	of = make([]uint8, fineSteps)
	sums := make([]float64, len(cuts)+1)
	members := make([]int, len(cuts)+1)
	for i, n := range counts {
		l := lightnessOf(i)
		c := 0
		for c < len(cuts) && l >= cuts[c] {
			c++
		}
		of[i] = uint8(c)
		sums[c] += float64(float64(n) * l)
		members[c] += n
	}
	return renumber(of, cuts, sums, members)
}

// renumber leaves out the steps without members.
func renumber(of []uint8, cuts, sums []float64, members []int) ([]uint8, []Step) {
	total := 0
	for _, n := range members {
		total += n
	}
	var steps []Step
	number := make([]uint8, len(members))
	for c, n := range members {
		number[c] = uint8(len(steps))
		if n == 0 {
			continue
		}
		s := Step{Lightness: sums[c] / float64(n), Share: float64(n) / float64(total)}
		if c > 0 {
			s.From = cuts[c-1]
		}
		steps = append(steps, s)
	}
	for i := range of {
		of[i] = number[of[i]]
	}
	return of, steps
}

func lightnessOf(fineStep int) float64 {
	return palettes.LightnessOf(float64(fineStep) / (fineSteps - 1))
}

// ownCuts are the L* at which the picture's own values part best.
func ownCuts(counts []int, steps int) []float64 {
	const halves = 201
	sizes := make([]float64, halves)
	for i, n := range counts {
		sizes[int(math.Round(2*lightnessOf(i)))] += float64(n)
	}
	var areas []palettes.Area
	for i, n := range sizes {
		if n > 0 {
			areas = append(areas, palettes.Area{Lightness: float64(i) / 2, Size: n})
		}
	}
	sorted := palettes.Classify(areas, steps)
	var cuts []float64
	for i := 1; i < len(areas); i++ {
		if sorted.Of[i] != sorted.Of[i-1] {
			cuts = append(cuts, (areas[i].Lightness+areas[i-1].Lightness)/2)
		}
	}
	return cuts
}

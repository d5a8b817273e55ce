package supplies

import (
	"slices"

	"eighthturn/internal/measure"
)

// BattingOptions say what a batting is to cover.
type BattingOptions struct {
	Units          measure.System // what the default below is
	WidthFinished  measure.NM     // of the top
	HeightFinished measure.NM     // of the top
	Overhang       measure.NM     `json:"overhang"` // beyond the top, on each side; default 3 in, 7.5 cm
}

// Batting is the batting that a top takes.
type Batting struct {
	BattingOptions            // as they were filled in
	WidthCut       measure.NM `json:"width_cut" length:"atleast"` // the least that will do
	HeightCut      measure.NM `json:"height_cut" length:"atleast"`
	Packages       []Package  `json:"packages"` // those of the lists that hold it, either way round, the smallest first
}

// Package is a batting as it is sold.
type Package struct {
	Name   string `json:"name"`
	Size   Size   `json:"size"`
	Source string // address of the list
}

// holds says whether a package holds a size, one way round or the other.
func (p *Package) holds(width, height measure.NM) bool {
	return p.Size.Width >= width && p.Size.Height >= height || p.Size.Width >= height && p.Size.Height >= width
}

// MakeBatting says how large a batting is wanted and which packages hold it. The error says which length is out of bounds.
func MakeBatting(o BattingOptions) (*Batting, error) {
	o.Overhang = usual(o.Overhang, o.Units, 3*measure.Inch, 75*measure.Millimetre)
	err := within(o.Units,
		bound{"the width of the top", o.WidthFinished, 1, maxTop},
		bound{"the height of the top", o.HeightFinished, 1, maxTop},
		bound{"the overhang", o.Overhang, 0, MaxExtra})
	if err != nil {
		return nil, err
	}
	b := &Batting{BattingOptions: o, WidthCut: o.WidthFinished + 2*o.Overhang, HeightCut: o.HeightFinished + 2*o.Overhang}
	for _, p := range packages() {
		if p.holds(b.WidthCut, b.HeightCut) {
			b.Packages = append(b.Packages, p)
		}
	}
	slices.SortStableFunc(b.Packages, func(p, q Package) int { return p.Size.compare(q.Size) })
	return b, nil
}

// packages is the sizes in which batting is sold, as published lists have them. The lists disagree, and so both sizes
// stand where they do.
func packages() []Package {
	list := []Package{}
	for _, l := range []struct {
		source string
		sizes  []namedSize
	}{
		{embroideryPress, []namedSize{{"crib", 45, 60}, {"twin", 72, 90}, {"full", 81, 96}, {"queen", 90, 108}, {"king", 120, 120}}},
		{"https://project12quilts.blogspot.com/2012/01/quilting-basics-standard-quilt-sizes.html",
			[]namedSize{{"craft", 34, 45}, {"baby", 45, 60}, {"twin", 72, 90}, {"full", 84, 96}, {"queen", 90, 108}, {"king", 124, 120}}},
		{primitiveQuilts, []namedSize{{"crib", 45, 60}, {"twin", 72, 90}, {"twin", 72, 96}, {"full", 81, 96}, {"queen", 90, 108}, {"queen", 96, 108}, {"king", 120, 120}}},
		{"https://tourmalinethymequilts.com/resizing-your-quilt-part-1/", []namedSize{{"throw", 60, 60}}},
	} {
		for _, s := range l.sizes {
			list = append(list, Package{s.name, s.size(), l.source})
		}
	}
	return list
}

package contrast

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
)

// Sort is a sort of figure that a layout may mean to show.
type Sort string

const (
	Web         Sort = "web"         // the wedges round a web centre, against what they meet
	Star        Sort = "star"        // the kites round a star centre, against what they meet
	Wheel       Sort = "wheel"       // wedges of one cloth round the middle of a block, against what they meet
	Alternation Sort = "alternation" // the wedges round the middle of a block, one against the next
	Strips      Sort = "strips"      // the strips of one wedge, each against the next
	Sashes      Sort = "sashes"      // the sashes against the blocks
	Border      Sort = "border"      // a border against what lies inside it
)

// massed says whether a sort of figure is meant to read as one mass.
func (s Sort) massed() bool { return s == Web || s == Star || s == Wheel || s == Alternation }

// shows is the sort of figure that a kind means to show, "" for none: what it turns to, or
// wedges that meet in its middle.
func shows(k *blocks.Kind) Sort {
	switch {
	case k.Turning.InLattice() && k.Turning.OnStar():
		return Star
	case k.Turning.InLattice():
		return Web
	case k.Height == blocks.ToMiddle:
		return Wheel
	}
	return ""
}

// shape is the shape of the pieces that make up a figure.
func (s Sort) shape() blocks.Shape {
	if s == Star {
		return blocks.Gathering(blocks.StarCentre)
	}
	return blocks.Gathering(blocks.WebCentre)
}

// shown is the sort of figure that each cell means to show.
func (s *study) shown() []Sort {
	kinds := blocks.Kinds()
	list := make([]Sort, len(s.Cells))
	for i := range s.Cells {
		if k, ok := blocks.Find(kinds, s.Cells[i].Kind); ok && s.Cells[i].Count > 0 {
			list[i] = shows(k)
		}
	}
	return list
}

// member is one figure: the faces that make it up, and those that it stands against.
type member struct {
	faces, against []int32
	seams          []outlineSeam
	at             measure.Point // its centre
}

// outlineSeam is a seam on a figure's outline.
type outlineSeam struct {
	seam int32
	step float64 // lightness of the figure less that of what it meets, CIE L*
}

// gathered are the patches that point at one place.
type gathered struct {
	patches []int32
	meant   bool // one of the cells means to show the figure
}

// gather finds the figures of a sort: the pieces of its shape by the place that they point
// at, in the order in which the top has them.
func (s *study) gather(sort Sort, shown []Sort) []gathered {
	at := map[measure.Point]int{}
	var list []gathered
	for i := range s.Patches {
		p := &s.Patches[i]
		if p.Cell < 0 || p.Shape != sort.shape() || (sort == Wheel) != (shown[p.Cell] == Wheel) {
			continue
		}
		n, ok := at[p.Outline[0]]
		if !ok {
			n = len(list)
			at[p.Outline[0]] = n
			list = append(list, gathered{})
		}
		list[n].patches = append(list[n].patches, int32(i))
		list[n].meant = list[n].meant || shown[p.Cell] == sort
	}
	return list
}

// inBorder says whether a face belongs to a border.
func (s *study) inBorder(face int32) bool { return s.Patches[s.Faces[face].Patch].Border >= 0 }

// facesOf are the faces of patches.
func (s *study) facesOf(patches []int32) []int32 {
	var faces []int32
	for _, i := range patches {
		p := &s.Patches[i]
		for f := p.First; f < p.First+p.Count; f++ {
			faces = append(faces, int32(f))
		}
	}
	return faces
}

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

	ByTurns        Sort = "by-turns"        // figures of one sort in two colourings that take turns, one against the other
	DownColumns    Sort = "down-columns"    // the pieces of a column, each against the next
	BetweenColumns Sort = "between-columns" // a column against the next
	InBlocks       Sort = "in-blocks"       // the pieces of one block, each against the next
	Squares        Sort = "squares"         // blocks of one piece, each against the next
)

// massed says whether a sort of figure is meant to read as one mass.
func (s Sort) massed() bool { return s.centred() || s == Alternation }

// centred says whether a sort's figures are pieces round a place, against what they meet.
func (s Sort) centred() bool { return s == Web || s == Star || s == Wheel }

// parted says whether a sort's figures have an inside and a ground where no line need show.
func (s Sort) parted() bool { return s.centred() }

// inTurns says whether two colourings of a sort are meant to be told apart.
func (s Sort) inTurns() bool { return s.centred() }

// bothWays says whether it does not matter which side of a sort's seams is darker.
func (s Sort) bothWays() bool {
	return s == Strips || s == DownColumns || s == BetweenColumns || s == InBlocks || s == Squares
}

// fullTurn is how many patches like these make one whole turn round the place that they point at.
func (s *study) fullTurn(patches []int32) int {
	if s.Patches[patches[0]].Shape == Star.shape() {
		return kitesRound
	}
	return wedgesRound
}

const (
	wedgesRound = 8
	kitesRound  = 4
)

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
		if k, ok := blocks.Find(kinds, s.Cells[i].Kind); ok {
			list[i] = shows(k)
		}
	}
	return list
}

// member is one figure: the faces that make it up, and those that it stands against.
type member struct {
	faces, against []int32
	seams          []outlineSeam
	rim            []outlineSeam // where it meets a border
	closed         bool          // it has all its pieces
}

// outlineSeam is a seam on a figure's outline.
type outlineSeam struct {
	seam int32
	side float64 // 1 where the figure is the first of its faces, -1 where it is the second
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

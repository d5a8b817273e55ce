package pixels

import (
	"fmt"
	"image"
	"math"

	"eighthturn/internal/credits"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/palettes"
)

// The greatest picture that is printed. A picture is made and written in bands, so that what
// it takes of memory does not grow with its height; beyond these sizes few programs open it.
const (
	MostPrintedASide = 60_000        // pixels
	MostPrintedInAll = 1_000_000_000 // pixels
)

// Print is a picture of a top to be written at the size of a print. Edges are covered to
// 1/256 of a pixel across and down, light is mixed in linear light, and a pixel is made of
// the cloth that covers it and of nothing else.
type Print struct {
	Top        *quilt.Top
	Colour     func(fabric int) palettes.Colour // nil for each fabric's own; not read where there is an Image
	Tiles      []*Tile                          // by fabric, in place of its colour; nil for the colour, left out where there are none
	Places     []quilt.ClothPlace               // by face, where there are tiles
	Image      image.Image                      // in place of the cloth: it is stretched over the quilt's place, each of its pixels one flat square; nil for the cloth
	Size       Size                             // of the whole picture
	Quilt      image.Rectangle                  // the quilt's place in it; beyond it lies the background, but where the cloth runs on
	RunOn      int                              // by how many pixels the cloth at the quilt's edges runs on beyond them
	Background palettes.Colour
	Clear      bool    // the background is see-through
	PerInch    float64 // pixels an inch of the print, for the file
	TrueColour bool    // every pixel of a PNG file says its colour itself, not by a number in a palette
	Credits    credits.Credits
	Over       []Layer // drawn over the cloth, in this order
}

// Layer is outlines in one colour. Where outlines overlap they cover once.
type Layer struct {
	Outlines [][]Place // those that go anticlockwise cut holes
	Colour   palettes.Colour
	Opacity  float64 // 0 to 1
}

// Place is a place in the picture in pixels from its upper left corner.
type Place struct{ X, Y float64 }

// Check says whether a print can be made; it allocates nothing.
func (p *Print) Check() error {
	if p.Size.Width < 1 || p.Size.Height < 1 || p.Quilt.Empty() {
		return fmt.Errorf("a picture of %d by %d pixels has no room for a quilt", p.Size.Width, p.Size.Height)
	}
	if p.Size.Width > MostPrintedASide || p.Size.Height > MostPrintedASide || p.Size.Width*p.Size.Height > MostPrintedInAll {
		return fmt.Errorf("a picture of %d by %d pixels, where %d a side and %d million in all can be had", p.Size.Width, p.Size.Height, MostPrintedASide, MostPrintedInAll/1_000_000)
	}
	return nil
}

// laidFaces are outlines of the top's faces in the picture.
type laidFaces struct {
	outline [][]spot
	rows    [][2]int32 // first and last that each reaches
}

// placed puts the faces' outlines into the picture. Corners that are the same point of the
// top are the same spot.
func (p *Print) placed() *laidFaces {
	t := p.Top
	across := float64(p.Quilt.Dx()*part) / float64(t.Outer.Width())
	down := float64(p.Quilt.Dy()*part) / float64(t.Outer.Height())
	place := func(q measure.Point) spot {
		return spot{
			int32(math.Round(float64(q.X-t.Outer.Min.X)*across)) + int32(p.Quilt.Min.X*part),
			int32(math.Round(float64(q.Y-t.Outer.Min.Y)*down)) + int32(p.Quilt.Min.Y*part),
		}
	}
	s := &laidFaces{outline: make([][]spot, len(t.Faces)), rows: make([][2]int32, len(t.Faces))}
	corners := 0
	for i := range t.Faces {
		corners += len(t.Faces[i].Outline)
	}
	all := make([]spot, 0, corners)
	for i := range t.Faces {
		begin := len(all)
		for _, q := range t.Faces[i].Outline {
			all = append(all, place(q))
		}
		s.outline[i] = all[begin:len(all):len(all)]
		if p.RunOn > 0 {
			s.outline[i] = p.ranOn(s.outline[i])
		}
		s.rows[i] = rowsOf(s.outline[i])
	}
	return s
}

func rowsOf(outline []spot) [2]int32 {
	low, high := outline[0].y, outline[0].y
	for _, q := range outline {
		low, high = min(low, q.y), max(high, q.y)
	}
	return [2]int32{low / part, (high - 1) / part}
}

// ranOn is an outline whose edges on the quilt's edge are moved outwards: between their ends
// and where these are moved to, straight edges are put in.
func (p *Print) ranOn(outline []spot) []spot {
	var list []spot
	before := outline[len(outline)-1]
	for i, q := range outline {
		after := outline[(i+1)%len(outline)]
		list = append(list, p.moved(q, p.shared(before, q), p.shared(q, after))...)
		before = q
	}
	return list
}

// shared is the outward way of the quilt's edge on which two corners lie, 0 where they do
// not lie on one.
func (p *Print) shared(a, b spot) spot {
	by := int32(p.RunOn * part)
	left, top := int32(p.Quilt.Min.X*part), int32(p.Quilt.Min.Y*part)
	right, bottom := int32(p.Quilt.Max.X*part), int32(p.Quilt.Max.Y*part)
	switch {
	case a.x == left && b.x == left:
		return spot{-by, 0}
	case a.x == right && b.x == right:
		return spot{by, 0}
	case a.y == top && b.y == top:
		return spot{0, -by}
	case a.y == bottom && b.y == bottom:
		return spot{0, by}
	}
	return spot{}
}

// moved is what becomes of a corner between two edges that go outwards so.
func (p *Print) moved(q, before, after spot) []spot {
	none := spot{}
	switch {
	case before == none && after == none:
		return []spot{q}
	case before == none:
		aside := p.aside(q, after)
		return []spot{q, {q.x + aside, q.y}, {q.x + aside + after.x, q.y + after.y}}
	case after == none:
		aside := p.aside(q, before)
		return []spot{{q.x + aside + before.x, q.y + before.y}, {q.x + aside, q.y}, q}
	case before == after:
		return []spot{{q.x + after.x, q.y + after.y}}
	}
	return []spot{{q.x + before.x + after.x, q.y + before.y + after.y}}
}

// aside is how far what goes out from the upper or lower edge goes aside at a corner of the quilt, which pieces share that meet there: what is
// beyond both edges is of the one that lies along that edge.
func (p *Print) aside(q, out spot) int32 {
	switch {
	case out.y == 0:
	case q.x == int32(p.Quilt.Min.X*part):
		return -int32(p.RunOn * part)
	case q.x == int32(p.Quilt.Max.X*part):
		return int32(p.RunOn * part)
	}
	return 0
}

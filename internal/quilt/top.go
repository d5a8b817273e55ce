// Package quilt turns a checked design into the finished top: a flat list of patches
// with exact outlines, the coloured faces that they show, and the seams between them.
//
// A Top is complete. In it there are no names to look up, no defaults, no turning and no
// units; no patch without area; no place that two patches cover or none, but where the
// layout says that nothing is there; no inner edge without its seam; no strip set, only its
// bands; no empty quilt. Lengths are whole nanometres, finished, and the origin is the
// upper left corner of the top, y downwards.
package quilt

import (
	"fmt"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// Rect is a rectangle, Min its upper left corner.
type Rect struct{ Min, Max measure.Point }

// Width is the rectangle's measure across.
func (r Rect) Width() measure.NM { return r.Max.X - r.Min.X }

// Height is the rectangle's measure down.
func (r Rect) Height() measure.NM { return r.Max.Y - r.Min.Y }

// Top is a finished quilt top.
type Top struct {
	Title         string
	Colorway      string // the one that it is in; "" for the quilt as it is written
	Size          string // the one that it is in; "" for the quilt as it is written
	Units         measure.System
	Seam          measure.NM // allowance
	SideFinished  measure.NM // of a block
	Columns, Rows int
	Outer         Rect          // the whole top
	Field         Rect          // the blocks and sashes without their borders
	FirstCell     measure.Point // the upper left corner of the first cell
	StepFinished  measure.NM    // from one cell to the next: the side, and the sash between
	Fabrics       []Fabric
	Roles         []Role
	Cells         []Cell         // row by row
	Patches       []Patch        // those of borders last
	Faces         []Face         // patch by patch
	Cuts          []Cut          // places of cloths that the layout says pieces are cut from
	CutOf         []int16        // by patch, of Cuts, by index, -1 for none; nil where there are none at all
	Seams         []Seam         // between patches
	StripSeams    []Seam         // between the bands of one patch
	Alike         []int          // seams, by index, whose two faces a pool of scraps could not give two fabrics
	Warnings      []layout.Fault // what only the laid-out top can tell
	Credits       Credits
	CutFacts      CutFacts
	Dealt         []Dealing // strip sets that were dealt set by set
	Colorways     []Colorway
	Sizes         []Size // none of a top in a size
}

// Colorway is the top in other fabrics.
type Colorway struct {
	Name    string
	Changed []int         // fabrics, by index, that something shows
	Fabrics []Fabric      // all, by index
	Stock   []FabricStock // of each
	Place   layout.Span
}

// In is the top in one of its colorways, by index, whose name its title then has. It shares all that fabrics do not change.
func (t *Top) In(colorway int) *Top {
	c, other := &t.Colorways[colorway], *t
	other.Fabrics, other.CutFacts.Fabrics, other.Colorway, other.Colorways = c.Fabrics, c.Stock, c.Name, nil
	other.CutFacts.OnHand = t.onHandIn(c.Fabrics)
	other.Sizes = inColorway(t.Sizes, colorway)
	if t.Title != "" {
		other.Title += ", " + c.Name
	}
	return &other
}

// InNamed is In by the colorway's name, which is compared as the language compares names. That there is none is the error.
func (t *Top) InNamed(colorway string) (*Top, error) {
	for i := range t.Colorways {
		if layout.FoldName(t.Colorways[i].Name) == layout.FoldName(colorway) {
			return t.In(i), nil
		}
	}
	return nil, fmt.Errorf(`this layout has no colorway "%s"`, layout.Visible(colorway))
}

// Credits is what of the design only the reports need.
type Credits struct {
	Designer, Level, Copyright string
	Number, Version, Date      string // of the pattern
	Notes                      []layout.NoteText
	Contrast                   *layout.Contrast // nil if not said
	Pools                      []layout.Pool    // of scraps, as written: what is dealt already
}

// Fabric is a fabric of the top.
type Fabric struct {
	Name   string
	Print  string // the print's name, "" if it has none
	Colour palettes.Colour
	Cloth  *Cloth // nil for a plain color
	Place  layout.Span
}

// Role is what a patch is for, with its letter in the line view.
type Role struct{ Name, Letter string }

// Cell is one place of the grid.
type Cell struct {
	Label string // "" where there is nothing
	Kind  string
	Turns int // quarter turns clockwise
	Place layout.Span
	First int // index of its first patch
	Count int // how many patches it has
}

// Patch is one piece of cloth of the finished top, or one wedge of a strip set.
type Patch struct {
	Outline  []measure.Point // clockwise on screen, the first corner not repeated; begins where the piece points
	Place    Place
	First    int32 // index of its first face
	Count    int32 // how many faces it has: the bands of a strip set from the wide end to the tip, or 1
	Cell     int32 // index, -1 in a border or a sash
	Number   int32 // in its cell, its border or among the sashes, from 1
	Border   int16 // from the inside out, -1 elsewhere
	Set      int16 // of the cloth's strip sets, by index, -1 where it is cut from one fabric
	Role     int16 // index
	Shape    blocks.Shape
	Reversed bool // its strip set lies the other way round, the first fabric at the tip
}

// Place is a place of the layout in half the room that layout.Span takes.
type Place struct{ Start, End int32 }

func placeOf(s layout.Span) Place { return Place{int32(s.Start), int32(s.End)} }

// Span is the place as package layout has it.
func (p Place) Span() layout.Span { return layout.Span{Start: int(p.Start), End: int(p.End)} }

// Face is a part of the top of one fabric: a patch, or one band of a patch.
type Face struct {
	Outline []measure.Point // clockwise on screen, the first corner not repeated
	Fabric  int32           // index
	Patch   int32           // index
}

// Seam is a straight stretch along which two faces meet from end to end.
type Seam struct {
	A, B     int32 // faces; A lies to the right of the way from From to To
	From, To measure.Point
}

// CellRect is the place of a cell.
func (t *Top) CellRect(cell int) Rect {
	at := t.FirstCell.Add(measure.Point{X: measure.NM(cell%t.Columns) * t.StepFinished, Y: measure.NM(cell/t.Columns) * t.StepFinished})
	return Rect{at, at.Add(measure.Point{X: t.SideFinished, Y: t.SideFinished})}
}

// Empty says whether the layout has nothing at a cell.
func (t *Top) Empty(cell int) bool { return t.Cells[cell].Label == "" }

// Share is the part of the top, 0 to 1, that each fabric covers.
func (t *Top) Share() []float64 {
	areas := make([]float64, len(t.Fabrics))
	total := 0.0
	for i := range t.Faces {
		a := Area(t.Faces[i].Outline)
		areas[t.Faces[i].Fabric] += a
		total += a
	}
	for i := range areas {
		areas[i] /= total
	}
	return areas
}

// Area is the area, in square millimetres, of a simple outline that goes clockwise on screen.
func Area(outline []measure.Point) float64 {
	const mm = float64(measure.Millimetre)
	sum := 0.0
	o := outline[0]
	for i := 1; i+1 < len(outline); i++ {
		p, q := outline[i], outline[i+1]
		a := float64(float64(p.X-o.X) / mm * (float64(q.Y-o.Y) / mm))
		b := float64(float64(p.Y-o.Y) / mm * (float64(q.X-o.X) / mm))
		sum += a - b
	}
	return sum / 2
}

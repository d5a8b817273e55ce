package quilt

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// LeastSide is the least finished side of a block that a layout can have.
const LeastSide = layout.MinSide

// CutFacts is what of the design only the cutting and sewing plans need. Which fabric an edging
// of the top shows is read off its patches.
type CutFacts struct {
	StripGiven  bool                       // the layout gave the strip that wedges are cut from, not the side
	StripsCut   [blocks.Heights]measure.NM // the strip for wedges of each height; 0 where the grid has none
	Fabrics     []FabricStock              // by index of the top's fabrics
	UsableWidth measure.NM                 // between the selvages of fabrics that the layout does not name
	Sets        []Set                      // the strip sets that the top shows
	Columns     []Column
	Sash        *layout.Edging  // between the blocks, nil if there is none; its width finished
	Borders     []layout.Edging // from the inside out; widths finished
	Binding     *layout.Edging  // nil if not said; its width cut
	Backing     int             // fabric, by index, -1 if not said
	Batting     bool            // asked for
	Extra       layout.Extra    // cloth beyond what is cut, as far as it is said
	OnHand      []OnHand        // pieces that are cut already
	Unused      []int           // fabrics, by index, that no patch, binding or backing shows, the least first
	Pooled      []Pooled        // faces that were dealt their fabrics
}

// Pooled is a face, by index, and the pool of scraps, by index of the credits' list, that it was dealt from.
type Pooled struct{ Face, Pool int32 }

// FabricStock is what there is of a fabric.
type FabricStock struct {
	OnHand      measure.NM     // length, 0 if not said
	UsableWidth measure.NM     // between the selvages
	From        layout.Precuts // that it is cut from before any yardage; none if not said
}

// Set is a strip set in the strip for wedges of one height.
type Set struct {
	Name     string
	Height   blocks.WedgeHeight
	BandsCut []measure.NM // width of each strip, from the wide end of a wedge that is not turned to its tip
}

// Column is a run of cells that are one column of pieces.
type Column struct {
	First, Cells int // its upper cell, by index, and how many cells it has
	Divided      blocks.Column
}

// cutFacts copies from the design what the plans need.
func (l *builder) cutFacts() {
	d := l.design
	c := &l.CutFacts
	c.StripGiven, c.StripsCut = d.StripGiven, d.StripsCut
	c.Sash, c.Borders, c.Binding, c.Backing, c.Batting = d.Sash, d.Borders, d.Binding, d.Backing, d.Batting
	c.Extra, c.UsableWidth = d.Extra, d.UsableWidth
	for _, r := range d.Runs {
		c.Columns = append(c.Columns, Column{r.Y*d.Columns + r.X, r.Cells, r.Divided})
	}
}

type setKey struct {
	set    int
	height blocks.WedgeHeight
}

// set is the index of a strip set of the layout among the top's, for wedges of a height.
func (l *builder) set(n int, height blocks.WedgeHeight) int16 {
	key := setKey{n, height}
	i, ok := l.sets[key]
	if !ok {
		i = int16(len(l.CutFacts.Sets)) // the language allows fewer
		l.sets[key] = i
		s := Set{Name: l.design.StripSets[n].Name, Height: height}
		for _, b := range l.design.StripSets[n].Bands {
			s.BandsCut = append(s.BandsCut, b.Cut[height])
		}
		l.CutFacts.Sets = append(l.CutFacts.Sets, s)
	}
	return i
}

// unused finds the fabrics that nothing shows, once the scraps are dealt.
func (l *builder) unused() {
	used := make([]bool, len(l.Fabrics))
	for i := range l.Faces {
		used[l.Faces[i].Fabric] = true
	}
	if b := l.CutFacts.Binding; b != nil {
		used[b.Fabric] = true
	}
	if l.CutFacts.Backing >= 0 {
		used[l.CutFacts.Backing] = true
	}
	for i, u := range used {
		if !u {
			l.CutFacts.Unused = append(l.CutFacts.Unused, i)
		}
	}
}

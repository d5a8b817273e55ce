// Package summary turns a design and its top into what there is to know of the quilt before a rotary cutter is picked up:
// sizes, strips, counts, fabrics. It is data; nothing in it is put into words.
package summary

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
	"eighthturn/palettes"
)

// Summary is one quilt. Names carry the frame: finished is from seam to seam, unfinished is with the seam allowances that
// are not sewn yet, cut is as it leaves the cutting mat.
type Summary struct {
	Title         string         `json:"title"` // "" if it has none
	Units         measure.System `json:"units"`
	SeamAllowance measure.NM     `json:"seam_allowance"`
	Across        int            `json:"blocks_across"` // places of the grid, one or more each way
	Down          int            `json:"blocks_down"`
	EmptyPlaces   int            `json:"empty_places"` // places of the grid with nothing in them
	SideFinished  measure.NM     `json:"side_finished"`
	StripGiven    bool           `json:"strip_given"`    // the layout gave the strip and the side follows; else the other way round
	Strips        []Strip        `json:"strips"`         // one for each height of piece, in the order of the block kinds
	FieldFinished Size           `json:"field_finished"` // the blocks without their borders
	TopFinished   Size           `json:"top_finished"`
	TopUnfinished Size           `json:"top_unfinished"` // a seam allowance more on each side
	Sash          *Sash          `json:"sash"`           // nil if there is none
	Borders       []Border       `json:"borders"`        // from the inside out
	Binding       *Binding       `json:"binding"`        // nil if there is none
	Backing       string         `json:"backing"`        // the fabric, "" if it is not said
	Blocks        []Block        `json:"blocks"`         // those that stand in the grid, in the order of the layout
	Pieces        []Pieces       `json:"pieces"`         // by shape
	Webs          Centres        `json:"web_centres"`
	Stars         Centres        `json:"star_centres"`
	Fabrics       []Fabric       `json:"fabrics"` // by value, darkest first
	StripSets     []StripSet     `json:"strip_sets"`
	OnHand        []OnHand       `json:"on_hand,omitempty"` // pieces that are cut already
	Colorways     []Colorway     `json:"colorways"`
	Sizes         []QuiltSize    `json:"sizes"`
	Hints         []Hint         `json:"hints"`
}

// Size is across by down.
type Size struct {
	Width  measure.NM `json:"width"`
	Height measure.NM `json:"height"`
}

// Strip is what the wedges, or the tumblers, of some kinds are cut from.
type Strip struct {
	Kinds         []string   `json:"kinds"` // names, in the order of help
	WidthFinished measure.NM `json:"width_finished"`
	WidthCut      measure.NM `json:"width_cut"` // exact, to the nearest nanometre
	Nearest       *Nearest   `json:"nearest"`   // nil where the layout gave the strip
}

// Nearest is the strip by the nearest mark of a ruler.
type Nearest struct {
	Mark             measure.NM `json:"mark"` // how far apart the ruler's marks are: 1/16 inch or a millimetre
	WidthCut         measure.NM `json:"width_cut"`
	SideFinished     measure.NM `json:"side_finished"`      // of a block whose wedges come from it
	RowErrorFinished measure.NM `json:"row_error_finished"` // how much longer, below 0 shorter, a row of such blocks across the quilt would be
}

// Sash is the strips between the blocks.
type Sash struct {
	Fabric        string     `json:"fabric"`
	WidthFinished measure.NM `json:"width_finished"`
	WidthCut      measure.NM `json:"width_cut"`
	Posts         string     `json:"posts"`  // fabric of the squares where sashes cross, "" if there are none
	Around        bool       `json:"around"` // they go round the outside too
}

// Border is one border.
type Border struct {
	Fabric        string     `json:"fabric"`
	WidthFinished measure.NM `json:"width_finished"`
	WidthCut      measure.NM `json:"width_cut"`
	Corners       string     `json:"corners"` // fabric of the corner squares, "" if there are none
}

// Binding is the binding; its width has one frame only.
type Binding struct {
	Fabric   string     `json:"fabric"`
	WidthCut measure.NM `json:"width_cut"`
}

// Block is a block by its label in the grid.
type Block struct {
	Label string `json:"label"`
	Kind  string `json:"kind"`
	Count int    `json:"count"`
}

// Pieces is how many pieces of one shape the top has, borders counted.
type Pieces struct {
	Shape    string `json:"shape"` // what one piece is called
	Count    int    `json:"count"`
	FromSets int    `json:"from_strip_sets"` // of them, cut from strips that are sewn together
}

// OnHand is pieces that are cut already.
type OnHand struct {
	Role     string `json:"piece"` // as in the layout
	Cloth    string `json:"cut_from"`
	Reversed bool   `json:"reversed"`
	Pieces   int    `json:"pieces"`
}

// Build summarises a design and its top, which must be the design's own.
func Build(d *layout.Design, t *quilt.Top) *Summary {
	s := &Summary{
		Title: d.Title, Units: d.Units, SeamAllowance: d.Seam, Across: d.Columns, Down: d.Rows,
		SideFinished: d.SideFinished, StripGiven: d.StripGiven,
		FieldFinished: Size{t.Field.Width(), t.Field.Height()},
		TopFinished:   Size{t.Outer.Width(), t.Outer.Height()},
		TopUnfinished: Size{t.Outer.Width() + 2*d.Seam, t.Outer.Height() + 2*d.Seam},
		Pieces:        pieces(t),
		Webs:          centres(d.WebCentres, webIsWhole, tips),
		Stars:         centres(d.StarCentres, starIsWhole, kites),
		Fabrics:       fabrics(d, t),
	}
	s.Blocks, s.EmptyPlaces = count(d)
	s.Strips = strips(d)
	s.edgings(d, t)
	s.StripSets = stripSets(d, t)
	for _, o := range t.CutFacts.OnHand {
		s.OnHand = append(s.OnHand, OnHand{o.Role, o.Cloth, o.Reversed, o.Count})
	}
	s.Colorways = colorways(t)
	s.Sizes = quiltSizes(t)
	s.Hints = hints(d)
	return s
}

// count is the blocks of the grid by label, and how many places are empty.
func count(d *layout.Design) (list []Block, empty int) {
	counts := make([]int, len(d.Blocks))
	for _, c := range d.Cells {
		if c.Block < 0 {
			empty++
		} else {
			counts[c.Block]++
		}
	}
	for i, n := range counts {
		if n > 0 {
			list = append(list, Block{d.Blocks[i].Label, d.Blocks[i].Kind.Name, n})
		}
	}
	return list, empty
}

// pieces counts patches by shape, in the order of the shapes.
func pieces(t *quilt.Top) []Pieces {
	var counted []Pieces
	for i := range t.Patches {
		p := &t.Patches[i]
		for int(p.Shape) >= len(counted) {
			counted = append(counted, Pieces{Shape: blocks.Shape(len(counted)).String()})
		}
		counted[p.Shape].Count++
		if p.Count > 1 {
			counted[p.Shape].FromSets++
		}
	}
	var list []Pieces
	for _, p := range counted {
		if p.Count > 0 {
			list = append(list, p)
		}
	}
	return list
}

// edgings adds what goes round the blocks.
func (s *Summary) edgings(d *layout.Design, t *quilt.Top) {
	name := func(fabric int) string {
		if fabric < 0 {
			return ""
		}
		return t.Fabrics[fabric].Name
	}
	if e := d.Sash; e != nil {
		s.Sash = &Sash{name(e.Fabric), e.Width, e.Width + 2*d.Seam, name(e.Corners), e.Around}
	}
	for _, e := range d.Borders {
		s.Borders = append(s.Borders, Border{name(e.Fabric), e.Width, e.Width + 2*d.Seam, name(e.Corners)})
	}
	if e := d.Binding; e != nil {
		s.Binding = &Binding{name(e.Fabric), e.Width}
	}
	s.Backing = name(d.Backing)
}

// Fabric is a fabric of the layout.
type Fabric struct {
	Name      string          `json:"name"` // the print's name is "" if it has none
	Print     string          `json:"print"`
	Colour    palettes.Colour `json:"colour"`
	Lightness float64         `json:"value"`   // CIE L*, 0 for black to 100 for white
	Share     float64         `json:"share"`   // of the top, 0 to 1; 0 where the top does not show it
	Binds     bool            `json:"binding"` // the binding, the backing is cut from it
	Backs     bool            `json:"backing"`
}

// fabrics are all fabrics by value, darkest first, with their part of the top.
func fabrics(d *layout.Design, t *quilt.Top) []Fabric {
	swatches := make([]palettes.Swatch, len(t.Fabrics))
	at := map[string]int{}
	for i, f := range t.Fabrics {
		swatches[i] = palettes.Swatch{Name: f.Name, Colour: f.Colour}
		at[f.Name] = i
	}
	share := t.Share()
	list := make([]Fabric, 0, len(t.Fabrics))
	for _, s := range palettes.InValueOrder(swatches) {
		i := at[s.Name]
		list = append(list, Fabric{
			Name: s.Name, Print: t.Fabrics[i].Print, Colour: s.Colour, Lightness: s.Colour.Lightness(),
			Share: share[i], Binds: d.Binding != nil && d.Binding.Fabric == i, Backs: d.Backing == i,
		})
	}
	return list
}

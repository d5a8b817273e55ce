package cutting

import (
	"math"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	repeat "eighthturn/internal/plan/repeats"
	"eighthturn/internal/quilt"
)

// FromPrint is pieces of one fabric that are all cut from their own places of its print, and the cloth for them.
type FromPrint struct {
	Lines       []int        `json:"lines"`         // of the plan
	AcrossCut   measure.NM   `json:"repeat_across"` // after which the print comes again from selvage to selvage; 0 where any place does
	AlongCut    measure.NM   `json:"repeat_along"`  // the same along the selvages
	Lengthwise  bool         `json:"lengthwise"`    // strips are cut along the selvages
	Strips      []FussyStrip `json:"strips"`
	Times       int          `json:"times"`                                // all strips are cut so many times over, each time on whole repeats
	FittedCut   measure.NM   `json:"fitted_cut" length:"atleast"`          // of cloth, from the first strip to the last
	Repeats     int          `json:"repeats,omitempty"`                    // whole ones along the cloth that are bought, one of them to begin with
	LengthCut   measure.NM   `json:"cloth_cut" length:"atleast"`           // of cloth, with the repeat to begin with
	StackCut    measure.NM   `json:"stack_cut,omitempty" length:"atleast"` // of cloth, cut through Layers layers that lie place on place; 0 where that takes no fewer cuts
	StackStrips int          `json:"stack_strips,omitempty"`               // strips of such a stack
	LayerCut    measure.NM   `json:"layer_cut,omitempty" length:"atleast"` // of each layer: whole repeats
	outlines    []repeat.Piece
}

// FussyStrip is a strip of cloth, from one selvage to the other or along them, with its pieces.
type FussyStrip struct {
	Min      measure.Point `json:"from"` // across from the left selvage, along from where a repeat begins
	Max      measure.Point `json:"to"`
	WidthCut measure.NM    `json:"width_cut"`
	Pieces   []FussyPiece  `json:"pieces"`
}

// FussyPiece is a piece on the cloth.
type FussyPiece struct {
	Line int           `json:"line"`
	By   measure.Point `json:"by"` // whole repeats from the piece's place on the print
}

// Layers is how many layers are cut at once in a stack, as many as wedges make a circle. Common practice, no source.
const Layers = 8

// Outline is where a line's piece lies on the print, cut, its right side up.
func (f *FromPrint) Outline(line int) []measure.Point {
	return f.outlines[slices.Index(f.Lines, line)].Outline
}

// CutOutline is where a piece lies on the cloth.
func (f *FromPrint) CutOutline(p FussyPiece) []measure.Point {
	outline := slices.Clone(f.Outline(p.Line))
	for i := range outline {
		outline[i] = outline[i].Add(p.By)
	}
	return outline
}

// Count is how many pieces of a line the strips give, one time.
func (f *FromPrint) Count(line int) int {
	n := 0
	for i := range f.Strips {
		for _, p := range f.Strips[i].Pieces {
			if p.Line == line {
				n++
			}
		}
	}
	return n
}

// printPlace is the place of a print, among the top's, that a patch is cut from, and the hand of its piece; -1 where it comes as it
// lies along strips.
func (p *planning) printPlace(patch int) (int, Hand) {
	c := p.top.CutOfPatch(patch)
	if c == nil || c.Motif == "" && !c.Alike || p.top.Fabrics[p.top.Faces[p.top.Patches[patch].First].Fabric].Cloth == nil {
		return -1, Either
	}
	return int(p.top.CutOf[patch]), p.HandOf[patch]
}

// fussyCut makes a piece one that is cut round its template.
func (p *Piece) fussyCut() {
	p.Method = FussyCut
	p.AcrossCut, p.AlongCut = p.AcrossExact, p.AlongExact
	p.TrimCut, p.StandsOut = 0, 0
}

// printCloth is the cloth of what is cut from places of the print.
func (f *Fabric) printCloth() measure.NM {
	sum := measure.NM(0)
	for i := range f.FromPrint {
		sum += f.FromPrint[i].LengthCut
	}
	return sum
}

// fromPrints fits the pieces that are cut from places of prints, fabric by fabric.
func (p *planning) fromPrints() {
	p.fits = newBudget(maxFitSteps, p.sign)
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		for _, lengthwise := range []bool{false, true} {
			if list := p.fussyLines(f, lengthwise); len(list) > 0 {
				f.FromPrint = append(f.FromPrint, p.fitted(f, list, lengthwise))
			}
		}
	}
}

// fussyLines are the lines of a fabric that are cut from places of its print, from strips across the cloth or along it.
func (p *planning) fussyLines(f *Fabric, lengthwise bool) []int {
	var list []int
	for _, n := range f.Lines {
		line := &p.Lines[n]
		if line.Piece.Method == FussyCut && lengthwise == alongSelvages(&p.top.Cuts[line.PrintPlace]) {
			list = append(list, n)
		}
	}
	return list
}

// alongSelvages says whether the strips are cut along the selvages that pieces come from.
func alongSelvages(c *quilt.Cut) bool { return c.Motif == "" && !c.Crosswise }

// fitted fits some lines of a fabric.
func (p *planning) fitted(f *Fabric, list []int, lengthwise bool) FromPrint {
	print := printOf(p.top.Fabrics[f.Index].Cloth)
	c := FromPrint{Lines: list, AcrossCut: print.Across, AlongCut: print.Along, Lengthwise: lengthwise}
	for _, n := range list {
		line := &p.Lines[n]
		c.outlines = append(c.outlines, repeat.Piece{Outline: p.onPrint(line), Wanted: line.Pieces - line.OnHand})
	}
	cloth := repeat.Cloth{Print: print, UsableWidth: f.UsableWidth, Lengthwise: lengthwise, Mark: p.Steps.Mark}
	fit := repeat.Fit(cloth, c.outlines, p.fitSteps(len(list)))
	p.fits.spend(fit.Steps)
	p.tooWide(f, &c, fit)
	p.printWarnings(f, &c)
	for _, s := range fit.Strips {
		strip := FussyStrip{Min: s.Min, Max: s.Max, WidthCut: s.Max.Y - s.Min.Y}
		if lengthwise {
			strip.WidthCut = s.Max.X - s.Min.X
		}
		for _, q := range s.Pieces {
			strip.Pieces = append(strip.Pieces, FussyPiece{list[q.Piece], q.By})
		}
		c.Strips = append(c.Strips, strip)
	}
	c.Times, c.FittedCut = fit.Times, fit.TotalCut(print.Along)
	c.LengthCut = repeat.ToBuy(c.FittedCut, print.Along)
	if print.Along > 0 {
		c.Repeats = int(c.LengthCut / print.Along)
	}
	f.SearchEnded = f.SearchEnded || fit.Ended
	for _, n := range list {
		line := &p.Lines[n]
		line.Units = c.Count(n) * c.Times
		line.Spare = max(0, line.Units-line.Pieces+line.OnHand)
	}
	p.stacked(&c, cloth)
	return c
}

// fitSteps is how many steps the fitting of so many lines may take.
func (p *planning) fitSteps(lines int) int {
	return min(maxFit*up(lines, linesAFit), max(0, p.fits.left))
}

// stacked fits the same into a stack of layers, where that takes fewer cuts.
func (p *planning) stacked(c *FromPrint, cloth repeat.Cloth) {
	if cloth.Lengthwise || cloth.Along == 0 || slices.ContainsFunc(c.outlines, func(o repeat.Piece) bool { return o.Wanted%Layers != 0 }) {
		return
	}
	s := repeat.Stack(cloth, c.outlines, Layers, p.fitSteps(len(c.outlines)))
	p.fits.spend(s.Layer.Steps)
	if strips := len(s.Layer.Strips) * s.Layer.Times; strips > 0 && strips < len(c.Strips)*c.Times {
		c.StackStrips, c.LayerCut, c.StackCut = strips, s.LayerCut, s.LengthCut+cloth.Along
	}
}

// EightAlike is how wedges of a line are cut through a stack of layers, eight like ones at each cut, so that they make a figure round
// every center.
type EightAlike struct {
	Line      int        `json:"line"`
	Sets      int        `json:"sets"`      // of eight
	PerStrip  int        `json:"per_strip"` // sets
	Strips    int        `json:"strips"`    // of the stack
	Repeats   int        `json:"repeats"`   // whole ones of each layer
	LayerCut  measure.NM `json:"layer_cut" length:"atleast"`
	LengthCut measure.NM `json:"cloth_cut" length:"atleast"` // of all layers, and a repeat to begin with
}

// eightAlike works out how wedges that come as they are cut from a print could be eight and eight alike.
func (p *planning) eightAlike(f *Fabric) {
	cloth := p.top.Fabrics[f.Index].Cloth
	if cloth == nil || cloth.Stripes != nil || !cloth.Repeats {
		return
	}
	for _, n := range f.Lines {
		line := &p.Lines[n]
		per := 0
		if line.Piece.Method == Nested && line.Piece.Shape.Description().Gathers != blocks.NoCentre {
			per = nested(f.UsableWidth, &line.Piece)
		}
		if per == 0 || line.Pieces-line.OnHand < Layers {
			continue
		}
		e := EightAlike{Line: n, Sets: up(line.Pieces-line.OnHand, Layers), PerStrip: per}
		made := repeat.SetsOf(e.Sets, per, Layers, line.Piece.AcrossCut, cloth.Down)
		e.Strips, e.Repeats, e.LayerCut = made.Strips, made.Repeats, measure.NM(made.Repeats)*cloth.Down
		e.LengthCut = made.LengthCut + cloth.Down
		f.EightAlike = append(f.EightAlike, e)
	}
}

// printOf is how a cloth repeats. A photo of one place counts as one repeat.
func printOf(c *quilt.Cloth) repeat.Print {
	switch {
	case c.Stripes != nil && c.Stripes.Crosswise:
		return repeat.Print{Along: c.Down}
	case c.Stripes != nil:
		return repeat.Print{Across: c.Across}
	}
	return repeat.Print{Across: c.Across, Along: c.Down}
}

// onPrint is where a line's piece lies on the print, with its seam allowances.
func (p *planning) onPrint(line *Line) []measure.Point {
	patch := &p.top.Patches[line.Patches[0]]
	place, _ := p.top.PlaceSaid(line.Patches[0])
	finished := make([]measure.Vec, len(patch.Outline))
	for i, at := range patch.Outline {
		finished[i].X, finished[i].Y = place.OnCloth(float64(at.X), float64(at.Y))
	}
	cut := TemplateOutline(finished, float64(p.Seam))
	list := make([]measure.Point, len(cut))
	for i, at := range cut {
		list[i] = measure.Point{X: measure.NM(math.Round(at.X)), Y: measure.NM(math.Round(at.Y))}
	}
	return list
}

package report

import (
	"fmt"
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/quilt"
)

// motifOf is the motif that a line's pieces are cut from, of stripes which way their strips are cut; "" for none.
func (p *Plans) motifOf(line *cutting.Line) string {
	switch {
	case line.AlongSelvage:
		return "lengthwise"
	case p.Top == nil || line.PrintPlace < 0:
		return ""
	}
	return CutAs(&p.Top.Cuts[line.PrintPlace])
}

// CutAs is what pieces are called by where on a print they are cut: the motif's name, or which way strips of stripes are cut.
func CutAs(c *quilt.Cut) string {
	switch {
	case c.Motif != "":
		return c.Name()
	case c.Crosswise:
		return "crosswise"
	}
	return "lengthwise"
}

// likeStrips is strips across a print that are cut alike: where they begin in the repeat, how wide they are and what is cut from each.
type likeStrips struct {
	first *cutting.FussyStrip
	times int
}

// likes puts the strips of a fitting together that are alike.
func likes(f *cutting.FromPrint) []likeStrips {
	var list []likeStrips
	for i := range f.Strips {
		s := &f.Strips[i]
		at := slices.IndexFunc(list, func(l likeStrips) bool { return alikeStrips(f, l.first, s) })
		if at < 0 {
			at = len(list)
			list = append(list, likeStrips{first: s})
		}
		list[at].times += f.Times
	}
	return list
}

// alikeStrips says whether two strips lie at like places of the print and hold the same.
func alikeStrips(f *cutting.FromPrint, a, b *cutting.FussyStrip) bool {
	same := func(p, q, repeat measure.NM) bool { return repeat == 0 || (p-q)%repeat == 0 }
	return a.WidthCut == b.WidthCut && a.Max.X-a.Min.X == b.Max.X-b.Min.X && a.Max.Y-a.Min.Y == b.Max.Y-b.Min.Y &&
		same(a.Min.X, b.Min.X, f.AcrossCut) && same(a.Min.Y, b.Min.Y, f.AlongCut) &&
		slices.EqualFunc(a.Pieces, b.Pieces, func(p, q cutting.FussyPiece) bool {
			return p.Line == q.Line && p.By.X-a.Min.X == q.By.X-b.Min.X
		})
}

// fromStrip is what a strip across a print is cut into.
func (c *cuts) fromStrip(f *cutting.FromPrint, s *cutting.FussyStrip) string {
	var parts []string
	for _, n := range f.Lines {
		count := 0
		for _, p := range s.Pieces {
			if p.Line == n {
				count++
			}
		}
		if count > 0 {
			parts = append(parts, c.plans.countedPieces(count, &c.Lines[n]))
		}
	}
	return measure.List(parts)
}

// linesOf are the lines that a strip gives pieces of.
func linesOf(s *cutting.FussyStrip) []int {
	var list []int
	for _, p := range s.Pieces {
		if !slices.Contains(list, p.Line) {
			list = append(list, p.Line)
		}
	}
	slices.Sort(list)
	return list
}

// fromPrint is what is cut from places of a fabric's print: strip by strip, and how that can be done at once.
func (c *cuts) fromPrint(f *cutting.Fabric) []document.Block {
	var list []document.Block
	for i := range f.FromPrint {
		p := &f.FromPrint[i]
		t := document.Table{Columns: []document.Column{{Title: "strips", Kind: document.Counts, BySize: true}, {Title: "wide"}, {Title: "fussy-cut from each"}, {Title: LinesHead}}}
		for _, l := range likes(p) {
			lines := linesOf(l.first)
			t.Rows = append(t.Rows, document.Row{Cells: cells(number(l.times), c.length(l.first.WidthCut), c.fromStrip(p, l.first), lineNumbers(lines, ", ")), About: c.patches(lines)})
		}
		list = append(list, para("%s", c.linedUp(f, p)), t)
		list = append(list, bullets(c.repeatWords(f, p)...)...)
	}
	return list
}

// linedUp says how strips are cut that are lined up on a print.
func (c *cuts) linedUp(f *cutting.Fabric, p *cutting.FromPrint) string {
	way := "across the width of fabric"
	if p.Lengthwise {
		way = "along the length of fabric, from a length of " + c.Units.AtLeast(p.FittedCut)
	}
	on := "print"
	if c.print(f).Stripes != nil {
		on = "stripes"
	}
	return fmt.Sprintf("Cut strips %s, lined up on the %s as the cutting map shows. Then cut each piece with its template at the same place of the %s, right side up.", way, on, on)
}

// print is what a fabric shows that is no plain color.
func (c *cuts) print(f *cutting.Fabric) *quilt.Cloth { return c.plans.Top.Fabrics[f.Index].Cloth }

// repeatWords says what the repeat asks for, and what a stack saves.
func (c *cuts) repeatWords(f *cutting.Fabric, p *cutting.FromPrint) []string {
	if p.Repeats == 0 {
		return nil
	}
	list := []string{fmt.Sprintf("The print repeats every %s along the selvage: buy %s, one of them because the print may begin anywhere at the cut end.", c.length(p.AlongCut), measure.Count(p.Repeats, "repeat"))}
	if !c.print(f).Repeats {
		list = []string{"The layout gives no repeat for " + f.Name + ": yardage takes the photo to be one whole repeat. Measure the repeat before you buy."}
	}
	if p.StackStrips > 0 {
		list = append(list, fmt.Sprintf("Or stack the fabric: cut %d lengths of %s (%s), lay them on each other right side up with the print lined up, and pin. %s and every cut through the stack gives %d pieces alike. This takes %s.",
			cutting.Layers, c.Units.AtLeast(p.LayerCut), measure.Count(int(p.LayerCut/p.AlongCut), "repeat"), stackStrips(p), cutting.Layers, c.Units.AtLeast(p.StackCut)))
	}
	return list
}

// eightAlike says how wedges that come as they lie along strips could be cut eight and eight alike.
func (c *cuts) eightAlike(f *cutting.Fabric) []document.Block {
	var list []string
	for i := range f.EightAlike {
		e := &f.EightAlike[i]
		line := &c.Lines[e.Line]
		list = append(list, fmt.Sprintf("For a different figure around every center, cut 8 alike: cut %d lengths of %s (%s), lay them on each other right side up with the print lined up, and pin. Cut the stack into %s %s wide and these into %s: each cut gives 8 alike, %s in all. This takes %s instead.",
			cutting.Layers, c.Units.AtLeast(e.LayerCut), measure.Count(e.Repeats, "repeat"), measure.Count(e.Strips, "strip"), c.length(line.Piece.AcrossCut),
			c.plans.piecesName(line), measure.Count(e.Sets, "set"), c.Units.AtLeast(e.LengthCut)))
	}
	return bullets(list...)
}

// stackStrips says how many strips a stack is cut into.
func stackStrips(p *cutting.FromPrint) string {
	if p.StackStrips == 1 {
		return "One strip is enough,"
	}
	return number(p.StackStrips) + " strips are enough,"
}

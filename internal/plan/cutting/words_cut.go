package cutting

import (
	"fmt"
	"strings"

	"eighthturn/internal/measure"
)

// WedgesName is the name of a strip set's wedges: the set's, and "turned" for those cut with the tip on the other edge.
func (p *Plan) WedgesName(set int, reversed bool) string {
	if reversed {
		return p.SetName(set) + ", turned"
	}
	return p.SetName(set)
}

// SetNotes says of a strip set, a sentence each, how long it is sewn and what is cut from it.
func (w Words) SetNotes(n int) []string {
	set := &w.Sets[n]
	var list []string
	if !set.Alike {
		list = append(list, fmt.Sprintf("A wedge of %s has its wide end on the first of these strips; a wedge of %s is cut with its tip there.", w.WedgesName(n, false), w.WedgesName(n, true)))
	}
	for _, r := range set.Runs {
		text := fmt.Sprintf("%s %s long: %s from each", plural(r.Sets, "set"), w.Length(r.LengthCut), plural(r.Wedges, "wedge"))
		if !set.Alike {
			text += fmt.Sprintf(", %d and %d of the two kinds%s", (r.Wedges+1)/2, r.Wedges/2, w.begun(n, r))
		}
		list = append(list, text+".")
	}
	list = append(list, fmt.Sprintf("Sewn, a set must measure %s from cut edge to cut edge before you cut wedges from it. Press every seam one way, and sew every other one from the other end, so that the set stays straight.", w.Length(set.WidthCut)))
	if left := set.LeftOver; left[0]+left[1] > 0 {
		list = append(list, w.setLeft(n))
	}
	return list
}

// begun says which wedge is cut first where a set gives one more of that kind than of the other.
func (w Words) begun(n int, r SetRun) string {
	switch {
	case r.Wedges%2 == 0:
		return ""
	case r.FirstReversed == 0:
		return "; begin with a wedge of " + w.WedgesName(n, false)
	case r.FirstReversed == r.Sets:
		return "; begin with a wedge of " + w.WedgesName(n, true)
	}
	return fmt.Sprintf("; begin %d of the sets with a wedge of %s, and the others with one of %s", r.FirstReversed, w.WedgesName(n, true), w.WedgesName(n, false))
}

// setLeft says what is left of a strip set and what could be made of it.
func (w Words) setLeft(n int) string {
	left := w.Sets[n].LeftOver
	if w.Sets[n].Alike {
		return fmt.Sprintf("Left over: %s%s.", plural(left[0]+left[1], "wedge"), wholes(left[0]+left[1]))
	}
	return fmt.Sprintf("Left over: %s of %s and %d of %s%s.", plural(left[0], "wedge"), w.WedgesName(n, false), left[1], w.WedgesName(n, true), wholes(left[0], left[1]))
}

// wholes says how many whole turns of eight wedges could be made of some.
func wholes(counts ...int) string {
	n := 0
	for _, c := range counts {
		n += c / 8
	}
	if n == 0 {
		return ", too few for a whole turn of eight"
	}
	return ", enough for " + plural(n, "whole turn") + " of eight"
}

// RowNotes says how wedges and tumblers are cut from their strips, a sentence for each size.
func (w Words) RowNotes() []string {
	var list []string
	for _, c := range w.Wedges {
		list = append(list, fmt.Sprintf("Wedges lie side by side in strips of %s cut, every other one turned round: %d from %s of strip, each taking %s, with %s lost at the ends.",
			w.Length(c.StripCut), c.PerStrip, w.Length(c.UsableWidth), w.Length(c.PitchCut), w.Length(c.WasteCut)))
	}
	for _, t := range w.Tumblers {
		text := fmt.Sprintf("Tumblers: line %s of a wedge rule on the edge of strips of %s cut; the wide edge is then cut %s, the narrow one %s.",
			w.Length(t.LineCut), w.Length(t.StripCut), w.Length(t.WideCut), w.Length(t.NarrowCut))
		if t.Slim {
			text += " The narrow edge finishes below two seam allowances, and the seams will lie on top of each other."
		}
		list = append(list, text)
	}
	return list
}

// BlockWords says what is cut lengthwise from a fabric's block number n.
func (w Words) BlockWords(f *Fabric, n int) string {
	b := &f.Blocks[n]
	var parts []string
	for _, c := range b.Columns {
		parts = append(parts, fmt.Sprintf("%s (line %d)", w.By(c.WidthCut, c.LengthCut), c.Line+1))
	}
	text := fmt.Sprintf("First cut off %s of the cloth, and from it lengthwise, side by side: %s.", w.AtLeast(b.LengthCut), strings.Join(parts, ", "))
	for _, s := range f.Strips {
		if s.InBlock == n {
			return text + fmt.Sprintf(" The strips below that are %s long come from the rest of its width.", w.Length(b.LeftWidthCut))
		}
	}
	return text
}

// FabricTitle is a fabric with its cloth.
func (w Words) FabricTitle(f *Fabric) string {
	return fmt.Sprintf("%s: %s of cloth, %s between its selvages", f.Name, w.AtLeast(f.LengthCut), w.Length(f.UsableWidth))
}

// FabricNotes says how near a fabric's strips are to the best there is, and what is left of them.
func (w Words) FabricNotes(f *Fabric) []string {
	list := []string{w.Bounds(f)}
	if len(f.LeftOver) > 0 {
		var parts []string
		for _, l := range f.LeftOver {
			parts = append(parts, fmt.Sprintf("%d × %s", l.Times, w.LeftOver(&l)))
		}
		list = append(list, "Ends worth keeping: "+strings.Join(parts, ", ")+".")
	}
	return list
}

// LeftOver is the size of an end worth keeping, neither side longer than it is.
func (w Words) LeftOver(l *LeftOver) string {
	return w.Units.ByAtMost(l.AcrossCut, l.AlongCut)
}

// EndLeft is how much of a strip's length is left at its end, no more than there is; "" for nothing.
func (w Words) EndLeft(s *Strip) string {
	if s.EndLeftCut == 0 {
		return ""
	}
	return w.AtMost(s.EndLeftCut)
}

// Bounds says how near a fabric's strips are to what no plan of their kind beats.
func (w Words) Bounds(f *Fabric) string {
	strips := capital(plural(f.StripCount, "strip"))
	if f.StripRows > f.StripCount {
		strips += fmt.Sprintf(", %d if each row counts as one", f.StripRows)
	}
	strips += "; of plans in which every length of a strip is cut into like pieces, "
	cloth := "none takes less than " + w.AtLeast(f.LengthBound) + " of cloth."
	switch {
	case f.LengthBound == f.LengthCut && (f.StripBound == f.StripRows || len(f.Blocks) > 0):
		return strips + "none takes less cloth."
	case len(f.Blocks) > 0:
		return strips + cloth
	case f.StripBound == f.StripRows:
		return strips + "none with as little cloth takes fewer strips, and " + cloth
	}
	return strips + fmt.Sprintf("none with as little cloth takes fewer than %s, each row counted, and ", plural(f.StripBound, "strip")) + cloth
}

// Rulers are the sizes that must be exact and that no line of a ruler shows, each with what would be on one.
func (w Words) Rulers() []string {
	var list []string
	seen := map[measure.NM]bool{}
	add := func(what string, r Ruler) {
		if r.OnMark || seen[r.ExactCut] {
			return
		}
		seen[r.ExactCut] = true
		text := fmt.Sprintf("%s, exactly %s cut, is on no line of a ruler: the lines beside it are %s and %s", what, w.Exact(r.ExactCut), w.Number(r.BelowCut), w.Length(r.AboveCut))
		if r.BelowSideFinished > 0 {
			text += fmt.Sprintf("; blocks of exactly %s and exactly %s finished would be cut by them", w.Exact(r.BelowSideFinished), w.Exact(r.AboveSideFinished))
		}
		list = append(list, text+".")
	}
	for i := range w.Lines {
		for _, r := range w.Lines[i].Piece.OnRuler {
			add(capital(r.What), r)
		}
	}
	for i := range w.Sets {
		for _, b := range w.Sets[i].Bands {
			add(w.Fabrics[b.Fabric].Name+" in strip set "+w.SetName(i), b.OnRuler)
		}
	}
	return list
}

package cutting

import (
	"eighthturn/internal/measure"
	repeat "eighthturn/internal/plan/repeats"
	"eighthturn/internal/quilt"
)

// tooWide says which pieces the cloth is too narrow for.
func (p *planning) tooWide(f *Fabric, c *FromPrint, fit *repeat.Fitting) {
	for _, n := range fit.TooLarge {
		line := &p.Lines[c.Lines[n]]
		p.fault(line.Place, "make the blocks smaller, or use wider fabric", "%s that is cut from its place on %s leaves the fabric, which is %s between its selvages", measure.WithArticle(line.Piece.Shape.String()), f.Name, p.text(f.UsableWidth))
	}
}

// cutAs is what a line's piece is called that is cut from a place of a print.
func (p *planning) cutAs(line *Line) string {
	if motif := p.top.Cuts[line.PrintPlace].Name(); motif != "" {
		return motif + " " + line.Piece.Shape.String()
	}
	return line.Piece.Shape.String()
}

// printWarnings says what should be known before pieces are cut from places of a print.
func (p *planning) printWarnings(f *Fabric, c *FromPrint) {
	cloth := p.top.Fabrics[f.Index].Cloth
	if cloth.Stripes == nil && !cloth.Repeats {
		p.noRepeat(f, c)
	}
	hands := map[int]Hand{}
	for i, n := range c.Lines {
		line := &p.Lines[n]
		if cloth.Stripes == nil && cloth.Repeats {
			p.overRepeat(f, line, bounds(c.outlines[i].Outline), cloth)
		}
		if hand := line.Piece.Hand; hand != Either {
			if before := hands[line.PrintPlace]; before != Either && before != hand {
				p.bothHands(f, line)
			}
			hands[line.PrintPlace] = hand
		}
	}
}

// bothHands warns of left and right pieces that are cut from one place.
func (p *planning) bothHands(f *Fabric, line *Line) {
	if lines := p.top.Fabrics[f.Index].Cloth.MirrorLines(); p.top.Cuts[line.PrintPlace].Motif != "" && !lines.None() {
		p.warn(line.Place, "write mirrored behind the motif: the print has a mirror line, at which the right ones are then cut; turned over they would show the wrong side",
			"left and right %ss are cut from one place of %s, and the print is not mirrored in them", p.cutAs(line), f.Name)
		return
	}
	p.warn(line.Place, "cut both right side up, each with its own template: turned over they would show the wrong side",
		"left and right %ss are cut from one place of %s, and the print is not mirrored in them", p.cutAs(line), f.Name)
}

// noRepeat warns of a photo that does not say after how much cloth its place comes again.
func (p *planning) noRepeat(f *Fabric, c *FromPrint) {
	pieces := 0
	for i := range c.outlines {
		pieces += c.outlines[i].Wanted
	}
	if pieces > 1 {
		p.warn(Place(p.top.Fabrics[f.Index].Place), "measure after how much fabric the print comes again, and write it behind the photo, for example repeat across 24 down 12",
			"%d pieces are cut from places of %s, which has no repeat: its photo is taken for one whole repeat", pieces, f.Name)
	}
}

// overRepeat warns of a piece that is larger than the repeat.
func (p *planning) overRepeat(f *Fabric, line *Line, b [2]measure.Point, cloth *quilt.Cloth) {
	if wide, high := b[1].X-b[0].X, b[1].Y-b[0].Y; wide > cloth.Across || high > cloth.Down {
		p.warn(line.Place, "", "%s takes %s of the print, more than a repeat of %s, %s: it shows more than one motif, and not every repeat gives a piece",
			measure.WithArticle(p.cutAs(line)), p.Units.By(wide, high), f.Name, p.Units.By(cloth.Across, cloth.Down))
	}
}

// bounds are the least and the greatest of an outline.
func bounds(outline []measure.Point) [2]measure.Point {
	b := [2]measure.Point{outline[0], outline[0]}
	for _, p := range outline {
		b[0] = measure.Point{X: min(b[0].X, p.X), Y: min(b[0].Y, p.Y)}
		b[1] = measure.Point{X: max(b[1].X, p.X), Y: max(b[1].Y, p.Y)}
	}
	return b
}

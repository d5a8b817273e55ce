package main

import (
	"fmt"
	"strings"

	"eighthturn/cutting"
	"eighthturn/finishing"
	"eighthturn/measure"
)

// section is a part of a plan on paper: words, a table under its headings, and notes.
type section struct {
	heading string
	words   []string
	rows    [][]string // the first is the headings; numbers begin with a blank, to stand at the right
	notes   []string
}

// sections is the whole plan in the order in which it is read.
func (p cutPage) sections() []section {
	list := []section{{heading: "Before you cut", words: cutting.Advice()}, p.toBuy(), p.pieces()}
	for i := range p.Sets {
		if len(p.Sets[i].Runs) > 0 {
			list = append(list, p.stripSet(i))
		}
	}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		if f.StripCount > 0 || len(f.Blocks) > 0 {
			list = append(list, p.fabric(f))
		}
	}
	if lines := p.rulers(); len(lines) > 0 {
		list = append(list, section{heading: "Sizes that no line of a ruler shows", words: lines})
	}
	return append(list, section{heading: "Mind your fingers", words: cutting.Cautions()})
}

// toBuy is the cloth of all fabrics.
func (p cutPage) toBuy() section {
	s := section{heading: "To buy, for " + p.quilts()}
	s.rows = [][]string{{"", " cut from it", " exactly", " to buy", "on hand", "or instead"}}
	for i := range p.Fabrics {
		f := &p.Fabrics[i]
		name := f.Name
		if f.Print != "" {
			name += " (" + f.Print + ")"
		}
		s.rows = append(s.rows, []string{name, " " + p.text(f.Purchase.ExactCut), " " + p.shopExact(f.Purchase.Need), " " + p.shop(f.Purchase.Buy), p.onHand(f.OnHand), p.precuts(f)})
	}
	buying := finishing.Buying{Units: p.Units}
	s.notes = append(s.notes, fmt.Sprintf("Each fabric is added up first and rounded once, up to the next %s; a length that is a whole number of these stays as it is.", p.shop(p.step(buying))))
	for i := range p.Fabrics {
		s.notes = append(s.notes, p.ways(&p.Fabrics[i])...)
	}
	s.notes = append(s.notes, p.edges()...)
	return s
}

// step is what lengths are rounded up to.
func (p cutPage) step(buying finishing.Buying) measure.NM {
	for i := range p.Fabrics {
		if step := p.Fabrics[i].Purchase.Step; step > 0 {
			return step
		}
	}
	return buying.Step()
}

func (p cutPage) onHand(h *cutting.OnHand) string {
	switch {
	case h == nil:
		return ""
	case h.Enough:
		return p.shopExact(h.HaveCut) + ", enough"
	}
	return p.shopExact(h.HaveCut) + ", short by " + p.text(h.ShortCut)
}

// ways says what would make cloth on hand suffice.
func (p cutPage) ways(f *cutting.Fabric) []string {
	if f.OnHand == nil || f.OnHand.Enough {
		return nil
	}
	var parts []string
	for _, w := range f.OnHand.WaysToFit {
		switch {
		case w.Border >= 0:
			parts = append(parts, fmt.Sprintf("border %d %s wide finished", w.Border+1, p.text(w.WidthFinished)))
		case w.StripCut > 0:
			parts = append(parts, fmt.Sprintf("strips of %s cut, for blocks of %s finished", p.text(w.StripCut), p.text(w.SideFinished)))
		default:
			parts = append(parts, fmt.Sprintf("blocks of %s finished", p.text(w.SideFinished)))
		}
	}
	if len(parts) == 0 {
		return []string{fmt.Sprintf("%s: no narrower border and no smaller block of at least half the size makes what is on hand enough.", f.Name)}
	}
	return []string{fmt.Sprintf("%s would be enough with %s; everything else as it is.", f.Name, strings.Join(parts, ", or with "))}
}

// precuts says which precuts would do: fat quarters, and strips. All of them stand in the JSON.
func (p cutPage) precuts(f *cutting.Fabric) string {
	var parts []string
	for _, c := range f.Precuts {
		metric := strings.HasPrefix(c.Name, "metric")
		if strings.HasSuffix(c.Name, "fat quarter") && metric == (p.Units == measure.Centimetres) || strings.HasSuffix(c.Name, "strip") {
			parts = append(parts, plural(c.Count, strings.TrimPrefix(c.Name, "metric ")))
		}
	}
	return strings.Join(parts, " or ")
}

// edges says what binding, backing and batting take.
func (p cutPage) edges() []string {
	var list []string
	if b := p.Binding; b != nil {
		list = append(list, fmt.Sprintf("Binding: %s of %s cut, joined on the slant to at least %s: the quilt's edge and %s for corners and ends.",
			plural(b.Strips*p.Copies, "strip"), p.text(b.StripCut), p.text(b.Need), p.text(b.Need-b.Perimeter)))
	}
	if b := p.Backing; b != nil {
		way, other := b.Ways[b.Less], b.Ways[1-b.Less]
		names := [2]string{"up and down", "across"}
		text := fmt.Sprintf("Backing: %s of %s, seams %s, takes %s; with seams %s it would take %s.", plural(way.Panels, "panel"), p.text(way.PanelCut), names[b.Less],
			p.text(way.LengthCut), names[1-b.Less], p.text(other.LengthCut))
		if way.Panels == 1 {
			text = fmt.Sprintf("Backing: one length of %s, with no seam.", p.text(way.PanelCut))
		}
		if way.Cliff.Costs {
			text += fmt.Sprintf(" Measure the cloth first: %s less of usable width costs another panel.", p.text(way.Cliff.Step))
		}
		list = append(list, text)
	}
	if b := p.Batting; b != nil {
		text := fmt.Sprintf("Batting: %s by %s at the least", measure.Number(b.WidthCut, p.Units), p.text(b.HeightCut))
		if len(b.Packages) > 0 {
			text += fmt.Sprintf("; the smallest package in the lists that holds it is %s, %s by %s", b.Packages[0].Name, measure.Number(b.Packages[0].Size.Width, p.Units), p.text(b.Packages[0].Size.Height))
		}
		list = append(list, text+".")
	}
	return list
}

// pieces is every distinct piece with its sizes.
func (p cutPage) pieces() section {
	s := section{heading: "Pieces, with their sizes finished and cut"}
	s.rows = [][]string{{" line", "", "from", "finished", "cut", " exactly", " to trim", " pieces", ""}}
	for i := range p.Lines {
		line := &p.Lines[i]
		s.rows = append(s.rows, []string{
			fmt.Sprintf(" %d", line.Number+1), p.piece(line), p.cloth(line), p.finished(&line.Piece), p.cut(line), " " + p.exact(&line.Piece), " " + p.trim(&line.Piece),
			fmt.Sprintf(" %d", line.Pieces), p.hands(line),
		})
	}
	s.notes = append([]string{
		"Finished is from seam to seam: of wedges and tumblers the height, of triangles the short edges, of kites and stop pieces the side of their block. " +
			"Cut is what you cut. Exactly is the cut size that geometry asks for; what is cut larger is trimmed after sewing, by what stands beside it.",
	}, p.pieceNotes()...)
	return s
}

// pieceNotes explains choices that the table shows.
func (p cutPage) pieceNotes() []string {
	var list []string
	once := map[string]bool{}
	say := func(text string) {
		if !once[text] {
			once[text] = true
			list = append(list, text)
		}
	}
	for i := range p.Lines {
		line := &p.Lines[i]
		piece := &line.Piece
		switch {
		case piece.Method == cutting.TwiceOnDiagonal:
			say("Squares cut twice put the long edge of a triangle on the straight grain, and its short edges, which lie on the outside of the block, on the bias.")
		case piece.Method == cutting.OnceOnDiagonal && line.Left+line.Right > 0:
			say("A square cut once gives two triangles; each of them serves as a left or a right stop piece, since both are trimmed after sewing.")
		case piece.Method == cutting.OnceOnDiagonal:
			say("Squares cut once put the short edges of a triangle, which lie on the outside of the block, on the straight grain; the long edge inside is on the bias.")
		}
		if piece.RuleCut > 0 {
			say(fmt.Sprintf("Line %d: the rule of thumb says squares of %s.", line.Number+1, p.text(piece.RuleCut)))
		}
		if piece.KitesCut > 0 && piece.KitesCut != piece.AlongCut {
			say(fmt.Sprintf("Line %d: by custom corners are cut from squares of %s, as kites are, with more to trim.", line.Number+1, p.text(piece.KitesCut)))
		}
	}
	for _, w := range p.Wedges {
		say(fmt.Sprintf("Wedges lie side by side in strips of %s cut, every other one turned round: %d from %s of strip, each taking %s, with %s lost at the ends.",
			p.text(w.StripCut), w.PerStrip, p.text(w.UsableWidth), measure.Decimal(w.PitchCut, p.Units, 3), measure.Decimal(w.WasteCut, p.Units, 2)))
	}
	for _, t := range p.Tumblers {
		text := fmt.Sprintf("Tumblers: line %s of a wedge rule on the edge of strips of %s cut; the wide edge is then cut %s, the narrow one %s.",
			p.text(t.LineCut), p.text(t.StripCut), measure.Decimal(t.WideCut, p.Units, 3), measure.Decimal(t.NarrowCut, p.Units, 3))
		if t.Slim {
			text += " The narrow edge finishes below two seam allowances, and the seams will lie on top of each other."
		}
		say(text)
	}
	return list
}

// stripSet is one strip set.
func (p cutPage) stripSet(n int) section {
	set := &p.Sets[n]
	s := section{heading: "Strip set " + p.SetName(n)}
	s.rows = [][]string{{"strip", "cut", "finished"}}
	for _, b := range set.Bands {
		s.rows = append(s.rows, []string{p.Fabrics[b.Fabric].Name, p.text(b.WidthCut), p.text(b.WidthFinished)})
	}
	for _, r := range set.Runs {
		text := fmt.Sprintf("%s %s long: %s from each", unbroken(plural(r.Sets, "set")), p.text(r.LengthCut), unbroken(plural(r.Wedges, "wedge")))
		if !set.Alike {
			text += fmt.Sprintf(", %d and %d of the two kinds", (r.Wedges+1)/2, r.Wedges/2)
			text += begun(r)
		}
		s.words = append(s.words, text+".")
	}
	s.words = append(s.words, fmt.Sprintf("Sewn, a set must measure %s from raw edge to raw edge before you cut wedges from it. Press every seam one way, and sew every other one from the other end, so that the set stays straight.", p.text(set.WidthCut)))
	if text := p.setLeft(set); text != "" {
		s.words = append(s.words, text)
	}
	return s
}

// begun says which wedge is cut first where a set gives one more of that kind than of the other.
func begun(r cutting.SetRun) string {
	switch {
	case r.Wedges%2 == 0:
		return ""
	case r.FirstReversed == 0:
		return "; begin with a wedge as the strips stand"
	case r.FirstReversed == r.Sets:
		return "; begin with a wedge the other way round"
	}
	return fmt.Sprintf("; begin %d of the sets with a wedge the other way round, the others with one as the strips stand", r.FirstReversed)
}

// setLeft says what is left of a strip set and what could be made of it.
func (p cutPage) setLeft(set *cutting.StripSet) string {
	left := set.LeftOver[0] + set.LeftOver[1]
	if left == 0 {
		return ""
	}
	if set.Alike {
		return fmt.Sprintf("Left over: %s%s.", plural(left, "wedge"), wholes(left))
	}
	return fmt.Sprintf("Left over: %s as the strips stand and %d the other way round%s.", plural(set.LeftOver[0], "wedge"), set.LeftOver[1], wholes(set.LeftOver[0], set.LeftOver[1]))
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

// fabric is one fabric in the order to cut.
func (p cutPage) fabric(f *cutting.Fabric) section {
	s := section{heading: fmt.Sprintf("%s: %s of cloth, %s between its selvages", f.Name, p.text(f.LengthCut), p.text(f.UsableWidth))}
	for i, b := range f.Blocks {
		s.words = append(s.words, p.block(f, i, &b))
	}
	if len(f.Strips) > 0 {
		s.rows = [][]string{{" strips", "wide", "each cut into", "lines", " end left"}}
	}
	for i := range f.Strips {
		s.rows = append(s.rows, p.strip(&f.Strips[i])...)
	}
	for i := range f.Chains {
		s.notes = append(s.notes, capital(p.ChainWords(&f.Chains[i], p.text)))
	}
	s.notes = append(s.notes, p.bounds(f))
	if len(f.LeftOver) > 0 {
		var parts []string
		for _, l := range f.LeftOver {
			parts = append(parts, fmt.Sprintf("%d × %s by %s", l.Times, measure.Number(l.AcrossCut, p.Units), p.text(l.AlongCut)))
		}
		s.notes = append(s.notes, "Ends worth keeping: "+strings.Join(parts, ", ")+".")
	}
	return s
}

// block is a block of lengthwise pieces in words.
func (p cutPage) block(f *cutting.Fabric, n int, b *cutting.Block) string {
	var parts []string
	for _, c := range b.Columns {
		parts = append(parts, fmt.Sprintf("%s by %s (line %d)", measure.Number(c.WidthCut, p.Units), p.text(c.LengthCut), c.Line+1))
	}
	text := fmt.Sprintf("First cut off %s of the cloth, and from it lengthwise, side by side: %s.", p.text(b.LengthCut), strings.Join(parts, ", "))
	for _, s := range f.Strips {
		if s.InBlock == n {
			return text + fmt.Sprintf(" The strips below that are %s long come from the rest of its width.", p.text(b.LeftWidthCut))
		}
	}
	return text
}

// strip is a strip with what it is cut into, a row each.
func (p cutPage) strip(s *cutting.Strip) [][]string {
	left := ""
	if s.EndLeftCut > 0 {
		left = measure.Decimal(s.EndLeftCut, p.Units, 2)
	}
	wide := p.text(s.WidthCut)
	if s.InBlock >= 0 {
		wide += ", " + p.text(s.LengthCut) + " long"
	}
	rows := [][]string{{fmt.Sprintf(" %d", s.Times), wide, "", "", " " + left}}
	for i := range s.Cuts {
		c := &s.Cuts[i]
		if i > 0 {
			rows = append(rows, []string{"", "", "", "", ""})
		}
		rows[i][2], rows[i][3] = p.CutWords(c), strings.ReplaceAll(lineNumbers(c.Lines), " ", ", ")
	}
	return rows
}

// bounds says how near the plan is to what no plan beats.
func (p cutPage) bounds(f *cutting.Fabric) string {
	strips := plural(f.StripCount, "strip")
	switch {
	case f.LengthBound == f.LengthCut && (f.StripBound == f.StripCount || len(f.Blocks) > 0):
		return fmt.Sprintf("%s; of plans with these pieces, like ones in one row, none takes less cloth.", capital(strips))
	case len(f.Blocks) > 0:
		return fmt.Sprintf("%s; no plan takes less than %s of cloth.", capital(strips), p.text(f.LengthBound))
	case f.StripBound == f.StripCount:
		return fmt.Sprintf("%s; no plan with as little cloth takes fewer, and none less than %s of cloth.", capital(strips), p.text(f.LengthBound))
	}
	return fmt.Sprintf("%s; no plan with as little cloth takes fewer than %d, and none less than %s of cloth.", capital(strips), f.StripBound, p.text(f.LengthBound))
}

func capital(text string) string { return strings.ToUpper(text[:1]) + text[1:] }

package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/diagram"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// fabrics are all fabrics that something is cut from, each in the order to cut.
func (c *cuts) fabrics() []document.Section {
	var list []document.Section
	for i := range c.Fabrics {
		if f := &c.Fabrics[i]; f.IsCut() {
			list = append(list, c.fabric(i))
		}
	}
	return list
}

// fabricTitle is a fabric with its cloth.
func (c *cuts) fabricTitle(fabric int) string {
	f := &c.Fabrics[fabric]
	yardage := fmt.Sprintf("length used %s, usable WOF %s", c.Units.AtLeast(f.LengthCut), c.length(f.UsableWidth))
	switch {
	case f.From == nil || f.From.Used == 0:
		return c.name(fabric) + ": " + yardage
	case f.LengthCut == 0:
		return c.name(fabric) + ": " + precutsNamed(f.From.Used, f.From)
	}
	return c.name(fabric) + ": " + precutsNamed(f.From.Used, f.From) + ", " + yardage
}

// fabric is one fabric in the order to cut: lengthwise pieces, strips, which of them are sewn end to end.
func (c *cuts) fabric(fabric int) document.Section {
	f := &c.Fabrics[fabric]
	s := document.Section{ID: FabricID + number(fabric+1), Title: c.fabricTitle(fabric), Depth: document.Detail, Swatches: c.plans.swatch(f.Index)}
	s.About.Faces = c.plans.FacesByFabric()[f.Index]
	s.Blocks = append(s.Blocks, document.Figure{Draw: func() *diagram.Figure { return c.fabricMap(fabric) }, Marks: c.supplied(), About: s.About,
		Caption: c.mapCaption(c.name(fabric))})
	for i := range f.Blocks {
		p := para("%s", c.blockWords(f, i))
		p.About = c.patches(columnLines(&f.Blocks[i]))
		s.Blocks = append(s.Blocks, p)
	}
	if t := c.stripTable(f); len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	s.Blocks = append(s.Blocks, c.chains(f)...)
	s.Blocks = append(s.Blocks, c.fromPrint(f)...)
	s.Blocks = append(s.Blocks, c.eightAlike(f)...)
	return s
}

// unitsName is what a bare number counts.
func (c *cuts) unitsName() string {
	if c.Units == measure.Centimetres {
		return "centimeters"
	}
	return "inches"
}

func columnLines(b *cutting.Block) []int {
	var lines []int
	for _, column := range b.Columns {
		lines = append(lines, column.Line)
	}
	return lines
}

// blockWords says what is cut along the length of fabric from a fabric's block number n.
func (c *cuts) blockWords(f *cutting.Fabric, n int) string {
	b := &f.Blocks[n]
	var parts []string
	for i := 0; i < len(b.Columns); {
		end := i
		for end < len(b.Columns) && b.Columns[end] == b.Columns[i] {
			end++
		}
		parts = append(parts, c.columnWords(&b.Columns[i], end-i))
		i = end
	}
	cut := "First cut a length of " + c.Units.AtLeast(b.LengthCut) + ". From it cut"
	if b.Times > 1 {
		cut = fmt.Sprintf("First cut %d lengths of %s. From each cut", b.Times, c.Units.AtLeast(b.LengthCut))
	}
	list := measure.List(parts)
	if slices.ContainsFunc(parts, func(part string) bool { return strings.Contains(part, ",") }) {
		list = strings.Join(parts, "; ")
	}
	text := fmt.Sprintf("%s, side by side along the length of fabric: %s.", cut, list)
	if slices.ContainsFunc(f.Strips, func(s cutting.Strip) bool { return s.InBlock == n }) {
		text += fmt.Sprintf(" Cut the %s strips below from the rest of its width.", c.length(b.LeftWidthCut))
	}
	return text
}

// columnWords are so many like strips along the length of fabric, and what is cut from each.
func (c *cuts) columnWords(column *cutting.Column, count int) string {
	line := &c.Lines[column.Line]
	if line.AlongSelvage {
		cut := c.CutOf(column)
		return fmt.Sprintf("%s %s wide, %ssubcut into %s (line %d)", measure.Count(count, "strip"), c.length(column.WidthCut), singular(count, "", "each "),
			c.cutWords(&cut, &cutting.Strip{WidthCut: column.WidthCut}), column.Line+1)
	}
	return fmt.Sprintf("%s of %s (line %d)", c.plans.countedPieces(count, line), c.size(column.WidthCut, column.LengthCut), column.Line+1)
}

// LinesHead is the head of the column with the lines of the plan that something supplies.
const LinesHead = "lines"

// stripTable is a fabric's strips, a row for each stretch that is cut into like pieces.
func (c *cuts) stripTable(f *cutting.Fabric) document.Table {
	t := document.Table{Columns: []document.Column{{Title: "strips", Kind: document.Counts, BySize: true}, {Title: "wide"}, {Title: "subcut each into"}, {Title: LinesHead}, {Title: "leftover", Kind: document.Lengths}}}
	strips := f.AsCut()
	for i := range strips {
		s := &strips[i]
		times, wide, left := number(s.Times), c.length(s.WidthCut), c.endLeft(s)
		if s.OnEnd >= 0 {
			wide += ", " + c.onEnd(f, s)
		}
		if s.OnPrint {
			wide += ", between those on the print"
		}
		if s.OnSheet >= 0 {
			wide += ", " + onPrecuts(f, s)
		}
		if s.InBlock >= 0 {
			wide += ", " + c.length(s.LengthCut) + " long"
		}
		for n := range s.Cuts {
			cut := &s.Cuts[n]
			t.Rows = append(t.Rows, document.Row{Cells: cells(times, wide, c.cutWords(cut, s), lineNumbers(cut.Lines, ", "), left), About: c.patches(cut.Lines)})
			times, wide, left = "", "", ""
		}
	}
	return t
}

// onEnd says of a strip that lies on the end of a wider one on which.
func (c *cuts) onEnd(f *cutting.Fabric, s *cutting.Strip) string {
	return "from the end of a " + c.length(f.Ends[s.OnEnd].WidthCut) + " strip"
}

// endLeft is how much of a strip's length is left at its end, no more than there is; "" for nothing.
func (c *cuts) endLeft(s *cutting.Strip) string {
	if s.EndLeftCut == 0 {
		return ""
	}
	return c.Units.AtMost(s.EndLeftCut)
}

// cutWords says what a stretch of a strip is cut into.
func (c *cuts) cutWords(cut *cutting.Cut, s *cutting.Strip) string {
	narrower := ""
	if cut.AcrossCut < s.WidthCut {
		narrower = ", trimmed to " + c.length(cut.AcrossCut) + " wide"
	}
	switch cut.Use {
	case cutting.ForSet:
		return c.longStrips(cut, s, "for "+c.setName(cut.Set, false)) + narrower
	case cutting.ForBinding:
		return c.longStrips(cut, s, "for the binding") + narrower
	case cutting.ForJoining:
		return c.longStrips(cut, s, "to be joined for "+c.plans.theEdging(&c.Lines[cut.Lines[0]])) + narrower
	}
	if cut.Use == cutting.ForEnd {
		return "leave the end whole for narrower strips"
	}
	line := &c.Lines[cut.Lines[0]]
	switch line.Piece.Method {
	case cutting.Nested:
		return c.plans.countedPieces(cut.Units, line) + " (" + c.Units.AtLeast(cut.AlongCut) + " of strip)" + narrower
	case cutting.OnceOnDiagonal:
		return c.squares(cut, "cut once on the diagonal for "+c.plans.piecesName(line))
	case cutting.TwiceOnDiagonal:
		return c.squares(cut, "cut twice on the diagonal for "+c.plans.piecesName(line))
	case cutting.EndPairs:
		return measure.Count(cut.Units, "rectangle") + " of " + c.size(cut.AcrossCut, cut.AlongCut) + singular(cut.Units, ", ", ", each ") + "cut in two for " + c.plans.piecesName(line) + rowWords(cut)
	}
	if cut.AcrossCut == cut.AlongCut {
		if pieces := c.plans.piecesName(line); pieces != "squares" {
			return c.squares(cut, "for "+pieces)
		}
		return c.squares(cut, "")
	}
	return c.plans.countedPieces(cut.Units, line) + ", " + c.size(cut.AcrossCut, cut.AlongCut) + rowWords(cut)
}

// longStrips are strips of one length for something; a strip that is used in its whole length is not cut.
func (c *cuts) longStrips(cut *cutting.Cut, s *cutting.Strip, use string) string {
	if cut.Units == 1 && cut.Rows < 2 && s.InBlock < 0 && cut.AlongCut == s.LengthCut {
		return "leave whole " + use
	}
	return fmt.Sprintf("%s %s, %s long%s", measure.Count(cut.Units, "strip"), use, c.Units.AtLeast(cut.AlongCut), rowWords(cut))
}

// squares are squares and what is done with each, "" for nothing.
func (c *cuts) squares(cut *cutting.Cut, then string) string {
	text := measure.Count(cut.Units, "square") + " of " + c.length(cut.AlongCut)
	if strings.HasPrefix(then, "cut ") {
		text += singular(cut.Units, ", ", ", each ") + then
	} else if then != "" {
		text += " " + then
	}
	return text + rowWords(cut)
}

// rowWords says that a stretch of strip is cut in several rows.
func rowWords(cut *cutting.Cut) string {
	if cut.Rows < 2 {
		return ""
	}
	return fmt.Sprintf(", in %d rows", cut.Rows)
}

// chains says which strips are sewn end to end, and what is cut from each long strip.
func (c *cuts) chains(f *cutting.Fabric) []document.Block {
	var l document.List
	for i := range f.Chains {
		chain := &f.Chains[i]
		var lines []int
		for _, s := range chain.Pieces {
			lines = append(lines, s.Line)
		}
		it := item(capital(c.chainWords(chain)))
		it.About = c.patches(lines)
		l.Items = append(l.Items, it)
	}
	if len(l.Items) == 0 {
		return nil
	}
	return []document.Block{para("Join the strips as follows:"), l}
}

// chainWords says which strips are sewn end to end and what is cut from them, and what is tight about it.
func (c *cuts) chainWords(chain *cutting.Chain) string {
	var strips, pieces []string
	for _, s := range chain.Strips {
		strips = append(strips, measure.Count(s.Count, "strip")+" "+c.length(s.LengthCut)+" long")
	}
	for _, s := range chain.Pieces {
		pieces = append(pieces, fmt.Sprintf("%d of %s", s.Count, c.chainLength(&c.Lines[s.Line])))
	}
	sewn, cut := "", ""
	if len(strips) > 1 {
		sewn = " in this order"
	}
	if len(pieces) > 1 {
		cut = ", in this order,"
	}
	words := fmt.Sprintf("%s: join %s end to end%s; from the long strip cut%s %s", c.chainTitle(chain), strings.Join(strips, " and "), sewn, cut, strings.Join(pieces, " and "))
	if chain.Times > 1 {
		words += fmt.Sprintf("; make %d long strips like this", chain.Times)
	}
	words += "."
	switch {
	case chain.Scant && chain.SpareCut == 0:
		words += " There is no leftover: sew accurately, and measure before you cut."
	case chain.Scant:
		words += " Only " + c.length(chain.SpareCut) + " is left: sew accurately, and measure before you cut."
	}
	if chain.Short {
		words += " One of these lengths includes a piece only " + c.length(chain.LeastCut) + " long; no other order of the strips makes it longer."
	}
	return words
}

// chainTitle is what a chain is for: a border, by its sides where the chain is for some of them alone.
func (c *cuts) chainTitle(chain *cutting.Chain) string {
	title := c.plans.edgingName(&c.Lines[chain.Pieces[0].Line])
	if sides := borderSides(c.plans.Top, &c.Lines[chain.Pieces[0].Line]); len(chain.Pieces) == 1 && sides != "" {
		title += ", " + sides
	}
	return title
}

// chainLength is how long a piece is cut from a long strip: a border's longer than it needs, to be cut by the quilt's measure.
func (c *cuts) chainLength(line *cutting.Line) string {
	if c.Longer > 0 && line.Border >= 0 {
		return "at least " + c.Units.AtLeast(line.Piece.AlongCut+c.Longer)
	}
	return c.length(line.Piece.AlongCut)
}

// mostInCaption is how many fabrics a caption names; where more are cut alike, the heading has them all.
const mostInCaption = 8

// mapCaption is the caption of the cutting map of some fabrics that are cut alike.
func (c *cuts) mapCaption(names ...string) document.Text {
	fabrics := measure.List(names)
	if len(names) > mostInCaption {
		fabrics = names[0] + " and the " + measure.Count(len(names)-1, "fabric") + " cut like it"
	}
	return document.Plain("Cutting map for " + fabrics + ". Selvages are at the left and right; numbers without a unit are " + c.unitsName() + ".")
}

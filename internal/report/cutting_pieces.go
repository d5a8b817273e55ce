package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/document"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/cutting"
)

// pieceNoun is what a line's piece is called, and what stands behind its plural.
func (p *Plans) pieceNoun(line *cutting.Line) (noun, of string) {
	piece := &line.Piece
	edging, only := piece.Shape.Description().Edging, len(p.Top.CutFacts.Borders) == 1
	switch {
	case edging && line.Border >= 0 && only:
		return "border strip", ""
	case line.Border >= 0 && only:
		return p.fromMotif(line) + "border corner square", ""
	case edging && line.Border >= 0:
		return "strip", " for " + p.edgingName(line)
	case line.Border >= 0:
		return p.fromMotif(line) + "corner square", " for " + p.edgingName(line)
	case edging:
		return "sash", ""
	case piece.Role == postsRole:
		return p.fromMotif(line) + "post", ""
	case p.motifOf(line) != "" && piece.Hand != cutting.Either:
		return handWord(piece.Hand) + " " + p.motifOf(line) + " " + piece.Shape.String(), ""
	case p.motifOf(line) != "":
		return p.motifOf(line) + " " + piece.Shape.String(), ""
	case piece.Hand != cutting.Either:
		return handWord(piece.Hand) + " " + piece.Shape.String(), ""
	}
	return piece.Shape.String(), ""
}

// fromMotif goes before the name of pieces that are cut from a motif.
func (p *Plans) fromMotif(line *cutting.Line) string {
	if motif := p.motifOf(line); motif != "" {
		return motif + " "
	}
	return ""
}

// postsRole is the role of the squares where sashes meet, in the top.
const postsRole = "posts"

// pieceName is one of a line's pieces; piecesName are several, counted so many with their number.
func (p *Plans) pieceName(line *cutting.Line) string {
	noun, of := p.pieceNoun(line)
	return noun + of
}

// useName is what a line's pieces are for, in short: an edging, or pieces of a shape whatever their hand.
func (p *Plans) useName(line *cutting.Line) string {
	switch noun, _ := p.pieceNoun(line); {
	case line.Border >= 0:
		return p.edgingName(line)
	case line.Piece.Hand != cutting.Either:
		return measure.Plural(line.Piece.Shape.String())
	default:
		return measure.Plural(noun)
	}
}

func (p *Plans) piecesName(line *cutting.Line) string {
	noun, of := p.pieceNoun(line)
	return measure.Plural(noun) + of
}

func (p *Plans) countedPieces(n int, line *cutting.Line) string {
	noun, of := p.pieceNoun(line)
	return measure.Count(n, noun) + of
}

// edgingName is what a strip is for: "border 2", "sashes".
func (p *Plans) edgingName(line *cutting.Line) string {
	if line.Border >= 0 {
		return p.borderName(line.Border + 1)
	}
	return "sashes"
}

// theEdging is the same in a sentence: "border 2", "sashes", and "the border" where there is no other.
func (p *Plans) theEdging(line *cutting.Line) string {
	if name := p.edgingName(line); name != "border" {
		return name
	}
	return "the border"
}

// borderName is what the n-th border is called, from 1: "border 2", and "border" where there is no other.
func (p *Plans) borderName(n int) string { return borderName(n, len(p.Top.CutFacts.Borders)) }

func borderName(n, of int) string {
	if of == 1 {
		return "border"
	}
	return "border " + number(n)
}

func handWord(h cutting.Hand) string {
	if h == cutting.Left {
		return "left"
	}
	return "right"
}

// methodName is how pieces come from what is cut off a strip, in a few words.
func methodName(m cutting.Method) string {
	return [...]string{
		cutting.Whole: "whole", cutting.OnceOnDiagonal: "cut once on the diagonal", cutting.TwiceOnDiagonal: "cut twice on the diagonal",
		cutting.Nested: "ruler rotated 180 degrees after each cut", cutting.EndPairs: "cut in two at an angle", cutting.Joined: "joined end to end", cutting.Lengthwise: "cut along the length of fabric", cutting.FussyCut: "fussy-cut",
	}[m]
}

// cloth is the name of what a line is cut from: a fabric, or a strip set, and whether its wedges are turned.
func (c *cuts) cloth(line *cutting.Line) string {
	if line.Fabric >= 0 {
		return c.name(line.Fabric)
	}
	return c.setName(line.Set, line.Reversed)
}

// colors are those of what a line is cut from.
func (c *cuts) colors(line *cutting.Line) []document.Swatch {
	if line.Fabric >= 0 {
		return c.plans.swatch(c.Fabrics[line.Fabric].Index)
	}
	var list []document.Swatch
	for _, b := range c.Sets[line.Set].Bands {
		list = append(list, c.plans.swatch(c.Fabrics[b.Fabric].Index)...)
	}
	if line.Reversed {
		slices.Reverse(list)
	}
	return list
}

// PieceSizes are the sizes of a line of a plan, finished and cut, as the table of pieces has them.
func PieceSizes(plan *cutting.Plan, line *cutting.Line) (finished, cut string) {
	c := &cuts{plan, &Plans{}}
	return c.finished(&line.Piece), c.cutSize(&line.Piece)
}

// finished is a piece's finished size: of wedges and tumblers the height, of triangles the short edges, of kites the long edges,
// of background pieces the edges of the square corner.
func (c *cuts) finished(piece *cutting.Piece) string {
	switch edges := piece.EdgesFinished; {
	case len(edges) > 1:
		return c.size(edges[0], edges[1])
	case len(edges) > 0:
		return c.length(edges[0])
	case piece.LengthFinished > 0:
		return c.size(piece.SideFinished, piece.LengthFinished)
	}
	return c.length(piece.SideFinished)
}

// cutSize is what is cut for a piece.
func (c *cuts) cutSize(piece *cutting.Piece) string {
	size, both := c.length(piece.AlongCut), c.size(piece.AcrossCut, piece.AlongCut)
	switch piece.Method {
	case cutting.Nested:
		return "strips of " + c.length(piece.AcrossCut)
	case cutting.OnceOnDiagonal:
		return "squares of " + size + ", cut once on the diagonal"
	case cutting.TwiceOnDiagonal:
		return "squares of " + size + ", cut twice on the diagonal"
	case cutting.EndPairs:
		return both + ", cut in two"
	case cutting.Joined:
		return both + ", joined"
	case cutting.Lengthwise:
		return both + ", lengthwise"
	case cutting.FussyCut:
		return "fussy-cut by template"
	}
	if piece.AcrossCut == piece.AlongCut {
		return "squares of " + size
	}
	return both
}

// trim is what is trimmed after sewing, "" for nothing that can be seen.
func (c *cuts) trim(piece *cutting.Piece) string {
	if measure.Nearest(piece.TrimCut, c.Units.Mark()) == 0 || c.Longer > 0 && piece.Shape.Description().Edging { // which is cut to measure
		return ""
	}
	return c.length(piece.TrimCut)
}

// hands says how many pieces are left-hand ones and right-hand ones, "" where it does not matter.
func hands(line *cutting.Line) string {
	if line.Left+line.Right == 0 || line.Piece.Hand != cutting.Either {
		return ""
	}
	return fmt.Sprintf("%d + %d", line.Left, line.Right)
}

// lineNumbers are lines as people count them.
func lineNumbers(list []int, between string) string {
	words := make([]string, len(list))
	for i, n := range list {
		words[i] = number(n + 1)
	}
	return strings.Join(words, between)
}

// ClothHead is the head of the column that says what pieces are cut from.
const ClothHead = "from"

// pieces is every distinct piece with its sizes.
func (c *cuts) pieces() document.Section {
	t := document.Table{Columns: []document.Column{
		{Title: "line", Kind: document.Counts}, {Title: "piece"}, {Title: ClothHead, Aside: true}, {Title: "finished"}, {Title: "cut"},
		{Title: "to trim", Kind: document.Lengths, Aside: true}, {Title: OnHandHead, Kind: document.Counts, Aside: true}, {Title: "pieces", Kind: document.Counts, BySize: true}, {Title: "left/right", Aside: true}}}
	for i := range c.Lines {
		line := &c.Lines[i]
		r := document.Row{About: document.About{Patches: line.Patches}, Cells: cells(number(i+1), c.plans.pieceName(line), "", c.finished(&line.Piece),
			c.cutSize(&line.Piece), c.trim(&line.Piece), onHandCount(line), number(line.Pieces), hands(line))}
		r.Cells[2] = c.clothCell(line)
		t.Rows = append(t.Rows, r)
	}
	return document.Section{ID: PiecesID, Title: "Pieces, finished and cut sizes", Depth: document.Detail, Blocks: append([]document.Block{t.Filled()}, bullets(slices.DeleteFunc([]string{
		"Finished size excludes seam allowances. " + c.measuredAs() + c.Units.AboutMeans() + " Cut size includes " + c.length(c.Seam) + " seam allowances." + c.trimmedAfter() + " The cutting lists refer to the line numbers.", c.measuredFirst(),
	}, func(s string) bool { return s == "" })...)...)}
}

// clothCell is what a line is cut from, with its colors; the letter of a fabric stands in its color.
func (c *cuts) clothCell(line *cutting.Line) document.Cell {
	cloth := cell(c.cloth(line))
	if line.Fabric >= 0 {
		cloth = cell(c.Fabrics[line.Fabric].Name)
	}
	cloth.Swatches = c.colors(line)
	return cloth
}

// PiecesInShort is the table of pieces for pages on which few letters have room: what pieces are cut from stands above them, and
// numbers, hands and what is trimmed stand with what they are of.
func PiecesInShort(p *Plans) document.Table {
	c := newCuts(p)
	t := table(document.Column{Title: "Line", Kind: document.Counts}, words("Pieces"), words("Finished"), words("Cut"))
	last := ""
	for i := range c.Lines {
		line := &c.Lines[i]
		if cloth := c.cloth(line); i == 0 || cloth != last {
			t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{c.clothCell(line)}})
			last = cloth
		}
		pieces, cut := p.countedPieces(line.Pieces, line), c.cutSize(&line.Piece)
		if line.OnHand > 0 {
			pieces += fmt.Sprintf(", %d of them on hand", line.OnHand)
		}
		if hands(line) != "" {
			pieces += fmt.Sprintf(", %d left and %d right", line.Left, line.Right)
		}
		if trim := c.trim(&line.Piece); trim != "" {
			cut += " (trim " + trim + ")"
		}
		t.Rows = append(t.Rows, row(number(i+1), pieces, c.finished(&line.Piece), cut))
	}
	return t
}

// measuredAs says which measures the finished sizes of the quilt's shapes are.
func (c *cuts) measuredAs() string {
	var order []string
	names := map[string][]string{}
	for _, shape := range blocks.Shapes() {
		d := shape.Description()
		if d.FinishedAs == "" || !c.Cuts(shape) {
			continue
		}
		if names[d.FinishedAs] == nil {
			order = append(order, d.FinishedAs)
		}
		names[d.FinishedAs] = append(names[d.FinishedAs], measure.Plural(shape.String()))
	}
	text := ""
	for _, measured := range order {
		text += capital(measure.List(names[measured])) + ": " + measured + ". "
	}
	return text
}

// trimmedAfter says where the table tells how much is trimmed, "" where nothing is.
func (c *cuts) trimmedAfter() string {
	if !slices.ContainsFunc(c.Lines, func(l cutting.Line) bool { return c.trim(&l.Piece) != "" }) {
		return ""
	}
	return " Oversize pieces are trimmed after sewing; the table says how much."
}

// measuredFirst says how much longer than in the table a border's strips are cut, "" where they are not.
func (c *cuts) measuredFirst() string {
	if c.Longer == 0 || !slices.ContainsFunc(c.Lines, func(l cutting.Line) bool { return l.Border >= 0 && l.Piece.Shape.Description().Edging }) {
		return ""
	}
	return "Border strips: the table has their calculated lengths. Each is cut at least " + c.length(c.Longer) + " longer; trim it to length when you have measured your quilt."
}

// howTo explains each way of cutting that the quilt needs, and no other, and says what strips give.
func (c *cuts) howTo() document.Section {
	var l document.List
	said := ""
	say := func(title, text string) {
		if strings.Contains(said, rulerMeans) { // explained where it is named first
			text = strings.ReplaceAll(text, rulerMeans, "")
		}
		said += text
		l.Items = append(l.Items, document.Item{Text: document.Text{{Text: title + ".", Bold: true}, {Text: " " + text}}})
	}
	for _, shape := range blocks.Shapes() {
		if d := shape.Description(); d.CutTitle != "" && slices.ContainsFunc(c.Lines, func(l cutting.Line) bool {
			return l.Piece.Shape == shape && l.Piece.Method != cutting.FussyCut
		}) {
			say(d.CutTitle, d.CutWords)
		}
	}
	for _, way := range waysToCut() {
		if slices.ContainsFunc(c.Lines, func(l cutting.Line) bool {
			return l.Piece.Method == way.method && (way.method == cutting.FussyCut || l.Piece.Shape.Description().CutTitle == "")
		}) {
			text := way.text
			if way.method == cutting.Joined && c.Longer > 0 {
				text = "Join whole strips end to end with diagonal or straight seams (there is enough fabric for either) and press the seams open. Then cut the lengths listed from the long strip."
			}
			say(way.title, text)
		}
	}
	s := document.Section{ID: HowToCutID, Title: "How to cut the pieces", Depth: document.Detail}
	return c.slim(c.endTable(c.tumblerTable(c.wedgeTable(with(s, l)))))
}

// rulerMeans explains a wedge ruler behind its name.
const rulerMeans = " (a 45-degree ruler)"

// wayToCut is what there is to say of a method whatever the shape.
type wayToCut struct {
	method      cutting.Method
	title, text string
}

func waysToCut() []wayToCut {
	return []wayToCut{
		{cutting.OnceOnDiagonal, "Squares cut once on the diagonal", "Cut each square from corner to corner to make two triangles with the straight grain on the short edges. The long edges are bias edges: handle them gently."},
		{cutting.TwiceOnDiagonal, "Squares cut twice on the diagonal", "Cut each square from corner to corner both ways, without moving it, to make four triangles with the straight grain on the long edges. The short edges are bias edges and lie on the outside of the block."},
		{cutting.Joined, "Long strips", "Join the strips end to end, press the seams open, and cut the lengths listed from the long strip."},
		{cutting.Lengthwise, "Strips along the length of fabric", "Cut these first, each in one piece, parallel to the selvage."},
		{cutting.FussyCut, "Fussy-cut pieces", "Copy the template onto clear plastic with its seam lines, its center mark and its lines for the repeat. Cut strips lined up on the print as the cutting map shows. Lay the template on each strip, right sides up, its marks on the same place of the print every time, and cut around it. Never turn the template or the fabric over. Pieces cut alike make one figure around a center."},
	}
}

// wedgeTable adds what a strip gives.
func (c *cuts) wedgeTable(s document.Section) document.Section {
	t := document.Table{Caption: document.Plain("Wedges from one strip"), Columns: []document.Column{
		{Title: "strip, cut", Kind: document.Lengths}, {Title: "wide end", Kind: document.Lengths}, {Title: "blunt tip", Kind: document.Lengths},
		{Title: "length of strip", Kind: document.Lengths}, {Title: "wedges", Kind: document.Counts}}}
	for _, w := range c.Wedges {
		t.Rows = withRow(t.Rows, c.length(w.StripCut), c.length(w.BaseCut), c.length(w.TipCut), c.length(w.UsableWidth), number(w.PerStrip))
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	return s
}

func (c *cuts) tumblerTable(s document.Section) document.Section {
	t := document.Table{Caption: document.Plain("Tumblers"), Columns: []document.Column{
		{Title: "strip, cut", Kind: document.Lengths}, {Title: "ruler line", Kind: document.Lengths}, {Title: "wide side", Kind: document.Lengths}, {Title: "narrow side", Kind: document.Lengths}}}
	for _, w := range c.Tumblers {
		t.Rows = withRow(t.Rows, c.length(w.StripCut), c.length(w.LineCut), c.length(w.WideCut), c.length(w.NarrowCut))
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	return s
}

// endTable adds where the rectangles of end pieces are cut in two.
func (c *cuts) endTable(s document.Section) document.Section {
	t := document.Table{Caption: document.Plain("End pieces"), Columns: []document.Column{
		{Title: "rectangle, cut"}, {Title: "first mark", Kind: document.Lengths}, {Title: "second mark", Kind: document.Lengths}, {Title: "ruler line", Kind: document.Lengths}}}
	for i := range c.Lines {
		if p := &c.Lines[i].Piece; p.Slanted != nil {
			t.Rows = withRow(t.Rows, c.size(p.AcrossCut, p.AlongCut), c.length(p.Slanted.WideMark), c.length(p.Slanted.NarrowMark), c.length(p.Slanted.RulerLine))
		}
	}
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
	return s
}

// slim warns of tumblers whose narrow edge all but vanishes.
func (c *cuts) slim(s document.Section) document.Section {
	if slices.ContainsFunc(c.Tumblers, func(t cutting.Tumbler) bool { return t.Slim }) {
		s.Blocks = append(s.Blocks, para("The narrow edge of these tumblers finishes at less than two seam allowances, so their seams overlap."))
	}
	return s
}

// withRow adds a row of texts to those of a table, unless it reads as one of them does.
func withRow(rows []document.Row, texts ...string) []document.Row {
	row := document.Row{Cells: cells(texts...)}
	like := func(a, b document.Cell) bool { return a.Text.String() == b.Text.String() }
	if slices.ContainsFunc(rows, func(o document.Row) bool { return slices.EqualFunc(o.Cells, row.Cells, like) }) {
		return rows
	}
	return append(rows, row)
}

// betweenMarks are the sizes that must be exact and that no line of a ruler shows.
func (c *cuts) betweenMarks() document.Section {
	s := document.Section{ID: BetweenMarksID, Title: "Sizes between ruler marks", Depth: document.Detail}
	var order []cutting.Ruler
	names := map[measure.NM][]string{}
	c.offMarks(func(what string, r cutting.Ruler) {
		if names[r.ExactCut] == nil {
			order = append(order, r)
		}
		if !slices.Contains(names[r.ExactCut], what) {
			names[r.ExactCut] = append(names[r.ExactCut], what)
		}
	})
	var list []string
	for _, r := range order {
		list = append(list, capital(measure.List(names[r.ExactCut]))+c.besideMark(r))
	}
	if len(list) > 0 {
		s.Blocks = append([]document.Block{para("Cut these sizes exactly: mark them on the ruler with tape, or use the template if there is one.")}, bullets(list...)...)
	}
	return s
}

// besideMark says where a size that must be exact lies on a ruler.
func (c *cuts) besideMark(r cutting.Ruler) string {
	exact := ": exactly " + c.Units.Exact(r.ExactCut) + " cut, "
	near := c.Units.Mark() / 8 // nearer than a line is thick
	switch {
	case r.AboveCut-r.ExactCut <= near:
		return exact + "a thread under the " + c.length(r.AboveCut) + " mark."
	case r.ExactCut-r.BelowCut <= near:
		return exact + "a thread over the " + c.length(r.BelowCut) + " mark."
	}
	return exact + "between the " + c.length(r.BelowCut) + " and " + c.length(r.AboveCut) + " marks."
}

// offMarks hands on each use of a size that must be exact and is on no line of a ruler.
func (c *cuts) offMarks(say func(what string, r cutting.Ruler)) {
	add := func(what string, r cutting.Ruler) {
		if !r.OnMark {
			say(what, r)
		}
	}
	for i := range c.Lines {
		for _, r := range c.Lines[i].Piece.OnRuler {
			add(r.What, r)
		}
	}
	for i := range c.Sets {
		for _, b := range c.Sets[i].Bands {
			add(c.name(b.Fabric)+" in "+c.setName(i, false), b.OnRuler)
		}
	}
}

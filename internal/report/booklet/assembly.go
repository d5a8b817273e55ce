package booklet

import (
	"slices"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/sewing"
)

// assemblyPart is how the blocks become the top.
func (b *book) assemblyPart() {
	a := &b.Sewing.Assembly
	b.part("Putting the top together", false)
	if len(a.Stages) == 0 {
		b.add(para("The top is one piece: there is nothing to sew together."))
		return
	}
	b.courses()
	for i := range a.Stages {
		switch s := &a.Stages[i]; s.Sort {
		case sewing.LinesStage:
			b.joinedCourses(s)
		case sewing.BorderStage:
			b.border(s)
		}
	}
	for n := range a.Loose {
		b.add(para("%s", b.words().LooseLine(n)))
	}
	b.nests()
	b.assemblyPictures()
}

// assemblyPictures are the pictures of the top as it is sewn together.
func (b *book) assemblyPictures() {
	list := b.topPictures()
	var refs []string
	for i := range list {
		refs = append(refs, see("top "+numeral(i)))
	}
	if len(refs) > 0 {
		b.add(para("%s %s the order.", listed(refs), verb(len(refs), "shows", "show")))
	}
	for i, f := range list {
		width := b.stepWidth()
		if i == 0 { // with every block and its label
			width = b.wholeWidth()
		}
		b.add(document.Figure{Of: *f, Width: width, Caption: caption("top "+numeral(i), sentence(f.Title))})
	}
}

// course is "row", or "column" where the blocks are sewn into columns first.
func (b *book) course() string {
	if b.Sewing.Assembly.ByColumns {
		return "column"
	}
	return "row"
}

// courses is the rows, or columns, with the sashes between them, and which way their seams are pressed.
func (b *book) courses() {
	t := document.Table{Named: true, Columns: []document.Column{{Title: capital(plural(b.course()))}, {Title: "Unfinished"}}}
	sashes := false
	for _, row := range b.alikeCourses() {
		name := capital(numbersText(b.course(), row.numbers))
		if row.stage.Number == 0 {
			sashes = true
			name = capital(count(len(row.numbers), "sash")) + b.withPosts(len(row.numbers))
		}
		t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell(name), cell(b.unitSize(row.stage.Size))}})
	}
	if len(t.Rows) == 0 {
		return
	}
	text := b.coursesText()
	if b.Top.CutFacts.Sash != nil {
		text += " A sash goes between each block and the next" + b.sashesAround() + "."
	}
	if sashes {
		text += " The long sashes between the " + plural(b.course()) + " are sewn in the same way."
	}
	b.keep(heading(1, capital(plural(b.course()))), para("%s", text), t)
	var ways []document.Item
	for _, way := range b.words().LineWays() {
		ways = append(ways, item(document.Plain(way.Text)))
	}
	if len(ways) > 0 {
		b.add(document.List{Items: ways})
	}
}

// withPosts says that posts are sewn between the pieces of long sashes, where there are any.
func (b *book) withPosts(sashes int) string {
	if b.Top.CutFacts.Sash == nil || b.Top.CutFacts.Sash.Corners < 0 {
		return ""
	}
	return " with " + verb(sashes, "its", "their") + " posts"
}

// coursesText says how the blocks of a row or column are sewn together; columns of tumblers are whole already.
func (b *book) coursesText() string {
	whole := b.wholeColumns()
	sew := "Sew the blocks of each " + b.course() + " together as " + see(layoutKey) + " shows them."
	switch {
	case len(whole) == 0:
		return sew
	case b.noun() == "column":
		return "The columns are whole: their tumblers are sewn one to the next already, with an end piece at each end. Lay them side by side as " + see(layoutKey) + " shows them."
	}
	rest := "Sew the blocks of each other column together as " + see(layoutKey) + " shows them."
	return capital(numbersText("column", whole)) + verb(len(whole), " is", " are") + " of tumblers and whole already. " + rest
}

// sashesAround says that sashes stand at both ends of a row too.
func (b *book) sashesAround() string {
	if !b.Top.CutFacts.Sash.Around {
		return ""
	}
	return ", and one at each end of the " + b.course()
}

// alike is courses that have the same size.
type alike struct {
	numbers []int
	stage   *sewing.Stage
}

// alikeCourses puts courses together that differ in nothing but their number.
func (b *book) alikeCourses() []alike {
	var list []alike
	for i := range b.Sewing.Assembly.Stages {
		s := &b.Sewing.Assembly.Stages[i]
		if s.Sort != sewing.LineStage {
			continue
		}
		at := slices.IndexFunc(list, func(l alike) bool { return l.stage.Size == s.Size && (l.stage.Number > 0) == (s.Number > 0) })
		if at < 0 {
			at = len(list)
			list = append(list, alike{stage: s})
		}
		list[at].numbers = append(list[at].numbers, s.Number)
	}
	return list
}

// joinedCourses is the rows or columns sewn together.
func (b *book) joinedCourses(s *sewing.Stage) {
	b.add(heading(1, "The "+plural(b.course())+" together"))
	ways := b.seamWays(s)
	what := plural(b.course())
	if b.words().SashesLine() != "" {
		what += " and the long sashes between them"
	}
	text := "Sew the " + what + " together in their order with " + count(s.Count, "long seam") + ". Pin at every joint; where seams lie opposite ways they nest."
	switch {
	case len(ways[0]) == 0 && len(ways[1]) == 0:
	case len(ways[1]) == 0:
		text += " Press all of them " + b.longWay(0) + "."
	case len(ways[0]) == 0:
		text += " Press all of them " + b.longWay(1) + "."
	default:
		text += " Press " + numbersText("seam", ways[0]) + " " + b.longWay(0) + " and " + numbersText("seam", ways[1]) + " " + b.longWay(1) + ", counted from the first " + b.course() + "."
	}
	b.add(para("%s The %s together now measure %s unfinished.", text, plural(b.noun()), b.unitSize(s.Size)))
	var edges []document.Item
	for _, edge := range b.words().OutsideLines() {
		edges = append(edges, item(document.Plain(edge.Text)))
	}
	if len(edges) > 0 {
		b.add(document.List{Items: edges})
	}
}

// seamWays are the seams of a stage, from 1, by the way they are pressed: towards the later side, towards the earlier.
func (b *book) seamWays(s *sewing.Stage) (ways [2][]int) {
	for i := range s.Count {
		seam := &b.Sewing.Assembly.Seams[s.First+i]
		way := 1
		if seam.Press {
			way = 0
		}
		ways[way] = append(ways[way], i+1)
	}
	return ways
}

func (b *book) longWay(way int) string {
	if b.Sewing.Assembly.ByColumns {
		return [2]string{"to the right", "to the left"}[way]
	}
	return [2]string{"downwards", "upwards"}[way]
}

// border is one border.
func (b *book) border(s *sewing.Stage) {
	n := s.Number - 1
	edging := &b.Top.CutFacts.Borders[n]
	whole := []document.Block{heading(1, capital(b.borderName(n)))}
	whole = append(whole, para("This border is %s wide finished, of fabric %s. Measure the quilt through its middle before you cut the strips to length: the lengths below are what they should be%s.",
		b.length(edging.Width), b.letters[edging.Fabric], b.roundedUp(n)))
	t := document.Table{Columns: []document.Column{{Title: "Pieces"}, {Title: "Cut"}}}
	plan := b.single()
	for i := range plan.Lines {
		line := &plan.Lines[i]
		if line.Border == n {
			t.Rows = append(t.Rows, document.Row{Cells: []document.Cell{cell(b.counted(line.Pieces, line)), cell(b.size(line.Piece.AcrossCut, line.Piece.AlongCut))}})
		}
	}
	text := "Sew the strips to the two sides first, then those above and below."
	if edging.Corners >= 0 {
		text = "Sew on the strips for the two sides, which are as long as the quilt is high. Sew a corner square to each end of the other two strips, and sew these on above and below."
	}
	b.keep(append(whole, t, para("%s %s The quilt then measures %s unfinished.", text, b.borderWay(s), b.unitSize(s.Size)))...)
	if n == 0 {
		b.addNotes("border")
	}
}

// roundedUp says that lengths of a border's strips are more than the quilt's, where a ruler has no mark for it.
func (b *book) roundedUp(border int) string {
	for i := range b.single().Lines {
		if l := &b.single().Lines[i]; l.Border == border && l.Piece.TrimCut > 0 {
			return ", rounded up to what a ruler shows"
		}
	}
	return ""
}

// borderWay is which way the long seams of a border are pressed.
func (b *book) borderWay(s *sewing.Stage) string {
	_, all := b.words().Inwards()
	inwards := 0
	for _, seam := range all {
		if seam >= s.First && seam < s.First+s.Count {
			inwards++
		}
	}
	switch inwards {
	case 0:
		return "Press the long seams outwards."
	case 4:
		return "Press the long seams inwards, towards the middle of the quilt."
	}
	return "Press the long seams outwards, but " + numeral(inwards) + " of the four inwards, as the arrows in the picture show."
}

// nests says how many joints nest.
func (b *book) nests() {
	p := &b.Sewing.Pressing
	if len(p.Joints) == 0 {
		return
	}
	text := b.words().JointsLine()
	if p.Nests < len(p.Joints) {
		text += " " + b.words().ProofLine() + " At the others press the later seam open, or let the seams lie on each other, and pin with care."
	}
	b.add(para("%s", text))
}

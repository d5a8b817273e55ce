package booklet

import (
	"slices"

	"eighthturn/pages"
	"eighthturn/sewing"
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
		case sewing.CoursesStage:
			b.joinedCourses(s)
		case sewing.BorderStage:
			b.border(s)
		}
	}
	b.nests()
	b.assemblyPictures()
}

// assemblyPictures are the pictures of the top as it is sewn together.
func (b *book) assemblyPictures() {
	list := b.stepPictures(-1, 0)
	var refs []string
	for i := range list {
		refs = append(refs, see("top "+numeral(i)))
	}
	if len(refs) > 0 {
		b.add(para("%s %s the order.", listed(refs), verb(len(refs), "shows", "show")))
	}
	for i, f := range list {
		b.add(pages.Figure{Of: *f, Width: b.stepWidth(), Caption: caption("top "+numeral(i), sentence(f.Title))})
	}
}

// course is "row", or "column" where the blocks are sewn into columns first.
func (b *book) course() string {
	if b.Sewing.Assembly.ByColumns {
		return "column"
	}
	return "row"
}

// courses is the rows, or columns, with the sashes between them.
func (b *book) courses() {
	t := pages.Table{Named: true, Columns: []pages.Column{{Title: capital(plural(b.course()))}, {Title: "Unfinished"}, {Title: "Press the seams"}}}
	var numbers []int
	var last *sewing.Stage
	way := map[int]string{}
	for _, c := range b.Sewing.Pressing.Choices {
		if c.Sort == sewing.CourseChoice {
			way[c.Stage] = b.courseWay(c.Way)
		}
	}
	sashes := false
	for _, row := range b.alikeCourses(way) {
		numbers, last = row.numbers, row.stage
		name := "Sashes"
		if last.Number > 0 {
			name = capital(numbersText(b.course(), numbers))
		} else {
			sashes = true
			name = capital(count(len(numbers), "sash")) + " with " + verb(len(numbers), "its", "their") + " posts"
			if b.Top.Cloth.Sash == nil || b.Top.Cloth.Sash.Corners < 0 {
				name = count(len(numbers), "sash")
			}
		}
		t.Rows = append(t.Rows, pages.Row{Cells: []pages.Cell{cell(name), cell(b.markSize(last.Size)), cell(row.way)}})
	}
	if len(t.Rows) == 0 {
		return
	}
	if !slices.ContainsFunc(t.Rows, func(r pages.Row) bool { return r.Cells[2].Text.String() != "" }) {
		t.Columns = t.Columns[:2]
		for i := range t.Rows {
			t.Rows[i].Cells = t.Rows[i].Cells[:2]
		}
	}
	text := b.coursesText()
	if b.Top.Cloth.Sash != nil {
		text += " A sash goes between each block and the next" + b.sashesAround() + "."
	}
	if sashes {
		text += " The long sashes between the " + plural(b.course()) + " are sewn in the same way."
	}
	b.keep(heading(1, capital(plural(b.course()))), para("%s", text), t)
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
	if !b.Top.Cloth.Sash.Around {
		return ""
	}
	return ", and one at each end of the " + b.course()
}

// alike is courses that have the same size and pressing.
type alike struct {
	numbers []int
	stage   *sewing.Stage
	way     string
}

// alikeCourses puts courses together that differ in nothing but their number.
func (b *book) alikeCourses(way map[int]string) []alike {
	var list []alike
	for i := range b.Sewing.Assembly.Stages {
		s := &b.Sewing.Assembly.Stages[i]
		if s.Sort != sewing.CourseStage {
			continue
		}
		at := -1
		for n := range list {
			if l := &list[n]; l.stage.Size == s.Size && l.way == way[i] && (l.stage.Number > 0) == (s.Number > 0) {
				at = n
			}
		}
		if at < 0 {
			at = len(list)
			list = append(list, alike{stage: s, way: way[i]})
		}
		list[at].numbers = append(list[at].numbers, s.Number)
	}
	return list
}

// courseWay is which way the seams of a row or column are pressed.
func (b *book) courseWay(way int) string {
	if b.Top.Cloth.Sash != nil {
		return [2]string{"towards the sashes", "away from the sashes"}[way&1]
	}
	if b.Sewing.Assembly.ByColumns {
		return [2]string{"downwards", "upwards"}[way&1]
	}
	return [2]string{"to the right", "to the left"}[way&1]
}

// joinedCourses is the rows or columns sewn together.
func (b *book) joinedCourses(s *sewing.Stage) {
	b.add(heading(1, "The "+plural(b.course())+" together"))
	ways := b.seamWays(s)
	text := "Sew the " + plural(b.course()) + " together in their order with " + count(s.Count, "long seam") + ". Pin at every joint, where seams lie opposite ways and nest."
	switch {
	case len(ways[0]) == 0 && len(ways[1]) == 0:
	case len(ways[1]) == 0:
		text += " Press all of them " + b.longWay(0) + "."
	case len(ways[0]) == 0:
		text += " Press all of them " + b.longWay(1) + "."
	default:
		text += " Press " + numbersText("seam", ways[0]) + " " + b.longWay(0) + " and " + numbersText("seam", ways[1]) + " " + b.longWay(1) + ", counted from the first " + b.course() + "."
	}
	b.add(para("%s The %s together now measure %s unfinished.", text, plural(b.noun()), b.markSize(s.Size)))
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
	edging := &b.Top.Cloth.Borders[n]
	b.add(heading(1, capital(b.borderName(n))))
	if n == 0 {
		b.addNotes("border")
	}
	b.add(para("This border is %s wide finished, of fabric %s. Measure the quilt through its middle before you cut the strips to length: the lengths below are what they should be.",
		b.length(edging.Width), b.letters[edging.Fabric]))
	t := pages.Table{Columns: []pages.Column{{Title: "Pieces"}, {Title: "Cut"}}}
	plan := b.single()
	for i := range plan.Lines {
		line := &plan.Lines[i]
		if line.Border == n {
			t.Rows = append(t.Rows, pages.Row{Cells: []pages.Cell{cell(b.counted(line.Pieces, line)), cell(b.size(line.Piece.AcrossCut, line.Piece.AlongCut))}})
		}
	}
	b.add(t)
	text := "Sew the strips to the two sides first, then those above and below."
	if edging.Corners >= 0 {
		text = "Sew on the strips for the two sides, which are as long as the quilt is high. Sew a corner square to each end of the other two strips, and sew these on above and below."
	}
	b.add(para("%s Press the seams towards the border, unless the next one is to nest with them. The quilt then measures %s unfinished.", text, b.markSize(s.Size)))
}

// nests says how many joints nest.
func (b *book) nests() {
	p := &b.Sewing.Pressing
	if len(p.Joints) == 0 {
		return
	}
	text := "Pressed as it says here, " + numeral(p.Nests) + " of the " + count(len(p.Joints), "place") + " where seams butt together nest."
	if p.Nests == len(p.Joints) {
		text = "Pressed as it says here, seams nest at " + verb(len(p.Joints), "the one place", "all "+count(len(p.Joints), "place")) + " where they butt together."
	} else if p.Proved {
		text += " No other way of pressing lets more of them nest; pin the others with care."
	}
	b.add(para("%s", text))
}

package report

import (
	"slices"
	"strconv"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
	"eighthturn/internal/quilt"
)

// Grid is how the blocks of a top lie, in words.
type Grid struct {
	Top  *quilt.Top
	Plan *sewing.Plan
}

// maxLabeled is how many cells across or down a picture can have that tells each block's label.
const maxLabeled = 20

// MaxPlacements is how many fabric placements of a block are listed one by one; more are told as a scrap block.
const MaxPlacements = 12

// Noun is what the top is sewn of: "block", or "column" where all of it is columns of tumblers.
func (g Grid) Noun() string {
	if g.wholeColumns() == g.Top.Columns {
		return "column"
	}
	return "block"
}

// Line is what blocks are sewn into first: "row", or "column".
func (g Grid) Line() string {
	if g.Plan.Assembly.ByColumns {
		return "column"
	}
	return "row"
}

// Columns hands on every column of tumblers.
func (g Grid) Columns(with func(at *sewing.Placed)) {
	for i := range g.Plan.Blocks {
		k := &g.Plan.Blocks[i]
		if !k.Column {
			continue
		}
		for _, v := range k.Variants {
			for n := range v.Cells {
				with(&v.Cells[n])
			}
		}
	}
}

// SomeColumns says whether some of the top is columns of tumblers.
func (g Grid) SomeColumns() bool {
	return slices.ContainsFunc(g.Plan.Blocks, func(b sewing.Block) bool { return b.Column })
}

// wholeColumns is how many columns of the grid are tumblers from end to end.
func (g Grid) wholeColumns() int {
	n := 0
	g.Columns(func(at *sewing.Placed) {
		if at.Cells == g.Top.Rows && g.Plan.Assembly.ByColumns {
			n++
		}
	})
	return n
}

// Across says of how many blocks, or columns of tumblers, the top is.
func (g Grid) Across() string {
	t, whole := g.Top, g.wholeColumns()
	text := measure.Count(t.Columns, "block") + " across and " + measure.Count(t.Rows, "block") + " down"
	switch {
	case whole == 0:
		return text
	case g.Noun() == "column":
		return measure.Count(whole, "column") + " of " + g.tumblers()
	}
	is := " are"
	if whole == 1 {
		is = " is"
	}
	return text + "; " + strconv.Itoa(whole) + " of its columns" + is + " of " + g.tumblers()
}

// tumblers says how many tumblers a column has.
func (g Grid) tumblers() string {
	least, most := len(g.Top.Patches), 0
	g.Columns(func(at *sewing.Placed) {
		n := 0
		for _, p := range at.Patches {
			if g.Top.Patches[p].Shape == blocks.ColumnShape(false) {
				n++
			}
		}
		if at.Cells == g.Top.Rows {
			least, most = min(n, least), max(n, most)
		}
	})
	text := measure.Count(most, "tumbler")
	if least < most {
		text = strconv.Itoa(least) + " to " + text
	}
	return text + ", with an end piece at each end"
}

// Described says what a picture of the whole top shows, for someone who cannot see it.
func (g Grid) Described(shows string) string {
	t := g.Top
	text := shows + ": " + g.Across()
	if n := len(t.CutFacts.Borders); n > 0 {
		text += ", with " + measure.Count(n, "border")
	}
	return text + ", " + t.Units.Size(t.Outer.Width(), t.Outer.Height()) + " finished."
}

// Labeled says whether a picture of the layout has room for each block's label.
func (g Grid) Labeled() bool { return g.Top.Columns <= maxLabeled && g.Top.Rows <= maxLabeled }

// HasNumber says whether the layout tells the fabric placements of a block apart.
func HasNumber(k *sewing.Block) bool {
	return len(k.Variants) > 1 && len(k.Variants) <= MaxPlacements
}

// HasArrow says whether it matters how a block is turned.
func HasArrow(k *sewing.Block) bool { return len(k.Steps) > 0 && !k.Column && !k.Unturned }

// LayoutCaption says how rows and columns of a picture of the layout are counted.
func (g Grid) LayoutCaption() string {
	if g.Noun() == "column" {
		return "Layout of the columns, counted from the left."
	}
	return "Layout of the blocks; rows are counted from the top, columns from the left."
}

// LayoutShown says what a picture of the layout shows, by the picture's name; where it only shows the parts, by the names of
// their pictures too, nil for none.
func (g Grid) LayoutShown(picture string, parts []string) string {
	text, nouns := picture+" shows where each one goes. ", measure.Plural(g.Noun())
	if len(parts) > 0 {
		text = picture + " divides the quilt into parts. " + through(parts) + " show them large, with the numbers of their rows and columns at the edges. "
	}
	if !g.Labeled() {
		return text + "There are too many " + nouns + " to label each one in the picture, so the numbers at the edges count every " + every(max(g.Top.Columns, g.Top.Rows)) + " row and column: follow the colors."
	}
	text += "The letters name the " + nouns
	if slices.ContainsFunc(g.Plan.Blocks, func(k sewing.Block) bool { return HasNumber(&k) }) {
		text += ", the numbers after them the fabric placements"
	}
	text += "."
	if slices.ContainsFunc(g.Plan.Blocks, func(k sewing.Block) bool { return HasArrow(&k) }) {
		text += " Each arrow points to the block's top edge as pictured above: rotate each block to match."
		if slices.ContainsFunc(g.Plan.Blocks, func(k sewing.Block) bool { return len(k.Steps) > 0 && k.Unturned && !k.Column }) {
			text += " Blocks without an arrow look the same whichever way they lie."
		}
	} else if slices.ContainsFunc(g.Plan.Blocks, func(k sewing.Block) bool { return len(k.Steps) > 0 && !k.Column }) {
		text += " These blocks need no turning: they look the same whichever way they lie."
	}
	return text
}

// Every is which rows and columns of a picture are numbered that has no room for all of so many: every tenth, or twentieth, or
// fiftieth, and so on.
func Every(lines int) int {
	const most = 6 // numbers along an edge
	for tenth := 10; ; tenth *= 10 {
		for _, step := range [3]int{1, 2, 5} {
			if step*tenth*most >= lines {
				return step * tenth
			}
		}
	}
}

func every(lines int) string {
	if n := Every(lines); n > 10 {
		return strconv.Itoa(n) + "th"
	}
	return "tenth"
}

// Window is a part of the grid: rows and columns from 0, the ends not included.
type Window struct{ FirstRow, EndRow, FirstColumn, EndColumn int }

// String names the rows and columns as they are counted.
func (w Window) String() string {
	return stretch("row", w.FirstRow, w.EndRow) + ", " + stretch("column", w.FirstColumn, w.EndColumn)
}

func stretch(what string, first, end int) string {
	if end == first+1 {
		return what + " " + strconv.Itoa(end)
	}
	return what + "s " + strconv.Itoa(first+1) + " to " + strconv.Itoa(end)
}

// DividedCaption is the caption of a picture of the whole layout with the parts in which it is shown.
const DividedCaption = "The parts of the layout."

// PartCaption is the caption of a part of the layout.
func PartCaption(number int, w Window) string {
	return "Part " + strconv.Itoa(number) + ": " + w.String() + "."
}

// LayoutInWords is the layout for someone who cannot see it: row by row where there are few.
func (g Grid) LayoutInWords() string {
	t := g.Top
	text := g.Described("The layout")
	if !g.Labeled() {
		return text
	}
	ways := [4]string{"up", "right", "down", "left"}
	names := make([]string, len(t.Cells))
	for i := range g.Plan.Blocks {
		k := &g.Plan.Blocks[i]
		for _, v := range k.Variants {
			for _, at := range v.Cells {
				names[at.Cell] = k.Label
				if HasArrow(k) {
					names[at.Cell] += " " + ways[at.Turns&3]
				}
			}
		}
	}
	named := func(list []string) string {
		return strings.Join(slices.DeleteFunc(list, func(n string) bool { return n == "" }), ", ") + "."
	}
	if g.Noun() == "column" {
		return text + " From left to right: " + named(names)
	}
	for row := range t.Rows {
		text += " Row " + strconv.Itoa(row+1) + ": " + named(slices.Clone(names[row*t.Columns:(row+1)*t.Columns]))
	}
	return text
}

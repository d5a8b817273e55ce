package report

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/measure"
	"eighthturn/internal/plan/sewing"
)

// placed is a text about some cells of the grid.
type placed struct {
	text  string
	cells []int
}

// places is where blocks of one variant go, turn by turn.
func (s *sewer) places(b *sewing.Block, v *sewing.FabricVariant) []placed {
	var list []placed
	for turns := range 4 {
		var cells []int
		for _, at := range v.Cells {
			if at.Turns == turns {
				cells = append(cells, s.cellsOf(at)...)
			}
		}
		if len(cells) == 0 {
			continue
		}
		text := s.turn(b, v, turns)
		n := slices.IndexFunc(list, func(p placed) bool { return p.text == text })
		if n < 0 {
			n = len(list)
			list = append(list, placed{text: text})
		}
		list[n].cells = append(list[n].cells, cells...)
	}
	for i := range list {
		text := "in " + s.blockPlaces(b, list[i].cells)
		if list[i].text != "" {
			text = list[i].text + " " + text
		}
		list[i].text = text
	}
	return list
}

// cellsOf is the cells that a block takes, or a column.
func (s *sewer) cellsOf(at sewing.Placed) []int {
	cells := make([]int, max(1, at.Cells))
	for down := range cells {
		cells[down] = at.Cell + down*s.Columns
	}
	return cells
}

// blockPlaces names the places of blocks; columns from the top of the layout to its bottom by their numbers alone.
func (s *sewer) blockPlaces(b *sewing.Block, list []int) string {
	byColumn := make([]int, s.Columns)
	var columns []int
	for _, cell := range list {
		if byColumn[cell%s.Columns]++; byColumn[cell%s.Columns] == s.Rows {
			columns = append(columns, cell%s.Columns+1)
		}
	}
	if b.Column && len(columns)*s.Rows == len(list) {
		slices.Sort(columns)
		return numbered("column", columns)
	}
	return cellPlaces(list, s.Columns)
}

// cellPlaces names places of a grid of so many columns, each once: rows with the same columns stand together, as
// "rows 1 and 3, columns 2 to 5; row 4, column 1". Beyond maxPlaces groups it says how many places are left.
func cellPlaces(list []int, across int) string {
	type group struct{ rows, columns []int }
	var groups, merged []group
	for _, cell := range slices.Compact(slices.Sorted(slices.Values(list))) {
		row, column := cell/across+1, cell%across+1
		if n := len(groups); n == 0 || groups[n-1].rows[0] != row {
			groups = append(groups, group{rows: []int{row}})
		}
		last := &groups[len(groups)-1]
		last.columns = append(last.columns, column)
	}
	for _, g := range groups {
		at := slices.IndexFunc(merged, func(m group) bool { return slices.Equal(m.columns, g.columns) })
		if at < 0 {
			merged = append(merged, g)
		} else {
			merged[at].rows = append(merged[at].rows, g.rows...)
		}
	}
	var names []string
	left := 0
	for i, g := range merged {
		if i >= maxPlaces {
			left += len(g.rows) * len(g.columns)
			continue
		}
		names = append(names, numbered("row", g.rows)+", "+numbered("column", g.columns))
	}
	if left > 0 {
		names = append(names, "and "+measure.Count(left, "place")+" more")
	}
	return strings.Join(names, "; ")
}

// numbered names numbers that rise: "row 1", "columns 1 to 3 and 5".
func numbered(what string, list []int) string {
	var parts []string
	for i := 0; i < len(list); {
		n := i
		for n+1 < len(list) && list[n+1] == list[n]+1 {
			n++
		}
		switch n - i {
		case 0:
			parts = append(parts, fmt.Sprint(list[i]))
		case 1:
			parts = append(parts, fmt.Sprint(list[i]), fmt.Sprint(list[n]))
		default:
			parts = append(parts, fmt.Sprintf("%d to %d", list[i], list[n]))
		}
		i = n + 1
	}
	if len(list) > 1 {
		what = measure.Plural(what)
	}
	return what + " " + measure.List(parts)
}

// where says where a point of the top lies.
func (s *sewer) where(at measure.Point) string {
	cell := s.CellOf(at)
	if cell < 0 {
		return "the borders or sashes"
	}
	return fmt.Sprintf("%s of the block in row %d, column %d", s.spot(cell, at), cell/s.Columns+1, cell%s.Columns+1)
}

// spot says where in a cell a point lies: its middle, one of its corners or sides.
func (s *sewer) spot(cell int, at measure.Point) string {
	r := s.top.CellRect(cell)
	name := map[[2]bool]string{{true, false}: "upper", {false, true}: "lower"}[[2]bool{at.Y == r.Min.Y, at.Y == r.Max.Y}]
	side := map[[2]bool]string{{true, false}: "left", {false, true}: "right"}[[2]bool{at.X == r.Min.X, at.X == r.Max.X}]
	switch {
	case name != "" && side != "":
		return "the " + name + " " + side + " corner"
	case name != "":
		return "the " + map[string]string{"upper": "top", "lower": "bottom"}[name] + " edge"
	case side != "":
		return "the " + side + " edge"
	}
	return "the center"
}

// turn says how a block of a variant is turned, by what one sees of it: a piece that lies at one of its corners or sides and
// at no other. It is "" where the block looks the same in every turn.
func (s *sewer) turn(b *sewing.Block, v *sewing.FabricVariant, turns int) string {
	mark := s.Landmark(b, v)
	places := [4]string{"the upper left", "the upper right", "the lower right", "the lower left"}
	switch mark.Sort {
	case sewing.NoLandmark:
		return ""
	case sewing.ByPicture:
		return byPicture(turns)
	case sewing.AtSide:
		places = [4]string{"the top", "the right", "the bottom", "the left"}
	}
	text := "with the " + measure.List(s.pieceNames(b, v, mark.Pieces)) + " at " + places[(mark.At[0]+turns)&3]
	if len(mark.At) > 1 {
		text += " and at " + places[(mark.At[1]+turns)&3]
	}
	return text
}

// byPicture is the turns of a block by its step pictures, where nothing of it tells them.
func byPicture(turns int) string {
	return [4]string{"as in the picture of its last step", "rotated 90 degrees clockwise from the picture of its last step", "rotated 180 degrees from the picture of its last step", "rotated 90 degrees counterclockwise from the picture of its last step"}[turns&3]
}

// pieceNames are pieces by their cloth and shape, each name once; one that is there several times as its plural.
func (s *sewer) pieceNames(b *sewing.Block, v *sewing.FabricVariant, pieces []int) []string {
	var names []string
	for _, n := range pieces {
		names = append(names, s.pieceName(b, v, n))
	}
	slices.Sort(names)
	var list []string
	for i := 0; i < len(names); {
		n := i
		for n < len(names) && names[n] == names[i] {
			n++
		}
		if n > i+1 {
			list = append(list, measure.Plural(names[i]))
		} else {
			list = append(list, names[i])
		}
		i = n
	}
	return list
}

// pieceName is a piece by its cloth and shape.
func (s *sewer) pieceName(b *sewing.Block, v *sewing.FabricVariant, piece int) string {
	c := s.Cloths[v.Cloths[piece]]
	name := c.Name
	if len(c.Bands) > 0 {
		name += " of " + measure.List(c.Bands)
	}
	if c.Reversed {
		name += " reversed"
	}
	return name + " " + s.Shape(b, piece).String()
}

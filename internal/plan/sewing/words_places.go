package sewing

import (
	"fmt"
	"slices"
	"strings"

	"eighthturn/internal/quilt"
)

// Cell names a place of the grid: "row 2, column 5".
func (w Words) Cell(cell int) string {
	return fmt.Sprintf("row %d, column %d", cell/w.Columns+1, cell%w.Columns+1)
}

// Cells names places of the grid, each once: rows with the same columns stand together, as
// "rows 1 and 3, columns 2 to 5; row 4, column 1". Beyond so many groups it says how many
// places are left; 0 is for no limit.
func (w Words) Cells(cells []int, most int) string {
	var groups []group
	for _, cell := range slices.Compact(slices.Sorted(slices.Values(cells))) {
		row, column := cell/w.Columns+1, cell%w.Columns+1
		if n := len(groups); n == 0 || groups[n-1].rows[0] != row {
			groups = append(groups, group{rows: []int{row}})
		}
		last := &groups[len(groups)-1]
		last.columns = append(last.columns, column)
	}
	var merged []group
	for _, g := range groups {
		at := slices.IndexFunc(merged, func(m group) bool { return slices.Equal(m.columns, g.columns) })
		if at < 0 {
			merged = append(merged, g)
		} else {
			merged[at].rows = append(merged[at].rows, g.rows...)
		}
	}
	return said(merged, most)
}

// group is the places in some rows and columns, from 1.
type group struct{ rows, columns []int }

// said is groups in words, up to so many of them.
func said(groups []group, most int) string {
	var list []string
	left := 0
	for i, g := range groups {
		if most > 0 && i >= most {
			left += len(g.rows) * len(g.columns)
			continue
		}
		list = append(list, numbered("row", g.rows)+", "+numbered("column", g.columns))
	}
	if left > 0 {
		list = append(list, "and "+counted(left, "place")+" more")
	}
	return strings.Join(list, "; ")
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
		what += "s"
	}
	return what + " " + Listed(parts)
}

// Where says where a point of the top lies.
func (w Words) Where(at quilt.Point) string {
	cell := w.CellOf(at)
	if cell < 0 {
		return "the borders or sashes"
	}
	return w.Place(cell, at) + " of the block in " + w.Cell(cell)
}

// LooseCells are the cells of a part that hangs together with nothing else, by its number in
// Assembly.Loose.
func (w Words) LooseCells(n int) []int {
	var cells []int
	a := &w.Assembly
	for units := []int{a.Loose[n]}; len(units) > 0; {
		unit := units[len(units)-1]
		units = units[:len(units)-1]
		if unit >= len(a.Parts) {
			s := &a.Seams[unit-len(a.Parts)]
			units = append(units, s.A, s.B)
			continue
		}
		if cell := a.Parts[unit].Cell; cell >= 0 {
			for down := range max(1, int(w.cells[cell].down)) {
				cells = append(cells, cell+down*w.Columns)
			}
		}
	}
	return cells
}

// LooseLine is what to do about that part.
func (w Words) LooseLine(n int) string {
	cells := w.LooseCells(n)
	if len(cells) == 0 {
		return "A strip of sashes is joined to nothing: fill the places beside it, or leave it out."
	}
	what := "The block in "
	if len(cells) > 1 {
		what = "The blocks in "
	}
	return what + w.Cells(cells, 0) + map[bool]string{true: " are", false: " is"}[len(cells) > 1] +
		" joined to no other part of the top, since the places beside are empty: put blocks of plain cloth into them, or finish this part by itself."
}

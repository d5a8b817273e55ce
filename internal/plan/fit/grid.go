package fit

import (
	"fmt"
	"strings"

	"eighthturn/layout"
)

// gridEdits are the layout with a grid of so many blocks across and down. Where the rows that are written, repeated, make
// it, only `repeat` changes.
func (f *fitting) gridEdits(counts [2]int) edits {
	if counts == [2]int{len(f.axes[across].ids), len(f.axes[down].ids)} {
		return nil
	}
	var places [2][]int
	var period, times [2]int
	asWritten := true
	for i := range f.axes {
		a := &f.axes[i]
		places[i] = a.places(counts[i])
		ids := a.idsOf(places[i])
		asWritten = asWritten && counts[i]%a.written == 0 && periodic(ids, a.written) && prefix(ids, a.ids, a.written)
		period[i] = tile(ids)
		times[i] = counts[i] / period[i]
	}
	if asWritten {
		times = [2]int{counts[across] / f.axes[across].written, counts[down] / f.axes[down].written}
		return f.repeatEdits(times, "").with(f.tableEdits(places))
	}
	rows := f.gridText(places[across][:period[across]], places[down][:period[down]])
	return f.repeatEdits(times, rows).with(f.tableEdits(places))
}

// prefix says whether two lists begin with the same n.
func prefix(a, b []int, n int) bool {
	for i := range n {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// repeatEdits write the grid's rows, if there are others, and how often they are laid.
func (f *fitting) repeatEdits(times [2]int, rows string) edits {
	n, g := f.tree.Repeat, f.tree.Grid
	var e edits
	line := ""
	if times != [2]int{1, 1} {
		line = repeatText(times)
	}
	if n != nil {
		if line == "" {
			e = append(e, edit{f.wholeLines(n.Span), ""})
		} else {
			e = append(e, edit{n.Span, line})
		}
		line = ""
	}
	if line != "" {
		line = f.newline() + line
	}
	switch {
	case rows != "":
		e = append(e, edit{g.Span, rows + line})
	case line != "":
		e = append(e, edit{layout.Span{Start: g.End, End: g.End}, line})
	}
	return e
}

func repeatText(times [2]int) string {
	words := []string{"repeat"}
	for i, word := range []string{"across", "down"} {
		if times[i] != 1 {
			words = append(words, word, fmt.Sprint(times[i]))
		}
	}
	return strings.Join(words, " ")
}

// gridText is the grid of the blocks at places, in columns.
func (f *fitting) gridText(columns, rows []int) string {
	cells := make([][]string, len(rows))
	for i, y := range rows {
		written := f.tree.Grid.Rows[y%f.axes[down].written].Cells
		for _, x := range columns {
			c := written[x%f.axes[across].written]
			cells[i] = append(cells[i], f.text[c.Start:c.End])
		}
	}
	return "grid" + f.table(cells, " ")
}

// table is cells in columns, each row a line that is set in by two blanks.
func (f *fitting) table(cells [][]string, gap string) string {
	var widths []int
	for _, row := range cells {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], len([]rune(cell)))
		}
	}
	var b strings.Builder
	for _, row := range cells {
		line := "  "
		for i, cell := range row {
			if i > 0 {
				line += gap
			}
			line += cell + strings.Repeat(" ", widths[i]-len([]rune(cell)))
		}
		b.WriteString(f.newline() + strings.TrimRight(line, " "))
	}
	return b.String()
}

// tableEdits are the table of webs for the blocks at places, if the layout has one: a corner takes what the corner at the
// upper left of the same block has.
func (f *fitting) tableEdits(places [2][]int) edits {
	n := f.tree.Webs
	if n == nil || len(n.Rows) == 0 {
		return nil
	}
	var cells [][]string
	for y := 1; y < len(places[down]); y++ {
		var row []string
		for x := 1; x < len(places[across]); x++ {
			if (x+y)%2 == 0 == f.design.StarFirst {
				continue
			}
			row = append(row, f.webAt(f.corner(across, places[across][x]), f.corner(down, places[down][y])))
		}
		if len(row) > 0 {
			cells = append(cells, row)
		}
	}
	return edits{{n.Span, "webs" + f.table(cells, "  ")}}
}

// corner is a corner of the grid inside it that stands where the block at a place begins.
func (f *fitting) corner(which, place int) int {
	if place == 0 {
		return f.axes[which].way.period
	}
	return place
}

// webAt is what the table has for a web centre at a corner of the grid.
func (f *fitting) webAt(x, y int) string {
	n := f.tree.Webs
	row, column := 0, 0
	for v := 1; v < y; v++ {
		if f.centresIn(v, f.design.Columns) > 0 {
			row++
		}
	}
	column = f.centresIn(y, x)
	if row >= len(n.Rows) || column >= len(n.Rows[row].Values) {
		return "."
	}
	s := n.Rows[row].Values[column].Span
	return f.text[s.Start:s.End]
}

// centresIn counts the web centres of a row of corners, inside the quilt, that stand before column x.
func (f *fitting) centresIn(y, x int) int {
	n := 0
	for u := 1; u < x; u++ {
		if (u+y)%2 == 0 != f.design.StarFirst {
			n++
		}
	}
	return n
}

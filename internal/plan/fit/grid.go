package fit

import (
	"fmt"
	"strings"

	"eighthturn/layout"
)

// gridEdits are the layout with a grid of so many blocks across and down. Where the rows that are written, repeated, make
// it, only `repeat` changes.
func (f *fitting) gridEdits(counts [2]int) edits {
	return f.grownEdits(f.grows, counts)
}

// grownEdits are the same by a growth.
func (f *fitting) grownEdits(g *layout.Growth, counts [2]int) edits {
	if counts == g.Counts() {
		return nil
	}
	return f.placedEdits(g, counts).with(f.withoutSwaps())
}

// withoutSwaps leaves the lines of swaps out, whose places are those of the grid as it was.
func (f *fitting) withoutSwaps() edits {
	var e edits
	for _, n := range f.tree.Swaps {
		e = append(e, edit{f.wholeLines(n.Span), ""})
	}
	return e
}

// placedEdits are the grid and the table of webs of so many blocks.
func (f *fitting) placedEdits(g *layout.Growth, counts [2]int) edits {
	places := g.Places(counts)
	var period, times [2]int
	asWritten := true
	for i := range g.Axes {
		a := &g.Axes[i]
		ids := idsOf(a, places[i])
		asWritten = asWritten && counts[i]%a.Written == 0 && periodic(ids, a.Written) // a grid that grows begins as it is written
		period[i] = tile(ids)
		times[i] = counts[i] / period[i]
	}
	if asWritten {
		times = [2]int{counts[across] / g.Axes[across].Written, counts[down] / g.Axes[down].Written}
		return f.repeatEdits(times, "").with(f.tableEdits(g, places))
	}
	rows := f.gridText(g, places[across][:period[across]], places[down][:period[down]])
	return f.repeatEdits(times, rows).with(f.tableEdits(g, places))
}

// idsOf are the numbers of what stands at places.
func idsOf(a *layout.Axis, places []int) []int {
	ids := make([]int, len(places))
	for i, p := range places {
		ids[i] = a.IDs[p]
	}
	return ids
}

// tile is the shortest period that divides a list into whole ones.
func tile(ids []int) int {
	for period := 1; period <= len(ids)/2; period++ {
		if len(ids)%period == 0 && periodic(ids, period) {
			return period
		}
	}
	return len(ids)
}

func periodic(ids []int, period int) bool {
	for i := period; i < len(ids); i++ {
		if ids[i] != ids[i-period] {
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
func (f *fitting) gridText(g *layout.Growth, columns, rows []int) string {
	cells := make([][]string, len(rows))
	for i, y := range rows {
		for _, x := range columns {
			c := g.Cell(x, y)
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

// tableEdits are the table of webs for the blocks at places, if the layout has one.
func (f *fitting) tableEdits(g *layout.Growth, places [2][]int) edits {
	var cells [][]string
	for _, row := range g.Webs(places) {
		words := make([]string, len(row))
		for i, at := range row {
			if words[i] = "."; !at.Empty() {
				words[i] = f.text[at.Start:at.End]
			}
		}
		cells = append(cells, words)
	}
	if cells == nil {
		return nil
	}
	return edits{{f.tree.Webs.Span, "webs" + f.table(cells, "  ")}}
}

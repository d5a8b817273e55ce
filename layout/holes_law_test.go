package layout_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"eighthturn/layout"
)

// firstHole is what a grid of plain blocks and empty places (.) is warned of, worked out by itself: with a border every empty place on its edge
// and every other one is one too many; without, those that no way over empty places leads out of. Sashes around the outside make all of them
// holes. The first one counts.
func firstHole(grid [][]byte, border, around bool) string {
	rows, columns := len(grid), len(grid[0])
	out := make([][]bool, rows)
	for y := range out {
		out[y] = make([]bool, columns)
	}
	leads := func(y, x int) bool { return y < 0 || x < 0 || y >= rows || x >= columns || out[y][x] }
	for range rows * columns {
		for y := range out {
			for x := range out[y] {
				out[y][x] = out[y][x] || grid[y][x] == '.' && (leads(y-1, x) || leads(y+1, x) || leads(y, x-1) || leads(y, x+1))
			}
		}
	}
	for y, row := range grid {
		for x, label := range row {
			edge := y == 0 || x == 0 || y == rows-1 || x == columns-1
			switch {
			case label != '.', !border && !around && out[y][x]:
			case border && !around && edge:
				return fmt.Sprintf("the border has nothing to be sewn to at row %d, column %d", y+1, x+1)
			default:
				return fmt.Sprintf("the quilt has a hole at row %d, column %d, and the blocks around it cannot be sewn row by row", y+1, x+1)
			}
		}
	}
	return ""
}

// TestHolesAreTold asks grids of all sizes up to five by five, full and sparse.
func TestHolesAreTold(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	for n := range 600 {
		grid := make([][]byte, 1+rng.IntN(5))
		columns, empty := 1+rng.IntN(5), 1+rng.IntN(9)
		var text strings.Builder
		for y := range grid {
			for range columns {
				grid[y] = append(grid[y], '.')
				if rng.IntN(10) >= empty {
					grid[y][len(grid[y])-1] = 'P'
				}
			}
			text.WriteString("  " + strings.Join(strings.Split(string(grid[y]), ""), " ") + "\n")
		}
		if !strings.Contains(text.String(), "P") {
			continue
		}
		border, around := n%2 == 0, n%3 == 0
		layoutText := "side 6\nfabric navy #1f3350\nblock P plain piece navy\ngrid\n" + text.String()
		if border {
			layoutText += "border 2 navy\n"
		}
		if around {
			layoutText += "sash 1 navy around\n"
		}
		_, _, list := layout.Read(layoutText)
		got := ""
		for _, f := range list {
			if got != "" || f.Severity == layout.Error {
				t.Errorf("%v in\n%s", list, layoutText)
			}
			got = f.Message
		}
		if want := firstHole(grid, border, around); got != want {
			t.Errorf("%q, expected %q in\n%s", got, want, layoutText)
		}
	}
}

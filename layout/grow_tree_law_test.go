package layout

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// placeless retells a design without the places of its parts in the text.
func placeless(text string, d *Design) string {
	return regexp.MustCompile(` Span="(\\.|[^"\\])*"`).ReplaceAllString(strings.Join(retell(text, d), "\n"), "")
}

// someGrid is rows of labels, each with a blank before it; labels are often those of the row above and of the one before.
func someGrid(rng *rand.Rand, columns, rows int, labels []string) [][]string {
	grid := make([][]string, rows)
	period := [2]int{1 + rng.IntN(3), 1 + rng.IntN(3)}
	for y := range grid {
		for x := range columns {
			label := labels[rng.IntN(len(labels))]
			if y >= period[1] && rng.IntN(9) > 0 {
				label = grid[y-period[1]][x]
			} else if x >= period[0] && rng.IntN(9) > 0 {
				label = grid[y][x-period[0]]
			}
			grid[y] = append(grid[y], label)
		}
	}
	return grid
}

func writeGrid(grid [][]string) string {
	var b strings.Builder
	for _, row := range grid {
		fmt.Fprintln(&b, "", strings.Join(row, " "))
	}
	return b.String()
}

// growthOf is how the grid of a layout grows, with the warnings said.
func growthOf(t *testing.T, text string, warnings func(*Growth, [2]int) int) *Growth {
	t.Helper()
	r := Inspect(text, nil)
	if r.Design == nil {
		t.Fatalf("%v\n%s", r.Faults, text)
	}
	return r.Tree.Growth(r.Design, warnings)
}

// waysWithFewest are the ways by which a grid grows with the fewest warnings, in how many axes that is not the likeliest, and in how many
// no way can be.
func waysWithFewest(g *Growth, table bool, warnings func(ways [2]Way, counts [2]int) int) (want [2]Way, later, none int) {
	for which := range want {
		best, fewest := 0, 1<<30
		ways := g.Axes[which].ways(table)
		for i, w := range ways {
			tried := want
			tried[which] = w
			for _, more := range []int{0, w.Period} {
				counts := g.Counts()
				counts[which] += more
				if count := warnings(tried, counts); count >= 0 && count < fewest {
					best, fewest = i, count
				}
			}
		}
		if len(ways) > 0 {
			want[which] = ways[best]
		}
		if best > 0 {
			later++
		}
		if fewest == 1<<30 {
			none++
		}
	}
	return want, later, none
}

const growing = "side 6\nfabric navy #1f3350\nfabric cream #f4ead7\nfabric rust #b5532a\nblock W web wedges navy kites cream\nblock V web wedges rust kites cream\nblock P plain piece rust\nblock S floating-star kites navy wedges cream background rust\n"

// TestGridsGrowWithTheFewestWarnings: of all ways of an axis the one is taken of which the grid as it is, or a period longer, has the fewest
// warnings, the likeliest of several; where no grid can be made the likeliest of all. Across is settled before down.
func TestGridsGrowWithTheFewestWarnings(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 70))
	later, none := 0, 0
	for n := range 200 {
		text := growing + "grid\n" + writeGrid(someGrid(rng, 1+rng.IntN(7), 1+rng.IntN(7), []string{"W", "V", "P"}))
		lowest := 1 - n%3
		warnings := func(across, down Way, counts [2]int) int {
			return (across.Start*3+across.End*5+across.Period*7+down.Period*11+counts[0]*13+counts[1]*17+n)%4 - lowest
		}
		g := growthOf(t, text, func(g *Growth, counts [2]int) int {
			if n%10 == 0 {
				return -1
			}
			return warnings(g.Axes[Across].Way, g.Axes[Down].Way, counts)
		})
		want, second, impossible := waysWithFewest(g, false, func(ways [2]Way, counts [2]int) int {
			if n%10 == 0 {
				return -1
			}
			return warnings(ways[Across], ways[Down], counts)
		})
		later += second
		none += impossible
		if got := [2]Way{g.Axes[Across].Way, g.Axes[Down].Way}; got != want {
			t.Errorf("it grows by %+v, expected %+v\n%s", got, want, text)
		}
	}
	if later < 20 || none < 30 {
		t.Errorf("another than the first way was best %d times, none could be made %d times", later, none)
	}
}

// TestColumnsAndRowsAreNumbered: two columns, or two rows, have one number where their labels and their turns as written are the same.
func TestColumnsAndRowsAreNumbered(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 70))
	for range 60 {
		grid := someGrid(rng, 2+rng.IntN(4), 1+rng.IntN(4), []string{"W", "W:nw", "w:NW", "W:se", "P"})
		text := growing + "grid\n" + writeGrid(grid)
		g := growthOf(t, text, func(*Growth, [2]int) int { return 0 })
		lines := [2][]string{make([]string, len(grid[0])), make([]string, len(grid))}
		for y, row := range grid {
			for x, label := range row {
				lines[Across][x] += strings.ToLower(label) + " "
				lines[Down][y] += strings.ToLower(label) + " "
				if at := g.Cell(x, y); text[at.Start:at.End] != label {
					t.Errorf("at %d, %d stands %q\n%s", x, y, text[at.Start:at.End], text)
				}
			}
		}
		for which, list := range lines {
			for i := range list {
				for j := range list {
					if ids := g.Axes[which].IDs; (ids[i] == ids[j]) != (list[i] == list[j]) {
						t.Errorf("axis %d: %d and %d have the numbers %d and %d\n%s", which, i, j, ids[i], ids[j], text)
					}
				}
			}
		}
	}
}

// ofTheGrid are the faults that a grid brings: of what no grid uses it is told elsewhere.
func ofTheGrid(list []Fault) []Fault {
	return slices.DeleteFunc(slices.Clone(list), func(f Fault) bool { return strings.Contains(f.Message, "used") })
}

// longer is a list of columns or rows with the stretch of a way made longer, or shorter, by whole periods.
func longer(n int, w Way, count int) (list []int) {
	for i := range n {
		list = append(list, i)
	}
	for len(list) < count {
		list = slices.Insert(list, w.End, list[w.End-w.Period:w.End]...)
	}
	for ; len(list) > count; w.End -= w.Period {
		list = slices.Delete(list, w.End-w.Period, w.End)
	}
	return list
}

// websAt are the values of a table of webs by their places, a line for each row.
func websAt(text string, table [][]Span) string {
	var b strings.Builder
	for _, row := range table {
		for _, at := range row {
			b.WriteString(" ")
			if b.WriteString(text[at.Start:at.End]); at.Empty() {
				b.WriteString(".")
			}
		}
		b.WriteString("\n")
	}
	return b.String()
}

// websWritten are those of a layout that has them before its grid.
func websWritten(text string) string {
	_, rest, _ := strings.Cut(text, "webs\n")
	table, _, _ := strings.Cut(rest, "grid\n")
	return table
}

// TestASizeIsItsGridWrittenOut: a layout in a size is, but for the places in its text, the layout with the grid and the table of webs of that
// size written out: columns and rows that come back are put in again or left out, and each corner has the web of the corner at the upper left
// of the same block.
func TestASizeIsItsGridWrittenOut(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 70))
	tried, tables, fewer, later := 0, 0, 0, 0
	for n := 0; tried < 45 && n < 600; n++ {
		grid := someGrid(rng, 2+rng.IntN(4), 2+rng.IntN(4), []string{"W", "V", "S", "P", "W:nw"}[:1+rng.IntN(5)])
		head, table := growing, map[[2]int]string{}
		if n%2 == 0 {
			head += "top-left star\n"
		}
		star := func() bool { return Inspect(head+"grid\n"+writeGrid(grid), nil).Design.StarFirst }()
		webs := func(columns, rows []int) string {
			if n%3 == 0 {
				return ""
			}
			text := "webs\n"
			for y := 1; y < len(rows); y++ {
				row := ""
				for x := 1; x < len(columns); x++ {
					if (x+y)%2 == 0 != star {
						row += " " + table[[2]int{columns[x], rows[y]}]
					}
				}
				if row != "" {
					text += row + "\n"
				}
			}
			return text
		}
		var own [2][]int
		for x := range grid[0] {
			own[Across] = append(own[Across], x)
		}
		for y := range grid {
			own[Down] = append(own[Down], y)
			for x := range grid[0] {
				table[[2]int{x, y}] = []string{"navy", "rust", "cream", "."}[rng.IntN(4)]
			}
		}
		text := head + webs(own[Across], own[Down]) + "grid\n" + writeGrid(grid)
		if r := Inspect(text, nil); r.Design == nil {
			continue
		}
		counts := [2]int{1 + rng.IntN(9), 1 + rng.IntN(9)}
		g := Inspect(text+"size other\n", nil)
		z := &sizing{checker: &checker{session: newParser(g.Source).session, tree: g.Tree, asWritten: map[string]int{}, sized: true}}
		z.design, z.list = *g.Design, ofTheGrid(g.Faults)
		z.grows()
		writtenOut := func(ways [2]Way, counts [2]int) string {
			columns, rows := longer(len(grid[0]), ways[Across], counts[Across]), longer(len(grid), ways[Down], counts[Down])
			grown := make([][]string, len(rows))
			for i, y := range rows {
				for _, x := range columns {
					grown[i] = append(grown[i], grid[y][x])
				}
			}
			return head + webs(columns, rows) + "grid\n" + writeGrid(grown)
		}
		ways, second, _ := waysWithFewest(z.growth, n%3 != 0, func(ways [2]Way, counts [2]int) int {
			list := Inspect(writtenOut(ways, counts), nil).Faults
			if errors, _ := Count(list); errors > 0 {
				return -1
			}
			return len(ofTheGrid(list))
		})
		later += second
		if got := [2]Way{z.growth.Axes[Across].Way, z.growth.Axes[Down].Way}; got != ways {
			t.Errorf("it grows by %+v, expected %+v\n%s", got, ways, text)
		}
		if !z.growth.Axes[Across].Allows(counts[Across]) || !z.growth.Axes[Down].Allows(counts[Down]) || counts == z.growth.Counts() {
			continue
		}
		sized := fmt.Sprintf("%ssize other across %d down %d\n", text, counts[Across], counts[Down])
		r := Inspect(sized, nil)
		written := writtenOut(ways, counts)
		w := Inspect(written, nil)
		if r.Design == nil || w.Design == nil || len(r.Design.Sizes) != 1 {
			t.Errorf("%v %v\n%s%s", r.Faults, w.Faults, sized, written)
			continue
		}
		tried++
		if got, want := websAt(text, z.growth.Webs(z.growth.Places(counts))), websWritten(written); got != want {
			t.Errorf("the webs of the size are %q, expected %q\n%s", got, want, sized)
		}
		if len(w.Design.WebTable) > 0 {
			tables++
		}
		if counts[Across] < len(grid[0]) || counts[Down] < len(grid) {
			fewer++
		}
		if r.Design.InSize("OTHER") != r.Design.Sizes[0].Design || r.Design.InSize("another") != nil {
			t.Errorf("the size is not found by its name, or by another\n%s", sized)
		}
		if got, want := placeless(sized, r.Design.Sizes[0].Design), placeless(written, w.Design); got != want {
			t.Errorf("the size is\n%s\nexpected\n%s\n%s", got, want, sized)
		}
	}
	if tried < 45 || tables < 8 || fewer < 12 || later < 2 {
		t.Errorf("%d sizes, %d with a table of webs, %d smaller ones, %d of another than the likeliest way", tried, tables, fewer, later)
	}
}

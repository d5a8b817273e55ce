package report

import (
	"strconv"
	"strings"
	"testing"

	"eighthturn/internal/document"
	"eighthturn/internal/plan/fit"
	"eighthturn/internal/quilttest/lay"
	"eighthturn/samples"
)

// plainCell is a cell's words.
func plainCell(c document.Cell) string { return c.Text.String() }

// sizeBreaks are the rows of a plan's tables of sizes whose column for a size is not what the plan of the layout written out in
// it says.
func sizeBreaks(t testing.TB, c *cuts, names []string, tables []document.Table, text string) (list []string) {
	for n, name := range names {
		own := &sizesTable{names: []string{name}, sizes: []*cuts{c}}
		if n > 0 {
			own.sizes[0] = newCuts(&Plans{Top: lay.Top(t, fit.WrittenOut(text, name, nil))})
		}
		said := map[string]string{}
		for i, table := range []document.Table{own.material(), own.strips(), own.pieces()} {
			for _, r := range table.Rows {
				last := len(r.Cells) - 1
				said[strconv.Itoa(i)+rowHead(r, last)] = plainCell(r.Cells[last])
			}
		}
		for i, table := range tables {
			heads := len(table.Columns) - len(names)
			for _, r := range table.Rows {
				want, has := said[strconv.Itoa(i)+rowHead(r, heads)]
				if got := plainCell(r.Cells[heads+n]); got != want && !(!has && (got == "0" || got == none)) {
					list = append(list, name+": "+rowHead(r, heads)+" "+got+", and by itself "+want)
				}
				delete(said, strconv.Itoa(i)+rowHead(r, heads))
			}
		}
		for head := range said {
			list = append(list, name+": no row for "+head)
		}
	}
	return list
}

func rowHead(r document.Row, heads int) string {
	var words []string
	for _, c := range r.Cells[:heads] {
		words = append(words, plainCell(c))
	}
	return strings.Join(words, "; ")
}

// sizesLayout is a quilt of triangles whose second size has larger blocks.
const sizesLayout = "side 6\nfabric cream #f4ead7\nfabric navy #1f3350\nstrip-set shore navy 2 cream rest\nblock R ring wedges shore corners cream\nblock H halves pieces navy cream\n" +
	"grid\n  H H H H\n  H R R H\n  H R R H\n  H H H H\nborder 2 navy\nborder 3 cream\nbinding 2 1/2 navy\nsize lap\nsize twin across 6 down 8 side 8 border 2 1/2\nsize crib down 5 border none\n"

// TestSizesAreThePlans: every number of a size's column is that of the plan of the layout written out in it.
func TestSizesAreThePlans(t *testing.T) {
	texts := []string{sizesLayout}
	for _, s := range samples.All() {
		if strings.Contains(s.Text, "\nsize ") {
			texts = append(texts, s.Text)
		}
	}
	for _, text := range texts {
		c := newCuts(&Plans{Top: lay.Top(t, text)})
		b := &sizesTable{names: c.plans.SizeNames(), sizes: sizedCuts(c.plans)}
		tables := []document.Table{b.material(), b.strips(), b.pieces()}
		for _, wrong := range sizeBreaks(t, c, b.names, tables, text) {
			t.Error(wrong)
		}
		for n, size := range b.sizes {
			strips, pieces := 0, 0
			for _, r := range tables[1].Rows {
				k, _ := strconv.Atoi(plainCell(r.Cells[2+n]))
				strips += k
			}
			for _, r := range tables[2].Rows {
				k, _ := strconv.Atoi(plainCell(r.Cells[3+n]))
				pieces += k
			}
			if strips != size.stripCount() || pieces != size.pieceCount() {
				t.Errorf("%s: the columns add up to %d strips and %d pieces, the plan has %d and %d", b.names[n], strips, pieces, size.stripCount(), size.pieceCount())
			}
		}
		// A size that keeps the first one's number where its own is another, as published patterns have done.
		row := &tables[2].Rows[len(tables[2].Rows)-1]
		row.Cells[len(row.Cells)-1] = cell("19")
		if len(sizeBreaks(t, c, b.names, tables, text)) == 0 {
			t.Error("a wrong number is not noticed")
		}
	}
}

// TestLaterSizesAreCutAnew: a triangle's square is 7/8 in more than its finished side in every size (common practice), where a
// published pattern's second size named 19 1/2 for 21 1/4 in: nancynearphiladelphia.blogspot.com, "Moo to you, Sarah", July 2013.
func TestLaterSizesAreCutAnew(t *testing.T) {
	c := newCuts(&Plans{Top: lay.Top(t, sizesLayout)})
	b := &sizesTable{names: c.plans.SizeNames(), sizes: sizedCuts(c.plans)}
	cut := map[string][]bool{}
	table := b.pieces()
	for _, r := range table.Rows {
		for n := range b.names {
			size := plainCell(r.Cells[2])
			if cut[size] == nil {
				cut[size] = make([]bool, len(b.names))
			}
			cut[size][n] = cut[size][n] || plainCell(r.Cells[3+n]) != "0"
		}
	}
	for size, want := range map[string][3]bool{"squares of 6 7/8 in, cut once on the diagonal": {true, false, true}, "squares of 8 7/8 in, cut once on the diagonal": {false, true, false}} {
		if got := cut[size]; len(got) != 3 || [3]bool(got) != want {
			t.Errorf("%s: %v, want %v of %v", size, got, want, b.names)
		}
	}
}

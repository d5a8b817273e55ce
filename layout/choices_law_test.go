package layout

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/palettes"
)

// TestSwapsOfAnyTwo: two blocks trade where both are there, of one label, not the same one, and dealt scraps of their own; else the first
// thing that is wrong is said.
func TestSwapsOfAnyTwo(t *testing.T) {
	const text = "side 6\nfabric navy #1f3350\nfabric cream #f4ead7\nfabric rust #b5532a\nscraps p navy cream rust by block\nscraps w navy cream by web\n" +
		"block A halves pieces p\nblock B web wedges w kites navy\nblock C plain piece p\nblock T tumblers pieces p about 4\nblock P plain piece navy\ngrid\n  A C B T\n  A C . P\n  C A B B\n"
	const grid = "ACBTAC.PCABB"
	wrong := func(row, column int) string {
		switch {
		case row < 1 || row > 3:
			return fmt.Sprintf("the quilt has 3 rows, so it has no row %d", row)
		case column < 1 || column > 4:
			return fmt.Sprintf("the quilt has 4 columns, so it has no column %d", column)
		}
		switch label := grid[(row-1)*4+column-1]; label {
		case '.':
			return fmt.Sprintf("there is no block at row %d, column %d", row, column)
		case 'T':
			return "the blocks of a column are sewn in one strip, and cannot be swapped"
		case 'P':
			return `block "P" has no scraps of its own to swap: none of its pieces come from a pool`
		case 'B':
			return `block "B" has no scraps of its own to swap: they are dealt by web, to all blocks around it`
		}
		return ""
	}
	for a := range 30 {
		for b := range 30 {
			if (a*7+b*3)%5 != 0 {
				continue // a fifth of them all
			}
			ra, ca, rb, cb := a/6, a%6, b/6, b%6
			line := fmt.Sprintf("swap row %d column %d with row %d column %d", ra, ca, rb, cb)
			want := wrong(ra, ca)
			if want == "" {
				want = wrong(rb, cb)
			}
			if want == "" && a == b {
				want = "a block cannot be swapped with itself"
			}
			if want == "" && grid[(ra-1)*4+ca-1] != grid[(rb-1)*4+cb-1] {
				want = fmt.Sprintf("only blocks of one label can be swapped: there is %q at row %d, column %d, and %q at row %d, column %d", grid[(ra-1)*4+ca-1:(ra-1)*4+ca], ra, ca, grid[(rb-1)*4+cb-1:(rb-1)*4+cb], rb, cb)
			}
			d, _, list := Read(text + line + "\n")
			list = slices.DeleteFunc(list, func(f Fault) bool { return f.Severity == Warning })
			switch {
			case want == "" && (d == nil || len(d.Swaps) != 1 || d.Swaps[0].Cells != [2]int{(ra-1)*4 + ca - 1, (rb-1)*4 + cb - 1}):
				t.Errorf("%s: %v", line, list)
			case want != "" && (len(list) != 1 || list[0].Message != want):
				t.Errorf("%s: %v, expected %s", line, list, want)
			}
		}
	}
}

// TestRolesTakeWhatTheyMay: of every kind of block each role takes as many fabrics as its description says, and no other number.
func TestRolesTakeWhatTheyMay(t *testing.T) {
	names := []string{"navy", "cream", "rust", "teal", "plum", "sand", "moss", "coal", "dawn", "dusk"}
	head := "side 6\n"
	for i, name := range names {
		head += fmt.Sprintf("fabric %s #%d%d%d\n", name, i, i, i)
	}
	for _, kind := range blocks.Kinds() {
		for asked := range kind.Roles {
			for count := 1; count <= len(names); count++ {
				block := "block K " + kind.Name
				for i := range kind.Roles {
					role := &kind.Roles[i]
					n := 1
					if role.Counts != nil {
						n = role.Counts[0]
					}
					if i == asked {
						n = count
					} else if role.Outer {
						continue
					}
					block += " " + role.Name + " " + strings.Join(names[:n], " ")
				}
				if kind.Column {
					block += " about 4"
				}
				role := &kind.Roles[asked]
				good := role.Counts == nil || slices.Contains(role.Counts, count)
				_, _, list := Read(head + block + "\ngrid\n  K K\n  K K\n")
				errors, _ := Count(list)
				if good != (errors == 0) || errors > 1 {
					t.Errorf("%s: %v", block, list)
				}
				if !good {
					i := slices.IndexFunc(list, func(f Fault) bool { return f.Severity == Error })
					if want := fmt.Sprintf("found %d", count); !strings.HasSuffix(list[i].Message, want) || !strings.Contains(list[i].Message, role.Name) {
						t.Errorf("%s: %s", block, list[i].Message)
					}
				}
			}
		}
	}
}

// TestValuesOfPools: of a pool's fabrics those are warned of that are darker than where it begins or lighter than where it ends (L*).
func TestValuesOfPools(t *testing.T) {
	const gray = 119
	l := palettes.Colour{R: gray, G: gray, B: gray}.Lightness()
	for bound := int(l) - 2; bound <= int(l)+3; bound++ {
		for _, word := range []string{"from", "to"} {
			text := fmt.Sprintf("side 6\nfabric one #777777\nfabric dark black\nfabric light white\nscraps p one %s %d\nblock H plain piece p\nblock K halves pieces dark light\ngrid\n  H K\n", word, bound)
			d, _, list := Read(text)
			if d == nil {
				t.Fatal(list)
			}
			want := ""
			switch {
			case word == "from" && l < float64(bound):
				want = fmt.Sprintf(`"one" is too dark for "p": its value is L* %.0f, and the pool begins at %d`, l, bound)
			case word == "to" && l > float64(bound):
				want = fmt.Sprintf(`"one" is too light for "p": its value is L* %.0f, and the pool ends at %d`, l, bound)
			}
			got := ""
			for _, f := range list {
				got += f.Message
			}
			if got != want {
				t.Errorf("%s %d: %q, expected %q", word, bound, got, want)
			}
		}
	}
}

// TestEnoughForSets: a set takes as many strips from a pool as it has fabrics at the most; what is lacking is said.
func TestEnoughForSets(t *testing.T) {
	for fabrics := 1; fabrics <= 4; fabrics++ {
		for strips := 1; strips <= 5; strips++ {
			text := "strip 6\nfabric cream #f4ead7\n"
			names := []string{"a", "b", "c", "d"}[:fabrics]
			for i, name := range []string{"a", "b", "c", "d"} {
				text += fmt.Sprintf("fabric %s #%d2%d\n", name, i, i)
			}
			text += "scraps p " + strings.Join(names, " ") + " by set\nstrip-set s" + strings.Repeat(" p 1", strips) + " cream rest\nblock W web wedges s kites cream\ngrid\n  W W\n  W W\n"
			_, _, list := Read(text)
			list = slices.DeleteFunc(list, func(f Fault) bool { return f.Severity == Warning })
			if strips <= fabrics {
				if len(list) > 0 {
					t.Errorf("%d strips of %d fabrics: %v", strips, fabrics, list)
				}
				continue
			}
			want := fmt.Sprintf(`each set of "s" takes %s from "p", which has only %s, and no set holds a fabric twice`, plural(strips, "fabric"), plural(fabrics, "fabric"))
			if len(list) != 1 || list[0].Message != want || list[0].Hint != "add "+plural(strips-fabrics, "fabric")+" to the pool, or take fewer strips from it" {
				t.Errorf("%d strips of %d fabrics: %v", strips, fabrics, list)
			}
		}
	}
}

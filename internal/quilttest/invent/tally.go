package invent

import (
	"fmt"
	"strings"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/layout"
)

// Tally counts what a number of designs had in them.
type Tally struct {
	Layouts int
	seen    map[string]int
}

// see counts one design that has something.
func (t *Tally) see(has bool, what string, args ...any) {
	if t.seen == nil {
		t.seen = map[string]int{}
	}
	if has {
		t.seen[fmt.Sprintf(what, args...)]++
	}
}

// Add counts one design.
func (t *Tally) Add(d *layout.Design) {
	t.Layouts++
	t.cells(d)
	t.see(true, "%s", d.Units)
	t.see(d.StripGiven, "strip given")
	t.see(!d.StripGiven, "side given")
	t.see(d.Seam < 2*measure.Millimetre, "tiny seam")
	t.see(d.Seam > 15*measure.Millimetre, "large seam")
	t.see(d.SideFinished < 5*measure.Centimetre, "tiny blocks")
	t.see(d.SideFinished > 50*measure.Centimetre, "large blocks")
	t.see(d.StarFirst, "star at the upper left")
	t.see(!d.StarFirst, "web at the upper left")
	t.see(true, "%d values for webs", len(d.Webs))
	t.see(true, "%d borders", len(d.Borders))
	t.see(d.Binding != nil, "binding")
	t.see(len(d.OnHand) > 0, "pieces on hand")
	t.see(strings.ContainsFunc(d.Fabrics[0].Name, func(r rune) bool { return r > 127 }), "name in another script")
	t.more(d)
	for i := range d.Blocks {
		for _, fills := range d.Blocks[i].Fills {
			t.fills(d, fills)
		}
	}
	t.fills(d, d.Webs)
}

// more counts what stands round the blocks, and what is said of webs, pools and columns.
func (t *Tally) more(d *layout.Design) {
	t.see(d.Sash != nil, "sashes")
	t.see(d.Sash != nil && d.Sash.Corners >= 0, "posts")
	t.see(d.Sash != nil && d.Sash.Around, "sashes around")
	t.see(d.Sash != nil && !d.Sash.Around && d.Sash.Corners < 0, "sashes with nothing more")
	for _, b := range d.Borders {
		t.see(b.Corners >= 0, "border with corners")
		t.see(b.Lengthwise, "border cut lengthwise")
	}
	t.see(d.WebTable != nil, "table of webs")
	for _, p := range d.Pools {
		t.see(true, "pool dealt in way %d", p.By)
		t.see(p.Deal > 0, "pool of another deal")
	}
	for _, s := range d.StripSets {
		t.see(s.Dealt, "dealt strip set")
		t.see(s.Dealt && s.Sets > 0, "dealt as so many sets")
	}
	for _, r := range d.Runs {
		t.see(r.Cells > 1, "column of several cells")
		t.see(r.Cells == 1, "column of one cell")
		t.see(r.Divided.End != r.Divided.Mean/2, "column with ends of their own")
		t.see(r.Divided.End == r.Divided.Mean/2, "column with ends of half a piece")
	}
	for i := range d.Blocks {
		for r, role := range d.Blocks[i].Kind.Roles {
			t.see(role.Outer && len(d.Blocks[i].Fills[r]) > 0, "role for the outside")
		}
	}
	t.see(len(d.Notes) > 0, "notes")
	t.see(d.Contrast != nil, "contrast")
	t.see(d.Backing >= 0, "backing")
	t.see(d.Batting, "batting")
}

// fills counts the strip sets and the pools among fills.
func (t *Tally) fills(d *layout.Design, fills []layout.Fill) {
	for _, f := range fills {
		t.see(f.Pool >= 0, "value dealt from a pool")
		if f.Set < 0 {
			continue
		}
		rest, equal := false, false
		for _, b := range d.StripSets[f.Set].Bands {
			rest, equal = rest || b.Rest, equal || b.Equal
			t.see(b.Pool >= 0, "band dealt from a pool")
		}
		t.see(rest, "strip set with a rest")
		t.see(!rest && !equal, "strip set without a rest")
		t.see(equal, "strip set of equal strips")
		t.see(f.Reversed, "strip set turned")
		t.see(!f.Reversed, "strip set as written")
		t.see(len(d.StripSets[f.Set].Bands) == 1, "strip set of one strip")
		t.see(len(d.StripSets[f.Set].Bands) > 2, "strip set of three strips or more")
	}
}

// cells counts the grid's kinds, turns and measures.
func (t *Tally) cells(d *layout.Design) {
	kinds := map[string]bool{}
	turned := map[string]bool{}
	holes := false
	for _, c := range d.Cells {
		if c.Block < 0 {
			holes = true
			continue
		}
		k := d.Blocks[c.Block].Kind
		kinds[k.Name] = true
		turned[fmt.Sprintf("turned %d times", c.Turns)] = true
		if turnsAnyWay(k) {
			turned[fmt.Sprintf("%s turned %d times", k.Name, c.Turns)] = true
		}
	}
	for _, k := range blocks.Kinds() {
		t.see(kinds[k.Name], "%s", k.Name)
	}
	for what := range turned {
		t.see(true, "%s", what)
	}
	t.see(len(kinds) > 1, "kinds mixed")
	t.see(holes, "holes")
	t.see(true, "%s across", parity(d.Columns))
	t.see(true, "%s down", parity(d.Rows))
	t.see(d.Columns == 1 && d.Rows == 1, "one block")
	t.see(d.Columns > 9 && d.Rows > 9, "many blocks")
}

// turnsAnyWay says whether each of the four turns of a kind differs from the others.
func turnsAnyWay(k *blocks.Kind) bool {
	return k.Turning.Towards() || k.Turning == blocks.AsWritten
}

func parity(n int) string {
	if n%2 == 0 {
		return "even"
	}
	return "odd"
}

// wanted is all that a good number of invented layouts should have in them.
func wanted() []string {
	list := []string{
		"inches", "cm", "strip given", "side given", "tiny seam", "large seam", "tiny blocks", "large blocks",
		"star at the upper left", "web at the upper left", "0 values for webs", "1 values for webs", "2 values for webs",
		"0 borders", "1 borders", "2 borders", "binding", "name in another script",
		"strip set with a rest", "strip set without a rest", "strip set turned", "strip set as written",
		"strip set of one strip", "strip set of three strips or more",
		"kinds mixed", "holes", "even across", "odd across", "even down", "odd down", "one block", "many blocks",
		"sashes", "posts", "sashes around", "sashes with nothing more", "border with corners", "border cut lengthwise",
		"table of webs", "pool dealt in way 0", "pool dealt in way 1", "pool dealt in way 2", "pool dealt in way 3", "dealt strip set", "dealt as so many sets", "pool of another deal",
		"value dealt from a pool", "band dealt from a pool", "role for the outside",
		"column of several cells", "column of one cell", "column with ends of their own", "column with ends of half a piece",
		"notes", "contrast", "backing", "batting", "pieces on hand",
	}
	for turns := range 4 {
		list = append(list, fmt.Sprintf("turned %d times", turns))
	}
	for _, k := range blocks.Kinds() {
		list = append(list, k.Name)
		for turns := range 4 {
			if turnsAnyWay(k) {
				list = append(list, fmt.Sprintf("%s turned %d times", k.Name, turns))
			}
		}
	}
	return list
}

// Missing is what fewer designs had in them than the number given.
func (t *Tally) Missing(least int) []string {
	var list []string
	for _, what := range wanted() {
		if n := t.seen[what]; n < least {
			list = append(list, fmt.Sprintf("%s: %d", what, n))
		}
	}
	return list
}

// String is the whole tally, a line each, in the order of what is wanted.
func (t *Tally) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%d layouts\n", t.Layouts)
	for _, what := range wanted() {
		fmt.Fprintf(&b, "%6d  %s\n", t.seen[what], what)
	}
	return b.String()
}

package orders_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/plan/cutting"
	"eighthturn/internal/plan/orders"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/invent"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/layout"
	"eighthturn/palettes"
	"eighthturn/samples"
)

// read reads a layout that has no errors.
func read(t *testing.T, text string) *layout.Design {
	t.Helper()
	design, _, faults := layout.Read(text)
	if design == nil {
		t.Fatalf("%v\n%s", faults, text)
	}
	return design
}

// nearby are the suggestions for a layout, and its plan.
func nearby(t *testing.T, text string) ([]orders.Better, *cutting.Plan) {
	t.Helper()
	top := quilt.Lay(read(t, text))
	plan := cutting.Build(nil, top, cutting.Options{})
	return orders.Nearby(text, nil, top)(nil, plan, cutting.Options{}), plan
}

// sewn counts a plan's strip sets, and the wedges that are left of them.
func sewn(plan *cutting.Plan) (sets, left int) {
	for i := range plan.Sets {
		for _, r := range plan.Sets[i].Runs {
			sets += r.Sets
		}
		left += plan.Sets[i].LeftOver[0] + plan.Sets[i].LeftOver[1]
	}
	return sets, left
}

const shore = `strip 4
fabric rust #b5532a
fabric cream #f4ead7
fabric teal #2f7d83
strip-set shore rust 1 3/4 cream rest
`

// TestBothWays: from a strip set 40 in long come 19 wedges of 4 in strips, 10 one way round and 9 the other (as the trade cuts them: each
// cut is shared by two). 64 wedges of one way so take 7 sets, and 4 of both.
func TestBothWays(t *testing.T) {
	const grid = "grid\n  W W W W\n  W W W W\n  W W W W\n  W W W W\n"
	for name, c := range map[string]struct {
		text   string
		line   string
		byWebs bool
		sets   [2]int
	}{
		"webs by turns":    {shore + "block W web wedges shore kites teal\n" + grid, "webs shore / reversed shore", true, [2]int{7, 4}},
		"reversed":         {shore + "block W web wedges reversed shore kites teal\n" + grid, "webs reversed shore / shore", true, [2]int{7, 4}},
		"the webs line":    {shore + "webs shore\nblock W web kites teal\n" + grid, "webs shore / reversed shore", true, [2]int{7, 4}},
		"wedges by turns":  {shore + "block R ring wedges shore corners cream\ngrid\n  R R R\n  R R R\n  R R R\n", "block R ring wedges shore reversed shore corners cream", false, [2]int{8, 4}},
		"other wedges too": {shore + "block W web wedges shore kites teal\nblock V web wedges teal kites cream\n" + strings.Replace(grid, "W W", "W V", 1), "block W web wedges shore reversed shore kites teal", false, [2]int{6, 4}},
	} {
		list, _ := nearby(t, c.text)
		if len(list) != 1 || strings.Join(list[0].Lines, "\n") != c.line || list[0].ByWebs != c.byWebs || list[0].Sets != c.sets {
			t.Errorf("%s: %+v, want %q with %v sets", name, list, c.line, c.sets)
		}
	}
	for name, text := range map[string]string{
		"both ways used":     shore + "block W web wedges shore reversed shore kites teal\n" + grid,
		"the same both ways": strings.Replace(shore, "rust 1 3/4 cream rest", "rust 1 1/2 cream rest rust 1 1/2", 1) + "block W web wedges shore kites teal\n" + grid,
		"no set saved":       shore + "block W web wedges shore kites teal\ngrid\n  W W\n",
		"no strip set":       shore + "block W web wedges teal kites cream\n" + grid,
	} {
		if list, _ := nearby(t, text); len(list) > 0 {
			t.Errorf("%s: %+v", name, list)
		}
	}
}

// TestWhatIsSavedIsSaved: the layout with the line written in, read and planned by itself, has the strip sets, the wedges left over and the
// cloth to buy that were told, fewer sets than as it was, and none that is used one way round alone.
func TestWhatIsSavedIsSaved(t *testing.T) {
	var texts []string
	for _, s := range samples.All() {
		texts = append(texts, s.Text)
	}
	for seed := range uint64(judges.Of(60, 400)) {
		texts = append(texts, invent.Layout(seed))
	}
	told := 0
	for _, text := range texts {
		list, plan := nearby(t, text)
		fewest := -1
		for _, b := range list {
			told++
			then := cutting.Build(nil, quilt.Lay(read(t, written(text, b))), cutting.Options{})
			sets, left := sewn(plan)
			setsThen, leftThen := sewn(then)
			if b.Sets != [2]int{sets, setsThen} || b.LeftOver != [2]int{left, leftThen} || setsThen >= sets || fewest >= 0 && setsThen >= fewest {
				t.Errorf("%v: told of %v sets and %v wedges left, there are %d and %d sets, %d and %d wedges", b.Lines, b.Sets, b.LeftOver, sets, setsThen, left, leftThen)
			}
			fewest = setsThen
			for _, s := range b.Saved {
				if now, other := bought(plan, s.Fabric), bought(then, s.Fabric); now != int64(s.Now.Buy) || other != int64(s.Then.Buy) || other >= now {
					t.Errorf("%v: told of %d and %d of fabric %d, there are %d and %d", b.Lines, s.Now.Buy, s.Then.Buy, s.Fabric, now, other)
				}
			}
		}
	}
	t.Logf("%d suggestions", told)
	if told < 3 {
		t.Errorf("only %d suggestions", told)
	}
}

// bought is how much of a fabric a plan buys, in nanometres; -1 for none.
func bought(plan *cutting.Plan, fabric int) int64 {
	for i := range plan.Fabrics {
		if plan.Fabrics[i].Index == fabric {
			return int64(plan.Fabrics[i].Purchase.Buy)
		}
	}
	return -1
}

// written is a layout with the line of a suggestion in the place of the one that begins as it does, or at its end. A byte order mark
// before the first line is no part of its first word.
func written(text string, b orders.Better) string {
	line := b.Lines[len(b.Lines)-1]
	words := strings.Fields(line)
	begins := words[:1]
	if words[0] == "block" {
		begins = words[:2]
	}
	lines := strings.FieldsFunc(strings.TrimPrefix(text, "\ufeff"), func(r rune) bool { return r == '\n' || r == '\r' })
	for i, l := range lines {
		if has := strings.Fields(l); len(has) > len(begins) && strings.EqualFold(has[0], begins[0]) && (len(begins) == 1 || has[1] == begins[1]) {
			lines[i] = line
			return strings.Join(lines, "\n") + "\n"
		}
	}
	return strings.Join(lines, "\n") + "\n" + line + "\n"
}

// TestFewAreTried: however many strip sets a layout has, no more than four layouts near it are read and planned, and the ones that are
// tried are those of the sets of which most is left over.
func TestFewAreTried(t *testing.T) {
	var b strings.Builder
	b.WriteString("strip 4\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric cream swatch \"cream.png\" across 6\n")
	row := ""
	for n := range 12 {
		fmt.Fprintf(&b, "strip-set s%d rust 1 %d/16 cream rest\nblock B%d web wedges s%d kites teal\n", n, 1+n, n, n)
		row += fmt.Sprintf(" B%d", n)
	}
	b.WriteString("grid\n" + strings.Repeat(" "+row+"\n", 12))
	read := 0
	cloth := func(string) (palettes.PhotoSample, error) {
		read++
		return palettes.PhotoSample{Colour: palettes.Colour{R: 240, G: 230, B: 210}, Colours: make([]palettes.Part, 1)}, nil
	}
	design, _, faults := layout.ReadWith(b.String(), cloth)
	if design == nil {
		t.Fatal(faults)
	}
	top := quilt.Lay(design)
	plan := cutting.Build(nil, top, cutting.Options{})
	read = 0
	if list := orders.Nearby(b.String(), cloth, top)(nil, plan, cutting.Options{}); len(list) != 1 || read != 1+4 {
		t.Errorf("%d layouts are read for %+v", read, list)
	}
}

// TestOnlyWhatMaySaveIsTried: a layout near another is read and planned only where its strip set leaves half a set or more of one order, so that
// one fewer might do, and is not used both ways round as often. Of several those of which most is left come first, and of those that save as
// many sets the first is said. What is read is counted by a photo of the layout; the layout itself is read once more where anything is tried.
// From a set 40 in long come 10 wedges of one order and 9 of the other; a ring takes 8.
func TestOnlyWhatMaySaveIsTried(t *testing.T) {
	const head = "strip 4\nfabric rust #b5532a\nfabric teal #2f7d83\nfabric narrow #888888 usable-width 5\nfabric cream swatch \"cream.png\" across 6\n" +
		"strip-set shore rust 1 3/4 cream rest\nstrip-set coast teal 2 rust rest\nstrip-set even rust 1 1/2 cream rest rust 1 1/2\n"
	blocks := map[string]string{
		"R": "ring wedges shore corners cream", "T": "ring wedges reversed shore corners cream", "S": "ring wedges coast corners cream", "E": "ring wedges even corners cream",
		"O": "ring wedges shore teal teal teal teal teal teal teal corners cream", "P": "plain piece cream", "N": "plain piece narrow",
	}
	shores, coasts, turned := "block R ring wedges shore reversed shore corners cream", "block S ring wedges coast reversed coast corners cream", "block T ring wedges reversed shore shore corners cream"
	for grid, want := range map[string]struct {
		read int
		said string
	}{
		"R O P P":               {0, ""},     // of 9 wedges one order leaves 8
		"R O O P":               {2, ""},     // of 10 it leaves 9: one set is sewn at any rate
		"R R R R":               {2, shores}, // 4 sets, 2 would do
		"R T R T":               {0, ""},     // as many of both
		"E E E E":               {0, ""},     // the same from both ends
		"R R R R N":             {2, ""},     // a plan with a fault is no plan
		"R R R R S S S S S S":   {3, coasts}, // both save two sets; of coast 43 are left, of shore 28
		"T T T T S S S S S S":   {3, coasts}, // and reversed
		"S S S S T T T T T T":   {3, turned}, // and the other way
		"R R R R S S S S":       {3, shores}, // as many of both are left: the first
		"R R R R R R S S S S S": {3, shores}, // one saves two sets, the other one
	} {
		text := head
		for _, label := range slices.Sorted(maps.Keys(blocks)) {
			if strings.Contains(grid, label) {
				text += "block " + label + " " + blocks[label] + "\n"
			}
		}
		text += "grid\n " + grid + "\n"
		plan, list, read := nearbyTried(t, text)
		said := ""
		for _, b := range list {
			said += strings.Join(b.Lines, "\n")
		}
		if read != want.read || said != want.said || len(plan.Faults) != strings.Count(grid, "N") {
			t.Errorf("%q: %d layouts are read, expected %d; %q is said, expected %q; faults %v", grid, read, want.read, said, want.said, plan.Faults)
		}
	}
}

// nearbyTried is what is said of a layout whose cloth is shown by a photo, and how often that photo is read: once a layout that is tried.
func nearbyTried(t *testing.T, text string) (plan *cutting.Plan, list []orders.Better, read int) {
	cloth := func(string) (palettes.PhotoSample, error) {
		read++
		return palettes.PhotoSample{Colour: palettes.Colour{R: 240, G: 230, B: 210}, Colours: make([]palettes.Part, 1)}, nil
	}
	design, _, faults := layout.ReadWith(text, cloth)
	if design == nil {
		t.Fatal(faults)
	}
	top := quilt.Lay(design)
	plan, read = cutting.Build(nil, top, cutting.Options{}), 0
	list = orders.Nearby(text, cloth, top)(nil, plan, cutting.Options{})
	return plan, list, read
}

// TestLargeTopsAreLeftAlone: of a top with more pieces than a few quilts have nothing near is tried; the last that is tried has 40,000.
func TestLargeTopsAreLeftAlone(t *testing.T) {
	text := shore + "block R ring wedges shore corners cream\ngrid\n  R R R\n"
	design := read(t, text)
	plan := cutting.Build(nil, quilt.Lay(design), cutting.Options{})
	for faces, want := range map[int]int{40_000: 1, 40_001: 0} {
		like := &quilt.Top{Faces: make([]quilt.Face, faces)}
		if list := orders.Nearby(text, nil, like)(nil, plan, cutting.Options{}); len(list) != want {
			t.Errorf("of a top with %d pieces %d layouts are said", faces, len(list))
		}
	}
}

// TestASetOfTwoHeightsIsOneSet: a strip set from which wedges of two heights are cut is tried once in each way: webs by turns, the wedges of the
// one block, those of the other.
func TestASetOfTwoHeightsIsOneSet(t *testing.T) {
	text := "side 7\nfabric rust #b5532a\nfabric cream swatch \"cream.png\" across 6\nstrip-set shore rust 2 cream rest\nblock R ring wedges shore corners cream\nblock W web wedges shore kites cream\n" +
		"grid\n" + strings.Repeat(" W W W W R R R R\n", 4)
	plan, list, read := nearbyTried(t, text)
	if len(plan.Sets) != 2 || read != 1+3 || len(list) == 0 {
		t.Errorf("of %d sets %d layouts are read: %+v", len(plan.Sets), read, list)
	}
}

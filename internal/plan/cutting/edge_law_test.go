package cutting

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/internal/quilttest/judges"
	"eighthturn/internal/quilttest/lay"
)

// The law of edges: what faces the outside is told by geometry alone, and a layout with roles for the outside is laid and
// planned as the same layout with every block written out.

const edgeHead = "side 6\nfabric a #111\nfabric b #333\nfabric c #555\nfabric d #777\nfabric e #999\nfabric f #bbb\nstrip-set s a rest b 1 1/2\n"

// edgedLayout invents a layout whose blocks have roles for the outside: its text, and the same text without those roles.
func edgedLayout(r *rand.Rand) (edged, bare string) {
	var with, without, grid strings.Builder
	kinds := blocks.Kinds()
	var labels []string
	for n := range 1 + r.IntN(3) {
		k := kinds[r.IntN(len(kinds))]
		label := string(rune('P' + n))
		labels = append(labels, label)
		line, outer := "block "+label+" "+k.Name, ""
		for i := range k.Roles {
			role := &k.Roles[i]
			fabric := string(rune('a' + r.IntN(3)))
			if role.Banded && r.IntN(4) == 0 {
				fabric = []string{"s", "reversed s"}[r.IntN(2)]
			}
			switch {
			case !role.Outer:
				line += " " + role.Name + " " + fabric
			case r.IntN(3) > 0:
				if fabric != "s" && fabric != "reversed s" {
					fabric = string(rune('a' + r.IntN(6)))
				}
				outer += " " + role.Name + " " + fabric
			}
		}
		if k.Column {
			line += " about 3"
		}
		with.WriteString(line + outer + "\n")
		without.WriteString(line + "\n")
	}
	across, down := 1+r.IntN(4), 1+r.IntN(4)
	grid.WriteString("grid\n")
	for y := range down {
		for x := range across {
			if x+y > 0 && r.IntN(8) == 0 {
				grid.WriteString(" .")
			} else {
				grid.WriteString(" " + labels[r.IntN(len(labels))])
			}
		}
		grid.WriteString("\n")
	}
	if r.IntN(4) == 0 {
		fmt.Fprintf(&grid, "repeat across %d down %d\n", 1+r.IntN(2), 1+r.IntN(2))
	}
	return edgeHead + with.String() + grid.String(), edgeHead + without.String() + grid.String()
}

// faced are the sides of the quilt that a patch lies on: those of its edges with nothing beyond them.
func faced(top *quilt.Top, patch *quilt.Patch) (list []string) {
	const little = measure.Inch / 16
	if patch.Cell < 0 {
		return nil
	}
	beyond := func(p measure.Point) bool {
		return !slices.ContainsFunc(top.Patches, func(o quilt.Patch) bool { return inOutline(o.Outline, p) })
	}
	rect := top.CellRect(int(patch.Cell))
	straight := 0
	outward := map[string]measure.Point{"top": {Y: -little}, "bottom": {Y: little}, "left": {X: -little}, "right": {X: little}}
	on := func(p measure.Point, side string) bool {
		return side == "top" && p.Y == rect.Min.Y || side == "bottom" && p.Y == rect.Max.Y || side == "left" && p.X == rect.Min.X || side == "right" && p.X == rect.Max.X
	}
	column := false
	for _, k := range blocks.Kinds() {
		column = column || k.Column && k.Name == top.Cells[patch.Cell].Kind
	}
	for i, from := range patch.Outline {
		to := patch.Outline[(i+1)%len(patch.Outline)]
		for _, side := range []string{"top", "bottom", "left", "right"} {
			level := from.Y == to.Y && (side == "top" || side == "bottom") || from.X == to.X && (side == "left" || side == "right")
			middle := measure.Point{X: (from.X + to.X) / 2, Y: (from.Y + to.Y) / 2}
			if column {
				if level && (side == "top" || side == "bottom") && beyond(middle.Add(outward[side])) {
					list = append(list, side)
				}
				continue
			}
			if level && on(from, side) && on(to, side) {
				if straight++; beyond(middle.Add(outward[side])) {
					list = append(list, side)
				}
			}
		}
	}
	if straight == 0 && !column && len(patch.Outline) == 3 { // a wedge between two sides of its block
		for _, p := range patch.Outline[1:] {
			for _, side := range []string{"top", "bottom", "left", "right"} {
				if on(p, side) {
					if !beyond(p.Add(outward[side])) {
						return nil
					}
					list = append(list, side)
				}
			}
		}
	}
	return list
}

// inOutline says whether a point lies in an outline, whose corners go clockwise.
func inOutline(o []measure.Point, p measure.Point) bool {
	for i, a := range o {
		b := o[(i+1)%len(o)]
		if float64(b.X-a.X)*float64(p.Y-a.Y)-float64(b.Y-a.Y)*float64(p.X-a.X) <= 0 {
			return false
		}
	}
	return true
}

// clothOfPatch is what a patch shows, by names.
func clothOfPatch(top *quilt.Top, n int) string {
	p := &top.Patches[n]
	if p.Set >= 0 {
		return map[bool]string{false: "s", true: "reversed s"}[p.Reversed]
	}
	return top.Fabrics[top.Faces[p.First].Fabric].Name
}

// wrongEdge says which patch of a layout with edges shows something else than geometry says.
func wrongEdge(text string, top, bare *quilt.Top) error {
	given := map[string]map[string]string{} // by label and role
	for _, line := range strings.Split(text, "\n") {
		words := strings.Fields(line)
		if len(words) == 0 || words[0] != "block" {
			continue
		}
		roles := map[string]string{}
		given[words[1]] = roles
		for i := 3; i < len(words); i++ {
			if strings.HasPrefix(words[i], "edge") {
				roles[words[i]] = words[i+1]
				if words[i+1] == "reversed" {
					roles[words[i]] = "reversed s"
				}
			}
		}
	}
	for n := range top.Patches {
		p := &top.Patches[n]
		want := clothOfPatch(bare, n)
		if p.Cell >= 0 {
			sides, roles := faced(top, p), given[top.Cells[p.Cell].Label]
			if base := bare.Roles[bare.Patches[n].Role].Name; len(sides) > 0 && !slices.Contains([]string{"kites", "corners"}, base) {
				order := []string{"edge"}
				for _, side := range []string{"right", "left", "bottom", "top"} {
					if slices.Contains(sides, side) {
						order = append(order, "edge-"+side)
					}
				}
				for _, role := range order { // the last that is there counts
					if cloth := roles[role]; cloth != "" {
						want = cloth
					}
				}
			}
		}
		if got := clothOfPatch(top, n); got != want {
			return fmt.Errorf("patch %d of cell %d is of %s, not %s", n, p.Cell, got, want)
		}
	}
	return nil
}

// writtenOut is a layout in which every block of a top is written by itself, and nothing for the outside.
func writtenOut(top *quilt.Top) string {
	var list, grid strings.Builder
	grid.WriteString("grid\n")
	runs := map[int]string{} // columns under way, by where they stand
	corner := blocks.CornerNames()
	for cell := range top.Cells {
		c := &top.Cells[cell]
		if cell%top.Columns == 0 && cell > 0 {
			grid.WriteString("\n")
		}
		kind, ok := blocks.Find(blocks.Kinds(), c.Kind)
		if !ok {
			grid.WriteString(" .")
			delete(runs, cell%top.Columns)
			continue
		}
		label := fmt.Sprintf("c%d", cell)
		switch above := cell - top.Columns; {
		case kind.Column && above >= 0 && top.Cells[above].Label == c.Label:
			label = runs[cell%top.Columns]
		case kind.Column:
			var cloths []string
			for at := cell; at < len(top.Cells) && top.Cells[at].Label == c.Label; at += top.Columns {
				for n := range top.Cells[at].Count {
					cloths = append(cloths, clothOfPatch(top, top.Cells[at].First+n))
				}
			}
			fmt.Fprintf(&list, "block %s %s pieces %s about 3\n", label, c.Kind, strings.Join(cloths, " "))
		default:
			roles := make([][]string, len(kind.Roles))
			for n, p := range kind.Turned(c.Turns) {
				roles[p.Role] = append(roles[p.Role], clothOfPatch(top, c.First+n))
			}
			fmt.Fprintf(&list, "block %s %s", label, c.Kind)
			for i, cloths := range roles {
				if role := &kind.Roles[i]; len(cloths) > 0 && role.Counts[len(role.Counts)-1] == len(cloths) {
					fmt.Fprintf(&list, " %s %s", role.Name, strings.Join(cloths, " "))
				} else if len(cloths) > 0 {
					fmt.Fprintf(&list, " %s %s", role.Name, cloths[0])
				}
			}
			list.WriteString("\n")
		}
		runs[cell%top.Columns] = label
		if kind.Turning != blocks.Fixed {
			label += ":" + corner[(int(kind.Points)+c.Turns)%4]
		}
		grid.WriteString(" " + label)
	}
	return edgeHead + list.String() + grid.String() + "\n"
}

// shownBy is what a plan says, without the names of roles and blocks and the places in the layout.
func shownBy(t *testing.T, top *quilt.Top) string {
	p := Build(nil, top, Options{})
	for i := range p.Lines {
		p.Lines[i].Place, p.Lines[i].Piece.Role = Place{}, ""
	}
	p.Faults, p.Warnings = nil, nil
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestEdges(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 45))
	seen, changed := map[string]int{}, 0
	for n := range judges.Of(150, 1500) {
		text, without := edgedLayout(r)
		top, bare := lay.Top(t, text), lay.Top(t, without)
		if err := wrongEdge(text, top, bare); err != nil {
			t.Fatalf("layout %d: %v\n%s", n, err, text)
		}
		if wrongEdge(text, bare, bare) != nil {
			changed++
		}
		out := writtenOut(top)
		other := lay.Top(t, out)
		for i := range top.Faces {
			if f, g := &top.Faces[i], &other.Faces[i]; top.Fabrics[f.Fabric].Name != other.Fabrics[g.Fabric].Name || !slices.Equal(f.Outline, g.Outline) {
				t.Fatalf("layout %d: face %d differs from that of the layout written out\n%s\n%s", n, i, text, out)
			}
		}
		if n%4 == 0 && shownBy(t, top) != shownBy(t, other) {
			t.Fatalf("layout %d: its plan differs from that of the layout written out\n%s\n%s", n, text, out)
		}
		for i := range top.Patches {
			if top.Roles[top.Patches[i].Role].Name == "edge" {
				seen[top.Cells[top.Patches[i].Cell].Kind]++
			}
		}
	}
	for _, k := range blocks.Kinds() {
		if seen[k.Name] < 10 {
			t.Errorf("only %d pieces of %s blocks face the outside", seen[k.Name], k.Name)
		}
	}
	if changed < 40 {
		t.Errorf("only %d layouts are changed by their edges", changed)
	}
}

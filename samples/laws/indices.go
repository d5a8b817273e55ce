package laws

import (
	"fmt"
	"slices"

	"eighthturn/blocks"
	"eighthturn/patchwork"
)

// Indices: whatever a top names by number is there and points back.
func Indices(t *patchwork.Top) error {
	if len(t.Cells) != t.Columns*t.Rows || len(t.Patches) == 0 {
		return fmt.Errorf("%d cells, %d columns, %d rows, %d patches", len(t.Cells), t.Columns, t.Rows, len(t.Patches))
	}
	next := 0
	for i := range t.Patches {
		p := &t.Patches[i]
		if p.First != next || p.Count < 1 || p.First+p.Count > len(t.Faces) {
			return fmt.Errorf("patch %d has the faces %d to %d of %d, the patch before it ends at %d", i, p.First, p.First+p.Count, len(t.Faces), next)
		}
		next += p.Count
		if p.Role < 0 || p.Role >= len(t.Roles) || p.Cell < -1 || p.Cell >= len(t.Cells) || p.Cell >= 0 && p.Border >= 0 || p.Border < -1 || p.Number < 1 {
			return fmt.Errorf("patch %d has role %d, cell %d, border %d", i, p.Role, p.Cell, p.Border)
		}
		for f := p.First; f < next; f++ {
			if t.Faces[f].Patch != i || t.Faces[f].Fabric < 0 || t.Faces[f].Fabric >= len(t.Fabrics) {
				return fmt.Errorf("face %d of patch %d says patch %d, fabric %d", f, i, t.Faces[f].Patch, t.Faces[f].Fabric)
			}
		}
	}
	if next != len(t.Faces) {
		return fmt.Errorf("%d faces, the patches have %d", len(t.Faces), next)
	}
	return nil
}

// Pieces: each cell holds the patches that its kind has pieces, of the same shapes, every
// patch of a block belongs to one cell, and each border has its four strips.
func Pieces(t *patchwork.Top) error {
	next, counted, kinds := 0, 0, blocks.Kinds()
	for i := range t.Cells {
		c := &t.Cells[i]
		end := c.First + c.Count
		if c.First < 0 || end > len(t.Patches) {
			return fmt.Errorf("cell %d ends at patch %d of %d", i, end, len(t.Patches))
		}
		next = max(next, end)
		for p := c.First; p < end; p++ {
			if t.Patches[p].Cell != i {
				return fmt.Errorf("patch %d of cell %d says cell %d", p, i, t.Patches[p].Cell)
			}
			counted++
		}
		if err := kindsPieces(kinds, c, t.Patches[c.First:end]); err != nil {
			return fmt.Errorf("cell %d: %w", i, err)
		}
	}
	for next < len(t.Patches) && t.Patches[next].Cell >= 0 {
		next++ // of a column whose last cells hold no piece's middle
	}
	if counted != next {
		return fmt.Errorf("the cells hold %d patches of %d", counted, next)
	}
	for next < len(t.Patches) && t.Patches[next].Border < 0 {
		next++
	}
	return borderStrips(t.Patches[next:])
}

// kindsPieces compares a cell's patches with its kind's pieces.
func kindsPieces(kinds []*blocks.Kind, c *patchwork.Cell, patches []patchwork.Patch) error {
	if c.Label == "" {
		if len(patches) > 0 {
			return fmt.Errorf("%d patches where nothing should be", len(patches))
		}
		return nil
	}
	kind, known := blocks.Find(kinds, c.Kind)
	if !known {
		return fmt.Errorf("no kind is called %q", c.Kind)
	}
	if kind.Column {
		for i := range patches {
			if s := patches[i].Shape; s != blocks.Tumbler && s != blocks.HalfTumbler {
				return fmt.Errorf("a column holds a %v", s)
			}
		}
		return nil
	}
	var want, got []blocks.Shape
	for _, p := range kind.Pieces {
		want = append(want, p.Shape)
	}
	for i := range patches {
		got = append(got, patches[i].Shape)
	}
	slices.Sort(want)
	slices.Sort(got)
	if !slices.Equal(want, got) {
		return fmt.Errorf("a %s block has the shapes %v, its kind %v", c.Kind, got, want)
	}
	return nil
}

// borderStrips sees that borders follow one another from the inside out, four strips each
// and four squares behind them where a border has corners.
func borderStrips(patches []patchwork.Patch) error {
	for border := 0; len(patches) > 0; border++ {
		n := 4
		if len(patches) >= 8 && patches[4].Shape == blocks.Square && patches[4].Border == border {
			n = 8
		}
		if len(patches) < n {
			return fmt.Errorf("border %d has %d pieces", border, len(patches))
		}
		for i := range n {
			if p := &patches[i]; p.Border != border || p.Cell != -1 || p.Number != i+1 {
				return fmt.Errorf("piece %d of border %d says border %d, cell %d, number %d", i, border, p.Border, p.Cell, p.Number)
			}
		}
		patches = patches[n:]
	}
	return nil
}

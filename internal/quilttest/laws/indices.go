package laws

import (
	"fmt"
	"slices"

	"eighthturn/internal/blocks"
	"eighthturn/internal/quilt"
)

// Indices: whatever a top names by number is there and points back.
func Indices(t *quilt.Top) error {
	if len(t.Cells) != t.Columns*t.Rows || len(t.Patches) == 0 {
		return fmt.Errorf("%d cells, %d columns, %d rows, %d patches", len(t.Cells), t.Columns, t.Rows, len(t.Patches))
	}
	next := int32(0)
	for i := range t.Patches {
		p := &t.Patches[i]
		if p.First != next || p.Count < 1 || int(p.First+p.Count) > len(t.Faces) {
			return fmt.Errorf("patch %d has the faces %d to %d of %d, the patch before it ends at %d", i, p.First, p.First+p.Count, len(t.Faces), next)
		}
		next += p.Count
		if p.Role < 0 || int(p.Role) >= len(t.Roles) || p.Cell < -1 || int(p.Cell) >= len(t.Cells) || p.Cell >= 0 && p.Border >= 0 || p.Border < -1 || p.Number < 1 {
			return fmt.Errorf("patch %d has role %d, cell %d, border %d", i, p.Role, p.Cell, p.Border)
		}
		for f := p.First; f < next; f++ {
			if int(t.Faces[f].Patch) != i || t.Faces[f].Fabric < 0 || int(t.Faces[f].Fabric) >= len(t.Fabrics) {
				return fmt.Errorf("face %d of patch %d says patch %d, fabric %d", f, i, t.Faces[f].Patch, t.Faces[f].Fabric)
			}
		}
	}
	if int(next) != len(t.Faces) {
		return fmt.Errorf("%d faces, the patches have %d", len(t.Faces), next)
	}
	return alike(t)
}

// Letters: no two roles go by one letter in the line view.
func Letters(t *quilt.Top) error {
	for i, r := range t.Roles {
		for _, other := range t.Roles[:i] {
			if r.Letter == "" || r.Letter == other.Letter {
				return fmt.Errorf("%s have the letter %q, %s %q", r.Name, r.Letter, other.Name, other.Letter)
			}
		}
	}
	return nil
}

// alike sees that the seams listed as between faces of one fabric are.
func alike(t *quilt.Top) error {
	for _, i := range t.Alike {
		if i < 0 || i >= len(t.Seams) || t.Faces[t.Seams[i].A].Fabric != t.Faces[t.Seams[i].B].Fabric {
			return fmt.Errorf("seam %d is listed as between faces of one fabric", i)
		}
	}
	return nil
}

// Pieces: each cell holds the patches that its kind has pieces, of the same shapes; a column
// of cells has two end pieces, and whole ones between them; each border has four strips, or
// four and as many corner squares; and patches are numbered in their cell, their border, or
// among the sashes.
func Pieces(t *quilt.Top) error {
	kinds := blocks.Kinds()
	held := 0
	for i := range t.Cells {
		c := &t.Cells[i]
		if c.Count < 0 || c.Count > 0 && (c.First < 0 || c.First+c.Count > len(t.Patches)) {
			return fmt.Errorf("cell %d has patches %d to %d of %d", i, c.First, c.First+c.Count, len(t.Patches))
		}
		held += c.Count
		patches := patchesOf(t, i)
		for p := range patches {
			if int(patches[p].Cell) != i || int(patches[p].Number) != p+1 {
				return fmt.Errorf("patch %d of cell %d says cell %d, number %d", c.First+p, i, patches[p].Cell, patches[p].Number)
			}
		}
		if err := kindsPieces(kinds, c, patches); err != nil {
			return fmt.Errorf("cell %d: %w", i, err)
		}
	}
	if err := columnsEnd(t, kinds); err != nil {
		return err
	}
	for i := range t.Patches {
		if t.Patches[i].Cell >= 0 {
			held--
		}
	}
	if held != 0 {
		return fmt.Errorf("cells list %d patches more than say that they are in one", held)
	}
	return edgings(t)
}

func patchesOf(t *quilt.Top, cell int) []quilt.Patch {
	c := &t.Cells[cell]
	if c.Count == 0 {
		return nil
	}
	return t.Patches[c.First : c.First+c.Count]
}

// kindsPieces compares a cell's patches with its kind's pieces.
func kindsPieces(kinds []*blocks.Kind, c *quilt.Cell, patches []quilt.Patch) error {
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

// columnsEnd sees that each column of cells of one block has an end piece above and below,
// and whole pieces between them.
func columnsEnd(t *quilt.Top, kinds []*blocks.Kind) error {
	for i := range t.Cells {
		kind, _ := blocks.Find(kinds, t.Cells[i].Kind)
		if kind == nil || !kind.Column || !startsColumn(t, i) {
			continue
		}
		var shapes []blocks.Shape
		for at := i; at < len(t.Cells) && (at == i || !startsColumn(t, at) && t.Cells[at].Label == t.Cells[i].Label); at += t.Columns {
			for _, p := range patchesOf(t, at) {
				shapes = append(shapes, p.Shape)
			}
		}
		for n, s := range shapes {
			end := n == 0 || n == len(shapes)-1
			if len(shapes) < 2 || s != blocks.ColumnShape(end) {
				return fmt.Errorf("the column from cell %d down has the shapes %v", i, shapes)
			}
		}
	}
	return nil
}

// startsColumn says whether a cell has no cell of its block above it, or a sash.
func startsColumn(t *quilt.Top, cell int) bool {
	above := cell - t.Columns
	return above < 0 || t.StepFinished != t.SideFinished || t.Cells[above].Label != t.Cells[cell].Label
}

// edgings sees that sashes and borders follow the blocks, borders from the inside out, and
// that each border has its strips and squares.
func edgings(t *quilt.Top) error {
	border, strips, squares, sashes := -1, 4, 0, 0
	for i := range t.Patches {
		p := &t.Patches[i]
		if p.Cell >= 0 {
			continue
		}
		if int(p.Border) != border {
			if int(p.Border) != border+1 || strips != 4 || squares != 0 && squares != 4 {
				return fmt.Errorf("border %d, of %d strips and %d squares, is followed by border %d", border, strips, squares, p.Border)
			}
			border, strips, squares = int(p.Border), 0, 0
		}
		number := sashes + 1
		switch {
		case p.Border < 0:
			sashes++
		case p.Shape.Description().Edging:
			strips++
			number = strips
		default:
			squares++
			number = 4 + squares
		}
		if int(p.Number) != number {
			return fmt.Errorf("patch %d has number %d, want %d", i, p.Number, number)
		}
	}
	if strips != 4 || squares != 0 && squares != 4 {
		return fmt.Errorf("border %d has %d strips and %d squares", border, strips, squares)
	}
	return nil
}

package svgout

import (
	"strconv"

	"eighthturn/internal/quilt"
)

// appendPatchID writes a patch's id: row, column and number in the block, or the border's
// number and its own in it, or its own among the sashes; it stays the same when other rows
// are changed.
func (p *picture) appendPatchID(b []byte, n int) []byte {
	patch := &p.Patches[n]
	switch {
	case patch.Cell >= 0:
		b = appendCount(b, "r", int(patch.Cell)/p.Columns)
		b = appendCount(b, "c", int(patch.Cell)%p.Columns)
		return appendCount(b, "p", int(patch.Number)-1)
	case patch.Border >= 0:
		b = appendCount(b, "border", int(patch.Border))
		return appendCount(b, "p", int(patch.Number)-1)
	}
	return appendCount(b, "sash", int(patch.Number)-1)
}

// appendFaceID writes a face's id: its patch's, and the number of its band.
func (p *picture) appendFaceID(b []byte, face int) []byte {
	n := p.Faces[face].Patch
	b = p.appendPatchID(b, int(n))
	if patch := &p.Patches[n]; patch.Count > 1 {
		b = appendCount(b, "b", face-int(patch.First))
	}
	return b
}

// appendCount writes a word and, counted from 1, the number of what counts from 0.
func appendCount(b []byte, word string, n int) []byte {
	return strconv.AppendInt(append(b, word...), int64(n)+1, 10)
}

// appendFaceTitle writes the rest of a face's title behind the name of its fabric.
func (p *picture) appendFaceTitle(b []byte, face int) []byte {
	patch := &p.Patches[p.Faces[face].Patch]
	if patch.Count > 1 {
		b = appendCount(b, ", strip ", face-int(patch.First))
		b = appendCount(b, " of ", int(patch.Count)-1)
	}
	return p.appendPlace(b, patch)
}

// appendPlace writes what a patch is and where.
func (p *picture) appendPlace(b []byte, patch *quilt.Patch) []byte {
	b = append(append(b, ", "...), p.Roles[patch.Role].Name...)
	switch {
	case patch.Cell >= 0:
		b = appendCount(b, ", row ", int(patch.Cell)/p.Columns)
		return appendCount(b, ", column ", int(patch.Cell)%p.Columns)
	case patch.Border >= 0:
		return appendCount(b, ", border number ", int(patch.Border))
	}
	return b
}

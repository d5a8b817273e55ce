package svgout

import (
	"strconv"

	"eighthturn/internal/quilt"
)

// appendPatchID writes a patch's id: row, column and number in the block, or the border's
// number and its own in it, or its own among the sashes; it stays the same when other rows
// are changed.
func (d *document) appendPatchID(b []byte, n int) []byte {
	p := &d.Patches[n]
	b = append(b, d.Prefix...)
	switch {
	case p.Cell >= 0:
		b = appendCount(b, "r", p.Cell/d.Columns)
		b = appendCount(b, "c", p.Cell%d.Columns)
		return appendCount(b, "p", p.Number-1)
	case p.Border >= 0:
		b = appendCount(b, "border", p.Border)
		return appendCount(b, "p", p.Number-1)
	}
	return appendCount(b, "sash", p.Number-1)
}

// appendFaceID writes a face's id: its patch's, and the number of its band.
func (d *document) appendFaceID(b []byte, face int) []byte {
	n := d.Faces[face].Patch
	b = d.appendPatchID(b, n)
	if p := &d.Patches[n]; p.Count > 1 {
		b = appendCount(b, "b", face-p.First)
	}
	return b
}

// appendCount writes a word and, counted from 1, the number of what counts from 0.
func appendCount(b []byte, word string, n int) []byte {
	return strconv.AppendInt(append(b, word...), int64(n)+1, 10)
}

// appendFaceTitle writes the rest of a face's title behind the name of its fabric.
func (d *document) appendFaceTitle(b []byte, face int) []byte {
	p := &d.Patches[d.Faces[face].Patch]
	if p.Count > 1 {
		b = appendCount(b, ", strip ", face-p.First)
		b = appendCount(b, " of ", p.Count-1)
	}
	return d.appendPlace(b, p)
}

// appendPlace writes what a patch is and where.
func (d *document) appendPlace(b []byte, p *quilt.Patch) []byte {
	b = append(append(b, ", "...), d.Roles[p.Role].Name...)
	switch {
	case p.Cell >= 0:
		b = appendCount(b, ", row ", p.Cell/d.Columns)
		return appendCount(b, ", column ", p.Cell%d.Columns)
	case p.Border >= 0:
		return appendCount(b, ", border number ", p.Border)
	}
	return b
}

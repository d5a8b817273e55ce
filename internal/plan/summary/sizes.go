package summary

import (
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
)

// QuiltSize is the quilt in a size that the layout names.
type QuiltSize struct {
	Name            string         `json:"name"`
	AsWritten       bool           `json:"as_written"`
	Across          int            `json:"blocks_across"`
	Down            int            `json:"blocks_down"`
	SideFinished    measure.NM     `json:"side_finished"`
	BordersFinished []measure.NM   `json:"borders_finished"` // from the inside out
	TopFinished     Size           `json:"top_finished"`
	Pieces          int            `json:"pieces"`
	System          measure.System `json:"-"`
	Units           string         `json:"units"` // that the size is drafted in
}

// quiltSizes are the sizes of a top, the size as written first.
func quiltSizes(t *quilt.Top) []QuiltSize {
	list := make([]QuiltSize, 0, len(t.Sizes))
	for i := range t.Sizes {
		s := &t.Sizes[i]
		top := t
		if !s.Own {
			top = s.Top(nil)
		}
		q := QuiltSize{Name: s.Name, AsWritten: s.Own, Across: top.Columns, Down: top.Rows, SideFinished: top.SideFinished,
			BordersFinished: []measure.NM{}, TopFinished: Size{top.Outer.Width(), top.Outer.Height()}, Pieces: len(top.Patches), System: top.Units, Units: top.Units.String()}
		for _, b := range top.CutFacts.Borders {
			q.BordersFinished = append(q.BordersFinished, b.Width)
		}
		list = append(list, q)
	}
	return list
}

package preview

import "encoding/binary"

// sources say which lines of the layout made what. Blocks of one label, kind and fills have
// one entry in Kinds.
type sources struct {
	Rows  []int      `json:"rows"`  // line of the grid for each row of cells
	Cells []int32    `json:"cells"` // entry of Kinds for each cell, -1 where there is nothing
	Kinds []kindInfo `json:"kinds"`
}

// kindInfo is what a cell is.
type kindInfo struct {
	Label string `json:"label"`
	Kind  string `json:"kind"`
	Lines []int  `json:"lines"` // for each patch, the line that gives its fabric
}

func (p *pictureBuilder) listSources() sources {
	s := sources{Rows: make([]int, p.Rows), Cells: make([]int32, len(p.Cells)), Kinds: []kindInfo{}}
	for y := range p.Rows {
		s.Rows[y] = p.line(p.Cells[y*p.Columns].Place.Start)
	}
	known := map[string]int32{}
	var key []byte
	for i := range p.Cells {
		c := &p.Cells[i]
		if c.Count == 0 {
			s.Cells[i] = -1
			continue
		}
		key = append(append(key[:0], c.Label...), 0)
		key = append(append(key, c.Kind...), 0)
		for n := c.First; n < c.First+c.Count; n++ {
			key = binary.AppendUvarint(key, uint64(p.line(int(p.Patches[n].Place.Start))))
		}
		entry, ok := known[string(key)]
		if !ok {
			entry = int32(len(s.Kinds))
			known[string(key)] = entry
			s.Kinds = append(s.Kinds, p.kindInfo(i))
		}
		s.Cells[i] = entry
	}
	return s
}

func (p *pictureBuilder) kindInfo(cell int) kindInfo {
	c := &p.Cells[cell]
	info := kindInfo{Label: c.Label, Kind: c.Kind}
	for n := c.First; n < c.First+c.Count; n++ {
		info.Lines = append(info.Lines, p.line(int(p.Patches[n].Place.Start)))
	}
	return info
}

package cutting

// LeftPieces is pieces of one sort that are cut and that the quilt does not take: wedges of a strip set in one order, or what is cut
// by twos and fours.
type LeftPieces struct {
	Line     int  `json:"line"`      // that they are like, -1 for wedges in an order that the quilt takes none of
	Set      int  `json:"strip_set"` // index of the plan's strip sets, -1 for pieces of one fabric
	Reversed bool `json:"reversed"`
	Pieces   int  `json:"pieces"`
}

// leftPieces lists the pieces that are left, those of the lines first.
func (p *planning) leftPieces() {
	for i := range p.Lines {
		if line := &p.Lines[i]; line.Set < 0 && line.Spare > 0 {
			p.Left = append(p.Left, LeftPieces{Line: i, Set: -1, Pieces: line.Spare})
		}
	}
	for i := range p.Sets {
		for way, n := range p.Sets[i].LeftOver {
			if n > 0 {
				p.Left = append(p.Left, LeftPieces{Line: p.Sets[i].Lines[way], Set: i, Reversed: way == 1, Pieces: n})
			}
		}
	}
}

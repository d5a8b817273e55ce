package cutting

import "eighthturn/internal/blocks"

// OnHandPieces is pieces of one line of the layout that are cut already.
type OnHandPieces struct {
	Role     string `json:"piece"` // as in the layout
	Cloth    string `json:"cut_from"`
	Reversed bool   `json:"reversed"`
	Pieces   int    `json:"pieces"` // on hand
	Used     int    `json:"used"`   // of them
	Line     int    `json:"line"`   // that takes them, -1 for none
	Place    Place  // in the layout

	shape blocks.Shape
}

// Left is how many of them the quilt does not take.
func (h *OnHandPieces) Left() int { return h.Pieces - h.Used }

// Wedges says whether they are wedges.
func (h *OnHandPieces) Wedges() bool { return h.shape.Description().Gathers == blocks.WebCentre }

// useOnHand gives pieces on hand to the lines that take them.
func (p *planning) useOnHand() {
	if p.options.NothingOnHand {
		return
	}
	for _, o := range p.top.CutFacts.OnHand {
		h := OnHandPieces{Role: o.Role, Cloth: o.Cloth, Reversed: o.Reversed, Pieces: o.Count, Line: -1, Place: Place(o.Place), shape: o.Shape}
		if o.Patch >= 0 {
			h.Line = p.LineOf[o.Patch]
			line := &p.Lines[h.Line]
			h.Used = min(h.Pieces, line.Pieces-line.OnHand)
			line.OnHand += h.Used
		}
		p.OnHand = append(p.OnHand, h)
	}
}

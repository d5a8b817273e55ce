package quilt_test

import (
	"eighthturn/internal/blocks"
	"eighthturn/internal/measure"
	"eighthturn/internal/quilt"
	"eighthturn/layout"
)

// sharing is what faces have in common that share one fabric by the layout's word: the web, the block or nothing but themselves.
type sharing struct {
	pool, set, band, face, cell int32
	role                        int16
	at                          measure.Point
}

// sharings is by face what it shares its fabric with; only of faces that were dealt theirs.
func sharings(top *quilt.Top) map[int32]sharing {
	of := map[int32]sharing{}
	for _, dealt := range top.CutFacts.Pooled {
		p := &top.Patches[top.Faces[dealt.Face].Patch]
		s := sharing{pool: dealt.Pool, set: -1, band: dealt.Face - p.First, face: -1, cell: -1, role: p.Role}
		pointed := p.Shape.Description().Gathers != blocks.NoCentre
		switch by := top.Credits.Pools[dealt.Pool].By; {
		case by == layout.ByWeb && pointed:
			s.at = p.Outline[0]
		case by != layout.ByPiece && p.Cell >= 0:
			s.cell = p.Cell
		default:
			s = sharing{pool: dealt.Pool, set: -1, face: dealt.Face, cell: -1}
		}
		of[dealt.Face] = s
	}
	for n := range top.Dealt {
		for _, set := range top.Dealt[n].Sets {
			for _, web := range set.Webs {
				for _, patch := range web.Patches {
					p := &top.Patches[patch]
					for f := p.First; f < p.First+p.Count; f++ {
						of[f] = sharing{pool: -1, set: int32(top.Dealt[n].Set), face: -1, cell: -1, at: p.Outline[0]}
					}
				}
			}
		}
	}
	return of
}

// alikeSeams are the seams along which two faces of one fabric meet that need not be alike: one of them was dealt its fabric, and the
// layout does not have them share it.
func alikeSeams(top *quilt.Top) (list []int) {
	of := sharings(top)
	for i, s := range top.Seams {
		a, dealtA := of[s.A]
		b, dealtB := of[s.B]
		if top.Faces[s.A].Fabric == top.Faces[s.B].Fabric && (dealtA || dealtB) && !(dealtA && dealtB && a == b) {
			list = append(list, i)
		}
	}
	return list
}

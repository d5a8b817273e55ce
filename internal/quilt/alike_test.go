package quilt_test

import (
	"fmt"
	"strings"

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
		case by != layout.ByPiece:
			s.cell = p.Cell
		default:
			s = sharing{pool: dealt.Pool, set: -1, face: dealt.Face, cell: -1}
		}
		of[dealt.Face] = s
	}
	bySet := map[int]bool{}
	for _, pool := range top.Credits.Pools {
		for _, f := range pool.Fabrics {
			bySet[f] = bySet[f] || pool.By == layout.BySet
		}
	}
	for n := range top.Dealt {
		for _, set := range top.Dealt[n].Sets {
			for _, web := range set.Webs {
				for _, patch := range web.Patches {
					p := &top.Patches[patch]
					for f := p.First; f < p.First+p.Count; f++ {
						if !bySet[int(top.Faces[f].Fabric)] {
							continue // a strip of all sets
						}
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

// placeOf names where a face lies, as a warning does.
func placeOf(top *quilt.Top, face int32) string {
	cell := int(top.Patches[top.Faces[face].Patch].Cell)
	return fmt.Sprintf("row %d, column %d", cell/top.Columns+1, cell%top.Columns+1)
}

// ofSeams says along how many more seams it is so.
func ofSeams(count int) string {
	if count == 1 {
		return ""
	}
	return "; so it is along " + measure.Count(count-1, "more seam")
}

// toldOfAlike is what a top without swaps has to warn of: like scraps side by side, at the first such seam, those of dealt strip sets first.
func toldOfAlike(top *quilt.Top) (list []string) {
	of := sharings(top)
	told := func(name string, seams []quilt.Seam, concerned func(face int32) bool) {
		if len(seams) == 0 {
			return
		}
		face := seams[0].A
		if !concerned(face) {
			face = seams[0].B
		}
		if name == "" {
			pool := &top.Credits.Pools[of[face].pool]
			if name = fmt.Sprintf("the pool %q", pool.Name); len(pool.Fabrics) == 1 {
				name += " has only this fabric"
			}
		} else {
			name = fmt.Sprintf("no better deal of %q was found", top.CutFacts.Sets[of[face].set].Name)
		}
		list = append(list, fmt.Sprintf("two pieces of %s lie side by side at %s, since %s%s", top.Fabrics[top.Faces[face].Fabric].Name, placeOf(top, face), name, ofSeams(len(seams))))
	}
	pooled := func(face int32) bool { s, dealt := of[face]; return dealt && s.pool >= 0 }
	var sets, pools []quilt.Seam
	for _, i := range alikeSeams(top) {
		if s := top.Seams[i]; pooled(s.A) || pooled(s.B) {
			pools = append(pools, s)
		} else {
			sets = append(sets, s)
		}
	}
	for _, s := range top.StripSeams {
		if a, b := of[s.A], of[s.B]; top.Faces[s.A].Fabric == top.Faces[s.B].Fabric && (pooled(s.A) || pooled(s.B)) && a != b {
			pools = append(pools, s)
		}
	}
	told("sets", sets, func(face int32) bool { s, dealt := of[face]; return dealt && s.set >= 0 })
	told("", pools, pooled)
	return list
}

// spokenOfAlike is what a top warns of like scraps side by side; why a pool could not do better is left out, which the search alone knows.
func spokenOfAlike(top *quilt.Top) (list []string) {
	for _, w := range top.Warnings {
		if strings.HasPrefix(w.Message, "two pieces of ") {
			text := strings.NewReplacer(" has too few fabrics for the pieces that lie side by side", "").Replace(w.Message)
			if before, pool, found := strings.Cut(text, "no better deal of the pool "); found {
				text = before + "the pool " + strings.Replace(pool, " was found", "", 1)
			}
			list = append(list, text)
		}
	}
	return list
}
